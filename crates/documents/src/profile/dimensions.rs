//! The dimensions of the unit that find room: overall length and zones under it, heights of pack, lip and inlet.

use super::clear::{Clear, first_free};
use super::plan::Plan;
use crate::render::mark::{Axis, Dimension, Ends, ROW, STEP};
use crate::render::pen::Layer;
use crate::render::scene::{Item, Scene};
use crate::section::dimensions::{PACK, pack, written, zones};
use crate::section::place::{Section, zero};
use stillrise_units::{Length, math};

/// How far the first line stands under the vessel, mm.
const DOWN: f64 = 9.5;
/// Chains below this on paper have oblique strokes.
const NARROW: f64 = 7.5;

/// Draws them.
pub fn draw(plan: &Plan, s: &Section, scene: &mut Scene) {
    let shape = &s.unit().shape;
    let write = |length: Length| written(s, length);
    let base = s.at(zero(), shape.bottom()).y;
    // Lettering of the chain stays off the line of the ground.
    let ground = plan.levels.ground.map_or(base, |g| g.y);
    let shift = |line: f64| if (line - 6.0..line + 6.0).contains(&ground) { ground + 6.2 } else { line };
    let line = shift(base + DOWN);
    let low = plan.drawing.y1 - 1.0;
    let rows = chain(s, scene, line, low);
    let whole = if rows > 0.0 { line + STEP + rows - 1.0 } else { line };
    if whole <= low {
        let ends = ((zero(), zero()), (shape.length(), zero()));
        free(scene, &s.view.dimension(Axis::Across, ends, (whole, Ends::Arrows), write));
    }
    let left = s.at(zero(), zero()).x - s.wall();
    let up = |scene: &mut Scene, x: Length, from: Length, to: Length, line: f64| {
        free(scene, &s.view.dimension(Axis::Up, ((x, from), (x, to)), (line, Ends::Arrows), write));
    };
    up(scene, zero(), zero(), s.unit().inlet.invert.q, left - 5.2);
    if let Some(heights) = pack(s) {
        for pair in heights.windows(2) {
            let line = s.at(pair[0].0, zero()).x - PACK;
            free(scene, &s.view.dimension(Axis::Up, (pair[0], pair[1]), (line, Ends::Arrows), write));
        }
    }
    overall(s, scene);
    let lip = s.unit().underflow.edge().q;
    let (at, line) = match s.dip_pipe() {
        Some((pipe, _)) => (pipe, s.at(pipe, zero()).x - 4.0),
        None => {
            let behind = s.oil_zone().1;
            let room = s.along(s.oil_end(), 1.0) - s.along(s.oil_end(), 0.0);
            (behind, s.at(behind, zero()).x - math::min(4.5, 0.5 * room))
        }
    };
    up(scene, at, zero(), lip, line);
}

/// The height of the vessel, at the side where it stands free: ahead of what is measured there already, or behind the outlet.
fn overall(s: &Section, scene: &mut Scene) {
    let shape = &s.unit().shape;
    let (left, right) = (s.at(zero(), zero()).x - s.wall(), s.at(shape.length(), zero()).x + s.wall());
    let high = shape.height();
    let one = |x: Length, line: f64| {
        s.view.dimension(Axis::Up, ((x, zero()), (x, high)), (line, Ends::Arrows), |l| written(s, l))
    };
    let places = [
        one(zero(), left - 12.5),
        one(shape.length(), right + 6.0),
        one(shape.length(), right + 12.5),
        one(zero(), left - 18.0),
    ];
    scene.on(Layer::Dimension);
    first_free(scene, places.iter().flat_map(Dimension::seats).map(Item::Dimension));
}

/// The chain of zones, all of it or none; answers the room that its rows of text took.
fn chain(s: &Section, scene: &mut Scene, line: f64, low: f64) -> f64 {
    let stations = zones(s);
    if stations.len() < 3 {
        return 0.0;
    }
    // The ends of the whole length run down through the rows of text.
    let end = |x: Length| s.at(x, zero()).x;
    let ends_at = [end(zero()), end(s.unit().shape.length())];
    let narrow = stations.windows(2).any(|p| s.view.scale.mm(p[1].0 - p[0].0) < NARROW);
    let ends = if narrow { Ends::Ticks } else { Ends::Arrows };
    let mut trial = scene.clone();
    let mut rows = 0_u8;
    for (k, pair) in stations.windows(2).enumerate() {
        let one = s.view.dimension(Axis::Across, (pair[0], pair[1]), (line, ends), |l| written(s, l));
        let one = Dimension { joined: k > 0, ..one };
        let clear = Clear::of(&trial);
        let Some(found) = one.seats().into_iter().find(|d| fits(&clear, d, low, ends_at)) else { return 0.0 };
        if let crate::render::mark::Seat::Off(row) = found.seat {
            rows = rows.max(row);
        }
        trial.on(Layer::Dimension).add(Item::Dimension(found));
    }
    if line + f64::from(rows) * ROW + STEP > low {
        return 0.0;
    }
    *scene = trial;
    1.0 + f64::from(rows) * ROW
}

/// Whether the words of a dimension stand free, and it lies over the foot of the drawing.
fn fits(clear: &Clear, dimension: &Dimension, low: f64, ends: [f64; 2]) -> bool {
    let item = Item::Dimension(dimension.clone());
    let held = item
        .text_boxes()
        .iter()
        .all(|(_, area)| area.y1 <= low + 1.0 && ends.iter().all(|x| *x < area.x0 - 0.4 || *x > area.x1 + 0.4));
    held && clear.takes(&item)
}

/// Adds a dimension if its words stand free in one of their places.
fn free(scene: &mut Scene, dimension: &Dimension) {
    scene.on(Layer::Dimension);
    first_free(scene, dimension.seats().into_iter().map(Item::Dimension));
}
