//! The sample point behind everything.

use super::super::{Stage, StageKind};

/// The stage.
pub(super) fn stage() -> Stage {
    Stage::new(StageKind::SamplePoint, "sample point", "grab samples in the falling stream".to_owned(), false)
}
