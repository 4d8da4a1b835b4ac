//! That nothing fits, and what would do instead.

use super::{capital, stands};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::containment::passes::Passing;
use stillrise_search::Settled;
use stillrise_search::shortfall::{Shortfall, WithoutSpill, Would};
use stillrise_units::catalog::{FT, GAL, M, M3};
use stillrise_units::{Flow, Length, Typed, print};

/// That nothing fits and what would do, and what stopped, in words that need no formula.
pub(crate) fn stops(settled: &Settled) -> Vec<String> {
    let mut out = Vec::new();
    if let Some(short) = &settled.shortfall {
        out.push(nothing_fits(settled, short));
        if let Some(sides) = short.room {
            let [length, width, height] = sides.map(|l| side(settled, l));
            let model = capital(&short.nearest);
            out.push(format!(
                "{model} would take {} where there is room for {length} x {width} in plan{}, and {height} clear over the ground{}.{}",
                what_comes(settled),
                if short.in_ground { "" } else { ", with a walkway all around" },
                if short.spill_ahead { ", once the spill is held ahead of it" } else { "" },
                calculated(settled, &short.words, THEN)
            ));
        }
        out.extend(held_back(settled, short));
        let held = short.without_spill.as_ref();
        out.extend(held.map(|held| without_spill(settled, held)));
        let would: Vec<String> = short.would.iter().map(|w| would(settled, w)).collect();
        if !would.is_empty() {
            let elsewhere = short.would.iter().any(|w| w.room.is_some());
            out.push(if elsewhere {
                format!(
                    "None that would do goes into the place{}. Where there is room for it, this would take the water: {}.",
                    Some(stands::place(settled))
                        .filter(|p| !p.is_empty())
                        .unwrap_or_else(|| " that was stated".to_owned()),
                    would.join("; or ")
                )
            } else {
                format!("What would take the water: {}.{}", would.join("; or "), first_of(settled, &short.would))
            });
        } else if short.room.is_none() && held.is_none() && !settled.job.enquiry.unit_stands() {
            out.push(
                "No number of them up to eighty would do, and we found no dimensions made to measure that would: what is named below has to change first."
                    .to_owned(),
            );
        }
    }
    // That nothing fits has been said.
    let told = settled.shortfall.is_some();
    for stop in settled.job.design.stops.iter().filter(|s| !s.formula && !told) {
        out.push(format!("Stopped at {}: {}.", stop.doing, stop.reason));
    }
    if settled.job.design.stops.iter().any(|s| s.formula) {
        out.push(
            "Part of the calculation could not be made: a value lies outside what its methods cover. The calculation report says which."
                .to_owned(),
        );
    }
    out
}

/// The water that comes to the unit; with its flow where less passes to it than arrives.
fn what_comes(settled: &Settled) -> String {
    passed_on(settled).map_or_else(
        || "the water".to_owned(),
        |(passed, _)| {
            let most = print::in_prose(passed.si(), settled.job.enquiry.system().pick(FLOW_UNITS));
            let pumped = settled.job.design.basis.as_ref().is_some_and(|basis| basis.feed.pumped);
            if pumped {
                format!("the {most} that are lifted to it at most")
            } else {
                format!("the {most} that reach it at most")
            }
        },
    )
}

/// The most that is passed on to the unit, and the most that arrives, where that is more.
fn passed_on(settled: &Settled) -> Option<(Flow, Flow)> {
    let cases = settled.job.design.basis.as_ref().map_or(&[][..], |basis| &basis.cases);
    let passed = stillrise_design::basis::cases::largest(cases)?.feed.q;
    let more = cases.iter().filter(|case| case.inflow.q.si() > case.feed.q.si() * 1.001);
    let arrives = more.map(|case| case.inflow.q).reduce(|a, b| if b > a { b } else { a })?;
    Some((passed, arrives))
}

/// What has to be held back ahead where nothing fits and more arrives than is passed on: it needs room too.
fn held_back(settled: &Settled, short: &Shortfall) -> Option<String> {
    let (passed, arrives) = passed_on(settled)?;
    let system = settled.job.enquiry.system();
    let flow = |q: Flow| print::in_prose(q.si(), system.pick(FLOW_UNITS));
    let volume = short.held.map_or_else(
        || "The rest has to be held back ahead".to_owned(),
        |held| {
            format!(
                "Some {} have to be held back ahead (first size)",
                print::in_prose(held.si(), system.pick((&GAL, &M3)))
            )
        },
    );
    Some(format!(
        "As much as {} arrive, and {} are passed on to a separator. {volume}, in room of its own.",
        flow(arrives),
        flow(passed)
    ))
}

/// That nothing fits, in the words of what was asked for, and what speaks against the one that comes nearest.
fn nothing_fits(settled: &Settled, short: &Shortfall) -> String {
    let unit = &settled.job.enquiry.unit;
    // One obstacle is told whole, of several the titles: what they say stands with what must change.
    let speaks = match &short.against[..] {
        [] => "nothing can be calculated for it".to_owned(),
        [one] => one.says.clone(),
        several => several.iter().map(|a| a.title.as_str()).collect::<Vec<_>>().join("; "),
    };
    if unit.dimensions.is_some() || unit.model.is_some() {
        let who = match (settled.job.enquiry.unit_stands(), &unit.model.0) {
            (true, _) => "the unit that stands".to_owned(),
            (false, Some(model)) => model.clone(),
            (false, None) => "the unit that was described".to_owned(),
        };
        return format!("What {who} does cannot be calculated: {speaks}.");
    }
    let nothing = match (*unit.custom == Some(true), unit.count.0) {
        (true, Some(1)) => "The one unit made to measure that was asked for does not fit.".to_owned(),
        (true, Some(n)) => format!("The {n} units made to measure that were asked for do not fit."),
        (true, None) => "No unit made to measure fits, alone or up to four in parallel.".to_owned(),
        (false, Some(1)) => "No single unit fits, of the range or made to measure.".to_owned(),
        (false, Some(n)) => {
            format!("{n} units in parallel were asked for: none of the range fit, nor any made to measure.")
        }
        (false, None) => "Nothing of the range fits, alone or up to four in parallel.".to_owned(),
    };
    format!("{nothing} {} comes nearest; against it speaks: {speaks}.", capital(&short.nearest))
}

/// That the spill governs the flow, and what would do with it held ahead.
fn without_spill(settled: &Settled, held: &WithoutSpill) -> String {
    let flow = |q: Flow| print::in_prose(q.si(), settled.job.enquiry.system().pick(FLOW_UNITS));
    let then = match &held.unit {
        Some(unit) if held.fits => format!("for which this would do: {unit}"),
        Some(unit) => format!("which this would take, though not without a condition: {unit}"),
        None => "and nothing fits all the same".to_owned(),
    };
    format!(
        "The spill governs: it comes at {}. With the spill held ahead, {} are left to be treated, {then}.{}",
        flow(held.spill),
        flow(held.rest),
        counted(settled).map_or_else(String::new, |why| format!(" {}.", capital(&why)))
    )
}

/// Why a spill is counted as if none of it were held ahead, where that was not said for sure.
pub(crate) fn counted(settled: &Settled) -> Option<String> {
    let basis = settled.job.design.basis.as_ref()?;
    let ahead = basis.containment.as_ref()?;
    let (b, passing) = ahead.passing(basis.spill.as_ref()?.volume.q)?;
    (passing == Passing::Unknown).then(|| {
        format!(
            "the spill is counted as if {} held none of it, because it was not said for sure what is held there",
            ahead.names(&b.chain)
        )
    })
}

/// A side of a place or a unit.
fn side(settled: &Settled, l: Length) -> String {
    print::in_prose(l.si(), settled.job.enquiry.system().pick((&FT, &M)))
}

/// How the words on its limits are led in.
const THEN: &str = "its limits would then be";

/// What the calculation alone would say of the limits there; nothing where no limit is stated.
fn calculated(settled: &Settled, words: &[(usize, &str)], its: &str) -> String {
    let Some(basis) = &settled.job.design.basis else { return String::new() };
    let said = |(place, word): &(usize, &str)| {
        let limit = basis.limits.get(*place)?;
        Some(format!("{} {word}", super::limit(limit)))
    };
    let said: Vec<String> = words.iter().filter_map(said).collect();
    if said.is_empty() {
        return String::new();
    }
    format!(" By the calculation alone {its}: {}.", said.join(", "))
}

/// What the calculation says of the limits with the first of those that would take the water, and of the levels.
fn first_of(settled: &Settled, would: &[Would]) -> String {
    let Some(first) = would.first() else { return String::new() };
    let lifted = if first.lifted { " On the levels we have, a pump has to lift the water through it." } else { "" };
    let its = if would.len() > 1 { "with the first of them its limits would be" } else { THEN };
    calculated(settled, &first.words, its) + lifted
}

fn would(settled: &Settled, w: &Would) -> String {
    let [length, width, height] = w.size.map(|l| side(settled, l));
    let inside = format!("some {length} x {width} inside and {height} high");
    let what = match &w.model {
        Some(model) if w.count == 1 => format!("one {model}, {inside}"),
        Some(model) => format!("{} of {model} in parallel, each {inside}", w.count),
        None if w.count == 1 => format!("one made to measure, {inside}"),
        None => format!("{} made to measure, each {inside}", w.count),
    };
    let them = if w.count == 1 { "it" } else { "them" };
    let ahead = if w.spill_ahead { format!(", once the spill is held ahead of {them}") } else { String::new() };
    let room = w.room.map_or_else(String::new, |sides| {
        let [length, width, height] = sides.map(|l| side(settled, l));
        let around = match (w.in_ground, w.count) {
            (true, 1) => "",
            (true, _) => " with room to fill in between and around them",
            (false, _) => " with a walkway all around",
        };
        format!(", in {length} x {width} in plan{around} and {height} clear over the ground")
    });
    let still = if w.still.is_empty() {
        String::new()
    } else {
        format!(
            " (not offered as it is: against {} still speaks: {})",
            if w.count == 1 { "it" } else { "each" },
            w.still.join("; ")
        )
    };
    format!("{what}{room}{ahead}{still}")
}
