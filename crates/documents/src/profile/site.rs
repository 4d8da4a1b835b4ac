//! The site: ground with what the unit stands on, groundwater, and the levels of pipes and outfall with their elevations.

use super::facts::elevation;
use super::levels::Height;
use super::pipes::Way;
use super::plan::Plan;
use super::stations::{Side, What};
use super::tag::Tag;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::hatch::Hatch;
use crate::render::item::Fill;
use crate::render::level::LevelKind;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use crate::section::place::{STUB, Section, zero};
use stillrise_design::enquiry::blocks::Receiver;
use stillrise_design::performance::installation::Stands;
use stillrise_units::math;

/// Draws ground and groundwater.
pub fn ground(plan: &Plan, scene: &mut Scene) {
    let Some(ground) = plan.levels.ground else { return };
    scene.part("ground", "Ground", |scene| {
        for (from, to) in stretches(plan, &ground) {
            earth(scene, (from, to), ground.y);
        }
        support(plan, scene, &ground);
    });
    let Some(water) = plan.levels.groundwater else { return };
    scene.part("groundwater", "Highest groundwater", |scene| {
        scene.on(Layer::Ground);
        let (left, right) = beside(plan, 2.0);
        for (from, to) in [(plan.drawing.x0, left), (right, plan.drawing.x1)] {
            scene.line(pt(from, water.y), pt(to, water.y), Pen::Centre);
        }
    });
}

/// The outer faces of the vessel, so far away; of the frame where there is none.
fn beside(plan: &Plan, away: f64) -> (f64, f64) {
    match &plan.section {
        Some(s) => {
            let (left, right) = (s.at(zero(), zero()).x, s.at(s.unit().shape.length(), zero()).x);
            (left - s.wall() - away, right + s.wall() + away)
        }
        None => {
            let (x0, x1) = plan.unit();
            (x0 + 10.0 - away, x1 - 8.0 + away)
        }
    }
}

/// Where the ground is a line: not within the vessel, nor where the sources lie at another level.
fn stretches(plan: &Plan, ground: &Height) -> Vec<(f64, f64)> {
    let away = match &plan.section {
        Some(s) if s.cover().is_some() => s.wall() + STUB - s.wall(),
        Some(s) if s.grade().is_some() => STUB,
        _ => 3.5,
    };
    let (left, right) = beside(plan, away);
    let level = (plan.levels.rim - ground.y).abs() < 0.1;
    let from =
        if level { plan.drawing.x0 } else { plan.on(Side::Source).last().map_or(plan.drawing.x0, |(_, c)| c.1 + 1.0) };
    let buried = plan.section.as_ref().is_some_and(|s| s.cover().is_some() || s.grade().is_some());
    let under = plan.section.as_ref().is_some_and(|s| ground.y > s.at(zero(), s.unit().shape.bottom()).y);
    let mut gaps: Vec<(f64, f64)> = Vec::new();
    if level {
        gaps.extend(plan.on(Side::Source).iter().map(|(_, c)| (c.0 + 0.6, c.1 - 0.6)));
    }
    if !under || buried {
        gaps.push((left, right));
    }
    // Before a headwall lies water.
    let banked = plan.settled.job.enquiry.outlet.to.0 != Some(Receiver::SanitarySewer);
    let end = plan.column(What::Outfall).filter(|_| banked).map_or(plan.drawing.x1, |c| super::outfall::face(c) - 2.4);
    let mut all = Vec::new();
    let mut start = from;
    for (a, b) in gaps {
        all.push((start, math::min(a, end)));
        start = math::max(start, b);
    }
    all.push((start, end));
    all.retain(|(a, b)| b - a > 0.8);
    all
}

/// A line of ground with the strokes of earth under it.
fn earth(scene: &mut Scene, (from, to): (f64, f64), y: f64) {
    if to - from < 1.0 {
        return;
    }
    scene.on(Layer::Ground).line(pt(from, y), pt(to, y), Pen::Outline);
    let mut mark = from + 2.2;
    let mut k = 0_u8;
    while mark < to {
        // In groups of three, as earth is drawn.
        if k < 3 {
            scene.line(pt(mark, y), pt(mark - 1.3, y + 1.6), Pen::Thin);
        }
        mark += 1.3;
        k = (k + 1) % 7;
    }
}

/// What the unit stands on or in: feet or a plinth over the ground, a pit in it.
fn support(plan: &Plan, scene: &mut Scene, ground: &Height) {
    let Some(s) = plan.section.as_ref().filter(|s| s.cover().is_none() && s.grade().is_none()) else { return };
    let Some(stands) = s.performance.map(|p| p.site.installation.stands.q) else { return };
    let (left, right) = beside(plan, 0.0);
    let low = s.at(zero(), s.unit().shape.bottom()).y + s.wall();
    let floor = s.at(zero(), zero()).y + s.wall();
    if ground.beyond {
        return;
    }
    if ground.y >= low && legs(s, scene, ground.y) {
        return;
    }
    if ground.y >= low && matches!(stands, Stands::OnGround | Stands::OnPlinth | Stands::LiftPump) {
        let plinth = stands == Stands::OnPlinth;
        let wide = math::min(0.12 * (right - left), if plinth { 7.0 } else { 2.4 });
        for x0 in [left, right - wide] {
            let foot = Rect { x0, x1: x0 + wide, y0: floor, y1: ground.y };
            if foot.height() > 0.2 {
                let fill = if plinth { Fill::Over(Hatch::Concrete) } else { Fill::Paper };
                scene.on(Layer::Vessel).rect(&foot, Some(Pen::Medium), fill);
            }
        }
    } else if ground.y < low && matches!(stands, Stands::InPit | Stands::Buried) {
        let (x0, x1) = beside(plan, 3.5);
        let foot = crate::drawings::base(s).map(|base| s.at(zero(), zero() - base).y);
        let deep = foot.unwrap_or(low + if s.hopper().is_some() { 5.0 } else { 0.6 });
        scene
            .on(Layer::Vessel)
            .polyline(&[pt(x0, ground.y), pt(x0, deep), pt(x1, deep), pt(x1, ground.y)], Pen::Outline);
        legs(s, scene, deep);
    }
}

/// The legs of one with a hopper, where the other sheets draw them, and what they stand on down to the ground; `false` of one
/// without.
fn legs(s: &Section, scene: &mut Scene, ground: f64) -> bool {
    let (Some(base), Some(legs)) = (crate::drawings::base(s), crate::drawings::legs(s)) else { return false };
    let foot = s.at(zero(), zero() - base).y;
    for x in legs.x {
        let (a, b) = (x - legs.size * 0.5, x + legs.size * 0.5);
        let top = |x| s.at(x, s.unit().floor_at(x)).by(0.0, s.wall());
        let (p, q) = (top(a), top(b));
        let end = if foot < ground - 0.5 { foot } else { ground };
        scene.on(Layer::Vessel).polygon(&[p, q, pt(q.x, end), pt(p.x, end)], Some(Pen::Phantom), Fill::None);
        if end < ground {
            let block = Rect { x0: p.x - 1.5, y0: end, x1: q.x + 1.5, y1: ground };
            scene.rect(&block, Some(Pen::Medium), Fill::Over(Hatch::Concrete));
        }
    }
    true
}

/// Marks the levels that were stated; answers those for which no place was found.
pub fn marks(plan: &Plan, way: &Way, scene: &mut Scene) -> Vec<String> {
    let l = &plan.levels;
    let mut left = Vec::new();
    let words = |name: &str, h: &Height| {
        let written = elevation(plan.system, h.z);
        let beyond = if h.beyond { ", not to scale" } else { "" };
        vec![format!("{name} {written}{beyond}"), format!("{name} {written}"), written]
    };
    let mut put = |scene: &mut Scene, tag: &Tag, tips: &[Point], away: &[(f64, f64)]| {
        if !tag.place(scene, tips, away) {
            left.extend(tag.words.first().cloned());
        }
    };
    let level = [(1.6, 0.0), (-1.6, 0.0)];
    let kinked: Vec<(f64, f64)> =
        [2.6, 4.2, 5.8, 7.4, 9.5, 12.0, 15.0].iter().flat_map(|&d| [(1.6, d), (-1.6, d)]).collect();
    let over: Vec<(f64, f64)> = kinked.iter().map(|&(x, y)| (x, -y)).chain(kinked.iter().copied()).collect();
    if let Some(h) = l.incoming {
        let from = way.into.first().map_or(plan.drawing.x0, |p| p.x);
        let tips = points((from, way.turn - 1.0), h.y, true);
        let tag = Tag {
            id: "level-incoming",
            title: "Invert of the incoming pipe",
            words: words("INV", &h),
            size: plan.size,
            kind: LevelKind::Solid,
            under: true,
        };
        put(scene, &tag, &tips, &kinked);
    }
    if let Some(h) = l.outfall {
        let at = way.from.last().copied().unwrap_or(pt(0.0, h.y));
        let tips: Vec<Point> = [-0.8, -2.5, 0.6, 2.0].iter().map(|&x| pt(at.x + x, h.y)).collect();
        let tag = Tag {
            id: "level-outfall",
            title: "Invert at the outfall",
            words: words("INV", &h),
            size: plan.size,
            kind: LevelKind::Solid,
            under: true,
        };
        let away: Vec<(f64, f64)> = kinked.iter().map(|&(x, y)| (-x, y)).chain(over.iter().copied()).collect();
        put(scene, &tag, &tips, &away);
    }
    if let (Some(h), Some((x0, x1))) = (l.tailwater, plan.column(What::Outfall)) {
        let tips = points(super::outfall::water(plan, (x0, x1)), h.y, false);
        let tag = Tag {
            id: "tailwater",
            title: "Water at the outfall",
            words: words("TW", &h),
            size: plan.size,
            kind: LevelKind::Liquid,
            under: false,
        };
        let far: Vec<(f64, f64)> = over.iter().map(|&(x, y)| (6.0 * x, y)).collect();
        let away: Vec<(f64, f64)> = over.iter().map(|&(x, y)| (-x, y)).chain(far).collect();
        put(scene, &tag, &tips, &away);
    }
    if let Some(h) = l.ground {
        let tag = Tag {
            id: "ground",
            title: "Ground",
            words: words("GROUND", &h),
            size: plan.size,
            kind: LevelKind::Solid,
            under: false,
        };
        let tips: Vec<Point> = stretches(plan, &h)
            .into_iter()
            .rev()
            .flat_map(|(from, to)| points((from + 1.5, to - 1.5), h.y, false))
            .collect();
        put(scene, &tag, &tips, &level);
    }
    if let Some(h) = l.groundwater {
        let (left, right) = beside(plan, 2.0);
        let tag = Tag {
            id: "groundwater",
            title: "Highest groundwater",
            words: words("GROUNDWATER", &h),
            size: plan.size,
            kind: LevelKind::Liquid,
            under: false,
        };
        let tips: Vec<Point> = [(right + 1.5, plan.drawing.x1 - 1.5), (plan.drawing.x0 + 1.5, left - 1.5)]
            .into_iter()
            .flat_map(|stretch| points(stretch, h.y, false))
            .collect();
        put(scene, &tag, &tips, &level);
    }
    if let Some(s) = &plan.section
        && let Some(datum) = s.datum(zero())
    {
        let wall = s.at(s.unit().shape.length(), zero()).x + s.wall();
        let y = s.at(zero(), zero()).y;
        let tag = Tag {
            id: "level-floor",
            title: "Floor of the unit",
            words: vec![format!("FLOOR {datum}"), datum],
            size: plan.size,
            kind: LevelKind::Solid,
            under: false,
        };
        let tips: Vec<Point> = [2.0, 3.5, 5.0, 7.0].iter().map(|&x| pt(wall + x, y)).collect();
        let away: Vec<(f64, f64)> = [(1.6, 0.0)].into_iter().chain(over.iter().copied()).collect();
        put(scene, &tag, &tips, &away);
    }
    left
}

/// Points along a level, from its right end.
fn points((from, to): (f64, f64), y: f64, from_left: bool) -> Vec<Point> {
    let mut all = Vec::new();
    let mut x = from;
    while x <= to {
        all.push(pt(x, y));
        x += 1.7;
    }
    if !from_left {
        all.reverse();
    }
    all
}
