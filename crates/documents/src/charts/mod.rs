//! The charts of a job: the ladder, oil left behind each stage, what each stage catches, the effluent
//! against flow and droplet size, and what carries its spread. Drawn from numbers that were found before.
//!
//! No chart shows a prediction below the published floor: it stands at the floor, and what lies below is tinted. What does not
//! move has no chart but a sentence ([`plain`]).

mod arrivals;
mod curves;
pub mod oil;
mod rungs;
mod stages;
mod swings;
mod time_line;

use crate::render::chart::{Bound, Chart, LineChart, Paper};
use crate::render::scene::Scene;
use crate::render::svg::{Lettering, Options, svg};
use curves::Study;
use stillrise_design::performance::limit::LimitVerdict;
use stillrise_design::performance::promise::Promise;
use stillrise_handbook::fluids::pollutants::Counts;
use stillrise_search::Settled;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed, print};

/// One chart, ready.
#[derive(Debug, Clone)]
pub struct Drawn {
    /// A short name for files and programs: `ladder`.
    pub name: &'static str,
    /// What it shows.
    pub title: String,
    /// What there is to see in it, in a sentence or two; empty where the title says it.
    pub says: String,
    /// The text alternative, with the values.
    pub description: String,
    /// The picture, its letters outlined.
    pub svg: String,
    /// The same as drawn.
    pub scene: Scene,
    /// Width and height, mm.
    pub size: (f64, f64),
}

/// A curve or a swing that moves by less than this share of its greatest value is told in a sentence: drawn from nothing, as all
/// are, it would be a level line.
const HARDLY: f64 = 0.05;
/// Width of every chart, mm: the room between the margins of a paper.
const WIDTH: f64 = 165.0;

/// The charts of a settled job, in the order in which they are read; fewer where something was not found, or does not move.
#[must_use]
pub fn charts(settled: &Settled) -> Vec<Drawn> {
    let mut out = Vec::new();
    out.extend(rungs::ladder(settled).map(|(chart, says)| drawn("ladder", &chart, says)));
    out.extend(stages::cascade(settled).map(|(chart, says)| drawn("stages", &chart, says)));
    out.extend(stages::grades(settled).map(|(chart, says)| drawn("catch", &chart, says)));
    out.extend(studies(settled).into_iter().filter_map(|(name, study)| match study {
        Study::Moves(chart, says) => Some(drawn(name, chart.as_ref(), says)),
        Study::Stays(_) => None,
    }));
    out.extend(swings::tornado(settled).and_then(Result::ok).map(|(chart, says)| drawn("sensitivity", &chart, says)));
    out.extend(swings::shares(settled).map(|(chart, says)| drawn("shares", &chart, says)));
    out
}

fn studies(settled: &Settled) -> Vec<(&'static str, Study)> {
    let all = [
        ("flow", curves::against_flow(settled)),
        ("temperature", curves::against_temperature(settled)),
        ("droplets", curves::against_median(settled)),
    ];
    all.into_iter().filter_map(|(name, study)| Some((name, study?))).collect()
}

/// What stands in place of the charts whose curve would be level: the name of the chart, and a sentence.
#[must_use]
pub fn plain(settled: &Settled) -> Vec<(&'static str, String)> {
    let stays = |(name, study)| match study {
        Study::Stays(says) => Some((name, says)),
        Study::Moves(..) => None,
    };
    let mut all: Vec<(&'static str, String)> = studies(settled).into_iter().filter_map(stays).collect();
    all.extend(swings::tornado(settled).and_then(Result::err).map(|says| ("sensitivity", says)));
    all
}

/// What arrives, case by case: the chart of the basis. Nothing where there is one case of one water.
#[must_use]
pub fn arrivals(settled: &Settled) -> Option<Drawn> {
    arrivals::arrivals(settled).map(|(chart, says)| drawn("arrivals", &chart, says))
}

/// What was observed at a unit that stands, on a time line; nothing before it was diagnosed, or where no result has a day.
#[must_use]
pub fn time_line(settled: &Settled) -> Option<Drawn> {
    let diagnosis = settled.diagnosis.as_ref()?;
    let chart: LineChart = time_line::time_line(settled, diagnosis)?;
    Some(drawn("time-line", &chart, String::new()))
}

fn drawn(name: &'static str, chart: &dyn Chart, says: String) -> Drawn {
    // The report writes the title as a caption, so the picture need not.
    let scene = chart.scene(&Paper { width: WIDTH, height: chart.height(), titled: false });
    let options = Options { id: format!("chart-{name}"), lettering: Lettering::Outlined, ..Options::default() };
    Drawn {
        name,
        title: chart.title().to_owned(),
        says,
        description: chart.description(),
        svg: svg(&scene, &options),
        size: (scene.width, scene.height),
        scene,
    }
}

/// A prediction in words, as a sentence says it.
pub(crate) fn plainly(words: &str) -> String {
    words.replace("≤ ", "at most ")
}

/// A number on a chart or in a sentence about it.
fn number(value: f64) -> String {
    print::digits(value, 3)
}

/// A prediction in mg/L as it may be shown.
fn shown(c: Concentration, influent: Concentration) -> f64 {
    MG_L.from_si(Promise::of(c, influent).value().si())
}

/// A prediction in words: the number, or the bound that may be promised.
fn words(c: Concentration, influent: Concentration) -> String {
    Promise::of(c, influent).brief()
}

/// The limits that are predicted, as lines.
fn limits(settled: &Settled) -> Vec<Bound> {
    let (Some(basis), Some(p)) = (&settled.job.design.basis, &settled.job.design.performance) else {
        return Vec::new();
    };
    let mut bounds: Vec<Bound> = Vec::new();
    // The curves are of total oil: a limit on free oil has no place beside them.
    let of_total = |v: &&LimitVerdict| basis.limits[v.limit].pollutant.counts != Counts::FreeOil;
    for verdict in p.limits.iter().filter(|v| v.predicted).filter(of_total) {
        let limit = MG_L.from_si(basis.limits[verdict.limit].value.q.si());
        // The curves are means: the line stands at the mean that just meets the limit.
        let at = MG_L.from_si(verdict.mean_that_meets.q.si());
        // Where what does not rise is above the limit, no mean meets it.
        if verdict.stays.q > verdict.against.q {
            continue;
        }
        let name = if at < limit && verdict.peak.is_some() {
            format!("{} mg/L in the mean is {} at the peak, the limit", number(at), print::digits(limit, 4))
        } else if at < limit {
            format!("{} mg/L: mean that keeps the limit of {}", number(at), print::digits(limit, 4))
        } else {
            format!("limit {} mg/L", print::digits(limit, 4))
        };
        if bounds.iter().all(|b| b.at.to_bits() != at.to_bits()) {
            bounds.push(Bound::limit(at, &name));
        }
    }
    bounds
}
