//! The stages of a unit, one a file: how each is laid out, what it takes of the head, how thick a layer of oil it lets
//! stand, what droplets and grains meet in it, and what is checked in its zone.

pub mod access;
pub mod channels;
pub mod clear_well;
pub mod diffusion_baffle;
pub mod dip_pipe;
pub mod downcomer;
pub mod gravity_zone;
pub mod hopper;
pub mod in_water;
pub mod inlet;
pub mod inlet_bend;
pub mod inlet_chamber;
mod list;
pub mod mesh;
pub mod outlet;
pub mod outlet_baffle;
pub mod plate_pack;
pub mod pump_out;
pub mod retention;
pub mod sand_trap;
pub mod stage;
pub mod underflow;

use crate::basis::Basis;
use crate::basis::fluids::WaterState;
use crate::enquiry::Enquiry;
use crate::performance::State;
use crate::performance::passage::{Fixed, Fluids};
use crate::provenance::{Origin, Stop, Trail, Val, WhatIf, entry};
use crate::train::unit::Unit;
use arrayvec::ArrayVec;
use gravity_zone::TankPass;
pub use list::{AnyStage, Ends, MOST as MOST_STAGES, StageKeys, Stages};
use mesh::MeshPass;
use plate_pack::PlatesPass;
pub use stage::Stage;
use stillrise_handbook::choice;
use stillrise_handbook::separation::catch::{Catch, Catches, MOST};
use stillrise_units::{Flow, Length, Ratio, Velocity};

choice! {
    /// The compartments of a unit, in the order in which water passes those that it has.
    Place {
        /// where sand settles ahead of all else
        SandTrap "sand compartment",
        /// where the incoming water is stilled
        InletChamber "inlet chamber",
        /// open water, over whose plan area droplets rise and grains settle
        GravityZone "primary zone",
        /// plates
        PlatePack "plate pack",
        /// a mesh
        Mesh "mesh",
        /// where oil is held ahead of the downcomer
        Retention "oil retention zone",
        /// behind the downcomer, up to the outlet
        ClearWell "clear well",
        /// from which pumps lift the clean water
        PumpOut "pump-out compartment",
    }
}

impl Place {
    /// Whether water passes it after another.
    #[must_use]
    pub fn is_behind(self, other: Self) -> bool {
        let rank = |place: Self| Self::ALL.iter().position(|one| *one == place);
        rank(self) > rank(other)
    }
}

choice! {
    /// What a layer of oil would reach.
    Reach {
        /// the lower edge of the downcomer
        Lip "downcomer lip",
        /// the mouth of the dip pipe
        DipPipe "mouth of the dip pipe",
        /// the mouth of the inlet bend
        InletBend "mouth of the inlet bend",
        /// the top of the plates
        Pack "top of the pack",
        /// the top of the vessel
        Wall "wall",
        /// the invert of the inlet
        Inlet "inlet",
    }
}

/// What crosses one unit, and how: the head that each stage takes is worked from it.
pub struct Crossing<'a> {
    /// The enquiry, which may state what else is assumed.
    pub e: &'a Enquiry,
    /// The basis.
    pub basis: &'a Basis,
    /// Answers that are tried.
    pub w: &'a WhatIf,
    /// The unit.
    pub unit: &'a Unit,
    /// Flow through it.
    pub flow: Val<Flow>,
    /// Velocity along it.
    pub approach: Val<Velocity>,
    /// Whether it is at the end of its interval.
    pub fouled: bool,
}

/// What flows through one unit: how much, which water, in which state of the unit.
pub struct Through<'a> {
    /// The basis.
    pub basis: &'a Basis,
    /// Bounds.
    pub fixed: &'a Fixed,
    /// Flow through one unit.
    pub flow: Val<Flow>,
    /// The water.
    pub water: &'a WaterState,
    /// The state.
    pub state: State,
}

/// A stage as one flow meets it: what decides how much it catches.
#[derive(Debug, Clone)]
pub enum Pass {
    /// Open water.
    Tank(TankPass),
    /// Plates.
    Plates(PlatesPass),
    /// A mesh.
    Mesh(MeshPass),
}

/// The stages in the direction of flow, as one flow meets them.
pub type Passes = ArrayVec<Pass, MOST>;

/// The same for whichever stage.
macro_rules! each {
    ($pass:expr, $stage:ident => $does:expr) => {
        match $pass {
            Pass::Tank($stage) => $does,
            Pass::Plates($stage) => $does,
            Pass::Mesh($stage) => $does,
        }
    };
}

impl Pass {
    /// Its name in tables and charts.
    #[must_use]
    pub fn name(&self) -> &'static str {
        match self {
            Pass::Tank(_) => "tank",
            Pass::Plates(_) => "plates",
            Pass::Mesh(_) => "mesh",
        }
    }

    /// What droplets meet in it.
    #[must_use]
    pub fn catch(&self) -> Val<Catch> {
        each!(self, stage => stage.catch())
    }

    /// Whether it counts in the headline.
    #[must_use]
    pub fn counts(&self) -> bool {
        match self {
            Pass::Tank(_) | Pass::Plates(_) => true,
            Pass::Mesh(mesh) => mesh.counts,
        }
    }

    /// The same, counted or not where that is open: a stage that always counts does.
    #[must_use]
    pub fn counted(&self, counts: bool) -> Self {
        match self {
            Pass::Mesh(mesh) => Pass::Mesh(mesh.counted(counts)),
            other => other.clone(),
        }
    }

    /// The same with everything ideal.
    pub fn ideal<T: Trail>(&self, t: &mut T, fixed: &Fixed) -> Self {
        match self {
            Pass::Tank(tank) => Pass::Tank(tank.ideal(t, fixed)),
            Pass::Plates(plates) => Pass::Plates(plates.ideal(t, fixed)),
            Pass::Mesh(mesh) => Pass::Mesh(mesh.clone()),
        }
    }

    /// The same with everything mixed.
    pub fn mixed<T: Trail>(&self, t: &mut T, fixed: &Fixed) -> Self {
        match self {
            Pass::Tank(tank) => Pass::Tank(tank.mixed(t, fixed)),
            Pass::Plates(plates) => Pass::Plates(plates.mixed(t, fixed)),
            Pass::Mesh(mesh) => Pass::Mesh(mesh.clone()),
        }
    }

    /// The same at another flow, in a unit of another area.
    pub fn scaled<T: Trail>(&self, t: &mut T, more: Val<Ratio>, area: Val<Ratio>) -> Self {
        match self {
            Pass::Tank(tank) => Pass::Tank(tank.scaled(t, more, area)),
            Pass::Plates(plates) => Pass::Plates(plates.scaled(t, more, area)),
            Pass::Mesh(mesh) => Pass::Mesh(mesh.scaled(t, more, area)),
        }
    }

    /// Share that it catches of droplets of one size, of those that reach it.
    ///
    /// # Errors
    /// [`Stop`] when the page of the stage has no answer.
    pub fn caught<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        d: Val<Length>,
        rise: Val<Velocity>,
        fluids: &Fluids,
    ) -> Result<Val<Ratio>, Stop> {
        match self {
            Pass::Tank(tank) => tank.caught(t, label, rise),
            Pass::Plates(plates) => plates.caught(t, label, rise),
            Pass::Mesh(mesh) => mesh.caught(t, label, (d, rise), fluids),
        }
    }

    /// What grains meet in it, clean; `lost` is the share of the plates that its numbers go without. Nothing where grains
    /// are not counted on to stay.
    pub fn for_grains<T: Trail>(&self, t: &mut T, fixed: &Fixed, lost: Option<Val<Ratio>>) -> Option<Val<Catch>> {
        match self {
            Pass::Tank(tank) => Some(tank.mixed(t, fixed).catch()),
            Pass::Plates(plates) => Some(plates.for_grains(t, lost)),
            Pass::Mesh(_) => None,
        }
    }
}

/// What droplets or grains meet, one stage after the other.
pub fn in_a_row<T: Trail>(t: &mut T, stages: impl Iterator<Item = Val<Catch>> + Clone) -> Val<Catches> {
    let q = Catches::new(stages.clone().map(|stage| stage.q));
    let at = t.push(|| {
        let inputs = stages.map(|stage| stage.at).take(MOST).collect();
        entry("what is passed, in the direction of flow", &q, None, Origin::Gathered { inputs })
    });
    Val { q, at }
}
