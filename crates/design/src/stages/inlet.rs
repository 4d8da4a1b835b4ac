//! Stage: the inlet nozzle, through which the water arrives.

use super::stage::Stage;
use super::{Crossing, Reach};
use crate::basis::Basis;
use crate::enquiry::fields::Text;
use crate::enquiry::keys::{Quantity, keys};
use crate::enquiry::range::pipe_names;
use crate::performance::caps::{Cap, Caps, Margins};
use crate::provenance::{Stop, Trail, Val, given};
use crate::train::row::Row;
use crate::train::unit::Unit;
use crate::{by, record};
use stillrise_handbook::hydraulics::{circle_area, fitting_loss, mean_velocity};
use stillrise_handbook::separation::{hinze_droplet, jet_dissipation, shear_rate};
use stillrise_handbook::vessel::inlet_cap;
use stillrise_units::catalog::{IN, MM, ONE, W_KG};
use stillrise_units::{Dissipation, Flow, Length, ShearRate, Typed, Velocity, Volume, ratio};

keys! {
    /// Keys of the inlet nozzle.
    InletKeys "model" {
        /// Invert of the inlet nozzle, above the floor
        invert as "inlet_invert": Quantity<Length> = spec.units(&IN, &MM).between("3 in", "240 in").like("\"50 in\"")
            .asks("What is the height of the inlet pipe's invert above the floor of the unit?")
            .found("half-way between outlet and top of the walls");
        /// Nominal size of the inlet nozzle
        pipe as "inlet_pipe": Text = spec.named(pipe_names).like("\"6 in\"")
            .asks("How wide is the inlet pipe of the unit, inside or by its nominal size?")
            .found("the nominal pipe, {3 in|DN 80} or larger, in which the flow stays below {2 ft/s|0.61 m/s}");
    }
}

record! {
    /// The inlet nozzle.
    Inlet {
        /// invert of the inlet nozzle
        invert: Length;
        /// bore of the inlet nozzle
        bore: Length;
    }
}

/// What the jet does where it is broken.
#[derive(Debug, Clone)]
pub struct Jet {
    /// Its dissipation.
    pub dissipation: Val<Dissipation>,
    /// Mean shear rate.
    pub shear: Val<ShearRate>,
    /// Largest droplet that it leaves whole; `None` for one too gentle to break any.
    pub survives: Option<Val<Length>>,
}

/// W/kg: below it no droplet of a separator breaks; a clean one of 10 mm comes through whole.
const GENTLE: f64 = 0.001;

impl Inlet {
    /// As a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] naming the dimension that is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Result<Self, Stop> {
        let m = row.m;
        Ok(Self {
            invert: row.need("invert of the inlet nozzle", m.stages.inlet.invert())?,
            bore: row.bore("bore of the inlet nozzle", m.stages.inlet.pipe())?,
        })
    }

    /// Velocity in the nozzle.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn velocity<T: Trail>(&self, t: &mut T, flow: Val<Flow>) -> Result<Val<Velocity>, Stop> {
        let nozzle = by!(t, "area of the inlet nozzle", circle_area::area(self.bore))?;
        by!(t, "velocity in the inlet nozzle", mean_velocity::velocity(flow, nozzle))
    }

    /// What the jet does: its flow, its velocity, the water in which it is broken.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn jet<T: Trail>(
        &self,
        t: &mut T,
        basis: &Basis,
        flow: Val<Flow>,
        velocity: Val<Velocity>,
        volume: Val<Volume>,
    ) -> Result<Jet, Stop> {
        let cold = &basis.fluids.cold;
        let jet = by!(
            t,
            "dissipation of the inlet jet in its chamber",
            jet_dissipation::dissipation(flow, velocity, volume)
        )?;
        let shear = by!(t, "mean shear rate there", shear_rate::rate(jet, cold.kinematic))?;
        let mut tension = basis.fluids.oils[0].tension;
        for oil in &basis.fluids.oils {
            if oil.tension.q < tension.q {
                tension = oil.tension;
            }
        }
        let label = "largest droplet that the jet leaves whole";
        let survives = if jet.q >= Dissipation::of(GENTLE, &W_KG) {
            Some(by!(t, label, hinze_droplet::diameter(tension, cold.density, jet))?)
        } else {
            None
        };
        Ok(Jet { dissipation: jet, shear, survives })
    }
}

impl Stage for Inlet {
    fn name(&self) -> &'static str {
        "inlet nozzle"
    }
    fn loses(&self) -> bool {
        true
    }
    /// Where the nozzle ends in the water.
    fn loss<T: Trail>(&self, t: &mut T, way: &Crossing<'_>) -> Result<Option<Val<Length>>, Stop> {
        let v = self.velocity(t, way.flow)?;
        let exit = given(t, "exit loss coefficient", Some((&ONE, &ONE)), ratio(1.0), "Crane TP-410", "1.0");
        by!(t, "loss at the inlet nozzle", fitting_loss::loss(exit, v)).map(Some)
    }
    /// Under its invert.
    fn cap<T: Trail>(&self, t: &mut T, m: &Margins, c: &Caps<'_>) -> Result<Option<Cap>, Stop> {
        let thickness = by!(
            t,
            "cap by the inlet",
            inlet_cap::thickness(self.invert, m.inlet, c.highest.well, c.loss, c.oil.warm, c.warm)
        )?;
        Ok(Some(Cap { of: Reach::Inlet, thickness }))
    }
    fn passed(&self, _: &Unit) -> Option<&'static str> {
        None
    }
}
