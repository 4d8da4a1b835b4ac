//! The grit trap: the sand compartment of the unit, a trap that a standard asks for, or one laid out by its grain.

use super::super::{Stage, StageKind, Train};
use crate::basis::Basis;
use crate::basis::fluids::Season;
use crate::provenance::{Stop, Trail, Val, given};
use crate::{by, reckon};
use stillrise_handbook::page::Arg;
use stillrise_handbook::separation::grit_settling;
use stillrise_units::catalog::{FT2, GAL, M2, M3, UM};
use stillrise_units::math::{Z_95, pow};
use stillrise_units::{Length, Typed};

/// The grain that a grit trap is laid out for, µm: MIL-HDBK-1005/9A, 1997.
const TRAPPED: f64 = 200.0;

/// Whether less than a twentieth of the solids, by the law that is taken for their sizes, is as coarse as what a grit trap
/// holds; sieved ones are not looked at.
fn is_fine(basis: &Basis) -> bool {
    let s = &basis.solids;
    let coarse = s.d50.q * pow(s.spread.q.si(), Z_95);
    s.table.q.0.is_empty() && coarse < Length::of(TRAPPED, &UM)
}

/// The stage, and the grain from which on it holds the solids.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn stage<T: Trail>(
    t: &mut T,
    basis: &Basis,
    train: &Train,
) -> Result<(Option<Stage>, Option<Val<Length>>), Stop> {
    if train.unit.sand_trap.is_some() {
        return of_unit(t, basis, train);
    }
    let solids = basis.cases.iter().filter_map(|c| c.content.as_ref()).map(|c| c.solids.q.si()).fold(0.0, f64::max);
    // More than 300 mg/L fills a hopper within days; the figure is a judgement, the trap's size is not.
    if solids <= 0.3 {
        return Ok((None, None));
    }
    let mut trapped = None;
    let mut grit = Stage::new(
        StageKind::GritTrap,
        "grit trap",
        "solids above 300 mg/L would fill the hopper within days and bury the pack; the first size holds grains of 200 µm and larger, and finer solids pass it".to_owned(),
        true,
    );
    // What is no heavier than the water no trap holds.
    let settles = basis.solids.density.q > basis.fluids.cold.density.q;
    // Where a standard asks for a trap of its own volume, that is the trap.
    let standard = basis.european.as_ref().and_then(|found| found.sizes.as_ref().ok()?.sludge_trap);
    if let Some(volume) = standard {
        grit.why = "solids above 300 mg/L would fill the hopper within days and bury the pack; silt and clay pass it"
            .to_owned();
        grit.size = Some(("volume by EN 858-2".to_owned(), Arg::Number(volume.q.si()), (&GAL, &M3)));
    }
    // Where hardly a grain is as coarse, a trap for such grains is of no use.
    let fine = is_fine(basis) && standard.is_none();
    if fine {
        grit.name = "settling basin for silt".to_owned();
        grit.why = "solids above 300 mg/L would fill the hopper within days and bury the pack; less than a twentieth of the grains taken here is 200 µm or larger, so that a grit trap holds hardly any of them, and a basin is to be laid out for the finer ones".to_owned();
    }
    let settles = settles && standard.is_none() && !fine;
    // It stands first and takes what arrives, before any of it is held back.
    let arrives = basis.cases.iter().filter(|case| case.content.is_some()).map(|case| case.inflow);
    let arrives = arrives.reduce(|a, b| if b.q > a.q { b } else { a });
    if let Some(arrives) = arrives.filter(|_| settles) {
        let d = given(
            t,
            "grain a grit trap must hold",
            Some((&UM, &UM)),
            Length::of(TRAPPED, &UM),
            "MIL-HDBK-1005/9A, 1997",
            "grit above 200 µm is removed ahead",
        );
        trapped = Some(d);
        let water = basis.fluids.water(Season::Cold);
        let v = by!(
            t,
            "settling of that grain",
            grit_settling::settling(d, basis.solids.density, water.density, water.kinematic, basis.methods.grains)
        )?;
        let area = reckon!(t, "surface of the grit trap", [FT2, M2], (flow = arrives, v = v) flow / v);
        let label = "surface for grains from 200 µm on, first size".to_owned();
        grit.size = Some((label, Arg::Number(area.q.si()), (&FT2, &M2)));
    }
    Ok((Some(grit), trapped))
}

/// The sand compartment of the unit itself.
fn of_unit<T: Trail>(t: &mut T, basis: &Basis, train: &Train) -> Result<(Option<Stage>, Option<Val<Length>>), Stop> {
    let Some(trap) = &train.unit.sand_trap else { return Ok((None, None)) };
    let flow = basis.largest_steady().map(|case| train.share(t, case));
    let grain = match flow {
        Some(flow) => trap.holds(t, basis, &train.unit, flow)?,
        None => None,
    };
    let why = "ahead of the inlet chamber; finer grains pass it, and no credit is taken for oil that rises in it";
    let mut own = Stage::new(StageKind::GritTrap, "sand compartment of the unit", why.to_owned(), false);
    own.size = grain.map(|grain| ("holds grains from".to_owned(), Arg::Number(grain.q.si()), (&UM, &UM) as _));
    Ok((Some(own), grain))
}
