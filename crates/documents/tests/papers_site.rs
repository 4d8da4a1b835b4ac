//! What the papers for shop, contractor and operator must keep, read back from the finished PDF by another library.

use std::error::Error;
use std::path::{Path, PathBuf};
use std::sync::OnceLock;
use stillrise_design::enquiry::range::{Range, read_range};
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::papers::{named, typeset};
use stillrise_documents::render::pdf::Pdf;
use stillrise_documents::render::scale::dimension_text;
use stillrise_documents::{Edition, papers};
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_search::diagnosis::causes::{CAUSES, Id};
use stillrise_search::{Settled, settle};

type Outcome = Result<(), Box<dyn Error>>;

/// The papers of this file, each with the most pages that it may have.
const PAPERS: [(&str, usize); 5] = [
    ("acceptance-tests", 4),
    ("start-up", 2),
    ("inspection-and-packing", 3),
    ("installation-guide", 4),
    ("maintenance-manual", 8),
];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn range() -> Result<Range, Box<dyn Error>> {
    Ok(read_range(&std::fs::read_to_string(root().join("ranges/demo.toml"))?).file)
}

fn job(name: &str, more: &str) -> Result<Settled, Box<dyn Error>> {
    let folder = root().join("enquiries").join(name);
    let text = std::fs::read_to_string(folder.join("enquiry.toml"))? + more;
    let files = |name: &str| std::fs::read(folder.join(name)).ok();
    let enquiry = read_enquiry(&text, &files).map_err(|faults| format!("{name}: {} faults", faults.len()))?;
    Ok(settle(&enquiry, &range()?))
}

/// All worked jobs, settled once.
fn jobs() -> Result<&'static [(String, Settled)], Box<dyn Error>> {
    static ALL: OnceLock<Vec<(String, Settled)>> = OnceLock::new();
    if let Some(all) = ALL.get() {
        return Ok(all);
    }
    let mut names: Vec<String> = std::fs::read_dir(root().join("enquiries"))?
        .filter_map(|entry| entry.ok().filter(|e| e.path().join("enquiry.toml").is_file()))
        .map(|entry| entry.file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    let mut all = Vec::new();
    for name in names {
        let settled = job(&name, "")?;
        all.push((name, settled));
    }
    assert_eq!(all.len(), 11);
    Ok(ALL.get_or_init(|| all))
}

fn set(settled: &Settled, name: &str) -> Result<Pdf, Box<dyn Error>> {
    let paper = named(name).ok_or("no such paper")?;
    let pdf = typeset(settled, Edition::Client, paper, &[])?;
    assert_eq!((&pdf.inaccessible, &pdf.warnings), (&None, &Vec::new()), "{name}");
    if let Some(folder) = std::env::var_os("PAPERS_OUT") {
        let title: String = settled.job.enquiry.head.title.0.iter().flat_map(|t| t.chars()).filter(char::is_ascii_alphanumeric).take(24).collect();
        std::fs::write(Path::new(&folder).join(format!("{title}-{name}.pdf")), &pdf.bytes)?;
    }
    Ok(pdf)
}

/// The text of a PDF, without spaces: where lines break is the typesetter's affair.
fn text(pdf: &Pdf) -> Result<String, Box<dyn Error>> {
    let document = lopdf::Document::load_mem(&pdf.bytes)?;
    let pages: Vec<u32> = document.get_pages().keys().copied().collect();
    Ok(squeeze(&document.extract_text(&pages)?))
}

fn squeeze(text: &str) -> String {
    let split = text.replace('ﬁ', "fi").replace('ﬂ', "fl").replace('ﬀ', "ff").replace('ﬃ', "ffi").replace('ﬄ', "ffl");
    split.chars().filter(|c| !c.is_whitespace()).collect()
}

#[test]
fn each_paper_is_sound_and_no_longer_than_its_reader_reads() -> Outcome {
    let mut made = 0;
    for (name, settled) in jobs()? {
        for (paper, most) in PAPERS {
            if !(named(paper).ok_or(paper)?.applies)(settled) {
                assert!(settled.job.design.train.is_none() || settled.job.enquiry.unit_stands(), "{name}: {paper}");
                continue;
            }
            made += 1;
            let pdf = set(settled, paper)?;
            assert!(pdf.pages <= most, "{name}: {paper} has {} pages", pdf.pages);
        }
    }
    assert!(made >= 50, "{made}");
    Ok(())
}
