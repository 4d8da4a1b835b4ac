//! Stage: what lets the water leave from under the oil, a baffle from wall to wall or a pipe.

use super::dip_pipe::DipPipe;
use super::downcomer::Downcomer;
use super::outlet::Outlet;
use super::stage::{Drawn, Stage};
use super::{Crossing, Place, Reach};
use crate::enquiry::keys::{Quantity, keys};
use crate::performance::caps::{Cap, Caps, Margins};
use crate::performance::levels::Level;
use crate::provenance::{Node, Stop, Trail, Val};
use crate::train::row::Row;
use crate::train::unit::{Parts, Unit};
use crate::vessel::Body;
use crate::{by, reckon};
use stillrise_handbook::separation::{drawn_height, layer_froude};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Density, Flow, Length, Ratio, Velocity};

/// When the lip is asked for of a unit that draws its water by a dip pipe.
pub const A_DIP_PIPE: &str = "a dip pipe";

keys! {
    /// Keys of what lets the water leave from under the oil.
    UnderflowKeys "model" {
        /// Lip of the downcomer baffle, or mouth of the dip pipe in its place, above the floor
        lip: Quantity<Length> = spec.units(&IN, &MM).between("1 in", "120 in").like("\"10 in\"")
            .asks("What is the gap between the floor and the lower edge of the last baffle?")
            .asks_when(A_DIP_PIPE, "What is the height of the mouth of the pipe that draws the water, above the floor?")
            .found("a tenth of the pack above its underside; without a pack a sixth of the depth of water, of a dip pipe 40 % of it");
    }
}

/// What lets the water leave from under the oil.
#[derive(Debug, Clone)]
pub enum Underflow {
    /// A baffle from wall to wall.
    Downcomer(Downcomer),
    /// A pipe.
    DipPipe(DipPipe),
}

/// How the water that leaves under a layer of oil pulls at it.
#[derive(Debug, Clone, Copy)]
pub enum Pull {
    /// Under a baffle: Froude number of the water there against the layer.
    UnderBaffle(Val<Ratio>),
    /// Into a pipe: height of the interface over its mouth, and that at which the layer is drawn in.
    IntoMouth {
        /// How high it stands.
        over: Val<Length>,
        /// From where on it is drawn in.
        least: Val<Length>,
    },
}

impl Underflow {
    /// As a row or a described unit lays it out: a baffle where there are walls across the flow, else a pipe.
    ///
    /// # Errors
    /// [`Stop`] where its edge is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>, outlet: &Outlet, walls: bool) -> Result<Self, Stop> {
        Ok(if walls {
            Underflow::Downcomer(Downcomer::laid(row)?)
        } else {
            Underflow::DipPipe(DipPipe::laid(row, outlet)?)
        })
    }

    /// What the edge that the oil must not reach is called.
    #[must_use]
    pub fn edge_name(&self) -> &'static str {
        match self {
            Underflow::Downcomer(_) => "downcomer's lip",
            Underflow::DipPipe(_) => "dip pipe's mouth",
        }
    }

    /// The edge that the oil must not reach.
    #[must_use]
    pub fn edge(&self) -> Val<Length> {
        match self {
            Underflow::Downcomer(downcomer) => downcomer.lip,
            Underflow::DipPipe(pipe) => pipe.mouth,
        }
    }

    /// Velocity at that edge.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn velocity<T: Trail>(&self, t: &mut T, body: &Body, flow: Val<Flow>) -> Result<Val<Velocity>, Stop> {
        match self {
            Underflow::Downcomer(downcomer) => downcomer.velocity(t, body, flow),
            Underflow::DipPipe(pipe) => pipe.velocity(t, flow),
        }
    }

    /// How the water pulls at a layer of oil at a flow.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn pull<T: Trail>(
        &self,
        t: &mut T,
        (flow, velocity): (Val<Flow>, Val<Velocity>),
        water: Val<Density>,
        oil: Val<Density>,
        layer: &Level,
    ) -> Result<Pull, Stop> {
        Ok(match self {
            Underflow::Downcomer(_) => Pull::UnderBaffle(by!(
                t,
                "Froude number of the water under the layer at the alarm, at the downcomer",
                layer_froude::froude(velocity, water, oil, layer.thickness)
            )?),
            Underflow::DipPipe(pipe) => Pull::IntoMouth {
                over: reckon!(t, "interface over the dip pipe's mouth at the alarm", [IN, MM],
                    (interface = layer.interface, mouth = pipe.mouth) interface - mouth),
                least: by!(
                    t,
                    "height over the mouth from which the layer is drawn in",
                    drawn_height::height(flow, water, oil)
                )?,
            },
        })
    }

    /// Its dimensions: name, and place in the trail.
    #[must_use]
    pub fn fields(&self) -> Vec<(&'static str, Node)> {
        match self {
            Underflow::Downcomer(downcomer) => downcomer.fields(),
            Underflow::DipPipe(pipe) => pipe.fields(),
        }
    }
}

impl Stage for Underflow {
    fn name(&self) -> &'static str {
        match self {
            Underflow::Downcomer(_) => "downcomer",
            Underflow::DipPipe(_) => "dip pipe",
        }
    }
    fn stands(&self, parts: &Parts, _: Length) -> Result<(), String> {
        if self.edge().q >= parts.outlet.crest.q {
            return Err(format!("the {} is not under water", self.edge_name()));
        }
        Ok(())
    }
    fn loses(&self) -> bool {
        true
    }
    fn loss<T: Trail>(&self, t: &mut T, way: &Crossing<'_>) -> Result<Option<Val<Length>>, Stop> {
        match self {
            Underflow::Downcomer(downcomer) => downcomer.loss(t, way),
            Underflow::DipPipe(pipe) => pipe.loss(t, way),
        }
        .map(Some)
    }
    fn cap<T: Trail>(&self, t: &mut T, m: &Margins, c: &Caps<'_>) -> Result<Option<Cap>, Stop> {
        Ok(Some(match self {
            Underflow::Downcomer(downcomer) => Cap { of: Reach::Lip, thickness: downcomer.cap(t, m, c)? },
            Underflow::DipPipe(pipe) => Cap { of: Reach::DipPipe, thickness: pipe.cap(t, m, c)? },
        }))
    }
    fn inner_wall(&self, unit: &Unit) -> Option<Length> {
        unit.compartment(Place::ClearWell).map(|c| c.from)
    }
    fn drawn(&self, unit: &Unit) -> Option<Drawn> {
        Some(match self {
            Underflow::Downcomer(downcomer) => downcomer.drawn(unit, self.inner_wall(unit)?),
            Underflow::DipPipe(pipe) => pipe.drawn(unit),
        })
    }
}
