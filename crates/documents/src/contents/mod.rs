//! What a package consists of: the one list that it is made by, and that tells which documents there are, for whom, and what
//! each answers.

mod told;
mod words;

pub use told::{Told, told};
pub use words::{list_json, list_markdown, list_text, told_json, told_text};

use crate::charts::Drawn;
use crate::drawings::Drawing;
use crate::exchange;
use crate::package::{MANIFEST, manifest, pretty};
use crate::papers::lacks::{self, Lacks};
use crate::papers::{self, Paper};
use crate::{Edition, company};
use std::collections::BTreeMap;
use stillrise_search::Settled;
use stillrise_search::side_by_side::{both, side_by_side};

/// Names and bytes.
type Files = Vec<(String, Vec<u8>)>;

/// What is done one after the other.
pub(crate) const STEPS: [&str; 4] = ["papers", "drawings and model", "data for programs", "list with hashes"];
const PAPERS: &str = STEPS[0];
const DRAWINGS: &str = STEPS[1];
const DATA: &str = STEPS[2];
const LIST: &str = STEPS[3];

/// For the authority and ourselves: a client reads the papers.
const WHO_CHECKS: &[Edition] = &[Edition::Regulator, Edition::Us];

/// One document, or files of one kind.
pub struct Document {
    /// Its name on the command line.
    pub name: &'static str,
    /// What it is called.
    pub title: &'static str,
    /// Who uses it for what, in a sentence.
    pub about: &'static str,
    /// The editions that it is part of.
    pub editions: &'static [Edition],
    /// Its file; with a star where there are several.
    pub file: String,
    /// Among which of the steps it is made.
    pub step: &'static str,
    lacks: Lacks,
    make: Make,
}

/// How its files are made.
#[derive(Clone, Copy)]
enum Make {
    Paper(&'static Paper),
    Other(fn(&Making<'_>) -> Result<Files, String>),
}

impl Document {
    /// Why a job does not give it; `None` where it does.
    #[must_use]
    pub fn lacks(&self, settled: &Settled) -> Option<&'static str> {
        (self.lacks)(settled)
    }
    /// Makes its files; why not, where that fails.
    pub(crate) fn make(&self, making: &mut Making<'_>) -> Result<Files, String> {
        match self.make {
            Make::Paper(paper) => {
                if making.papers.sheets.is_none() {
                    making.begin()?;
                }
                let made = making.papers.paper(paper).map_err(|fault| fault.to_string())?;
                Ok(vec![(self.file.clone(), made.bytes)])
            }
            Make::Other(make) => match making.ahead.remove(self.name) {
                Some(made) => made,
                None => make(making),
            },
        }
    }
}

/// All documents, in the order in which they are listed and made.
#[must_use]
pub fn all() -> Vec<Document> {
    let papers = papers::ALL.iter().map(|paper| Document {
        name: paper.name,
        title: paper.title,
        about: paper.about,
        editions: paper.editions,
        file: paper.file(),
        step: PAPERS,
        lacks: paper.lacks,
        make: Make::Paper(paper),
    });
    papers.chain(drawn()).chain(data()).collect()
}

/// The documents of an edition that a job gives.
pub fn of(settled: &Settled, edition: Edition) -> impl Iterator<Item = Document> {
    all().into_iter().filter(move |one| one.editions.contains(&edition) && one.lacks(settled).is_none())
}

/// What is made beside the papers; each with its name, title, file, step, and who uses it for what.
fn other(
    [name, title, file, step, about]: [&'static str; 5],
    editions: &'static [Edition],
    lacks: Lacks,
    make: fn(&Making<'_>) -> Result<Files, String>,
) -> Document {
    Document { name, title, about, editions, file: file.to_owned(), step, lacks, make: Make::Other(make) }
}

/// Drawings, model and schedules.
fn drawn() -> [Document; 6] {
    [
        other(
            [
                "drawings",
                "Drawings",
                "drawings.pdf",
                DRAWINGS,
                "For whoever checks, makes and sets the unit: all sheets at true size, for paper.",
            ],
            papers::EVERYBODY,
            lacks::unit,
            |making| making.sheets(),
        ),
        other(
            [
                "drawing-pictures",
                "Drawings as pictures",
                "drawings/*.svg",
                DRAWINGS,
                "For whoever shows a sheet elsewhere: each as a picture that looks the same on every machine.",
            ],
            papers::EVERYBODY,
            lacks::unit,
            |making| Ok(making.each("svg", |drawing| Some(exchange::picture(drawing)))),
        ),
        other(
            [
                "drawing-exchange",
                "Drawings for drafting programs",
                "drawings/*.dxf",
                DRAWINGS,
                "For whoever draws the surroundings: each sheet as DXF, at the size of the thing itself.",
            ],
            papers::EVERYBODY,
            lacks::unit,
            |making| {
                let system = making.settled.job.enquiry.system();
                Ok(making.each("dxf", |drawing| exchange::drafting(drawing, system)))
            },
        ),
        other(
            [
                "model",
                "Model in space",
                "model.glb",
                DRAWINGS,
                "For whoever places the unit among other things, or looks at it from all sides: glTF, in metres.",
            ],
            papers::EVERYBODY,
            lacks::unit,
            |making| {
                let model = crate::model::model(making.settled, making.edition);
                Ok(model.into_iter().map(|bytes| ("model.glb".to_owned(), bytes)).collect())
            },
        ),
        other(
            [
                "schedules",
                "Schedules as a workbook",
                "schedules.xlsx",
                DRAWINGS,
                "For whoever reckons on: parts, nozzles, levels, weights, bill of materials, cases, limits and inputs as numbers.",
            ],
            papers::EVERYBODY,
            lacks::nothing,
            |making| Ok(vec![("schedules.xlsx".to_owned(), exchange::schedules(making.settled, making.edition)?)]),
        ),
        other(
            [
                "charts",
                "Charts as pictures",
                "charts/*.svg",
                DRAWINGS,
                "For whoever shows a chart of the report elsewhere: what leaves stage by stage, against flow, temperature and droplets, and what is uncertain.",
            ],
            WHO_CHECKS,
            lacks::prediction,
            |making| {
                Ok(making
                    .charts
                    .iter()
                    .map(|c| (format!("charts/{}.svg", c.name), c.svg.clone().into_bytes()))
                    .collect())
            },
        ),
    ]
}

/// What programs read, and what the package was made from.
fn data() -> [Document; 5] {
    [
        other(
            [
                "trail-text",
                "Trail as text",
                "data/trail.txt",
                DATA,
                "For whoever compares two runs: every value with formula, inputs and origin, one a line.",
            ],
            WHO_CHECKS,
            lacks::trail,
            |making| Ok(vec![("data/trail.txt".to_owned(), crate::trail::trail(making.settled, 140).into_bytes())]),
        ),
        other(
            [
                "result",
                "Result for programs",
                "data/result.json",
                DATA,
                "For programs: everything that was found, as JSON; its schema is told by stillrise schema result.",
            ],
            WHO_CHECKS,
            lacks::nothing,
            |making| {
                let result = crate::result::result(making.settled, making.edition);
                Ok(vec![("data/result.json".to_owned(), pretty(&result))])
            },
        ),
        other(
            [
                "drawing-texts",
                "Texts of the drawings",
                "data/drawings.txt",
                DATA,
                "For whoever compares two issues of the drawings: every text on every sheet.",
            ],
            WHO_CHECKS,
            lacks::unit,
            |making| {
                let texts = making.drawings.iter().map(|d| format!("{}\n\n{}\n", d.title, d.sheet_texts));
                Ok(vec![("data/drawings.txt".to_owned(), texts.collect::<String>().into_bytes())])
            },
        ),
        other(
            [
                "inputs",
                "Inputs",
                "inputs/*",
                DATA,
                "For ourselves: the enquiry and the files that it names, so that the package can be made again from itself.",
            ],
            &[Edition::Us],
            lacks::nothing,
            |making| Ok(making.inputs.iter().map(|(name, bytes)| (format!("inputs/{name}"), bytes.clone())).collect()),
        ),
        other(
            [
                "manifest",
                "List of files",
                MANIFEST,
                LIST,
                "For whoever must know that nothing was changed: every file with its SHA-256, and what it was made from.",
            ],
            papers::EVERYBODY,
            lacks::nothing,
            |making| Ok(vec![(MANIFEST.to_owned(), manifest(making))]),
        ),
    ]
}

/// A package in the making.
pub(crate) struct Making<'a> {
    pub(crate) settled: &'a Settled,
    pub(crate) edition: Edition,
    pub(crate) inputs: &'a [(String, Vec<u8>)],
    charts: &'a [Drawn],
    papers: papers::Set<'a>,
    drawings: &'a [Drawing],
    /// What was made beside the papers, by its name.
    ahead: BTreeMap<&'static str, Result<Files, String>>,
    /// What is made so far.
    pub(crate) files: Files,
}

impl<'a> Making<'a> {
    pub(crate) fn new(
        settled: &'a Settled,
        edition: Edition,
        inputs: &'a [(String, Vec<u8>)],
        charts: &'a [Drawn],
        drawings: &'a [Drawing],
    ) -> Self {
        let papers = papers::Set::new(settled, edition, charts);
        Self { settled, edition, inputs, charts, papers, drawings, ahead: BTreeMap::new(), files: Vec::new() }
    }

    /// Typesets the papers that need no other's pages, and beside them makes what is drawn.
    fn begin(&mut self) -> Result<(), String> {
        let mut papers = papers::Set::new(self.settled, self.edition, self.charts);
        papers.sheets = Some(crate::drawings::kinds_of(self.drawings));
        let this = &*self;
        let drawn: Vec<Document> =
            of(this.settled, this.edition).filter(|document| document.step == DRAWINGS).collect();
        let (typeset, made) = both(
            || papers.together(),
            || {
                side_by_side(
                    drawn.len(),
                    1,
                    || (),
                    |k, ()| match drawn[k].make {
                        Make::Other(make) => Some((drawn[k].name, make(this))),
                        Make::Paper(_) => None,
                    },
                )
            },
        );
        typeset.map_err(|fault| fault.to_string())?;
        self.ahead = made.into_iter().flatten().collect();
        self.papers = papers;
        Ok(())
    }

    /// All sheets as one PDF.
    fn sheets(&self) -> Result<Files, String> {
        let set = self.drawings;
        let (Some(first), scenes) = (set.first(), set.iter().map(|d| &d.scene).collect::<Vec<_>>()) else {
            return Ok(Vec::new());
        };
        let ident = format!("stillrise-drawings-{}-{}", self.edition.word(), crate::report::fingerprint(self.settled));
        let title = first.title.split(", general").next().unwrap_or(&first.title);
        let about = company::about(&self.settled.job.enquiry);
        let pdf = crate::render::pdf::sheets(&scenes, title, &about, &ident).map_err(|fault| fault.to_string())?;
        Ok(vec![("drawings.pdf".to_owned(), pdf.bytes)])
    }

    /// A file of each sheet.
    fn each(&self, ending: &str, make: impl Fn(&Drawing) -> Option<Vec<u8>>) -> Files {
        let all = self.drawings.iter().enumerate();
        all.filter_map(|(k, drawing)| Some((sheet_file(k, drawing, ending), make(drawing)?))).collect()
    }
}

/// What the file of a sheet is called.
fn sheet_file(k: usize, drawing: &Drawing, ending: &str) -> String {
    format!("drawings/{}-{}.{ending}", k + 1, drawing.name)
}
