//! The drawing set of one unit: sheets that are numbered through, each made for a question of its own.
//!
//! - `arrangement`: what it looks like from all sides, overall, its nozzles and levels. `layout`: where its views stand.
//! - `internals`, `details`: what stands inside it, dimensioned. `site`: from the surfaces to the outfall. `setting`: what it
//!   stands on or lies in, with its loads. `diagram`, `symbols`: piping and instruments. `flow`: catchment and flow, for who permits the discharge. `words`: schedules, parts, scope and notes, over as many sheets as they
//!   need.
//!
//! The views are those of `section` and `views`; no kind of vessel is asked for here, and no number is found here.

mod arrangement;
mod details;
mod diagram;
mod fabrication;
mod flow;
mod internals;
mod layout;
pub(crate) mod levels;
mod loads;
mod lugs;
mod scope;
mod separator;
mod setting;
mod site;
mod support;
mod symbols;
pub(crate) mod tables;
mod vents;
mod words;

pub(crate) use lugs::stations as lugs_at;
pub(crate) use support::{base, depth, legs};

use crate::Edition;
use crate::render::scale::Scale;
use crate::render::scene::Scene;
use crate::render::sheet::{Revision, Sheet, SheetSize};
use crate::render::svg::{Options, svg};
use crate::render::title_block::TitleBlock;
use crate::section::place::Section;
use crate::section::{notes, title};
use stillrise_search::Settled;

/// A finished drawing sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// What a file of it is called: `general-arrangement`.
    pub name: String,
    /// What it shows, as in the title block.
    pub title: String,
    /// What kind of sheet it is: `General arrangement`.
    pub kind: &'static str,
    /// Its scale, where it has one.
    pub scale: Option<Scale>,
    /// The sheet.
    pub scene: Scene,
    /// The sheet as SVG.
    pub svg: String,
    /// Every text on the sheet, one a line, in the order of drawing.
    pub sheet_texts: String,
    /// Texts of the title block that no lettering let fit; they end with an ellipsis.
    pub cut: Vec<String>,
}

/// A sheet that is drawn but for its number.
struct Made {
    name: &'static str,
    kind: &'static str,
    scale: Option<Scale>,
    sheet: Sheet,
}

/// The set of a settled job; nothing without a unit, or with one that no scale brings onto a sheet.
#[must_use]
pub fn set(settled: &Settled, edition: Edition) -> Vec<Drawing> {
    let Some(section) = Section::new(settled, edition) else { return Vec::new() };
    let all = made(settled, edition, &section);
    let count = all.len();
    let number = |k: usize| (u16::try_from(k + 1).unwrap_or(u16::MAX), u16::try_from(count).unwrap_or(u16::MAX));
    all.into_iter().enumerate().map(|(k, made)| finished(made, number(k), &section, settled)).collect()
}

/// What the sheets of the set are called, each once, in their order: for who names them without showing them.
#[must_use]
pub fn kinds(settled: &Settled, edition: Edition) -> Vec<String> {
    let Some(section) = Section::new(settled, edition) else { return Vec::new() };
    let mut all: Vec<String> = made(settled, edition, &section).iter().map(|made| made.kind.to_lowercase()).collect();
    all.dedup();
    all
}

/// The same of a set that was drawn.
#[must_use]
pub fn kinds_of(set: &[Drawing]) -> Vec<String> {
    let mut all: Vec<String> = set.iter().map(|d| d.kind.to_lowercase()).collect();
    all.dedup();
    all
}

/// All sheets, drawn but for their numbers.
fn made(settled: &Settled, edition: Edition, section: &Section) -> Vec<Made> {
    let size = size(section);
    let Some((arrangement, carried)) = arrangement::sheet(settled, edition, size) else { return Vec::new() };
    let overall = arrangement.scale;
    let mut all = vec![arrangement];
    all.extend(internals::sheets(settled, edition, size));
    all.extend(setting::sheet(settled, edition, size));
    all.extend(site::sheet(section, size));
    all.extend(diagram::sheet(section, size));
    // Who orders the unit knows his yard; who permits the discharge does not.
    if edition != Edition::Client {
        all.extend(flow::sheet(section, size));
    }
    // Notes tell how much a line of a view stands for.
    let scaled = |scale: Option<Scale>| {
        let view = section.view.clone();
        Section { view: crate::render::scale::View { scale: scale.unwrap_or(view.scale), ..view }, ..*section }
    };
    let within = all.get(1).and_then(|made| made.scale).or(overall);
    let mut notes = notes::notes(&scaled(within));
    notes.push(tables::nozzle_note(section));
    notes.extend(crate::views::notes(&scaled(overall)));
    notes.extend(crate::company::company(&settled.job.enquiry).notes);
    all.extend(words::sheets(section, size, &carried, &notes));
    all
}

/// The paper: what the company's settings say where a set goes onto it, else what is usual.
fn size(s: &Section) -> SheetSize {
    let asked = crate::company::sheet_size(&s.settled.job.enquiry);
    let usual = SheetSize::of(s.system);
    if asked.paper().0 + 20.0 < usual.paper().0 { usual } else { asked }
}

/// Numbers a sheet and writes it out.
fn finished(made: Made, number: (u16, u16), section: &Section, settled: &Settled) -> Drawing {
    let Made { name, kind, scale, mut sheet } = made;
    let mut block = title::block(section);
    block.number = crate::company::drawing_number(&settled.job.enquiry, &number.0.to_string());
    block.sheet = number;
    sheet.number(&block);
    history(&mut sheet, &block, settled);
    let sheet_texts = sheet.scene.text_boxes().into_iter().map(|(text, _)| text + "\n").collect();
    let options = Options { id: format!("sheet-{}", number.0), ..Options::default() };
    let picture = svg(&sheet.scene, &options);
    sheet.scene.title = format!("{} {}", block.number, kind).trim().to_owned();
    let mut cut: Vec<String> = sheet.cut.iter().map(|_| "a text of the title block".to_owned()).collect();
    cut.dedup();
    let title = format!("{}, {}", block.title, kind.to_lowercase());
    Drawing { name: name.to_owned(), title, kind, scale, scene: sheet.scene, svg: picture, sheet_texts, cut }
}

/// The title block of a sheet, but for its number.
fn block(s: &Section, kind: &str, scale: Option<Scale>) -> TitleBlock {
    let mut block = title::block(s);
    block.subtitle = block.subtitle.replacen(crate::section::place::NAME, kind, 1);
    block.kind = kind.to_owned();
    block.scale = scale.map_or("none", |scale| scale.text()).to_owned();
    block.number = String::new();
    block.sheet = (0, 0);
    block
}

/// The history, as far as the enquiry states it: one line.
fn history(sheet: &mut Sheet, block: &TitleBlock, settled: &Settled) {
    let head = &settled.job.enquiry.head;
    if head.revision.is_some() || head.date.is_some() {
        let revision = Revision {
            index: block.revision.clone(),
            date: block.date.clone(),
            text: block.status.clone(),
            by: if block.drawn.is_empty() {
                head.prepared_by.0.clone().unwrap_or_default()
            } else {
                block.drawn.clone()
            },
        };
        sheet.revisions(&[revision]);
    }
}
