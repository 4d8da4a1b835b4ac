//! Two saddles under a lying cylinder of steel while it stands above the ground: in the shop, on the truck, and full of water
//! where it is filled for a test before it is let into the ground.

use super::SHOP;
use super::plate;
use super::weights::Weights;
use crate::provenance::{Pair, Stop, Trail, choose, given};
use crate::train::unit::Unit;
use crate::vessel::Body;
use crate::{by, reckon, record};
use stillrise_handbook::shop::{saddle_seat_stress, saddle_span_stress, support_reaction};
use stillrise_units::catalog::{IN, MM, ONE, PERCENT};
use stillrise_units::{Force, G, Length, Pressure, ratio};

const L: Pair = (&IN, &MM);
/// A saddle stands no farther from the seam of its head than this share of the shell.
const OF_SHELL: f64 = 0.2;

record! {
    /// What two saddles carry, and what the shell bears over and between them.
    Saddles {
        /// distance of each from the seam of its head
        place: Length;
        /// distance of the two
        span: Length;
        /// what the one under the heavier end carries, full of water to the top
        load: Force;
        /// bending of the shell midway between them
        midway: Pressure;
        /// bending of the shell over one
        over: Pressure;
    }
}

/// Finds them; `None` for another body, or where thickness or weight is not known.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn saddles<T: Trail>(t: &mut T, unit: &Unit, weights: &Weights) -> Result<Option<Saddles>, Stop> {
    let Body::LyingCylinder(body) = &unit.body else { return Ok(None) };
    let (Some(empty), Some(test), Some(centre)) = (weights.empty, weights.test, weights.centre) else {
        return Ok(None);
    };
    let Some(thickness) = plate::thickness(unit) else { return Ok(None) };
    t.section(format_args!("{SHOP}: saddles"));
    let shell = body.shell;
    let head = reckon!(t, "depth of a head", [IN, MM], (all = body.over_all, shell = shell)(all - shell) / 2.0);
    let radius = reckon!(t, "radius of the shell", [IN, MM], (d = body.diameter) d / 2.0);
    // Within half a radius the head keeps the shell round over the saddle, so that all of its section works.
    let near = reckon!(t, "half a radius", [IN, MM], (r = radius) r / 2.0);
    let share = given(
        t,
        "share of the shell at most, from its seam",
        Some((&PERCENT, &PERCENT)),
        ratio(OF_SHELL),
        "common practice",
        "a fifth of the length",
    );
    let far = reckon!(t, "that share of the shell", [IN, MM], (share = share, shell = shell) shell * share);
    let nearer = if near.q < far.q { near.q } else { far.q };
    let because = "within half a radius the head keeps the shell round; beyond a fifth of the length it bends more";
    let place = choose(
        t,
        "distance of each saddle from its seam",
        Some(L),
        nearer,
        "half a radius, a fifth",
        because,
        &[near.at, far.at],
    );
    let span = reckon!(t, "distance of the two saddles", [IN, MM], (shell = shell, place = place) shell - place * 2.0);
    let from_inlet = reckon!(t, "centre of gravity from the saddle at the inlet", [IN, MM], (c = centre, head = head, place = place) c - head - place);
    let from_outlet =
        reckon!(t, "centre of gravity from the saddle at the outlet", [IN, MM], (span = span, c = from_inlet) span - c);
    let inlet = by!(t, "empty weight on the saddle at the inlet", support_reaction::force(empty, from_outlet, span))?;
    let outlet = by!(t, "empty weight on the saddle at the outlet", support_reaction::force(empty, from_inlet, span))?;
    let heavier = if inlet.q > outlet.q { inlet } else { outlet };
    let load = reckon!(
        t,
        "load on the saddle under the heavier end, full to the top",
        [LBF, KN],
        (empty = heavier, water = weights.full) empty + water * G / 2.0
    );
    let whole = given(
        t,
        "share of the shell's section that works over a saddle",
        Some((&ONE, &ONE)),
        ratio(1.0),
        "Zick, 1951",
        "1: a head within half a radius",
    );
    let midway = by!(
        t,
        "stress midway between the saddles, full to the top",
        saddle_span_stress::stress(test, shell, place, radius, head, thickness)
    )?;
    let over = by!(
        t,
        "stress over a saddle, full to the top",
        saddle_seat_stress::stress(test, shell, place, radius, head, thickness, whole)
    )?;
    Ok(Some(Saddles { place, span, load, midway, over }))
}

impl Saddles {
    /// The larger of the two stresses, without its sign.
    #[must_use]
    pub fn worst(&self) -> crate::provenance::Val<Pressure> {
        if self.midway.q.abs() > self.over.q.abs() { self.midway } else { self.over }
    }
}
