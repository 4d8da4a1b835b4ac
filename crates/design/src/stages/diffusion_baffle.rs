//! Stage: a perforated or slotted wall that spreads the water over the section.

use super::Crossing;
use crate::basis::stated::standby;
use crate::provenance::{Stop, Trail, Val, assume};
use crate::train::row::Row;
use crate::train::unit::Unit;
use crate::{by, reckon, record};
use stillrise_handbook::hydraulics::{baffle_coefficient, fitting_loss};
use stillrise_handbook::separation::loss_dissipation;
use stillrise_units::catalog::PERCENT;
use stillrise_units::{Dissipation, Flow, Length, Ratio, ratio};

record! {
    /// The baffle.
    DiffusionBaffle {
        /// open share of its section
        open: Ratio;
    }
}

/// What it does to the jet.
#[derive(Debug, Clone)]
pub struct Spreads {
    /// Its loss coefficient on the velocity along the unit.
    pub zeta: Val<Ratio>,
    /// Power that it leaves in the primary zone.
    pub power: Option<Val<Dissipation>>,
}

impl DiffusionBaffle {
    /// As a row or a described unit lays it out.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Self {
        const SHARE: crate::provenance::Pair = (&PERCENT, &PERCENT);
        let m = row.m;
        let open = match row.laid("open share of the diffusion baffle", SHARE, &m.baffle_open) {
            Some(value) => value,
            None => assume(
                row.t,
                row.w,
                standby(
                    "open share of the diffusion baffle",
                    SHARE,
                    "unit.baffle_open",
                    "",
                    (ratio(0.03), ratio(0.05), ratio(0.10)),
                    "from memory: 3 to 7 % of the section for slotted baffles",
                ),
            ),
        };
        Self { open }
    }

    fn zeta<T: Trail>(&self, t: &mut T) -> Result<Val<Ratio>, Stop> {
        by!(t, "loss coefficient of the diffusion baffle", baffle_coefficient::coefficient(self.open))
    }

    /// Loss through its openings.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn loss<T: Trail>(&self, t: &mut T, way: &Crossing<'_>) -> Result<Val<Length>, Stop> {
        let zeta = self.zeta(t)?;
        by!(t, "loss of the diffusion baffle", fitting_loss::loss(zeta, way.approach))
    }

    /// What it does to the jet at a flow.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn spreads<T: Trail>(&self, t: &mut T, unit: &Unit, flow: Val<Flow>) -> Result<Spreads, Stop> {
        let zeta = self.zeta(t)?;
        let section = unit.body.section(t, "wetted cross-section", unit.outlet.crest)?;
        let approach =
            reckon!(t, "velocity ahead of the baffle", [FT_MIN, MM_S], (flow = flow, section = section) flow / section);
        let loss = by!(t, "head that the baffle takes", fitting_loss::loss(zeta, approach))?;
        let power = match unit.compartment(super::Place::GravityZone) {
            Some(zone) => Some(by!(
                t,
                "power of the baffle's jets in the primary zone",
                loss_dissipation::dissipation(loss, flow, zone.volume)
            )?),
            None => None,
        };
        Ok(Spreads { zeta, power })
    }
}
