//! The stages that a unit may have, in the direction of flow: the one list of them.

use super::clear_well::ClearWell;
use super::diffusion_baffle::DiffusionBaffle;
use super::gravity_zone::GravityZone;
use super::hopper::Hopper;
use super::inlet::Inlet;
use super::inlet_bend::InletBend;
use super::inlet_chamber::InletChamber;
use super::mesh::CoalescingMesh;
use super::outlet::Outlet;
use super::outlet_baffle::OutletBaffle;
use super::plate_pack::PlatePack;
use super::pump_out::PumpOut;
use super::retention::Retention;
use super::sand_trap::SandTrap;
use super::stage::{Drawn, Stage};
use super::underflow::Underflow;
use super::{Crossing, Pass, Place, Through};
use crate::performance::caps::{Cap, Caps, Margins};
use crate::provenance::{Node, Stop, Trail, Val};
use crate::train::unit::Unit;
use arrayvec::ArrayVec;
use stillrise_units::Length;

/// The most stages that a unit has.
pub const MOST: usize = 16;

/// Declares the stages: `always` for what every unit has, `maybe` for what it may have.
macro_rules! stages {
    (@type always $of:ty) => { $of };
    (@type maybe $of:ty) => { Option<$of> };
    (@push always $all:ident $field:expr, $of:ident) => { $all.push(AnyStage::$of(&$field)) };
    (@push maybe $all:ident $field:expr, $of:ident) => { $all.extend($field.as_ref().map(AnyStage::$of)) };
    ($($(#[doc = $doc:literal])+ $how:ident $field:ident : $of:ident;)+) => {
        /// The stages of a unit.
        #[derive(Debug, Clone)]
        pub struct Stages { $( $(#[doc = $doc])+ pub $field: stages!(@type $how $of), )+ }

        /// One of them.
        #[derive(Debug, Clone, Copy)]
        pub enum AnyStage<'a> { $( $(#[doc = $doc])+ $of(&'a $of), )+ }

        impl Stages {
            /// Those that it has, in the direction of flow.
            #[must_use]
            pub fn all(&self) -> ArrayVec<AnyStage<'_>, MOST> {
                let mut all = ArrayVec::new();
                $( stages!(@push $how all self.$field, $of); )+
                all
            }
        }

        impl AnyStage<'_> {
            /// Its dimensions: name, and place in the trail.
            #[must_use]
            pub fn fields(&self) -> Vec<(&'static str, Node)> {
                match self { $( AnyStage::$of(own) => own.fields(), )+ }
            }
        }

        impl Stage for AnyStage<'_> {
            fn name(&self) -> &'static str {
                match self { $( AnyStage::$of(own) => own.name(), )+ }
            }
            fn compartment(&self) -> Option<(Place, Val<Length>)> {
                match self { $( AnyStage::$of(own) => own.compartment(), )+ }
            }
            fn loses(&self) -> bool {
                match self { $( AnyStage::$of(own) => own.loses(), )+ }
            }
            fn loss<T: Trail>(&self, t: &mut T, way: &Crossing<'_>) -> Result<Option<Val<Length>>, Stop> {
                match self { $( AnyStage::$of(own) => Stage::loss(*own, t, way), )+ }
            }
            fn cap<T: Trail>(&self, t: &mut T, m: &Margins, c: &Caps<'_>) -> Result<Option<Cap>, Stop> {
                match self { $( AnyStage::$of(own) => Stage::cap(*own, t, m, c), )+ }
            }
            fn pass<T: Trail>(&self, t: &mut T, unit: &Unit, way: &Through<'_>) -> Result<Option<Pass>, Stop> {
                match self { $( AnyStage::$of(own) => own.pass(t, unit, way), )+ }
            }
            fn inner_wall(&self, unit: &Unit) -> Option<Length> {
                match self { $( AnyStage::$of(own) => own.inner_wall(unit), )+ }
            }
            fn drawn(&self, unit: &Unit) -> Option<Drawn> {
                match self { $( AnyStage::$of(own) => own.drawn(unit), )+ }
            }
            fn passed(&self, unit: &Unit) -> Option<&'static str> {
                match self { $( AnyStage::$of(own) => own.passed(unit), )+ }
            }
        }
    };
}

stages! {
    /// The inlet nozzle.
    always inlet: Inlet;
    /// A bend that turns the water down.
    maybe inlet_bend: InletBend;
    /// A sand compartment ahead.
    maybe sand_trap: SandTrap;
    /// The chamber in which the jet is broken.
    maybe inlet_chamber: InletChamber;
    /// The wall that spreads the water.
    maybe baffle: DiffusionBaffle;
    /// A hopper below the floor.
    maybe hopper: Hopper;
    /// Open water.
    always open_water: GravityZone;
    /// Plates.
    maybe pack: PlatePack;
    /// A mesh behind them.
    maybe mesh: CoalescingMesh;
    /// A perforated baffle on the outlet face of both.
    maybe outlet_baffle: OutletBaffle;
    /// Where oil is held.
    always retention: Retention;
    /// What lets the water leave from under the oil.
    always underflow: Underflow;
    /// The clear well behind it.
    maybe clear_well: ClearWell;
    /// A compartment from which pumps lift the clean water.
    maybe pump_out: PumpOut;
    /// The outlet.
    always outlet: Outlet;
}
