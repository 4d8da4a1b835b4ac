//! Rule: not a gravity duty

use crate::ask::{Ask, OILS, oil_is_named, products};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::triage::Weight;

rule! {
    "not-a-gravity-duty" "Not a gravity duty", Enquiry;
    client "Something in this water keeps oil from rising: a separator alone cannot treat it as it stands."
    looks "Findings of the triage that rule gravity out: an emulsion made to last, a liquid that mixes with water, an oil as heavy as the water. Where a product's kind, the products or the oil were not said, it cannot judge."
    matters "No separator of any size takes out what does not rise. A size would promise what physics does not keep."
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
        let (says, asks) = open(s);
        return if asks.is_empty() {
            Verdict::passes(others)
        } else {
            Verdict::cannot_judge(format!("{others}; but {}", says.join("; ")), asks, None)
        };
    }
    Verdict::fails(blocking.join("; "), None)
}

/// A handbook sentence as part of a longer one.
fn plain(text: &str) -> &str {
    text.trim_end_matches('.')
}

/// What was not declared and could keep the oil from rising.
fn open(s: &Subject<'_>) -> (Vec<String>, Vec<Ask>) {
    let mut says = Vec::new();
    let mut asks = Vec::new();
    for block in s.enquiry.chemicals.iter().filter(|c| c.kind.is_none()) {
        let product = block.product.as_deref().unwrap_or("the product");
        says.push(format!("what {product} is was not said, and some products keep oil from rising altogether"));
        let question = format!("What kind of product is {product}, by its safety data sheet?");
        asks.push(Ask::new(format!("chemical \"{product}\".kind"), question));
    }
    if let Some((water, ask)) = products(s) {
        says.push(format!("which products go into the {water} was not said"));
        asks.push(ask);
    }
    if !oil_is_named(s) {
        says.push("no oil was named".to_owned());
        asks.push(OILS);
    }
    (says, asks)
}
