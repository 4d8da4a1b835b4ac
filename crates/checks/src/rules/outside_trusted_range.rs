//! Rule: outside the trusted range

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::Node;
use stillrise_design::provenance::{Entry, Origin};

rule! {
    "outside-trusted-range" "Outside the trusted range of a formula", Unit;
    client "At least one formula is used outside the range for which its source vouches."
    looks "Values of the trail that a formula gave for an argument outside the range in which it is trusted."
    matters "The formula still answers, but its source does not vouch for the answer."
    remedy "Read the notes in the trail; check whether the value matters for what is decided."
    source "Handbook, trusted range of each formula, with its source"
    limits "Counts each note once, however often it comes; does not weigh them. Studies beside the design (other flows, sizes, stages alone) go beyond ranges on purpose and are left out."
}

/// The argument that a note speaks of, else the first.
fn argument(entry: &Entry, note: &str) -> Option<Node> {
    let Origin::Derived { page, inputs } = &entry.origin else { return None };
    let named = page.args.iter().zip(inputs).find(|(symbol, _)| note.contains(symbol.meaning));
    named.map(|(_, node)| *node).or_else(|| inputs.first().copied())
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(ledger) = s.ledger else {
        return Verdict::cannot_judge("no trail was kept in which it could be seen", [], None);
    };
    let notes = ledger.outside_trust();
    let Some((_, entry, note)) = notes.first().copied() else {
        return Verdict::passes(format!("0 notes on {} values", ledger.entries.len()));
    };
    let says = match notes.len() {
        1 => format!("1 note: {} ({}: {})", note, entry.section, entry.label),
        n => format!("{n} notes, the first: {} ({}: {})", note, entry.section, entry.label),
    };
    Verdict::warns(says, argument(entry, note))
}
