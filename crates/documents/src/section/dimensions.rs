//! Dimensions of the section. Each states the unit's own value, not a difference measured off the drawing.

use super::place::{STUB, Section, zero};
use crate::render::mark::Axis;
use crate::render::scale::Spot;
use crate::render::scene::Scene;
use stillrise_design::stages::Place;
use stillrise_design::stages::stage::Line;
use stillrise_units::{Length, Typed, math};

/// How far the chain of zones stands below the vessel on paper, mm: clear of the drain.
const DOWN: f64 = 9.5;
/// How far the heights of the pack stand before it, mm.
pub const PACK: f64 = 5.0;

/// A length as it was stated; what was measured as a difference is written so too.
pub fn written(s: &Section, measured: Length) -> String {
    let unit = s.unit();
    let shape = &unit.shape;
    let (inlet, outlet, lip) = (unit.inlet.invert.q, unit.outlet.invert.q, unit.underflow.edge().q);
    let mut stated: Vec<Length> = unit.compartments.iter().map(|c| c.length.q).collect();
    stated.extend([shape.length(), shape.height(), unit.body.head(), unit.below_floor(), inlet, outlet, lip]);
    stated.extend(unit.pack.iter().flat_map(|pack| [pack.laid.bottom.q, pack.laid.height.q]));
    s.write(nearest(&stated, measured))
}

/// Where the zones begin and end.
pub fn zones(s: &Section) -> Vec<Spot> {
    let (unit, shape) = (s.unit(), &s.unit().shape);
    let mut stations: Vec<Spot> = unit.compartments.iter().map(|c| (c.from, zero())).collect();
    // Lengths are those of the shell, a dished head comes on top.
    let head = unit.body.head();
    if head.si() > 0.0 {
        stations.insert(1, (head, zero()));
        stations.push((shape.length() - head, zero()));
    }
    stations.push((shape.length(), zero()));
    stations
}

/// Where the pack begins, and the heights of its underside and top; `None` without one.
pub fn pack(s: &Section) -> Option<Vec<Spot>> {
    let (pack, (x, _)) = (s.unit().pack.as_ref()?, s.zone(Place::PlatePack)?);
    let mut heights: Vec<Spot> = vec![(x, zero()), (x, pack.laid.bottom.q), (x, pack.follows.top.q)];
    heights.dedup();
    Some(heights)
}

/// Where perforated walls reach under the floor, and how deep.
fn feet(s: &Section) -> Vec<(Length, Length)> {
    let lines = s.drawn().into_iter().flat_map(|part| part.lines);
    lines
        .filter_map(|line| match line {
            Line::Perforated { at, low, .. } if low < zero() => Some((at, low)),
            _ => None,
        })
        .collect()
}

/// Draws them all; the answer is the y on paper of the lowest dimension line.
pub fn draw(s: &Section, scene: &mut Scene) -> f64 {
    let unit = s.unit();
    let shape = &unit.shape;
    let (inlet, outlet, lip) = (unit.inlet.invert.q, unit.outlet.invert.q, unit.underflow.edge().q);
    let write = |measured: Length| written(s, measured);

    // Below: the zones, then the whole length.
    let stations = zones(s);
    let line = s.at(zero(), shape.bottom()).y + DOWN;
    let mut lowest = s.view.dimensions(scene, Axis::Across, &stations, line, write);
    // The hopper, at the floor and at its bottom.
    if let (Some((a, b)), Some(hopper)) = (s.hopper(), &unit.hopper) {
        let own = [(a + b - hopper.length.q) * 0.5, a, b, (a + b + hopper.length.q) * 0.5];
        let levels = [zero(), shape.bottom(), shape.bottom(), zero()];
        let spots: Vec<Spot> = own.into_iter().zip(levels).collect();
        lowest = s.view.dimensions(scene, Axis::Across, &spots, lowest, |l| s.write(l));
    }
    s.view.across(scene, (zero(), zero()), (shape.length(), zero()), lowest, &s.write(shape.length()));

    // Left: the inlet invert, then hopper and walls.
    let left = s.at(zero(), zero()).x - s.wall();
    s.view.up(scene, (zero(), zero()), (zero(), inlet), left - 5.5, &s.write(inlet));
    // The foot of a baffle that reaches into the hopper, from the floor.
    for (at, low) in feet(s) {
        s.view.up(scene, (at, low), (at, zero()), s.at(at, zero()).x + 6.0, &s.write(zero() - low));
    }
    let mut heights: Vec<Spot> = vec![(zero(), zero()), (zero(), shape.height())];
    if let Some((edge, _)) = s.hopper() {
        heights.insert(0, (edge, shape.bottom()));
    }
    s.view.dimensions(scene, Axis::Up, &heights, left - 14.5, write);

    // Inside: the pack from the primary zone, lip and outlet invert from the zones behind it.
    if let Some(heights) = pack(s) {
        let x = heights.first().map_or(0.0, |spot| s.at(spot.0, zero()).x);
        s.view.dimensions(scene, Axis::Up, &heights, x - PACK, write);
    }
    let end = shape.length();
    if let Some((pipe, _)) = s.dip_pipe() {
        let line = s.at(pipe, zero()).x;
        s.view.up(scene, (pipe, zero()), (pipe, lip), line - 4.5, &s.write(lip));
        s.view.up(scene, (end, zero()), (end, outlet), line - 11.0, &s.write(outlet));
        return lowest;
    }
    let (_, behind) = s.oil_zone();
    let room = s.along(s.oil_end(), 1.0) - s.along(s.oil_end(), 0.0);
    let line = s.at(behind, zero()).x - math::min(4.5, 0.5 * room);
    s.view.up(scene, (behind, zero()), (behind, lip), line, &s.write(lip));
    let line = s.at(end, zero()).x + s.wall() + STUB + 8.0;
    s.view.up(scene, (end, zero()), (end, outlet), line, &s.write(outlet));
    lowest
}

/// The stated length that was measured; rounding in a difference must not change what is written.
fn nearest(stated: &[Length], measured: Length) -> Length {
    let off = |l: &Length| (l.si() - measured.si()).abs();
    let best = stated.iter().min_by(|a, b| off(a).total_cmp(&off(b)));
    best.copied().filter(|l| off(l) < 1e-7).unwrap_or(measured)
}
