//! Rule: stage asked for

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::provenance;
use stillrise_design::train::Stage;

rule! {
    "stage-asked-for" "Stages asked for beside the separator", Enquiry;
    client "The separator needs other steps ahead of it or behind it to do what is asked."
    looks "Stages that the duty asks for and nobody provides yet: screen, grit trap, equalisation, polisher; each with its first size."
    matters "The separator is sized beside them and does not do their work. Without them rags and solids bury the pack, peaks run through, or the limit is missed."
    remedy "Offer them, or settle in writing who does."
    source "Grit trap from 300 mg/L of solids: our proposal; equalisation: continuity; screen: common practice; polisher: the published floor of plate units, UFGS 44 42 53"
    limits "First sizes are for an order of magnitude and a question, not for building."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(train) = &s.design.train else { return s.stopped() };
    let says = |stage: &Stage| match &stage.size {
        Some((label, value, units)) => {
            format!("{} ({label} {}): {}", stage.name, provenance::told(value, Some(*units), s.system()), stage.why)
        }
        None => format!("{}: {}", stage.name, stage.why),
    };
    let asked: Vec<String> = train.stages.iter().filter(|stage| stage.asked_for).map(says).collect();
    if asked.is_empty() {
        let names: Vec<&str> = train.stages.iter().map(|stage| stage.name.as_str()).collect();
        return Verdict::passes(format!("0 stages beyond: {}", names.join(", ")));
    }
    Verdict::warns(asked.join("; "), None)
}
