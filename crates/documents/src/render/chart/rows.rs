//! Rows under one another with their names at the left: what bars and rungs stand on.

use super::label::{LINE, SMALL, fold, width};
use crate::render::geometry::{Rect, pt};
use crate::render::lettering::{Anchor, Text};
use crate::render::pen::Layer;
use crate::render::scene::Scene;
use stillrise_units::math;

/// Least height of a row, mm.
const LEAST: f64 = 4.4;
/// Greatest height of a row, mm.
const GREATEST: f64 = 16.0;
/// Room between a name and the field, mm.
const GAP: f64 = 2.0;
/// The most of the width that names may take.
const MOST: f64 = 0.36;

/// Rows laid out over a field.
#[derive(Debug, Clone, PartialEq)]
pub struct Rows {
    /// The field beside the names.
    pub area: Rect,
    /// Height of a row, mm.
    pub pitch: f64,
    /// How many rows there is room for.
    pub shown: usize,
}

impl Rows {
    /// How many of `count` rows have room in a height.
    #[must_use]
    pub fn room(count: usize, height: f64) -> usize {
        (0..count).take_while(|k| f64::from(u16::try_from(*k).unwrap_or(u16::MAX)) + 1.0 <= height / LEAST).count()
    }

    /// Rows with these names over the room for names and field together.
    #[must_use]
    pub fn new(names: &[&str], body: &Rect) -> Rows {
        let shown = Rows::room(names.len(), body.height());
        let count = f64::from(u16::try_from(shown.max(1)).unwrap_or(u16::MAX));
        let pitch = math::min(GREATEST, body.height() / count);
        let widest = names.iter().take(shown).map(|n| width(n, SMALL)).fold(0.0, math::max);
        let column = math::min(widest, MOST * body.width());
        let x0 = body.x0 + column + GAP;
        Rows { area: Rect { x0, y1: body.y0 + pitch * count, ..*body }, pitch, shown }
    }

    /// The middle of a row.
    #[must_use]
    pub fn middle(&self, k: usize) -> f64 {
        self.area.y0 + (f64::from(u16::try_from(k).unwrap_or(u16::MAX)) + 0.5) * self.pitch
    }

    /// Half the height of a bar in a row, at most `most` mm.
    #[must_use]
    pub fn half(&self, most: f64) -> f64 {
        math::min(most, 0.34 * self.pitch)
    }

    /// Letters the names, heavy where asked for, in two lines where one is too short and rows allow.
    pub fn letter(&self, scene: &mut Scene, names: &[&str], left: f64, bold: impl Fn(usize) -> bool) {
        scene.on(Layer::Note);
        let most = if self.pitch >= 2.0 * LINE + 0.4 { 2 } else { 1 };
        for (k, name) in names.iter().enumerate().take(self.shown) {
            let lines = fold(name, self.area.x0 - GAP - left + 0.01, SMALL, most);
            let mut base = self.middle(k) + 0.5 * SMALL - if lines.len() > 1 { 0.5 * LINE } else { 0.0 };
            for line in &lines {
                let text = Text::new(pt(self.area.x0 - GAP, base), line).sized(SMALL).anchored(Anchor::End);
                scene.text(if bold(k) { text.bold() } else { text });
                base += LINE;
            }
        }
    }
}

/// Words for rows that found no room.
#[must_use]
pub fn rest(count: usize, shown: usize) -> Option<String> {
    (count > shown).then(|| format!("and {} more, see the table", count - shown))
}
