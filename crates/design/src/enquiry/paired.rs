//! What several keys say together: an outlet and the level at which it lies.

use super::Enquiry;
use super::said::Claimed;

/// Why a level is taken that belongs to the outlet taken.
pub const PAIRED: &str = "it stands in the same place among the levels as the outlet that is taken among the outlets";

/// Where several outlets were named, and as many levels, the level is that of the outlet that is taken, unless a person chose
/// another.
pub(crate) fn pair(e: &mut Enquiry) {
    let (outlets, taken) = (e.outlet.to.lines().len(), e.outlet.to.taken());
    let levels = &mut e.outlet.invert;
    let by_person = levels.claims.iter().any(|c| c.chosen && c.because.as_deref() != Some(PAIRED));
    if outlets < 2 || levels.claims.len() != outlets || !levels.is_contradicted() || by_person {
        return;
    }
    for (k, claim) in levels.claims.iter_mut().enumerate() {
        claim.chosen = k == taken;
        claim.because = claim.chosen.then(|| PAIRED.to_owned());
    }
}
