//! The stages that a unit may have, in the direction of flow: the one list of them.

use super::clear_well::{ClearWell, ClearWellKeys};
use super::diffusion_baffle::{DiffusionBaffle, DiffusionBaffleKeys};
use super::gravity_zone::GravityZone;
use super::hopper::{Hopper, HopperKeys};
use super::in_water::InWater;
use super::inlet::{Inlet, InletKeys};
use super::inlet_bend::{InletBend, InletBendKeys};
use super::inlet_chamber::{InletChamber, InletChamberKeys};
use super::mesh::{CoalescingMesh, MeshKeys};
use super::outlet::{Outlet, OutletKeys};
use super::outlet_baffle::{OutletBaffle, OutletBaffleKeys};
use super::plate_pack::{PlatePack, PlatePackKeys};
use super::pump_out::{PumpOut, PumpOutKeys};
use super::retention::{Retention, RetentionKeys};
use super::sand_trap::{SandTrap, SandTrapKeys};
use super::stage::{Drawn, Stage};
use super::underflow::{Underflow, UnderflowKeys};
use super::{Crossing, Pass, Place, Through};
use crate::enquiry::keys::keys;
use crate::performance::caps::{Cap, Caps, Margins};
use crate::provenance::{Node, Stop, Trail, Val};
use crate::train::row::Row;
use crate::train::unit::{Parts, Unit};
use crate::vessel::Body;
use arrayvec::ArrayVec;
use stillrise_units::Length;

/// Declares the stages: `always` for what every unit has, `maybe` for what it may have; each with the keys of a row that it owns.
macro_rules! stages {
    (@type always $of:ty) => { $of };
    (@type maybe $of:ty) => { Option<$of> };
    (@push always $all:ident $field:expr, $of:ident) => { $all.push(AnyStage::$of(&$field)) };
    (@push maybe $all:ident $field:expr, $of:ident) => { $all.extend($field.as_ref().map(AnyStage::$of)) };
    ($($(#[doc = $doc:literal])+ $how:ident $field:ident : $of:ident $(from $keys:ident)?;)+) => {
        keys! {
            /// What a row says of its stages.
            StageKeys "model" {} with { $( $( /** Keys of the stage of this name. */ $field: $keys; )? )+ }
        }

        /// The most stages that a unit has.
        pub const MOST: usize = [$(stringify!($field)),+].len();

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
            fn stands(&self, parts: &Parts, open: Length) -> Result<(), String> {
                match self { $( AnyStage::$of(own) => own.stands(parts, open), )+ }
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
            fn in_water(&self, unit: &Unit) -> Vec<InWater> {
                match self { $( AnyStage::$of(own) => own.in_water(unit), )+ }
            }
            fn passed(&self, unit: &Unit) -> Option<&'static str> {
                match self { $( AnyStage::$of(own) => own.passed(unit), )+ }
            }
        }
    };
}

stages! {
    /// The inlet nozzle.
    always inlet: Inlet from InletKeys;
    /// A bend that turns the water down.
    maybe inlet_bend: InletBend from InletBendKeys;
    /// A sand compartment ahead.
    maybe sand_trap: SandTrap from SandTrapKeys;
    /// The chamber in which the jet is broken.
    maybe inlet_chamber: InletChamber from InletChamberKeys;
    /// The wall that spreads the water.
    maybe baffle: DiffusionBaffle from DiffusionBaffleKeys;
    /// A hopper below the floor.
    maybe hopper: Hopper from HopperKeys;
    /// Open water.
    always open_water: GravityZone;
    /// Plates.
    maybe pack: PlatePack from PlatePackKeys;
    /// A mesh behind them.
    maybe mesh: CoalescingMesh from MeshKeys;
    /// A perforated baffle on the outlet face of both.
    maybe outlet_baffle: OutletBaffle from OutletBaffleKeys;
    /// Where oil is held.
    always retention: Retention from RetentionKeys;
    /// What lets the water leave from under the oil.
    always underflow: Underflow from UnderflowKeys;
    /// The clear well behind it.
    maybe clear_well: ClearWell from ClearWellKeys;
    /// A compartment from which pumps lift the clean water.
    maybe pump_out: PumpOut from PumpOutKeys;
    /// The outlet.
    always outlet: Outlet from OutletKeys;
}

/// The compartments at both ends that an enquiry takes or not, and that make the vessel longer.
#[derive(Debug, Clone)]
pub struct Ends {
    /// A sand compartment ahead.
    pub sand_trap: Option<SandTrap>,
    /// A pump-out compartment behind.
    pub pump_out: Option<PumpOut>,
}

impl Ends {
    /// As a row or a described unit lays them out.
    ///
    /// # Errors
    /// [`Stop`] naming the dimension that is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Result<Self, Stop> {
        Ok(Self { sand_trap: SandTrap::laid(row)?, pump_out: PumpOut::laid(row)? })
    }
    /// Whether any is taken.
    #[must_use]
    pub fn is_taken(&self) -> bool {
        self.sand_trap.is_some() || self.pump_out.is_some()
    }
    /// Their lengths.
    pub fn lengths(&self) -> impl Iterator<Item = Val<Length>> {
        self.sand_trap.iter().map(|trap| trap.length).chain(self.pump_out.iter().map(|pumps| pumps.length))
    }
}

impl Stages {
    /// With those alone that every unit has.
    #[must_use]
    pub fn plain(inlet: Inlet, retention: Retention, underflow: Underflow, outlet: Outlet) -> Self {
        Self {
            inlet,
            inlet_bend: None,
            sand_trap: None,
            inlet_chamber: None,
            baffle: None,
            hopper: None,
            open_water: GravityZone,
            pack: None,
            mesh: None,
            outlet_baffle: None,
            retention,
            underflow,
            clear_well: None,
            pump_out: None,
            outlet,
        }
    }

    /// As a row or a described unit lays them out. Walls across the flow part chamber, oil and clear well; without them a bend
    /// and a dip pipe stand in their place.
    ///
    /// # Errors
    /// [`Stop`] naming the dimension that is missing, or a stage that cannot stand there.
    pub fn laid<T: Trail>(
        row: &mut Row<'_, T>,
        body: &Body,
        ends: Ends,
        walls: bool,
        plates: bool,
    ) -> Result<Self, Stop> {
        let inlet = Inlet::laid(row)?;
        let inlet_chamber = if walls { Some(InletChamber::laid(row)?) } else { None };
        let inlet_bend = if walls { None } else { Some(InletBend::laid(row)?) };
        // Below a round floor there is none.
        let hopper = if body.is_open() { Hopper::laid(row, body)? } else { None };
        let baffle = inlet_chamber.as_ref().map(|chamber| DiffusionBaffle::laid(row, chamber, hopper.as_ref()));
        let pack = if plates { Some(PlatePack::laid(row, body)?) } else { None };
        let mesh = CoalescingMesh::laid(row, plates)?;
        let outlet_baffle = OutletBaffle::laid(row)?;
        let clear_well = if walls { Some(ClearWell::laid(row)?) } else { None };
        let outlet = Outlet::laid(row, body)?;
        let retention = Retention::laid(row, outlet.crest.q, plates)?;
        let underflow = Underflow::laid(row, &outlet, walls)?;
        let Ends { sand_trap, pump_out } = ends;
        let plain = Self::plain(inlet, retention, underflow, outlet);
        Ok(Self {
            inlet_bend,
            sand_trap,
            inlet_chamber,
            baffle,
            hopper,
            pack,
            mesh,
            outlet_baffle,
            clear_well,
            pump_out,
            ..plain
        })
    }
}
