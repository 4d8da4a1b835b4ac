//! Stage: the baffle behind the oil, under which the water leaves.

use super::Crossing;
use super::stage::{Datum, Drawn, Line, over_water};
use crate::performance::caps::{Caps, Margins};
use crate::provenance::{Stop, Trail, Val, given};
use crate::train::row::Row;
use crate::train::unit::Unit;
use crate::vessel::Body;
use crate::{by, record};
use stillrise_handbook::hydraulics::{mean_velocity, slot_loss};
use stillrise_handbook::vessel::lip_cap;
use stillrise_units::catalog::ONE;
use stillrise_units::{Flow, Length, Velocity, ratio};

record! {
    /// The downcomer.
    Downcomer {
        /// its lower edge
        lip: Length;
    }
}

impl Downcomer {
    /// As a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] where it is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Result<Self, Stop> {
        let m = row.m;
        Ok(Self { lip: row.need("lip of the downcomer", m.stages.underflow.lip())? })
    }

    /// Velocity under it.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn velocity<T: Trail>(&self, t: &mut T, body: &Body, flow: Val<Flow>) -> Result<Val<Velocity>, Stop> {
        let slot = body.section(t, "slot under the downcomer", self.lip)?;
        by!(t, "velocity under the downcomer", mean_velocity::velocity(flow, slot))
    }

    /// Loss under it.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn loss<T: Trail>(&self, t: &mut T, way: &Crossing<'_>) -> Result<Val<Length>, Stop> {
        let label = "discharge coefficient of the underflow slot";
        let c = given(t, label, Some((&ONE, &ONE)), ratio(0.6), "FHWA HDS-2, 8.10", "0.6");
        let width = way.unit.body.mean_width(t, "mean width of the slot", self.lip)?;
        by!(t, "loss of the downcomer", slot_loss::loss(way.flow, width, self.lip, c))
    }

    /// The thickest layer of oil that stays over its lip.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn cap<T: Trail>(&self, t: &mut T, m: &Margins, c: &Caps<'_>) -> Result<Val<Length>, Stop> {
        by!(t, "cap by the downcomer's lip", lip_cap::thickness(m.lowest, self.lip, m.lip, c.oil.cold, c.cold))
    }

    /// As it is drawn at its station.
    pub(super) fn drawn(&self, unit: &Unit, at: Length) -> Drawn {
        let data = vec![Datum::Words("lip "), Datum::Length(self.lip.q), Datum::Words(" above the floor")];
        let lines = vec![Line::Plate { at, low: self.lip.q, high: unit.shape.height() }];
        Drawn::new("downcomer", "Downcomer baffle", data, (at, over_water(unit)), lines)
    }
}
