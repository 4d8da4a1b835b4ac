//! What is not in the offer.

use crate::scope::{self, By};
use crate::summary::lower;
use stillrise_search::Settled;

/// What the client or others bring, whatever the unit.
const OF_OTHERS: &str = "Foundation or pit, anchors, piping, power and wiring, unloading and setting, first filling, disposal of oil and sludge; the design against wind and earthquake, of the structure it stands on and of areas where vapour may ignite.";
/// What no separator does.
const UNTOUCHED: &str =
    "Any assurance on emulsified or dissolved oil, detergents, solvents and metals, which gravity does not touch.";

/// A paragraph each: what others bring, what nobody brings yet, what is not promised.
pub(super) fn paragraphs(settled: &Settled) -> Vec<String> {
    let open: Vec<String> =
        scope::rows(settled).into_iter().filter(|row| row.by == By::Open).map(|row| lower(&row.item)).collect();
    let open = (!open.is_empty()).then(|| format!("Until it is settled who brings it: {}.", open.join("; ")));
    let all = [Some(OF_OTHERS.to_owned()), open, Some(UNTOUCHED.to_owned())];
    all.into_iter().flatten().collect()
}
