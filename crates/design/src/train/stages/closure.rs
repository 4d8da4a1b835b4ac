//! The outlet closure, which shuts before a spill reaches the outlet.

use super::super::{Stage, StageKind};
use crate::basis::Basis;

/// The stage, where it was said that there is one.
pub(super) fn stage(basis: &Basis) -> Option<Stage> {
    (basis.closure == Some(true)).then(|| {
        let why = "has to shut before a spill reaches the outlet; what trips it, and where the water goes that still arrives, is to be settled";
        Stage::new(StageKind::Closure, "outlet closure", why.to_owned(), false)
    })
}
