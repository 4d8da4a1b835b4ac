//! The papers of a submittal, a file each: what it is called, for whom it is made, and what stands in it. All are made of the
//! same blocks and set by one template; [`ALL`] is the list of them.

mod acceptance_tests;
mod calculation;
mod common;
mod compliance;
mod data_sheet;
mod inspection;
mod installation;
mod maintenance;
mod offer;
mod performance_statement;
mod regulation;
mod scope_split;
mod site;
mod specification;
mod start_up;

use crate::Edition;
use crate::charts::Drawn;
use crate::render::pdf::{Pdf, PdfFault};
use crate::report::{Report, cover, fingerprint};
use std::collections::BTreeMap;
use stillrise_search::Settled;

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
    /// Whether the job has something to say in it.
    pub applies: fn(&Settled) -> bool,
    /// What stands in it.
    make: fn(&mut Report<'_>, &[Drawn]),
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
const EVERYBODY: &[Edition] = &Edition::ALL;

/// All papers, in the order in which they are read.
pub static ALL: &[&Paper] = &[
    &offer::PAPER,
    &performance_statement::PAPER,
    &data_sheet::PAPER,
    &specification::PAPER,
    &scope_split::PAPER,
    &compliance::PAPER,
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
    ALL.iter().copied().filter(move |paper| paper.editions.contains(&edition) && (paper.applies)(settled))
}

/// A paper by its name.
#[must_use]
pub fn named(name: &str) -> Option<&'static Paper> {
    ALL.iter().copied().find(|paper| paper.name == name)
}

/// Typesets a paper. `charts` are those of the job, made once for all papers.
///
/// # Errors
/// A fault of the template.
pub fn typeset(settled: &Settled, edition: Edition, paper: &Paper, charts: &[Drawn]) -> Result<Pdf, PdfFault> {
    let fingerprint = fingerprint(settled);
    let mut report = Report::new(settled, edition);
    (paper.make)(&mut report, charts);
    let mut data = cover::cover(&report, &fingerprint);
    let blocks = core::mem::take(&mut report.out.0);
    let mut files = BTreeMap::new();
    // Only what is shown is handed over.
    for chart in charts.iter().filter(|chart| blocks.iter().any(|block| block["file"] == file(chart))) {
        files.insert(file(chart), chart.svg.as_bytes().to_vec());
    }
    data["blocks"] = serde_json::Value::Array(blocks);
    data["document"] = paper.title.into();
    data["about"] = paper.about.into();
    data["head"] = if paper.head == Head::Cover { "cover" } else { "band" }.into();
    files.insert("data.json".to_owned(), data.to_string().into_bytes());
    let ident = format!("stillrise-{}-{}-{fingerprint}", paper.name, edition.word());
    crate::render::pdf::typeset(TEMPLATE, files, &ident)
}

/// What a paper says, as the blocks that are handed to the typesetter: text without its layout. No chart stands in it.
#[must_use]
pub fn said(settled: &Settled, edition: Edition, paper: &Paper) -> serde_json::Value {
    let mut report = Report::new(settled, edition);
    (paper.make)(&mut report, &[]);
    let mut data = cover::cover(&report, "");
    data["blocks"] = serde_json::Value::Array(core::mem::take(&mut report.out.0));
    data
}

/// What a chart is called among the files of a paper.
pub(crate) fn file(chart: &Drawn) -> String {
    format!("chart-{}.svg", chart.name)
}
