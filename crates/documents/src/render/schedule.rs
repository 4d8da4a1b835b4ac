//! Tables and running text on a drawing sheet, and the column they are set in.

use super::geometry::{Point, Rect, pt};
use super::item::Fill;
use super::lettering::{ADVANCE, Anchor, HEADING, TEXT, Text, text_width};
use super::pen::{Layer, Pen};
use super::scene::Scene;
use super::text::{Table, lines};

/// Room between a rule and the text beside it, mm.
const PAD: f64 = 1.2;

/// How many characters of a size fit into a width.
#[must_use]
pub fn letters(width: f64, size: f64) -> usize {
    // No sheet holds more than some hundreds; the loop is its own bound.
    let one = ADVANCE * size;
    (1..2000_u16).take_while(|&k| f64::from(k) * one <= width + 1e-9).last().map_or(0, usize::from)
}

/// A table laid out for a width.
#[derive(Debug, Clone, PartialEq)]
pub struct Schedule {
    /// Width of each column, mm.
    pub widths: Vec<f64>,
    /// Rows (the header first, if there is one) of cells of lines.
    rows: Vec<Vec<Vec<String>>>,
    right: Vec<bool>,
    header: bool,
    size: f64,
}

impl Schedule {
    /// Lays a table out: columns as wide as their text needs; where the sum exceeds `width`, the
    /// widest columns are narrowed and wrap.
    #[must_use]
    pub fn new(table: &Table, width: f64, size: f64) -> Schedule {
        let columns = table.columns();
        let mut count = table.widths();
        let cell =
            |letters: &usize| f64::from(u32::try_from(*letters).unwrap_or(u32::MAX)) * ADVANCE * size + 2.0 * PAD;
        // One letter at a time off the widest column, down to a floor at which words still read.
        while count.iter().map(cell).sum::<f64>() > width + 1e-9 {
            match count.iter_mut().max() {
                Some(widest) if *widest > 6 => *widest -= 1,
                _ => break,
            }
        }
        let fold = |c: usize, text: &str| lines(text, count.get(c).copied().unwrap_or(1));
        let mut rows: Vec<Vec<Vec<String>>> = Vec::new();
        if !table.header.is_empty() {
            rows.push((0..columns).map(|c| fold(c, table.header.get(c).map_or("", String::as_str))).collect());
        }
        rows.extend((0..table.rows.len()).map(|r| (0..columns).map(|c| fold(c, &table.cell(r, c))).collect()));
        Schedule {
            widths: count.iter().map(cell).collect(),
            rows,
            right: (0..columns).map(|c| table.is_number(c)).collect(),
            header: !table.header.is_empty(),
            size,
        }
    }

    /// Widens the columns in proportion so that the table takes exactly `width`, if it is narrower.
    #[must_use]
    pub fn stretched(mut self, width: f64) -> Schedule {
        let share = width / self.widths.iter().sum::<f64>();
        if share > 1.0 && share.is_finite() {
            self.widths.iter_mut().for_each(|w| *w *= share);
        }
        self
    }

    /// Width and height on paper, mm.
    #[must_use]
    pub fn extent(&self) -> (f64, f64) {
        (self.widths.iter().sum(), (0..self.rows.len()).map(|r| self.row_height(r)).sum())
    }

    fn row_height(&self, row: usize) -> f64 {
        let most = self.rows.get(row).map_or(1, |r| r.iter().map(Vec::len).fold(1, usize::max));
        let most = f64::from(u16::try_from(most).unwrap_or(u16::MAX));
        (most - 1.0) * 1.5 * self.size + self.size + 2.0 * PAD
    }

    /// Draws it with its upper left corner at a point and returns the area taken.
    pub fn draw(&self, scene: &mut Scene, at: Point) -> Rect {
        let (width, height) = self.extent();
        let area = Rect::new(at.x, at.y, width, height);
        scene.on(Layer::Table);
        let mut y = at.y;
        for (r, row) in self.rows.iter().enumerate() {
            let head = self.header && r == 0;
            let mut x = at.x;
            for ((cell, &width), &right) in row.iter().zip(&self.widths).zip(&self.right) {
                let (edge, anchor) = if right { (x + width - PAD, Anchor::End) } else { (x + PAD, Anchor::Start) };
                let mut base = y + PAD + self.size;
                for line in cell {
                    let text = Text::new(pt(edge, base), line).sized(self.size).anchored(anchor);
                    if !text.text.is_empty() {
                        scene.text(if head { text.bold() } else { text });
                    }
                    base += 1.5 * self.size;
                }
                x += width;
            }
            y += self.row_height(r);
            if r + 1 < self.rows.len() {
                scene.line(pt(at.x, y), pt(at.x + width, y), if head { Pen::Medium } else { Pen::Hatching });
            }
        }
        let mut x = at.x;
        for width in self.widths.iter().take(self.widths.len().saturating_sub(1)) {
            x += width;
            scene.line(pt(x, at.y), pt(x, at.y + height), Pen::Hatching);
        }
        scene.rect(&area, Some(Pen::Medium), Fill::None);
        area
    }
}

/// A column of a sheet that is filled from above. What no longer fits is not drawn and the method
/// answers `false`, so that the caller can go to another sheet instead of losing it.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// The area to fill.
    pub area: Rect,
    /// Where the next thing begins, y in mm.
    pub next: f64,
    /// Height of capitals of running text, mm.
    pub size: f64,
}

impl Column {
    /// An empty column.
    #[must_use]
    pub fn new(area: Rect) -> Column {
        Column { area, next: area.y0, size: TEXT }
    }

    /// Height left, mm.
    #[must_use]
    pub fn room(&self) -> f64 {
        self.area.y1 - self.next
    }

    /// Leaves a gap.
    pub fn skip(&mut self, height: f64) {
        self.next += height;
    }

    /// A heading, underlined.
    pub fn heading(&mut self, scene: &mut Scene, text: &str) -> bool {
        if self.room() < 2.0 * HEADING {
            return false;
        }
        scene.on(Layer::Note).text(Text::new(pt(self.area.x0, self.next + HEADING), text).sized(HEADING).bold());
        let below = self.next + HEADING + 1.6;
        scene.line(pt(self.area.x0, below), pt(self.area.x1, below), Pen::Thin);
        self.next = below + 1.8;
        true
    }

    /// A paragraph.
    pub fn paragraph(&mut self, scene: &mut Scene, text: &str) -> bool {
        self.set(scene, "", text)
    }

    /// A paragraph hanging behind a mark: the number of a note or of a balloon.
    pub fn item(&mut self, scene: &mut Scene, mark: &str, text: &str) -> bool {
        self.set(scene, mark, text)
    }

    fn set(&mut self, scene: &mut Scene, mark: &str, text: &str) -> bool {
        let indent =
            if mark.is_empty() { 0.0 } else { text_width(mark, self.size).max(2.0 * ADVANCE * self.size) + 1.5 };
        let folded = lines(text, letters(self.area.width() - indent, self.size));
        let step = 1.5 * self.size;
        let height = step * f64::from(u16::try_from(folded.len()).unwrap_or(u16::MAX));
        if height > self.room() {
            return false;
        }
        scene.on(Layer::Note);
        if !mark.is_empty() {
            scene.text(Text::new(pt(self.area.x0, self.next + self.size), mark).sized(self.size).bold());
        }
        for (k, line) in folded.iter().enumerate() {
            let y = self.next + self.size + step * f64::from(u16::try_from(k).unwrap_or(u16::MAX));
            scene.text(Text::new(pt(self.area.x0 + indent, y), line).sized(self.size));
        }
        self.next += height + 0.6 * self.size;
        true
    }

    /// A schedule of the column's width.
    pub fn table(&mut self, scene: &mut Scene, table: &Table) -> bool {
        let schedule = Schedule::new(table, self.area.width(), self.size).stretched(self.area.width());
        let (width, height) = schedule.extent();
        if height > self.room() || width > self.area.width() + 1e-6 {
            return false;
        }
        schedule.draw(scene, pt(self.area.x0, self.next));
        self.next += height + self.size;
        true
    }
}
