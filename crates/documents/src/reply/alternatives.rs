//! Other trains than the one asked for, a line each, with their own results.

use super::show;
use crate::summary::{HARDLY, mg_l};
use stillrise_checks::rules::solids_bury_pack::TOO_OFTEN;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::Kind;
use stillrise_design::job::Design;
use stillrise_design::performance::installation::Stands;
use stillrise_design::performance::limit::{LimitVerdict, Word};
use stillrise_design::performance::promise::Promise;
use stillrise_design::train::{StageKind, Train};
use stillrise_search::Settled;
use stillrise_search::alternatives::{Alternative, Change};
use stillrise_search::pick::Condition;
use stillrise_units::catalog::{D, GAL, M3};
use stillrise_units::{Time, Typed, print};

/// A line for each alternative, with or without what it would cost.
pub(crate) fn lines(settled: &Settled, with_price: bool) -> Vec<String> {
    settled.alternatives.iter().filter(|a| !is_no_better(settled, a)).map(|a| line(settled, a, with_price)).collect()
}

/// Less of the oil than this share taken off what leaves is no gain.
const GAIN: f64 = 0.05;

/// Whether two in parallel, a smaller pump, or waters kept apart, gain nothing over the one: no less oil, no better word, no lower price, no condition lifted,
/// and neither takes the whole flow alone.
fn is_no_better(settled: &Settled, a: &Alternative) -> bool {
    let design = &settled.job.design;
    let (Some(pick), Some(one), Some(two)) = (&a.pick, &design.train, &a.design.train) else { return false };
    if !matches!(a.change, Change::TwoInParallel | Change::RainKeptOut | Change::WashApart | Change::PumpAsAsked) {
        return false;
    }
    let out = design.performance.as_ref().and_then(|p| p.worst()).map(|worst| worst.total.expected.q);
    let ratio = a.effluent.zip(out).map_or(1.0, |(two, one)| two.si() / one.si().max(f64::MIN_POSITIVE));
    let words = || a.words.iter().zip(design.performance.iter().flat_map(|p| &p.limits));
    let better = ratio < 1.0 - GAIN
        || words().any(|(word, now)| *word < now.word)
        || pick.condition.is_none() && settled.pick.as_ref().is_some_and(|now| now.condition.is_some());
    let price = |train: &Train| train.unit.particulars.price.as_ref().map(|(each, _)| each * train.bought());
    // A tank ahead that is not needed is a gain.
    let held = |train: &Train| train.equalisation.as_ref().map_or(0.0, |hold| hold.volume().q.si());
    let less_held = held(two) < (1.0 - GAIN) * held(one);
    let cheaper = price(two).zip(price(one)).is_some_and(|(two, one)| two < one);
    let spare = a.change == Change::TwoInParallel && one.unit.particulars.model == two.unit.particulars.model;
    ratio > 1.0 + GAIN || !(better || cheaper || spare || less_held)
}

/// What of a spill finds no room in a unit.
fn no_room(settled: &Settled, design: &Design) -> Option<String> {
    let spare = design.performance.as_ref()?.storage.spill.as_ref()?.spare.q;
    (spare.si() < 0.0).then(|| {
        format!(
            "; {} of the spill find no room in it and are to be held ahead",
            show(settled, -spare.si(), (&GAL, &M3))
        )
    })
}

fn line(settled: &Settled, a: &Alternative, with_price: bool) -> String {
    let also = a.also.map_or_else(String::new, |also| format!(", and {}", also.text()));
    let lead = format!("{}{also}", crate::summary::capital(a.change.text()));
    let Some(train) = a.design.train.as_ref().filter(|_| a.pick.is_some()) else {
        let range = super::offer::into_the_place(settled);
        let against = a.nearest.as_ref().map_or_else(String::new, |(unit, against)| {
            format!("; {unit} comes nearest, and against it speaks: {}", against.join("; "))
        });
        let either = if settled.pick.is_some() { "" } else { " either" };
        // What one pump alone lifts may be another matter.
        let inlet = &settled.job.enquiry.inlet;
        let both = inlet.rate.0.len() > 1 && *inlet.together != Some(false) && *inlet.interlocked != Some(true);
        let both = if both && a.change != Change::OnePump { " with all pumps running" } else { "" };
        return format!("{lead}: nothing of the range{range} does that{both}{either}{against}.");
    };
    let mut facts = vec![a.unit.clone()];
    if let Some(basis) = &a.design.basis
        && let Some(flow) = basis.design_flow()
    {
        let case = stillrise_design::basis::cases::largest(&basis.cases);
        let of_a_spill = case.is_some_and(|case| case.kind == Kind::Spill);
        let case = case.map_or_else(String::new, |case| {
            let running = if basis.feed.pumped && case.pumps.is_none() { ", while the pump runs" } else { "" };
            format!(" ({}{running})", case.name)
        });
        // A spill is no water to be treated: what it is sized for besides is the flow of the others.
        let steady = basis.largest_steady().filter(|_| of_a_spill);
        facts.push(match steady {
            Some(steady) => format!(
                "for {} ({}), and {} while a spill runs through it",
                show(settled, steady.feed.q.si(), FLOW_UNITS),
                steady.name,
                show(settled, flow.q.si(), FLOW_UNITS)
            ),
            None => format!("for {}{case}", show(settled, flow.q.si(), FLOW_UNITS)),
        });
    }
    if a.one_pump && a.change != Change::OnePump {
        facts.push("with one pump at a time, which keeps up with it".to_owned());
    }
    if let Some(hold) = &train.equalisation {
        facts.push(format!("with {} held back ahead", show(settled, hold.volume().q.si(), (&GAL, &M3))));
    } else if settled.job.design.train.as_ref().is_some_and(|train| train.equalisation.is_some()) {
        facts.push("with nothing to be held back ahead".to_owned());
    }
    let stands = |design: &Design| design.performance.as_ref().map(|p| p.site.installation.stands.q);
    if stands(&settled.job.design) == Some(Stands::LiftPump) && stands(&a.design) != Some(Stands::LiftPump) {
        facts.push(match stands(&a.design) {
            Some(Stands::InPit | Stands::Buried) => {
                "without that pump but in the ground, where it may float when it is emptied".to_owned()
            }
            _ => "without that pump".to_owned(),
        });
    }
    if let Some((price, currency)) = train.unit.particulars.price.as_ref().filter(|_| with_price) {
        let without = if matches!(
            a.change,
            Change::GentlePump
                | Change::QuickBreakAndGentle
                | Change::PumpAsAsked
                | Change::PumpAsAskedAndGentle
                | Change::RainKeptOutAndPump
        ) {
            " without the pump"
        } else {
            ""
        };
        let options = super::weight::options(train);
        facts.push(format!("budget {} {currency}{without}{options}", print::digits(price * train.bought(), 3)));
    }
    if settled.job.design.train.is_none() {
        // Of the one that is offered it is told what stands beside it.
        let beside: Vec<&str> = train
            .stages
            .iter()
            .filter(|stage| stage.asked_for && stage.kind != StageKind::Equalisation)
            .map(|stage| stage.name.as_str())
            .collect();
        if !beside.is_empty() {
            facts.push(format!("needed beside it: {}", beside.join(", ")));
        }
    }
    if let Some(worst) = a.design.performance.as_ref().and_then(|p| p.worst()) {
        let (out, comes) = (worst.total.expected.q, worst.content.total.q);
        // Whoever pays for a unit is to see where it takes hardly anything out.
        let hardly = out.si() > HARDLY * comes.si();
        let comes = if hardly { format!(" of the {} that come", mg_l(comes)) } else { String::new() };
        facts.push(format!("{} out{comes}", Promise::of(out, worst.content.total.q).sentence()));
    }
    let sludge = a
        .design
        .performance
        .as_ref()
        .and_then(|p| p.storage.sludge_days)
        .filter(|days| settled.job.design.train.is_none() || days.q < Time::of(TOO_OFTEN, &D));
    let trap = train.stages.iter().any(|stage| stage.kind == StageKind::GritTrap && stage.asked_for);
    let without = if trap { ", without a trap ahead" } else { "" };
    facts.extend(sludge.map(|days| format!("sludge to be pumped out {}{without}", super::emptied::often(days.q))));
    let soonest = a.design.performance.as_ref().and_then(|p| p.storage.oil_soonest.or(p.storage.oil_routine));
    let soonest = soonest.filter(|days| !super::emptied::is_seldom(days.q));
    facts.extend(soonest.map(|days| {
        format!(
            "oil to be pumped out {}, to plan by, with all free oil that arrives held",
            super::emptied::often(days.q)
        )
    }));
    let one = settled.job.design.train.as_ref().map(|t| t.unit.particulars.model.as_str());
    if a.change == Change::TwoInParallel && one == Some(train.unit.particulars.model.as_str()) {
        facts.push("each takes the whole flow alone, so that one can be emptied while the other runs".to_owned());
    }
    let (words, now) = (said(&a.design, &a.words), said(&settled.job.design, &words_now(settled)));
    let condition = match a.pick.as_ref().and_then(|p| p.condition.as_ref()) {
        Some(Condition::Ahead(rule)) => {
            format!("; on the condition that this is dealt with ahead of it: {}", rule.title.to_lowercase())
        }
        // The words on the limits say it; of a spill they say nothing.
        Some(Condition::Limit) | None => no_room(settled, &a.design).unwrap_or_default(),
    };
    format!("{lead}: {}{}{condition}.", facts.join(", "), against_now(&words, &now))
}

/// The word on each limit of what was asked for, everything heard.
fn words_now(settled: &Settled) -> Vec<Word> {
    settled.job.design.performance.iter().flat_map(|p| &p.limits).map(|l| l.word).collect()
}

/// What is said of each limit: the limit, and the word with what the calculation alone says.
fn said(design: &Design, words: &[Word]) -> Vec<(String, String)> {
    let limits = design.performance.as_ref().map_or(&[][..], |p| &p.limits);
    let one = |(verdict, word): (&LimitVerdict, &Word)| {
        let limit = design.basis.as_ref()?.limits.get(verdict.limit)?;
        // As plain as where it is the job asked for.
        let above = *word == Word::NotShown && verdict.is_exceeded_by_calculation();
        let calculated = matches!(verdict.calculated, Word::Kept | Word::Likely) && *word == Word::NotShown;
        // What arrives is within it already: it asks for no separator.
        let before = calculated && limit.unseen.is_none() && verdict.influent.q <= verdict.against.q;
        let by = match (above, &limit.unseen) {
            _ if before => " (what arrives is within it before any separator, on figures that nobody confirmed)",
            (true, _) if verdict.peak.is_some() => " (exceeded by the calculation, at the peak of what arrives)",
            (true, _) => " (exceeded by the calculation)",
            (false, Some(_)) if *word == Word::NotShown => " (it is judged by eye)",
            (false, None) if calculated => " (kept by the calculation alone, on figures that nobody confirmed)",
            _ => "",
        };
        Some((crate::summary::limit(limit), format!("{}{by}", word.text())))
    };
    limits.iter().zip(words).filter_map(one).collect()
}

/// The words where they differ from those of what was asked for; all of them where nothing was found for that.
fn against_now(words: &[(String, String)], now: &[(String, String)]) -> String {
    let list = |words: &[&(String, String)]| {
        words.iter().map(|(limit, word)| format!("{limit}: {word}")).collect::<Vec<_>>().join(", ")
    };
    let differ: Vec<&(String, String)> = words.iter().filter(|word| !now.contains(word)).collect();
    match (words.len() - differ.len(), differ.is_empty()) {
        _ if words.is_empty() => String::new(),
        (0, _) => format!("; limits: {}", list(&differ)),
        (1, true) => "; the limit as above".to_owned(),
        (_, true) => "; all limits as above".to_owned(),
        (1, false) => format!("; limits: {}, the other as above", list(&differ)),
        (_, false) => format!("; limits: {}, the others as above", list(&differ)),
    }
}
