//! What `rate` prints: what a unit that stands should do, and what explains that it does not.

mod json;
pub mod period;
mod picture;
pub mod words;

pub use json::rating_json;
pub use picture::causes;
pub use words::{sized, together};

use crate::render::text::{Table, hang, item};
use crate::risk::percent;
use crate::summary::measured::unplaced;
use crate::summary::{CAUTION, capital, headline, section, total_out};
use stillrise_checks::Judged;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::enquiry::blocks::Observed;
use stillrise_design::performance::limit::{LimitVerdict, no_plates};
use stillrise_design::performance::promise::number;
use stillrise_handbook::fluids::pollutants::Counts;
use stillrise_search::Settled;
use stillrise_search::diagnosis::causes::{AFTER_THE_JAR, Cause, Gauge, Id, SEEN_IN_A_JAR};
use stillrise_search::diagnosis::{Beyond, Diagnosis, Seen};
use stillrise_search::pick::Condition;
use stillrise_units::catalog::{DEG_C, DEG_F, IN, MM};
use stillrise_units::{Concentration, Length, System, Typed, print};

/// Explanations that are printed.
pub const SHOWN: usize = 6;

/// Whether something was observed at the unit that stands: then what helps it is for the rating to say, not for the
/// calculation.
#[must_use]
pub fn is_observed(settled: &Settled) -> bool {
    let enquiry = &settled.job.enquiry;
    enquiry.unit_stands() && enquiry.is_observed()
}

/// What would change the word on a limit, in a sentence: by the calculation, unless the unit was observed.
#[must_use]
pub fn change(settled: &Settled, verdict: &LimitVerdict) -> String {
    if is_observed(settled) {
        "putting right what the rating of the unit finds; the calculation does not know what was observed".to_owned()
    } else if verdict.larger_helps && settled.pick.as_ref().is_some_and(|p| p.condition == Some(Condition::Limit)) {
        // No unit of the range and no number of them in parallel does it.
        let basis = settled.job.design.basis.as_ref();
        let limit = basis.and_then(|basis| basis.limits.get(verdict.limit));
        let counts = limit.map_or(Counts::AllOil, |limit| limit.pollutant.counts);
        no_plates(counts).to_owned()
    } else {
        verdict.change.clone()
    }
}

/// What the numbers in brackets are.
pub const BRACKETS: &str = "In brackets: not measured. The flow is the mean of the basis, without the strokes of a pump that pulsates, or after a change what the change states; the water is as warm as it was said to flow, else half-way between the coldest and the warmest of the basis, for no day is turned into a temperature here. Oil that was not measured is that of the basis, corrected by what the good period says, where there is one. The oil that should be there is reckoned as if nothing had been changed.";

/// What the explanations say of a larger unit, in sentences.
#[must_use]
pub fn larger(settled: &Settled, d: &Diagnosis) -> Vec<String> {
    let Some(lead) = d.leading() else {
        let mut out = vec!["No explanation stands out.".to_owned()];
        out.push(match d.larger_helps_in() {
            None => "No effluent was measured, so nothing can be said of a larger unit.".to_owned(),
            Some(share) if share <= 0.0 => {
                "Under none of them would a unit of twice the area take a third off the effluent.".to_owned()
            }
            Some(share) if share >= 1.0 => {
                "Under each of them a unit of twice the area would take at least a third off the effluent.".to_owned()
            }
            Some(share) if share < HARDLY => format!(
                "Hardly: only under those that hold {} of the weight would a unit of twice the area take at least a third off the effluent.",
                percent(share)
            ),
            Some(share) => format!(
                "Under those that hold {} of the weight a unit of twice the area would take at least a third off the effluent, under the others not: test first.",
                percent(share)
            ),
        });
        return out;
    };
    let pair = d.with_larger(lead).last();
    let between = pair.and_then(|(now, then)| limit_between(settled, then, now));
    let mut out = vec![match d.larger_helps(lead) {
        None => "No effluent was measured, so nothing can be said of a larger unit.",
        Some(true) => {
            "Under the leading explanation a unit of twice the area would take at least a third off the effluent."
        }
        Some(false) if !d.asks_too_much(lead) => {
            "Under the leading explanation what is the matter lies not in the unit's size, and a larger unit would not cure it."
        }
        Some(false) if between.is_some() => {
            "Under the leading explanation a larger unit would help a little: one of twice the area would take less than a third off the effluent."
        }
        Some(false) => {
            "Under the leading explanation a larger unit would not help: one of twice the area would take less than a third off the effluent."
        }
    }
    .to_owned()];
    if let Some((now, then)) = pair {
        let crosses = between.map_or_else(String::new, |limit| {
            format!(
                " The limit of {} lies between: the mean would come below it, and part of the single results would still lie above.",
                number(limit)
            )
        });
        out.push(format!(
            "It gives {} with the unit as it is, {} with twice the area.{crosses}",
            number(now),
            number(then)
        ));
    }
    out
}

/// Under so little of the weight a larger unit hardly helps. Judgement.
const HARDLY: f64 = 0.1;

/// The lowest limit on oil between what leaves with a larger unit and what leaves now.
fn limit_between(settled: &Settled, then: Concentration, now: Concentration) -> Option<Concentration> {
    let basis = settled.job.design.basis.as_ref()?;
    let all = basis.limits.iter().filter(|l| stillrise_search::results::compares(l)).map(|l| l.value.q);
    all.filter(|limit| *limit >= then && *limit < now).reduce(|a, b| if b < a { b } else { a })
}

/// That the rules speak of the calculation, where they fail: a unit can be short of its duty and still not be what
/// explains the results.
#[must_use]
pub fn by_calculation() -> &'static str {
    "By the calculation for the plant as it is today; whether that explains what was observed is said below:"
}

/// Oil that arrives on an occasion, SI: as measured, else that of the basis with what the good period corrects.
fn influent(d: &Diagnosis, s: &Seen) -> f64 {
    let corrected = d.calibration.filter(|_| !s.influent.1).map_or(1.0, |c| c.factors.influent);
    s.influent.0.si() * corrected
}

/// That what flowed before a change was not said, where a change says what flows since.
#[must_use]
pub fn flow_before(settled: &Settled, d: &Diagnosis) -> Option<String> {
    let since = d.seen.iter().find_map(|s| s.flow_by)?;
    let before = &settled.rated().enquiry;
    if !before.inlet.rate.0.is_empty() || d.seen.iter().all(|s| s.flow_by.is_some() || s.flow.1) {
        return None;
    }
    let day = before.changes.get(since).and_then(|c| c.date.0)?;
    Some(format!(
        "What the pumps delivered before the change of {day} was not said (inlet.rate): the flow of the water that comes is taken for that time, and if it was less, the change weighs more than is said here."
    ))
}

/// What was measured beyond the basis, a sentence for each occasion.
#[must_use]
pub fn beyond(d: &Diagnosis) -> Vec<String> {
    let one = |b: &Beyond| match b {
        Beyond::Flow(over) => format!("the flow is {} times that of the basis", print::digits(*over, 2)),
        Beyond::Influent(over) => format!("{} times the oil of the basis arrives", print::digits(*over, 2)),
        Beyond::Colder(k) => format!("the water is {} K colder than the coldest of the basis", print::digits(*k, 2)),
    };
    let said = |s: &Seen| {
        let within = s.within?;
        let what = s.beyond.iter().map(one).collect::<Vec<_>>().join(", ");
        let [now, then] = [s.expected, within].map(|c| total_out(c, s.influent.0));
        Some(format!("{}: {what}. That alone takes what should leave from {then} to {now} mg/L.", capital(&s.name)))
    };
    d.seen.iter().filter_map(said).collect()
}

/// The test of a cause, or that it was made, or what is left of it where a jar has stood.
#[must_use]
pub fn test(d: &Diagnosis, cause: &Cause, system: System) -> String {
    if d.is_tested(cause) {
        return format!("This was looked at already ({}).{}", gauged(d, system), assumed_plates(d, cause));
    }
    let stood = |o: &&Observed| o.jar.0.is_some();
    match d.seen.iter().map(|s| &s.observed).rfind(stood).filter(|_| cause.id == SEEN_IN_A_JAR) {
        Some(o) => {
            let jar = o.jar.0.map_or("", |jar| jar.word());
            let name = o.name.as_deref().unwrap_or("one occasion");
            format!("A jar has stood already ({name}: {jar}). {AFTER_THE_JAR}")
        }
        None => cause.test.to_owned(),
    }
}

/// The depths that were gauged.
fn gauged(d: &Diagnosis, system: System) -> String {
    let depths = |o: &Observed| {
        let all = [("oil layer", &o.oil_layer), ("sludge", &o.sludge), ("backed up", &o.backed_up)];
        let all = all.into_iter().chain([("level lower by", &o.level_drop)]);
        all.filter_map(|(what, q)| Some(format!("{what} {}", q.claim()?.written.text))).collect::<Vec<_>>()
    };
    let gauged = d.seen.iter().flat_map(|s| depths(&s.observed)).collect::<Vec<_>>().join(", ");
    let layer = d.seen.iter().any(|s| s.observed.oil_layer.is_given());
    let against = d.layers.filter(|_| layer).map(|l| {
        let shown = |q: Length| print::in_prose(q.si(), system.pick((&IN, &MM)));
        let (permitted, alarm) = (shown(l.permitted), shown(l.alarm));
        let rests = if l.assumed { ", by dimensions that are partly assumed" } else { "" };
        format!("; oil is permitted up to {permitted}, and the alarm belongs at {alarm}{rests}")
    });
    gauged + &against.unwrap_or_default()
}

/// That it is assumed from which depth sludge stands in the plates.
fn assumed_plates(d: &Diagnosis, cause: &Cause) -> String {
    let depth = d.plates_assumed.filter(|_| cause.gauge == Some(Gauge::Sludge));
    depth.map_or_else(String::new, |depth| {
        format!(
            " That sludge reaches the plates from {} is assumed: measure where their underside lies.",
            print::with_unit(depth.si(), &MM)
        )
    })
}

/// Where on the water's way a cause acts, in words of the drawing.
#[must_use]
pub fn part_of(cause: &Cause) -> &'static str {
    match cause.id {
        Id::Emulsion | Id::DissolvedOil | Id::FinerDroplets | Id::StrongerInfluent | Id::ColderWater => {
            "the water that comes"
        }
        Id::FlowAboveDesign => "the inlet",
        Id::PumpShear => "the pump",
        Id::BlockedPlates => "the plates",
        Id::FouledMesh => "the mesh",
        Id::OilOverCap => "the oil layer",
        Id::SludgeOverTrigger => "the sludge",
        Id::FalseAlarm | Id::AlarmFollowsFlow => "the float",
        Id::LowLevel | Id::Siphon | Id::MovedOutlet => "the outlet",
        Id::SamplingOrMethod | Id::SurfaceSample => "the sample point",
    }
}

/// The rating as plain text.
#[must_use]
pub fn rating_text(settled: &Settled, d: &Diagnosis, width: usize) -> String {
    let system = settled.job.enquiry.system();
    let mut out = format!("{}\n", settled.job.enquiry.head.title.as_deref().unwrap_or("untitled"));
    out.push_str(&section("What it should do"));
    for text in headline(settled) {
        out.push_str(&hang(&text, width, 0, 2));
    }
    out.push_str(&section("Where it falls short of its duty"));
    let failing: Vec<&Judged> = settled.verdicts.iter().filter(|j| j.stands_failed()).collect();
    if failing.is_empty() {
        out.push_str("No rule fails: as built, it fits its duty.\n");
    }
    if !failing.is_empty() {
        out.push_str(&hang(by_calculation(), width, 0, 0));
    }
    for j in failing {
        out.push_str(&item("-", &format!("{}: {}. {}", j.rule.title, j.verdict.says(), j.rule.remedy), width));
    }
    out.push_str(&section("What was observed"));
    let flow = system.pick(FLOW_UNITS);
    let temperature = system.pick((&DEG_F, &DEG_C));
    let mut table = Table::new([
        "occasion",
        &format!("flow, {}", flow.symbol),
        "oil in, mg/L",
        &format!("water, {}", temperature.symbol),
        "oil out, mg/L",
        "should be, mg/L",
    ]);
    let mark = |text: String, measured: bool| if measured { text } else { format!("({text})") };
    let n = |si: f64| print::digits(stillrise_units::catalog::MG_L.from_si(si), 3);
    for s in &d.seen {
        table.row([
            s.name.clone(),
            mark(print::digits(flow.from_si(s.flow.0.si()), 3), s.flow.1),
            mark(n(influent(d, s)), s.influent.1),
            mark(print::digits(temperature.from_si(s.temperature.0.si()), 3), s.temperature.1),
            s.measured.map_or_else(|| "-".to_owned(), |c| format!("{}{}", words::below(s.detected), n(c.si()))),
            total_out(s.expected, s.influent.0),
        ]);
    }
    out.push_str(&table.render(width));
    out.push_str(&hang(BRACKETS, width, 0, 0));
    for text in words::seen_together(d) {
        out.push_str(&hang(&text, width, 0, 2));
    }
    for text in unplaced(settled).into_iter().chain(flow_before(settled, d)).chain(beyond(d)) {
        out.push_str(&hang(&text, width, 0, 2));
    }
    let line = words::time_line(settled, d, width);
    if !line.is_empty() {
        out.push_str(&section("Time line"));
        out.push_str(&line);
    }
    for text in period::good_period(d).into_iter().chain(words::changes(settled, d)) {
        out.push_str(&hang(&text, width, 0, 2));
    }
    out.push_str(&section("What explains it"));
    if d.leading().is_none() && d.explanations.len() > 1 {
        out.push_str(&hang("No explanation stands out; the likeliest first.", width, 0, 2));
    }
    for text in words::no_worse(d).into_iter().chain(words::nothing_fits(d)).chain(words::samples_first(d)) {
        out.push_str(&hang(&text, width, 0, 2));
    }
    for (k, e) in d.explanations.iter().take(SHOWN).enumerate() {
        let outs = words::outs(d, e);
        let then = if outs.is_empty() {
            String::new()
        } else {
            let misses = words::misses(d, e).unwrap_or_default();
            format!(" It would give {} mg/L where oil was measured.{misses}", outs.join(", "))
        };
        out.push_str(&item(
            &format!("{}.", k + 1),
            &format!("{}: {}.{then}", percent(e.weight), together(settled, e)),
            width,
        ));
    }
    out.push_str(&hang(
        &format!(
            "Weights among {} sets of up to three causes, three only among those that pairs point to, by how well each explains all that was observed, how usual its sizes are and how often such causes occur. Each size is the most probable one, between what explains best and what is usual, good to a fifth; frequencies are judgement; the oil is found with the chain of the design.",
            d.sets
        ),
        width,
        0,
        0,
    ));
    out.push_str(&section("What to test next"));
    if let Some(next) = d.next {
        let test = capital(&test(d, next, system));
        out.push_str(&hang(&format!("Cheapest that tells the likeliest explanations apart: {test}"), width, 0, 2));
    }
    out.push_str(&words::steps(settled, d, width));
    if let Some(text) = words::all_put_right(d) {
        out.push_str(&hang(&text, width, 0, 2));
    }
    out.push_str(&section("Would a larger unit help?"));
    for text in larger(settled, d) {
        out.push_str(&hang(&text, width, 0, 2));
    }
    out.push_str(&section("Cautions"));
    out.push_str(&hang(CAUTION, width, 0, 0));
    out
}
