//! What a stage of a unit answers for itself, and how it stands in the long section.

use super::in_water::{self, InWater};
use super::{Crossing, Pass, Place, Through};
use crate::performance::caps::{Cap, Caps, Margins};
use crate::provenance::{Stop, Trail, Val};
use crate::stages::plate_pack;
use crate::train::unit::{Parts, Unit};
use stillrise_units::{Density, Flow, Length, Mass, Ratio};

/// A stage of a unit. What does not concern it, it leaves as it stands here.
pub trait Stage {
    /// What it is called.
    fn name(&self) -> &'static str;

    /// The compartment that it makes of the unit, and how long that is.
    fn compartment(&self) -> Option<(Place, Val<Length>)> {
        None
    }

    /// Whether it can stand where it was stated, once the others are laid out and the length of open water is known.
    ///
    /// # Errors
    /// Why not, in a sentence.
    fn stands(&self, _: &Parts, _: Length) -> Result<(), String> {
        Ok(())
    }

    /// Whether water that flows loses head in it.
    fn loses(&self) -> bool {
        false
    }

    /// The head that it takes.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    fn loss<T: Trail>(&self, _: &mut T, _: &Crossing<'_>) -> Result<Option<Val<Length>>, Stop> {
        Ok(None)
    }

    /// The thickest layer of oil that it lets stand.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    fn cap<T: Trail>(&self, _: &mut T, _: &Margins, _: &Caps<'_>) -> Result<Option<Cap>, Stop> {
        Ok(None)
    }

    /// What droplets and grains meet in it at a flow; `None` where none are counted on to stay.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    fn pass<T: Trail>(&self, _: &mut T, _: &Unit, _: &Through<'_>) -> Result<Option<Pass>, Stop> {
        Ok(None)
    }

    /// Where it stands as a wall as high and as wide as the vessel, from the inlet end.
    fn inner_wall(&self, _: &Unit) -> Option<Length> {
        None
    }

    /// How it is drawn in the long section, and what the list of parts says of it.
    fn drawn(&self, _: &Unit) -> Option<Drawn> {
        None
    }

    /// What it is to the water that passes, in the long section.
    fn in_water(&self, unit: &Unit) -> Vec<InWater> {
        self.drawn(unit).map_or_else(Vec::new, |drawn| in_water::of_drawn(&drawn, unit.shape.length()))
    }

    /// What someone who cannot see the drawing is told that the water passes.
    fn passed(&self, _: &Unit) -> Option<&'static str> {
        Some(self.name())
    }
}

/// A place in the long section: station from the tip of the inlet end, level above the floor.
pub type Spot = (Length, Length);

/// A part as it stands in the long section.
#[derive(Debug, Clone)]
pub struct Drawn {
    /// A word for it that no other part has.
    pub id: &'static str,
    /// Its name in the list of parts.
    pub name: &'static str,
    /// What the list says of it, one after the other.
    pub data: Vec<Datum>,
    /// Where its number points to.
    pub tip: Spot,
    /// Whether the number stands in the row above the vessel; else beside its part.
    pub in_row: bool,
    /// What is drawn of it.
    pub lines: Vec<Line>,
}

impl Drawn {
    /// With its number in the row above the vessel.
    #[must_use]
    pub fn new(id: &'static str, name: &'static str, data: Vec<Datum>, tip: Spot, lines: Vec<Line>) -> Self {
        Self { id, name, data, tip, in_row: true, lines }
    }
}

/// A word or a number of what the list of parts says; how numbers are written is the document's affair.
#[derive(Debug, Clone)]
pub enum Datum {
    /// Words.
    Words(&'static str),
    /// A length, in whole steps of the drawing.
    Length(Length),
    /// A small length, in its own digits.
    Fine(Length),
    /// The thickness of a fibre.
    Fibre(Length),
    /// A share.
    Share(Ratio),
    /// A count.
    Count(Ratio),
    /// A mass.
    Mass(Mass),
    /// A density.
    Density(Density),
    /// A flow.
    Flow(Flow),
    /// An angle in whole degrees.
    Angle(stillrise_units::Angle),
}

/// What is drawn of a part.
#[derive(Debug, Clone)]
pub enum Line {
    /// An upright plate.
    Plate {
        /// Station.
        at: Length,
        /// Lower edge.
        low: Length,
        /// Upper edge.
        high: Length,
    },
    /// The same with openings all over.
    Perforated {
        /// Station.
        at: Length,
        /// Lower edge.
        low: Length,
        /// Upper edge.
        high: Length,
    },
    /// The edge of an inclined plate.
    Inclined(Spot, Spot),
    /// A bed of fibre.
    Bed {
        /// From one station to the other.
        between: (Length, Length),
        /// Underside.
        low: Length,
        /// Top.
        high: Length,
    },
    /// A pack of plates in modules.
    Plates {
        /// From one station to the other.
        between: (Length, Length),
        /// How it is laid out.
        laid: plate_pack::Dimensions,
        /// Its top.
        top: Length,
        /// Modules along the flow.
        modules: u32,
    },
    /// A pipe through the inlet end, turned down at once.
    TurnedDown(Pipe),
    /// A pipe through the outlet end with a leg down, open to the air at its top, so that it does not siphon.
    Dipping(Pipe),
    /// A pump on the floor, with its pipe up to the top.
    Pump(Length),
    /// A level between two stations.
    Level((Length, Length), Length),
}

/// A pipe with a leg.
#[derive(Debug, Clone, Copy)]
pub struct Pipe {
    /// Stations of the leg's two sides.
    pub leg: (Length, Length),
    /// Its mouth.
    pub mouth: Length,
    /// Invert of the part through the wall.
    pub invert: Length,
    /// Bore of both.
    pub bore: Length,
}

/// How far a pipe inside stands off the wall, in its bores; nominal.
pub(super) const OFF_WALL: f64 = 0.5;

/// The level half-way between the water at rest and the top of the vessel, at which walls are pointed at.
pub(super) fn over_water(unit: &Unit) -> Length {
    let (crest, rim) = (unit.outlet.crest.q, unit.shape.height());
    crest + (rim - crest) * 0.5
}
