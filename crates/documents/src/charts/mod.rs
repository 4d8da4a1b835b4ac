//! The charts of a job: the ladder, oil left behind each stage, what each stage catches, the effluent
//! against flow and droplet size, and what carries its spread. Drawn from numbers that were found before.
//!
//! No chart shows a prediction below the published floor: it stands at the floor, which is hatched.

mod arrivals;
mod curves;
pub mod oil;
mod rungs;
mod stages;
mod swings;
mod time_line;

use crate::render::chart::{Bound, Chart, Paper};
use crate::render::svg::{Options, svg};
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
    /// The text alternative.
    pub description: String,
    /// The picture.
    pub svg: String,
    /// Width and height, mm.
    pub size: (f64, f64),
}

/// The charts of a settled job, in the order in which they are read; fewer where something was not found.
#[must_use]
pub fn charts(settled: &Settled) -> Vec<Drawn> {
    let mut out = Vec::new();
    let mut add = |name: &'static str, height: f64, chart: Option<&dyn Chart>| {
        if let Some(chart) = chart {
            out.push(drawn(name, height, chart));
        }
    };
    add("ladder", 82.0, rungs::ladder(settled).as_ref().map(|c| c as &dyn Chart));
    add("stages", 82.0, stages::cascade(settled).as_ref().map(|c| c as &dyn Chart));
    add("catch", 84.0, stages::grades(settled).as_ref().map(|c| c as &dyn Chart));
    add("flow", 84.0, curves::against_flow(settled).as_ref().map(|c| c as &dyn Chart));
    add("temperature", 72.0, curves::against_temperature(settled).as_ref().map(|c| c as &dyn Chart));
    add("droplets", 84.0, curves::against_median(settled).as_ref().map(|c| c as &dyn Chart));
    add("sensitivity", 90.0, swings::tornado(settled).as_ref().map(|c| c as &dyn Chart));
    add("shares", 80.0, swings::shares(settled).as_ref().map(|c| c as &dyn Chart));
    out
}

/// What arrives, case by case: the chart of the basis.
#[must_use]
pub fn arrivals(settled: &Settled) -> Option<Drawn> {
    arrivals::arrivals(settled).map(|chart| drawn("arrivals", 96.0, &chart))
}

/// What was observed at a unit that stands, on a time line; nothing before it was diagnosed, or where no result has a day.
#[must_use]
pub fn time_line(settled: &Settled) -> Option<Drawn> {
    let diagnosis = settled.diagnosis.as_ref()?;
    time_line::time_line(settled, diagnosis).map(|chart| drawn("time-line", 96.0, &chart))
}

fn drawn(name: &'static str, height: f64, chart: &dyn Chart) -> Drawn {
    // The report writes the title as a caption, so the picture need not.
    let scene = chart.scene(&Paper { width: 165.0, height, titled: false });
    let options = Options { id: format!("chart-{name}"), ..Options::default() };
    Drawn {
        name,
        title: chart.title().to_owned(),
        description: chart.description(),
        svg: svg(&scene, &options),
        size: (scene.width, scene.height),
    }
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
        let name = if at < limit {
            let what = if verdict.peak.is_some() { "at the peak" } else { "of the average" };
            format!("{} mg/L: limit {} {what}", print::digits(at, 3), print::digits(limit, 4))
        } else {
            format!("limit {} mg/L", print::digits(limit, 4))
        };
        if bounds.iter().all(|b| b.at.to_bits() != at.to_bits()) {
            bounds.push(Bound::limit(at, &name));
        }
    }
    bounds
}
