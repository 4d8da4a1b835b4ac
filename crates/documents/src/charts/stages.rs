//! Oil left behind each stage by droplet size, and what each stage catches of a size.

use super::number;
use crate::render::chart::{Axis, Bound, Cascade, LineChart, Stage};
use crate::summary::capital;
use stillrise_search::Settled;
use stillrise_units::Typed;
use stillrise_units::catalog::{PERCENT, UM};

/// Free oil behind each stage, stacked by droplet size, at the end of the interval.
pub(super) fn cascade(settled: &Settled) -> Option<(Cascade, String)> {
    let ladder = settled.job.design.performance.as_ref()?.ladder.as_ref()?;
    let bands = &ladder.bands[1];
    let mut chart = Cascade::new(
        "Free oil left behind each stage, by droplet size",
        Axis::linear("Of the free oil that arrives", "%").over(0.0, 100.0),
    );
    chart.classes = bands
        .iter()
        .map(|b| {
            let (from, to) = (UM.from_si(b.from.q.si()), UM.from_si(b.to.q.si()));
            if to > 1e6 { format!("over {from:.0} µm") } else { format!("{from:.0} to {to:.0} µm") }
        })
        .collect();
    chart.stages = ladder
        .names()
        .enumerate()
        .map(|(k, name)| {
            let name = if k == 0 { "arrives".to_owned() } else { format!("after {name}") };
            Stage::new(&name, bands.iter().map(|b| PERCENT.from_si(b.left[k].q.si())))
        })
        .collect();
    let totals: Vec<(&str, f64)> = ladder.names().zip(chart.stages.iter().filter_map(Stage::total)).collect();
    let mut says = String::new();
    let falls = totals.windows(2).filter_map(|pair| match pair {
        [(_, before), (name, after)] => Some((*name, before - after)),
        _ => None,
    });
    if let (Some((most, _)), Some((last, left))) = (falls.max_by(|a, b| a.1.total_cmp(&b.1)), totals.last()) {
        says = format!(
            "Of the free oil that arrives {} % is left behind the {last}{}; most of what is caught is caught in the {most}.",
            number(*left),
            if *last == "mesh" {
                ", with the mesh counted, which the prediction leaves out unless it says so"
            } else {
                ""
            }
        );
    }
    Some((chart, says))
}

/// What each stage catches of a size, at the end of the interval.
pub(super) fn grades(settled: &Settled) -> Option<(LineChart, String)> {
    let p = settled.job.design.performance.as_ref()?;
    let (ladder, worst) = (p.ladder.as_ref()?, p.worst()?);
    let mut chart = LineChart::new(
        "What each stage catches, by droplet size",
        Axis::log("Droplet diameter", "µm").over(5.0, 300.0),
        Axis::linear("Caught of what reaches the stage", "%").over(0.0, 100.0),
    );
    let at = |of: &dyn Fn(&stillrise_design::performance::grades::Grade) -> f64| -> Vec<(f64, f64)> {
        let all = ladder.grades.iter().chain(&ladder.smooth.grades);
        let mut points: Vec<(f64, f64)> = all.map(|g| (UM.from_si(g.d.q.si()), of(g) * 100.0)).collect();
        points.sort_by(|a, b| a.0.total_cmp(&b.0));
        points
    };
    for (k, stage) in ladder.stages.iter().enumerate() {
        chart.curve(stage, at(&|g| g.caught.get(k).map_or(0.0, |caught| caught.q.value)));
    }
    let together = if worst.passage.mesh().is_some() { "together, without the mesh" } else { "together" };
    let all = at(&|g| 1.0 - g.left.q.value);
    let first = |share: f64| all.iter().find(|(_, caught)| *caught >= share).map(|(um, _)| number(*um));
    let mut says = String::new();
    if let (Some(half), Some(most)) = (first(50.0), first(99.0)) {
        says = format!(
            "{}, they catch half of all droplets of {half} µm, and 99 % of those of {most} µm.",
            capital(together)
        );
    }
    // One stage alone is all there is.
    if ladder.stages.len() > 1 || worst.passage.mesh().is_some() {
        chart.curve(together, all);
    }
    if let Some(cut) = worst.cut {
        let um = UM.from_si(cut.q.si());
        chart.uprights.push(Bound::note(um, &format!("cut {} µm", stillrise_units::print::digits(um, 2))));
    }
    Some((chart, says))
}
