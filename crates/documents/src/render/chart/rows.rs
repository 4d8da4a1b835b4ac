//! Rows under one another with their names at the left and values at the right: what bars and rungs stand on.

use super::label::{LINE, SMALL, cut, fold, height, letters};
use super::plot::{BELOW, GAP, NAMES, columns, head};
use crate::render::geometry::{Rect, pt};
use crate::render::lettering::Anchor;
use crate::render::pen::Layer;
use crate::render::scene::Scene;
use stillrise_units::math;

/// Least height of a row, mm.
const LEAST: f64 = 4.6;
/// Height that suits a row of two lines, and one of three, mm.
const FAIR: (f64, f64) = (7.4, 10.4);
/// Room for names on paper of a common width, mm.
const COMMON: f64 = 38.0;
/// Greatest height of a row, mm.
const GREATEST: f64 = 12.0;
/// Heavy lettering is so much wider than light, at the most.
const HEAVY: f64 = 1.15;

/// Rows laid out over a field.
#[derive(Debug, Clone, PartialEq)]
pub struct Rows {
    /// The field beside the names, under the heads.
    pub area: Rect,
    /// Where names begin and values end.
    pub ends: (f64, f64),
    /// Height of a row, mm.
    pub pitch: f64,
    /// How many rows there is room for.
    pub shown: usize,
}

impl Rows {
    /// The height of a chart of so many rows, of two lines or of three, and a key of this height, mm.
    #[must_use]
    pub fn fair(count: usize, long: bool, keys: f64) -> f64 {
        let count = f64::from(u16::try_from(count.clamp(1, 12)).unwrap_or(12));
        3.0 + NAMES + if long { FAIR.1 } else { FAIR.0 } * count + BELOW + keys
    }

    /// Whether any of these names takes three lines on paper of a common width.
    #[must_use]
    pub fn long<'n>(names: impl IntoIterator<Item = &'n str>) -> bool {
        names.into_iter().any(|name| fold(name, COMMON, SMALL, 9).len() > 2)
    }

    /// How many of `count` rows have room in a height.
    #[must_use]
    pub fn room(count: usize, height: f64) -> usize {
        let room = height - NAMES;
        (0..count).take_while(|k| f64::from(u16::try_from(*k).unwrap_or(u16::MAX)) + 1.0 <= room / LEAST).count()
    }

    /// So many rows over the room for heads, names, field and values together.
    #[must_use]
    pub fn new(count: usize, body: &Rect) -> Rows {
        let shown = Rows::room(count, body.height());
        let rows = f64::from(u16::try_from(shown.max(1)).unwrap_or(u16::MAX));
        let top = body.y0 + NAMES;
        let pitch = math::min(GREATEST, (body.y1 - top) / rows);
        let (x0, x1) = columns(body);
        let area = Rect { x0, y0: top, x1, y1: top + pitch * rows };
        Rows { area, ends: (body.x0, body.x1), pitch, shown }
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

    /// How many lines of lettering a row takes.
    fn lines(&self) -> usize {
        (2..=3).rev().find(|lines| self.pitch >= height(*lines) + 1.2).unwrap_or(1)
    }

    /// Letters the names, heavy where asked for, in two lines where one is too short and rows allow.
    pub fn letter(&self, scene: &mut Scene, names: &[&str], bold: impl Fn(usize) -> bool) {
        let room = self.area.x0 - GAP - self.ends.0;
        for (k, name) in names.iter().enumerate().take(self.shown) {
            let lines = fold(name, if bold(k) { room / HEAVY } else { room }, SMALL, self.lines());
            self.write(scene, k, &lines, (self.area.x0 - GAP, Anchor::End), bold(k));
        }
    }

    /// Letters a value at the right of a row, in two lines where one is too short and rows allow.
    pub fn value(&self, scene: &mut Scene, k: usize, text: &str) {
        let lines = fold(text, self.ends.1 - self.area.x1 - GAP, SMALL, self.lines());
        self.write(scene, k, &lines, (self.area.x1 + GAP, Anchor::Start), false);
    }

    fn write(&self, scene: &mut Scene, k: usize, lines: &[String], (x, anchor): (f64, Anchor), bold: bool) {
        scene.on(Layer::Note);
        let mut base = self.middle(k) - 0.5 * height(lines.len()) + SMALL;
        for line in lines {
            let text = letters(pt(x, base), line).anchored(anchor);
            scene.text(if bold { text.bold() } else { text });
            base += LINE;
        }
    }

    /// Letters heads over the columns at the left and at the right.
    pub fn heads(&self, scene: &mut Scene, left: &str, right: &str) {
        let y = self.area.y0 - 1.6;
        head(scene, pt(self.area.x0 - GAP, y), left, self.area.x0 - GAP - self.ends.0, Anchor::End);
        head(
            scene,
            pt(self.area.x1 + GAP, y),
            &cut(right, 400.0, SMALL),
            self.ends.1 - self.area.x1 - GAP,
            Anchor::Start,
        );
    }
}

/// Words for rows that found no room.
#[must_use]
pub fn rest(count: usize, shown: usize) -> Option<String> {
    (count > shown).then(|| format!("and {} more, see the table", count - shown))
}
