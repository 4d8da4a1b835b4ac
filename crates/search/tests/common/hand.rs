//! What tests by hand arithmetic share: the parts of a settled job, and figures held against those of a hand.

use stillrise_design::performance::Performance;
use stillrise_design::train::unit::Unit;
use stillrise_search::Settled;
use stillrise_units::{Typed, Unit as Of};

/// What the unit does.
pub fn performance(settled: &Settled) -> &Performance {
    settled.job.design.performance.as_ref().unwrap_or_else(|| panic!("{:?}", settled.job.design.stops))
}

/// The unit.
pub fn unit(settled: &Settled) -> &Unit {
    &settled.job.design.train.as_ref().expect("a train").unit
}

/// Within what the hand figure's digits allow, relative.
pub fn close<Q: Typed>(value: Q, expected: f64, in_unit: &'static Of, within: f64) {
    let value = in_unit.from_si(value.si());
    assert!((value - expected).abs() <= within * expected.abs(), "{value} {}, by hand {expected}", in_unit.symbol);
}
