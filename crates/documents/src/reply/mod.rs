//! The fifteen-minute answer, as the text of a mail to the customer: what was asked is answered first, then what we
//! offer and what else would do, what contradicts, what must change, the questions that decide, what was assumed.

mod alike;
pub(crate) mod alternatives;
mod asks;
mod assumed;
mod beside;
mod besides;
mod carried;
mod changes;
mod contradictions;
mod emptied;
mod european;
mod facts;
mod in_short;
mod named;
mod not_rising;
mod offer;
mod plant;
mod posed;
mod pumps;
mod site_levels;
pub(crate) mod standing;
mod turns;
mod weight;

pub(crate) use asks::is_answerable;
pub(crate) use changes::Point;
pub use posed::{Posed, posed};
pub(crate) use posed::{counts, every_question};

pub(crate) use facts::Of;

use crate::render::text::{item, wrap};
use crate::summary::{CAUTION, headline, is_proposed};
use stillrise_checks::rules::{hopper_missing, solids_bury_pack};
use stillrise_checks::{Grade, Judged};
use stillrise_design::train::Train;
use stillrise_search::Settled;
use stillrise_search::remedies::AGREE;
use stillrise_units::{Unit, print};

/// Width of the mail's lines.
const WIDTH: usize = 76;

type Pair = (&'static Unit, &'static Unit);

/// The mail; it tells of the other trains that would do where they were worked.
#[must_use]
pub fn reply(settled: &Settled) -> String {
    let head = &settled.job.enquiry.head;
    let title = head.title.as_deref().unwrap_or("your enquiry");
    let project = head.project.as_deref().map_or_else(String::new, |p| format!("{p}, "));
    let mut out = format!("Subject: {project}{title}: oil-water separator, first answer\n\nGood day,\n\n");
    say(
        &mut out,
        "thank you for your enquiry. This is a first answer to what you told us; it is preliminary and no quotation.",
    );
    list(&mut out, "In short:", false, &in_short::in_short(settled));
    for line in headline(settled) {
        say(&mut out, &line);
    }
    list(&mut out, "What you named:", false, &named::answers(settled));
    list(&mut out, "What you asked besides:", false, &besides::answers(settled));
    list(&mut out, "What became of your laboratory results:", false, &crate::summary::evidence::became(settled));
    offer::offer(&mut out, settled);
    list(&mut out, &others(settled), false, &alternatives::lines(settled, prices_are_told(settled)));
    list(
        &mut out,
        "Two answers to one question; please tell us which holds:",
        false,
        &contradictions::contradictions(settled),
    );
    list(&mut out, "We worked with this as if it were agreed; please confirm it:", false, &proposed(settled));
    let changes = if crate::rating::is_observed(settled) {
        "Where the unit falls short by the calculation; whether that explains the results is for the tests to show:"
    } else {
        "What must change or be settled:"
    };
    list(&mut out, changes, false, &changes::must_change(settled));
    let lead = if asks::decide(settled) { "Please answer; the first decide the job:" } else { "Please answer:" };
    list(&mut out, lead, true, &asks::questions(settled));
    list(&mut out, "We based this on:", false, &assumed::assumed(settled));
    out.push_str(&wrap(CAUTION, WIDTH, 0));
    out.push_str("\nKind regards\n");
    if let Some(by) = &head.prepared_by.0 {
        out.push_str(&format!("{by}\n"));
    }
    let company = crate::company::company(&settled.job.enquiry);
    for line in core::iter::once(&company.name).chain(&company.address).filter(|line| !line.is_empty()) {
        out.push_str(&format!("{line}\n"));
    }
    out
}

/// What settles a finding and is the client's to decide.
fn proposed(settled: &Settled) -> Vec<String> {
    let open = settled.verdicts.iter().filter(|judged| is_proposed(judged));
    let said = open.filter_map(|judged| judged.decision.as_ref()?.because.0.clone());
    said.map(|text| {
        let end = text.find(&format!("; {AGREE}")).unwrap_or(text.len());
        format!("{}.", &text[..end])
    })
    .collect()
}

/// What somebody named and asked beforehand, each answered: for the terminal, the result and the report too.
pub(crate) fn answered(settled: &Settled) -> Vec<String> {
    named::answers(settled).into_iter().chain(besides::answers(settled)).collect()
}

/// In what sense a unit is told, if there is something to be known ahead of it, and what it is: a fact each, but for what is needed beside it.
pub(crate) fn offered(settled: &Settled, train: &Train) -> (String, Vec<(Of, String)>) {
    (offer::lead(settled).0, facts::facts(settled, train, false))
}

/// What is needed beside a unit, in brief.
pub(crate) fn needed_beside(settled: &Settled, train: &Train) -> Vec<String> {
    beside::needed_in_brief(settled, train)
}

/// What must change or be settled, a thing each.
pub(crate) fn points(settled: &Settled) -> Vec<Point> {
    changes::points(settled)
}

/// What is needed beside a unit, by its names alone.
pub(crate) fn beside_in_short(settled: &Settled, train: &Train) -> Vec<String> {
    beside::in_short(settled, train)
}

/// What a unit weighs full of water, as far as it is known.
pub(crate) fn weight_full(settled: &Settled) -> Option<String> {
    weight::full(settled)
}

/// What was assumed, as far as it moves the result.
pub(crate) fn assumed(settled: &Settled) -> Vec<String> {
    assumed::assumed(settled)
}

/// Where two answers stand to one question.
pub(crate) fn contradictions(settled: &Settled) -> Vec<String> {
    contradictions::contradictions(settled)
}

/// How often the unit is to be emptied.
pub(crate) fn emptied_in_short(settled: &Settled) -> Option<String> {
    let storage = &settled.job.design.performance.as_ref()?.storage;
    // What is no routine is not told as one.
    let too_often = settled.judged(&solids_bury_pack::RULE).is_some_and(Judged::stands_failed);
    let routine = if too_often { " (too often for a routine, to be settled first)" } else { "" };
    let sludge = storage.sludge_days.map(|days| emptied::often(days.q));
    let oil = storage.oil_soonest.or(storage.oil_routine).map(|days| emptied::often(days.q));
    // Without a hopper there is nothing to draw sludge from alone.
    let whole = settled.judged(&hopper_missing::RULE).is_some_and(|judged| judged.grade() == Grade::Warns);
    let sooner = storage.sludge_days.zip(storage.oil_soonest.or(storage.oil_routine)).is_some_and(|(s, o)| s.q < o.q);
    // What fills so slowly is looked at all the same.
    let seldom = storage.oil_soonest.or(storage.oil_routine).is_some_and(|days| emptied::is_seldom(days.q));
    let looked = if seldom { " by the calculation; look at it every quarter, and after any spill" } else { "" };
    let often = match (sludge, oil) {
        (Some(sludge), Some(_)) if whole && sooner => {
            Some(format!("all of it, as it has no hopper to draw sludge from, {sludge}{routine}"))
        }
        (Some(sludge), Some(oil)) if sludge == oil => Some(format!("sludge and oil {oil}{routine}")),
        (Some(sludge), Some(oil)) => Some(format!("sludge {sludge}{routine}, oil {oil}")),
        (sludge, oil) => {
            sludge.map(|often| format!("sludge {often}{routine}")).or(oil.map(|often| format!("oil {often}")))
        }
    };
    often.map(|often| format!("{often}{looked}"))
}

/// How often the unit is to be emptied of each, in days: nothing of what is not known.
pub(crate) fn emptied_in_days(settled: &Settled) -> Vec<String> {
    let Some(storage) = settled.job.design.performance.as_ref().map(|p| &p.storage) else { return Vec::new() };
    let sludge = storage.sludge_days.map(|days| format!("sludge is to be pumped out {}", emptied::in_days(days.q)));
    let oil = storage.oil_soonest.or(storage.oil_routine);
    let oil = oil.map(|days| format!("oil is to be pumped out {}", emptied::in_days(days.q)));
    sludge.into_iter().chain(oil).collect()
}

/// What leads the other trains; where nothing is offered, also that their units are invented.
fn others(settled: &Settled) -> String {
    let invented = settled.job.design.train.is_none() && settled.job.enquiry.range.is_none();
    let invented = if invented { "; models stand in an invented demonstration range" } else { "" };
    format!(
        "What else we worked through (\"out\" is the mean that leaves at the end of the interval; the words on limits count peaks and what nobody has confirmed{invented}):"
    )
}

/// Whether a client is told prices and times of delivery: those of the demonstration range are invented, and a mail is no place
/// for them.
pub(crate) fn prices_are_told(settled: &Settled) -> bool {
    settled.job.enquiry.range.is_some()
}

/// A quantity for the mail, three digits.
fn show(settled: &Settled, si: f64, pair: Pair) -> String {
    print::in_prose(si, settled.job.enquiry.system().pick(pair))
}

fn say(out: &mut String, text: &str) {
    out.push_str(&wrap(text, WIDTH, 0));
    out.push('\n');
}

/// A list under a line, then a blank line; nothing when the list is empty.
fn list(out: &mut String, lead: &str, numbered: bool, lines: &[String]) {
    if lines.is_empty() {
        return;
    }
    out.push_str(&wrap(lead, WIDTH, 0));
    for (i, line) in lines.iter().enumerate() {
        let mark = if numbered { format!("{}.", i + 1) } else { "-".to_owned() };
        out.push_str(&item(&mark, line, WIDTH));
    }
    out.push('\n');
}
