//! The effluent against flow, temperature and droplet size: a curve where it moves, a sentence where it does not.

use super::{HARDLY, limits, number, plainly, shown, words};
use crate::render::chart::{Axis, Bound, LineChart};
use stillrise_design::performance::just_met::Margin;
use stillrise_design::performance::ladder::{Ladder, Point};
use stillrise_design::performance::promise::Promise;
use stillrise_design::performance::removal::Removal;
use stillrise_search::Settled;
use stillrise_units::catalog::{DEG_C, DEG_F, MG_L, PERCENT, UM, Unit};
use stillrise_units::{Concentration, Typed, math, print};

/// What a study comes to.
pub(super) enum Study {
    /// The prediction moves: a curve, and in words what it shows.
    Moves(Box<LineChart>, String),
    /// It does not, over all that was tried.
    Stays(String),
}

fn parts(settled: &Settled) -> Option<(&Ladder, &Removal)> {
    let p = settled.job.design.performance.as_ref()?;
    Some((p.ladder.as_ref()?, p.worst()?))
}

/// What is told of one study.
struct Told<'a> {
    title: &'a str,
    x: Axis,
    /// As printed beside the number.
    unit: &'a Unit,
    /// Over what, in words: `of the flow of the wash`.
    of: String,
    /// Where each limit is just met, with the limit's value.
    met: Vec<(f64, String)>,
}

/// The curve through what the trail has and what lies between, or the sentence that stands for it.
fn study<Q: Typed>(settled: &Settled, told: Told<'_>, known: &[Point<Q>], between: &[Point<Q>]) -> Option<Study> {
    let influent = parts(settled)?.1.content.total.q;
    let place = |p: &Point<Q>| (told.unit.from_si(p.at.q.si()), p.expected.q);
    let mut points: Vec<(f64, Concentration)> = known.iter().chain(between).map(place).collect();
    points.sort_by(|a, b| a.0.total_cmp(&b.0));
    let ((from, first), (to, last)) = (*points.first()?, *points.last()?);
    let at = |x: f64| format!("{} {}", print::digits(x, 3), told.unit.symbol);
    let same = points.iter().all(|(_, c)| words(*c, influent) == words(first, influent));
    if same {
        let stays = match Promise::of(first, influent) {
            Promise::AtOrBelowFloor => format!("at the published floor of {} mg/L", number(shown(first, influent))),
            Promise::AtMostInfluent(arrives) => {
                format!("at or below what arrives, {} mg/L", number(MG_L.from_si(arrives.si())))
            }
            Promise::Number(_) => format!("at {} mg/L", number(shown(first, influent))),
        };
        return Some(Study::Stays(format!(
            "From {} to {}{} the prediction stays {stays}.",
            print::digits(from, 3),
            at(to),
            told.of
        )));
    }
    let values = || points.iter().map(|(_, c)| shown(*c, influent));
    let (least, most) = (values().fold(f64::INFINITY, math::min), values().fold(0.0, math::max));
    if most - least <= HARDLY * most {
        return Some(Study::Stays(format!(
            "From {} to {}{} the prediction stays within {} to {} mg/L.",
            print::digits(from, 3),
            at(to),
            told.of,
            number(least),
            number(most)
        )));
    }
    let mut chart = LineChart::new(told.title, told.x, Axis::linear("Total oil out", "mg/L"));
    chart.curve("expected", points.iter().map(|(x, c)| (*x, shown(*c, influent))));
    chart.levels = limits(settled);
    let floor = MG_L.from_si(Promise::least(influent).si());
    if chart.curves.iter().flat_map(|c| &c.points).any(|(_, y)| *y <= floor) {
        chart.floor = Some((floor, format!("not promised below {} mg/L", number(floor))));
    }
    let mut says = format!(
        "Total oil out: {} mg/L at {}{}, {} mg/L at {}.",
        plainly(&words(first, influent)),
        at(from),
        told.of,
        plainly(&words(last, influent)),
        at(to)
    );
    // Beyond the curve nothing is shown of it.
    for (x, limit) in told.met.iter().filter(|(x, _)| (from..=to).contains(x)) {
        says += &format!(" The limit of {limit} is just met at {}.", at(*x));
    }
    Some(Study::Moves(Box::new(chart), says))
}

/// Where the limits are just met by one margin.
fn met<Q: Typed + Copy>(
    settled: &Settled,
    l: &Ladder,
    unit: &Unit,
    of: impl Fn(usize) -> Option<Q>,
) -> Vec<(f64, String)> {
    let design = &settled.job.design;
    let (Some(basis), Some(performance)) = (&design.basis, &design.performance) else { return Vec::new() };
    let one = |(k, just): (usize, &stillrise_design::performance::just_met::JustMet)| {
        let limit = basis.limits.get(just.limit)?;
        // What asks for less than anybody can promise is met by no promise.
        let verdict = performance.limits.iter().find(|v| v.limit == just.limit)?;
        if verdict.mean_that_meets.q < Promise::least(verdict.mean_influent.q) {
            return None;
        }
        Some((unit.from_si(of(k)?.si()), format!("{} mg/L", number(MG_L.from_si(limit.value.q.si())))))
    };
    l.just_met.iter().enumerate().filter_map(one).collect()
}

fn at<Q: Copy>(margin: Option<&Margin<Q>>) -> Option<Q> {
    margin.and_then(Margin::at).map(|value| value.q)
}

/// Against flow.
pub(super) fn against_flow(settled: &Settled) -> Option<Study> {
    let (l, worst) = parts(settled)?;
    let told = Told {
        title: "Effluent against flow, end of interval",
        x: Axis::linear(&format!("Flow, % of that of {}", worst.case), "").close(),
        unit: &PERCENT,
        of: format!(" of the flow of {}", worst.case),
        met: met(settled, l, &PERCENT, |k| at(l.just_met.get(k).map(|j| &j.flow))),
    };
    match study(settled, told, &l.by_flow, &l.smooth.by_flow)? {
        Study::Moves(mut chart, says) => {
            chart.uprights.push(Bound::note(100.0, "basis"));
            Some(Study::Moves(chart, says))
        }
        stays @ Study::Stays(_) => Some(stays),
    }
}

/// Against the temperature of the water.
pub(super) fn against_temperature(settled: &Settled) -> Option<Study> {
    let (l, _) = parts(settled)?;
    let unit = settled.job.enquiry.system().pick((&DEG_F, &DEG_C));
    let told = Told {
        title: "Effluent against temperature, end of interval",
        x: Axis::linear("Temperature of the water", unit.symbol).close(),
        unit,
        of: String::new(),
        met: met(settled, l, unit, |k| at(l.just_met.get(k).map(|j| &j.temperature))),
    };
    study(settled, told, &l.by_temperature, &l.smooth.by_temperature)
}

/// Against the median droplet; nothing where the droplets were measured.
pub(super) fn against_median(settled: &Settled) -> Option<Study> {
    let (l, worst) = parts(settled)?;
    let met = met(settled, l, &UM, |k| at(l.just_met.get(k).map(|j| &j.d50)));
    let told = Told {
        title: "Effluent against droplet size, end of interval",
        x: Axis::log("Volume median droplet", "µm"),
        unit: &UM,
        of: " of median droplet".to_owned(),
        met: met.clone(),
    };
    match study(settled, told, &l.by_median, &l.smooth.by_median)? {
        Study::Moves(mut chart, says) => {
            let basis = UM.from_si(worst.passage.droplets().d50.q.si());
            chart.uprights.push(Bound::note(basis, &format!("basis {} µm", number(basis))));
            for (x, limit) in met {
                chart.uprights.push(Bound::note(x, &format!("{limit} just met")));
            }
            Some(Study::Moves(chart, says))
        }
        stays @ Study::Stays(_) => Some(stays),
    }
}
