//! The stages of the train, one a file: each says whether it stands, why, and its first size. Here they are only listed, in
//! the direction of flow.

pub mod bypass;
pub(super) mod closure;
pub(super) mod effluent_pumps;
pub mod grit_trap;
pub(super) mod lift_pump;
pub mod oil_tank;
pub(super) mod sample_point;
pub mod screen;
pub(super) mod separators;
pub mod splitter;

use super::{Stage, Train, containment, equalisation, polisher};
use crate::basis::Basis;
use crate::provenance::{Stop, Trail, Val};
use stillrise_units::Length;

/// All stages, and the grain from which on a grit trap ahead holds the solids.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn stages<T: Trail>(
    t: &mut T,
    basis: &Basis,
    train: &Train,
) -> Result<(Vec<Stage>, Option<Val<Length>>), Stop> {
    t.section("stages");
    let mut all = Vec::new();
    all.extend(basis.containment.as_ref().map(containment::stage));
    all.extend(train.screen.as_ref().map(screen::stage));
    let (grit, trapped) = grit_trap::stage(t, basis, train)?;
    all.extend(grit);
    all.extend(train.equalisation.as_ref().map(|held| equalisation::stage(basis, held)));
    all.extend(lift_pump::stage(basis));
    all.extend(splitter::stage(train));
    all.push(separators::stage(train));
    all.extend(effluent_pumps::stage(train));
    all.extend(closure::stage(basis));
    all.extend(polisher::stage(basis, train));
    all.push(sample_point::stage());
    Ok((all, trapped))
}
