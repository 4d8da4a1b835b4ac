//! A unit laid out: its body, its stages, and the compartments that they make of it.

use super::particulars::Particulars;
use crate::arrangements::Arrangement;
use crate::provenance::{Node, Stop, Trail, Val};
use crate::stages::access::Access;
use crate::stages::channels::Channels;
use crate::stages::clear_well::ClearWell;
use crate::stages::diffusion_baffle::DiffusionBaffle;
use crate::stages::hopper::Hopper;
use crate::stages::inlet::Inlet;
use crate::stages::inlet_bend::InletBend;
use crate::stages::inlet_chamber::InletChamber;
use crate::stages::mesh::CoalescingMesh;
use crate::stages::outlet::Outlet;
use crate::stages::outlet_baffle::OutletBaffle;
use crate::stages::plate_pack::{self, PlatePack};
use crate::stages::pump_out::PumpOut;
use crate::stages::retention::Retention;
use crate::stages::sand_trap::SandTrap;
use crate::stages::underflow::Underflow;
use crate::stages::{Place, Stage};
use crate::vessel::{Body, Stretch, rest, some, sum};
use crate::{record, say};
use arrayvec::ArrayVec;
use stillrise_handbook::vessel::shape::Shape;
use stillrise_units::{Area, Length, Typed, Volume};

/// What a unit is made of, as a row, a described unit or a rule lays it out.
#[derive(Debug, Clone)]
pub struct Parts {
    /// The channels of a basin.
    pub channels: Option<Channels>,
    /// A sand compartment ahead.
    pub sand_trap: Option<SandTrap>,
    /// A pump-out compartment behind.
    pub pump_out: Option<PumpOut>,
    /// How a closed one is reached.
    pub access: Option<Access>,
    /// Its body.
    pub body: Body,
    /// Its inlet.
    pub inlet: Inlet,
    /// A bend that turns the water down.
    pub inlet_bend: Option<InletBend>,
    /// The chamber in which the jet is broken.
    pub inlet_chamber: Option<InletChamber>,
    /// The wall that spreads the water.
    pub baffle: Option<DiffusionBaffle>,
    /// Its hopper.
    pub hopper: Option<Hopper>,
    /// Its plates.
    pub pack: Option<plate_pack::Dimensions>,
    /// A mesh behind them.
    pub mesh: Option<CoalescingMesh>,
    /// A perforated baffle on the outlet face of both.
    pub outlet_baffle: Option<OutletBaffle>,
    /// Where oil is held.
    pub retention: Retention,
    /// What lets the water leave from under the oil.
    pub underflow: Underflow,
    /// The clear well behind it.
    pub clear_well: Option<ClearWell>,
    /// The outlet.
    pub outlet: Outlet,
}

record! {
    /// What follows from the parts of a unit.
    Layout {
        /// length of the open water between diffusion baffle and plates, or downcomer where there are none
        primary_length: Length;
        /// surface of the open water, inlet chamber included
        tank_area: Area;
        /// surface over which oil is held, at the crest
        oil_area: Area;
        /// water up to the crest, above the floor, without a pump-out compartment
        water_volume: Volume;
    }
}

/// A compartment of a unit.
#[derive(Debug, Clone)]
pub struct Compartment {
    /// Which.
    pub place: Place,
    /// Station at which it begins, from the tip of the inlet end.
    pub from: Length,
    /// Station at which it ends.
    pub to: Length,
    /// Its length, without heads.
    pub length: Val<Length>,
    /// How many ends of the vessel close it.
    pub ends: u8,
    /// Its water up to the crest, above the floor; where pumps draw it down, up to the level at which they start.
    pub volume: Val<Volume>,
}

impl Compartment {
    /// As a stretch of the vessel.
    #[must_use]
    pub fn stretch(&self) -> Stretch {
        Stretch { length: self.length, ends: self.ends }
    }
}

/// One unit.
#[derive(Debug, Clone)]
pub struct Unit {
    /// How it is arranged.
    pub arrangement: Arrangement,
    /// The channels of a basin.
    pub channels: Option<Channels>,
    /// A sand compartment ahead.
    pub sand_trap: Option<SandTrap>,
    /// A pump-out compartment behind.
    pub pump_out: Option<PumpOut>,
    /// How a closed one is reached.
    pub access: Option<Access>,
    /// Its body.
    pub body: Body,
    /// Its inlet.
    pub inlet: Inlet,
    /// A bend that turns the water down.
    pub inlet_bend: Option<InletBend>,
    /// The chamber in which the jet is broken.
    pub inlet_chamber: Option<InletChamber>,
    /// The wall that spreads the water.
    pub baffle: Option<DiffusionBaffle>,
    /// Its hopper.
    pub hopper: Option<Hopper>,
    /// Its plates.
    pub pack: Option<PlatePack>,
    /// A mesh behind them.
    pub mesh: Option<CoalescingMesh>,
    /// A perforated baffle on the outlet face of both.
    pub outlet_baffle: Option<OutletBaffle>,
    /// Where oil is held.
    pub retention: Retention,
    /// What lets the water leave from under the oil.
    pub underflow: Underflow,
    /// The clear well behind it.
    pub clear_well: Option<ClearWell>,
    /// The outlet.
    pub outlet: Outlet,
    /// What follows from them.
    pub layout: Layout,
    /// Where oil is held: from the diffusion baffle to the downcomer.
    pub oil: Stretch,
    /// Its compartments in the direction of flow.
    pub compartments: Vec<Compartment>,
    /// The vessel.
    pub shape: Shape,
    /// What the range says beyond.
    pub particulars: Particulars,
}

impl Unit {
    /// Its stages in the direction of flow.
    #[must_use]
    pub fn stages(&self) -> ArrayVec<Stage<'_>, 10> {
        let mut stages = ArrayVec::new();
        stages.push(Stage::Inlet(&self.inlet));
        stages.extend(self.inlet_bend.as_ref().map(|bend| Stage::InletBend(bend, &self.inlet)));
        stages.extend(self.sand_trap.as_ref().map(Stage::SandTrap));
        stages.extend(self.baffle.as_ref().map(Stage::DiffusionBaffle));
        stages.push(Stage::GravityZone);
        stages.extend(self.pack.as_ref().map(Stage::PlatePack));
        stages.extend(self.mesh.as_ref().zip(self.pack.as_ref()).map(|(mesh, pack)| Stage::Mesh(mesh, pack)));
        let baffle = self.outlet_baffle.as_ref().zip(self.pack.as_ref());
        stages.extend(baffle.map(|(baffle, pack)| Stage::OutletBaffle(baffle, pack)));
        stages.push(Stage::Underflow(&self.underflow));
        stages
    }

    /// One of its compartments; `None` where it has none of the kind.
    #[must_use]
    pub fn compartment(&self, place: Place) -> Option<&Compartment> {
        self.compartments.iter().find(|c| c.place == place)
    }

    /// Depth of its hopper; nothing without one.
    #[must_use]
    pub fn below_floor(&self) -> Length {
        self.hopper.as_ref().map_or(Length::from_si(0.0), |hopper| hopper.depth.q)
    }

    /// Volume of its hopper; nothing without one.
    #[must_use]
    pub fn hopper_volume(&self) -> Volume {
        self.hopper.as_ref().map_or(Volume::from_si(0.0), |hopper| hopper.volume.q)
    }

    /// Its dimensions as given or chosen, part by part: name, and place in the trail.
    #[must_use]
    pub fn dimensions(&self) -> Vec<(&'static str, Vec<(&'static str, Node)>)> {
        let mut parts = vec![("vessel", self.body.fields())];
        parts.extend(self.channels.as_ref().map(|channels| ("channels", channels.fields())));
        parts.extend(self.access.as_ref().map(|access| ("access", access.fields())));
        parts.push(("inlet", self.inlet.fields()));
        parts.extend(self.inlet_bend.as_ref().map(|bend| ("inlet bend", bend.fields())));
        parts.extend(self.inlet_chamber.as_ref().map(|chamber| ("inlet chamber", chamber.fields())));
        parts.extend(self.sand_trap.as_ref().map(|trap| ("sand compartment", trap.fields())));
        parts.extend(self.baffle.as_ref().map(|baffle| ("diffusion baffle", baffle.fields())));
        parts.extend(self.hopper.as_ref().map(|hopper| ("hopper", hopper.fields())));
        parts.extend(self.pack.as_ref().map(|pack| ("plate pack", pack.laid.fields())));
        parts.extend(self.mesh.as_ref().map(|mesh| ("mesh", mesh.laid.fields())));
        parts.extend(self.outlet_baffle.as_ref().map(|baffle| ("outlet baffle", baffle.fields())));
        parts.push(("oil retention", self.retention.fields()));
        parts.push((self.underflow.name(), self.underflow.fields()));
        parts.extend(self.clear_well.as_ref().map(|well| ("clear well", well.fields())));
        parts.push(("outlet", self.outlet.fields()));
        parts.extend(self.pump_out.as_ref().map(|pumps| ("pump-out compartment", pumps.fields())));
        parts
    }

    /// What follows from them.
    #[must_use]
    pub fn follows(&self) -> Vec<(&'static str, Node)> {
        let mut fields = self.layout.fields();
        fields.extend(self.pack.iter().flat_map(|pack| pack.follows.fields()));
        fields
    }
}

/// Lays a unit out.
///
/// # Errors
/// [`Stop`] when the internals do not fit into the vessel.
pub fn lay_out<T: Trail>(
    t: &mut T,
    arrangement: Arrangement,
    parts: Parts,
    particulars: Particulars,
) -> Result<Unit, Stop> {
    let stop = |reason: String| Stop::said(format!("laying out unit {}", particulars.model), reason);
    let Parts {
        channels,
        sand_trap,
        pump_out,
        access,
        body,
        inlet,
        inlet_bend,
        inlet_chamber,
        baffle,
        hopper,
        pack,
        mesh,
        outlet_baffle,
        retention,
        underflow,
        clear_well,
        outlet,
    } = parts;
    let pack_length = pack.as_ref().map(|pack| pack.length);
    let mesh_length = mesh.as_ref().filter(|_| pack.is_some()).map(|mesh| mesh.laid.thickness);
    let sand = sand_trap.as_ref().map(|trap| trap.length);
    let pumps = pump_out.as_ref().map(|pumps| pumps.length);
    let held = Some(retention.length).filter(|length| some(length.q));
    let chamber = inlet_chamber.as_ref().map(|chamber| chamber.length);
    let well = clear_well.as_ref().map(|well| well.length);
    let mut others: ArrayVec<Val<Length>, 8> = ArrayVec::new();
    others.extend([chamber, pack_length, mesh_length, held, well, sand, pumps].into_iter().flatten());
    let primary_length = rest(t, "length of the primary zone", body.length(), &others);
    if primary_length.q.si() < -1e-9 {
        return Err(stop(format!("its internals are {:.0} mm longer than the vessel", -primary_length.q.si() * 1e3)));
    }
    let crest = outlet.crest;
    if underflow.edge().q >= crest.q {
        return Err(stop(format!("the {} is not under water", underflow.edge_name())));
    }
    if inlet_bend.as_ref().is_some_and(|bend| bend.mouth.q >= crest.q) {
        return Err(stop("the mouth of the inlet bend is not under water".to_owned()));
    }
    if crest.q >= body.height().q {
        return Err(stop(if body.is_open() {
            "the water would stand above the walls".to_owned()
        } else {
            "the water would stand above the top of the vessel".to_owned()
        }));
    }
    if pump_out.as_ref().is_some_and(|pumps| pumps.alarm.q >= crest.q) {
        return Err(stop("the alarm of the effluent pumps stands no lower than the weir ahead of them".to_owned()));
    }
    let hopper_room = chamber.map_or(primary_length.q, |chamber| chamber.q + primary_length.q);
    if hopper.as_ref().is_some_and(|hopper| hopper.length.q.si() > hopper_room.si() + 1e-9) {
        return Err(stop("the hopper is longer than inlet chamber and primary zone together".to_owned()));
    }
    let pack = pack.map(|pack| PlatePack::new(t, pack, &body)).transpose()?;
    // The first compartment and the last one are each closed by an end of the vessel.
    let (ahead, behind) = (sand.or(chamber).is_none(), held.or(mesh_length).or(pack_length).is_none());
    let last = well.or(pumps).is_none();
    let of_tank: ArrayVec<Val<Length>, 2> = chamber.into_iter().chain([primary_length]).collect();
    let length = sum(t, "length ahead of the pack", &of_tank);
    let tank = Stretch { length, ends: u8::from(sand.is_none()) + u8::from(behind && last) };
    let tank_area = body.surface(t, "surface ahead of the pack", tank, crest)?;
    let mut over: ArrayVec<Val<Length>, 4> = ArrayVec::new();
    over.push(primary_length);
    over.extend([pack_length, mesh_length, held].into_iter().flatten());
    let length = sum(t, "length over which oil is held", &over);
    let oil = Stretch { length, ends: u8::from(ahead) + u8::from(last) };
    let oil_area = body.surface(t, "area over which oil is held", oil, crest)?;
    // What pumps draw down is not counted on.
    let standing = match pumps {
        Some(pumps) => {
            Stretch { length: rest(t, "length without the pump-out compartment", body.length(), &[pumps]), ends: 1 }
        }
        None => body.whole(),
    };
    let water_volume = body.volume(t, "water up to the crest, above the floor", standing, crest)?;
    let (head, mut from) = (body.head(), Length::from_si(0.0));
    let mut compartments = Vec::with_capacity(8);
    let all: ArrayVec<(Place, Val<Length>), 8> = [
        (Place::SandTrap, sand),
        (Place::InletChamber, chamber),
        (Place::GravityZone, Some(primary_length)),
        (Place::PlatePack, pack_length),
        (Place::Mesh, mesh_length),
        (Place::Retention, held),
        (Place::ClearWell, well),
        (Place::PumpOut, pumps),
    ]
    .into_iter()
    .filter_map(|(place, length)| Some((place, length.filter(|length| some(length.q))?)))
    .collect();
    let count = all.len();
    for (k, (place, length)) in all.into_iter().enumerate() {
        let ends = u8::from(k == 0) + u8::from(k + 1 == count);
        let own = Stretch { length, ends };
        let level = pump_out.as_ref().filter(|_| place == Place::PumpOut).map_or(crest, |pumps| pumps.start);
        let volume = body.volume(t, &say!(T, "water in the {}", place.word()), own, level)?;
        let to = from + length.q + head * f64::from(ends);
        compartments.push(Compartment { place, from, to, length, ends, volume });
        from = to;
    }
    let shape = body.shape(hopper.as_ref().map(Hopper::shape));
    let layout = Layout { primary_length, tank_area, oil_area, water_volume };
    Ok(Unit {
        arrangement,
        channels,
        sand_trap,
        pump_out,
        access,
        body,
        inlet,
        inlet_bend,
        inlet_chamber,
        baffle,
        hopper,
        pack,
        mesh,
        outlet_baffle,
        retention,
        underflow,
        clear_well,
        outlet,
        layout,
        oil,
        compartments,
        shape,
        particulars,
    })
}
