//! What several keys say together: an outlet and the level at which it lies, limits on one pollutant.

use super::Enquiry;
use super::blocks::Limit;
use super::keys::{Because, Block, Place};
use super::said::Claimed;

/// Why a level is taken that belongs to the outlet taken.
pub const PAIRED: &str = "it stands in the same place among the levels as the outlet that is taken among the outlets";

/// Where several outlets were named, and as many levels, the level is that of the outlet that is taken, unless a person chose
/// another.
pub(crate) fn pair(e: &mut Enquiry) {
    let (outlets, taken) = (e.outlet.to.lines().len(), e.outlet.to.taken());
    let levels = &mut e.outlet.invert;
    let by_person = levels.claims.iter().any(|c| c.chosen && c.because != Some(Because::Paired));
    if outlets < 2 || levels.claims.len() != outlets || !levels.is_contradicted() || by_person {
        return;
    }
    for (k, claim) in levels.claims.iter_mut().enumerate() {
        claim.chosen = k == taken;
        claim.because = claim.chosen.then_some(Because::Paired);
    }
}

/// Limits stand under the handbook's word for their pollutant; two on the same one are told apart by their number.
pub(super) fn tell_apart(limits: &mut [Limit]) {
    let words: Vec<Option<String>> = limits.iter().map(|limit| limit.pollutant.0.clone()).collect();
    for (i, limit) in limits.iter_mut().enumerate() {
        let Some(word) = &words[i] else { continue };
        let several = words.iter().flatten().filter(|other| *other == word).count() > 1;
        let block = Limit::spec().name;
        limit.stand(if several { Place::numbered(block, i + 1, word) } else { Place::named(block, word) });
    }
}
