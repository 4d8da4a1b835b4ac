//! Rule: not a gravity duty

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::triage::Weight;

rule! {
    "not-a-gravity-duty" "Not a gravity duty", Enquiry;
    looks "Findings of the triage that rule gravity out: an emulsion made to last, a liquid that mixes with water, an oil as heavy as the water."
    matters "No separator of any size takes out what does not rise. Sizing one would sell a promise that physics does not keep."
    remedy "Keep the product out of this water or treat it by what the finding names; then look at what is left."
    source "Handbook, lists of chemicals and oils, each row with its own source; that half of the oil emulsified rules gravity out is our proposal"
    limits "Sees only what the enquiry declares. The shares of emulsified oil are judgement until a jar test replaces them."
}

fn look(s: &Subject<'_>) -> Verdict {
    let lines = &s.design.triage;
    let blocking: Vec<String> = lines
        .iter()
        .filter(|l| l.weight == Weight::Blocks)
        .map(|l| format!("{}: {}", l.subject, plain(&l.says)))
        .collect();
    if blocking.is_empty() {
        let others = match lines.len() {
            0 => "nothing that was declared keeps the oil from rising".to_owned(),
            1 => "nothing that was declared rules gravity out; the triage has 1 lesser finding".to_owned(),
            n => format!("nothing that was declared rules gravity out; the triage has {n} lesser findings"),
        };
        return Verdict::passes(others);
    }
    Verdict::fails(blocking.join("; "), None)
}

/// A handbook sentence as part of a longer one.
fn plain(text: &str) -> &str {
    text.trim_end_matches('.')
}
