//! Water, oil at the alarm and sludge at its trigger: areas cut from the vessel's outline.

use super::place::{Section, zero};
use crate::render::geometry::Point;
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::{Length, Typed};

type Spot = (Length, Length);

/// Draws the liquids: water and oil at rest, levels at the largest flow, sludge.
pub fn draw(s: &Section, scene: &mut Scene) {
    let crest = s.unit().outlet.crest.q;
    let length = s.unit().shape.length();
    let bottom = s.unit().shape.bottom();
    let (ahead, behind) = s.oil_zone();
    let sludge = s.sludge().unwrap_or(bottom);
    let interface = s.layer().map_or(crest, |alarm| alarm.interface.q);
    let pumps = s.unit().pump_out.as_ref();
    let held = match pumps {
        Some(_) => s.well_end(),
        None => s.unit().outlet.weir_at(s.unit()).unwrap_or(length),
    };
    // Behind the weir the water stands as high as the outlet's invert, or the start level of the pumps.
    let low = pumps.map_or(s.unit().outlet.invert.q, |pumps| pumps.start.q);
    scene.part("water", "Water", |scene| {
        scene.on(Layer::Liquid);
        let pools = [(zero(), ahead, crest), (ahead, behind, interface), (behind, held, crest), (held, length, low)];
        for (from, to, top) in pools.into_iter().filter(|(from, to, _)| to > from) {
            fill(s, scene, &region(s, (from, to), (sludge, top)), Hatch::Water);
        }
        for (from, to, level) in [(zero(), ahead, crest), (behind, held, crest), (held, length, low)] {
            if to > from {
                scene.line(s.at(from, level), s.at(to, level), Pen::Surface);
            }
        }
        if let Some(p) = s.highest().filter(|p| p.inlet.q <= s.unit().shape.height()) {
            for (from, to, level) in
                [(zero(), ahead, p.inlet.q), (ahead, behind, p.chamber.q), (behind, held, p.well.q)]
            {
                scene.line(s.at(from, level), s.at(to, level), Pen::Phantom);
            }
        }
        if s.layer().is_none() {
            scene.line(s.at(ahead, crest), s.at(behind, crest), Pen::Surface);
        }
    });
    if let Some(alarm) = s.layer() {
        scene.part("oil", "Oil at the alarm", |scene| {
            let oil = region(s, (ahead, behind), (alarm.interface.q, alarm.surface.q));
            fill(s, scene.on(Layer::Liquid), &oil, Hatch::Oil);
            for level in [alarm.interface.q, alarm.surface.q] {
                scene.line(s.at(ahead, level), s.at(behind, level), Pen::Surface);
            }
        });
    }
    if let Some(level) = s.sludge() {
        scene.part("sludge", "Sludge at its trigger", |scene| {
            let area = region(s, (zero(), s.well_end()), (bottom, level));
            fill(s, scene.on(Layer::Liquid), &area, Hatch::Sludge);
            if let Some((from, to)) = sludge_edge(s) {
                scene.line(s.at(from, level), s.at(to, level), Pen::Medium);
            }
        });
    }
}

/// Ends of the sludge's surface, if it lies in the hopper.
pub fn sludge_edge(s: &Section) -> Option<(Length, Length)> {
    let level = s.sludge()?;
    let area = region(s, (zero(), s.well_end()), (s.unit().shape.bottom(), level));
    let on: Vec<f64> = area.iter().filter(|(_, z)| (z.si() - level.si()).abs() < 1e-9).map(|(x, _)| x.si()).collect();
    let (low, high) = (on.iter().copied().reduce(f64::min)?, on.iter().copied().reduce(f64::max)?);
    Some((Length::from_si(low), Length::from_si(high)))
}

fn fill(s: &Section, scene: &mut Scene, area: &[Spot], hatch: Hatch) {
    let points: Vec<Point> = area.iter().map(|&(x, z)| s.at(x, z)).collect();
    if points.len() > 2 {
        scene.polygon(&points, None, Fill::Hatch(hatch));
    }
}

/// The part of the vessel's outline between two stations and two levels.
fn region(s: &Section, x: Spot, z: Spot) -> Vec<Spot> {
    let outline = s.unit().shape.outline();
    let cut = clip(&outline, |p| p.0 - x.0);
    let cut = clip(&cut, |p| x.1 - p.0);
    let cut = clip(&cut, |p| p.1 - z.0);
    clip(&cut, |p| z.1 - p.1)
}

/// The part of an outline where `inside` is not negative (Sutherland and Hodgman).
fn clip(outline: &[Spot], inside: impl Fn(&Spot) -> Length) -> Vec<Spot> {
    let mut kept = Vec::new();
    for (k, a) in outline.iter().enumerate() {
        let b = &outline[(k + 1) % outline.len()];
        let (at_a, at_b) = (inside(a).si(), inside(b).si());
        if at_a >= 0.0 {
            kept.push(*a);
        }
        if (at_a >= 0.0) != (at_b >= 0.0) {
            let share = at_a / (at_a - at_b);
            kept.push((a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share));
        }
    }
    kept
}
