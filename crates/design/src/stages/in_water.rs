//! What the stages are to the water that passes them, in the long section: for the resolved flow.

use super::stage::{Drawn, Line, Spot};
use stillrise_units::{Angle, Length, Ratio, Typed};

/// What stands in the water. Stations from the tip of the inlet end, levels above the floor.
#[derive(Debug, Clone, PartialEq)]
pub enum InWater {
    /// An upright wall.
    Wall {
        /// Station.
        at: Length,
        /// Lower edge.
        low: Length,
        /// Upper edge.
        high: Length,
    },
    /// A level wall.
    Shelf {
        /// Level.
        at: Length,
        /// From one station to the other.
        between: (Length, Length),
    },
    /// An inclined plate.
    Inclined(Spot, Spot),
    /// An upright wall with openings all over.
    Openings {
        /// Station.
        at: Length,
        /// Lower edge.
        low: Length,
        /// Upper edge.
        high: Length,
        /// Share of it that is open.
        open: Ratio,
    },
    /// Plates one over another.
    Plates {
        /// From one station to the other.
        between: (Length, Length),
        /// Underside.
        low: Length,
        /// Top.
        high: Length,
        /// Clear gap.
        gap: Length,
        /// Thickness of a plate.
        plate: Length,
        /// Angle at which water runs through them in the section: up is above nothing, level is nothing.
        angle: Angle,
    },
    /// A bed of fibre.
    Fibres {
        /// From one station to the other.
        between: (Length, Length),
        /// Underside.
        low: Length,
        /// Top.
        high: Length,
        /// Thickness of a fibre.
        fibre: Length,
        /// Share of it that is fibre.
        solidity: Ratio,
    },
}

/// What a part is to the water as far as its drawing tells: walls, plates askew, and pipes inside, whose sides are walls. Openings, packs
/// and beds have numbers that no drawing has.
pub(super) fn of_drawn(drawn: &Drawn, length: Length) -> Vec<InWater> {
    let mut all = Vec::new();
    for line in &drawn.lines {
        match line {
            Line::Plate { at, low, high } => all.push(InWater::Wall { at: *at, low: *low, high: *high }),
            Line::Inclined(from, to) => all.push(InWater::Inclined(*from, *to)),
            Line::TurnedDown(pipe) => {
                // In through the wall between invert and crown, down between both sides.
                let (near, far) = pipe.leg;
                let crown = pipe.invert + pipe.bore;
                all.push(InWater::Wall { at: near, low: pipe.mouth, high: pipe.invert });
                all.push(InWater::Wall { at: far, low: pipe.mouth, high: crown });
                all.push(InWater::Shelf { at: pipe.invert, between: (Length::from_si(0.0), near) });
                all.push(InWater::Shelf { at: crown, between: (Length::from_si(0.0), far) });
            }
            Line::Dipping(pipe) => {
                // Up between both sides, out through the wall over the invert; its top is open to the air.
                let (near, far) = pipe.leg;
                let top = pipe.invert + pipe.bore * 2.0;
                all.push(InWater::Wall { at: near, low: pipe.mouth, high: top });
                all.push(InWater::Wall { at: far, low: pipe.mouth, high: pipe.invert });
                all.push(InWater::Shelf { at: pipe.invert, between: (far, length) });
            }
            Line::Perforated { .. } | Line::Bed { .. } | Line::Plates { .. } | Line::Pump(_) | Line::Level(..) => {}
        }
    }
    all
}
