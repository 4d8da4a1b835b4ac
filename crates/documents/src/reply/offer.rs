//! What is offered, on which condition, and what must change first.

use super::{list, say, show, site_levels, weight};
use crate::rating::{larger, test, words};
use crate::summary::taken::because;
use crate::summary::{allows, capital, limit as named, stands};
use stillrise_checks::Grade;
use stillrise_checks::rules::{does_not_fit, plate_area_short, spill_above_room};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::Kind;
use stillrise_design::basis::fluids::Season;
use stillrise_design::enquiry::blocks::{AlarmSign, Observed};
use stillrise_design::performance::State;
use stillrise_design::performance::limit::{LimitVerdict, Word};
use stillrise_design::performance::removal::Removal;
use stillrise_design::train::{StageKind, Train};
use stillrise_design::triage::Weight;
use stillrise_search::Settled;
use stillrise_search::alternatives::Change;
use stillrise_search::because::Because;
use stillrise_search::diagnosis::causes::OF_THE_ALARM;
use stillrise_search::diagnosis::{Diagnosis, Step};
use stillrise_search::pick::{Condition, Pick};
use stillrise_units::catalog::{DEG_C, DEG_F, FT, IN, M, MM, PERCENT, UM};
use stillrise_units::{Typed, print};

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
    list(out, &lead(settled), false, &facts(settled, train, true));
}

/// In what sense the unit is told: offered, or on which condition, or not at all.
pub(super) fn lead(settled: &Settled) -> String {
    let enquiry = &settled.job.enquiry;
    let blocked = settled.job.design.triage.iter().any(|l| l.weight == Weight::Blocks);
    let condition = settled.pick.as_ref().and_then(|pick| pick.condition.clone());
    let goes = into_the_place(settled);
    match (condition, blocked, settled.fails()) {
        // The unit has to take the spill's flow all the same, and only its volume finds no room.
        (Some(Condition::Ahead(_)), ..) if smaller_ahead(settled) => {
            "Sized for all the flow that comes to it, the spill's among it. It takes that flow but has not the room for the spill's volume; where the spill is held ahead, the smaller unit named below does instead. It would be about:"
                .to_owned()
        }
        (Some(Condition::Ahead(rule)), true, _) => format!(
            "We would not sell a separator alone for this as it stands. For the flow alone, and once something ahead of it takes care of this: {}, the size would be about the one below; the limits are left to what is done ahead of it or behind it:",
            rule.title.to_lowercase()
        ),
        (Some(Condition::Ahead(rule)), ..) => format!(
            "Sized for all the flow that comes to it, and once something ahead of it takes care of this: {}. It would be about:",
            rule.title.to_lowercase()
        ),
        (Some(Condition::Limit), ..) => {
            format!(
                "{}We do not offer a separator alone for {}: {}. One that takes the water, to stand with what the points below name, would be about:",
                not_by_gravity(settled),
                not_shown(settled),
                match enquiry.unit.count.0 {
                    None => {
                        format!("neither one nor up to four of any size of the range{goes} is shown to keep that")
                    }
                    Some(1) => format!("no single unit of the range{goes} is shown to keep that"),
                    Some(n) => format!("{n} units, of whichever size of the range{goes}, are not shown to keep that"),
                }
            )
        }
        (None, true, _) => {
            "We would not sell a separator alone for this as it stands. For the flow alone, with the limits left to what is done ahead of it or behind it, the size would be about the one below; where the cause is taken away instead, a limit may then decide, and ask for a larger one if the place takes it:"
                .to_owned()
        }
        (None, false, true) => "The unit that comes nearest; the points below must be settled first:".to_owned(),
        (None, false, false) if needs_none(settled) => {
            "By these figures the limits are kept without any separator. What we would offer where one is wanted all the same, against a spill or because it is prescribed:".to_owned()
        }
        (None, false, false) => "What we would offer:".to_owned(),
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

/// Size, weight, price, delivery, and what is needed beside.
pub(super) fn facts(settled: &Settled, train: &Train, with_beside: bool) -> Vec<String> {
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
    let mut facts = vec![if n > 1.0 {
        format!("{} x {}{how}{by}", print::digits(n, 2), p.model)
    } else {
        format!("{}{by}", p.model)
    }];
    match p.shipping {
        Some([l, w, h]) => facts.push(format!(
            "shipping size{each} {} x {} x {}",
            show(settled, l.q.si(), (&IN, &MM)),
            show(settled, w.q.si(), (&IN, &MM)),
            show(settled, h.q.si(), (&IN, &MM))
        )),
        None => facts.push(format!(
            "inside{each} {} x {}, walls {} high",
            show(settled, body.over_all().q.si(), (&FT, &M)),
            show(settled, body.width().q.si(), (&FT, &M)),
            show(settled, body.height().q.si(), (&FT, &M))
        )),
    }
    facts.extend(why(settled));
    let below = |pick: &&Pick| pick.fits && matches!(pick.because, Because::Smallest { below: Some(_), .. });
    facts.extend(settled.pick.as_ref().filter(below).map(|pick| because(settled, pick)));
    // A unit that hardly goes into its place is not offered without a word on it.
    let tight = settled.judged(&does_not_fit::RULE).filter(|v| v.grade() == Grade::Warns);
    facts.extend(tight.map(|v| format!("check the place: {}", v.verdict.says())));
    let reserve = settled.judged(&plate_area_short::RULE).filter(|v| v.grade() == Grade::Warns);
    facts.extend(reserve.map(|v| v.verdict.says().to_owned()));
    facts.extend(none_spare(settled, train));
    facts.extend(super::emptied::emptied(settled));
    // What was asked to be held is answered, also where it is.
    let spill = settled.judged(&spill_above_room::RULE).filter(|v| v.grade() == Grade::Passes);
    facts.extend(
        spill
            .filter(|_| settled.job.design.basis.as_ref().is_some_and(|b| b.spill.is_some()))
            .map(|v| format!("{}{}", v.verdict.says(), after_a_spill(settled))),
    );
    let options = weight::options(train);
    facts.extend(weight::weight(settled, train, each));
    facts.extend(super::pumps::pumps(settled, train));
    facts.extend([stands::how(settled), stands::floats(settled), stands::room(settled)].into_iter().flatten());
    let beside = super::beside::needed(settled, train);
    let closure = if train.stages.iter().any(|s| s.kind == StageKind::Closure) { ", outlet closure" } else { "" };
    let without = match (beside.is_empty(), super::changes::must_change(settled).is_empty()) {
        (true, true) => format!("without freight{closure} and installation"),
        (true, false) => format!("without freight{closure}, installation and what the points below ask for"),
        (false, _) => format!("without freight{closure}, installation and what is needed beside it or asked for below"),
    };
    facts.push(match &p.price {
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
    });
    if let Some(time) = p.lead_time.as_ref().filter(|_| super::prices_are_told(settled)) {
        facts.push(format!("delivery {time}"));
    }
    if !super::prices_are_told(settled) && p.price.is_some() {
        facts.push("model, sizes and weight stand in an invented demonstration range".to_owned());
    }
    let open = exceeded(settled);
    if with_beside && !beside.is_empty() {
        facts.push(format!("needed beside it, neither part of the unit nor in the room above: {}", beside.join("; ")));
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
        facts.push(format!("not enough by itself, by the calculation: {}; {ways}", open.join("; ")));
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
        "for {} through {}{uneven} ({}{running}); there its plates, on the mean of all gaps, just catch droplets of {} in water of {}{spill}",
        show(settled, hardest.flow.q.si(), FLOW_UNITS),
        if several { "each unit" } else { "it" },
        hardest.case,
        show(settled, cut.q.si(), (&UM, &UM)),
        show(settled, water.q.si(), (&DEG_F, &DEG_C)),
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
