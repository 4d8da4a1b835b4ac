//! Compartment: the chamber behind the inlet nozzle, where the jet of the incoming water is broken.

use super::Place;
use super::stage::{Datum, Drawn, Line, Stage};
use crate::enquiry::keys::{Quantity, keys};
use crate::provenance::{Stop, Trail, Val};
use crate::record;
use crate::train::row::Row;
use crate::train::unit::Unit;
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, Typed, math};

keys! {
    /// Keys of the inlet chamber.
    InletChamberKeys "model" {
        /// Length of the inlet chamber, up to the diffusion baffle
        length as "inlet_length": Quantity<Length> = spec.units(&IN, &MM).between("1 in", "400 in").like("\"12 in\"")
            .asks("How long is the inlet chamber, up to the first baffle?")
            .found("its share of the length that is left");
    }
}

record! {
    /// The inlet chamber.
    InletChamber {
        /// length of the inlet chamber
        length: Length;
    }
}

impl InletChamber {
    /// As a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] where its length is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Result<Self, Stop> {
        let m = row.m;
        Ok(Self { length: row.need("length of the inlet chamber", m.stages.inlet_chamber.length())? })
    }
}

impl Stage for InletChamber {
    fn name(&self) -> &'static str {
        "inlet chamber"
    }
    fn compartment(&self) -> Option<(Place, Val<Length>)> {
        Some((Place::InletChamber, self.length))
    }
    /// The deflector in it: 45 degrees downward ahead of the nozzle, clear of a dished head, a little wider than its bore.
    fn drawn(&self, unit: &Unit) -> Option<Drawn> {
        let (invert, bore, head) = (unit.inlet.invert.q.si(), unit.inlet.bore.q.si(), unit.body.head().si());
        let chamber = unit.compartment(Place::InletChamber)?.to.si();
        let reach = math::min(1.4 * bore, 0.7 * chamber);
        let above = math::max(reach - bore, 0.0) * 0.5;
        let (x, z) = (math::max(0.2 * chamber, 0.8 * head), invert + bore + above);
        let spot = |d: f64| (Length::from_si(x + d), Length::from_si(z - d));
        let data = vec![Datum::Words("45°, common practice")];
        let lines = vec![Line::Inclined(spot(0.0), spot(reach))];
        Some(Drawn::new("deflector", "Inlet deflector", data, spot(0.5 * reach), lines))
    }
    fn passed(&self, _: &Unit) -> Option<&'static str> {
        Some("inlet chamber with deflector")
    }
}
