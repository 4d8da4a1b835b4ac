//! Cause: sludge over its trigger

use super::{Cause, Gauge, Id, Size};
use stillrise_units::catalog::MG_L;

/// See the head line.
pub(super) static CAUSE: Cause = Cause {
    id: Id::SludgeOverTrigger,
    title: "Sludge over the depth that calls for pumping out",
    how: "Sludge that fills the hopper is stirred up at each start of the flow and leaves with the oil that clings to it; plates are not reached yet.",
    often: 0.05,
    size: Some(Size {
        label: "oil that leaves on stirred sludge",
        units: (&MG_L, &MG_L),
        low: 0.005,
        likely: 0.03,
        high: 0.2,
        least: 0.001,
        most: 5.0,
    }),
    act: |s, x| s.carried += x,
    settled_by: &[],
    looks: Some([0.15, 0.65, 0.1, 0.1]),
    jar: Some([0.35, 0.5, 0.15]),
    alarm: None,
    taken: Some([0.4, 0.15, 0.05, 0.15, 0.25]),
    backed_up: 0.02,
    gauge: Some(Gauge::Trigger),
    capacity: false,
    test: "Dip the sludge in the hopper with a pole or a clear tube and compare its depth with the trigger; let a jar of the effluent stand and look for what settles.",
    cost: 2,
    settles: 2,
    remedy: "Pump the sludge out, refill with clean water, and shorten the interval to the days that the solids need to reach the trigger.",
};
