//! The effluent against flow, temperature and droplet size.

use super::{limits, shown};
use crate::render::chart::{Axis, Bound, LineChart};
use stillrise_design::performance::ladder::Ladder;
use stillrise_design::performance::promise::Promise;
use stillrise_design::performance::removal::Removal;
use stillrise_search::Settled;
use stillrise_units::catalog::{DEG_C, DEG_F, MG_L, PERCENT, UM};
use stillrise_units::{Concentration, Typed, print};

fn parts(settled: &Settled) -> Option<(&Ladder, &Removal)> {
    let p = settled.job.design.performance.as_ref()?;
    Some((p.ladder.as_ref()?, p.worst()?))
}

fn chart(settled: &Settled, title: &str, x: Axis, points: Vec<(f64, f64)>, influent: Concentration) -> LineChart {
    let mut chart = LineChart::new(title, x, Axis::linear("Total oil out", "mg/L"));
    chart.curve("expected", points);
    chart.levels = limits(settled);
    // A curve that runs along the floor says that no more is promised, not that it is so.
    let floor = MG_L.from_si(Promise::least(influent).si());
    if chart.curves.iter().flat_map(|c| &c.points).any(|(_, y)| *y <= floor) {
        let name = format!("not promised below {} mg/L", print::digits(floor, 3));
        chart.levels.push(Bound::note(floor, &name));
    }
    chart
}

/// Against flow, 0 to 150 %.
pub(super) fn against_flow(settled: &Settled) -> Option<LineChart> {
    let (ladder, worst) = parts(settled)?;
    let influent = worst.content.total.q;
    let points = ladder.by_flow.iter().map(|p| (PERCENT.from_si(p.at.q.si()), shown(p.expected.q, influent))).collect();
    let x = Axis::linear("Flow", "% of the case's").over(0.0, 150.0);
    let mut chart = chart(settled, "Effluent against flow, end of interval", x, points, influent);
    chart.uprights.push(Bound::note(100.0, "flow of the case"));
    Some(chart)
}

/// Against the temperature of the water.
pub(super) fn against_temperature(settled: &Settled) -> Option<LineChart> {
    let (ladder, worst) = parts(settled)?;
    let unit = settled.job.enquiry.system().pick((&DEG_F, &DEG_C));
    let points = ladder
        .by_temperature
        .iter()
        .map(|p| (unit.from_si(p.at.q.si()), shown(p.expected.q, worst.content.total.q)))
        .collect();
    let x = Axis::linear("Water", unit.symbol).close();
    Some(chart(settled, "Effluent against temperature, end of interval", x, points, worst.content.total.q))
}

/// Against the median droplet.
pub(super) fn against_median(settled: &Settled) -> Option<LineChart> {
    let (ladder, worst) = parts(settled)?;
    if ladder.by_median.is_empty() {
        return None;
    }
    let points = ladder
        .by_median
        .iter()
        .map(|p| (UM.from_si(p.at.q.si()), shown(p.expected.q, worst.content.total.q)))
        .collect();
    let x = Axis::log("Volume median droplet", "µm");
    let mut chart = chart(settled, "Effluent against droplet size, end of interval", x, points, worst.content.total.q);
    chart.uprights.push(Bound::note(UM.from_si(worst.passage.droplets().d50.q.si()), "basis"));
    for met in ladder.just_met.iter().filter_map(|j| j.d50.at()) {
        chart.uprights.push(Bound::limit(UM.from_si(met.q.si()), "limit just met"));
    }
    Some(chart)
}
