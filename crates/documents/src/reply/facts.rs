//! What is told of a unit that is offered, a fact each, and what each speaks of: for the mail in their order, for the offer summary by
//! what the reader looks for.

use super::offer::into_the_place;
use super::{show, weight};
use crate::summary::stands;
use crate::summary::taken::because;
use stillrise_checks::Grade;
use stillrise_checks::rules::{does_not_fit, plate_area_short, spill_above_room};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::Kind;
use stillrise_design::basis::fluids::Season;
use stillrise_design::performance::State;
use stillrise_design::performance::limit::Word;
use stillrise_design::performance::removal::Removal;
use stillrise_design::train::{StageKind, Train};
use stillrise_search::Settled;
use stillrise_search::because::Because;
use stillrise_search::pick::{Condition, Pick};
use stillrise_units::catalog::{DEG_C, DEG_F, FT, IN, M, MM, PERCENT, UM};
use stillrise_units::{Typed, print};

/// What a fact about the unit speaks of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Of {
    /// Its name.
    Name,
    /// What is bought: size, why this one, price.
    Bought,
    /// What it takes and does.
    Does,
    /// Where it falls short of a limit.
    Short,
    /// What it needs of whoever sets it up.
    Needs,
    /// That its range is invented.
    Range,
    /// How it stands.
    Stands,
    /// How often it is emptied.
    Emptied,
}

/// Size, weight, price, delivery, and what is needed beside.
pub(crate) fn facts(settled: &Settled, train: &Train, with_beside: bool) -> Vec<(Of, String)> {
    let p = &train.unit.particulars;
    let n = train.count.q.si();
    let all = train.bought();
    let each = if all > 1.0 { " each" } else { "" };
    let body = &train.unit.body;
    let choice = settled.job.design.performance.as_ref().and_then(|p| p.fit.choice);
    let how = choice.map_or_else(String::new, |choice| format!(", {}", choice.q.word()));
    let spare = train.standby.map_or(0.0, |spare| spare.q.si());
    let by = match spare {
        s if s > 1.5 => format!(", and {} more that stand by", print::digits(s, 2)),
        s if s > 0.5 => ", and one more that stands by".to_owned(),
        _ => String::new(),
    };
    let name =
        if n > 1.0 { format!("{} x {}{how}{by}", print::digits(n, 2), p.model) } else { format!("{}{by}", p.model) };
    let mut facts = vec![(Of::Name, name)];
    match p.shipping {
        Some([l, w, h]) => facts.push((
            Of::Bought,
            format!(
                "shipping size{each} {} x {} x {} (length, width, height)",
                show(settled, l.q.si(), (&IN, &MM)),
                show(settled, w.q.si(), (&IN, &MM)),
                show(settled, h.q.si(), (&IN, &MM))
            ),
        )),
        None => facts.push((
            Of::Bought,
            format!(
                "inside{each} {} x {}, walls {} high",
                show(settled, body.over_all().q.si(), (&FT, &M)),
                show(settled, body.width().q.si(), (&FT, &M)),
                show(settled, body.height().q.si(), (&FT, &M))
            ),
        )),
    }
    facts.extend(why(settled).map(|fact| (Of::Does, fact)));
    let below = |pick: &&Pick| pick.fits && matches!(pick.because, Because::Smallest { below: Some(_), .. });
    facts.extend(settled.pick.as_ref().filter(below).map(|pick| (Of::Bought, because(settled, pick))));
    // A unit that hardly goes into its place is not offered without a word on it.
    let tight = settled.judged(&does_not_fit::RULE).filter(|v| v.grade() == Grade::Warns);
    facts.extend(tight.map(|v| (Of::Needs, format!("check the place: {}", v.verdict.says()))));
    let reserve = settled.judged(&plate_area_short::RULE).filter(|v| v.grade() == Grade::Warns);
    facts.extend(reserve.map(|v| (Of::Does, v.verdict.says().to_owned())));
    facts.extend(none_spare(settled, train).map(|fact| (Of::Does, fact)));
    facts.extend(super::emptied::emptied(settled).into_iter().map(|fact| (Of::Emptied, fact)));
    // What was asked to be held is answered, also where it is.
    let spill = settled.judged(&spill_above_room::RULE).filter(|v| v.grade() == Grade::Passes);
    facts.extend(
        spill
            .filter(|_| settled.job.design.basis.as_ref().is_some_and(|b| b.spill.is_some()))
            .map(|v| (Of::Does, format!("{}{}", v.verdict.says(), after_a_spill(settled)))),
    );
    let options = weight::options(train);
    facts.extend(weight::weight(settled, train, each).map(|fact| (Of::Needs, fact)));
    facts.extend(super::pumps::pumps(settled, train).into_iter().map(|fact| (Of::Needs, fact)));
    facts.extend(stands::how(settled).map(|fact| (Of::Stands, fact)));
    let place = [stands::floats(settled), stands::room(settled)];
    facts.extend(place.into_iter().flatten().map(|fact| (Of::Needs, fact)));
    let beside = super::beside::needed(settled, train);
    let closure = if train.stages.iter().any(|s| s.kind == StageKind::Closure) { ", outlet closure" } else { "" };
    let without = match (beside.is_empty(), super::changes::must_change(settled).is_empty()) {
        (true, true) => format!("without freight{closure} and installation"),
        (true, false) => format!("without freight{closure}, installation and what the points below ask for"),
        (false, _) => format!("without freight{closure}, installation and what is needed beside it or asked for below"),
    };
    let budget = match &p.price {
        Some(_) if !super::prices_are_told(settled) => {
            format!("budget and delivery: to follow{options}, {without}")
        }
        Some((price, currency)) if all > 1.0 => format!(
            "budget {} {currency} for all, {} {currency} each{options}, {without}",
            print::digits(price * all, 3),
            print::digits(*price, 3)
        ),
        Some((price, currency)) => format!("budget {} {currency}{options}, {without}", print::digits(*price, 3)),
        None => "budget: to follow, the unit is made to measure".to_owned(),
    };
    facts.push((Of::Bought, budget));
    if let Some(time) = p.lead_time.as_ref().filter(|_| super::prices_are_told(settled)) {
        facts.push((Of::Bought, format!("delivery {time}")));
    }
    if !super::prices_are_told(settled) && p.price.is_some() {
        facts.push((Of::Range, "model, sizes and weight stand in an invented demonstration range".to_owned()));
    }
    let open = exceeded(settled);
    if with_beside && !beside.is_empty() {
        let text = format!("needed beside it, neither part of the unit nor in the room above: {}", beside.join("; "));
        facts.push((Of::Needs, text));
    }
    if !open.is_empty() {
        let largest = settled.pick.as_ref().is_some_and(|pick| pick.condition == Some(Condition::Limit));
        let polisher = train.stages.iter().any(|s| s.kind == StageKind::Polisher);
        let behind = if polisher { "the polisher" } else { "a stage behind it" };
        let ways = if largest {
            format!(
                "no larger unit of the range{} does that; less water at a time, droplets that are broken less, or {behind} has to",
                into_the_place(settled)
            )
        } else {
            format!("a larger unit, droplets that are broken less, or {behind} has to close that")
        };
        let text = format!("not enough by itself, by the calculation: {}; {ways}", open.join("; "));
        facts.push((Of::Short, text));
    }
    facts
}

/// What is to be done after a spill that the unit holds: its room is taken until the oil is out.
fn after_a_spill(settled: &Settled) -> &'static str {
    let spill = settled.job.design.basis.as_ref().and_then(|basis| basis.spill.as_ref());
    if spill.is_some_and(|spill| !spill.is_held_ahead()) {
        "; after a spill the oil is to be pumped out at once, for its room is wanted for the next"
    } else {
        ""
    }
}

/// Limits on oil that what leaves lies above by the calculation, with both numbers, though gravity could keep them.
fn exceeded(settled: &Settled) -> Vec<String> {
    let design = &settled.job.design;
    let (Some(basis), Some(performance)) = (&design.basis, &design.performance) else { return Vec::new() };
    let open = performance
        .limits
        .iter()
        .filter(|l| l.predicted && l.calculated == Word::NotShown && l.expected.q > l.against.q);
    open.filter_map(|l| {
        let limit = basis.limits.get(l.limit)?;
        Some(format!(
            "{} where the limit on {} asks for {}",
            stillrise_design::performance::promise::number(l.expected.q),
            crate::summary::limit(limit),
            stillrise_design::performance::promise::number(l.against.q)
        ))
    })
    .collect()
}

/// What the size follows from: the largest flow, and the droplet that the plates catch there in the cold season; of
/// several waters at that flow the one that is hardest on the plates.
fn why(settled: &Settled) -> Option<String> {
    let design = &settled.job.design;
    let (basis, train) = (design.basis.as_ref()?, design.train.as_ref()?);
    let ends =
        design.performance.as_ref()?.removals.iter().filter(|r| r.state == State::End && r.season == Season::Cold);
    let most = ends.clone().map(|r| r.flow.q.si()).fold(0.0, f64::max);
    let largest = ends.filter(|r| r.flow.q.si() > most * 0.999);
    let hardest = largest.max_by(|a, b| {
        let cut = |r: &Removal| r.cut.map_or(0.0, |cut| cut.q.si());
        // Behind a pump all come alike: then that which brings most.
        let comes = |r: &Removal| basis.cases.get(r.case_index).map_or(0.0, |case| case.inflow.q.si());
        cut(a).total_cmp(&cut(b)).then(comes(a).total_cmp(&comes(b))).then(b.case_index.cmp(&a.case_index))
    })?;
    let (cut, case) = (hardest.cut?, basis.cases.get(hardest.case_index)?);
    let water = case.own.as_ref().map_or(basis.fluids.cold.temperature, |own| own.water[0].temperature);
    let several = train.count.q.si() > 1.0;
    let uneven = train.imbalance.filter(|_| several).map_or_else(String::new, |over| {
        format!(", {} more than an even share", show(settled, over.q.si(), (&PERCENT, &PERCENT)))
    });
    // A spill has no droplets to be caught, and may be what the unit is sized for all the same.
    let spill = stillrise_design::basis::cases::largest(&basis.cases).filter(|c| c.kind == Kind::Spill);
    let spill = spill
        .map_or_else(String::new, |c| format!("; {} while the spill runs", show(settled, c.feed.q.si(), FLOW_UNITS)));
    let running = if basis.feed.pumped && case.pumps.is_none() { ", while the pump runs" } else { "" };
    Some(format!(
        "takes up to {}{}{uneven} ({}{running}); at that flow, in water of {}, its plates catch droplets of {} and larger, with all gaps run alike, and finer ones in part{spill}",
        show(settled, hardest.flow.q.si(), FLOW_UNITS),
        if several { " through each unit" } else { "" },
        hardest.case,
        show(settled, water.q.si(), (&DEG_F, &DEG_C)),
        show(settled, cut.q.si(), (&UM, &UM)),
    ))
}

/// What comes to the others while one of several is out of service; where one stands by, that it takes its place.
fn none_spare(settled: &Settled, train: &Train) -> Option<String> {
    let n = train.count.q.si();
    let most = stillrise_design::basis::cases::largest(&settled.job.design.basis.as_ref()?.cases)?;
    if train.standby.is_some() {
        let each = show(settled, most.feed.q.si() / n, FLOW_UNITS);
        return Some(format!(
            "while one is out of service one that stands by takes its place, and {each} still comes to each"
        ));
    }
    let alone = most.feed.q.si() / (n - 1.0);
    (n > 1.5).then(|| {
        format!(
            "all of them run and none stands by; while one is out of service {} comes to {}",
            show(settled, alone, FLOW_UNITS),
            if n > 2.5 { "each of the others" } else { "the other" }
        )
    })
}
