//! Rule: claims contradict

use crate::rule::{Subject, Verdict, rule};
use std::collections::BTreeSet;
use stillrise_design::enquiry::keys::Quantity;
use stillrise_design::provenance::{Chooser, Entry, Origin};
use stillrise_units::Typed;

rule! {
    "claims-contradict" "Claims contradict and nobody chose", Enquiry;
    client "Two statements do not agree, and nobody has said which holds."
    looks "Values for which the enquiry holds claims that differ, and of which no person marked one as chosen."
    matters "The tool takes the safe one, or the first; which is true is not known, and nothing is averaged."
    remedy "Ask which holds, and state it with its reason."
    source "Our proposal"
    limits "Sees values that design and rules use. A claim that is the same to the last digit is no contradiction."
}

/// As many are named.
const NAMED: usize = 3;

/// A key that only rules read, and of which the trail says nothing.
fn unread<Q: Typed>(key: &Quantity<Q>) -> Option<String> {
    let taken = key.claim().filter(|c| key.is_contradicted() && !c.chosen)?;
    let all: Vec<&str> = key.claims.iter().map(|c| c.written.text.as_str()).collect();
    Some(format!("{}: {}; {} taken", key.place, all.join("; "), taken.written.text))
}

/// Whether a line of the trail is a claim on a key.
fn stands_at<Q>(claim: &Entry, key: &Quantity<Q>) -> bool {
    matches!(&claim.origin, Origin::Given { source, .. } if source.place() == key.place)
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(ledger) = s.ledger else {
        return Verdict::cannot_judge("no trail was kept in which it could be seen", [], None);
    };
    let mut seen = BTreeSet::new();
    let mut says = Vec::new();
    let mut first = None;
    let mut told = false;
    for entry in &ledger.entries {
        if let Origin::Chosen { by, among, inputs, .. } = &entry.origin {
            // The same key may be taken up twice under different labels.
            if *by == Chooser::Nobody && seen.insert(among) {
                says.push(format!("{}: {among}; {} taken", entry.label, entry.told(s.system())));
                told |= inputs.iter().filter_map(|node| ledger.entry(*node)).any(|claim| stands_at(claim, &s.enquiry.site.coldest_air));
                first = first.or_else(|| inputs.first().copied());
            }
        }
    }
    let site = &s.enquiry.site;
    let room = [unread(&site.max_length), unread(&site.max_width), unread(&site.headroom)];
    // The shop takes up the coldest air where frost reaches the unit; then the trail tells of it.
    let air = unread(&site.coldest_air).filter(|_| !told);
    says.extend([air, unread(&site.lifting)].into_iter().chain(room).flatten());
    if says.is_empty() {
        return Verdict::passes("0 values have contradicting claims that nobody chose between");
    }
    let count = says.len();
    let more = if count > NAMED { format!("; and {} more", count - NAMED) } else { String::new() };
    says.truncate(NAMED);
    Verdict::warns(format!("{}{more}", says.join("; ")), first)
}
