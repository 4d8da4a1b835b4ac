//! Stage: a pipe that dips from the outlet under the oil and draws the water from there.

use super::Crossing;
use super::outlet::{Outlet, fitting_of};
use super::stage::{Datum, Drawn, Line, OFF_WALL, Pipe, over_water};
use crate::performance::caps::{Caps, Margins};
use crate::provenance::{Stop, Trail, Val};
use crate::train::row::Row;
use crate::train::unit::Unit;
use crate::{by, reckon, record};
use stillrise_handbook::hydraulics::{circle_area, fitting_loss, mean_velocity};
use stillrise_handbook::vessel::lip_cap;
use stillrise_units::{Flow, Length, Velocity};

record! {
    /// The dip pipe.
    DipPipe {
        /// its mouth, which opens downward
        mouth: Length;
        /// its bore, that of the outlet pipe
        bore: Length;
    }
}

impl DipPipe {
    /// As a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] where its mouth is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>, outlet: &Outlet) -> Result<Self, Stop> {
        let m = row.m;
        Ok(Self { mouth: row.need("mouth of the dip pipe", m.stages.underflow.lip())?, bore: outlet.bore })
    }

    /// Velocity in it.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn velocity<T: Trail>(&self, t: &mut T, flow: Val<Flow>) -> Result<Val<Velocity>, Stop> {
        let section = by!(t, "section of the dip pipe", circle_area::area(self.bore))?;
        by!(t, "velocity in the dip pipe", mean_velocity::velocity(flow, section))
    }

    /// Loss into its mouth and through the tee at its top.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn loss<T: Trail>(&self, t: &mut T, way: &Crossing<'_>) -> Result<Val<Length>, Stop> {
        let v = self.velocity(t, way.flow)?;
        let entry = fitting_of(t, "loss coefficient of the dip pipe's mouth", "entry-projecting")?;
        let tee = fitting_of(t, "loss coefficient of the tee at its top", "tee-branch")?;
        let both = reckon!(t, "loss coefficient of the dip pipe", [ONE, ONE], (mouth = entry, tee = tee) mouth + tee);
        by!(t, "loss of the dip pipe", fitting_loss::loss(both, v))
    }

    /// The thickest layer of oil that stays over its mouth.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn cap<T: Trail>(&self, t: &mut T, m: &Margins, c: &Caps<'_>) -> Result<Val<Length>, Stop> {
        by!(t, "cap by the dip pipe's mouth", lip_cap::thickness(m.lowest, self.mouth, m.lip, c.oil.cold, c.cold))
    }

    /// Stations of the two sides of its leg; nominal.
    #[must_use]
    pub fn leg(&self, unit: &Unit) -> (Length, Length) {
        let (end, bore) = (unit.shape.length(), self.bore.q);
        (end - bore * (OFF_WALL + 1.0), end - bore * OFF_WALL)
    }

    /// As it is drawn.
    pub(super) fn drawn(&self, unit: &Unit) -> Drawn {
        let (leg, mouth, bore) = (self.leg(unit), self.mouth.q, self.bore.q);
        let data = vec![
            Datum::Words("mouth "),
            Datum::Length(mouth),
            Datum::Words(" above the floor, bore "),
            Datum::Length(bore),
        ];
        let lines = vec![Line::Dipping(Pipe { leg, mouth, invert: unit.outlet.invert.q, bore })];
        Drawn::new("dip-pipe", "Dip pipe", data, (leg.0, over_water(unit)), lines)
    }
}
