//! The lift pump: sump and feed pump ahead of the unit.

use super::super::{Stage, StageKind};
use crate::basis::Basis;
use stillrise_handbook::page::Arg;
use stillrise_units::Typed;
use stillrise_units::catalog::{FT, M};

/// The stage, where the water is pumped.
pub(super) fn stage(basis: &Basis) -> Option<Stage> {
    basis.feed.pumped.then(|| {
        let why = basis.feed.class.map_or_else(|| "kind of pump not said".to_owned(), |c| c.meaning.to_owned());
        let mut stage = Stage::new(StageKind::Pump, "sump and feed pump", why, false);
        // All that run together ask for most.
        let lift = basis.feed.lift.as_ref();
        let duty = lift.and_then(|lift| lift.duties.last()).map(|duty| duty.head);
        let met = || lift.and_then(|lift| lift.points.last()?.at.ok()).map(|(_, head)| head);
        let duty = duty.or_else(met);
        stage.size =
            duty.map(|head| ("head, static lift and losses".to_owned(), Arg::Number(head.q.si()), (&FT, &M) as _));
        stage
    })
}
