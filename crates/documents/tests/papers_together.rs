//! What holds between papers, and between papers and the package: one list, one numbering of parts, pages that are named rightly,
//! decisions and questions in the places where their readers look.

mod common;

use common::{job, range, root, text_of};
use std::collections::BTreeSet;
use std::error::Error;
use std::sync::Arc;
use stillrise_checks::Grade;
use stillrise_design::enquiry::settings::read_settings;
use stillrise_design::enquiry::{read_enquiry, read_enquiry_under};
use stillrise_documents::contents::{all, told};
use stillrise_documents::package::package;
use stillrise_documents::papers::{self, named, typeset};
use stillrise_documents::reply::posed;
use stillrise_documents::workbook::grids;
use stillrise_documents::{Edition, drawings};
use stillrise_search::{Settled, settle};
use stillrise_units::Typed;

type Outcome = Result<(), Box<dyn Error>>;

/// The pages of a paper, each without spaces.
fn pages(settled: &Settled, name: &str, edition: Edition) -> Result<Vec<String>, Box<dyn Error>> {
    let paper = named(name).ok_or_else(|| format!("no paper {name}"))?;
    let pdf = typeset(settled, edition, paper, &[]).map_err(|fault| format!("{name}: {fault:?}"))?;
    assert_eq!((&pdf.inaccessible, &pdf.warnings), (&None, &Vec::new()), "{name}");
    let document = lopdf::Document::load_mem(&pdf.bytes)?;
    let numbers: Vec<u32> = document.get_pages().keys().copied().collect();
    numbers.into_iter().map(|page| Ok(squeeze(&document.extract_text(&[page])?))).collect()
}

fn text(settled: &Settled, name: &str, edition: Edition) -> Result<String, Box<dyn Error>> {
    Ok(pages(settled, name, edition)?.concat())
}

fn squeeze(text: &str) -> String {
    let ligatures = [("ﬃ", "ffi"), ("ﬄ", "ffl"), ("ﬁ", "fi"), ("ﬂ", "fl"), ("ﬀ", "ff")];
    let split = ligatures.iter().fold(text.to_owned(), |text, (one, several)| text.replace(one, several));
    let units = split.replace("ft2", "ft²").replace("m3", "m³").replace("m2", "m²").replace("ft3", "ft³");
    units.chars().filter(|c| !c.is_whitespace()).collect()
}

#[test]
fn the_package_is_what_the_list_says_and_no_more() -> Outcome {
    for (name, edition) in [("vehicle-yard", Edition::Us), ("foundry", Edition::Client)] {
        let mut settled = job(name, "")?;
        settled.study(200);
        let inputs = [("enquiry.toml".to_owned(), text_of(name)?.into_bytes())];
        let files = package(&settled, edition, &inputs).map_err(|fault| format!("{fault:?}"))?;
        let made: BTreeSet<&str> = files.iter().map(|(file, _)| file.as_str()).collect();
        assert_eq!(made.len(), files.len(), "{name}: a file is made twice");
        let is_of = |file: &str, pattern: &str| match pattern.split_once('*') {
            Some((folder, ending)) => file.starts_with(folder) && file.ends_with(ending),
            None => file == pattern,
        };
        let list = told(&settled, edition);
        for one in &list {
            let its = files.iter().filter(|(file, _)| is_of(file, &one.document.file)).count();
            assert_eq!(one.lacks.is_none(), its > 0, "{name}: {} ({:?})", one.document.title, one.lacks);
            for sheet in &one.sheets {
                let file = sheet.file.split('#').next().unwrap_or_default();
                assert!(made.contains(file), "{name}: {file}");
            }
        }
        for file in made {
            assert!(all().iter().any(|one| is_of(file, &one.file)), "{name}: {file} stands in no list");
        }
    }
    Ok(())
}

#[test]
fn paper_workbook_and_drawing_number_the_parts_alike() -> Outcome {
    for name in ["vehicle-yard", "tram-depot", "refinery-basin", "hydro-deck"] {
        let settled = job(name, "")?;
        let all = grids(&settled, Edition::Client);
        let grid = |name: &str| all.iter().find(|grid| grid.name == name).ok_or_else(|| name.to_owned());
        let cell = |cell: &stillrise_documents::render::xlsx::Cell| match cell {
            stillrise_documents::render::xlsx::Cell::Text(text) => text.clone(),
            stillrise_documents::render::xlsx::Cell::Number(number) => number.to_string(),
            _ => String::new(),
        };
        let row = |row: &[stillrise_documents::render::xlsx::Cell]| (cell(&row[0]), cell(&row[1]), cell(&row[2]));
        let bill: Vec<_> = grid("Bill of materials")?.rows.iter().map(|r| row(r)).collect();
        let paper = text(&settled, "bill-of-materials", Edition::Client)?;
        let drawn: String = drawings::set(&settled, Edition::Client).iter().map(|d| d.sheet_texts.clone()).collect();
        let parts = &grid("Parts")?.rows;
        assert!(parts.len() > 3, "{name}");
        for part in parts {
            let part = row(part);
            assert!(bill.contains(&part), "{name}: {part:?} in the bill");
            let says = squeeze(&format!("{}{}", part.0, part.1));
            assert!(paper.contains(&says), "{name}: {says} on paper");
            assert!(drawn.lines().any(|line| line == part.0), "{name}: balloon {}", part.0);
        }
        // What carries a nozzle's mark on paper carries it on the drawing.
        let marks: Vec<&str> = bill.iter().map(|row| row.0.as_str()).filter(|mark| mark.starts_with('N')).collect();
        assert!(marks.len() >= 3, "{name}");
        for mark in marks {
            assert!(drawn.lines().any(|line| line == mark), "{name}: nozzle {mark}");
        }
    }
    Ok(())
}

#[test]
fn a_bill_shows_a_price_where_the_range_states_one_and_none_else() -> Outcome {
    let invented = job("vehicle-yard", "")?;
    let bill = text(&invented, "bill-of-materials", Edition::Client)?;
    assert!(bill.contains("Priceswerenotstated"), "{bill}");
    let files = |file: &str| match file {
        "own.toml" => std::fs::read(root().join("ranges/demo.toml")).ok(),
        other => std::fs::read(root().join("enquiries/vehicle-yard").join(other)).ok(),
    };
    let own = text_of("vehicle-yard")? + "\n[unit]\nfrom = \"own.toml\"\n";
    let enquiry = read_enquiry(&own, &files).map_err(|faults| format!("{faults:?}"))?;
    let settled = settle(&enquiry, &range());
    let train = settled.job.design.train.as_ref().ok_or("no unit")?;
    let (price, currency) = train.unit.particulars.price.as_ref().ok_or("the range states no price")?;
    let bill = text(&settled, "bill-of-materials", Edition::Client)?;
    let shown = stillrise_units::print::digits(*price, 3);
    assert!(bill.contains(&shown) && bill.contains(currency.as_str()), "{shown} {currency}: {bill}");
    Ok(())
}

#[test]
fn the_matrix_names_the_page_on_which_a_thing_stands() -> Outcome {
    let mut seen = 0;
    for name in ["vehicle-yard", "truck-wash", "transformer-yard"] {
        let settled = job(name, "")?;
        let system = settled.job.enquiry.system();
        let matrix = text(&settled, "compliance-matrix", Edition::Client)?;
        let report = pages(&settled, "calculation-report", Edition::Client)?;
        let annex = pages(&settled, "calculation-annex", Edition::Client)?;
        for judged in settled.verdicts.iter().filter(|j| !j.verdict.stopped_ahead() || j.decision.is_some()) {
            let (paper, pages) = match judged.grade() {
                Grade::Fails | Grade::Warns | Grade::CannotJudge => ("Calculationreport,page", &report),
                Grade::Passes => ("Annextothecalculationreport,page", &annex),
                Grade::NotApplicable => continue,
            };
            // A row begins with its source and its title; the place stands behind what was found.
            let row = squeeze(&format!("{}{}", judged.rule.source.to(system), judged.rule.title));
            let (_, behind) = matrix.split_once(&row).ok_or_else(|| format!("{name}: no row {row}"))?;
            let (_, page) = behind.split_once(paper).ok_or_else(|| format!("{name}: no page for {row}"))?;
            let page: usize = page.chars().take_while(char::is_ascii_digit).collect::<String>().parse()?;
            let there = pages.get(page.wrapping_sub(1)).ok_or_else(|| format!("{name}: no page {page}"))?;
            assert!(there.contains(&squeeze(judged.rule.title)), "{name}: {} on page {page}", judged.rule.title);
            seen += 1;
            // Nothing of what was found is cut.
            let mut says = judged.verdict.says().trim_end_matches('.').chars();
            let rest = squeeze(&says.by_ref().skip(1).collect::<String>());
            assert!(matrix.contains(&rest), "{name}: {rest}");
        }
        assert!(!matrix.contains("moreinthecalculationreport"), "{name}");
    }
    assert!(seen > 100, "{seen}");
    Ok(())
}

#[test]
fn decisions_are_boxes_and_findings_stand_on_a_sheet_of_our_own() -> Outcome {
    for name in ["vehicle-yard", "truck-wash"] {
        let settled = job(name, "")?;
        let found: Vec<_> = settled.verdicts.iter().filter(|j| j.verdict.is_finding()).collect();
        assert!(!found.is_empty(), "{name}");
        for edition in Edition::ALL {
            let report = text(&settled, "calculation-report", edition)?;
            assert!(!report.contains("nobodyhasdecided"), "{name}, {edition:?}");
            assert!(report.contains("Accepted,ortakenover,by"), "{name}, {edition:?}");
        }
        let sheet = text(&settled, "review-sheet", Edition::Us)?;
        for judged in found {
            let rule = judged.rule;
            let limits = rule.limits.to(settled.job.enquiry.system());
            for says in [rule.title, rule.matters, rule.remedy, &limits, rule.id] {
                assert!(sheet.contains(&squeeze(says)), "{name}: {says}");
            }
        }
        assert!(named("review-sheet").ok_or("none")?.editions == [Edition::Us]);
        let drawn: String = drawings::set(&settled, Edition::Us).iter().map(|d| d.sheet_texts.clone()).collect();
        assert!(!drawn.lines().any(|line| line == "F1"), "{name}: a finding on the drawing");
    }
    // A decision that somebody made fills its boxes; who made it is ours alone.
    let decision = "\n[[decision]]\nrule = \"no-measured-results\"\ndecision = \"accepted\"\nbecause = \"tested on site instead\"\nwho = \"Q. Nobody\"\ndate = \"2026-03-02\"\n";
    let settled = job("vehicle-yard", decision)?;
    let [us, client] = [Edition::Us, Edition::Client].map(|edition| text(&settled, "calculation-report", edition));
    let (us, client) = (us?, client?);
    assert!(us.contains("Q.Nobodytestedonsiteinstead2026-03-02"), "{us}");
    assert!(client.contains("testedonsiteinstead2026-03-02") && !client.contains("Q.Nobody"));
    Ok(())
}

#[test]
fn a_client_is_asked_what_moves_something_and_what_he_can_answer() -> Outcome {
    let mut asked = 0;
    for name in ["vehicle-yard", "truck-wash", "fuel-pad", "transformer-yard"] {
        let settled = job(name, "")?;
        let sheet = text(&settled, "questions", Edition::Client)?;
        for one in posed(&settled) {
            asked += 1;
            assert!(sheet.contains(&squeeze(&one.text)), "{name}: {}", one.text);
        }
        let (ours, report) = ("Howfardothedropletsizesspread", text(&settled, "calculation-report", Edition::Client)?);
        assert!(!sheet.contains(ours) && !report.contains(ours), "{name}: {ours}");
        let beside = ["morefiguresweretaken", "Onemorefigurewastaken"];
        assert!(beside.iter().any(|words| sheet.contains(words)), "{name}: the others by their number");
        // The first ones stand in the offer, too, with the days of upkeep.
        let offer = text(&settled, "offer-summary", Edition::Client)?;
        let first = posed(&settled).into_iter().next().ok_or("nothing is asked")?;
        assert!(offer.contains(squeeze(&first.text).trim_end_matches('.')), "{name}: {}", first.text);
        let days = settled.job.design.performance.as_ref().and_then(|p| p.storage.sludge_days);
        if let Some(days) = days.map(|t| t.q.si() / 86_400.0).filter(|days| (2.0..700.0).contains(days)) {
            let says = format!("sludgeistobepumpedoutaboutevery{}days", days.floor());
            // Where two pages are full, how often is told in short alone.
            let told = offer.to_lowercase();
            assert!(told.contains(&says) || told.contains("sludgeaboutevery"), "{name}: {says}");
        }
    }
    assert!(asked > 20, "{asked}");
    Ok(())
}

/// A question of the summary and the paragraphs that answer it.
type Answer = (String, Vec<String>);

/// What the summary says first, a question and its paragraphs each.
fn in_short(settled: &Settled) -> Result<Vec<Answer>, Box<dyn Error>> {
    let said = papers::said(settled, Edition::Client, named("offer-summary").ok_or("none")?);
    let blocks = said["blocks"].as_array().ok_or("no blocks")?;
    let block = blocks.first().filter(|block| block["t"] == "answers").ok_or("the answers do not stand first")?;
    let rows = block["rows"].as_array().ok_or("no rows")?;
    let text = |value: &serde_json::Value| value.as_str().unwrap_or_default().to_owned();
    let lines = |row: &serde_json::Value| row["lines"].as_array().into_iter().flatten().map(text).collect();
    Ok(rows.iter().map(|row| (text(&row["q"]), lines(row))).collect())
}

/// Whoever has a minute reads what is bought, what it needs, what it will do, what is left out and what must be answered, and is
/// told of no unit as offered that the rules refuse.
#[test]
fn the_offer_answers_five_questions_first() -> Outcome {
    let (mut offered, mut refused) = (0, 0);
    for name in ["vehicle-yard", "truck-wash", "fuel-pad", "transformer-yard", "crane-yard", "refinery-basin"] {
        let settled = job(name, "")?;
        let answers = in_short(&settled)?;
        let asked: Vec<&str> = answers.iter().map(|(question, _)| question.as_str()).collect();
        let five =
            ["What you buy", "What it needs of you", "What it will do", "What is not in it", "What you must answer"];
        assert_eq!(asked, five, "{name}");
        assert!(answers.iter().all(|(_, lines)| lines.iter().all(|line| !line.trim().is_empty()) && !lines.is_empty()));
        let bought = answers[0].1.join(" ");
        if settled.fails() || settled.pick.as_ref().is_some_and(|pick| pick.condition.is_some()) {
            refused += 1;
            let says = ["Nothing yet", "Not offered", "Offered once"].iter().any(|word| bought.starts_with(word));
            assert!(says, "{name}: {bought}");
        } else {
            offered += 1;
            assert!(bought.starts_with("One "), "{name}: {bought}");
        }
        // Each limit has its line, with the number that it allows.
        let does = answers[2].1.join(" ");
        for limit in settled.job.design.basis.iter().flat_map(|basis| &basis.limits) {
            let allows = stillrise_units::print::in_prose(limit.value.q.si(), &stillrise_units::catalog::MG_L);
            assert!(does.contains(limit.title()) && does.contains(&allows), "{name}: {does}");
        }
        // What stands against it stands by name among what it needs.
        let needs = answers[1].1.join(" ").to_lowercase();
        for judged in
            settled.verdicts.iter().filter(|judged| judged.stands_failed() && judged.rule.id == "spill-above-room")
        {
            assert!(needs.contains(&judged.rule.title.to_lowercase()), "{name}: {needs}");
        }
        // What nobody brings yet stands with what it needs by name, and is not in it.
        assert!(answers[1].1.iter().any(|line| line.contains("nobody is named yet: ")), "{name}");
        assert!(answers[3].1.iter().any(|line| line.contains("nobody is named yet to bring")), "{name}");
        // The report counts the questions as this paper does.
        let asked = answers[4].1.join(" ");
        let count = match asked.split_once(" things") {
            Some((count, _)) => count.to_owned(),
            None => asked.matches("? (").count().saturating_add(1).to_string(),
        };
        let report = text(&settled, "calculation-report", Edition::Client)?;
        assert!(report.contains(&format!("{count}totheclient")), "{name}: {count}");
    }
    assert!(offered > 0 && refused > 2, "{offered} {refused}");
    Ok(())
}

const SETTINGS: &str = "[company]\nname = \"Example Separators\"\naddress = [\"1 Example Road\", \"Exampletown\"]\n[documents]\nnotes = [\"Dimensions are to be checked on site.\"]\n";

#[test]
fn a_letterhead_stands_where_somebody_said_whose_paper_it_is() -> Outcome {
    let settings = Arc::new(read_settings(SETTINGS).file);
    let files = |file: &str| std::fs::read(root().join("enquiries/vehicle-yard").join(file)).ok();
    let own = read_enquiry_under(&text_of("vehicle-yard")?, &files, Some(&settings)).map_err(|f| format!("{f:?}"))?;
    let (with, without) = (settle(&own, &range()), job("vehicle-yard", "")?);
    for paper in ["offer-summary", "calculation-report", "maintenance-manual", "bill-of-materials"] {
        let own = pages(&with, paper, Edition::Client)?;
        let first = own.first().ok_or("no page")?;
        assert!(first.contains("ExampleSeparators") && first.contains("1ExampleRoad"), "{paper}: {first}");
        // The report lists besides what stands in the settings.
        let times = if paper == "calculation-report" { 2 } else { 1 };
        assert_eq!(own.concat().matches("Dimensionsaretobecheckedonsite").count(), times, "{paper}: notes");
        let none = text(&without, paper, Edition::Client)?;
        assert!(!none.contains("ExampleSeparators") && !none.contains("Standardnotes"), "{paper}");
    }
    let pdf = typeset(&with, Edition::Client, named("offer-summary").ok_or("none")?, &[])?;
    let document = lopdf::Document::load_mem(&pdf.bytes)?;
    let info =
        document.trailer.get(b"Info").and_then(|info| document.dereference(info)).map(|(_, info)| info.clone())?;
    let said = |key: &[u8]| {
        let value = info.as_dict().and_then(|info| info.get(key)).and_then(|value| value.as_str());
        value.map(|bytes| String::from_utf8_lossy(bytes).into_owned())
    };
    assert_eq!(said(b"Author")?, "Example Separators");
    assert!(said(b"CreationDate")?.starts_with("D:20260302"), "{:?}", said(b"CreationDate"));
    Ok(())
}
