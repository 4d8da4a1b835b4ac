//! Least times from one start of a pump to the next, by the size of its motor.

use crate::page::Source;
use crate::sources::{MIL_1005_9A, UFC_3_240_04A};
use stillrise_units::catalog::{HP, MIN};
use stillrise_units::{Power, Time, Typed};

/// A range of motors and its least time.
#[derive(Debug, PartialEq)]
pub struct CycleTime {
    /// Below this power, hp.
    pub below_hp: f64,
    /// Least time from start to start, minutes.
    pub least_min: f64,
    /// Where it is written.
    pub source: &'static Source,
}

/// Motors of pumps at constant speed, the small ones first. The second source gives 10 to 15, 15 to 20 and 20 to 30
/// minutes; the lower end stands here. Above 250 hp the maker of the motor says.
pub static CYCLE_TIMES: &[CycleTime] = &[
    CycleTime { below_hp: 50.0, least_min: 6.0, source: &MIL_1005_9A },
    CycleTime { below_hp: 20.0, least_min: 10.0, source: &UFC_3_240_04A },
    CycleTime { below_hp: 100.0, least_min: 15.0, source: &UFC_3_240_04A },
    CycleTime { below_hp: 250.0, least_min: 20.0, source: &UFC_3_240_04A },
];

/// Share of the volume that will do where two equal pumps take turns (second source, stations below 700 gpm).
pub const TAKING_TURNS: f64 = 0.5;

/// The least time of a motor by the stricter source; `None` above 250 hp.
#[must_use]
pub fn least_cycle(motor: Power) -> Option<Time> {
    let hp = motor.in_unit(&HP);
    let rows = CYCLE_TIMES.iter().filter(|c| c.source == &UFC_3_240_04A);
    rows.into_iter().find(|c| hp < c.below_hp).map(|c| Time::of(c.least_min, &MIN))
}
