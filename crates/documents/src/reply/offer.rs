//! What is offered, on which condition, and what must change first.

use super::facts::facts;
use super::{list, say, site_levels};
use crate::rating::{larger, test, words};
use crate::summary::{allows, capital, limit as named};
use stillrise_design::enquiry::blocks::{AlarmSign, Observed};
use stillrise_design::performance::limit::{LimitVerdict, Word};
use stillrise_design::triage::Weight;
use stillrise_search::Settled;
use stillrise_search::alternatives::Change;
use stillrise_search::diagnosis::causes::OF_THE_ALARM;
use stillrise_search::diagnosis::{Diagnosis, Step};
use stillrise_search::pick::Condition;
use stillrise_units::Typed;

/// The offer; where there is none, the headline has said why, and what any unit would meet on the site follows.
pub(super) fn offer(out: &mut String, settled: &Settled) {
    let enquiry = &settled.job.enquiry;
    let Some(train) = &settled.job.design.train else {
        if let Some(text) = site_levels::lies(settled) {
            say(out, &text);
        }
        return;
    };
    if enquiry.unit_stands() {
        say(
            out,
            "We offer nothing in place of the unit that stands before the tests are made that tell the causes apart.",
        );
        if let Some(d) = &settled.diagnosis {
            explained(out, settled, d);
        }
        return;
    }
    let facts: Vec<String> = facts(settled, train, true).into_iter().map(|(_, fact)| fact).collect();
    let (ahead, opens) = lead(settled);
    list(out, format!("{ahead} {opens}").trim_start(), false, &facts);
}

/// What opens the particulars of a unit that is offered on a condition.
const SIZE: &str = "It would be about:";

/// In what sense the unit is told: what is to be known ahead of it, and the words that open its particulars.
pub(super) fn lead(settled: &Settled) -> (String, &'static str) {
    let enquiry = &settled.job.enquiry;
    let blocked = settled.job.design.triage.iter().any(|l| l.weight == Weight::Blocks);
    let condition = settled.pick.as_ref().and_then(|pick| pick.condition.clone());
    let goes = into_the_place(settled);
    match (condition, blocked, settled.fails()) {
        // The unit has to take the spill's flow all the same, and only its volume finds no room.
        (Some(Condition::Ahead(_)), ..) if smaller_ahead(settled) => (
            "Sized for all the flow that comes to it, the spill's among it. It takes that flow but has not the room for the spill's volume; where the spill is held ahead, the smaller unit named below does instead."
                .to_owned(),
            SIZE,
        ),
        (Some(Condition::Ahead(rule)), true, _) => (
            format!(
                "We would not sell a separator alone for this as it stands. The size below is for the flow alone. Something ahead of it has to deal with this: {}; and something ahead of it or behind it has to keep the limits.",
                rule.title.to_lowercase()
            ),
            SIZE,
        ),
        (Some(Condition::Ahead(rule)), ..) => (
            format!(
                "Sized for all the flow that comes to it, with this dealt with ahead of it: {}.",
                rule.title.to_lowercase()
            ),
            SIZE,
        ),
        (Some(Condition::Limit), ..) => (
            format!(
                "{}We do not offer a separator alone for {}: {}.",
                not_by_gravity(settled),
                not_shown(settled),
                match enquiry.unit.count.0 {
                    None => {
                        format!("neither one nor up to four of any size of the range{goes} is shown to keep that")
                    }
                    Some(1) => format!("no single unit of the range{goes} is shown to keep that"),
                    Some(n) => format!("{n} units, of whichever size of the range{goes}, are not shown to keep that"),
                }
            ),
            "One that takes the water, to stand with what the points below name, would be about:",
        ),
        (None, true, _) => (
            "We would not sell a separator alone for this as it stands. The size below is for the flow alone; something ahead of it or behind it has to keep the limits. If the cause is taken away instead, the separator has to keep them, and may have to be larger."
                .to_owned(),
            SIZE,
        ),
        (None, false, true) => {
            ("The unit that comes nearest is told here; the points below must be settled first.".to_owned(), "It is:")
        }
        (None, false, false) if needs_none(settled) => (
            "By these figures the limits are kept without any separator. One may be wanted all the same, against a spill or because it is prescribed."
                .to_owned(),
            "What we would offer then:",
        ),
        (None, false, false) => (String::new(), "What we would offer:"),
    }
}

/// What we would look into at a unit that stands; where its results ask for no explanation, no more than its alarm.
fn explained(out: &mut String, settled: &Settled, d: &Diagnosis) {
    if let Some(text) = words::no_worse(d) {
        for text in core::iter::once(text).chain(alarm(d)) {
            say(out, &text);
        }
        return;
    }
    list(
        out,
        "What we would look into first, the cheapest test first; beside each how likely it plays a part, several may:",
        true,
        &tests(settled, d),
    );
    if let Some(text) = words::samples_first(d) {
        say(out, &text);
    }
    for text in words::not_parted(settled).into_iter().chain(alarm(d)) {
        say(out, &text);
    }
    say(out, &format!("Would a larger unit help? {}", larger(settled, d).join(" ")));
}

/// The limits that the unit taken is not shown to keep and a larger one might: "the limit of 15 mg/L (the city)".
fn not_shown(settled: &Settled) -> String {
    let each = limits_that(settled, |l| l.calculated == Word::NotShown && l.larger_helps);
    if each.is_empty() { "this limit".to_owned() } else { each.join(" and ") }
}

/// That no separator alone keeps some limits, which no larger one mends either.
fn not_by_gravity(settled: &Settled) -> String {
    let each = limits_that(settled, |l| l.word == Word::NotByGravity);
    if each.is_empty() { String::new() } else { format!("No separator alone keeps {}. ", each.join(" and ")) }
}

/// Limits of which something holds, as a sentence names them.
fn limits_that(settled: &Settled, holds: impl Fn(&LimitVerdict) -> bool) -> Vec<String> {
    let design = &settled.job.design;
    let (Some(basis), Some(performance)) = (&design.basis, &design.performance) else { return Vec::new() };
    let found = performance.limits.iter().filter(|l| holds(l));
    found
        .filter_map(|l| basis.limits.get(l.limit))
        .map(|limit| {
            let by = limit.authority.as_ref().map_or_else(String::new, |by| format!(" ({by})"));
            match &limit.unseen {
                Some(_) => format!("the limit on {}{by}", named(limit)),
                None => format!("the limit of {}{by}", allows(limit)),
            }
        })
        .collect()
}

/// Of which units a sentence on all of the range speaks, where a place was stated: " that goes into the place".
pub(super) fn into_the_place(settled: &Settled) -> &'static str {
    let site = &settled.job.enquiry.site;
    let place = site.max_length.is_given() || site.max_width.is_given();
    match (place, site.headroom.is_given() || site.lifting.is_given()) {
        (true, _) if !site.access.is_given() => " that goes into the place, be it without a walkway,",
        (true, _) | (false, true) => " that goes into the place",
        (false, false) => "",
    }
}

/// Whether another unit does with the spill held ahead, as is told below the offer.
pub(super) fn smaller_ahead(settled: &Settled) -> bool {
    let name = |design: &stillrise_design::job::Design| {
        design.train.as_ref().map(|t| (t.unit.particulars.model.clone(), t.count.q.si().to_bits()))
    };
    let held = settled.alternatives.iter().find(|a| a.change == Change::SpillAhead);
    held.is_some_and(|a| a.pick.is_some() && name(&a.design) != name(&settled.job.design))
}

/// Whether what arrives is within every limit already, and that word stands.
fn needs_none(settled: &Settled) -> bool {
    let limits = settled.job.design.performance.as_ref().map_or(&[][..], |p| &p.limits);
    let spill = settled.job.design.basis.as_ref().is_some_and(|b| b.spill.is_some());
    !spill && !limits.is_empty() && limits.iter().all(|l| l.word == Word::Kept && l.influent.q <= l.against.q)
}

/// Steps in the mail.
const STEPS: usize = 3;

/// The tests for the likeliest causes, in the order of the rating and with the one that it names next, each with what
/// helps if it shows the cause.
fn tests(settled: &Settled, d: &Diagnosis) -> Vec<String> {
    let is_next = |s: &Step| d.next.is_some_and(|next| next.id == s.cause.id);
    let mut ranked: Vec<&Step> = d.steps.iter().collect();
    ranked.sort_by(|a, b| is_next(b).cmp(&is_next(a)).then(b.weight.total_cmp(&a.weight)));
    ranked.truncate(STEPS);
    let one = |s: &Step| {
        let by = s.change.map_or_else(String::new, |at| format!(" (since: {})", words::change(settled, at)));
        let (title, share) = (s.cause.title, crate::risk::percent(s.weight));
        format!(
            "{title} ({share}){by}. {} If so: {}",
            capital(&test(d, s.cause, settled.job.enquiry.system())),
            s.cause.remedy
        )
    };
    d.steps.iter().filter(|s| ranked.iter().any(|r| r.cause.id == s.cause.id)).map(one).collect()
}

/// What an alarm that sounds without oil may be: the likelier cause of the alarm alone, with its test.
fn alarm(d: &Diagnosis) -> Option<String> {
    let false_one = |o: &Observed| o.alarm.0 == Some(AlarmSign::False);
    if !d.seen.iter().any(|s| !s.good && false_one(&s.observed)) {
        return None;
    }
    let (cause, _) = d.causes.iter().find(|(c, _)| OF_THE_ALARM.contains(&c.id))?;
    Some(format!(
        "The alarm that sounds without oil: it need not have the same cause as the results. To look at: {}. {}",
        cause.title.to_lowercase(),
        capital(cause.test)
    ))
}
