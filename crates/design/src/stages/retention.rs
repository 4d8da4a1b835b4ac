//! Stage: the zone behind plates and mesh where oil is held, drawn off and watched by a float.

use super::Place;
use super::stage::Stage;
use crate::enquiry::keys::{Quantity, keys};
use crate::performance::removal::Removal;
use crate::provenance::{Pair, Stop, Trail, Val};
use crate::train::row::{DIMENSION, Row};
use crate::train::unit::Unit;
use crate::{by, reckon, record};
use stillrise_handbook::separation::drag_cut;
use stillrise_units::catalog::{IN, KG_M3, LB_FT3, MM};
use stillrise_units::{Density, Length, Typed, Velocity};

keys! {
    /// Keys of where oil is held.
    RetentionKeys "model" {
        /// Length of the oil retention zone, up to the downcomer baffle
        length as "retention_length": Quantity<Length> = spec.units(&IN, &MM).between("1 in", "600 in").like("\"20 in\"")
            .asks("How long is the zone between pack and downcomer baffle?")
            .found("its share of the length that is left");
        /// Elevation at which oil is drawn off, above the floor
        oil_draw: Quantity<Length> = spec.units(&IN, &MM).between("1 in", "240 in").like("\"44 in\"");
        /// Density of the level float
        float_density: Quantity<Density> = spec.units(&LB_FT3, &KG_M3).between("300 kg/m3", "1500 kg/m3").like("\"930 kg/m3\"");
    }
}

record! {
    /// The oil's place.
    Retention {
        /// length of the zone
        length: Length;
        /// elevation of the oil draw-off
        oil_draw: Length;
        /// density of the level float
        float_density: Density;
    }
}

/// How the water sinks there.
#[derive(Debug, Clone)]
pub struct Sinks {
    /// Its overflow rate: how fast the water sinks there on the mean.
    pub overflow: Val<Velocity>,
    /// Largest droplet that the sinking water can draw under the downcomer.
    pub drawn: Val<Length>,
}

impl Retention {
    /// As a row or a described unit lays it out; the crest stands in the clear well.
    ///
    /// # Errors
    /// [`Stop`] where its length is missing and must be known.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>, crest: Length, must: bool) -> Result<Self, Stop> {
        const DENSITY: Pair = (&LB_FT3, &KG_M3);
        let m = row.m;
        let length = if must || m.stages.retention.length.is_given() {
            row.need("length of the oil retention zone", m.stages.retention.length())?
        } else {
            let label = "length of the oil retention zone";
            let none = Length::from_si(0.0);
            row.or_usual(
                label,
                DIMENSION,
                &m.stages.retention.length,
                none,
                "not stated: oil is held over the whole tank",
            )
        };
        Ok(Self {
            length,
            oil_draw: row.or_usual(
                "elevation of the oil draw-off",
                DIMENSION,
                &m.stages.retention.oil_draw,
                crest - Length::of(1.0, &IN),
                "not stated: {1 in|25 mm} below the crest",
            ),
            float_density: row.or_usual(
                "density of the level float",
                DENSITY,
                &m.stages.retention.float_density,
                Density::from_si(930.0),
                "not stated: {58.1 lb/ft3|930 kg/m3}",
            ),
        })
    }

    /// How the water sinks there; nothing without a zone of its own, or for oil that does not rise.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn sinks<T: Trail>(&self, t: &mut T, unit: &Unit, worst: &Removal) -> Result<Option<Sinks>, Stop> {
        let p = &worst.passage.fluids;
        let Some(zone) = unit.compartment(Place::Retention).filter(|_| p.rises()) else { return Ok(None) };
        let area = unit.body.surface(t, "surface of the oil retention zone", zone.stretch(), unit.outlet.crest)?;
        let overflow = reckon!(t, "overflow rate of the oil retention zone", [GPM_FT2, M_H],
            (flow = worst.flow, area = area) flow / area);
        let drawn = by!(
            t,
            "largest droplet that is drawn under the downcomer",
            drag_cut::diameter(overflow, p.water, p.oil, p.viscosity)
        )?;
        Ok(Some(Sinks { overflow, drawn }))
    }
}

impl Stage for Retention {
    fn name(&self) -> &'static str {
        "oil retention zone"
    }
    fn compartment(&self) -> Option<(Place, Val<Length>)> {
        Some((Place::Retention, self.length))
    }
    fn passed(&self, unit: &Unit) -> Option<&'static str> {
        unit.compartment(Place::Retention).map(|_| self.name())
    }
}
