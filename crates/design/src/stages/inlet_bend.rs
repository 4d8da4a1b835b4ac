//! Stage: a bend that turns the incoming water down, so that it enters under the oil where no chamber breaks its jet.

use super::Crossing;
use super::inlet::Inlet;
use super::outlet::fitting_of;
use crate::performance::caps::{Caps, Margins};
use crate::provenance::{Stop, Trail, Val};
use crate::train::row::Row;
use crate::{by, record};
use stillrise_handbook::hydraulics::fitting_loss;
use stillrise_handbook::vessel::lip_cap;
use stillrise_units::Length;

record! {
    /// The bend.
    InletBend {
        /// its mouth, which opens downward
        mouth: Length;
    }
}

impl InletBend {
    /// As a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] where its mouth is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Result<Self, Stop> {
        let m = row.m;
        Ok(Self { mouth: row.need("mouth of the inlet bend", m.inlet_mouth())? })
    }

    /// Loss in the bend.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn loss<T: Trail>(&self, t: &mut T, inlet: &Inlet, way: &Crossing<'_>) -> Result<Val<Length>, Stop> {
        let v = inlet.velocity(t, way.flow)?;
        let bend = fitting_of(t, "loss coefficient of the inlet bend", "elbow-90")?;
        by!(t, "loss in the inlet bend", fitting_loss::loss(bend, v))
    }

    /// The thickest layer of oil that stays over its mouth: below it the water would enter through the oil.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn cap<T: Trail>(&self, t: &mut T, m: &Margins, c: &Caps<'_>) -> Result<Val<Length>, Stop> {
        by!(
            t,
            "cap by the mouth of the inlet bend",
            lip_cap::thickness(m.lowest, self.mouth, m.lip, c.oil.cold, c.cold)
        )
    }
}
