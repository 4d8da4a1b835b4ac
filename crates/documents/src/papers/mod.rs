//! The papers of a submittal, a file each: what it is called, for whom it is made, and what stands in it. All are made of the
//! same blocks and set by one template; [`ALL`] is the list of them.

mod acceptance_tests;
mod bill_of_materials;
mod calculation;
mod common;
mod compliance;
mod data_sheet;
mod inspection;
mod installation;
pub(crate) mod lacks;
mod letterhead;
mod maintenance;
mod places;

mod offer;
mod performance_statement;
mod questions;
mod regulation;
mod review_sheet;
mod scope_split;
mod site;
mod specification;
mod start_up;

use crate::Edition;
use crate::charts::Drawn;
use crate::render::pdf::{Pdf, PdfFault, Place};
use crate::report::{Report, cover, fingerprint};
pub(crate) use places::{Places, of_rule};
use serde_json::Value;
use std::collections::BTreeMap;
use stillrise_search::Settled;
use stillrise_search::side_by_side::side_by_side;

/// The template; it holds no word of a job.
const TEMPLATE: &str = include_str!("paper.typ");

/// One paper.
pub struct Paper {
    /// Its file's name without the ending, and its name on the command line: `offer-summary`.
    pub name: &'static str,
    /// What stands over it.
    pub title: &'static str,
    /// Who reads it for what, in a sentence.
    pub about: &'static str,
    /// The editions that it is part of.
    pub editions: &'static [Edition],
    /// How it begins.
    pub head: Head,
    /// The papers whose pages it names; these are typeset ahead of it.
    pub refers: &'static [&'static str],
    /// Why a job does not give it; `None` where it has something to say in it.
    pub lacks: fn(&Settled) -> Option<&'static str>,
    /// What stands in it.
    make: fn(&mut Report<'_>, &Beside<'_>),
}

impl Paper {
    /// Whether a job has something to say in it.
    #[must_use]
    pub fn applies(&self, settled: &Settled) -> bool {
        (self.lacks)(settled).is_none()
    }
    /// What its file is called.
    #[must_use]
    pub fn file(&self) -> String {
        format!("{}.pdf", self.name)
    }
}

/// What a paper is made with beside the job.
struct Beside<'a> {
    charts: &'a [Drawn],
    places: &'a Places,
}

/// How a paper begins.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Head {
    /// With a page of its own: result and contents.
    Cover,
    /// With a band across the first page.
    Band,
}

/// Every edition.
pub(crate) const EVERYBODY: &[Edition] = &Edition::ALL;

/// All papers, in the order in which they are read.
pub static ALL: &[&Paper] = &[
    &offer::PAPER,
    &questions::PAPER,
    &performance_statement::PAPER,
    &data_sheet::PAPER,
    &specification::PAPER,
    &scope_split::PAPER,
    &bill_of_materials::PAPER,
    &compliance::PAPER,
    &review_sheet::PAPER,
    &regulation::PAPER,
    &calculation::REPORT,
    &calculation::ANNEX,
    &acceptance_tests::PAPER,
    &inspection::PAPER,
    &installation::PAPER,
    &start_up::PAPER,
    &maintenance::PAPER,
    &calculation::TRAIL,
];

/// The papers of an edition that a job has something to say in.
pub fn of(settled: &Settled, edition: Edition) -> impl Iterator<Item = &'static Paper> {
    ALL.iter().copied().filter(move |paper| paper.editions.contains(&edition) && paper.applies(settled))
}

/// A paper by its name.
#[must_use]
pub fn named(name: &str) -> Option<&'static Paper> {
    ALL.iter().copied().find(|paper| paper.name == name)
}

/// Typesets one paper. `charts` are those of the job, made once for all papers.
///
/// # Errors
/// A fault of the template.
pub fn typeset(settled: &Settled, edition: Edition, paper: &'static Paper, charts: &[Drawn]) -> Result<Pdf, PdfFault> {
    Set::new(settled, edition, charts).paper(paper)
}

/// The papers of one package in the making. What one of them names the pages of is typeset ahead of it, and once.
pub struct Set<'a> {
    settled: &'a Settled,
    edition: Edition,
    charts: &'a [Drawn],
    /// What the sheets of the drawing set are called, where somebody drew it already.
    pub(crate) sheets: Option<Vec<String>>,
    ahead: BTreeMap<&'static str, Pdf>,
    places: Places,
}

impl<'a> Set<'a> {
    /// None of them yet.
    #[must_use]
    pub fn new(settled: &'a Settled, edition: Edition, charts: &'a [Drawn]) -> Self {
        Self { settled, edition, charts, sheets: None, ahead: BTreeMap::new(), places: Places::default() }
    }

    /// Typesets a paper.
    ///
    /// # Errors
    /// A fault of the template.
    pub fn paper(&mut self, paper: &'static Paper) -> Result<Pdf, PdfFault> {
        if let Some(made) = self.ahead.remove(paper.name) {
            return Ok(made);
        }
        for other in of(self.settled, self.edition).filter(|other| paper.refers.contains(&other.name)) {
            if !self.places.knows(other.name) {
                let made = self.paper(other)?;
                self.ahead.insert(other.name, made);
            }
        }
        let made = self.set(paper)?;
        self.places.learn(paper, &made.places);
        Ok(made)
    }

    /// Typesets all papers that name no page of another, side by side, so that each is there when it is asked for.
    ///
    /// # Errors
    /// A fault of the template.
    pub(crate) fn together(&mut self) -> Result<(), PdfFault> {
        let mut alone: Vec<&'static Paper> =
            of(self.settled, self.edition).filter(|one| one.refers.is_empty()).collect();
        // The longest first, so that none of them is left to one thread while the others have nothing to do.
        alone.sort_by_key(|paper| !LONGEST.contains(&paper.name));
        let this = &*self;
        let made = side_by_side(alone.len(), 1, || (), |k, ()| this.set(alone[k]));
        for (paper, made) in alone.into_iter().zip(made) {
            let made = made?;
            self.places.learn(paper, &made.places);
            self.ahead.insert(paper.name, made);
        }
        Ok(())
    }

    fn set(&self, paper: &Paper) -> Result<Pdf, PdfFault> {
        let (settled, edition) = (self.settled, self.edition);
        let fingerprint = fingerprint(settled);
        let mut report = Report::new(settled, edition);
        report.sheets.clone_from(&self.sheets);
        (paper.make)(&mut report, &Beside { charts: self.charts, places: &self.places });
        if paper.head == Head::Band {
            letterhead::notes(&mut report);
        }
        let mut data = cover::cover(&report, &fingerprint);
        let blocks = core::mem::take(&mut report.out.0);
        let mut files = BTreeMap::new();
        // Only what is shown is handed over.
        for chart in self.charts.iter().filter(|chart| blocks.iter().any(|block| block["file"] == file(chart))) {
            files.insert(file(chart), chart.svg.as_bytes().to_vec());
        }
        letterhead::letterhead(&settled.job.enquiry, &mut data, &mut files);
        data["document"] = paper.title.into();
        data["about"] = paper.about.into();
        data["head"] = if paper.head == Head::Cover { "cover" } else { "band" }.into();
        let ident = format!("stillrise-{}-{}-{fingerprint}", paper.name, edition.word());
        // Two pages are what whoever decides will read: the summary is set closer for that, however full its third page is.
        let most = (paper.name == offer::PAPER.name).then_some(2);
        closely(data, blocks, files, &ident, most)
    }
}

/// Typesets a paper, and once more where a page would hold a few lines alone: closer, and without the new page that such a page
/// stands ahead of. What has fewer pages is taken. What still has more pages than `most` is set a third
/// time, with what may stand instead of its longer parts.
fn closely(
    mut data: Value,
    mut blocks: Vec<Value>,
    mut files: BTreeMap<String, Vec<u8>>,
    ident: &str,
    most: Option<usize>,
) -> Result<Pdf, PdfFault> {
    let mut typeset = |data: &mut Value, blocks: &[Value], is_close: bool| {
        data["close"] = is_close.into();
        data["blocks"] = blocks.into();
        files.insert("data.json".to_owned(), data.to_string().into_bytes());
        crate::render::pdf::lay(TEMPLATE, files.clone())
    };
    let first = typeset(&mut data, &blocks, false)?;
    let ends: Vec<&Place> = first.places.iter().filter(|place| place.what == END).collect();
    let too_many = most.is_some_and(|most| first.pages > most);
    let is_short: Vec<bool> = ends.iter().map(|end| end.page > 1 && (too_many || end.down < FEW)).collect();
    if !is_short.contains(&true) || first.pages > LONG {
        return first.pdf(ident);
    }
    let mut run = 0;
    blocks.retain(|block| {
        let is_break = block["t"] == "break";
        run += usize::from(is_break);
        !is_break || block["keep"] == true || is_short.get(run - 1) != Some(&true)
    });
    let second = typeset(&mut data, &blocks, true)?;
    if most.is_some_and(|most| second.pages > most) {
        blocks.retain(|block| block["spare"] != true);
        for block in &mut blocks {
            if let Some(instead) = block.get("instead").cloned() {
                block["s"] = instead;
            }
        }
        return typeset(&mut data, &blocks, true)?.pdf(ident);
    }
    if second.pages < first.pages { second.pdf(ident) } else { first.pdf(ident) }
}

/// What the template marks the end of the paper by, and what stands ahead of a new page.
const END: &str = "end of a run of pages";
/// How far down a page goes that holds a few lines alone.
const FEW: f64 = 0.22;
/// The papers that take about as long as all others together.
const LONGEST: [&str; 2] = [calculation::REPORT.name, calculation::TRAIL.name];
/// Pages from which a paper is typeset once only: it takes its time, and few lines are a small share of it.
const LONG: usize = 12;

/// What a paper says, as the blocks that are handed to the typesetter: text without its layout. No chart stands in it.
#[must_use]
pub fn said(settled: &Settled, edition: Edition, paper: &Paper) -> Value {
    let mut report = Report::new(settled, edition);
    (paper.make)(&mut report, &Beside { charts: &[], places: &Places::default() });
    let mut data = cover::cover(&report, "");
    data["blocks"] = Value::Array(core::mem::take(&mut report.out.0));
    data
}

/// What a chart is called among the files of a paper.
pub(crate) fn file(chart: &Drawn) -> String {
    format!("chart-{}.svg", chart.name)
}
