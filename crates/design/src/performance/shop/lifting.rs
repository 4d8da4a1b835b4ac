//! Lifting the empty unit: what each point carries, what pulls in a sling.

use super::SHOP;
use super::weights::Weights;
use crate::basis::stated::stated_or_usual;
use crate::enquiry::Enquiry;
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, Whence, given};
use crate::train::unit::Unit;
use crate::{by, reckon, record};
use stillrise_handbook::shop::sling_tension;
use stillrise_units::catalog::ONE;
use stillrise_units::{Angle, Force, G, Ratio, ratio};

const PURE: Pair = (&ONE, &ONE);
/// Lugs are designed for so much of the empty weight, from memory.
const LUGS: f64 = 2.0;

/// How the empty unit is lifted.
#[derive(Debug, Clone)]
pub struct Lifting {
    /// Lifting points.
    pub points: Val<Ratio>,
    /// Angle of the slings from the level.
    pub angle: Val<Angle>,
    /// Legs of the sling that are counted on.
    pub legs: Val<Ratio>,
    /// What they carry, where the weight is known.
    pub pulls: Option<Pulls>,
}

record! {
    /// What lifting points and slings carry.
    Pulls {
        /// weight on each point, shared evenly
        each: Force;
        /// pull in a leg that is counted on
        tension: Force;
        /// pull for which a lug is designed
        lug: Force;
    }
}

/// Finds it; `None` where it is built in its place.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn lifting<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    unit: &Unit,
    weights: &Weights,
) -> Result<Option<Lifting>, Stop> {
    if unit.arrangement.is_built_in() {
        return Ok(None);
    }
    t.section(format_args!("{SHOP}: lifting"));
    let points = stated_or_usual(t, w, e.installation.lifting_points(), "lifting points");
    let angle = stated_or_usual(t, w, e.installation.sling_angle(), "angle of the slings from the level");
    let legs = given(
        t,
        "legs that are counted on",
        Some(PURE),
        ratio(2.0),
        "common practice",
        "2: a stiff unit hangs on two of its slings",
    );
    let pulls = match weights.empty {
        Some(empty) => {
            let factor = |t: &mut T, label: &str, q: f64, source: Whence<'static>, text: &str| {
                given(t, label, Some(PURE), ratio(q), source, text)
            };
            let one = factor(t, "factor on the weight, as it hangs", 1.0, Whence::Definition, "1");
            let lugs = factor(t, "factor on the weight, for the lugs", LUGS, "ASME BTH-1, from memory".into(), "2");
            Some(Pulls {
                each: reckon!(t, "weight on each lifting point, shared evenly", [LBF, KN], (mass = empty, n = points) mass * G / n),
                tension: by!(t, "pull in a leg of the sling", sling_tension::tension(empty, legs, angle, one))?,
                lug: by!(t, "pull for which a lug is designed", sling_tension::tension(empty, legs, angle, lugs))?,
            })
        }
        None => None,
    };
    Ok(Some(Lifting { points, angle, legs, pulls }))
}
