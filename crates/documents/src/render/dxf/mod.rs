//! A scene as a drawing file that drafting programs open: DXF of release 2010, text in UTF-8, handles from one counter.
//!
//! The sheet is written at true size: a unit of the file is a millimetre, or an inch, of the thing drawn at the main scale, so that
//! whoever measures reads true lengths. Frame and lettering are as much larger as the paper is smaller; plotted at the main scale the
//! sheet comes out as it is in SVG. What stands at another scale is measured through a dimension style with a factor of its own.
//!
//! - `cover`: what a later shape covers is cut away, since such files have no paper to cover with. `ink`: what is left to draw.
//! - `tags`: pairs of code and value, and handles. `header`, `tables`, `blocks`, `entities`, `objects`: the sections.
//!
//! # Layers
//!
//! Names have the three fields of ISO 13567-2:2017, clause 6, that must be there: two letters for who answers for it, six for the
//! element, two for how it is shown; what a field leaves open is a hyphen. The codes `Y-` (specialist designers), `E-` (element
//! graphics), `T-` (text), `H-` (hatching), `D-` (dimensions) and `J-` (marks) are taken from a public summary of the standard, not
//! from its text; the hyphen is from memory. The element codes are our own, as the standard leaves them to a classification that is
//! agreed between those who exchange drawings.
//!
//! | layer of a scene | element | holds |
//! |---|---|---|
//! | ground | `GROUND` | ground, foundations, what was there before |
//! | liquid | `LIQUID` | water, oil, sludge |
//! | internals | `INTERN` | plates, mesh, baffles, weirs, floats |
//! | vessel | `VESSEL` | shell, heads, walls, lids |
//! | piping | `PIPING` | nozzles, pipes, pumps, valves |
//! | centre | `CENTRE` | centre lines and lines of section |
//! | level | `LEVEL-` | level marks |
//! | dimension | `DIMENS` | dimensions |
//! | note | `NOTES-` | leaders, balloons, names, titles of views |
//! | table | `TABLE-` | schedules |
//! | frame | `FRAME-` | frame and title block |
//!
//! `Y-` stands before each, and behind it `E-` for outlines and fills, `H-` for hatching, `T-` for text, `D-` for dimensions, `J-`
//! for the lines of other marks: `Y-VESSELE-` is the outline of the vessel.

mod blocks;
mod cover;
mod entities;
mod header;
mod ink;
mod layers;
mod objects;
mod tables;
mod tags;

use super::geometry::Point;
use super::scale::Scale;
use super::scene::Scene;
pub use layers::{Shown, layer_name};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, System, Typed};
use tags::Tags;

/// How a scene is written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Options {
    /// The scale at which lengths are true.
    pub scale: Scale,
    /// Millimetres or inches.
    pub system: System,
}

/// The scene as a DXF file.
#[must_use]
pub fn dxf(scene: &Scene, options: &Options) -> Vec<u8> {
    let paper = Paper { height: scene.height, options: *options };
    let ink = ink::ink(scene);
    let mut next = tags::Handles::default();
    let plan = tables::Plan::new(&paper, &ink, &mut next);
    let body = [
        Tags::section("CLASSES", |_| {}),
        Tags::section("TABLES", |out| tables::write(out, &plan, &paper)),
        Tags::section("BLOCKS", |out| blocks::write(out, &plan, &paper, &ink, &mut next)),
        Tags::section("ENTITIES", |out| entities::write(out, &plan, &paper, &ink, &mut next)),
        Tags::section("OBJECTS", |out| objects::write(out, &plan, &paper, scene, &mut next)),
    ];
    // The seed of handles stands first and is known last.
    let head = Tags::section("HEADER", |out| header::write(out, &paper, scene, &next));
    let mut text = head;
    text.extend(body);
    text += "  0\nEOF\n";
    text.into_bytes()
}

/// Brings points and lengths on paper into the units of the file.
#[derive(Debug, Clone, Copy)]
pub(super) struct Paper {
    height: f64,
    options: Options,
}

impl Paper {
    /// Millimetres on paper in units of the file, as if the paper were true size: of lettering and dashes before their scale.
    fn plain(&self, mm: f64) -> f64 {
        match self.options.system {
            System::Si => mm,
            System::Us => Length::of(mm, &MM).in_unit(&IN),
        }
    }

    /// A length on paper, in units of the file.
    fn length(&self, mm: f64) -> f64 {
        self.plain(mm) * self.options.scale.ratio()
    }

    /// A true length, in units of the file.
    fn true_length(&self, length: Length) -> f64 {
        self.plain(length.in_unit(&MM))
    }

    /// A point, y up, from the lower left corner of the paper.
    fn at(&self, point: Point) -> (f64, f64) {
        (self.length(point.x), self.length(self.height - point.y))
    }
}
