//! A tornado drawn: bars from a centre line to the results at the ends of each input, which are written at the right.

use super::axis::Along;
use super::bar::{BarChart, Swing};
use super::bound::{Bound, uprights};
use super::brief;
use super::key::{Key, Sample};
use super::paper::{Paper, begin};
use super::plot::{BELOW, GAP, across, below};
use super::rows::{Rows, rest};
use super::stroke::{DEEP, PALE};
use super::ticks::Graduation;
use crate::render::geometry::{Rect, pt};
use crate::render::item::{Fill, Item};
use crate::render::mark::arrow_head;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::math;

/// The input with its two values, as stands at the left of its bars.
pub(super) fn named(swing: &Swing) -> String {
    let ends = [&swing.low_text, &swing.high_text].map(|text| text.trim());
    if ends.iter().any(|text| text.is_empty()) {
        return swing.name.clone();
    }
    format!("{}, {} to {}", swing.name, ends[0], ends[1])
}

/// The two results, as stand at the right.
pub(super) fn results(swing: &Swing) -> String {
    if swing.written.is_empty() {
        format!("{} / {}", brief(swing.low), brief(swing.high))
    } else {
        swing.written.clone()
    }
}

/// The drawing; lines whose names find no place are named in the key, and all is drawn anew.
pub(super) fn scene(chart: &BarChart, (centre, bounds): (f64, &[Bound]), paper: &Paper) -> Option<Scene> {
    let mut all = vec![Bound::note(centre, &format!("as expected {} {}", brief(centre), chart.axis.unit))];
    all.extend(bounds.iter().cloned());
    let mut keyed = Vec::new();
    loop {
        let (scene, homeless) = draw(chart, centre, &all, paper, &keyed)?;
        if homeless.is_empty() {
            return Some(scene);
        }
        keyed.extend(homeless);
    }
}

fn draw(
    chart: &BarChart,
    centre: f64,
    bounds: &[Bound],
    paper: &Paper,
    keyed: &[usize],
) -> Option<(Scene, Vec<usize>)> {
    let (mut scene, body) = begin(chart, paper);
    let swings: Vec<&Swing> = chart.swings();
    let drawn = |s: &&&Swing| chart.axis.takes(s.low) && chart.axis.takes(s.high);
    if !chart.axis.takes(centre) || swings.iter().filter(drawn).count() == 0 {
        return None;
    }
    let mut key = Key::default();
    key.add(Sample::Area(PALE), "result with the input at its first value");
    key.add(Sample::Area(DEEP), "with the input at its second");
    for (_, bound) in bounds.iter().enumerate().filter(|(k, _)| keyed.contains(k)) {
        key.add(Sample::Bound(bound.clone()), &bound.keyed(&chart.axis.unit));
    }
    let most = 0.35 * body.height();
    let room = body.height() - BELOW - key.height(body.width(), most);
    if let Some(words) = rest(swings.len(), Rows::room(swings.len(), room)) {
        key.add(Sample::Words, &words);
    }
    let under = key.height(body.width(), most);
    let rows = Rows::new(swings.len(), &Rect { y1: body.y1 - BELOW - under, ..body });
    let shown: Vec<&Swing> = swings.iter().copied().take(rows.shown).collect();
    let mut data: Vec<f64> = shown.iter().flat_map(|s| [s.low, s.high]).collect();
    data.extend(bounds.iter().map(|b| b.at));
    let field = Rect { x1: rows.area.x1 - 0.04 * rows.area.width(), ..rows.area };
    let graduation = chart.axis.graduate(&data, field.width(), Along::Level)?;
    let middle = held_across(&field, &graduation, centre);
    for (k, swing) in shown.iter().enumerate() {
        let (y, half) = (rows.middle(k), rows.half(2.4));
        bars(&mut scene, &field, &graduation, swing, (middle, y, half));
        rows.value(&mut scene, k, &results(swing));
    }
    let names: Vec<String> = swings.iter().map(|s| named(s)).collect();
    rows.letter(&mut scene, &names.iter().map(String::as_str).collect::<Vec<_>>(), |_| false);
    let head = chart.axis.caption();
    rows.heads(&mut scene, "Input at two values", &head);
    below(&mut scene, &field, &rows.area, &graduation, &chart.axis);
    let place = |(k, bound)| {
        let bound: &Bound = bound;
        let x = across(&field, &graduation, bound.at).filter(|_| graduation.holds(bound.at))?;
        Some((k, bound, x))
    };
    let lines: Vec<(usize, &Bound, f64)> = bounds.iter().enumerate().filter_map(place).collect();
    let homeless = uprights(&mut scene, &rows.area, &lines, keyed, (rows.area.x0, rows.area.x1 - 0.5 * GAP));
    key.draw(&mut scene, &Rect { y0: body.y1 - under, ..body });
    Some((scene, homeless))
}

/// Where a value stands across a field, or the edge it lies beyond.
fn held_across(field: &Rect, graduation: &Graduation, value: f64) -> f64 {
    let x = across(field, graduation, value).unwrap_or(field.x0);
    math::max(field.x0, math::min(field.x1, x))
}

/// The two bars of a row, the longer first, so that a shorter one on the same side stays to be seen.
fn bars(scene: &mut Scene, field: &Rect, graduation: &Graduation, swing: &Swing, (middle, y, half): (f64, f64, f64)) {
    let x = |v: f64| if v.is_finite() { held_across(field, graduation, v) } else { middle };
    let mut ends: [(f64, f64, Fill, f64); 2] =
        [(x(swing.low), swing.low, PALE, half), (x(swing.high), swing.high, DEEP, half)];
    let length = |x: f64| (x - middle).abs();
    ends.sort_by(|a, b| length(b.0).total_cmp(&length(a.0)));
    let same = (ends[0].0 - middle) * (ends[1].0 - middle) > 0.0;
    if same {
        ends[1].3 = 0.5 * half;
    }
    scene.on(Layer::Internals);
    for (x, result, fill, half) in ends {
        let (x0, x1) = (math::min(x, middle), math::max(x, middle));
        if x1 - x0 > 0.01 {
            let bar = Rect { x0, y0: y - half, x1, y1: y + half };
            scene.rect(&bar, Some(Pen::Hatching), fill);
            if !graduation.holds(result) {
                scene.add(Item::Shape(arrow_head(pt(middle, y), pt(x, y), 2.0 * half)));
            }
        }
    }
}
