//! Rule: chain stopped

use crate::rule::{Subject, Verdict, rule};

rule! {
    "chain-stopped" "The chain of results stopped", Enquiry, bars_pick;
    client "Part of the calculation could not be made, so part of the answer is missing."
    looks "Branches of the design that could not go on: a unit that cannot be laid out, a formula without an answer for what was given."
    matters "What hangs on the branch is missing, and rules that need it cannot judge."
    remedy "Change what the reason names: a value that lies outside what a formula or the geometry can answer, or what speaks against every unit."
    source "Our proposal"
    limits "The first reason may hide others behind it."
}

fn look(s: &Subject<'_>) -> Verdict {
    let stops = &s.design.stops;
    if stops.is_empty() {
        return Verdict::passes("0 branches stopped");
    }
    Verdict::fails(stops.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "), None)
}
