//! The long section of one unit as a view. It draws values that exist and finds none.
//!
//! - `place`: what is drawn from, its scale and place on the sheet. `vessel`, `internals`, `liquids`:
//!   the view. `dimensions`, `levels`, `names`, `balloons`: its marks.
//! - `schedules`, `findings`, `notes`, `title`: the words around it.
//!
//! Outline, levels and zones come from the unit; no kind of vessel is asked for here. The sheets are those of `drawings`; the
//! drawing of the way of the water (`profile`) puts the same view among what stands around the unit.

pub(crate) mod balloons;
pub(crate) mod dimensions;
pub mod findings;
mod internals;
pub(crate) mod levels;
mod liquids;
pub(crate) mod names;
pub(crate) mod notes;
pub(crate) mod place;
pub(crate) mod schedules;
mod small;
pub(crate) mod title;
pub(crate) mod vessel;

use crate::render::geometry::{Point, Rect};
use crate::render::scene::Scene;
use place::Section;

pub(crate) use internals::every;
pub use small::{small, small_scenes};
pub(crate) use vessel::{cut, lid_pen, manways};

/// Draws liquids, vessel and internals of a unit where its view puts them; marks and words around it are the sheet's.
pub(crate) fn view(section: &Section, scene: &mut Scene) {
    liquids::draw(section, scene);
    vessel::draw(section, scene);
    internals::draw(section, scene);
}

/// Points of a rectangle on paper between two corners in any order.
fn corners(a: Point, b: Point) -> Rect {
    let low = |p: f64, q: f64| if p < q { (p, q) } else { (q, p) };
    let ((x0, x1), (y0, y1)) = (low(a.x, b.x), low(a.y, b.y));
    Rect { x0, y0, x1, y1 }
}
