//! A unit laid out: its body, its stages, and the compartments that they make of it.

use super::particulars::Particulars;
use crate::arrangements::Arrangement;
use crate::provenance::{Node, Stop, Trail, Val};
use crate::stages::access::Access;
use crate::stages::channels::Channels;
use crate::stages::hopper::Hopper;
use crate::stages::{MOST_STAGES as MOST, Place, Stage, Stages};
use crate::vessel::{Body, Stretch, rest, some, sum};
use crate::{record, say};
use arrayvec::ArrayVec;
use core::ops::Deref;
use stillrise_handbook::vessel::shape::Shape;
use stillrise_units::{Area, Length, Typed, Volume};

/// What a unit is made of, as a row, a described unit or a rule lays it out.
#[derive(Debug, Clone)]
pub struct Parts {
    /// Its body.
    pub body: Body,
    /// The channels of a basin.
    pub channels: Option<Channels>,
    /// How a closed one is reached.
    pub access: Option<Access>,
    /// Its stages.
    pub stages: Stages,
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

/// One unit: its parts, and what follows from them. Parts and stages are reached through it.
#[derive(Debug, Clone)]
pub struct Unit {
    /// How it is arranged.
    pub arrangement: Arrangement,
    /// What it is made of.
    pub parts: Parts,
    /// What follows from that.
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

impl Deref for Unit {
    type Target = Parts;
    fn deref(&self) -> &Parts {
        &self.parts
    }
}

impl Deref for Parts {
    type Target = Stages;
    fn deref(&self) -> &Stages {
        &self.stages
    }
}

impl Unit {
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

    /// The lowest point of the outline at a station: the floor, or the hopper's floor below it.
    #[must_use]
    pub fn floor_at(&self, x: Length) -> Length {
        let outline = self.shape.outline();
        let edges = outline.iter().zip(outline.iter().cycle().skip(1));
        let crossing = edges.filter_map(|((x0, z0), (x1, z1))| {
            let (low, high) = if x0 < x1 { (*x0, *x1) } else { (*x1, *x0) };
            let run = (*x1 - *x0).si();
            (low <= x && x <= high && run.abs() > 1e-9).then(|| *z0 + (*z1 - *z0) * ((x - *x0).si() / run))
        });
        crossing.reduce(|a, b| if b < a { b } else { a }).unwrap_or_else(|| Length::from_si(0.0))
    }

    /// Its dimensions as given or chosen, part by part: name, and place in the trail.
    #[must_use]
    pub fn dimensions(&self) -> Vec<(&'static str, Vec<(&'static str, Node)>)> {
        let mut parts = vec![("vessel", self.body.fields())];
        parts.extend(self.channels.as_ref().map(|channels| ("channels", channels.fields())));
        parts.extend(self.access.as_ref().map(|access| ("access", access.fields())));
        let stages = self.stages.all().into_iter().map(|stage| (stage.name(), stage.fields()));
        parts.extend(stages.filter(|(_, fields)| !fields.is_empty()));
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
    let Parts { body, stages, .. } = &parts;
    let own: ArrayVec<(Place, Val<Length>), MOST> = (stages.all().into_iter())
        .filter_map(|stage| stage.compartment().filter(|(_, length)| some(length.q)))
        .collect();
    let lengths: ArrayVec<Val<Length>, MOST> = own.iter().map(|(_, length)| *length).collect();
    let primary_length = rest(t, "length of the primary zone", body.length(), &lengths);
    if primary_length.q.si() < -1e-9 {
        return Err(stop(format!("its internals are {:.0} mm longer than the vessel", -primary_length.q.si() * 1e3)));
    }
    for stage in parts.stages.all() {
        stage.stands(&parts, primary_length.q).map_err(&stop)?;
    }
    // Open water has its place among the others, whether any of the length is left to it or not.
    let at = own.iter().position(|(place, _)| place.is_behind(Place::GravityZone)).unwrap_or(own.len());
    let mut all: ArrayVec<(Place, Val<Length>), MOST> = own;
    all.insert(at, (Place::GravityZone, primary_length));
    let last = all.len() - 1;
    // The first compartment and the last one are each closed by an end of the vessel.
    let stretch = |t: &mut T, label: &str, from: Place, to: Place| {
        let within = |place: Place| !from.is_behind(place) && !place.is_behind(to);
        let lengths: ArrayVec<Val<Length>, MOST> =
            all.iter().filter(|(place, _)| within(*place)).map(|(_, length)| *length).collect();
        let ends = u8::from(within(all[0].0)) + u8::from(within(all[last].0));
        Stretch { length: sum(t, label, &lengths), ends }
    };
    let crest = stages.outlet.crest;
    let tank = stretch(t, "length ahead of the pack", Place::InletChamber, Place::GravityZone);
    let tank_area = body.surface(t, "surface ahead of the pack", tank, crest)?;
    let oil = stretch(t, "length over which oil is held", Place::GravityZone, Place::Retention);
    let oil_area = body.surface(t, "area over which oil is held", oil, crest)?;
    // What pumps draw down is not counted on.
    let standing = match &stages.pump_out {
        Some(pumps) => Stretch {
            length: rest(t, "length without the pump-out compartment", body.length(), &[pumps.length]),
            ends: 1,
        },
        None => body.whole(),
    };
    let water_volume = body.volume(t, "water up to the crest, above the floor", standing, crest)?;
    let (head, mut from) = (body.head(), Length::from_si(0.0));
    let mut compartments = Vec::with_capacity(MOST);
    let all = all.into_iter().filter(|(_, length)| some(length.q)).collect::<ArrayVec<_, MOST>>();
    let count = all.len();
    for (k, (place, length)) in all.into_iter().enumerate() {
        let ends = u8::from(k == 0) + u8::from(k + 1 == count);
        let own = Stretch { length, ends };
        let level = stages.pump_out.as_ref().filter(|_| place == Place::PumpOut).map_or(crest, |pumps| pumps.start);
        let volume = body.volume(t, &say!(T, "water in the {}", place.word()), own, level)?;
        let to = from + length.q + head * f64::from(ends);
        compartments.push(Compartment { place, from, to, length, ends, volume });
        from = to;
    }
    let shape = body.shape(stages.hopper.as_ref().map(Hopper::shape));
    let layout = Layout { primary_length, tank_area, oil_area, water_volume };
    Ok(Unit { arrangement, parts, layout, oil, compartments, shape, particulars })
}
