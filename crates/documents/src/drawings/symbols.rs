//! Symbols of the diagram: each is drawn around a point on the line that it stands in, and answers how far it reaches to either
//! side, mm.

use crate::render::geometry::{Point, Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::lettering::{Anchor, CAPTION, Text};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;

/// What a thin line carries.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Signal {
    /// The process itself: a switch hangs in it.
    Process,
    /// An electric signal.
    Electric,
}

/// Where a line comes from or goes to: a box with a point.
pub fn connector(scene: &mut Scene, left: Point, wide: f64, out: bool) {
    let (high, tip) = (5.0, 4.0);
    let x1 = left.x + wide;
    let ring = vec![
        left.by(0.0, -high),
        pt(x1 - tip, left.y - high),
        pt(x1, left.y),
        pt(x1 - tip, left.y + high),
        left.by(0.0, high),
    ];
    scene.on(Layer::Piping).polygon(&ring, Some(if out { Pen::Outline } else { Pen::Medium }), Fill::Paper);
}

/// A pump: a circle with the triangle of its delivery.
pub fn pump(scene: &mut Scene, at: Point, pen: Pen) -> f64 {
    scene.on(Layer::Piping).circle(at, 5.0, Some(pen), Fill::Paper);
    scene.polyline(&[at.by(0.0, -5.0), at.by(5.0, 0.0), at.by(0.0, 5.0)], pen);
    5.0
}

/// A valve that something shuts: two triangles, and the actuator over them.
pub fn closure(scene: &mut Scene, at: Point, pen: Pen) -> f64 {
    valve(scene, at, pen);
    scene.line(at, at.by(0.0, -4.5), Pen::Thin);
    scene.rect(&Rect::new(at.x - 2.0, at.y - 7.5, 4.0, 3.0), Some(pen), Fill::Paper);
    4.0
}

/// A valve: two triangles that meet.
fn valve(scene: &mut Scene, at: Point, pen: Pen) {
    scene.on(Layer::Piping);
    for side in [-1.0, 1.0] {
        let ring = [at, at.by(4.0 * side, -2.4), at.by(4.0 * side, 2.4)];
        scene.polygon(&ring, Some(pen), Fill::Paper);
    }
}

/// A sample point: a tap under the line.
pub fn sample(scene: &mut Scene, at: Point) -> f64 {
    scene.on(Layer::Piping).line(at, at.by(0.0, 4.0), Pen::Medium);
    let tap = at.by(0.0, 6.4);
    for side in [-1.0, 1.0] {
        scene.polygon(&[tap, tap.by(-1.6, 2.4 * side), tap.by(1.6, 2.4 * side)], Some(Pen::Medium), Fill::Paper);
    }
    scene.line(at.by(0.0, 8.8), at.by(0.0, 11.5), Pen::Medium);
    0.0
}

/// A screen: a box crossed by a broken line.
pub fn screen(scene: &mut Scene, at: Point, pen: Pen) -> f64 {
    let area = Rect { x0: at.x - 5.0, y0: at.y - 5.0, x1: at.x + 5.0, y1: at.y + 5.0 };
    scene.on(Layer::Piping).rect(&area, Some(pen), Fill::Paper);
    scene.line(pt(area.x0, area.y1), pt(area.x1, area.y0), Pen::Hidden);
    5.0
}

/// A box that shares a flow.
pub fn splitter(scene: &mut Scene, at: Point, pen: Pen) -> f64 {
    let area = Rect { x0: at.x - 4.0, y0: at.y - 5.0, x1: at.x + 4.0, y1: at.y + 5.0 };
    scene.on(Layer::Piping).rect(&area, Some(pen), Fill::Paper);
    scene.polyline(&[at.by(-4.0, 0.0), at, at.by(4.0, -3.0)], Pen::Thin);
    scene.polyline(&[at, at.by(4.0, 3.0)], Pen::Thin);
    4.0
}

/// An open tank or basin with the level of its water.
pub fn tank(scene: &mut Scene, at: Point, pen: Pen) -> f64 {
    let (half, high, deep) = (8.0, 9.0, 6.0);
    scene.on(Layer::Piping);
    let inside = Rect { x0: at.x - half, y0: at.y - high, x1: at.x + half, y1: at.y + deep };
    scene.rect(&inside, None, Fill::Paper);
    scene.polyline(
        &[pt(inside.x0, inside.y0), pt(inside.x0, inside.y1), pt(inside.x1, inside.y1), pt(inside.x1, inside.y0)],
        pen,
    );
    scene.on(Layer::Level).line(at.by(-half, -4.0), at.by(half, -4.0), Pen::Surface);
    half
}

/// A vessel with a bed that takes what gravity leaves.
pub fn bed(scene: &mut Scene, at: Point, pen: Pen) -> f64 {
    let area = Rect { x0: at.x - 5.0, y0: at.y - 9.0, x1: at.x + 5.0, y1: at.y + 9.0 };
    scene.on(Layer::Piping).rect(&area, Some(pen), Fill::Paper);
    scene.rect(&Rect { y0: at.y - 4.5, y1: at.y + 5.0, ..area }, Some(Pen::Thin), Fill::Hatch(Hatch::Mesh));
    5.0
}

/// A drain downward with its valve, shut; ends in an arrow.
pub fn drain(scene: &mut Scene, at: Point, long: f64) {
    scene.on(Layer::Piping).arrow(at, at.by(0.0, long + 2.0), Pen::Medium);
    let middle = at.by(0.0, 4.2);
    for side in [-1.0, 1.0] {
        scene.polygon(
            &[middle, middle.by(-1.6, 2.2 * side), middle.by(1.6, 2.2 * side)],
            Some(Pen::Medium),
            Fill::Paper,
        );
    }
}

/// A vent that bends down over itself, so that no rain falls into it.
pub fn vent(scene: &mut Scene, at: Point) {
    scene.on(Layer::Piping).polyline(&[at, at.by(0.0, -6.0), at.by(3.0, -6.0), at.by(3.0, -4.2)], Pen::Medium);
}

/// An instrument where it hangs: a circle with its letters and number.
pub fn instrument(scene: &mut Scene, at: Point, letters: &str, number: u8) {
    scene.on(Layer::Note).circle(at, 5.0, Some(Pen::Medium), Fill::Paper);
    scene.text(Text::new(at.by(0.0, -0.8), letters).sized(CAPTION).anchored(Anchor::Middle));
    scene.text(Text::new(at.by(0.0, 3.0), &number.to_string()).sized(CAPTION).anchored(Anchor::Middle));
}

/// The same on a panel, where somebody watches it: with a line through its middle.
pub fn on_panel(scene: &mut Scene, at: Point, letters: &str, number: u8) {
    instrument(scene, at, letters, number);
    scene.on(Layer::Note).line(at.by(-5.0, 0.0), at.by(5.0, 0.0), Pen::Medium);
}

/// A pump that stands in the water, with its delivery up to a level and to the right, and a valve in it.
pub fn sunk_pump(scene: &mut Scene, at: Point, up: f64, out: f64) {
    scene.on(Layer::Piping).polyline(&[at, pt(at.x, up), pt(out, up)], Pen::Outline);
    scene.circle(at, 3.2, Some(Pen::Medium), Fill::Paper);
    scene.polyline(&[at.by(-3.2, 0.0), at.by(0.0, -3.2), at.by(3.2, 0.0)], Pen::Medium);
    let middle = pt(at.x, 0.5 * (at.y - 3.2 + up));
    for side in [-1.0, 1.0] {
        scene.polygon(
            &[middle, middle.by(-1.6, 2.2 * side), middle.by(1.6, 2.2 * side)],
            Some(Pen::Medium),
            Fill::Paper,
        );
    }
}

/// A pipe from over the top down into a room, by which a truck sucks it empty.
pub fn suction(scene: &mut Scene, top: Point, low: f64) {
    scene.on(Layer::Piping).arrow(pt(top.x, low), top.by(0.0, -8.0), Pen::Medium);
}

/// A thin line of an instrument.
pub fn signal(scene: &mut Scene, points: &[Point], kind: Signal) {
    let pen = if kind == Signal::Electric { Pen::Hidden } else { Pen::Thin };
    scene.on(Layer::Note).polyline(points, pen);
}
