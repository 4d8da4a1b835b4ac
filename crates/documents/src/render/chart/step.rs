//! A cascade as a step line that falls from stage to stage.

use super::cascade::{Cascade, Stage};
use super::columns::Field;
use super::key::Key;
use super::paper::Paper;
use super::plot::{ink, up};
use super::value;
use crate::render::geometry::pt;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;

pub(super) fn scene(chart: &Cascade, paper: &Paper) -> Option<Scene> {
    let mut field = Field::new(chart, paper, Key::default())?;
    let area = field.plot.area;
    let mut last: Option<f64> = None;
    let mut heights = Vec::new();
    for k in 0..field.shown.len() {
        let total = field.shown.get(k).and_then(Stage::total);
        let held = total.filter(|t| field.plot.y.holds(*t)).and_then(|t| up(&area, &field.plot.y, t));
        let (x0, x1) = (field.middle(k) - 0.5 * field.pitch, field.middle(k) + 0.5 * field.pitch);
        field.scene.on(Layer::Vessel);
        if let Some(y) = held {
            if let Some(before) = last {
                field.scene.add(ink(vec![vec![pt(x0, before), pt(x0, y)]], Pen::Thin));
            }
            field.scene.line(pt(x0, y), pt(x1, y), Pen::Outline);
        }
        heights.push((held, total));
        last = held;
    }
    for (k, (height, total)) in heights.into_iter().enumerate() {
        // What is too small for the axis is written at its foot.
        let text = match (height, total) {
            (Some(_), Some(total)) => value(total),
            (None, Some(total)) => format!("{} (not on the axis)", value(total)),
            _ => "-".to_owned(),
        };
        field.write(k, height.unwrap_or(area.y1) - 1.3, &text);
    }
    Some(field.scene)
}
