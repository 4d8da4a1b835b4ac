//! What is drawn, an entity each.

use super::Paper;
use super::ink::{Ink, Placed};
use super::layers::layer_name;
use super::tables::{BOLD_STYLE, Plan, TEXT_STYLE, dimension_style, line_type, picture, ratio, weight};
use super::tags::{self, Handle, Handles, Tags};
use crate::render::geometry::{Point, pt};
use crate::render::item::Shape;
use crate::render::lettering::{Anchor, Text, Turn, text_width};
use crate::render::mark::{Axis, Dimension};
use crate::render::pen::Pen;

/// Writes all entities of the model.
pub fn write(out: &mut Tags, plan: &Plan, paper: &Paper, ink: &[Placed], next: &mut Handles) {
    let mut k = 0;
    for placed in ink {
        if let Ink::Dimension(dimension, _) = &placed.ink {
            head(out, "DIMENSION", placed, Pen::Thin, (next.take(), plan.model[0]));
            measured(out, dimension, &picture(k), paper);
            k += 1;
        } else {
            entity(out, placed, paper, plan.model[0], next);
        }
    }
}

fn head(out: &mut Tags, kind: &str, placed: &Placed, pen: Pen, (own, owner): (Handle, Handle)) {
    out.object(kind, own, owner).class("AcDbEntity").put(8, layer_name(placed.layer, placed.shown));
    out.put(6, line_type(pen)).put(370, weight(pen));
}

/// One entity; dimensions stand in the model only.
pub fn entity(out: &mut Tags, placed: &Placed, paper: &Paper, owner: Handle, next: &mut Handles) {
    match &placed.ink {
        Ink::Line { points, closed, pen } => match points.as_slice() {
            [a, b] => {
                head(out, "LINE", placed, *pen, (next.take(), owner));
                out.class("AcDbLine").point(10, paper.at(*a)).point(11, paper.at(*b));
            }
            _ => {
                head(out, "LWPOLYLINE", placed, *pen, (next.take(), owner));
                out.class("AcDbPolyline").put(90, points.len()).put(70, u8::from(*closed)).real(43, 0.0);
                for point in points {
                    out.flat(10, paper.at(*point));
                }
            }
        },
        Ink::Circle { centre, radius, pen } => {
            head(out, "CIRCLE", placed, *pen, (next.take(), owner));
            out.class("AcDbCircle").point(10, paper.at(*centre)).real(40, paper.length(*radius));
        }
        Ink::Solid(rings) => solid(out, placed, rings, paper, (next.take(), owner)),
        Ink::Dot { centre, radius } => {
            // A disc is a ring of two half circles.
            let ends = [pt(centre.x - radius, centre.y), pt(centre.x + radius, centre.y)];
            area(out, placed, &[ends.to_vec()], Some(1.0), paper, (next.take(), owner));
        }
        Ink::Text(text) => lettering(out, placed, text, paper, (next.take(), owner)),
        Ink::Dimension(..) => {}
    }
}

/// A solid area: of three or four corners by itself, else as a hatch.
fn solid(out: &mut Tags, placed: &Placed, rings: &[Vec<Point>], paper: &Paper, place: (Handle, Handle)) {
    match rings {
        [ring] if matches!(ring.len(), 3 | 4) && super::cover::convex(ring) => {
            head(out, "SOLID", placed, Pen::Thin, place);
            out.class("AcDbTrace");
            let last = ring.len() - 1;
            // The third and fourth corners stand crosswise.
            for (code, k) in [(10, 0), (11, 1), (12, last), (13, 2)] {
                if let Some(point) = ring.get(k) {
                    out.point(code, paper.at(*point));
                }
            }
        }
        _ => area(out, placed, rings, None, paper, place),
    }
}

fn area(
    out: &mut Tags,
    placed: &Placed,
    rings: &[Vec<Point>],
    bulge: Option<f64>,
    paper: &Paper,
    place: (Handle, Handle),
) {
    head(out, "HATCH", placed, Pen::Thin, place);
    out.class("AcDbHatch").point(10, (0.0, 0.0)).real(210, 0.0).real(220, 0.0).real(230, 1.0);
    out.put(2, "SOLID").put(70, 1).put(71, 0).put(91, rings.len());
    for ring in rings {
        // An outer ring given as a polyline.
        out.put(92, 3).put(72, u8::from(bulge.is_some())).put(73, 1).put(93, ring.len());
        for point in ring {
            out.flat(10, paper.at(*point));
            if let Some(bulge) = bulge {
                out.real(42, bulge);
            }
        }
        out.put(97, 0);
    }
    out.put(75, 0).put(76, 1).put(98, 0);
}

/// A line of text, fitted between its two ends: whatever face stands in for its own, it keeps within its cell.
fn lettering(out: &mut Tags, placed: &Placed, text: &Text, paper: &Paper, place: (Handle, Handle)) {
    let width = text_width(&text.text, text.size);
    let before = match text.anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => 0.5 * width,
        Anchor::End => width,
    };
    let (from, to, angle) = match text.turn {
        Turn::Level => (text.at.by(-before, 0.0), text.at.by(width - before, 0.0), 0.0),
        Turn::Up => (text.at.by(0.0, before), text.at.by(0.0, before - width), 90.0),
    };
    head(out, "TEXT", placed, Pen::Thin, place);
    out.class("AcDbText").point(10, paper.at(from)).real(40, paper.length(text.size)).put(1, tags::text(&text.text));
    out.real(50, angle).real(41, 1.0).put(7, if text.bold { BOLD_STYLE } else { TEXT_STYLE });
    out.put(72, 5).point(11, paper.at(to)).class("AcDbText").put(73, 0);
}

/// What a dimension measures.
fn measured(out: &mut Tags, dimension: &Dimension, picture: &str, paper: &Paper) {
    let (line, angle) = match dimension.axis {
        Axis::Across => (pt(dimension.to.x, dimension.line), 0.0),
        Axis::Up => (pt(dimension.line, dimension.to.y), 90.0),
    };
    let written = dimension.shapes().into_iter().find_map(|shape| match shape {
        Shape::Text(text) => Some(text.area().centre()),
        _ => None,
    });
    let own = dimension_style(ratio(dimension), dimension.ends);
    out.class("AcDbDimension").put(280, 0).put(2, picture).point(10, paper.at(line));
    // A rotated dimension (0) with a block of its own (32), its text where it was put (128).
    out.point(11, paper.at(written.unwrap_or(line))).put(70, 160).put(71, 5);
    out.real(42, paper.true_length(dimension.length)).put(1, tags::rich(&dimension.text)).put(3, own);
    out.class("AcDbAlignedDimension").point(13, paper.at(dimension.from)).point(14, paper.at(dimension.to));
    out.real(50, angle).class("AcDbRotatedDimension");
}
