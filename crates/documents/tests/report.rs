//! What the calculation report must keep, read back from the finished PDF by another library.

use std::error::Error;
use std::path::{Path, PathBuf};
use stillrise_checks::unsettled;
use stillrise_design::enquiry::range::{Range, read_range};
use stillrise_design::enquiry::{Enquiry, read_enquiry};
use stillrise_documents::Edition;
use stillrise_documents::charts::charts;
use stillrise_documents::papers::{named, typeset};
use stillrise_documents::render::pdf::Pdf;
use stillrise_documents::result::result;
use stillrise_documents::summary::summary;
use stillrise_search::{Settled, settle};

type Outcome = Result<(), Box<dyn Error>>;

/// What a customer may write; to be seen as written, nowhere to be obeyed.
const HOSTILE: &str = "Yard #panic() $x$ *b* <y> @z \\ ``` = [1] // end";

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn demo() -> Result<Range, Box<dyn Error>> {
    Ok(read_range(&std::fs::read_to_string(root().join("ranges/demo.toml"))?).file)
}

fn enquiry(folder: &Path, change: impl Fn(String) -> String) -> Result<Enquiry, Box<dyn Error>> {
    let text = change(std::fs::read_to_string(folder.join("enquiry.toml"))?);
    let files = |name: &str| std::fs::read(folder.join(name)).ok();
    read_enquiry(&text, &files).map_err(|faults| format!("{}: {} faults", folder.display(), faults.len()).into())
}

/// A paper of a job.
fn paper(settled: &Settled, edition: Edition, name: &str) -> Result<Pdf, Box<dyn Error>> {
    let paper = named(name).ok_or_else(|| format!("there is no paper {name}"))?;
    typeset(settled, edition, paper, &charts(settled)).map_err(|fault| format!("{fault:?}").into())
}

/// The folders of all worked jobs.
fn jobs() -> Result<Vec<PathBuf>, Box<dyn Error>> {
    let mut all: Vec<PathBuf> =
        std::fs::read_dir(root().join("enquiries"))?.filter_map(|e| Some(e.ok()?.path())).collect();
    all.retain(|path| path.join("enquiry.toml").is_file());
    all.sort();
    Ok(all)
}

/// The text of a PDF, without spaces: where lines break is the typesetter's affair.
fn text(pdf: &[u8]) -> Result<String, Box<dyn Error>> {
    let document = lopdf::Document::load_mem(pdf)?;
    let pages: Vec<u32> = document.get_pages().keys().copied().collect();
    Ok(squeeze(&document.extract_text(&pages)?))
}

fn squeeze(text: &str) -> String {
    let split = text.replace('ﬁ', "fi").replace('ﬂ', "fl").replace('ﬀ', "ff").replace('ﬃ', "ffi").replace('ﬄ', "ffl");
    split.chars().filter(|c| !c.is_whitespace()).collect()
}

fn failing(settled: &Settled) -> impl Iterator<Item = &'static str> {
    settled.verdicts.iter().filter(|v| v.verdict.word() == "fails").map(|v| v.rule.title)
}

#[test]
fn every_worked_job_has_a_sound_report_that_hides_no_failure() -> Outcome {
    let range = demo()?;
    let jobs = jobs()?;
    assert!(jobs.len() >= 2);
    let mut failures = 0;
    for folder in jobs {
        let settled = settle(&enquiry(&folder, |text| text)?, &range);
        let pdf = paper(&settled, Edition::Client, "calculation-report")?;
        let name = folder.display();
        assert_eq!((pdf.inaccessible, pdf.warnings), (None, Vec::new()), "{name}");
        assert!((10..=34).contains(&pdf.pages), "{name}: {} pages", pdf.pages);
        let offer = paper(&settled, Edition::Client, "offer-summary")?;
        assert_eq!(
            (offer.inaccessible, offer.warnings, offer.pages <= 2),
            (None, Vec::new(), true),
            "{name}: {}",
            offer.pages
        );
        let text = text(&pdf.bytes)?;
        for title in failing(&settled) {
            failures += 1;
            assert!(text.contains(&squeeze(title)), "{name}: \"{title}\" fails and is not in the report");
        }
        let joined = |text: &str| squeeze(text).replace('-', "");
        let said = joined(&text);
        for u in unsettled(&settled.verdicts) {
            assert!(said.contains(&joined(&u.ask.question)), "{name}: \"{}\" is not in the report", u.ask.question);
        }
        let mesh = settled.job.design.performance.as_ref().and_then(|p| p.worst()?.passage.mesh());
        let credit = text.contains("Nocreditistakenforthemesh");
        assert_eq!(credit, mesh.is_some(), "{name}: credit is spoken of where there is a mesh");
        for limit in settled.job.design.performance.iter().flat_map(|p| &p.limits) {
            assert!(
                text.contains(&limit.says().to_uppercase().replace(' ', "")),
                "{name}: the word on a limit is on the cover"
            );
        }
        for needed in ["PRELIMINARY", "Forreviewbyalicensedengineer.Localcodeandpermitgovern."] {
            assert!(text.contains(needed), "{name}: {needed}");
        }
    }
    assert!(failures > 0, "one of the worked jobs must fail, or this test shows nothing");
    Ok(())
}

#[test]
fn the_same_job_gives_the_same_bytes_and_a_persons_text_stays_text() -> Outcome {
    let folder = root().join("enquiries/vehicle-yard");
    let range = demo()?;
    let title = format!("title = '{HOSTILE}'");
    let change = |text: String| {
        let lines = text.lines().map(|l| if l.starts_with("title = ") { title.as_str() } else { l });
        lines.collect::<Vec<_>>().join("\n")
    };
    let one = paper(&settle(&enquiry(&folder, change)?, &range), Edition::Client, "calculation-report")?.bytes;
    let two = paper(&settle(&enquiry(&folder, change)?, &range), Edition::Client, "calculation-report")?.bytes;
    assert!(one == two && one.starts_with(b"%PDF-1.7"));
    let text = text(&one)?;
    assert!(text.contains(&squeeze(HOSTILE)), "{}", text.chars().take(300).collect::<String>());
    Ok(())
}

#[test]
fn prices_and_names_behind_decisions_are_ours_alone() -> Outcome {
    let folder = root().join("enquiries/vehicle-yard");
    let decision = "\n[[decision]]\nrule = \"no-measured-results\"\ndecision = \"accepted\"\nbecause = \"tested on site instead\"\nwho = \"Q. Nobody\"\n";
    let settled = settle(&enquiry(&folder, |text| text + decision)?, &demo()?);
    let report = |edition| paper(&settled, edition, "calculation-report");
    let (client, us) = (text(&report(Edition::Client)?.bytes)?, text(&report(Edition::Us)?.bytes)?);
    for ours in ["Price(internal)", "Q.Nobody", "no-measured-results"] {
        assert!(us.contains(ours), "{ours} is missing in our own edition");
        assert!(!client.contains(ours), "{ours} is in the client's edition");
    }
    assert!(client.contains("testedonsiteinstead"), "the reason of a decision is the client's too");
    Ok(())
}

#[test]
fn a_job_without_a_unit_is_still_reported() -> Outcome {
    let folder = root().join("enquiries/vehicle-yard");
    let settled = settle(&enquiry(&folder, |text| text + "\n[unit]\nmodel = \"no such model\"\n")?, &demo()?);
    assert!(settled.job.design.train.is_none());
    let pdf = paper(&settled, Edition::Regulator, "calculation-report")?;
    assert_eq!((pdf.inaccessible, pdf.warnings), (None, Vec::new()));
    let text = text(&pdf.bytes)?;
    assert!(text.contains("Nounitwaslaidout") && text.contains("nosuchmodel"));
    Ok(())
}

#[test]
fn what_cannot_be_judged_is_counted_and_its_questions_stand_in_summary_and_result() -> Outcome {
    let range = demo()?;
    let mut seen = 0;
    for folder in jobs()? {
        let settled = settle(&enquiry(&folder, |text| text)?, &range);
        let name = folder.display();
        let open = settled.verdicts.iter().filter(|v| v.verdict.word() == "cannot judge").count();
        let said = squeeze(&summary(&settled, 100));
        assert!(said.contains(&squeeze(&format!("{open} cannot be judged,"))), "{name}");
        let result = result(&settled, Edition::Client);
        let asks = result["verdicts"].as_array().into_iter().flatten().filter_map(|v| v["asks"].as_array()).flatten();
        let asks: Vec<&str> = asks.filter_map(|ask| ask["question"].as_str()).collect();
        for u in unsettled(&settled.verdicts) {
            seen += 1;
            assert!(said.contains(&squeeze(&u.ask.question)), "{name}: {}", u.ask.question);
            assert!(asks.contains(&u.ask.question.as_ref()), "{name}: {}", u.ask.question);
        }
    }
    assert!(seen > 10, "{seen}");
    Ok(())
}
