//! A unit that was looked at, as it is shown beside the one taken.

use crate::offered::Offered;
use crate::shortcoming::Barrier;
use stillrise_units::Concentration;

/// A unit that was looked at.
#[derive(Debug, Clone)]
pub struct Candidate {
    /// Which it is.
    pub unit: Offered,
    /// Whether it is the one taken.
    pub taken: bool,
    /// What bars it, and what that says.
    pub barred: Option<(Barrier, String)>,
    /// Total oil out, expected, in the worst case.
    pub effluent: Option<Concentration>,
}

/// What bars a candidate, in a phrase: the rule and what it says.
#[must_use]
pub fn barred_by(candidate: &Candidate) -> Option<String> {
    let (barrier, says) = candidate.barred.as_ref()?;
    let title = barrier.title();
    Some(if says.is_empty() { title.to_owned() } else { format!("{title}: {says}") })
}
