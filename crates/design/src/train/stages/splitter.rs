//! The splitter: shares the flow between units in parallel, those that run and those that stand by.

use super::super::{Stage, StageKind, Train};
use crate::basis::Basis;
use crate::performance::Performance;
use crate::provenance::{Stop, Trail, Val, given};
use crate::reckon;
use stillrise_units::catalog::ONE;
use stillrise_units::{Concentration, Flow, Ratio, Typed, ratio};

/// What comes to each unit while one of those that run is shut.
#[derive(Debug, Clone, Copy)]
pub struct Shut {
    /// Units that then run.
    pub running: Val<Ratio>,
    /// The largest flow over these.
    pub each: Val<Flow>,
    /// By how much that is above the share of each when all run.
    pub over: Val<Ratio>,
    /// Total oil out then, as expected, of the water that is held against the limits; `None` where no more comes to each.
    pub out: Option<Val<Concentration>>,
}

/// What comes to the others while one is shut, and what leaves them then; nothing where then none runs.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(in crate::train) fn shut<T: Trail>(
    t: &mut T,
    basis: &Basis,
    train: &Train,
    performance: &Performance,
) -> Result<Option<Shut>, Stop> {
    let Some(feed) = basis.design_flow().filter(|_| train.bought() > 1.5) else { return Ok(None) };
    t.section("one unit shut");
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
    let out = match performance.worst().filter(|_| over.q.si() > 1e-9) {
        Some(worst) => {
            let one = given(t, "the same unit", Some((&ONE, &ONE)), ratio(1.0), "definition", "1");
            let more = reckon!(t, "flow through each over its share", [ONE, ONE], (over = over, one = one) one + over);
            let passage = worst.passage.scaled(t, more, one);
            let left = passage.left(t, "free oil left while one is shut")?;
            let c = &worst.content;
            Some(reckon!(t, "total oil out while one is shut", [MG_L, MG_L],
                (free = c.free, left = left, emulsified = c.emulsified, dissolved = c.dissolved)
                free * left + emulsified + dissolved))
        }
        None => None,
    };
    Ok(Some(Shut { running, each, over, out }))
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
