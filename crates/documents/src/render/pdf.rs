//! Pages as tagged PDF: typst markup with its files, or whole drawing sheets at true size.
//!
//! Nothing comes from outside: no clock, no system fonts, no packages, only the files given. A
//! person's text belongs into a data file that the markup reads, `json("data.json")`, and never
//! into the markup, where its characters would be commands.

use super::scene::Scene;
use super::svg;
use core::fmt;
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::OnceLock;
use std::sync::atomic::{AtomicUsize, Ordering};
use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Content, Datetime, Duration, NativeElement, Smart, Value};
use typst::introspection::{Introspector, MetadataElem};
use typst::model::HeadingElem;
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World, WorldExt};
use typst_kit::fonts::FontStore;
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

/// Name under which the markup itself is known.
const MAIN: &str = "main.typ";

/// Why there is no PDF.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PdfFault {
    /// What is wrong.
    pub message: String,
    /// File, line and column, as `main.typ:3:14`; empty when it concerns the whole document.
    pub place: String,
    /// What may help.
    pub hints: Vec<String>,
    /// How many more faults there were.
    pub more: usize,
}

impl fmt::Display for PdfFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.place.is_empty() {
            write!(f, "{}: ", self.place)?;
        }
        f.write_str(&self.message)?;
        for hint in &self.hints {
            write!(f, "; {hint}")?;
        }
        if self.more > 0 {
            write!(f, " (and {} more)", self.more)?;
        }
        Ok(())
    }
}

impl core::error::Error for PdfFault {}

/// A finished PDF.
#[derive(Debug, Clone, PartialEq)]
pub struct Pdf {
    /// The file.
    pub bytes: Vec<u8>,
    /// What keeps it from PDF/UA-1, if anything: an image without alternative text is a mistake of
    /// ours, a letter that no font holds is the reader's text. It is a tagged PDF in any case.
    pub inaccessible: Option<PdfFault>,
    /// Number of pages.
    pub pages: usize,
    /// Its headings, by their text, and what the markup marked by `metadata`, by that word; in the order of pages.
    pub places: Vec<Place>,
    /// Warnings of the typesetter.
    pub warnings: Vec<PdfFault>,
}

/// Where something stands in a finished PDF.
#[derive(Debug, Clone, PartialEq)]
pub struct Place {
    /// What stands there.
    pub what: String,
    /// Its page, from 1.
    pub page: usize,
    /// How far down on it, as a share of its height.
    pub down: f64,
}

/// Typesets markup with its files; `ident` names the document stably, so that the same input
/// gives the same bytes.
///
/// # Errors
/// The first fault of the markup, with its place.
pub fn pdf(main: &str, files: BTreeMap<String, Vec<u8>>, ident: &str) -> Result<Vec<u8>, PdfFault> {
    typeset(main, files, ident).map(|pdf| pdf.bytes)
}

/// As [`pdf`], with what is to be said about the result.
///
/// # Errors
/// The first fault of the markup, with its place.
pub fn typeset(main: &str, files: BTreeMap<String, Vec<u8>>, ident: &str) -> Result<Pdf, PdfFault> {
    lay(main, files)?.pdf(ident)
}

/// Pages that are laid out and not yet written, which takes as long again.
pub(crate) struct Laid {
    world: Desk,
    document: PagedDocument,
    warnings: Vec<PdfFault>,
    /// Number of pages.
    pub(crate) pages: usize,
    /// As in [`Pdf`].
    pub(crate) places: Vec<Place>,
}

/// Documents laid out since the program began.
static LAID: AtomicUsize = AtomicUsize::new(0);
/// Documents after which what none of them used is let go.
const KEPT: usize = 8;

/// Lays out markup with its files.
///
/// # Errors
/// The first fault of the markup, with its place.
pub(crate) fn lay(main: &str, files: BTreeMap<String, Vec<u8>>) -> Result<Laid, PdfFault> {
    let world = Desk::new(main, files)?;
    let compiled = typst::compile::<PagedDocument>(&world);
    // What later documents may use again stays for a few runs; a server must not grow for ever. All that is kept is gone through
    // for that, so not at every run.
    if LAID.fetch_add(1, Ordering::Relaxed).is_multiple_of(KEPT) {
        typst::comemo::evict(1);
    }
    let document = compiled.output.map_err(|faults| world.fault(&faults))?;
    let warnings = compiled.warnings.iter().map(|w| world.fault(core::slice::from_ref(w))).collect();
    let (pages, places) = (document.pages().len(), places(&document));
    Ok(Laid { world, document, warnings, pages, places })
}

impl Laid {
    /// Writes the pages; `ident` names the document stably, so that the same input gives the same bytes.
    ///
    /// # Errors
    /// What the writer cannot say in a PDF.
    pub(crate) fn pdf(self, ident: &str) -> Result<Pdf, PdfFault> {
        let Laid { world, document, warnings, pages, places } = self;
        let options = |standards| PdfOptions {
            ident: Smart::Custom(ident.to_owned()),
            creator: Smart::Custom(Some("Stillrise".to_owned())),
            standards,
            ..PdfOptions::default()
        };
        let strict = PdfStandards::new(&[PdfStandard::Ua_1]).unwrap_or_default();
        let (mut bytes, inaccessible) = match typst_pdf::pdf(&document, &options(strict)) {
            Ok(bytes) => (bytes, None),
            Err(faults) => {
                let why = world.fault(&faults);
                let plain = typst_pdf::pdf(&document, &options(PdfStandards::default()));
                (plain.map_err(|faults| world.fault(&faults))?, Some(why))
            }
        };
        unsuspected(&mut bytes);
        Ok(Pdf { bytes, inaccessible, pages, places, warnings })
    }
}

/// Headings and marks with their pages.
fn places(document: &PagedDocument) -> Vec<Place> {
    let known = document.introspector();
    let place = |element: &Content, what: String| {
        let position = known.position(element.location()?)?;
        let page = document.pages().get(position.page.get() - 1)?;
        Some(Place { what, page: position.page.get(), down: position.point.y / page.frame.height() })
    };
    let headings = known.query(&HeadingElem::ELEM.select());
    let headings = headings.iter().filter_map(|element| {
        let heading = element.to_packed::<HeadingElem>()?;
        place(element, heading.body.plain_text().to_string())
    });
    let marks = known.query(&MetadataElem::ELEM.select());
    let marks = marks.iter().filter_map(|element| match &element.to_packed::<MetadataElem>()?.value {
        Value::Str(word) => place(element, word.to_string()),
        _ => None,
    });
    let mut all: Vec<Place> = headings.chain(marks).collect();
    all.sort_by_key(|place| place.page);
    all
}

/// Takes out an entry that says no more than its absence (that no tag is suspect, ISO 32000-1, Table 321), and that a common
/// reader reports as wrong. Spaces stand in its place, so that no other place in the file moves.
fn unsuspected(bytes: &mut [u8]) {
    const ENTRY: &[u8] = b"/Suspects false";
    if let Some(at) = bytes.windows(ENTRY.len()).position(|part| part == ENTRY) {
        bytes.iter_mut().skip(at).take(ENTRY.len()).for_each(|byte| *byte = b' ');
    }
}

/// What a PDF says of itself beside its title.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct About {
    /// Who made it; empty where nobody is named.
    pub author: String,
    /// Year, month and day that stand on it.
    pub day: Option<[i32; 3]>,
}

/// Drawing sheets as PDF, a page each, at true size.
///
/// # Errors
/// As [`pdf`].
pub fn sheets(scenes: &[&Scene], title: &str, about: &About, ident: &str) -> Result<Pdf, PdfFault> {
    let mut files = BTreeMap::new();
    let mut pages = Vec::new();
    for (k, scene) in scenes.iter().enumerate() {
        let name = format!("sheet-{}.svg", k + 1);
        let alt = if scene.description.is_empty() { &scene.title } else { &scene.description };
        pages.push(serde_json::json!({
            "file": name, "width": scene.width, "height": scene.height, "title": scene.title, "alt": alt,
        }));
        files.insert(name, svg::svg(scene, &svg::Options::default()).into_bytes());
    }
    let data = serde_json::json!({ "title": title, "author": about.author, "day": about.day, "sheets": pages });
    files.insert("sheets.json".to_owned(), data.to_string().into_bytes());
    typeset(SHEETS, files, ident)
}

/// Each sheet fills its page; the tagged text alternative carries what the drawing says.
const SHEETS: &str = r#"
#let data = json("sheets.json")
#set document(
  title: data.title,
  author: if data.author == "" { () } else { data.author },
  date: if data.day == none { none } else { datetime(year: data.day.at(0), month: data.day.at(1), day: data.day.at(2)) },
)
#set text(lang: "en")
// A heading of each sheet for the reader's outline; the drawing itself shows it in its title block.
#show heading: it => place(top + left, text(size: 1pt, fill: white, it.body))
#for sheet in data.sheets {
  set page(width: sheet.width * 1mm, height: sheet.height * 1mm, margin: 0mm)
  heading(level: 1, bookmarked: true, outlined: false, sheet.title)
  image(sheet.file, width: 100%, height: 100%, alt: sheet.title + ". " + sheet.alt)
}
"#;

/// The typesetter's whole world.
struct Desk {
    library: LazyHash<Library>,
    main: Source,
    files: BTreeMap<String, Bytes>,
}

/// The embedded fonts, loaded once: Libertinus Serif, New Computer Modern, DejaVu Sans Mono.
pub(super) fn fonts() -> &'static FontStore {
    static FONTS: OnceLock<FontStore> = OnceLock::new();
    FONTS.get_or_init(|| {
        let mut store = FontStore::new();
        store.extend(typst_kit::fonts::embedded());
        store
    })
}

impl Desk {
    fn new(main: &str, files: BTreeMap<String, Vec<u8>>) -> Result<Desk, PdfFault> {
        let path = VirtualPath::new(MAIN).map_err(|error| PdfFault {
            message: error.to_string(),
            place: MAIN.to_owned(),
            hints: Vec::new(),
            more: 0,
        })?;
        let id = FileId::new(RootedPath::new(VirtualRoot::Project, path));
        Ok(Desk {
            library: LazyHash::new(Library::default()),
            main: Source::new(id, main.to_owned()),
            files: files.into_iter().map(|(name, bytes)| (name, Bytes::new(bytes))).collect(),
        })
    }

    fn find(&self, id: FileId) -> FileResult<&Bytes> {
        let path = id.get().vpath().get_without_slash();
        let ours = matches!(id.get().root(), VirtualRoot::Project);
        self.files.get(path).filter(|_| ours).ok_or_else(|| FileError::NotFound(Path::new(path).to_path_buf()))
    }

    /// The first of some diagnostics as a fault.
    fn fault(&self, all: &[SourceDiagnostic]) -> PdfFault {
        let Some(first) = all.first() else {
            return PdfFault { message: "unknown fault".to_owned(), place: String::new(), hints: Vec::new(), more: 0 };
        };
        PdfFault {
            message: first.message.to_string(),
            place: self.place(first).unwrap_or_default(),
            hints: first.hints.iter().map(|hint| hint.v.to_string()).collect(),
            more: all.len() - 1,
        }
    }

    fn place(&self, diagnostic: &SourceDiagnostic) -> Option<String> {
        let id = diagnostic.span.id()?;
        let name = id.get().vpath().get_without_slash().to_owned();
        let position = self
            .range(diagnostic.span)
            .and_then(|range| self.source(id).ok()?.lines().byte_to_line_column(range.start));
        Some(match position {
            Some((line, column)) => format!("{name}:{}:{}", line + 1, column + 1),
            None => name,
        })
    }
}

impl World for Desk {
    fn library(&self) -> &LazyHash<Library> {
        &self.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        fonts().book()
    }

    fn main(&self) -> FileId {
        self.main.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == self.main.id() {
            return Ok(self.main.clone());
        }
        let text = core::str::from_utf8(self.find(id)?).map_err(|_| FileError::InvalidUtf8)?;
        Ok(Source::new(id, text.to_owned()))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        if id == self.main.id() {
            return Ok(Bytes::from_string(self.main.text().to_owned()));
        }
        self.find(id).cloned()
    }

    fn font(&self, index: usize) -> Option<Font> {
        fonts().font(index)
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
