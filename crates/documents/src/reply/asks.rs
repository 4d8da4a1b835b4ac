//! What is asked.

use super::alike::{asked, pattern, together};
use super::show;
use super::standing::all_standing;
use super::turns::{colder, floats, held_ahead, lifted};
use super::{not_rising, plant};
use crate::summary::{assumed_under, numberless, rests_on, stands, that_matter};
use std::collections::BTreeSet;
use stillrise_checks::ask::GROUNDWATER;
use stillrise_checks::rules::{does_not_fit, not_enough_fall, solids_bury_pack};
use stillrise_design::basis::containment::balance::Balance;
use stillrise_design::basis::containment::passes::Passing;
use stillrise_design::basis::{self, FLOW_UNITS};
use stillrise_design::enquiry::blocks::{
    Containment, Droplets, Inlet, Limit, OilContent, Rain, Site, Solids, Spill, Stream, Water,
};
use stillrise_design::performance::limit::{LimitVerdict, Word};
use stillrise_design::provenance::{Assumption, Entry, Origin};
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_search::Settled;
use stillrise_search::questions::Question;
use stillrise_search::standing::Asks;
use stillrise_units::Typed;

/// Questions in the mail.
const ASKED: usize = 8;
/// What is said of samples where they show both.
const SAMPLED: &str =
    "Single samples with their dates, taken now where there are none, show it, and how far peaks rise above the mean.";
/// Of these, questions on which a word hangs, before others have their place.
const DECIDING: usize = 4;
/// Of these, questions that stand whatever the numbers.
const STANDING: usize = 4;
/// Of those, what stands before what a finding rests on.
const AHEAD: usize = 2;
/// Questions on what findings rest on that nobody said.
const PRESSING: usize = 4;
/// Questions whose answers lead to another unit, ahead of what else is asked.
const TURNING: usize = 2;
/// What an answer must weigh to be asked for in the mail: less moves neither effluent nor unit nor store by a twentieth.
pub(super) const MOVES: f64 = 0.05;

/// The questions of the mail, those first that decide: the word on a limit, then what turns the job, then the rest.
pub(super) fn questions(settled: &Settled) -> Vec<String> {
    // What turns the unit, or what keeps it down, comes on top of what is asked of every job.
    let more = usize::from(held_ahead(settled).is_some()) + usize::from(lifted(settled) && floats(settled));
    every_question(settled).into_iter().take(ASKED + more).collect()
}

/// Whether a client can answer it: what droplets and grains spread over and how a pump pulses is ours to choose or to measure.
pub(crate) fn is_answerable(q: &Question) -> bool {
    !(q.declared.is(Droplets::spread) || q.declared.is(Inlet::pulsation) || q.declared.is(Solids::spread))
}

/// All that moves something and that a client can answer, in the order of the mail.
pub(super) fn every_question(settled: &Settled) -> Vec<String> {
    let (deciding, rest) = ranked(settled);
    let known = |q: &&Question| is_answerable(q);
    let deciding: Vec<&Question> = deciding.into_iter().filter(known).collect();
    let rest: Vec<&Question> = rest.into_iter().filter(known).filter(|q| q.weight > MOVES).collect();
    // The samples that show what a water carries show its peaks too: they are asked for once.
    let is_content = |q: &&Question| q.declared.is(OilContent::mean);
    let is_peak = |q: &&Question| q.declared.is(Water::oil_peak);
    let both = || deciding.iter().chain(&rest).copied();
    let once_sampled = both().any(|q| is_content(&q)) && both().any(|q| is_peak(&q));
    let stays = |q: &&Question| !(once_sampled && is_peak(q));
    let [deciding, rest] = [deciding, rest].map(|all| all.into_iter().filter(stays).collect::<Vec<_>>());
    // What several waters are asked alike is asked once, where the first of them stands.
    let alike = |q: &Question| {
        let all = || deciding.iter().chain(&rest).copied();
        if let Some(text) = not_rising::asked(all(), q) {
            return text;
        }
        let all: Vec<&Question> = all().filter(|other| pattern(other) == pattern(q)).collect();
        // What moves too little to stand among them may still be what a finding rests on.
        let text = together(if all.is_empty() { core::slice::from_ref(&q) } else { &all });
        if once_sampled && is_content(&q) { format!("{text} {SAMPLED}") } else { text }
    };
    let open = settled.standing.iter().filter(|s| !is_settled(settled, &s.asks));
    let standing: Vec<String> = all_standing(open.map(|s| &s.asks)).into_iter().take(STANDING).collect();
    let (stands_first, stands_then) = standing.split_at(standing.len().min(AHEAD));
    let mut once = BTreeSet::new();
    let decide: Vec<String> = deciding.iter().map(|q| alike(q)).filter(|text| once.insert(text.clone())).collect();
    let (first, others) = decide.split_at(decide.len().min(DECIDING));
    let (first, others) = (first.to_vec(), others.to_vec());
    let mut once = BTreeSet::new();
    let sludge = sludge(settled).into_iter().map(alike).filter(|text| once.insert(text.clone()));
    let mut seen = BTreeSet::new();
    let (cold, ahead) = (colder(settled, &rest), held_ahead(settled));
    let told = |q: &Question| cold.iter().any(|text| text.starts_with(&asked(q)));
    let texts = no_limit(settled)
        .into_iter()
        .chain(nothing_fits(settled))
        .chain(plant::asks(settled))
        .chain(numbers(settled, true))
        .chain(cold.clone())
        .chain(first)
        .chain(stands_first.iter().cloned())
        .chain(turning(settled, &rest).into_iter().filter(|q| !told(q)).map(alike))
        .chain(contents(settled).into_iter().map(alike))
        .chain(ahead)
        .chain(pressing(settled))
        .chain(sludge.take(2))
        .chain(stands_then.iter().cloned())
        .chain(stands::outlet(settled))
        .chain(of_rules(settled))
        .chain(numbers(settled, false))
        .chain(others)
        .chain(rest.iter().filter(|q| !told(q)).map(|q| alike(q)));
    texts.filter(|text| seen.insert(text.clone())).collect()
}

/// Which limits hold, where none was named: without them there is nothing to choose a unit by.
fn no_limit(settled: &Settled) -> Option<String> {
    let e = &settled.job.enquiry;
    let none = e.limits.is_empty() && !e.unit_stands();
    none.then(|| {
        "Which limits hold for the water that leaves: of what, how much, in which statistic and by which method?"
            .to_owned()
    })
}

/// The numbers of limits that were named without one: of what gravity touches, or of the rest, which stays whatever they are.
fn numbers(settled: &Settled, touched: bool) -> Option<String> {
    let is_so = |title: &str| {
        let mut of = settled.job.enquiry.limits.iter().filter_map(Limit::of).filter(|row| row.title == title);
        of.any(|row| row.gravity != Gravity::Cannot) == touched
    };
    let open = numberless(settled).into_iter().filter(|(title, _)| is_so(title));
    let open: Vec<String> = open.map(|(title, _)| title.to_lowercase()).collect();
    let on = (!open.is_empty()).then(|| open.join(" and "))?;
    Some(format!("What does the permit allow of {on}: how much, in which statistic and by which method?"))
}

/// What rules wait for that only the customer can say and that decides what is built; of a unit that stands nothing is
/// built.
fn of_rules(settled: &Settled) -> Vec<String> {
    let open = crate::summary::also_asked(settled, &[]);
    let built: &[&str] =
        if settled.job.enquiry.unit_stands() { &[] } else { &["spill.closure", "site.headroom", "site.groundwater"] };
    let wanted = |key: &str| {
        ["spill.rate", "spill.volume"].contains(&key) || key.ends_with(".drain_rate") || built.contains(&key)
    };
    let asks = open.into_iter().filter(|u| u.ask.key.as_deref().is_some_and(wanted));
    let text = |u: stillrise_checks::Unsettled<'_>| {
        let taken = settled.questions().iter().find(|q| u.ask.key.as_deref() == Some(q.key.as_str()));
        taken.map_or_else(|| u.ask.question.to_string(), asked)
    };
    asks.map(text).collect()
}

/// The weightiest of these whose answer leads to another unit.
fn turning<'a>(settled: &Settled, rest: &[&'a Question]) -> Vec<&'a Question> {
    let Some(taken) = settled.candidates.iter().find(|c| c.taken) else { return Vec::new() };
    let turns = |q: &&&Question| q.outcomes.iter().any(|o| o.unit.as_ref().is_some_and(|unit| *unit != taken.unit));
    rest.iter().filter(turns).take(TURNING).copied().collect()
}

/// The oil in the waters, where a limit's word rests on figures for it that nobody confirmed.
fn contents(settled: &Settled) -> Vec<&Question> {
    let limits = settled.job.design.performance.iter().flat_map(|p| &p.limits);
    let asked = of_entries(settled, limits.flat_map(|verdict| rests_on(settled, verdict)).collect());
    asked.into_iter().filter(|q| q.declared.is(OilContent::mean)).collect()
}

/// The solids in the waters and how long these run, where sludge is said to fill its room too soon on figures for them that
/// nobody stated.
fn sludge(settled: &Settled) -> Vec<&Question> {
    let fills = settled.judged(&solids_bury_pack::RULE).filter(|v| v.verdict.is_finding());
    let Some(at) = fills.and_then(|v| v.verdict.at()) else { return Vec::new() };
    let wanted = |a: &Assumption| a.declared.is_solids() || a.declared.is(Stream::hours_per_day);
    let moves = |q: &&Question| q.weight > MOVES;
    of_entries(settled, assumed_under(settled, at, &wanted)).into_iter().filter(moves).collect()
}

/// The questions on assumed numbers of the trail.
fn of_entries<'a>(settled: &'a Settled, entries: Vec<&Entry>) -> Vec<&'a Question> {
    let keys: BTreeSet<&str> = entries
        .iter()
        .filter_map(|entry| match &entry.origin {
            Origin::Assumed(a) => Some(a.key.as_str()),
            _ => None,
        })
        .collect();
    settled.questions().iter().filter(|q| keys.contains(q.key.as_str()) && !q.contradiction).collect()
}

/// What findings rest on that nobody said: the walkway where the place has no room for the one that was taken; where fall is
/// missing, whether the water may be lifted, and the outlet pipe; and what decides whether a containment holds.
fn pressing(settled: &Settled) -> Vec<String> {
    let subject = settled.subject();
    let open = |key: &str, what: &str| {
        let question = settled.questions().iter().find(|q| q.key == key);
        question.map_or_else(|| subject.ask_for(key, what).question.to_string(), asked)
    };
    let mut all = Vec::new();
    let fit = settled.judged(&does_not_fit::RULE);
    let walkway = fit.and_then(|v| v.verdict.asks().iter().find(|a| a.key.as_deref() == Some("site.access")));
    all.extend(walkway.map(|ask| {
        let question = settled.questions().iter().find(|q| q.declared.is(Site::access));
        question.map_or_else(|| ask.question.to_string(), asked)
    }));
    all.extend(lifted(settled).then(|| {
        let level = settled.job.enquiry.outlet.tailwater.claim();
        let over = settled.job.design.performance.as_ref().and_then(|p| p.site.installation.water_over_crest);
        if let (Some(level), Some(_)) = (level, over) {
            let outlet = &settled.job.enquiry.outlet.tailwater;
            // While the incoming pipe lies higher, what comes lifts the water in the unit over that at the outfall.
            let above = settled.job.enquiry.inlet.invert.q().zip(outlet.q()).is_some_and(|(pipe, water)| pipe > water);
            return format!(
                "How often, and for how long, does the water at the outfall stand at {}? It drowns this unit then: may the water be lifted by a pump ahead of the unit or behind it{}?",
                level.written.text,
                if above { ", or will a check valve do" } else { "" }
            );
        }
        "On the levels we have, the water does not get through this unit by gravity; may it be lifted by a pump ahead of the unit or behind it, or can it run out lower?".to_owned()
    }));
    // Whether it floats decides on an anchor slab, and with it on what is built.
    all.extend(floats(settled).then(|| GROUNDWATER.question.to_string()));
    if settled.judged(&not_enough_fall::RULE).is_some_and(|v| v.stands_failed()) {
        let site = settled.job.design.performance.as_ref().map(|p| &p.site);
        let slope = site.filter(|site| subject.assumed(site.slope.at).is_some());
        all.extend(slope.map(|_| open("outlet.slope", "slope of the outlet pipe")));
    }
    let Some(basis) = &settled.job.design.basis else { return all };
    let Some(ahead) = &basis.containment else { return all };
    let spill = basis.spill.as_ref().map(|spill| spill.volume.q);
    let counts = |b: &&Balance| {
        let counted = spill.is_some_and(|spill| b.declared && b.passing(spill) == Passing::Unknown);
        counted || b.dry.holds() == Some(false)
    };
    for b in ahead.balances.iter().filter(counts) {
        let valves = b.chain.iter().filter_map(|i| ahead.all[*i].valve.open.as_ref());
        let mut opens: Vec<_> = valves.chain(&b.open).collect();
        // The rain before what stands in it; fire water last, as there is mostly none.
        opens.sort_by_key(|open| match open.declared {
            key if key.is(Containment::drain) => 0,
            key if key.is(Rain::event_depth) => 1,
            key if key.is(Spill::fire_flow) || key.is(Spill::fire_duration) || key.is(Spill::fire_volume) => 3,
            _ => 2,
        });
        all.extend(opens.iter().map(|o| open(&o.key, &o.what)));
    }
    all.truncate(PRESSING);
    all
}

/// What is asked first where nothing fits: whether the place may change, whether the flow is right.
fn nothing_fits(settled: &Settled) -> Vec<String> {
    let Some(short) = &settled.shortfall else { return Vec::new() };
    let mut asks = Vec::new();
    let place = short.room.is_some() || short.would.iter().any(|w| w.room.is_some());
    if place {
        asks.push(format!(
            "Is the place{} fixed, or may the unit stand elsewhere or be split over two places?",
            stands::place(settled)
        ));
    }
    asks.extend(short.without_spill.as_ref().map(|held| {
        format!(
            "May the spill be held ahead of the separator, or does it come at less than {}?",
            show(settled, held.spill.si(), FLOW_UNITS)
        )
    }));
    let basis = settled.job.design.basis.as_ref();
    let flow = basis.and_then(|b| basis::cases::largest(&b.cases));
    if let Some(case) = flow.filter(|_| short.without_spill.is_none()) {
        let passed = show(settled, case.feed.q.si(), FLOW_UNITS);
        asks.push(if case.inflow.q.si() > case.feed.q.si() * 1.001 {
            let arrives = show(settled, case.inflow.q.si(), FLOW_UNITS);
            format!(
                "Is it right that {arrives} arrive ({}) and that {passed} are passed on to the separator? May part of it be kept apart?",
                case.name
            )
        } else {
            format!("Is {passed} to the separator right ({}), and may part of it be held back or kept apart?", case.name)
        });
    }
    asks
}

/// Whether the first questions decide: on the word on a limit, on the unit, or on whether anything fits.
pub(super) fn decide(settled: &Settled) -> bool {
    let Some(pick) = &settled.pick else { return settled.shortfall.is_some() };
    let taken = settled.candidates.iter().find(|c| c.taken).map(|c| &c.unit);
    let turns = |q: &&Question| {
        !q.holds.is_empty()
            || q.outcomes.iter().any(|o| {
                taken.is_some_and(|taken| o.unit.as_ref().is_some_and(|unit| unit != taken)) || o.effluent.is_none()
            })
    };
    pick.condition.is_some() || that_matter(settled).iter().any(turns)
}

/// Questions that hold a word back, and the others that matter; what contradicts is asked in its own place.
pub(super) fn ranked(settled: &Settled) -> (Vec<&Question>, Vec<&Question>) {
    let asked = that_matter(settled).into_iter().filter(|q| !q.contradiction);
    let (mut deciding, rest): (Vec<&Question>, Vec<&Question>) = asked.partition(|q| !q.holds.is_empty());
    // What a limit speaks of stands before what is held against it: anyone with the permit at hand can say.
    deciding.sort_by_key(|q| !q.declared.is(Limit::statistic));
    (deciding, rest)
}

/// Whether a question that stands can change nothing here: a method that counts less keeps what is kept with all counted.
fn is_settled(settled: &Settled, asks: &Asks) -> bool {
    let Asks::Method(word) = asks else { return false };
    let (Some(basis), Some(p)) = (&settled.job.design.basis, &settled.job.design.performance) else { return false };
    let of = |l: &&LimitVerdict| basis.limits.get(l.limit).is_some_and(|limit| limit.pollutant.word == *word);
    let mut on = p.limits.iter().filter(of).peekable();
    on.peek().is_some() && on.all(|l| l.word == Word::Kept)
}
