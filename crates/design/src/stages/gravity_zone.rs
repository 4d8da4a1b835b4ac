//! Stage: open water, over whose plan area droplets rise.

use super::stage::Stage;
use super::{Pass, Through};
use crate::performance::passage::Fixed;
use crate::provenance::{Node, Stop, Trail, Val, given};
use crate::train::unit::Unit;
use crate::{by, gather, reckon};
use stillrise_handbook::hydraulics::mean_velocity;
use stillrise_handbook::separation::catch::Catch;
use stillrise_handbook::separation::tank_removal::{Tank, TankModel};
use stillrise_handbook::separation::{camp_eddy, settling_peclet, tank_removal};
use stillrise_units::catalog::ONE;
use stillrise_units::{Ratio, Velocity, ratio};

/// Open water, of which nothing is stated: it takes what the others leave of the length.
#[derive(Debug, Clone, Copy)]
pub struct GravityZone;

impl GravityZone {
    /// It has no dimensions of its own.
    #[must_use]
    pub fn fields(&self) -> Vec<(&'static str, Node)> {
        Vec::new()
    }
}

impl Stage for GravityZone {
    fn name(&self) -> &'static str {
        "primary zone"
    }
    fn pass<T: Trail>(&self, t: &mut T, unit: &Unit, way: &Through<'_>) -> Result<Option<Pass>, Stop> {
        TankPass::through(t, unit, way).map(|pass| Some(Pass::Tank(pass)))
    }
    fn passed(&self, unit: &Unit) -> Option<&'static str> {
        Some(if unit.hopper.is_some() { "primary zone over the sludge hopper" } else { "primary zone" })
    }
}

/// Open water as one flow meets it.
#[derive(Debug, Clone, Copy)]
pub struct TankPass {
    /// Its overflow rate.
    pub v_0: Val<Velocity>,
    /// How the water moves in it.
    pub model: Val<TankModel>,
    /// Index of that model.
    pub index: Val<Ratio>,
    at: Node,
}

impl TankPass {
    /// Of these values.
    pub fn new<T: Trail>(t: &mut T, v_0: Val<Velocity>, model: Val<TankModel>, index: Val<Ratio>) -> Self {
        let at = gather!(t, "open water as it is met", Tank { v_0: v_0, model: model, index: index }).at;
        Self { v_0, model, index, at }
    }

    /// The tank ahead of a unit's plates, inlet chamber included, moved by the chosen model.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn through<T: Trail>(t: &mut T, unit: &Unit, way: &Through<'_>) -> Result<Self, Stop> {
        Self::moved_by(t, unit, way, way.basis.methods.tank, way.basis.methods.tank_index)
    }

    /// The same moved by another model, with the index of those models that ask for one.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn moved_by<T: Trail>(
        t: &mut T,
        unit: &Unit,
        way: &Through<'_>,
        model: Val<TankModel>,
        stated: Val<Ratio>,
    ) -> Result<Self, Stop> {
        let (crest, flow) = (unit.outlet.crest, way.flow);
        let v_0 = reckon!(t, "overflow rate ahead of the pack", [GPM_FT2, M_H], (flow = flow, area = unit.layout.tank_area) flow / area);
        let index = match model.q {
            TankModel::Tanks | TankModel::Dispersed => stated,
            TankModel::DobbinsCamp => {
                let section = unit.body.section(t, "wetted cross-section", crest)?;
                let depth = unit.body.mean_depth(t, crest)?;
                let along = by!(t, "velocity along the tank", mean_velocity::velocity(flow, section))?;
                let friction = given(
                    t,
                    "friction factor of the tank",
                    Some((&ONE, &ONE)),
                    ratio(0.024),
                    "Camp, from memory",
                    "0.024",
                );
                let eddy = by!(t, "vertical mixing in the tank", camp_eddy::diffusivity(along, depth, friction))?;
                by!(t, "index of the tank model", settling_peclet::peclet(v_0, depth, eddy))?
            }
            _ => way.fixed.no_index,
        };
        Ok(Self::new(t, v_0, model, index))
    }

    /// What droplets meet in it.
    #[must_use]
    pub fn catch(&self) -> Val<Catch> {
        let tank = Tank { v_0: self.v_0.q, model: self.model.q, index: self.index.q };
        Val { q: Catch::Tank(tank), at: self.at }
    }

    /// Share of one size that it catches.
    ///
    /// # Errors
    /// [`Stop`] when the page has no answer.
    pub fn caught<T: Trail>(&self, t: &mut T, label: &str, rise: Val<Velocity>) -> Result<Val<Ratio>, Stop> {
        by!(t, label, tank_removal::removal(rise, self.v_0, self.model, self.index))
    }

    /// Nothing mixed.
    pub fn ideal<T: Trail>(&self, t: &mut T, fixed: &Fixed) -> Self {
        Self::new(t, self.v_0, fixed.ideal, fixed.no_index)
    }

    /// Mixed over the depth.
    pub fn mixed<T: Trail>(&self, t: &mut T, fixed: &Fixed) -> Self {
        Self::new(t, self.v_0, fixed.mixed, fixed.no_index)
    }

    /// At another flow, in a unit of another area.
    pub fn scaled<T: Trail>(&self, t: &mut T, more: Val<Ratio>, area: Val<Ratio>) -> Self {
        let v_0 = reckon!(t, "overflow rate ahead of the pack then", [GPM_FT2, M_H], (v = self.v_0, flow = more, area = area) v * flow / area);
        Self::new(t, v_0, self.model, self.index)
    }
}
