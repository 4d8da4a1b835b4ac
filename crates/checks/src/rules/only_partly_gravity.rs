//! Rule: a separator alone will not do

use crate::ask::products;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::triage::Weight;

rule! {
    "only-partly-gravity" "A separator alone will not do", Enquiry;
    client "The separator does only part of what is asked; another step must do the rest."
    looks "Findings of the triage that leave a part of the duty to something else: detergents, solvents, products of unknown kind, animal and vegetable oils, limits on what is dissolved. Where nobody said which products go into the water, or that none do, and how much of the oil is emulsified, it cannot judge."
    matters "The separator can work as it should and the discharge still miss what was asked of it."
    remedy "Settle who provides the other part, and say in the offer which part the separator does not touch."
    source "Handbook, lists of chemicals, oils and pollutants, each row with its own source"
    limits "Sees only what the enquiry declares; a detergent that nobody names is not seen."
}

fn look(s: &Subject<'_>) -> Verdict {
    let lines = &s.design.triage;
    let partly: Vec<String> = lines
        .iter()
        .filter(|l| l.weight == Weight::Partly)
        .map(|l| format!("{} (could: {})", l.subject, l.could(|_| true).trim_end_matches('.')))
        .collect();
    if let (true, Some((water, ask))) = (partly.is_empty(), products(s)) {
        let says = format!(
            "which products go into the {water} was not said; a detergent leaves a part of the oil to something else"
        );
        return Verdict::cannot_judge(says, [ask], None);
    }
    if partly.is_empty() {
        let all = lines.len();
        return Verdict::passes(format!(
            "0 of {all} findings of the triage leave a part of the duty to something else"
        ));
    }
    Verdict::warns(format!("gravity does a part only: {}", partly.join("; ")), None)
}
