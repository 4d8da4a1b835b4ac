//! What is not in the offer.

use crate::scope::{self, By};
use crate::summary::lower;
use stillrise_search::Settled;

/// What the client or others bring, whatever the unit.
const OF_OTHERS: &str = "Foundation or pit, anchors, piping, alarm panel, power and wiring, unloading and setting, first filling, disposal of oil and sludge; the design against wind and earthquake, of the structure it stands on and of areas where vapour may ignite.";
/// What no separator does.
const UNTOUCHED: &str =
    "Any assurance on emulsified or dissolved oil, detergents, solvents and metals, which gravity does not touch.";

/// A paragraph each: what others bring or nobody is named yet to bring, what is not promised.
pub(super) fn paragraphs(settled: &Settled) -> Vec<String> {
    let open = if open(settled, &[]).is_empty() { "" } else { " And whatever nobody is named yet to bring (above)." };
    vec![format!("{OF_OTHERS}{open}"), UNTOUCHED.to_owned()]
}

/// What nobody is named yet to bring, but for what is told by these names already.
pub(super) fn open(settled: &Settled, told: &[String]) -> Vec<String> {
    let open = scope::rows(settled).into_iter().filter(|row| row.by == By::Open).map(|row| lower(&row.item));
    open.filter(|item| !told.iter().any(|name| item.starts_with(&*lower(name)))).collect()
}
