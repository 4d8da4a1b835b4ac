//! The separator, or several alike in parallel.

use super::super::{Stage, StageKind, Train};
use stillrise_units::Typed;

/// The stage.
pub(super) fn stage(train: &Train) -> Stage {
    let (n, model) = (train.count.q.si(), &train.unit.particulars.model);
    let name = if n > 1.0 { format!("{n} separators in parallel, {model}") } else { format!("separator, {model}") };
    Stage::new(StageKind::Separator, &name, train.origin.clone(), false)
}
