//! The ink of a line chart: bands, curves, points with their error bars.

use super::line::{Band, LineChart, Series};
use super::line_name::End;
use super::plot::{Plot, ink, up};
use super::stroke::Sign;
use super::trace::within;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::item::{Fill, Item};
use crate::render::mark::arrow_head;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::math;

/// Least distance of signs along a curve, mm.
const APART: f64 = 8.0;

/// The tints of bands, in turn.
pub(super) fn shade(k: usize) -> Fill {
    Fill::Tint([20, 34, 48, 27][k % 4])
}

/// How many points, and lines across, have no place within the axes.
pub(super) fn beyond(chart: &LineChart, plot: &Plot) -> usize {
    let lost = |x: f64, y: f64| !(plot.x.holds(x) && plot.y.holds(y));
    let curves = chart.curves.iter().flat_map(|c| &c.points).filter(|(x, y)| lost(*x, *y)).count();
    let points = chart.series.iter().flat_map(|s| &s.readings).filter(|r| lost(r.x, r.y)).count();
    let uprights = chart.uprights.iter().filter(|b| !plot.x.holds(b.at)).count();
    let levels = chart.levels.iter().filter(|b| !plot.y.holds(b.at)).count();
    curves + points + uprights + levels
}

/// Tints a band; where an end has no place, the band is broken.
pub(super) fn band(scene: &mut Scene, plot: &Plot, band: &Band, k: usize) {
    let held = |p: Point| pt(p.x, math::max(plot.area.y0, math::min(plot.area.y1, p.y)));
    let places = band.points.iter().map(|&(x, low, high)| {
        // On a logarithmic axis an end at or below 0 lies under every value shown.
        let low = if plot.y.log && low <= 0.0 { plot.y.low } else { low };
        plot.x.holds(x).then(|| Some((held(plot.at(x, low)?), held(plot.at(x, high)?)))).flatten()
    });
    let places: Vec<Option<(Point, Point)>> = places.collect();
    scene.on(Layer::Liquid);
    for run in places.split(Option::is_none) {
        let run: Vec<(Point, Point)> = run.iter().copied().flatten().collect();
        if run.len() > 1 {
            let ring: Vec<Point> = run.iter().map(|r| r.0).chain(run.iter().rev().map(|r| r.1)).collect();
            scene.polygon(&ring, None, shade(k));
        }
    }
}

/// Draws a curve, and tells where it ends.
pub(super) fn curve(scene: &mut Scene, plot: &Plot, chart: &LineChart, k: usize) -> Option<End> {
    let curve = chart.curves.get(k)?;
    let mut places: Vec<Option<Point>> = Vec::new();
    for &(x, y) in &curve.points {
        let place = plot.at(x, y);
        // Points nearer than the pen can show are left out.
        let near = matches!((places.last(), place), (Some(Some(a)), Some(b)) if a.distance(b) < 0.02);
        if !near {
            places.push(place);
        }
    }
    let runs = within(&places, &plot.area);
    scene.on(Layer::Vessel);
    for run in &runs {
        chart.stroke(k).draw(scene, run);
    }
    let held = places.iter().flatten().filter(|p| plot.area.grown(1e-6).holds(&Rect::new(p.x, p.y, 0.0, 0.0)));
    let held: Vec<Point> = held.copied().collect();
    let lone = if runs.is_empty() && chart.sign(k).is_none() { Some(Sign::Dot) } else { chart.sign(k) };
    if let Some(sign) = lone {
        scene.on(Layer::Piping);
        let mut last: Option<Point> = None;
        for &place in &held {
            // Signs tell curves apart; one after the other they would hide them.
            if last.is_none_or(|before| before.distance(place) >= APART) {
                sign.draw(scene, place);
                last = Some(place);
            }
        }
    }
    let line: Vec<Point> = if runs.is_empty() { held } else { runs.into_iter().flatten().collect() };
    Some(End { curve: k, at: *line.last()?, line })
}

/// Draws points with their error bars; a bar that runs out of the field ends in an arrow head.
pub(super) fn points(scene: &mut Scene, plot: &Plot, series: &Series, sign: Sign) {
    for reading in &series.readings {
        let Some(at) = plot.at(reading.x, reading.y).filter(|_| plot.x.holds(reading.x) && plot.y.holds(reading.y))
        else {
            continue;
        };
        for (end, edge) in [(reading.bar.0, plot.area.y1), (reading.bar.1, plot.area.y0)] {
            let open = !plot.y.holds(end);
            let stop = if open { edge } else { up(&plot.area, &plot.y, end).unwrap_or(at.y) };
            if end.is_nan() || (stop - at.y).abs() < 0.05 {
                continue;
            }
            let tip = pt(at.x, stop);
            scene.line(at, tip, Pen::Thin);
            if open {
                scene.add(Item::Shape(arrow_head(at, tip, 1.6)));
            } else {
                scene.add(ink(vec![vec![tip.by(-0.9, 0.0), tip.by(0.9, 0.0)]], Pen::Thin));
            }
        }
        sign.draw(scene, at);
    }
}
