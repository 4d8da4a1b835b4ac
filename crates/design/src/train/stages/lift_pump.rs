//! The lift pump: sump and feed pump ahead of the unit.

use super::super::{Stage, StageKind};
use crate::basis::Basis;

/// The stage, where the water is pumped.
pub(super) fn stage(basis: &Basis) -> Option<Stage> {
    basis.feed.pumped.then(|| {
        let why = basis.feed.class.map_or_else(|| "kind of pump not said".to_owned(), |c| c.meaning.to_owned());
        Stage::new(StageKind::Pump, "sump and feed pump", why, false)
    })
}
