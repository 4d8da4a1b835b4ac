//! What each stage catches of one droplet size.

use super::passage::Passage;
use crate::basis::Basis;
use crate::provenance::{Pair, Stop, Trail, Val, Whence, given};
use crate::reckon;
use crate::say;
use stillrise_handbook::separation::plate_removal::GapRegime;
use stillrise_units::catalog::{PERCENT, UM};
use stillrise_units::{Length, Ratio, Typed, Velocity, ratio};

const SIZE: Pair = (&UM, &UM);
/// Diameters at which the stages' catch is shown, µm.
pub const GRADES: [f64; 12] = [5.0, 10.0, 15.0, 20.0, 30.0, 40.0, 60.0, 90.0, 120.0, 150.0, 200.0, 300.0];

/// What each stage catches of one size.
#[derive(Debug, Clone)]
pub struct Grade {
    /// Diameter.
    pub d: Val<Length>,
    /// Rise.
    pub rise: Val<Velocity>,
    /// Caught by each stage, of what reaches it.
    pub caught: Vec<Val<Ratio>>,
    /// Left behind those stages that always count.
    pub left: Val<Ratio>,
}

/// The table of sizes, with the kinks of the plates' curve among them.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn grades<T: Trail>(t: &mut T, basis: &Basis, p: &Passage) -> Result<Vec<Grade>, Stop> {
    let mut sizes: Vec<Val<Length>> = GRADES
        .iter()
        .map(|um| given(t, "size", Some(SIZE), Length::of(*um, &UM), "table of sizes", &format!("{um} µm")))
        .collect();
    // Where the halves of the pack begin to catch all: between straight lines these sizes would be lost.
    if let Some(plates) = p.plates().filter(|plates| p.fluids.rises() && plates.regime.q == GapRegime::Laminar) {
        let slow = reckon!(t, "overflow rate of the half with less flow", [GPM_FT2, MM_S], (v = plates.v_0, s = plates.spread) v * (ratio(1.0) - s));
        let fast = reckon!(t, "overflow rate of the half with more flow", [GPM_FT2, MM_S], (v = plates.v_0, s = plates.spread) v * (ratio(1.0) + s));
        for v in [slow, fast] {
            sizes.push(p.fluids.just_rises(t, "size that a half of the pack just catches", v)?);
        }
        sizes.sort_by(|a, b| a.q.si().total_cmp(&b.q.si()));
    }
    grades_of(t, basis, p, sizes)
}

/// The same for sizes that are asked for.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn grades_of<T: Trail>(
    t: &mut T,
    basis: &Basis,
    p: &Passage,
    sizes: Vec<Val<Length>>,
) -> Result<Vec<Grade>, Stop> {
    let mut rows = Vec::new();
    let whole = given(t, "all that arrives", Some((&PERCENT, &PERCENT)), ratio(1.0), Whence::Definition, "100 %");
    for d in sizes {
        let f = &p.fluids;
        let rise = crate::train::rise(t, "rise of the size", basis, d, f.water, f.oil, f.viscosity)?;
        let (mut caught, mut left) = (Vec::new(), whole);
        for stage in &p.with_all().stages {
            let share = stage.caught(t, &say!(T, "caught by the {}", stage.name()), d, rise, f)?;
            caught.push(share);
            if stage.counted(false).counts() {
                left = reckon!(t, &say!(T, "left of the size behind the {}", stage.name()), [PERCENT, PERCENT],
                    (left = left, caught = share) left * (ratio(1.0) - caught));
            }
        }
        rows.push(Grade { d, rise, caught, left });
    }
    Ok(rows)
}
