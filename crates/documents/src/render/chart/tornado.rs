//! A tornado drawn: bars from a centre line to the results at the ends of each input.

use super::axis::Along;
use super::bar::{BarChart, Swing};
use super::key::{Key, Sample};
use super::label::{SMALL, cut, width};
use super::paper::{Paper, begin};
use super::plot::{BELOW, across, below};
use super::rows::{Rows, rest};
use super::stroke::fill;
use super::ticks::Graduation;
use super::value;
use crate::render::geometry::{Rect, pt};
use crate::render::item::{Fill, Item};
use crate::render::lettering::{Anchor, Text};
use crate::render::mark::arrow_head;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::math;

/// Room between a bar and what is written at its end, mm.
const GAP: f64 = 1.2;
/// The most of the field's width that the texts at one side may take.
const MOST: f64 = 0.28;

/// The texts at the low and the high end of an input.
fn texts(swing: &Swing) -> [String; 2] {
    let text = |given: &String, result| if given.trim().is_empty() { value(result) } else { given.clone() };
    [text(&swing.low_text, swing.low), text(&swing.high_text, swing.high)]
}

pub(super) fn scene(chart: &BarChart, centre: f64, paper: &Paper) -> Option<Scene> {
    let (mut scene, body) = begin(chart, paper);
    let swings: Vec<&Swing> = chart.swings();
    let drawn = |s: &&&Swing| chart.axis.takes(s.low) && chart.axis.takes(s.high);
    if !chart.axis.takes(centre) || swings.iter().filter(drawn).count() == 0 {
        return None;
    }
    let names: Vec<&str> = swings.iter().map(|s| s.name.as_str()).collect();
    let (low, high) = ([Fill::Paper, fill(1)], ["input at its low end", "input at its high end"]);
    let mut key = Key::default();
    low.iter().zip(high).for_each(|(fill, name)| key.add(Sample::Area(*fill), name));
    key.add(Sample::Words, format!("centre line: {} {}", value(centre), chart.axis.unit).trim_end());
    let room = body.height() - BELOW - key.height(body.width(), 0.3 * body.height());
    if let Some(words) = rest(swings.len(), Rows::room(swings.len(), room)) {
        key.add(Sample::Words, &words);
    }
    let under = key.height(body.width(), 0.3 * body.height());
    let rows = Rows::new(&names, &Rect { y1: body.y1 - BELOW - under, ..body });
    // The scale leaves room for the texts at both sides.
    let shown: Vec<&Swing> = swings.iter().copied().take(rows.shown).collect();
    let widest = shown.iter().flat_map(|s| texts(s)).map(|t| width(&t, SMALL)).fold(0.0, math::max);
    let side = math::min(widest, MOST * rows.area.width());
    let mut data: Vec<f64> = shown.iter().flat_map(|s| [s.low, s.high]).collect();
    data.push(centre);
    let field = Rect { x0: rows.area.x0 + side + GAP, x1: rows.area.x1 - side - GAP, ..rows.area };
    let graduation = chart.axis.graduate(&data, field.width(), Along::Level)?;
    let middle = held_across(&field, &graduation, centre);
    // Where no text reaches that far, the field is widened; nothing on it comes nearer to its edges.
    let row =
        |field: Rect, middle: f64, k: usize| Row { y: rows.middle(k), half: rows.half(2.6), field, middle, room: side };
    let seats = |k: usize, s: &Swing| row(field, middle, k).ends(&graduation, s).1;
    let texts: Vec<Rect> = shown.iter().enumerate().flat_map(|(k, s)| seats(k, s)).map(|t| t.area()).collect();
    let left = texts.iter().map(|t| t.x0).fold(field.x0, math::min);
    let right = texts.iter().map(|t| t.x1).fold(field.x1, math::max);
    // The text of the last tick stays on the sheet.
    let last = graduation.major.last().map_or(0.0, |t| 0.5 * width(&t.text, SMALL));
    let edge = math::min(rows.area.x1 - (right - field.x1), scene.width - last - 0.5);
    let field = Rect { x0: rows.area.x0 + field.x0 - left, x1: edge, ..field };
    let middle = held_across(&field, &graduation, centre);
    for (k, swing) in shown.iter().enumerate() {
        row(field, middle, k).draw(&mut scene, &graduation, swing);
    }
    rows.letter(&mut scene, &names, body.x0, |_| false);
    below(&mut scene, &field, &graduation, &chart.axis, false);
    scene.on(Layer::Frame).line(pt(field.x0, field.y1), pt(field.x1, field.y1), Pen::Medium);
    scene.on(Layer::Centre).line(pt(middle, field.y0 - 1.2), pt(middle, field.y1), Pen::Medium);
    key.draw(&mut scene, &Rect { y0: body.y1 - under, ..body });
    Some(scene)
}

/// Where a value stands across a field, or the edge it lies beyond.
fn held_across(field: &Rect, graduation: &Graduation, value: f64) -> f64 {
    let x = across(field, graduation, value).unwrap_or(field.x0);
    math::max(field.x0, math::min(field.x1, x))
}

/// One row of a tornado.
struct Row {
    y: f64,
    half: f64,
    field: Rect,
    middle: f64,
    room: f64,
}

/// The end of a bar: its place, its result, its inside.
type End = (f64, f64, Fill);

impl Row {
    /// The ends, that of the longer bar first, and the texts that stand at them.
    fn ends(&self, graduation: &Graduation, swing: &Swing) -> ([End; 2], [Text; 2]) {
        let x = |v: f64| if v.is_finite() { held_across(&self.field, graduation, v) } else { self.middle };
        let [low, high] = texts(swing);
        let mut ends = [(x(swing.low), swing.low, Fill::Paper, low), (x(swing.high), swing.high, fill(1), high)];
        let length = |x: f64| (x - self.middle).abs();
        // At equal length the low end is taken to lie at the left, unless it does not.
        ends.sort_by(|a, b| length(b.0).total_cmp(&length(a.0)));
        let left = ends[0].0 < self.middle || (ends[0].0 == self.middle && ends[0].2 == Fill::Paper);
        let ends = [(ends[0].clone(), left), (ends[1].clone(), !left)];
        // The shorter bar's text stands at its end, or across the centre line when both bars lie on one side.
        let text = |((x, _, _, text), to_left): &((f64, f64, Fill, String), bool)| {
            let x = if (*x < self.middle) == *to_left { *x } else { self.middle };
            let (x, anchor) = if *to_left { (x - GAP, Anchor::End) } else { (x + GAP, Anchor::Start) };
            let text = cut(text, self.room, SMALL);
            Text::new(pt(x, self.y + 0.5 * SMALL), &text).sized(SMALL).anchored(anchor)
        };
        let seats = [text(&ends[0]), text(&ends[1])];
        (ends.map(|((x, result, fill, _), _)| (x, result, fill)), seats)
    }

    fn draw(&self, scene: &mut Scene, graduation: &Graduation, swing: &Swing) {
        let (ends, texts) = self.ends(graduation, swing);
        scene.on(Layer::Internals);
        // The longer bar first, so that a shorter one on the same side stays to be seen.
        for (x, result, fill) in ends {
            let (x0, x1) = (math::min(x, self.middle), math::max(x, self.middle));
            if x1 - x0 > 0.01 {
                let bar = Rect { x0, y0: self.y - self.half, x1, y1: self.y + self.half };
                scene.rect(&bar, Some(Pen::Medium), fill);
                if !graduation.holds(result) {
                    let (tail, tip) = (pt(self.middle, self.y), pt(x, self.y));
                    scene.add(Item::Shape(arrow_head(tail, tip, 2.0 * self.half)));
                }
            }
        }
        scene.on(Layer::Note);
        texts.into_iter().for_each(|text| scene.text(text));
    }
}
