//! Ranked shares drawn: a pale bar for the total, a dark one within it for what the input explains alone.

use super::axis::Along;
use super::bar::{BarChart, Share};
use super::key::{Key, Sample};
use super::paper::{Paper, begin};
use super::plot::{BELOW, across, below};
use super::rows::{Rows, rest};
use super::stroke::{DEEP, PALE};
use super::value;
use crate::render::geometry::{Rect, pt};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::math;

pub(super) fn scene(chart: &BarChart, paper: &Paper) -> Option<Scene> {
    let (mut scene, body) = begin(chart, paper);
    let shares: Vec<&Share> = chart.shares();
    let data: Vec<f64> = shares.iter().flat_map(|s| [s.first, s.total]).collect();
    if !data.iter().any(|v| chart.axis.takes(*v)) {
        return None;
    }
    let mut key = Key::default();
    key.add(Sample::Area(DEEP), "alone (first order)");
    key.add(Sample::Area(PALE), "together with the others (total)");
    let most = 0.3 * body.height();
    let room = body.height() - BELOW - key.height(body.width(), most);
    if let Some(words) = rest(shares.len(), Rows::room(shares.len(), room)) {
        key.add(Sample::Words, &words);
    }
    let under = key.height(body.width(), most);
    let rows = Rows::new(shares.len(), &Rect { y1: body.y1 - BELOW - under, ..body });
    let field = Rect { x1: rows.area.x1 - 0.03 * rows.area.width(), ..rows.area };
    let graduation = chart.axis.graduate(&data, field.width(), Along::Level)?;
    let held = |value: f64| {
        let x = across(&field, &graduation, value).unwrap_or(field.x0);
        math::max(field.x0, math::min(field.x1, x))
    };
    let zero = held(0.0);
    for (k, share) in shares.iter().enumerate().take(rows.shown) {
        let (y, half) = (rows.middle(k), rows.half(2.4));
        scene.on(Layer::Internals);
        for (end, half, fill) in [(share.total, half, PALE), (share.first, 0.5 * half, DEEP)] {
            let x = held(end);
            let (x0, x1) = (math::min(x, zero), math::max(x, zero));
            if end.is_finite() && x1 - x0 > 0.01 {
                scene.rect(&Rect { x0, y0: y - half, x1, y1: y + half }, Some(Pen::Hatching), fill);
            }
        }
        rows.value(&mut scene, k, &format!("{} / {}", value(share.first), value(share.total)));
    }
    let names: Vec<&str> = shares.iter().map(|s| s.name.as_str()).collect();
    rows.letter(&mut scene, &names, |_| false);
    let unit = if chart.axis.unit.is_empty() { String::new() } else { format!(", {}", chart.axis.unit) };
    rows.heads(&mut scene, "", &format!("alone / together{unit}"));
    below(&mut scene, &field, &rows.area, &graduation, &chart.axis);
    scene.on(Layer::Frame).line(pt(zero, rows.area.y0), pt(zero, rows.area.y1), Pen::Thin);
    key.draw(&mut scene, &Rect { y0: body.y1 - under, ..body });
    Some(scene)
}
