//! A drawing sheet: border, frame, title block, room for drawing, notes and revisions.
//!
//! ```text
//! +-------------------------------+-----------+
//! |                               |           |
//! |            drawing            |   notes   |
//! |                               |           |
//! +--------------+----------------+-----------+
//! |    strip     |        title block         |
//! +--------------+----------------------------+
//! ```

use super::geometry::{Point, Rect, pt};
use super::item::Fill;
use super::lettering::{Anchor, CAPTION, HEADING, Text};
use super::pen::{Layer, Pen};
use super::scene::Scene;
use super::schedule::{Column, Schedule};
use super::text::Table;
use super::title_block::{self, TitleBlock};
use stillrise_design::enquiry::blocks::Paper;
use stillrise_units::System;

/// Size of the paper, lying: ISO 216 trimmed sizes, and those of ASME Y14.1.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SheetSize {
    /// ISO A4, 297 x 210 mm.
    A4,
    /// ISO A3, 420 x 297 mm.
    A3,
    /// ISO A2, 594 x 420 mm.
    A2,
    /// ISO A1, 841 x 594 mm.
    A1,
    /// ANSI A, 11 x 8.5 in.
    AnsiA,
    /// ANSI B, 17 x 11 in.
    AnsiB,
    /// ANSI C, 22 x 17 in.
    AnsiC,
    /// ANSI D, 34 x 22 in.
    AnsiD,
}

impl From<Paper> for SheetSize {
    fn from(paper: Paper) -> Self {
        match paper {
            Paper::A4 => SheetSize::A4,
            Paper::A3 => SheetSize::A3,
            Paper::A2 => SheetSize::A2,
            Paper::A1 => SheetSize::A1,
            Paper::AnsiA => SheetSize::AnsiA,
            Paper::AnsiB => SheetSize::AnsiB,
            Paper::AnsiC => SheetSize::AnsiC,
            Paper::AnsiD => SheetSize::AnsiD,
        }
    }
}

impl SheetSize {
    /// The usual size where a system of units is used.
    #[must_use]
    pub fn of(system: System) -> SheetSize {
        match system {
            System::Us => SheetSize::AnsiB,
            System::Si => SheetSize::A3,
        }
    }

    /// Width and height, mm.
    #[must_use]
    pub fn paper(self) -> (f64, f64) {
        match self {
            SheetSize::A4 => (297.0, 210.0),
            SheetSize::A3 => (420.0, 297.0),
            SheetSize::A2 => (594.0, 420.0),
            SheetSize::A1 => (841.0, 594.0),
            SheetSize::AnsiA => (279.4, 215.9),
            SheetSize::AnsiB => (431.8, 279.4),
            SheetSize::AnsiC => (558.8, 431.8),
            SheetSize::AnsiD => (863.6, 558.8),
        }
    }

    /// As written in the title block.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            SheetSize::A4 => "A4",
            SheetSize::A3 => "A3",
            SheetSize::A2 => "A2",
            SheetSize::A1 => "A1",
            SheetSize::AnsiA => "ANSI A",
            SheetSize::AnsiB => "ANSI B",
            SheetSize::AnsiC => "ANSI C",
            SheetSize::AnsiD => "ANSI D",
        }
    }
}

/// One line of the history.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Revision {
    /// Index: A, B, or 0, 1.
    pub index: String,
    /// Date, as stated by the enquiry.
    pub date: String,
    /// What changed.
    pub text: String,
    /// By whom.
    pub by: String,
}

/// Width of the notes column, mm.
const NOTES: f64 = 100.0;
/// What stamp and scale bar take of the strip's width, and under which width nothing fits beside them, mm.
const BESIDE: f64 = 72.0;
const NARROW: f64 = 130.0;
/// Width of the filing margin and of the other margins, mm (as ISO 5457).
const MARGINS: (f64, f64) = (20.0, 10.0);

/// Where the history of such a sheet begins, beside stamp and scale bar, mm from the left.
const PAST_BAR: f64 = 130.0;
/// Height of the strip at the left of the title block on a sheet that is all drawing, mm.
const STRIP: f64 = 21.0;

/// A sheet to draw on.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// The drawing itself.
    pub scene: Scene,
    /// Inside the frame.
    pub frame: Rect,
    /// Room for views.
    pub drawing: Rect,
    /// Notes and schedules, filled from above.
    pub notes: Column,
    /// Lower left, beside the title block: stamp, scale bar, revisions.
    pub strip: Rect,
    /// On a sheet without a notes column: what is left for drawing between the strip and the height of the title block, at its
    /// left; of no height on a sheet with one.
    pub corner: Rect,
    /// Texts of the title block that were cut because no lettering let them fit.
    pub cut: Vec<String>,
}

impl Sheet {
    /// An empty sheet with frame and title block.
    #[must_use]
    pub fn new(size: SheetSize, block: &TitleBlock, description: &str) -> Sheet {
        let (width, height) = size.paper();
        let frame = Rect { x0: MARGINS.0, y0: MARGINS.1, x1: width - MARGINS.1, y1: height - MARGINS.1 };
        let mut scene = Scene::new(&block.title, description, width, height);
        border(&mut scene, &frame);
        let corner = pt(frame.x1 - title_block::WIDTH, frame.y1 - title_block::HEIGHT);
        let cut = title_block::draw(&mut scene, corner, size, block);
        let divide = frame.x1 - NOTES;
        scene.line(pt(frame.x0, corner.y), corner, Pen::Outline);
        scene.line(pt(divide, frame.y0), pt(divide, corner.y), Pen::Outline);
        let drawing = Rect { x0: frame.x0, y0: frame.y0, x1: divide, y1: corner.y }.grown(-4.0);
        let notes = Rect { x0: divide, y0: frame.y0, x1: frame.x1, y1: corner.y }.grown(-3.5);
        let strip = Rect { x0: frame.x0, y0: corner.y, x1: corner.x, y1: frame.y1 };
        let corner = Rect { y1: strip.y0, ..strip };
        let mut sheet = Sheet { scene, frame, drawing, notes: Column::new(notes), strip, corner, cut };
        sheet.stamps(block);
        sheet.scene.on(Layer::Vessel);
        sheet
    }

    /// An empty sheet that is all drawing but for the title block and a low strip at its left.
    #[must_use]
    pub fn open(size: SheetSize, block: &TitleBlock, description: &str) -> Sheet {
        let (width, height) = size.paper();
        let frame = Rect { x0: MARGINS.0, y0: MARGINS.1, x1: width - MARGINS.1, y1: height - MARGINS.1 };
        let mut scene = Scene::new(&block.title, description, width, height);
        border(&mut scene, &frame);
        let corner = pt(frame.x1 - title_block::WIDTH, frame.y1 - title_block::HEIGHT);
        let cut = title_block::draw(&mut scene, corner, size, block);
        let strip = Rect { x0: frame.x0, y0: frame.y1 - STRIP, x1: corner.x, y1: frame.y1 };
        scene.line(pt(strip.x0, strip.y0), pt(strip.x1, strip.y0), Pen::Thin);
        let drawing = Rect { y1: corner.y, ..frame }.grown(-3.0);
        let left = Rect { x0: frame.x0 + 3.0, y0: corner.y - 3.0, x1: corner.x - 3.0, y1: strip.y0 - 2.0 };
        let none = Rect { x0: frame.x1, y0: frame.y0, x1: frame.x1, y1: frame.y0 };
        let mut sheet = Sheet { scene, frame, drawing, notes: Column::new(none), strip, corner: left, cut };
        sheet.stamps(block);
        sheet.scene.reserve(Rect { x0: corner.x - 1.0, y0: corner.y - 1.0, x1: width, y1: height });
        sheet.scene.reserve(Rect { x1: corner.x, y1: height, ..strip });
        for edge in [
            Rect { x0: 0.0, y0: 0.0, x1: width, y1: frame.y0 },
            Rect { x0: 0.0, y0: 0.0, x1: frame.x0, y1: height },
            Rect { x0: frame.x1, y0: 0.0, x1: width, y1: height },
            Rect { x0: 0.0, y0: frame.y1, x1: width, y1: height },
        ] {
            sheet.scene.reserve(edge);
        }
        sheet.scene.on(Layer::Vessel);
        sheet
    }

    /// Writes number and sheet of a title block that was drawn without them.
    pub fn number(&mut self, block: &TitleBlock) {
        let corner = pt(self.frame.x1 - title_block::WIDTH, self.frame.y1 - title_block::HEIGHT);
        let cut = title_block::number(&mut self.scene, corner, block);
        self.cut.extend(cut);
    }

    /// Stamp and warning at the left of the strip, one over the other where there are both.
    fn stamps(&mut self, block: &TitleBlock) {
        let whole = Rect::new(self.strip.x0 + 3.0, self.strip.y0 + 3.0, 64.0, 15.0);
        let middle = whole.centre().y;
        match (block.warning.is_empty(), block.stamp.is_empty()) {
            (true, true) => {}
            (true, false) => self.stamp(&block.stamp, whole),
            (false, true) => self.stamp(&block.warning, whole),
            (false, false) => {
                self.stamp(&block.warning, Rect { y1: middle, ..whole });
                self.stamp(&block.stamp, Rect { y0: middle, ..whole });
            }
        }
    }

    /// A stamp in a double frame.
    fn stamp(&mut self, text: &str, area: Rect) {
        self.scene.on(Layer::Frame);
        self.scene.rect(&area, Some(Pen::Outline), Fill::None);
        self.scene.rect(&area.grown(-1.0), Some(Pen::Thin), Fill::None);
        let inner = area.grown(-2.0);
        let (lines, size, whole) = title_block::fit(text, &inner, &[5.0, HEADING, 2.5, CAPTION]);
        if !whole {
            self.cut.push(text.to_owned());
        }
        title_block::centred(&mut self.scene, &inner, &lines, size);
    }

    /// The history, newest at the top, at the right of the strip; `false` when older entries were
    /// left out for lack of room (the sheet then says so).
    pub fn revisions(&mut self, revisions: &[Revision]) -> bool {
        let area = self.history();
        let (x, width) = (area.x0, area.width());
        let mut keep = revisions.len();
        loop {
            let mut table = Table::new(["Rev", "Date", "Change", "By"]);
            for r in revisions.iter().rev().take(keep) {
                table.row([&r.index, &r.date, &r.text, &r.by].map(String::as_str));
            }
            if keep < revisions.len() {
                table.row(["", "", "earlier entries: see the record", ""]);
            }
            let schedule = Schedule::new(&table, width, CAPTION).stretched(width);
            let (wide, high) = schedule.extent();
            let fits = high <= area.height() && wide <= width + 1e-6;
            if fits || keep == 0 {
                schedule.draw(&mut self.scene, pt(x, area.y1 - high));
                return keep == revisions.len();
            }
            keep -= 1;
        }
    }

    /// Whether it is all drawing, without a notes column.
    fn is_open(&self) -> bool {
        self.notes.area.width() <= 0.0
    }

    /// Room for the history: beside stamp and scale bar, or between them on paper that is too narrow for that.
    fn history(&self) -> Rect {
        let strip = self.strip;
        if self.is_open() {
            return Rect { x0: strip.x0 + PAST_BAR, ..strip };
        }
        match strip.width() < NARROW {
            true => Rect { x0: strip.x0 + 4.0, y0: strip.y0 + 21.0, x1: strip.x1 - 4.0, y1: strip.y1 - 14.0 },
            false => Rect { x0: strip.x0 + BESIDE, ..strip },
        }
    }

    /// Where a scale bar stands: lower left of the strip, or beside its stamp, with this much room to the right.
    #[must_use]
    pub fn bar(&self) -> (Point, f64) {
        if self.is_open() {
            return (pt(self.strip.x0 + 74.0, self.strip.y1 - 6.0), 44.0);
        }
        (pt(self.strip.x0 + 8.0, self.strip.y1 - 6.0), 52.0)
    }
}

/// Frame line, edge of the paper's border, centring marks and the grid of fields.
fn border(scene: &mut Scene, frame: &Rect) {
    scene.on(Layer::Frame);
    let outer = frame.grown(5.0);
    scene.rect(frame, Some(Pen::Frame), Fill::None);
    scene.rect(&outer, Some(Pen::Thin), Fill::None);
    let middle = frame.centre();
    for (a, b) in [
        (pt(middle.x, outer.y0), pt(middle.x, frame.y0 + 5.0)),
        (pt(middle.x, outer.y1), pt(middle.x, frame.y1)),
        (pt(outer.x0, middle.y), pt(frame.x0 + 5.0, middle.y)),
        (pt(outer.x1, middle.y), pt(frame.x1, middle.y)),
    ] {
        scene.line(a, b, Pen::Frame);
    }
    // Fields of 50 mm from the centring marks outward; what is left goes to the outermost ones.
    let fields = |low: f64, high: f64| -> Vec<f64> {
        let middle = 0.5 * (low + high);
        let half = (0..8_u8).map(|k| 50.0 * f64::from(k)).filter(|d| middle + d < high - 20.0);
        let mut cuts: Vec<f64> = half.flat_map(|d| [middle - d, middle + d]).collect();
        cuts.extend([low, high]);
        cuts.sort_by(f64::total_cmp);
        cuts.dedup();
        cuts
    };
    let across = fields(frame.x0, frame.x1);
    let down = fields(frame.y0, frame.y1);
    let small = |at: Point, text: &str| Text::new(at, text).sized(CAPTION).anchored(Anchor::Middle);
    for (k, pair) in across.windows(2).enumerate() {
        let name = (k + 1).to_string();
        let x = 0.5 * (pair[0] + pair[1]);
        for (y0, y1) in [(outer.y0, frame.y0), (frame.y1, outer.y1)] {
            scene.text(small(pt(x, y0 + 2.5 + 0.5 * CAPTION), &name));
            if k > 0 {
                scene.line(pt(pair[0], y0), pt(pair[0], y1), Pen::Thin);
            }
        }
    }
    for (pair, name) in down.windows(2).zip(["A", "B", "C", "D", "E", "F", "G", "H", "J", "K", "L", "M", "N", "P"]) {
        let y = 0.5 * (pair[0] + pair[1]);
        for (x0, x1) in [(outer.x0, frame.x0), (frame.x1, outer.x1)] {
            scene.text(small(pt(x0 + 2.5, y + 0.5 * CAPTION), name));
            if pair[0] > frame.y0 {
                scene.line(pt(x0, pair[0]), pt(x1, pair[0]), Pen::Thin);
            }
        }
    }
}
