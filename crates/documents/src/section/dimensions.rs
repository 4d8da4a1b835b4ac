//! Dimensions of the section. Each states the unit's own value, not a difference measured off the drawing.

use super::liquids::oil_zone;
use super::place::{Section, WALL, zero};
use super::vessel::some;
use crate::render::mark::Axis;
use crate::render::scale::Spot;
use crate::render::scene::Scene;
use stillrise_units::{Length, Typed, math};

/// How far the chain of zones stands below the vessel on paper, mm: clear of the drain.
const DOWN: f64 = 9.5;
/// How far the heights of the pack stand before it, mm.
pub const PACK: f64 = 5.0;

/// Draws them all; the answer is the y on paper of the lowest dimension line.
pub fn draw(s: &Section, scene: &mut Scene) -> f64 {
    let f = s.frame();
    let shape = &s.unit().shape;
    let zones: Vec<_> = s.unit().zones.iter().filter(|z| some(z.length.q)).collect();
    let mut stated: Vec<Length> = zones.iter().map(|z| z.length.q).collect();
    stated.extend([shape.length(), shape.height(), f.hopper_depth.q, f.inlet_invert.q, f.outlet_invert.q, f.lip.q]);
    stated.extend([f.pack_bottom.q, f.pack_height.q]);
    let write = |measured: Length| s.write(nearest(&stated, measured));

    // Below: the zones, then the whole length.
    let mut stations: Vec<Spot> = zones.iter().map(|z| (z.from, zero())).collect();
    stations.push((shape.length(), zero()));
    let line = s.at(zero(), shape.bottom()).y + DOWN;
    let lowest = s.view.dimensions(scene, Axis::Across, &stations, line, write);
    s.view.across(scene, (zero(), zero()), (shape.length(), zero()), lowest, &s.write(shape.length()));

    // Left: the inlet invert, then hopper and walls.
    let left = s.at(zero(), zero()).x - WALL;
    s.view.up(scene, (zero(), zero()), (zero(), f.inlet_invert.q), left - 5.5, &s.write(f.inlet_invert.q));
    let mut heights: Vec<Spot> = vec![(zero(), zero()), (zero(), shape.height())];
    if let Some((edge, _)) = s.hopper() {
        heights.insert(0, (edge, shape.bottom()));
    }
    s.view.dimensions(scene, Axis::Up, &heights, left - 14.5, write);

    // Inside: the pack from the primary zone, lip and outlet invert from the zones behind it.
    let x = s.zone("plate pack").0;
    let mut pack: Vec<Spot> = vec![(x, zero()), (x, f.pack_bottom.q), (x, s.unit().layout.pack_top.q)];
    pack.dedup();
    s.view.dimensions(scene, Axis::Up, &pack, s.at(x, zero()).x - PACK, write);
    let (_, behind) = oil_zone(s);
    let room = s.within("oil retention zone", 1.0) - s.within("oil retention zone", 0.0);
    let line = s.at(behind, zero()).x - math::min(4.5, 0.5 * room);
    s.view.up(scene, (behind, zero()), (behind, f.lip.q), line, &s.write(f.lip.q));
    let room = s.within("clear well", 1.0) - s.within("clear well", 0.0);
    let line = s.at(shape.length(), zero()).x - well(room);
    s.view.up(scene, (shape.length(), zero()), (shape.length(), f.outlet_invert.q), line, &s.write(f.outlet_invert.q));
    lowest
}

/// How far the height of the outlet invert stands from the end wall, mm.
pub fn well(room: f64) -> f64 {
    math::min(4.5, 0.4 * room)
}

/// The stated length that was measured; rounding in a difference must not change what is written.
fn nearest(stated: &[Length], measured: Length) -> Length {
    let off = |l: &Length| (l.si() - measured.si()).abs();
    let best = stated.iter().min_by(|a, b| off(a).total_cmp(&off(b)));
    best.copied().filter(|l| off(l) < 1e-7).unwrap_or(measured)
}
