//! Effluent pumps in the unit, which lift the clean water to the outfall.

use super::super::{Stage, StageKind, Train};
use stillrise_handbook::page::Arg;
use stillrise_units::Typed;
use stillrise_units::catalog::{GPM, M3_H};

/// The stage, where the unit has them.
pub(super) fn stage(train: &Train) -> Option<Stage> {
    let pumps = train.unit.pump_out.as_ref()?;
    let why = "lift the clean water to the outfall; what stands behind them gets their flow while they run, and they shear what oil is left";
    let mut own = Stage::new(StageKind::Pump, "effluent pumps in the unit", why.to_owned(), false);
    own.size = Some(("flow of one".to_owned(), Arg::Number(pumps.pump.q.si()), (&GPM, &M3_H)));
    Some(own)
}
