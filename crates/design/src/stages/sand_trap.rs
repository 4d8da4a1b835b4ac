//! Stage: a compartment ahead of the inlet chamber, in which sand settles before it reaches hopper and plates.
//!
//! No credit is taken for the oil that rises in it.

use super::stage::{Datum, Drawn, Line, Stage, over_water};
use super::{Crossing, Place};
use crate::basis::Basis;
use crate::basis::fluids::Season;
use crate::enquiry::keys::{Quantity, keys};
use crate::provenance::{Stop, Trail, Val, choose, given};
use crate::train::row::{DIMENSION, Row};
use crate::train::unit::Unit;
use crate::{by, reckon, record};
use stillrise_handbook::hydraulics::slot_loss;
use stillrise_handbook::separation::grit_settling;
use stillrise_units::catalog::{IN, MM, ONE, UM};
use stillrise_units::{Flow, Length, Typed, math, ratio};

keys! {
    /// Keys of the sand compartment.
    SandTrapKeys "model" {
        /// Length of the sand compartment ahead, an option that makes the vessel longer by it
        length as "sand_trap_length": Quantity<Length> = spec.units(&IN, &MM).between("6 in", "400 in").like("\"36 in\"");
        /// Height of the opening out of the sand compartment, under water
        opening as "sand_trap_opening": Quantity<Length> = spec.units(&IN, &MM).between("2 in", "60 in").like("\"12 in\"");
    }
}

record! {
    /// The compartment.
    SandTrap {
        /// length of the compartment
        length: Length;
        /// height of the opening at its far wall, under water
        opening: Length;
    }
}

impl SandTrap {
    /// As a row or a described unit lays it out; `None` where it has none.
    ///
    /// # Errors
    /// [`Stop`] naming the dimension that is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Result<Option<Self>, Stop> {
        let m = row.m;
        if !(row.options.sand_trap && m.stages.sand_trap.length.is_given()) {
            return Ok(None);
        }
        let length = row.need("length of the sand compartment", m.stages.sand_trap.length())?;
        let usual = Length::of(12.0, &IN);
        let why = "not stated: {12 in|305 mm}";
        let opening = row.or_usual(
            "opening in the wall of the sand compartment",
            DIMENSION,
            &m.stages.sand_trap.opening,
            usual,
            why,
        );
        Ok(Some(Self { length, opening }))
    }

    /// The smallest grain that it holds whole at a flow, in the coldest water; `None` for solids that do not sink.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn holds<T: Trail>(
        &self,
        t: &mut T,
        basis: &Basis,
        unit: &Unit,
        flow: Val<Flow>,
    ) -> Result<Option<Val<Length>>, Stop> {
        let Some(zone) = unit.compartment(Place::SandTrap) else { return Ok(None) };
        let (solids, water) = (&basis.solids, basis.fluids.water(Season::Cold));
        if solids.density.q <= water.density.q {
            return Ok(None);
        }
        let area = unit.body.surface(t, "surface of the sand compartment", zone.stretch(), unit.outlet.crest)?;
        let rate =
            reckon!(t, "overflow rate of the sand compartment", [GPM_FT2, M_H], (flow = flow, area = area) flow / area);
        let settles = |d: f64| {
            let d = Length::from_si(d);
            grit_settling::settling(d, solids.density.q, water.density.q, water.kinematic.q, basis.methods.grains.q)
                .map_or(f64::NAN, |v| v.si() - rate.q.si())
        };
        let Some(grain) = math::root(Length::of(1.0, &UM).si(), Length::of(10_000.0, &UM).si(), settles) else {
            return Ok(None);
        };
        Ok(Some(choose(
            t,
            "grain that the sand compartment holds",
            Some((&UM, &UM)),
            Length::from_si(grain),
            "grains from 1 to 10 000 µm",
            "its settling velocity is the overflow rate",
            &[rate.at, solids.density.at],
        )))
    }
}

impl Stage for SandTrap {
    fn name(&self) -> &'static str {
        "sand compartment"
    }
    fn compartment(&self) -> Option<(Place, Val<Length>)> {
        Some((Place::SandTrap, self.length))
    }
    fn loses(&self) -> bool {
        true
    }
    /// Through the opening in its wall.
    fn loss<T: Trail>(&self, t: &mut T, way: &Crossing<'_>) -> Result<Option<Val<Length>>, Stop> {
        let label = "discharge coefficient of the opening";
        let c = given(t, label, Some((&ONE, &ONE)), ratio(0.6), "FHWA HDS-2, 8.10", "0.6");
        let width = way.unit.body.mean_width(t, "mean width of the opening", way.unit.outlet.crest)?;
        by!(t, "loss of the sand compartment", slot_loss::loss(way.flow, width, self.opening, c)).map(Some)
    }
    fn inner_wall(&self, unit: &Unit) -> Option<Length> {
        unit.compartment(Place::SandTrap).map(|c| c.to)
    }
    /// Its wall is open from below the water up to its opening's height under it.
    fn drawn(&self, unit: &Unit) -> Option<Drawn> {
        let at = self.inner_wall(unit)?;
        let (middle, half) = (unit.outlet.crest.q * 0.5, self.opening.q * 0.5);
        let lines = vec![
            Line::Plate { at, low: Length::from_si(0.0), high: middle - half },
            Line::Plate { at, low: middle + half, high: unit.shape.height() },
        ];
        let data = vec![
            Datum::Length(self.length.q),
            Datum::Words(" long, opening "),
            Datum::Length(self.opening.q),
            Datum::Words(" high"),
        ];
        Some(Drawn::new("sand-wall", "Sand compartment", data, (at, over_water(unit)), lines))
    }
}
