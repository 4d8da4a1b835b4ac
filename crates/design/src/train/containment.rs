//! The stage ahead of all others: what holds oil, rain and fire water back.

use super::{Stage, StageKind};
use crate::basis::containment::balance::Balance;
use crate::basis::containment::{Containments, drain::Shut};
use stillrise_handbook::page::Arg;
use stillrise_units::Typed;
use stillrise_units::catalog::{GAL, M3};

/// The stage, with what it lacks of the volume that a spill asks of it.
pub(super) fn stage(ahead: &Containments) -> Stage {
    let names = ahead.all.iter().map(|c| c.name.as_str()).collect::<Vec<_>>().join(", ");
    let short = ahead.balances.iter().filter(|b| b.spare.holds() == Some(false));
    let short = short.min_by(|a, b| a.spare.val.q.si().total_cmp(&b.spare.val.q.si()));
    Stage {
        kind: StageKind::Containment,
        name: format!("containment: {names}"),
        why: why(&ahead.balances),
        asked_for: ahead.balances.iter().any(|b| b.spare.holds() == Some(false)),
        size: short
            .map(|b| (format!("{} short by", ahead.names(&b.chain)), Arg::Number(-b.spare.val.q.si()), (&GAL, &M3))),
    }
}

/// What it does for the separator.
fn why(balances: &[Balance]) -> String {
    let worst = balances.iter().map(|b| b.shut).max();
    let says = if balances.is_empty() {
        "no spill is counted on it"
    } else if balances.iter().any(|b| b.spare.holds() == Some(false)) {
        "too small for oil, rain and fire water; what overflows is oil first, and where it runs is to be settled"
    } else if worst == Some(Shut::Open) {
        "its drain stands open, so a spill runs through to the separator"
    } else if balances.iter().all(Balance::keeps_all) {
        "holds oil, rain and fire water; only what is drained comes to the separator"
    } else {
        "whether it holds oil, rain and fire water is not known"
    };
    says.to_owned()
}
