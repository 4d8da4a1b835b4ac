//! Stage: a bend that turns the incoming water down, so that it enters under the oil where no chamber breaks its jet.

use super::outlet::fitting_of;
use super::stage::{Datum, Drawn, Line, OFF_WALL, Pipe, Stage, over_water};
use super::{Crossing, Reach};
use crate::enquiry::keys::{Quantity, keys};
use crate::performance::caps::{Cap, Caps, Margins};
use crate::provenance::{Stop, Trail, Val};
use crate::train::row::Row;
use crate::train::unit::{Parts, Unit};
use crate::{by, record};
use stillrise_handbook::hydraulics::fitting_loss;
use stillrise_handbook::vessel::lip_cap;
use stillrise_units::Length;
use stillrise_units::catalog::{IN, MM};

keys! {
    /// Keys of the inlet bend.
    InletBendKeys "model" {
        /// Mouth of the bend that turns the incoming water down in an upright cylinder, above the floor
        mouth as "inlet_mouth": Quantity<Length> = spec.units(&IN, &MM).between("3 in", "240 in").like("\"40 in\"")
            .asks("What is the height of the mouth of the inlet's bend above the floor?")
            .found("70 % of the depth of water");
    }
}

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
        Ok(Self { mouth: row.need("mouth of the inlet bend", m.stages.inlet_bend.mouth())? })
    }
}

impl Stage for InletBend {
    fn name(&self) -> &'static str {
        "inlet bend"
    }
    fn stands(&self, parts: &Parts, _: Length) -> Result<(), String> {
        if self.mouth.q >= parts.outlet.crest.q {
            return Err("the mouth of the inlet bend is not under water".to_owned());
        }
        Ok(())
    }
    fn loses(&self) -> bool {
        true
    }
    fn loss<T: Trail>(&self, t: &mut T, way: &Crossing<'_>) -> Result<Option<Val<Length>>, Stop> {
        let v = way.unit.inlet.velocity(t, way.flow)?;
        let bend = fitting_of(t, "loss coefficient of the inlet bend", "elbow-90")?;
        by!(t, "loss in the inlet bend", fitting_loss::loss(bend, v)).map(Some)
    }
    /// Over its mouth: below it the water would enter through the oil.
    fn cap<T: Trail>(&self, t: &mut T, m: &Margins, c: &Caps<'_>) -> Result<Option<Cap>, Stop> {
        let thickness = by!(
            t,
            "cap by the mouth of the inlet bend",
            lip_cap::thickness(m.lowest, self.mouth, m.lip, c.oil.cold, c.cold)
        )?;
        Ok(Some(Cap { of: Reach::InletBend, thickness }))
    }
    fn drawn(&self, unit: &Unit) -> Option<Drawn> {
        let (mouth, invert, bore) = (self.mouth.q, unit.inlet.invert.q, unit.inlet.bore.q);
        let leg = (bore * OFF_WALL, bore * (OFF_WALL + 1.0));
        let data = vec![Datum::Words("turned down, mouth "), Datum::Length(mouth), Datum::Words(" above the floor")];
        let lines = vec![Line::TurnedDown(Pipe { leg, mouth, invert, bore })];
        Some(Drawn::new("inlet-bend", "Inlet bend", data, (leg.1, over_water(unit)), lines))
    }
}
