//! Findings as numbered balloons: on parts of the unit, and on the stations that they speak of.

use super::clear::Clear;
use super::pipes::Way;
use super::plan::Plan;
use super::stations::What;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::item::Item;
use crate::render::mark::Balloon;
use crate::render::pen::Layer;
use crate::render::scene::Scene;
use crate::section::balloons::concern;
use crate::section::findings::{Group, groups};
use stillrise_checks::rules::{
    containment_rain_not_drained, containment_too_small, drain_valve_open, drained_water_unknown,
    effluent_pump_too_small, feed_above_cap, fire_water_not_held, kind_of_pump_unknown, pulsation_above_rating,
    pump_above_rating, pump_behind_missing, pump_off_its_curve, pump_outside_class, pumps_together_above_rating,
    screen_too_wide, sheared_before_unit, spill_without_closure, sump_overflows,
};
use stillrise_checks::{Part, Rule};

/// Draws them; what nothing on the drawing stands for has none.
pub fn draw(plan: &Plan, way: &Way, scene: &mut Scene) {
    for group in groups(plan.settled) {
        for tip in tips(plan, way, &group) {
            balloon(plan, scene, tip, &group);
        }
    }
}

/// What a group points to, each once.
fn tips(plan: &Plan, way: &Way, group: &Group) -> Vec<Point> {
    if matches!(group.part, Part::Site | Part::Enquiry) {
        return Vec::new();
    }
    let mut all: Vec<Point> = Vec::new();
    let mut elsewhere = false;
    for judged in &group.findings {
        match stations(judged.rule).iter().find_map(|what| station(plan, way, *what)) {
            Some(at) if all.iter().all(|p| p.distance(at) > 1.0) => all.push(at),
            Some(_) => {}
            None => elsewhere = true,
        }
    }
    if elsewhere || all.is_empty() {
        let at = plan.section.as_ref().and_then(|s| on_unit(plan, way, s, group.part));
        all.extend(at.or_else(|| frame(plan, group.part)));
    }
    all
}

/// Stations that a rule speaks of, the first that stands; none for a rule on the unit itself.
fn stations(rule: &'static Rule) -> &'static [What] {
    let pumps = [
        &kind_of_pump_unknown::RULE,
        &pulsation_above_rating::RULE,
        &pump_above_rating::RULE,
        &pump_off_its_curve::RULE,
        &pump_outside_class::RULE,
        &pumps_together_above_rating::RULE,
        &sheared_before_unit::RULE,
        &sump_overflows::RULE,
    ];
    let containments = [
        &containment_rain_not_drained::RULE,
        &containment_too_small::RULE,
        &drain_valve_open::RULE,
        &drained_water_unknown::RULE,
        &fire_water_not_held::RULE,
    ];
    if pumps.contains(&rule) {
        &[What::Pump]
    } else if containments.contains(&rule) {
        &[What::Containment(0), What::MoreContainments]
    } else if *rule == screen_too_wide::RULE {
        &[What::Screen]
    } else if *rule == feed_above_cap::RULE {
        &[What::Equalisation, What::Pump]
    } else if *rule == spill_without_closure::RULE {
        &[What::Closure]
    } else if *rule == pump_behind_missing::RULE || *rule == effluent_pump_too_small::RULE {
        &[What::PumpBehind]
    } else {
        &[]
    }
}

/// A point of a station for a leader to stand on.
fn station(plan: &Plan, way: &Way, what: What) -> Option<Point> {
    let (x0, x1) = plan.column(what)?;
    let middle = 0.5 * (x0 + x1);
    let l = &plan.levels;
    Some(match what {
        What::Closure => pt(middle, way.behind(middle)),
        What::PumpBehind => pt(middle - 2.0, l.outlet + 2.0),
        What::Pump => pt(middle - 1.6, l.pipe + 3.0),
        _ => pt(middle, l.pipe - 0.5 * l.bore),
    })
}

/// Where a finding on a part of the unit points to. What leaves is sampled behind it.
fn on_unit(plan: &Plan, way: &Way, s: &crate::section::place::Section, part: Part) -> Option<Point> {
    let sampled = || {
        let (x0, x1) = plan.column(What::SamplePoint)?;
        let at = 0.5 * (x0 + x1);
        Some(pt(at, way.behind(at)))
    };
    match part {
        Part::Effluent => sampled().or_else(|| concern(s, part)),
        _ => concern(s, part),
    }
}

/// The same where no unit was taken.
fn frame(plan: &Plan, part: Part) -> Option<Point> {
    let (x0, x1) = plan.unit();
    let l = &plan.levels;
    match part {
        Part::Site | Part::Enquiry => None,
        Part::Inlet => Some(pt(x0 + 10.0, l.inlet - 0.5 * l.bore)),
        Part::Outlet | Part::Effluent => Some(pt(x1 - 8.0, l.outlet - 0.5 * l.bore)),
        _ => Some(pt(x0 + 0.72 * (x1 - x0), l.outlet + 6.0)),
    }
}

/// One balloon, where a place is found for it.
fn balloon(plan: &Plan, scene: &mut Scene, tip: Point, group: &Group) {
    let room = Rect { x0: plan.drawing.x0, x1: plan.drawing.x1, y0: plan.drawing.y0, y1: plan.drawing.y1 };
    let id = format!("finding-{}", group.mark.to_lowercase());
    let words: Vec<&str> = group.findings.iter().map(|judged| judged.rule.title).collect();
    if let Some(found) = stand(scene, room, tip, &group.mark, group.is_heavy()) {
        scene.part(&id, &format!("{}: {}", group.mark, words.join("; ")), |scene| {
            scene.on(Layer::Note).add(Item::Balloon(found));
        });
    }
}

/// A balloon at the nearest place to its tip where it covers neither lettering nor, if that can be had, lines.
pub(crate) fn stand(scene: &Scene, room: Rect, tip: Point, mark: &str, heavy: bool) -> Option<Balloon> {
    let clear = Clear::of(scene);
    let one = Balloon { tip, centre: tip, number: mark.to_owned(), heavy, dot: true };
    let mut best: Option<(usize, Balloon)> = None;
    for ring in 0..14_u8 {
        // What lies farther out costs more than what was found.
        if best.as_ref().is_some_and(|(least, _)| usize::from(ring) >= *least) {
            break;
        }
        let reach = 7.0 + 3.0 * f64::from(ring);
        for k in 0..24_u8 {
            let angle = (f64::from(k) * 15.0 + 45.0) * core::f64::consts::PI / 180.0;
            let (x, y) = (stillrise_units::math::cos(angle), stillrise_units::math::sin(angle));
            let centre = tip.by(reach * x, -reach * y);
            let candidate = Balloon { centre, ..one.clone() };
            let area = candidate.area().grown(0.6);
            if !room.holds(&area) || !clear.is_blank(&area) || !clear.passes(centre, tip) {
                continue;
            }
            // A line covered weighs as much as some steps outward, one struck by the leader as much as one.
            let near = usize::from(ring) + 4 * clear.crossings(&area);
            if best.as_ref().is_some_and(|(least, _)| near >= *least) {
                continue;
            }
            let cost = near + clear.struck(tip, centre).min(6);
            if best.as_ref().is_none_or(|(least, _)| cost < *least) {
                best = Some((cost, candidate));
            }
        }
    }
    best.map(|(_, found)| found)
}
