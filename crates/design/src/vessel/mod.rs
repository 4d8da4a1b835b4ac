//! The body of a unit: what its shape makes of lengths and levels, each worked on the handbook's pages and recorded.
//!
//! Elevations are above the floor of the unit, a cylinder's lowest line. Lengths along the unit are inside lengths, of a
//! lying cylinder those of its shell: a dished head comes on top of the compartment that it closes.

mod lying_cylinder;
mod rectangular;
mod upright_cylinder;

pub use lying_cylinder::LyingCylinder;
pub use rectangular::Rectangular;
pub use upright_cylinder::UprightCylinder;

use crate::provenance::{Node, Stop, Trail, Val, Whence, choose, given};
use crate::reckon;
use crate::stages::Ends;
use crate::stages::channels::Channels;
use crate::train::row::Row;
use arrayvec::ArrayVec;
use stillrise_handbook::ground::flotation::Wedge;
use stillrise_handbook::vessel::shape::Shape;
use stillrise_handbook::vessel::shapes::{HeadForm, Hopper};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Area, Length, Typed, Volume, math};

/// A stretch of a unit along the flow.
#[derive(Debug, Clone, Copy)]
pub struct Stretch {
    /// How long it is, without heads.
    pub length: Val<Length>,
    /// How many of the two ends close it.
    pub ends: u8,
}

/// The body of a unit.
#[derive(Debug, Clone)]
pub enum Body {
    /// A box, open at the top.
    Rectangular(Rectangular),
    /// A cylinder that lies, closed by heads.
    LyingCylinder(LyingCylinder),
    /// A cylinder that stands on a flat floor.
    UprightCylinder(UprightCylinder),
}

/// The same for whichever body.
macro_rules! each {
    ($body:expr, $own:ident => $does:expr) => {
        match $body {
            Body::Rectangular($own) => $does,
            Body::LyingCylinder($own) => $does,
            Body::UprightCylinder($own) => $does,
        }
    };
}

impl Body {
    /// A box as a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] naming the dimension that is missing.
    pub fn rectangular<T: Trail>(row: &mut Row<'_, T>, channels: Option<&Channels>, ends: &Ends) -> Result<Self, Stop> {
        let m = row.m;
        let length = row.need("inside length", m.length())?;
        let length = with_options(row.t, "inside length, options included", length, ends);
        let width = match channels {
            Some(channels) => {
                let (width, n) = (channels.width, channels.count);
                reckon!(row.t, "width of all channels together", [FT, M], (width = width, n = n) width * n)
            }
            None => row.need("inside width", m.width())?,
        };
        let height = row.need("height of the walls", m.height())?;
        Ok(Body::Rectangular(Rectangular { length, width, height }))
    }
    /// A lying cylinder as a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] naming the dimension that is missing.
    pub fn lying<T: Trail>(row: &mut Row<'_, T>, ends: &Ends) -> Result<Self, Stop> {
        let m = row.m;
        let diameter = row.need("inside diameter", m.diameter())?;
        let shell = row.need("length of the shell", m.length())?;
        let shell = with_options(row.t, "length of the shell, options included", shell, ends);
        let heads = m.heads.0.unwrap_or(HeadForm::Flat);
        let source = m.heads.1.source(row.source);
        let heads = given(row.t, "form of the heads", None, heads, &source, heads.word());
        Ok(Body::LyingCylinder(LyingCylinder::new(row.t, diameter, shell, heads)))
    }
    /// An upright cylinder as a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] naming the dimension that is missing.
    pub fn upright<T: Trail>(row: &mut Row<'_, T>) -> Result<Self, Stop> {
        let m = row.m;
        let diameter = row.need("inside diameter", m.diameter())?;
        let height = row.need("height of the walls", m.height())?;
        Ok(Body::UprightCylinder(UprightCylinder { diameter, height }))
    }
    /// Length that compartments share, without heads.
    #[must_use]
    pub fn length(&self) -> Val<Length> {
        each!(self, own => own.length())
    }
    /// Inside length over all.
    #[must_use]
    pub fn over_all(&self) -> Val<Length> {
        each!(self, own => own.over_all())
    }
    /// Largest inside width.
    #[must_use]
    pub fn width(&self) -> Val<Length> {
        each!(self, own => own.width())
    }
    /// Top of the inside.
    #[must_use]
    pub fn height(&self) -> Val<Length> {
        each!(self, own => own.height())
    }
    /// Its inside measures, and what they are called together.
    #[must_use]
    pub fn sizes(&self) -> (&'static str, ArrayVec<Length, 3>) {
        match self {
            Body::Rectangular(own) => {
                ("inside length x width x height", [own.length.q, own.width.q, own.height.q].into())
            }
            Body::LyingCylinder(own) => (
                "inside diameter x length of the shell x length over the heads",
                [own.diameter.q, own.shell.q, own.over_all.q].into(),
            ),
            Body::UprightCylinder(own) => {
                ("inside diameter x height", [own.diameter.q, own.height.q].into_iter().collect())
            }
        }
    }
    /// Its inside measures in the fewest words, each written as the caller writes lengths.
    #[must_use]
    pub fn inside(&self, write: impl Fn(Length) -> String) -> String {
        let sizes: Vec<String> = self.sizes().1.into_iter().map(write).collect();
        match (self, sizes.as_slice()) {
            (Body::LyingCylinder(_), [diameter, shell, over]) => {
                format!("inside diameter {diameter}, shell {shell}, over the heads {over}")
            }
            (Body::UprightCylinder(_), [diameter, height]) => format!("inside diameter {diameter}, height {height}"),
            _ => format!("inside {}", sizes.join(" x ")),
        }
    }
    /// How far the inlet end reaches beyond the first compartment's length.
    #[must_use]
    pub fn head(&self) -> Length {
        (self.over_all().q - self.length().q) * 0.5
    }
    /// All of it.
    #[must_use]
    pub fn whole(&self) -> Stretch {
        Stretch { length: self.length(), ends: 2 }
    }
    /// Whether it is open at the top, with walls that can be reached over.
    #[must_use]
    pub fn is_open(&self) -> bool {
        matches!(self, Body::Rectangular(_))
    }

    /// Free surface of a stretch at a level.
    ///
    /// # Errors
    /// [`Stop`] for a level outside the body.
    pub fn surface<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        level: Val<Length>,
    ) -> Result<Val<Area>, Stop> {
        each!(self, own => own.surface(t, label, of, level))
    }
    /// Water in a stretch up to a level.
    ///
    /// # Errors
    /// [`Stop`] for a level outside the body.
    pub fn volume<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        level: Val<Length>,
    ) -> Result<Val<Volume>, Stop> {
        each!(self, own => own.volume(t, label, of, level))
    }
    /// Section square to the flow up to a level.
    ///
    /// # Errors
    /// [`Stop`] for a level outside the body.
    pub fn section<T: Trail>(&self, t: &mut T, label: &str, level: Val<Length>) -> Result<Val<Area>, Stop> {
        each!(self, own => own.section(t, label, level))
    }
    /// Clear width of what reaches from one elevation up to another.
    ///
    /// # Errors
    /// [`Stop`] for elevations outside the body.
    pub fn clear_width<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        from: Val<Length>,
        to: Val<Length>,
    ) -> Result<Val<Length>, Stop> {
        each!(self, own => own.clear_width(t, label, from, to))
    }
    /// Mean width of the section up to a level: the width of a box that passes the same.
    ///
    /// # Errors
    /// [`Stop`] for a level outside the body.
    pub fn mean_width<T: Trail>(&self, t: &mut T, label: &str, level: Val<Length>) -> Result<Val<Length>, Stop> {
        each!(self, own => own.mean_width(t, label, level))
    }
    /// Mean depth of the water at a level: its section over the width of its surface.
    ///
    /// # Errors
    /// [`Stop`] for a level outside the body.
    pub fn mean_depth<T: Trail>(&self, t: &mut T, level: Val<Length>) -> Result<Val<Length>, Stop> {
        each!(self, own => own.mean_depth(t, level))
    }
    /// Volume of a layer over a stretch, from one level up to another. `thickness` is their distance.
    ///
    /// # Errors
    /// [`Stop`] for a level outside the body.
    pub fn layer<T: Trail>(&self, t: &mut T, label: &str, of: Stretch, layer: &Layer) -> Result<Val<Volume>, Stop> {
        each!(self, own => own.layer(t, label, of, layer))
    }

    /// The layer that leaves a volume of oil room under the thickest one that is permitted, `limit`. `held` says what a layer
    /// holds.
    ///
    /// # Errors
    /// [`Stop`] where no layer leaves it.
    pub fn layer_under<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        of: Stretch,
        (limit, room): (Val<Length>, Val<Volume>),
        held: impl Fn(Length) -> Option<Volume>,
    ) -> Result<Val<Length>, Stop> {
        match self {
            Body::Rectangular(own) => Ok(own.layer_under(t, label, of, limit, room)),
            Body::UprightCylinder(own) => own.layer_under(t, label, of, limit, room),
            Body::LyingCylinder(_) => {
                let all = held(limit.q).map_or(f64::NAN, Typed::si);
                let over = |x: f64| all - held(Length::from_si(x)).map_or(f64::NAN, Typed::si) - room.q.si();
                // Where the thickest layer itself holds less, none leaves the room.
                let layer = if over(0.0) <= 0.0 { Some(0.0) } else { math::root(0.0, limit.q.si(), over) };
                let layer = layer.ok_or_else(|| Stop::said(label, "no layer leaves the room that is asked for"))?;
                let because = "what it holds and the room together are what the thickest permitted layer holds";
                let among = "layers up to the thickest permitted one";
                let nodes = [limit.at, room.at];
                Ok(choose(t, label, Some((&IN, &MM)), Length::from_si(layer), among, because, &nodes))
            }
        }
    }

    /// Its plan where that is the same at every level; `None` of a lying cylinder.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn plan<T: Trail>(&self, t: &mut T) -> Result<Option<Val<Area>>, Stop> {
        match self {
            Body::Rectangular(_) | Body::UprightCylinder(_) => {
                self.surface(t, "plan of the unit", self.whole(), self.height()).map(Some)
            }
            Body::LyingCylinder(_) => Ok(None),
        }
    }
    /// The same by outside measures, floor and top as thick as the wall.
    #[must_use]
    pub fn outside<T: Trail>(&self, t: &mut T, wall: Val<Length>) -> Body {
        match self {
            Body::Rectangular(own) => Body::Rectangular(own.outside(t, wall)),
            Body::LyingCylinder(own) => Body::LyingCylinder(own.outside(t, wall)),
            Body::UprightCylinder(own) => Body::UprightCylinder(own.outside(t, wall)),
        }
    }
    /// What it takes of the groundwater around it, up to a level above its floor; heads count as flat.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn under_water<T: Trail>(&self, t: &mut T, level: Val<Length>) -> Result<Val<Volume>, Stop> {
        each!(self, own => own.under_water(t, level))
    }
    /// Soil straight above a closed one, up to a level above its floor and above its top.
    ///
    /// # Errors
    /// [`Stop`] for an open one, or when a formula has no answer.
    pub fn soil_over<T: Trail>(&self, t: &mut T, label: &str, level: Val<Length>) -> Result<Val<Volume>, Stop> {
        match self {
            Body::Rectangular(_) => Err(Stop::said(label, "no soil lies over an open tank")),
            Body::LyingCylinder(own) => own.soil_over(t, label, level),
            Body::UprightCylinder(own) => own.soil_over(t, label, level),
        }
    }

    /// Soil beside the prism over a lying cylinder that planes add which lean outward from it, up to a level above its floor;
    /// nothing over another body, for which no published calculation counts one.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn soil_beside<T: Trail>(
        &self,
        t: &mut T,
        label: &str,
        wedge: Wedge,
        level: Val<Length>,
    ) -> Result<Option<Val<Volume>>, Stop> {
        match self {
            Body::LyingCylinder(own) => own.soil_beside(t, label, wedge, level).map(Some),
            Body::Rectangular(_) | Body::UprightCylinder(_) => Ok(None),
        }
    }

    /// As a shape, with a hopper below its floor if there is one.
    #[must_use]
    pub fn shape(&self, hopper: Option<Hopper>) -> Shape {
        match self {
            Body::Rectangular(own) => own.shape(hopper),
            Body::LyingCylinder(own) => own.shape(hopper),
            Body::UprightCylinder(own) => own.shape(),
        }
    }
    /// Its dimensions: name, and place in the trail.
    #[must_use]
    pub fn fields(&self) -> Vec<(&'static str, Node)> {
        each!(self, own => own.fields())
    }
}

/// A length with those of the options that are taken.
fn with_options<T: Trail>(t: &mut T, label: &str, length: Val<Length>, ends: &Ends) -> Val<Length> {
    let all: ArrayVec<Val<Length>, 3> = core::iter::once(length).chain(ends.lengths()).collect();
    sum(t, label, &all)
}

/// A layer of oil on the water.
#[derive(Debug, Clone, Copy)]
pub struct Layer {
    /// Its thickness.
    pub thickness: Val<Length>,
    /// Where it meets the water.
    pub interface: Val<Length>,
    /// Its surface.
    pub surface: Val<Length>,
}

/// The sum of lengths in a row; one alone is itself.
pub(crate) fn sum<T: Trail>(t: &mut T, label: &str, lengths: &[Val<Length>]) -> Val<Length> {
    match lengths {
        [] => given(t, label, Some((&IN, &MM)), Length::from_si(0.0), Whence::Definition, "nothing"),
        [a] => *a,
        [a, b] => reckon!(t, label, [IN, MM], (a = a, b = b) a + b),
        [a, b, c] => reckon!(t, label, [IN, MM], (a = a, b = b, c = c) a + b + c),
        [a, b, c, d] => reckon!(t, label, [IN, MM], (a = a, b = b, c = c, d = d) a + b + c + d),
        [front @ .., last] => {
            let so_far = sum(t, label, front);
            reckon!(t, label, [IN, MM], (so_far = so_far, last = last) so_far + last)
        }
    }
}

/// What of a length others in a row leave.
pub(crate) fn rest<T: Trail>(t: &mut T, label: &str, whole: Val<Length>, others: &[Val<Length>]) -> Val<Length> {
    match others {
        [] => whole,
        [a] => reckon!(t, label, [IN, MM], (all = whole, a = a) all - a),
        [a, b] => reckon!(t, label, [IN, MM], (all = whole, a = a, b = b) all - a - b),
        [a, b, c] => reckon!(t, label, [IN, MM], (all = whole, a = a, b = b, c = c) all - a - b - c),
        [a, b, c, d] => reckon!(t, label, [IN, MM], (all = whole, a = a, b = b, c = c, d = d) all - a - b - c - d),
        [a, b, c, d, e] => {
            reckon!(t, label, [IN, MM], (all = whole, a = a, b = b, c = c, d = d, e = e) all - a - b - c - d - e)
        }
        [front @ .., last] => {
            let left = rest(t, label, whole, front);
            reckon!(t, label, [IN, MM], (left = left, last = last) left - last)
        }
    }
}

/// Whether a length is worth a compartment.
pub(crate) fn some(length: Length) -> bool {
    length.si() > 1e-9
}
