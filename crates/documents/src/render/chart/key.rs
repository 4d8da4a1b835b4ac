//! The key: samples of what is drawn, with their names, under the field.

use super::bound::Bound;
use super::label::{LINE, SMALL, cut, letters, width};
use super::stroke::{Sign, Stroke};
use crate::render::geometry::{Rect, pt};
use crate::render::item::Fill;
use crate::render::pen::{Layer, Pen};
use crate::render::scene::Scene;

/// What a key shows beside a name.
#[derive(Debug, Clone, PartialEq)]
pub enum Sample {
    /// A curve.
    Line(Stroke),
    /// A curve with signs at its points.
    Marked(Stroke, Sign),
    /// A point.
    Point(Sign),
    /// An area.
    Area(Fill),
    /// A line across the field.
    Bound(Bound),
    /// Words alone.
    Words,
}

/// The entries of a key, in order.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Key {
    /// Sample and name.
    pub entries: Vec<(Sample, String)>,
}

/// Room behind a sample and behind a name, mm.
const GAP: (f64, f64) = (1.4, 5.0);
/// Distance of rows, mm.
const ROW: f64 = LINE + 0.8;

impl Sample {
    /// Room before its name, mm.
    fn lead(&self) -> f64 {
        match self {
            Sample::Words => 0.0,
            Sample::Point(_) => 2.6 + GAP.0,
            Sample::Area(_) => 6.0 + GAP.0,
            _ => 9.0 + GAP.0,
        }
    }
}

impl Key {
    /// Adds an entry.
    pub fn add(&mut self, sample: Sample, name: &str) {
        self.entries.push((sample, name.to_owned()));
    }

    /// An entry's width on paper, at most `most`.
    fn wide(sample: &Sample, name: &str, most: f64) -> (f64, String) {
        let lead = sample.lead();
        let name = cut(name, most - lead, SMALL);
        (lead + width(&name, SMALL), name)
    }

    /// The height it takes where it has all the room it may want, mm: about a line for so many entries.
    #[must_use]
    pub fn fair(entries: usize) -> f64 {
        let rows = entries.div_ceil(4);
        if rows == 0 { 0.0 } else { f64::from(u8::try_from(rows).unwrap_or(u8::MAX)) * ROW + 1.5 }
    }

    /// The entries in rows of at most `room` mm, each with its x.
    fn rows(&self, room: f64) -> Vec<Vec<(f64, &Sample, String)>> {
        let mut rows: Vec<Vec<(f64, &Sample, String)>> = Vec::new();
        let mut used = room;
        for (sample, name) in &self.entries {
            let (wide, name) = Key::wide(sample, name, room);
            if used + wide > room {
                rows.push(Vec::new());
                used = 0.0;
            }
            if let Some(row) = rows.last_mut() {
                row.push((used, sample, name));
            }
            used += wide + GAP.1;
        }
        rows
    }

    /// The height it takes under a field of a width, mm; never more than `most`.
    #[must_use]
    pub fn height(&self, room: f64, most: f64) -> f64 {
        let rows = u8::try_from(self.rows(room).len()).unwrap_or(u8::MAX);
        let whole = if rows == 0 { 0.0 } else { f64::from(rows) * ROW + 1.5 };
        if whole > most { ((most - 1.5) / ROW).floor() * ROW + 1.5 } else { whole }
    }

    /// Draws it into an area of [`Key::height`]; rows without room give way to words that say so.
    pub fn draw(&self, scene: &mut Scene, area: &Rect) {
        let rows = self.rows(area.width());
        let room = ((area.height() - 1.5) / ROW + 1e-6).floor();
        let mut y = area.y0 + 1.5;
        let mut rest = self.entries.len();
        for (k, row) in rows.iter().enumerate() {
            let last = y + 2.0 * ROW > area.y1 + 1e-6 && k + 1 < rows.len();
            let base = y + 0.5 * ROW + 0.5 * SMALL;
            if last && room >= 1.0 {
                let words = cut(&format!("and {rest} more, see the table"), area.width(), SMALL);
                scene.on(Layer::Note).text(letters(pt(area.x0, base), &words));
                return;
            }
            for (x, sample, name) in row {
                let lead = sample.lead();
                let at = Rect::new(area.x0 + x, y, lead - GAP.0, ROW);
                draw(scene, sample, &at);
                scene.on(Layer::Note).text(letters(pt(at.x0 + lead, base), name));
            }
            rest -= row.len();
            y += ROW;
        }
    }
}

/// A sample within its area.
fn draw(scene: &mut Scene, sample: &Sample, area: &Rect) {
    let middle = area.centre();
    let line = [pt(area.x0, middle.y), pt(area.x1, middle.y)];
    scene.on(Layer::Vessel);
    match sample {
        Sample::Line(stroke) => stroke.draw(scene, &line),
        Sample::Marked(stroke, sign) => {
            stroke.draw(scene, &line);
            sign.draw(scene, middle);
        }
        Sample::Point(sign) => sign.draw(scene, middle),
        Sample::Area(fill) => {
            let patch = Rect::new(area.x0, middle.y - 1.4, area.width(), 2.8);
            scene.rect(&patch, Some(Pen::Thin), *fill);
        }
        Sample::Bound(bound) => bound.stroke(scene, line[0], line[1]),
        Sample::Words => {}
    }
}
