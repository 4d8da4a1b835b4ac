//! The technical specification in the three parts that specifications of construction usually have: general, products,
//! execution. What the job knows stands as a number, what it does not as [to be stated]; no maker is named.

mod execution;
mod general;
mod products;

use super::common::{self, ON_SITE};
use super::{EVERYBODY, Head, Paper, lacks};
use crate::report::Report;
use stillrise_design::train::Train;

/// The paper.
pub static PAPER: Paper = Paper {
    name: "technical-specification",
    title: "Technical specification",
    about: "For bidders, and for whoever checks what they offer: requirements in three parts (general, products, execution). What stands in brackets is to be stated before it is issued.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::offer,
    make: |r, _| make(r),
};

/// What nobody stated yet.
const TO_BE_STATED: &str = "[to be stated]";

fn make(r: &mut Report<'_>) {
    let Some(train) = &r.settled.job.design.train else { return };
    if !r.settled.pick.as_ref().is_some_and(|pick| pick.fits) {
        r.out.lead("On a condition.", "No unit fits all that was asked; the numbers are those of the nearest, and the points of the offer summary are to be settled before this is issued.");
    }
    general::general(r, train);
    products::products(r, train);
    execution::execution(r, train);
    common::invented(r);
    common::cautions(r, ON_SITE);
}

/// A clause: its number and title, and its paragraphs.
fn clause(r: &mut Report<'_>, title: &str, texts: Vec<String>) {
    if texts.is_empty() {
        return;
    }
    r.out.heading(title);
    r.out.list(true, texts.into_iter().map(|text| (text, String::new())));
}

/// A word that may not be known.
fn or_open(text: Option<&str>) -> String {
    text.filter(|text| !text.trim().is_empty()).map_or_else(|| TO_BE_STATED.to_owned(), str::to_owned)
}

/// How many units, in words.
fn units(train: &Train) -> String {
    let n = train.bought();
    if n > 1.0 { format!("{} like units", stillrise_units::print::digits(n, 2)) } else { "one unit".to_owned() }
}
