//! A line chart drawn: field, bands, curves, points; names go to the key until all stand clear.

use super::axis::Along;
use super::bound::{Bound, uprights};
use super::key::{Key, Sample};
use super::line::{LineChart, Series};
use super::line_ink::{band, beyond, curve, hatch, points};
use super::line_name::{self, End};
use super::paper::{Paper, begin};
use super::plot::{ABOVE, BELOW, NAMES, Plot, across, margin, up};
use super::stroke::Sign;
use crate::render::geometry::Rect;
use crate::render::item::Fill;
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
}

/// The drawing. Names that find no place are moved to the key, and all is drawn anew around it.
pub(super) fn scene(chart: &LineChart, paper: &Paper) -> Option<Scene> {
    let mut keyed = BTreeSet::new();
    // Each round moves one name at least.
    let most = chart.curves.len() + chart.uprights.len() + chart.levels.len();
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
        key.add(Sample::Area(Fill::Hatch(hatch(k))), &band.name);
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
    // The field, in the room that names, ticks and key leave.
    let mut area = Rect { x0: body.x0 + margin(&chart.y, &ys, body.height() - 20.0), ..body };
    let lift = if chart.uprights.is_empty() { 0.0 } else { NAMES };
    area.y0 += ABOVE + lift;
    let rough = Plot {
        area,
        x: chart.x.graduate(&xs, area.width(), Along::Level)?,
        y: chart.y.graduate(&ys, area.height(), Along::Up)?,
    };
    let beyond = beyond(chart, &rough);
    let key = key(chart, keyed, beyond);
    let below = key.height(body.width(), 0.35 * body.height());
    area.y1 -= BELOW + below;
    area.x0 = body.x0 + margin(&chart.y, &ys, area.height());
    area.x1 -= line_name::margin(chart, &rough, keyed);
    let x = chart.x.graduate(&xs, area.width(), Along::Level)?;
    let y = chart.y.graduate(&ys, area.height(), Along::Up)?;
    let plot = Plot { area, x, y };
    for (k, shape) in chart.bands.iter().enumerate() {
        band(&mut scene, &plot, shape, k);
    }
    plot.draw(&mut scene, &chart.x, &chart.y, lift);
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
    homeless.extend(uprights(&mut scene, &area, &lines, &known).into_iter().map(Named::Upright));
    for (k, bound) in chart.levels.iter().enumerate() {
        let Some(height) = up(&area, &plot.y, bound.at).filter(|_| plot.y.holds(bound.at)) else {
            continue;
        };
        if !bound.level(&mut scene, &area, height, !keyed.contains(&Named::Level(k))) {
            homeless.push(Named::Level(k));
        }
    }
    homeless.extend(line_name::write(&mut scene, &area, chart, &ends, keyed));
    Some((scene, homeless))
}
