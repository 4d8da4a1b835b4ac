//! A cascade drawn: a bar for each stage, made up of its classes from dark to light; on a logarithmic axis a sign.

use super::axis::Along;
use super::brief;
use super::cascade::{Cascade, Stage};
use super::key::{Key, Sample};
use super::paper::{Paper, begin};
use super::plot::{BELOW, across, below};
use super::rows::{Rows, rest};
use super::stroke::{Sign, tint};
use crate::render::geometry::{Rect, pt};
use crate::render::mark::arrow_head;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::{Item, Scene};
use stillrise_units::math;

/// Share of the field left free at the right, so that no bar ends on its edge.
const FREE: f64 = 0.03;

pub(super) fn scene(chart: &Cascade, paper: &Paper) -> Option<Scene> {
    let (mut scene, body) = begin(chart, paper);
    let totals = chart.totals();
    totals.first()?;
    let mut key = Key::default();
    if !chart.axis.log {
        let count = chart.classes.len();
        chart.classes.iter().enumerate().for_each(|(k, class)| key.add(Sample::Area(tint(k, count)), class));
    }
    let most = 0.35 * body.height();
    let room = body.height() - BELOW - key.height(body.width(), most);
    if let Some(words) = rest(chart.stages.len(), Rows::room(chart.stages.len(), room)) {
        key.add(Sample::Words, &words);
    }
    let under = key.height(body.width(), most);
    let rows = Rows::new(chart.stages.len(), &Rect { y1: body.y1 - BELOW - under, ..body });
    let field = Rect { x1: rows.area.x1 - FREE * rows.area.width(), ..rows.area };
    let graduation = chart.axis.graduate(&totals, field.width(), Along::Level)?;
    let held = |value: f64| {
        let x = across(&field, &graduation, value).unwrap_or(field.x0);
        math::max(field.x0, math::min(field.x1, x))
    };
    for (k, stage) in chart.stages.iter().enumerate().take(rows.shown) {
        let (y, half) = (rows.middle(k), rows.half(2.6));
        let total = stage.total();
        scene.on(Layer::Internals);
        if let Some(total) = total.filter(|_| chart.axis.log) {
            if graduation.holds(total) {
                Sign::Dot.draw(&mut scene, pt(held(total), y));
            } else {
                let tail = if held(total) > field.x0 { field.x0 } else { field.x1 };
                scene.add(Item::Shape(arrow_head(pt(tail, y), pt(held(total), y), 2.6)));
            }
        } else if total.is_some() {
            stacked(&mut scene, stage, chart.classes.len(), (y, half), &held);
        }
        rows.value(&mut scene, k, &total.map_or_else(|| "-".to_owned(), brief));
    }
    let names: Vec<&str> = chart.stages.iter().map(|s| s.name.as_str()).collect();
    rows.letter(&mut scene, &names, |_| false);
    rows.heads(&mut scene, "", if chart.axis.unit.is_empty() { "all" } else { &chart.head });
    below(&mut scene, &field, &rows.area, &graduation, &chart.axis);
    scene.on(Layer::Frame).line(pt(held(0.0), rows.area.y0), pt(held(0.0), rows.area.y1), Pen::Thin);
    key.draw(&mut scene, &Rect { y0: body.y1 - under, ..body });
    Some(scene)
}

/// One bar.
fn stacked(scene: &mut Scene, stage: &Stage, classes: usize, (y, half): (f64, f64), held: &impl Fn(f64) -> f64) {
    let mut base = 0.0;
    for (class, part) in stage.parts.iter().enumerate() {
        let (x0, x1) = (held(base), held(base + part));
        base += part;
        if x1 - x0 < 0.02 {
            continue;
        }
        let bar = Rect { x0, y0: y - half, x1, y1: y + half };
        scene.rect(&bar, Some(Pen::Hatching), tint(class, classes));
    }
}
