//! The splitter: shares the flow between units in parallel, those that run and those that stand by.

use super::super::{Stage, StageKind, Train};
use crate::basis::Basis;
use crate::provenance::{Trail, Val};
use crate::reckon;
use stillrise_units::{Flow, Ratio, Typed, ratio};

/// What comes to each unit while one of those that run is shut.
#[derive(Debug, Clone, Copy)]
pub struct Shut {
    /// Units that then run.
    pub running: Val<Ratio>,
    /// The largest flow over these.
    pub each: Val<Flow>,
    /// By how much that is above the share of each when all run.
    pub over: Val<Ratio>,
}

/// What comes to the others while one is shut; nothing where then none runs.
pub(in crate::train) fn shut<T: Trail>(t: &mut T, basis: &Basis, train: &Train) -> Option<Shut> {
    if train.bought() < 1.5 {
        return None;
    }
    t.section("one unit shut");
    let feed = basis.design_flow()?;
    let n = train.count;
    let running = match train.standby {
        Some(spare) => {
            reckon!(t, "units that run while one is shut", [ONE, ONE], (n = n, spare = spare) n.min(n - ratio(1.0) + spare))
        }
        None => reckon!(t, "units that run while one is shut", [ONE, ONE], (n = n) n - ratio(1.0)),
    };
    let each =
        reckon!(t, "flow through each while one is shut", [GPM, M3_H], (feed = feed, running = running) feed / running);
    let over = reckon!(t, "more than its share when all run", [PERCENT, PERCENT], (n = n, running = running) n / running - ratio(1.0));
    Some(Shut { running, each, over })
}

/// The stage, where there is more than one unit.
pub(super) fn stage(train: &Train) -> Option<Stage> {
    let several = train.count.q.si() > 1.0 || train.standby.is_some();
    several.then(|| {
        let why = if train.standby.is_some() {
            "shares the flow between the units that run and shuts off those that stand by; each has an outlet pipe of its own"
        } else {
            "shares the flow between the units, each with an outlet pipe of its own"
        };
        Stage::new(StageKind::Splitter, "splitter", why.to_owned(), true)
    })
}
