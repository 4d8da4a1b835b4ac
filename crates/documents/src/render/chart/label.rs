//! Lettering of charts: texts cut to their room, and labels that stand clear or not at all.

use crate::render::geometry::{Point, Rect};
use crate::render::item::{Fill, Item, Shape};
use crate::render::lettering::{Face, Text};
use crate::render::pen::Layer;
use crate::render::scene::Scene;
use crate::render::text::plain;
use stillrise_units::math;

/// Height of capitals of all lettering but titles, mm: the papers' tables have letters of this size.
pub const SMALL: f64 = 1.93;
/// Distance of baselines of small lettering, mm.
pub const LINE: f64 = 3.4;
/// Room kept around a label, mm.
const CLEAR: f64 = 0.5;

/// A text of a chart, in the face of the papers.
#[must_use]
pub fn letters(at: Point, text: &str) -> Text {
    Text::new(at, text).sized(SMALL).faced(Face::Book)
}

/// Text in one line of at most `width` mm; what does not fit gives way to an ellipsis.
#[must_use]
pub fn cut(text: &str, width: f64, size: f64) -> String {
    let text = plain(text);
    let wide = |text: &str| Face::Book.width(text, size, false);
    if wide(&text) <= width + 1e-9 {
        return text;
    }
    let mut kept = text;
    while kept.pop().is_some() {
        let short = format!("{}…", kept.trim_end());
        if !kept.trim_end().is_empty() && wide(&short) <= width + 1e-9 {
            return short;
        }
    }
    String::new()
}

/// Text in at most `most` lines of `width` mm; a word longer than a line, and what is left for the last line, is cut.
#[must_use]
pub fn fold(text: &str, width: f64, size: f64, most: usize) -> Vec<String> {
    let text = plain(text);
    let wide = |text: &str| Face::Book.width(text, size, false);
    let mut lines: Vec<String> = Vec::new();
    for word in glued(&text) {
        let full = lines.len() >= most.max(1);
        match lines.last_mut() {
            Some(last) if full || wide(&format!("{last} {word}")) <= width + 1e-9 => {
                last.push(' ');
                last.push_str(&word);
            }
            _ => lines.push(word),
        }
    }
    lines.iter().map(|line| cut(line, width, size)).collect()
}

/// The words of a text, a number and its unit as one.
fn glued(text: &str) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    let numeric = |word: &str| word.parse::<f64>().is_ok();
    let unit = |word: &str| {
        let short = word.chars().count() <= 6 && !word.starts_with(|c: char| c.is_ascii_digit());
        short && !matches!(word, "to" | "and" | "or" | "of" | "in" | "with" | "by" | "at" | "a")
    };
    for word in text.split(' ') {
        match words.last_mut() {
            Some(last) if numeric(last) && unit(word) => {
                last.push(' ');
                last.push_str(word);
            }
            _ => words.push(word.to_owned()),
        }
    }
    words
}

/// Width in mm that a text takes, made plain.
#[must_use]
pub fn width(text: &str, size: f64) -> f64 {
    Face::Book.width(&plain(text), size, false)
}

/// How high so many lines stand, mm.
#[must_use]
pub fn height(lines: usize) -> f64 {
    f64::from(u16::try_from(lines.max(1) - 1).unwrap_or(u16::MAX)) * LINE + SMALL
}

/// Whether a text stands on the sheet and clear of all other text.
#[must_use]
pub fn is_clear(scene: &Scene, text: &Text) -> bool {
    let here = text.area().grown(CLEAR);
    let paper = Rect::new(0.0, 0.0, scene.width, scene.height);
    paper.holds(&text.area()) && scene.text_boxes().iter().all(|(_, there)| here.overlap(there) <= 0.0)
}

/// How many drawn lines pass through the room of a text; the grid does not count.
#[must_use]
pub fn crossings(scene: &Scene, text: &Text) -> usize {
    let here = text.area().grown(0.3);
    let drawn = scene.items().iter().filter(|placed| placed.layer != Layer::Ground);
    let mut crossed = 0;
    for placed in drawn {
        if let Item::Shape(Shape::Path { rings, pen: None, fill, .. }) = &placed.item {
            let shaded = matches!(fill, Fill::Tint(_) | Fill::Hatch(_) | Fill::Over(_) | Fill::Ink);
            let around = rings.iter().filter_map(|ring| Rect::around(ring));
            crossed += around.filter(|area| shaded && here.overlap(area) > 0.0).count();
        }
        crossed += placed.item.lines().iter().filter(|(a, b)| here.crossed_by(*a, *b)).count();
        if let Item::Shape(Shape::Circle { centre: Point { x, y }, radius, .. }) = placed.item {
            let disc = Rect { x0: x, y0: y, x1: x, y1: y }.grown(radius);
            crossed += usize::from(here.overlap(&disc) > 0.0);
        }
    }
    crossed
}

/// Writes a text at the place that is clear of all text and crosses the fewest lines, no more than
/// `most`; the first of equals. `false`, and nothing is written, when there is none.
pub fn place(scene: &mut Scene, candidates: impl IntoIterator<Item = Text>, most: usize) -> bool {
    let mut best: Option<(usize, Text)> = None;
    for text in candidates {
        if is_clear(scene, &text) {
            let crossed = crossings(scene, &text);
            if crossed <= most && best.as_ref().is_none_or(|(c, _)| crossed < *c) {
                best = Some((crossed, text));
            }
        }
    }
    let Some((_, text)) = best else {
        return false;
    };
    scene.text(text);
    true
}

/// Places at which labels stand apart between two bounds, as near as may be to those wished for, which
/// ascend: each at least `room` from its neighbour before it. `None` when they have no room.
#[must_use]
pub fn apart(wished: &[f64], room: impl Fn(usize) -> f64, low: f64, high: f64) -> Option<Vec<f64>> {
    // Measured from where each would stand if all stood as near as they may, labels need only keep
    // their order: the nearest such places are means of runs whose wishes are out of order.
    let mut offsets = Vec::new();
    let mut sum = 0.0;
    for k in 0..wished.len() {
        sum += if k > 0 { room(k) } else { 0.0 };
        offsets.push(sum);
    }
    // Written so that what is no number finds no room either.
    if wished.iter().any(|w| !w.is_finite()) || high - low - sum < -1e-9 {
        return None;
    }
    let mut runs: Vec<(f64, f64)> = Vec::new();
    for (wish, offset) in wished.iter().zip(&offsets) {
        let mut run = (wish - offset, 1.0);
        while let Some(&(mean, n)) = runs.last().filter(|before| before.0 > run.0) {
            runs.pop();
            run = ((mean * n + run.0 * run.1) / (n + run.1), n + run.1);
        }
        runs.push(run);
    }
    let held = |place| math::max(low, math::min(high - sum, place));
    let mut places = Vec::new();
    for (mean, n) in runs {
        let end = (0..wished.len()).take_while(|k| f64::from(u32::try_from(*k).unwrap_or(u32::MAX)) < n).count();
        let first = places.len();
        places.extend(offsets.iter().skip(first).take(end).map(|offset| held(mean) + offset));
    }
    Some(places)
}
