//! A unit that was looked at, as it is shown beside the one taken.

use stillrise_units::Concentration;

/// A unit that was looked at.
#[derive(Debug, Clone)]
pub struct Candidate {
    /// Its name.
    pub name: String,
    /// Whether it is the one taken.
    pub taken: bool,
    /// What bars it: the rule's title and what it says.
    pub barred: Option<(String, String)>,
    /// Total oil out, expected, in the worst case.
    pub effluent: Option<Concentration>,
}

/// What bars a candidate, in a phrase: the rule and what it says.
#[must_use]
pub fn barred_by(candidate: &Candidate) -> Option<String> {
    let (title, says) = candidate.barred.as_ref()?;
    Some(if says.is_empty() { title.clone() } else { format!("{title}: {says}") })
}
