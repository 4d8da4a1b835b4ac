//! The separator, or several alike in parallel, with those that stand by.

use super::super::{Stage, StageKind, Train};
use stillrise_units::Typed;

/// The stage.
pub(super) fn stage(train: &Train) -> Stage {
    let (n, model) = (train.count.q.si(), &train.unit.particulars.model);
    let name = if n > 1.0 { format!("{n} separators in parallel, {model}") } else { format!("separator, {model}") };
    let name = match train.standby {
        Some(spare) if spare.q.si() > 1.5 => format!("{name}, and {} that stand by", spare.q.si()),
        Some(_) => format!("{name}, and one that stands by"),
        None => name,
    };
    Stage::new(StageKind::Separator, &name, train.origin.to_string(), false)
}
