//! The splitter: shares the flow between units in parallel.

use super::super::{Stage, StageKind, Train};
use stillrise_units::Typed;

/// The stage, where there is more than one unit.
pub(super) fn stage(train: &Train) -> Option<Stage> {
    (train.count.q.si() > 1.0).then(|| {
        let why = "shares the flow between the units, each with an outlet pipe of its own";
        Stage::new(StageKind::Splitter, "splitter", why.to_owned(), true)
    })
}
