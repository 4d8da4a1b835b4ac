//! What arrives, case by case, stacked by the waters that coincide.

use crate::render::chart::{Axis, Cascade, Stage};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::Amount;
use stillrise_search::Settled;
use stillrise_units::Typed;

/// The flow that arrives in each case, by water; nothing without a case.
pub(super) fn arrivals(settled: &Settled) -> Option<(Cascade, String)> {
    let basis = settled.job.design.basis.as_ref()?;
    let unit = settled.job.enquiry.system().pick(FLOW_UNITS);
    let mut waters: Vec<&String> = Vec::new();
    for part in basis.cases.iter().flat_map(|case| &case.parts) {
        if !waters.contains(&part) {
            waters.push(part);
        }
    }
    let mut chart = Cascade::new("What arrives, by case and water", Axis::linear("Flow", unit.symbol));
    chart.classes = waters.iter().map(|water| (*water).clone()).collect();
    let other = basis.cases.iter().any(|case| parts(case, &waters).is_none());
    if other {
        chart.classes.push("together".to_owned());
    }
    for case in &basis.cases {
        let mut flows = parts(case, &waters).unwrap_or_else(|| vec![0.0; waters.len()]);
        if other {
            let all: f64 = flows.iter().sum();
            flows.push((case.inflow.q.si() - all).max(0.0));
        }
        chart.stages.push(Stage::new(&case.name, flows.into_iter().map(|flow| unit.from_si(flow))));
    }
    // One case of one water is one number.
    if chart.stages.len() < 2 && chart.classes.len() < 2 {
        return None;
    }
    let largest = chart.stages.iter().filter_map(|s| Some((s.name.as_str(), s.total()?)));
    let largest = largest.max_by(|a, b| a.1.total_cmp(&b.1));
    let says = largest.map(|(name, flow)| format!("The largest is {name}: {} {}.", super::number(flow), unit.symbol));
    Some((chart, says.unwrap_or_default()))
}

/// What each water brings to a case, SI; `None` where that is not known water by water.
fn parts(case: &stillrise_design::basis::cases::Case, waters: &[&String]) -> Option<Vec<f64>> {
    let mut flows = vec![0.0; waters.len()];
    if let [only] = &case.parts[..] {
        let place = waters.iter().position(|water| *water == only)?;
        flows[place] = case.inflow.q.si();
        return Some(flows);
    }
    if case.loads.len() != case.parts.len() {
        return None;
    }
    for (part, load) in case.parts.iter().zip(&case.loads) {
        let Amount::Flow(flow) = load.amount else { return None };
        let place = waters.iter().position(|water| *water == part)?;
        flows[place] += flow.q.si();
    }
    // What is stacked is what arrives, or it is not stacked.
    let sum: f64 = flows.iter().sum();
    ((sum - case.inflow.q.si()).abs() <= 1e-6 * case.inflow.q.si().abs()).then_some(flows)
}
