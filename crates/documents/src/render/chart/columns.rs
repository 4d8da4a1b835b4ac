//! A cascade as stacked columns, each class with its own hatching.

use super::axis::Along;
use super::cascade::{Cascade, Stage};
use super::key::{Key, Sample};
use super::label::{LINE, SMALL, cut, fold, is_clear, width};
use super::paper::{Paper, begin};
use super::plot::{ABOVE, Plot, margin, up};
use super::stroke::fill;
use super::value;
use crate::render::geometry::{Rect, pt};
use crate::render::lettering::{Anchor, Text};
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;
use stillrise_units::math;

/// Room under a field for names of stages in two lines, mm.
const NAMES: f64 = 2.0 * LINE + 2.0;
/// Least distance of columns, mm.
const LEAST: f64 = 11.0;

/// The field of a cascade with what stands around it drawn.
pub(super) struct Field {
    pub(super) scene: Scene,
    pub(super) plot: Plot,
    /// Distance of columns, mm.
    pub(super) pitch: f64,
    /// The stages that have room.
    pub(super) shown: Vec<Stage>,
}

impl Field {
    /// Draws axis, names of stages and key; `None` when there is nothing to draw.
    pub(super) fn new(chart: &Cascade, paper: &Paper, mut key: Key) -> Option<Field> {
        let (mut scene, body) = begin(chart, paper);
        let mut totals = chart.totals();
        // Room above the highest value for what is written there.
        let highest = totals.iter().copied().reduce(math::max)?;
        totals.push(highest * if chart.axis.log { 1.5 } else { 1.06 });
        let room = u16::try_from(chart.stages.len()).unwrap_or(u16::MAX).max(1);
        let count = (1..=room).take_while(|n| f64::from(*n) * LEAST <= body.width() - 16.0).last().unwrap_or(1);
        let shown: Vec<Stage> = chart.stages.iter().take(usize::from(count)).cloned().collect();
        if let Some(words) = super::rows::rest(chart.stages.len(), shown.len()) {
            key.add(Sample::Words, &words);
        }
        let under = key.height(body.width(), 0.3 * body.height());
        let mut area = Rect { y0: body.y0 + ABOVE, x1: body.x1 - 0.5, y1: body.y1 - NAMES - under, ..body };
        area.x0 += margin(&chart.axis, &totals, area.height());
        let y = chart.axis.graduate(&totals, area.height(), Along::Up)?;
        let x = super::ticks::Graduation {
            low: 0.0,
            high: f64::from(count),
            log: false,
            major: Vec::new(),
            minor: Vec::new(),
        };
        let plot = Plot { area, x, y };
        let none = super::Axis::linear("", "");
        plot.draw(&mut scene, &none, &chart.axis, 0.0);
        let pitch = area.width() / f64::from(count);
        key.draw(&mut scene, &Rect { y0: body.y1 - under, ..body });
        let field = Field { scene, plot, pitch, shown };
        Some(field.named())
    }

    /// The middle of a column.
    pub(super) fn middle(&self, k: usize) -> f64 {
        self.plot.area.x0 + (f64::from(u16::try_from(k).unwrap_or(u16::MAX)) + 0.5) * self.pitch
    }

    /// Letters the names of the stages.
    fn named(mut self) -> Field {
        self.scene.on(Layer::Note);
        for k in 0..self.shown.len() {
            let x = self.middle(k);
            for (row, line) in fold(&self.shown[k].name, self.pitch - 1.5, SMALL, 2).iter().enumerate() {
                let base = self.plot.area.y1 + 1.6 + SMALL + if row > 0 { LINE } else { 0.0 };
                self.scene.text(Text::new(pt(x, base), line).sized(SMALL).anchored(Anchor::Middle));
            }
        }
        self
    }

    /// Writes a value at a stage, its baseline on `y`.
    pub(super) fn write(&mut self, k: usize, y: f64, number: &str) {
        let text = cut(number, self.pitch - 0.8, SMALL);
        let text = Text::new(pt(self.middle(k), y), &text).sized(SMALL).anchored(Anchor::Middle);
        if is_clear(&self.scene, &text) {
            self.scene.on(Layer::Note).text(text.cleared());
        }
    }
}

pub(super) fn scene(chart: &Cascade, paper: &Paper) -> Option<Scene> {
    let mut key = Key::default();
    for (k, class) in chart.classes.iter().enumerate() {
        key.add(Sample::Area(fill(k)), class);
    }
    let mut field = Field::new(chart, paper, key)?;
    let half = math::min(12.0, 0.36 * field.pitch);
    let area = field.plot.area;
    let place = |field: &Field, v| up(&area, &field.plot.y, v).map(|y| math::max(area.y0, math::min(area.y1, y)));
    for k in 0..field.shown.len() {
        let stage = field.shown[k].clone();
        let (x, Some(total)) = (field.middle(k), stage.total()) else {
            field.write(k, area.y1 - 1.4, "-");
            continue;
        };
        let mut base = 0.0;
        for (class, part) in stage.parts.iter().enumerate() {
            let (Some(y1), Some(y0)) = (place(&field, base), place(&field, base + part)) else {
                continue;
            };
            base += part;
            if y1 - y0 < 0.02 {
                continue;
            }
            let bar = Rect { x0: x - half, y0, x1: x + half, y1 };
            let fill = if chart.classes.is_empty() { fill(1) } else { fill(class) };
            field.scene.on(Layer::Internals).rect(&bar, Some(Pen::Medium), fill);
            let text = value(*part);
            // A value within its part, where it has room; the table has them all.
            if chart.classes.len() > 1 && y1 - y0 > SMALL + 2.2 && width(&text, SMALL) < 2.0 * half - 1.0 {
                field.write(k, 0.5 * (y0 + y1) + 0.5 * SMALL, &text);
            }
        }
        let top = place(&field, total).unwrap_or(area.y1);
        let sum = value(total);
        field.write(k, top - 1.2, &sum);
    }
    Some(field.scene)
}
