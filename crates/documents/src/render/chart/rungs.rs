//! A ladder drawn: bands and signs on rows, limits across them, what is not promised tinted.

use super::axis::Along;
use super::bound::{Bound, uprights};
use super::key::{Key, Sample};
use super::ladder::{Ladder, Rung, RungKind};
use super::paper::{Paper, begin};
use super::plot::{BELOW, GAP, across, below, inner};
use super::rows::{Rows, rest};
use super::stroke::{FLOOR, PALE};
use super::ticks::Graduation;
use super::value;
use crate::render::geometry::{Rect, pt};
use crate::render::item::Item;
use crate::render::mark::arrow_head;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::math;

/// Value and band as written at the right of a rung.
fn written(rung: &Rung) -> String {
    if let Some(text) = &rung.written {
        return text.clone();
    }
    match (rung.number(), rung.range()) {
        (Some(v), Some((low, high))) => format!("{} ({} to {})", value(v), value(low), value(high)),
        (Some(v), None) => value(v),
        (None, Some((low, high))) => format!("{} to {}", value(low), value(high)),
        (None, None) => String::new(),
    }
}

/// The drawing; lines whose names find no place are named in the key, and all is drawn anew.
pub(super) fn scene(chart: &Ladder, paper: &Paper) -> Option<Scene> {
    let mut keyed = Vec::new();
    loop {
        let (scene, homeless) = draw(chart, paper, &keyed)?;
        if homeless.is_empty() {
            return Some(scene);
        }
        keyed.extend(homeless);
    }
}

fn key(chart: &Ladder, keyed: &[usize], left_out: Option<String>) -> Key {
    let mut key = Key::default();
    let kinds =
        [(RungKind::Bound, "rule or bound"), (RungKind::Expected, "expected"), (RungKind::Measured, "measured")];
    let present = |kind| chart.rungs.iter().any(|r| r.kind == kind && r.number().is_some());
    kinds.iter().filter(|(k, _)| present(*k)).for_each(|(k, name)| key.add(Sample::Point(k.sign()), name));
    if chart.rungs.iter().any(|r| r.range().is_some()) {
        key.add(Sample::Area(PALE), "band, low to high");
    }
    if let Some((_, words)) = &chart.floor {
        key.add(Sample::Area(FLOOR), words);
    }
    for rung in chart.rungs.iter().filter(|r| r.number().is_none() && r.range().is_none()) {
        let words = if rung.words.trim().is_empty() { "no value" } else { &rung.words };
        key.add(Sample::Words, &format!("{}: {words}", rung.name));
    }
    for (_, bound) in chart.bounds.iter().enumerate().filter(|(k, _)| keyed.contains(k)) {
        key.add(Sample::Bound(bound.clone()), &bound.keyed(&chart.axis.unit));
    }
    if let Some(words) = left_out {
        key.add(Sample::Words, &words);
    }
    key
}

fn draw<'c>(chart: &'c Ladder, paper: &Paper, keyed: &[usize]) -> Option<(Scene, Vec<usize>)> {
    let (mut scene, body) = begin(chart, paper);
    let mut data: Vec<f64> = chart.rungs.iter().filter_map(Rung::number).collect();
    data.extend(chart.rungs.iter().filter_map(Rung::range).flat_map(|(low, high)| [low, high]));
    if !data.iter().any(|v| chart.axis.takes(*v)) {
        return None;
    }
    data.extend(chart.bounds.iter().map(|b| b.at));
    // The axis begins below the floor, so that the tint is seen.
    data.extend(chart.floor.iter().map(|f| 0.7 * f.0));
    // What has neither value nor band has its words in the key, and no row.
    let rungs: Vec<&Rung> = chart.rungs.iter().filter(|r| r.number().is_some() || r.range().is_some()).collect();
    let most = 0.35 * body.height();
    let room = body.height() - BELOW - key(chart, keyed, None).height(body.width(), most);
    let key = key(chart, keyed, rest(rungs.len(), Rows::room(rungs.len(), room)));
    let under = key.height(body.width(), most);
    let rows = Rows::new(rungs.len(), &Rect { y1: body.y1 - BELOW - under, ..body });
    let frame = rows.area;
    let field = Rect { y0: frame.y0, y1: frame.y1, ..inner(&frame) };
    let graduation = chart.axis.graduate(&data, field.width(), Along::Level)?;
    if let Some(x) = chart.floor.as_ref().and_then(|f| across(&field, &graduation, f.0)) {
        let x = math::max(frame.x0, math::min(frame.x1, x));
        scene.on(Layer::Liquid).rect(&Rect { x1: x, ..frame }, None, FLOOR);
    }
    below(&mut scene, &field, &frame, &graduation, &chart.axis);
    for (k, rung) in rungs.iter().enumerate().take(rows.shown) {
        let y = rows.middle(k);
        scene.on(Layer::Ground).line(pt(frame.x0, y), pt(frame.x1, y), Pen::Hatching);
        band(&mut scene, &field, &graduation, rung, y, rows.half(1.7));
        rows.value(&mut scene, k, &written(rung));
    }
    let place = |(k, bound): (usize, &'c Bound)| {
        let x = across(&field, &graduation, bound.at).filter(|_| graduation.holds(bound.at))?;
        Some((k, bound, x))
    };
    let lines: Vec<(usize, &Bound, f64)> = chart.bounds.iter().enumerate().filter_map(place).collect();
    let homeless = uprights(&mut scene, &frame, &lines, keyed, (body.x0, frame.x1 - 0.5 * GAP));
    let names: Vec<&str> = rungs.iter().map(|r| r.name.as_str()).collect();
    rows.letter(&mut scene, &names, |k| rungs.get(k).is_some_and(|r| r.kind == RungKind::Expected));
    rows.heads(&mut scene, "", &chart.axis.unit);
    key.draw(&mut scene, &Rect { y0: body.y1 - under, ..body });
    Some((scene, homeless))
}

/// Draws a band and the sign of the value; what runs off the axis ends in an arrow head.
fn band(scene: &mut Scene, field: &Rect, graduation: &Graduation, rung: &Rung, y: f64, half: f64) {
    // On a logarithmic axis, 0 lies beyond the left end.
    let x = |v: f64| across(field, graduation, v).unwrap_or(f64::NEG_INFINITY);
    let held = |v: f64| math::max(field.x0, math::min(field.x1, x(v)));
    let mut arrows = Vec::new();
    scene.on(Layer::Level);
    if let Some((low, high)) = rung.range() {
        scene.rect(&Rect { x0: held(low), y0: y - half, x1: held(high), y1: y + half }, Some(Pen::Thin), PALE);
        arrows.extend([low, high]);
    }
    if let Some(v) = rung.number() {
        if graduation.holds(v) {
            rung.kind.sign().draw(scene, pt(held(v), y));
        } else {
            arrows.push(v);
        }
    }
    for v in arrows.into_iter().filter(|v| !graduation.holds(*v)) {
        let tip = pt(held(v), y);
        let tail = pt(if tip.x > field.centre().x { field.x0 } else { field.x1 }, y);
        scene.add(Item::Shape(arrow_head(tail, tip, 2.6)));
    }
}
