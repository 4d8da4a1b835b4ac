//! Rule: decision on an unknown rule

use super::RULES;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::nearest;

rule! {
    "unknown-decision" "Decision on a rule that does not exist", Enquiry;
    client "A decision was noted on a rule that does not exist, so it settles nothing."
    looks "Decisions that name a rule which is not among the rules."
    matters "Such a decision settles nothing: the finding it was meant for still stands, and the one who wrote it thinks otherwise."
    remedy "Write the id of the rule as it stands beside the finding."
    source "Our proposal"
    limits "A decision on a rule that exists but does not apply is not reported here."
}

fn look(s: &Subject<'_>) -> Verdict {
    let decisions = &s.enquiry.decisions;
    if decisions.is_empty() {
        return Verdict::skips("no decision is written");
    }
    let ids = || RULES.iter().map(|r| r.id);
    let unknown = decisions.iter().filter_map(|d| d.rule.as_deref()).filter(|name| ids().all(|id| id != *name));
    let says: Vec<String> = unknown
        .map(|name| match nearest(name, ids()) {
            Some(near) => format!("\"{name}\" is not a rule; the nearest is \"{near}\""),
            None => format!("\"{name}\" is not a rule, and none is near it"),
        })
        .collect();
    if says.is_empty() {
        return Verdict::passes(format!("{} of {} decisions name a rule", decisions.len(), decisions.len()));
    }
    Verdict::fails(says.join("; "), None)
}
