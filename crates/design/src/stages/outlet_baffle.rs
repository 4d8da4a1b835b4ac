//! Stage: a perforated baffle on the outlet face of the plates, or of the mesh behind them: as wide and as high as the pack, so
//! that oil passes over it as it does over the pack. Its head evens the flow over the pack (common practice).
//!
//! No credit is taken for that: the gaps are still taken to be fed as unequally as without it.

use super::in_water::InWater;
use super::stage::{Datum, Drawn, Line, Stage};
use super::{Crossing, Place};
use crate::arrangements::Arrangement;
use crate::enquiry::keys::{Quantity, keys};
use crate::provenance::{Pair, Stop, Trail, Val};
use crate::train::row::Row;
use crate::train::unit::Unit;
use crate::{by, reckon, record};
use stillrise_handbook::hydraulics::{baffle_coefficient, fitting_loss};
use stillrise_units::catalog::PERCENT;
use stillrise_units::{Length, Ratio, ratio};

keys! {
    /// Keys of the outlet baffle.
    OutletBaffleKeys "model" {
        /// Open share of a perforated baffle on the outlet face of pack and mesh, as wide and as high as the pack; none where
        /// nothing is said
        open as "outlet_baffle_open": Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0.5 %", "60 %").like("\"20 %\"");
    }
}

record! {
    /// The baffle.
    OutletBaffle {
        /// open share of it
        open: Ratio;
    }
}

impl OutletBaffle {
    /// As a row or a described unit lays it out; `None` where it has none.
    ///
    /// # Errors
    /// [`Stop`] where there are no plates behind which it could stand.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Result<Option<Self>, Stop> {
        const SHARE: Pair = (&PERCENT, &PERCENT);
        let Some(open) = row.laid("open share of the outlet baffle", SHARE, &row.m.stages.outlet_baffle.open) else {
            return Ok(None);
        };
        if !Arrangement::of(row.m).has_plates() {
            return Err(
                row.stop("an outlet baffle stands behind plates, and there are none; leave outlet_baffle_open out")
            );
        }
        Ok(Some(Self { open }))
    }
}

impl Stage for OutletBaffle {
    fn name(&self) -> &'static str {
        "outlet baffle"
    }
    fn loses(&self) -> bool {
        true
    }
    /// Through its holes. All water that leaves the pack meets it; where fouling has closed a share of the pack, that share of
    /// the baffle behind it is taken to pass nothing either.
    fn loss<T: Trail>(&self, t: &mut T, way: &Crossing<'_>) -> Result<Option<Val<Length>>, Stop> {
        let Some(pack) = &way.unit.pack else { return Ok(None) };
        let zeta = by!(t, "loss coefficient of the outlet baffle", baffle_coefficient::coefficient(self.open))?;
        let face = reckon!(t, "face of the outlet baffle", [FT2, M2], (width = pack.follows.width, height = pack.laid.height) width * height);
        let mut v = reckon!(t, "velocity ahead of the outlet baffle", [FT_MIN, MM_S], (flow = way.flow, face = face) flow / face);
        if way.fouled {
            v = reckon!(t, "velocity ahead of the outlet baffle, pack fouled", [FT_MIN, MM_S], (v = v, fouling = way.basis.methods.fouling) v / (ratio(1.0) - fouling));
        }
        by!(t, "loss of the outlet baffle", fitting_loss::loss(zeta, v)).map(Some)
    }
    /// Behind the mesh, or the plates where there is none.
    fn in_water(&self, unit: &Unit) -> Vec<InWater> {
        let place = unit.compartment(Place::Mesh).or_else(|| unit.compartment(Place::PlatePack));
        let Some((pack, place)) = unit.pack.as_ref().zip(place) else { return Vec::new() };
        let (low, high) = (pack.laid.bottom.q, pack.follows.top.q);
        vec![InWater::Openings { at: place.to, low, high, open: self.open.q }]
    }
    fn drawn(&self, unit: &Unit) -> Option<Drawn> {
        let pack = unit.pack.as_ref()?;
        let at = unit.compartment(Place::Mesh).or_else(|| unit.compartment(Place::PlatePack))?.to;
        let (low, high) = (pack.laid.bottom.q, pack.follows.top.q);
        let data = vec![
            Datum::Words("perforated, "),
            Datum::Share(self.open.q),
            Datum::Words(" open, as wide and as high as the pack"),
        ];
        let lines = vec![Line::Perforated { at, low, high }];
        Some(Drawn::new("outlet-baffle", "Outlet baffle", data, (at, high - pack.laid.height.q * 0.05), lines))
    }
}
