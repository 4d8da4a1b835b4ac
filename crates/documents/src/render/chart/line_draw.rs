//! A line chart drawn: field, bands, curves, points; names go to the key until all stand clear.

use super::axis::Along;
use super::bound::{Bound, uprights};
use super::key::{Key, Sample};
use super::line::{LineChart, Series};
use super::line_ink::{band, beyond, curve, points, shade};
use super::line_name::End;
use super::paper::{Paper, begin};
use super::plot::{BELOW, NAMES, Plot, across, columns, inner, up};
use super::side;
use super::stroke::{FLOOR, Sign};
use crate::render::geometry::Rect;
use crate::render::pen::Layer;
use crate::render::scene::Scene;
use std::collections::BTreeSet;

/// What is named on a chart, by its place in the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Named {
    /// A curve.
    Curve(usize),
    /// An upright line.
    Upright(usize),
    /// A level line.
    Level(usize),
    /// What is not promised.
    Floor,
}

/// The drawing. Names that find no place are moved to the key, and all is drawn anew around it.
pub(super) fn scene(chart: &LineChart, paper: &Paper) -> Option<Scene> {
    let mut keyed = BTreeSet::new();
    // Each round moves one name at least.
    let most = chart.curves.len() + chart.uprights.len() + chart.levels.len() + 1;
    for _ in 0..most {
        let (scene, homeless) = draw(chart, paper, &keyed)?;
        if homeless.is_empty() {
            return Some(scene);
        }
        keyed.extend(homeless);
    }
    draw(chart, paper, &keyed).map(|(scene, _)| scene)
}

fn key(chart: &LineChart, keyed: &BTreeSet<Named>, beyond: usize) -> Key {
    let mut key = Key::default();
    for (k, curve) in chart.curves.iter().enumerate().filter(|(k, _)| keyed.contains(&Named::Curve(*k))) {
        let stroke = chart.stroke(k);
        key.add(chart.sign(k).map_or(Sample::Line(stroke), |sign| Sample::Marked(stroke, sign)), &curve.name);
    }
    for (k, band) in chart.bands.iter().enumerate() {
        key.add(Sample::Area(shade(k)), &band.name);
    }
    for (k, series) in chart.series.iter().enumerate() {
        key.add(Sample::Point(sign(series, k)), &series.name);
    }
    for (_, bound) in chart.uprights.iter().enumerate().filter(|(k, _)| keyed.contains(&Named::Upright(*k))) {
        key.add(Sample::Bound(bound.clone()), &bound.keyed(&chart.x.unit));
    }
    for (_, bound) in chart.levels.iter().enumerate().filter(|(k, _)| keyed.contains(&Named::Level(*k))) {
        key.add(Sample::Bound(bound.clone()), &bound.keyed(&chart.y.unit));
    }
    if let Some((_, words)) = chart.floor.as_ref().filter(|_| keyed.contains(&Named::Floor)) {
        key.add(Sample::Area(FLOOR), words);
    }
    if beyond > 0 {
        key.add(Sample::Words, &format!("{beyond} beyond the axes, see the table"));
    }
    key
}

fn sign(series: &Series, k: usize) -> Sign {
    series.sign.unwrap_or(Sign::ALL[k % Sign::ALL.len()])
}

fn draw(chart: &LineChart, paper: &Paper, keyed: &BTreeSet<Named>) -> Option<(Scene, Vec<Named>)> {
    let (mut scene, body) = begin(chart, paper);
    let (mut xs, mut ys) = chart.values();
    xs.extend(chart.uprights.iter().map(|b| b.at));
    ys.extend(chart.levels.iter().map(|b| b.at));
    ys.extend(chart.floor.iter().map(|f| f.0));
    // The field, in the room that names, ticks and key leave.
    let (x0, x1) = columns(&body);
    let lift = if chart.uprights.is_empty() { 1.0 } else { NAMES };
    let rough = Rect { x0, x1, y0: body.y0 + lift, y1: body.y1 - BELOW };
    let plot = |frame: Rect| {
        let area = inner(&frame);
        let x = chart.x.graduate(&xs, area.width(), Along::Level)?;
        let y = chart.y.graduate(&ys, area.height(), Along::Up)?;
        Some(Plot { area, frame, x, y })
    };
    let key = key(chart, keyed, beyond(chart, &plot(rough)?));
    let below = key.height(body.width(), 0.35 * body.height());
    let plot = plot(Rect { y1: rough.y1 - below, ..rough })?;
    let (area, frame) = (plot.area, plot.frame);
    let level = |value: f64| up(&area, &plot.y, value).filter(|_| plot.y.holds(value));
    if let Some(y) = chart.floor.as_ref().and_then(|(at, _)| level(*at)) {
        scene.on(Layer::Liquid).rect(&Rect { y0: y, ..frame }, None, FLOOR);
    }
    for (k, shape) in chart.bands.iter().enumerate() {
        band(&mut scene, &plot, shape, k);
    }
    plot.draw(&mut scene, &chart.x, &chart.y, body.x0);
    let ends: Vec<End> = (0..chart.curves.len()).filter_map(|k| curve(&mut scene, &plot, chart, k)).collect();
    scene.on(Layer::Piping);
    for (k, series) in chart.series.iter().enumerate() {
        points(&mut scene, &plot, series, sign(series, k));
    }
    key.draw(&mut scene, &Rect { y0: body.y1 - below, ..body });
    let mut homeless = Vec::new();
    let held = chart.uprights.iter().enumerate().filter(|(_, b)| plot.x.holds(b.at));
    let lines: Vec<(usize, &Bound, f64)> =
        held.filter_map(|(k, b)| Some((k, b, across(&area, &plot.x, b.at)?))).collect();
    let known: Vec<usize> = (0..chart.uprights.len()).filter(|k| keyed.contains(&Named::Upright(*k))).collect();
    homeless.extend(uprights(&mut scene, &frame, &lines, &known, (body.x0, body.x1)).into_iter().map(Named::Upright));
    let mut levels = Vec::new();
    for (k, bound) in chart.levels.iter().enumerate() {
        if let Some(y) = level(bound.at) {
            bound.level(&mut scene, &frame, y);
            levels.push((Named::Level(k), y, bound.name.as_str()));
        }
    }
    if let Some((at, words)) = &chart.floor {
        // Its words stand beside the tint, not at its edge.
        let y = level(*at).map(|y| 0.5 * (y + frame.y1));
        levels.extend(y.map(|y| (Named::Floor, y, words.as_str())));
    }
    homeless.extend(side::write(&mut scene, &frame, (chart, body.x1), &ends, &levels, keyed));
    Some((scene, homeless))
}
