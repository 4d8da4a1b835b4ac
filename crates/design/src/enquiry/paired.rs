//! What several keys say together: an outlet and the level at which it lies, limits on one pollutant.

use super::Enquiry;
use super::blocks::{Limit, Stream, Surface};
use super::keys::{Because, Block, Place};
use super::said::Claimed;

/// Why a level is taken that belongs to the outlet taken.
pub const PAIRED: &str = "it was named together with what is taken beside it";

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

/// The duration of a rain that one person named with its intensity goes with that intensity, unless a person chose another.
pub(crate) fn pair_rain(e: &mut Enquiry) {
    let Some(rain) = &mut e.rain else { return };
    // "Planner, 10 min" and "planner" are one person.
    let who = |from: &Option<String>| {
        from.as_deref().map(|from| from.split(',').next().unwrap_or(from).trim().to_lowercase())
    };
    let Some(from) = rain.intensity.claim().and_then(|taken| who(&taken.from)) else { return };
    let durations = &mut rain.duration;
    let by_person = durations.claims.iter().any(|c| c.chosen && c.because != Some(Because::Paired));
    let own = durations.claims.iter().filter(|c| who(&c.from).as_ref() == Some(&from)).count();
    if own != 1 || !rain.intensity.is_contradicted() || !durations.is_contradicted() || by_person {
        return;
    }
    for claim in &mut durations.claims {
        claim.chosen = who(&claim.from).as_ref() == Some(&from);
        claim.because = claim.chosen.then_some(Because::Paired);
    }
}

/// Where blocks stand that have no name of their own. Limits stand under the handbook's word for their pollutant, two on the
/// same one told apart by their number; a stream or a surface under the name that it is given: `stream "stream 1"`.
pub(super) fn tell_apart(e: &mut Enquiry) {
    let words: Vec<Option<String>> = e.limits.iter().map(|limit| limit.pollutant.0.clone()).collect();
    for (i, limit) in e.limits.iter_mut().enumerate() {
        let Some(word) = &words[i] else { continue };
        let several = words.iter().flatten().filter(|other| *other == word).count() > 1;
        let block = Limit::spec().name;
        limit.stand(if several { Place::numbered(block, i + 1, word) } else { Place::named(block, word) });
    }
    let unnamed = |block: &'static str, i: usize| Place::named(block, &format!("{block} {}", i + 1));
    for (i, stream) in e.streams.iter_mut().enumerate().filter(|(_, stream)| stream.name.is_none()) {
        stream.stand(unnamed(Stream::spec().name, i));
    }
    for (i, surface) in e.surfaces.iter_mut().enumerate().filter(|(_, surface)| surface.name.is_none()) {
        surface.stand(unnamed(Surface::spec().name, i));
    }
}
