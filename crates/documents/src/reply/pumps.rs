//! The effluent pumps of a unit.

use super::show;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::train::Train;
use stillrise_search::Settled;
use stillrise_units::catalog::{MIN, S};
use stillrise_units::{Length, Typed};

/// What its effluent pumps lift, and what happens when none runs.
pub(super) fn pumps(settled: &Settled, train: &Train) -> Option<String> {
    let (pumps, runs) = (train.unit.pump_out.as_ref()?, settled.job.design.performance.as_ref()?.pump_out.as_ref()?);
    let (inlet, outlet) = (&settled.job.enquiry.inlet, &settled.job.enquiry.outlet);
    let over = |level: Option<Length>| inlet.invert.q().zip(level).is_some_and(|(pipe, level)| level >= pipe);
    let why = if over(outlet.tailwater.q()) {
        " (the water at the outfall may stand above the pipe that comes in)"
    } else if over(outlet.invert.q()) {
        " (the outfall lies above the pipe that comes in)"
    } else {
        ""
    };
    let each = if train.count.q.si() > 1.5 { " in each unit" } else { "" };
    Some(format!(
        "effluent pumps{each}, one that runs and one that stands by, of {} each{why}; with none running, the room over their alarm is full after {} at the largest flow, and water backs up into the drains: an alarm that stops what flows in, or standby power, and a non-return valve in the rising main are needed",
        show(settled, pumps.pump.q.si(), FLOW_UNITS),
        show(
            settled,
            runs.lasts.q.si(),
            if runs.lasts.q.si() < 2.0 * MIN.to_si(1.0) { (&S, &S) } else { (&MIN, &MIN) }
        ),
    ))
}
