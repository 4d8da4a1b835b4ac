//! Pipes on the way: their walls as two lines, open inside.

use super::plan::Plan;
use super::stations::{Side, What};
use crate::render::geometry::{Point, pt};
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::math;

/// What a pipe is drawn with.
#[derive(Debug, Clone, Copy)]
pub struct Pipe {
    /// Its bore on paper, mm.
    pub bore: f64,
    /// Its walls.
    pub pen: Pen,
}

impl Pipe {
    /// Draws it along its middle.
    pub fn draw(self, scene: &mut Scene, middle: &[Point]) {
        let half = 0.5 * self.bore;
        let (left, right) = (offset(middle, half), offset(middle, -half));
        let mut ring = left.clone();
        ring.extend(right.iter().rev());
        scene.on(Layer::Piping).polygon(&ring, None, Fill::Paper);
        scene.polyline(&left, self.pen);
        scene.polyline(&right, self.pen);
    }
}

/// A line beside another, with mitred corners.
fn offset(line: &[Point], by: f64) -> Vec<Point> {
    let normal = |a: Point, b: Point| {
        let length = math::max(a.distance(b), 1e-9);
        ((b.y - a.y) / length, -(b.x - a.x) / length)
    };
    let at = |k: usize| {
        let point = line[k];
        let before = (k > 0).then(|| normal(line[k - 1], point));
        let behind = (k + 1 < line.len()).then(|| normal(point, line[k + 1]));
        let (n, m) = match (before, behind) {
            (Some(n), Some(m)) => (n, m),
            (Some(n), None) | (None, Some(n)) => (n, n),
            (None, None) => ((0.0, 0.0), (0.0, 0.0)),
        };
        let share = by / math::max(1.0 + n.0 * m.0 + n.1 * m.1, 0.2);
        point.by(share * (n.0 + m.0), share * (n.1 + m.1))
    };
    (0..line.len()).map(at).collect()
}

/// The mark of a pipe that is broken: two short strokes across it, with nothing between.
pub fn broken(scene: &mut Scene, at: Point, bore: f64, upright: bool) {
    let reach = 0.5 * bore + 0.9;
    scene.on(Layer::Piping);
    let turned = |along: f64, across: f64| if upright { at.by(across, along) } else { at.by(along, across) };
    let ring = [turned(-0.5, -reach), turned(0.9, -reach), turned(0.5, reach), turned(-0.9, reach)];
    scene.polygon(&ring, None, Fill::Paper);
    for side in [-0.7, 0.7] {
        let wave = [(-reach, 0.25), (-0.3 * reach, -0.25), (0.3 * reach, 0.25), (reach, -0.25)];
        let points: Vec<Point> = wave.iter().map(|&(across, along)| turned(side + along, across)).collect();
        scene.polyline(&points, Pen::Thin);
    }
}

/// The valve sign: two triangles that meet.
pub fn valve(scene: &mut Scene, at: Point, size: f64, asked: bool) {
    let ring = |sign: f64| [at, at.by(sign * size, -0.75 * size), at.by(sign * size, 0.75 * size)];
    scene.on(Layer::Piping);
    for sign in [-1.0, 1.0] {
        scene.polygon(&ring(sign), Some(if asked { Pen::Thin } else { Pen::Medium }), Fill::Paper);
    }
}

/// Where pipes run.
pub struct Way {
    /// From the first source on to the unit, along the middle of the pipe.
    pub into: Vec<Point>,
    /// From the unit to the outfall.
    pub from: Vec<Point>,
    /// x at which the water is lifted or falls to the unit's inlet.
    pub turn: f64,
}

/// Finds the way of the pipes. A pump lifts the water in its own column; else a drop stands ahead of the unit.
pub fn way(plan: &Plan) -> Way {
    let l = &plan.levels;
    let half = 0.5 * l.bore;
    let (inlet, outlet) = plan.stubs();
    let first = plan.on(Side::Source).first().map(|(_, c)| 0.5 * (c.0 + c.1));
    let first = first.or_else(|| plan.on(Side::Ahead).first().map(|(_, c)| c.0)).unwrap_or(plan.drawing.x0 + 2.0);
    let lifts = [What::Pump, What::LiftAsked].into_iter().find_map(|what| plan.column(what));
    let turn = match lifts {
        Some((x0, x1)) => 0.5 * (x0 + x1) + 1.2,
        None => plan.column(What::Splitter).map_or(plan.unit().0 + 3.0, |(x0, _)| x0 + 1.5),
    };
    let (y_pipe, y_inlet) = (l.pipe - half, l.inlet - half);
    let mut into = vec![pt(first, y_pipe)];
    if (l.pipe - l.inlet).abs() > 1e-6 {
        into.extend([pt(turn, y_pipe), pt(turn, y_inlet)]);
    }
    into.push(pt(inlet, y_inlet));
    let end = plan.column(What::Outfall).map_or(plan.drawing.x1 - 6.0, |(x0, x1)| x0 + 0.3 * (x1 - x0));
    let drop = plan.column(What::Outfall).map_or(end - 2.0, |(x0, _)| x0 + 1.0 + half);
    let mut from = vec![pt(outlet, l.outlet - half)];
    if let Some((x0, x1)) = plan.column(What::PumpBehind) {
        let rise = 0.5 * (x0 + x1) + 1.2;
        from.extend([pt(rise, l.outlet - half), pt(rise, l.out - half)]);
    } else if (l.out - l.end).abs() > 1e-6 {
        from.extend([pt(drop, l.end - half), pt(drop, l.out - half)]);
    }
    from.push(pt(end, l.out - half));
    Way { into, from, turn }
}

impl Way {
    /// y of the middle of the outlet pipe at an x.
    pub fn behind(&self, x: f64) -> f64 {
        self.from.windows(2).find(|pair| pair[0].x <= x && x <= pair[1].x && pair[1].x > pair[0].x).map_or_else(
            || self.from.last().map_or(0.0, |p| p.y),
            |pair| pair[0].y + (x - pair[0].x) / (pair[1].x - pair[0].x) * (pair[1].y - pair[0].y),
        )
    }
}

/// Draws the pipes to and from the unit.
pub fn draw(plan: &Plan, way: &Way, scene: &mut Scene) {
    let l = &plan.levels;
    let pipe = Pipe { bore: l.bore, pen: Pen::Medium };
    scene.part("pipe-in", "Pipe to the unit", |scene| {
        pipe.draw(scene, &way.into);
        if l.incoming.is_some_and(|h| h.beyond) {
            broken(scene, pt(way.turn, 0.5 * (l.pipe + l.inlet) - 0.5 * l.bore), l.bore, true);
        }
    });
    let dashed = plan.has(What::PumpOut);
    scene.part("pipe-out", "Pipe to the outfall", |scene| {
        pipe.draw(scene, &way.from);
        let drop = way.from.windows(2).find(|pair| (pair[0].x - pair[1].x).abs() < 1e-6);
        if let Some(&[a, b]) = drop.filter(|_| l.outfall.is_some_and(|h| h.beyond) && !dashed) {
            broken(scene, pt(a.x, 0.5 * (a.y + b.y)), l.bore, true);
        }
    });
}
