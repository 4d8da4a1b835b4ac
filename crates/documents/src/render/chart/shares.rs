//! Ranked shares drawn: an open bar for the total, a solid one within it for what the input explains alone.

use super::axis::Along;
use super::bar::{BarChart, Share};
use super::key::{Key, Sample};
use super::label::{SMALL, cut};
use super::paper::{Paper, begin};
use super::plot::{BELOW, across, below};
use super::rows::{Rows, rest};
use super::value;
use crate::render::geometry::{Rect, pt};
use crate::render::item::Fill;
use crate::render::lettering::{Text, text_width};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::math;

pub(super) fn scene(chart: &BarChart, paper: &Paper) -> Option<Scene> {
    let (mut scene, body) = begin(chart, paper);
    let shares: Vec<&Share> = chart.shares();
    let names: Vec<&str> = shares.iter().map(|s| s.name.as_str()).collect();
    let data: Vec<f64> = shares.iter().flat_map(|s| [s.first, s.total]).collect();
    if !data.iter().any(|v| chart.axis.takes(*v)) {
        return None;
    }
    let mut key = Key::default();
    key.add(Sample::Area(Fill::Ink), "alone (first order)");
    key.add(Sample::Area(Fill::Paper), "with all that others add (total)");
    let room = body.height() - BELOW - key.height(body.width(), 0.3 * body.height());
    if let Some(words) = rest(shares.len(), Rows::room(shares.len(), room)) {
        key.add(Sample::Words, &words);
    }
    let under = key.height(body.width(), 0.3 * body.height());
    let rows = Rows::new(&names, &Rect { y1: body.y1 - BELOW - under, ..body });
    let written = |share: &Share| format!("{} / {}", value(share.first), value(share.total));
    let wide = |share: &&Share| text_width(&written(share), SMALL);
    let side = shares.iter().take(rows.shown).map(wide).fold(0.0, math::max);
    let field = Rect { x1: rows.area.x1 - side - 2.4, ..rows.area };
    let graduation = chart.axis.graduate(&data, field.width(), Along::Level)?;
    let held = |value: f64| {
        let x = across(&field, &graduation, value).unwrap_or(field.x0);
        math::max(field.x0, math::min(field.x1, x))
    };
    let zero = held(0.0);
    for (k, share) in shares.iter().enumerate().take(rows.shown) {
        let (y, half) = (rows.middle(k), rows.half(2.2));
        let mut right = zero;
        scene.on(Layer::Internals);
        for (end, half, fill) in [(share.total, half, Fill::Paper), (share.first, 0.5 * half, Fill::Ink)] {
            let x = held(end);
            let (x0, x1) = (math::min(x, zero), math::max(x, zero));
            if end.is_finite() && x1 - x0 > 0.01 {
                scene.rect(&Rect { x0, y0: y - half, x1, y1: y + half }, Some(Pen::Thin), fill);
                right = math::max(right, x1);
            }
        }
        let text = cut(&written(share), side + 0.01, SMALL);
        scene.on(Layer::Note).text(Text::new(pt(right + 1.4, y + 0.5 * SMALL), &text).sized(SMALL));
    }
    rows.letter(&mut scene, &names, body.x0, |_| false);
    below(&mut scene, &field, &graduation, &chart.axis, false);
    scene.on(Layer::Frame).line(pt(field.x0, field.y1), pt(field.x1, field.y1), Pen::Medium);
    scene.line(pt(zero, field.y0), pt(zero, field.y1), Pen::Medium);
    key.draw(&mut scene, &Rect { y0: body.y1 - under, ..body });
    Some(scene)
}
