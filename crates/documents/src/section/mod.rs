//! The long section of one unit: a scaled drawing sheet. It draws values that exist and finds none.
//!
//! - `place`: what is drawn from, its scale and place on the sheet. `vessel`, `internals`, `liquids`:
//!   the view. `dimensions`, `levels`, `names`, `balloons`: its marks.
//! - `schedules`, `findings`, `notes`, `title`: the words around it.
//!
//! Outline, levels and zones come from the unit; no kind of vessel is asked for here. The drawing of the way of the water
//! (`profile`) puts the same view among what stands around the unit.

pub(crate) mod balloons;
pub(crate) mod dimensions;
pub mod findings;
mod internals;
pub(crate) mod levels;
mod liquids;
pub(crate) mod names;
mod notes;
pub(crate) mod place;
pub(crate) mod schedules;
mod small;
pub(crate) mod title;
pub(crate) mod vessel;

use crate::Edition;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::lettering::{HEADING, text_width};
use crate::render::scale::Scale;
use crate::render::scene::{CAPTION, Scene, TEXT};
use crate::render::schedule::{Column, Schedule, letters};
use crate::render::sheet::{Revision, Sheet, SheetSize};
use crate::render::svg::{Options, svg};
use crate::render::text::{Table, lines};
use crate::render::title_block::TitleBlock;
use place::Section;
use stillrise_search::Settled;

/// A finished drawing sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// What it shows, as in the title block.
    pub title: String,
    /// Its scale.
    pub scale: Scale,
    /// The sheet.
    pub scene: Scene,
    /// The sheet as SVG.
    pub svg: String,
    /// Every text on the sheet, one a line, in the order of drawing: title block, view, schedules, notes.
    pub sheet_texts: String,
    /// What the set of sheets had no room for; the sheet says so itself.
    pub cut: Vec<String>,
}

/// Distance between schedules of the band under the view, mm.
const BETWEEN: f64 = 5.0;
/// Height of a schedule's heading, mm.
const HEAD: f64 = 7.5;
/// A column narrower than this is not used for notes, mm.
const NARROWEST: f64 = 55.0;
/// Room for the number before an item, mm.
const MARK: f64 = 7.8;
/// Room kept in the notes column for saying what was left out, mm.
pub(crate) const LAST: f64 = 9.0;

/// A schedule with its heading.
type Titled = (String, Table);

/// What a sheet has no room for, and the next one takes over.
#[derive(Debug, Default)]
pub(crate) struct Left {
    /// Schedules.
    schedules: Vec<Titled>,
    /// Findings, each behind its mark.
    findings: Vec<(String, String)>,
    /// Notes, each behind its number.
    notes: Vec<(String, String)>,
}

impl Left {
    /// What is left, by its names.
    pub(crate) fn names(&self) -> Vec<String> {
        let schedules = self.schedules.iter().map(|(title, _)| title.to_lowercase());
        let findings = self.findings.iter().map(|(mark, _)| format!("finding {mark}"));
        schedules.chain(findings).chain(self.notes.iter().map(|(mark, _)| format!("note {mark}"))).collect()
    }

    /// Sets it into a column, under a line that tells where it comes from; answers what that has no room for either.
    pub(crate) fn draw(&self, scene: &mut Scene, column: &mut Column) -> Left {
        let mut left = Left::default();
        if !self.names().is_empty() {
            column.paragraph(scene, "Of sheet 1:");
        }
        for (title, table) in &self.schedules {
            if !titled(scene, column, title, table) {
                left.schedules.push((title.clone(), table.clone()));
            }
        }
        for (heading, items, rest) in [
            ("Findings, continued", &self.findings, &mut left.findings),
            ("Notes, continued", &self.notes, &mut left.notes),
        ] {
            let mut headed = false;
            for (mark, text) in items {
                if holds(column, text, !headed) {
                    headed = headed || column.heading(scene, heading);
                    column.item(scene, mark, text);
                } else {
                    rest.push((mark.clone(), text.clone()));
                }
            }
        }
        left
    }
}

/// The long section of a settled job; `None` without a unit, or with one that no scale brings onto the sheet.
#[must_use]
pub fn section(settled: &Settled, edition: Edition) -> Option<Drawing> {
    Some(drawn(settled, edition)?.0)
}

/// The same, and what the second sheet has to take over.
pub(crate) fn drawn(settled: &Settled, edition: Edition) -> Option<(Drawing, Left)> {
    let size = SheetSize::of(settled.job.enquiry.system());
    let room = Sheet::new(size, &TitleBlock::default(), "").drawing;
    let mut section = Section::new(settled, edition)?;
    let (band, rest) = band(&section, room.width());
    let height = band.iter().map(|(_, table)| HEAD + extent(table, room.width()).1).fold(0.0, f64::max);
    let upper = Rect { y1: room.y1 - height - 3.0, ..room };
    let marks = levels::marks(&section);
    section.fit(&upper, levels::width(&section, &marks))?;

    let block = title::block(&section);
    let mut sheet = Sheet::new(size, &block, &title::description(&section));
    let scene = &mut sheet.scene;
    scene.reserve(Rect { y0: upper.y1, ..room });
    scene.reserve(Rect { x0: room.x1, x1: scene.width, ..room });
    let findings = findings::groups(settled);
    view(&section, scene);
    let lowest = dimensions::draw(&section, scene);
    levels::draw(&section, scene, &marks);
    names::draw(&section, scene);
    balloons::draw(&section, scene, &findings);
    let spare = upper.y1 - lowest - 14.0;
    section.view.title(scene, pt(section.middle(), lowest + 6.5 + (0.3 * spare).clamp(0.0, 5.0)));

    let mut x = room.x0;
    for (title, table) in &band {
        let width = titled_width(title, table, room.width());
        let mut column = Column::new(Rect { x0: x, y0: room.y1 - height, x1: x + width, y1: room.y1 + 1.0 });
        column.heading(scene, title);
        column.table(scene, table);
        x += width + BETWEEN;
    }
    let beside = Rect { x0: x + 2.0, y0: room.y1 - height, ..room };
    let beside = (beside.width() > NARROWEST).then(|| Column::new(beside));
    let left = words(&section, &mut sheet, beside, &rest, &findings);
    let (at, length) = sheet.bar();
    section.view.scale_bar(&mut sheet.scene, at, length, section.system);
    revisions(&mut sheet, &block, settled);
    let sheet_texts = sheet.scene.text_boxes().into_iter().map(|(text, _)| text + "\n").collect();
    let picture = svg(&sheet.scene, &Options { id: "section".to_owned(), ..Options::default() });
    let (title, scale) = (block.title, section.view.scale);
    let cut = cut_titles(&sheet);
    Some((Drawing { title, scale, scene: sheet.scene, svg: picture, sheet_texts, cut }, left))
}

/// What the title block had to shorten, and ends with an ellipsis: a whole text is too long to name.
pub(crate) fn cut_titles(sheet: &Sheet) -> Vec<String> {
    let mut cut: Vec<String> = sheet.cut.iter().map(|_| "a text of the title block".to_owned()).collect();
    cut.dedup();
    cut
}

pub(crate) use internals::every;
pub use small::small;
pub(crate) use vessel::{cut, manways};

/// Draws liquids, vessel and internals of a unit where its view puts them; marks and words around it are the sheet's.
pub(crate) fn view(section: &Section, scene: &mut Scene) {
    liquids::draw(section, scene);
    vessel::draw(section, scene);
    internals::draw(section, scene);
}

/// Schedules that stand side by side under the view, and those that must go to the notes column.
fn band(section: &Section, room: f64) -> (Vec<Titled>, Vec<Titled>) {
    let mut all = vec![("Nozzles".to_owned(), schedules::nozzles(section))];
    all.extend(schedules::oils(section));
    all.extend(schedules::waters(section));
    let (mut band, mut rest, mut taken) = (Vec::new(), Vec::new(), 0.0);
    for (title, table) in all {
        let width = titled_width(&title, &table, room);
        if taken + width <= room + 1e-6 {
            taken += width + BETWEEN;
            band.push((title, table));
        } else {
            rest.push((title, table));
        }
    }
    (band, rest)
}

fn extent(table: &Table, room: f64) -> (f64, f64) {
    Schedule::new(table, room, TEXT).extent()
}

/// The room a schedule takes side by side with others: its heading may be wider than its table.
fn titled_width(title: &str, table: &Table, room: f64) -> f64 {
    extent(table, room).0.max(text_width(title, HEADING))
}

/// Fills the notes column, the strip and the place beside the schedules; answers what is left for the second sheet, and says so.
fn words(
    section: &Section,
    sheet: &mut Sheet,
    beside: Option<Column>,
    rest: &[Titled],
    findings: &[findings::Group],
) -> Left {
    let (scene, notes) = (&mut sheet.scene, &mut sheet.notes);
    let first = Column::new(strip(&sheet.strip));
    let mut left = Left::default();
    let whole = notes.area.y1;
    notes.area.y1 = whole - LAST;
    let parts = schedules::parts(section);
    if !titled(scene, notes, "Parts", &parts) {
        left.schedules.push(("Parts".to_owned(), parts));
    }
    let mut headed = false;
    for group in findings {
        let text = group.text(section.edition);
        if holds(notes, &text, !headed) {
            headed = headed || notes.heading(scene, "Findings");
            notes.item(scene, &group.mark, &text);
        } else {
            left.findings.push((group.mark.clone(), text));
        }
    }
    for (title, table) in rest {
        if !titled(scene, notes, title, table) {
            left.schedules.push((title.clone(), table.clone()));
        }
    }
    let mut places = vec![first, notes.clone()];
    places.extend(beside);
    let texts = notes::notes(section);
    let mut trial = scene.clone();
    let size = if flow(&mut trial, &places, &texts, TEXT).is_empty() { TEXT } else { CAPTION };
    left.notes = flow(scene, &places, &texts, size);
    notes.area.y1 = whole;
    let names = left.names();
    if !names.is_empty() {
        notes.next = whole - LAST + 1.0;
        if !notes.paragraph(scene, &format!("On sheet 2: {}.", names.join(", "))) {
            notes.paragraph(scene, "Further findings, notes and schedules stand on sheet 2.");
        }
    }
    left
}

/// Sets notes in several places in turn; answers those that found no room, each with its number.
pub(crate) fn flow(scene: &mut Scene, places: &[Column], texts: &[String], size: f64) -> Vec<(String, String)> {
    let mut places: Vec<Column> = places.iter().map(|place| Column { size, ..place.clone() }).collect();
    let (mut here, mut headed, mut cut) = (0, false, Vec::new());
    for (k, text) in texts.iter().enumerate() {
        let mark = (k + 1).to_string();
        let fits = |k: usize| places.get(k).is_some_and(|place| holds(place, text, k > here || !headed));
        let Some(found) = (here..places.len()).find(|&k| fits(k)) else {
            cut.push((mark, text.clone()));
            continue;
        };
        headed = headed && found == here;
        here = found;
        let place = &mut places[here];
        headed = headed || place.heading(scene, if here == 0 { "Notes" } else { "Notes, continued" });
        place.item(scene, &mark, text);
    }
    cut
}

/// Whether a column still holds an item, with a heading before it if need be.
fn holds(column: &Column, text: &str, heading: bool) -> bool {
    let folded = lines(text, letters(column.area.width() - MARK, column.size)).len();
    let height = 1.5 * column.size * f64::from(u16::try_from(folded).unwrap_or(u16::MAX));
    height + if heading { HEAD } else { 0.0 } <= column.room()
}

/// Sets a schedule with its heading, unless it finds no room: smaller where it would not fit otherwise, or where numbers would
/// be broken over lines.
fn titled(scene: &mut Scene, notes: &mut Column, title: &str, table: &Table) -> bool {
    let width = notes.area.width();
    let whole = |size: f64| {
        let natural = Schedule::new(table, scene.width, size).widths;
        let set = Schedule::new(table, width, size);
        let broken = natural.iter().zip(&set.widths).enumerate().any(|(c, (n, w))| table.is_number(c) && w + 1e-9 < *n);
        !broken && set.extent().0 <= width + 1e-6 && set.extent().1 + HEAD <= notes.room()
    };
    let usual = notes.size;
    match [usual, CAPTION].into_iter().find(|&size| whole(size)) {
        Some(size) if notes.heading(scene, title) => {
            notes.size = size;
            notes.table(scene, table);
            notes.size = usual;
            true
        }
        _ => false,
    }
}

/// The part of the strip between stamp and history, for notes.
fn strip(whole: &Rect) -> Rect {
    Rect { x0: whole.x0 + 72.0, y0: whole.y0 + 3.0, x1: whole.x1 - 3.0, y1: whole.y1 - 10.0 }
}

/// The history, as far as the enquiry states it: one line.
pub(crate) fn revisions(sheet: &mut Sheet, block: &TitleBlock, settled: &Settled) {
    let head = &settled.job.enquiry.head;
    if head.revision.is_some() || head.date.is_some() {
        let revision = Revision {
            index: block.revision.clone(),
            date: block.date.clone(),
            text: block.status.clone(),
            by: head.prepared_by.0.clone().unwrap_or_default(),
        };
        sheet.revisions(&[revision]);
    }
}

/// Points of a rectangle on paper between two corners in any order.
fn corners(a: Point, b: Point) -> Rect {
    let low = |p: f64, q: f64| if p < q { (p, q) } else { (q, p) };
    let ((x0, x1), (y0, y1)) = (low(a.x, b.x), low(a.y, b.y));
    Rect { x0, y0, x1, y1 }
}
