//! The papers for whoever contracts, specifies, checks and orders: each is sound for every worked job, says what the job found,
//! and states no performance for a limit that is not kept.

mod common;

use common::job;
use std::error::Error;
use stillrise_design::performance::limit::Word;
use stillrise_documents::papers::{Paper, named, of, typeset};
use stillrise_documents::{Edition, drawings};
use stillrise_search::Settled;
use stillrise_units::catalog::{FT2, GAL, GPM, KG, LB, M2, M3, M3_H};
use stillrise_units::{System, Typed, print};

type Outcome = Result<(), Box<dyn Error>>;

/// The papers, and the most pages of each.
const PAPERS: [(&str, usize); 7] = [
    ("performance-statement", 2),
    ("data-sheet", 2),
    ("technical-specification", 6),
    ("scope-split", 2),
    ("compliance-matrix", 9),
    ("bill-of-materials", 3),
    ("questions", 4),
];

/// All worked jobs.
const JOBS: [&str; 11] = [
    "crane-yard",
    "foundry",
    "fuel-pad",
    "hydro-deck",
    "machine-shop",
    "market-wash",
    "refinery-basin",
    "tram-depot",
    "transformer-yard",
    "truck-wash",
    "vehicle-yard",
];

fn paper(name: &str) -> Result<&'static Paper, String> {
    named(name).ok_or_else(|| format!("no paper {name}"))
}

/// A paper's text without spaces: where lines break is the typesetter's affair.
fn text(settled: &Settled, name: &str, edition: Edition) -> Result<String, Box<dyn Error>> {
    let pdf = typeset(settled, edition, paper(name)?, &[]).map_err(|fault| format!("{name}: {fault:?}"))?;
    read(&pdf.bytes)
}

fn read(pdf: &[u8]) -> Result<String, Box<dyn Error>> {
    let document = lopdf::Document::load_mem(pdf)?;
    let pages: Vec<u32> = document.get_pages().keys().copied().collect();
    Ok(squeeze(&document.extract_text(&pages)?))
}

fn squeeze(text: &str) -> String {
    let ligatures = [("ﬃ", "ffi"), ("ﬄ", "ffl"), ("ﬁ", "fi"), ("ﬂ", "fl"), ("ﬀ", "ff")];
    let split = ligatures.iter().fold(text.to_owned(), |text, (one, several)| text.replace(one, several));
    let units = split.replace("ft2", "ft²").replace("m3", "m³").replace("m2", "m²").replace("ft3", "ft³");
    units.chars().filter(|c| !c.is_whitespace()).collect()
}

fn system(settled: &Settled) -> System {
    settled.job.enquiry.system()
}

#[test]
fn every_paper_is_sound_for_every_worked_job_and_no_longer_than_it_may_be() -> Outcome {
    for name in JOBS {
        let settled = job(name, "")?;
        for (paper_name, most) in PAPERS {
            let paper = paper(paper_name)?;
            if !paper.applies(&settled) {
                assert!(
                    settled.job.enquiry.unit_stands() || settled.job.design.train.is_none(),
                    "{name}: no {paper_name}"
                );
                continue;
            }
            let pdf = typeset(&settled, Edition::Client, paper, &[])
                .map_err(|fault| format!("{name}, {paper_name}: {fault:?}"))?;
            assert_eq!((&pdf.inaccessible, &pdf.warnings), (&None, &Vec::new()), "{name}, {paper_name}");
            assert!((1..=most).contains(&pdf.pages), "{name}, {paper_name}: {} pages", pdf.pages);
            let text = read(&pdf.bytes)?;
            for caution in ["reviewbyanengineerlicensed", "Localcodeandthepermitgovern", "PRELIMINARY"] {
                assert!(text.contains(caution), "{name}, {paper_name}: {caution}");
            }
        }
    }
    Ok(())
}

#[test]
fn a_performance_is_stated_for_the_limits_that_are_kept_and_for_no_other() -> Outcome {
    let (mut kept, mut not) = (0, 0);
    for name in JOBS {
        let settled = job(name, "")?;
        let words: Vec<Word> = settled.job.design.performance.iter().flat_map(|p| &p.limits).map(|l| l.word).collect();
        let text = text(&settled, "performance-statement", Edition::Client)?;
        let stated = words.iter().filter(|word| **word == Word::Kept).count();
        assert_eq!(text.matches("Stated:kept").count(), stated, "{name}");
        kept += stated;
        for limit in settled.job.design.performance.iter().flat_map(|p| &p.limits).filter(|l| l.word != Word::Kept) {
            not += 1;
            let says = squeeze(&format!("No performance is stated ({})", limit.says()));
            assert!(text.contains(&says), "{name}: {says}");
        }
        // One percentage a limit, never that of the calculation's scatter beside it.
        let shares = settled
            .job
            .design
            .performance
            .iter()
            .flat_map(|p| &p.limits)
            .filter(|l| l.measured.is_none_or(|m| m.above == 0));
        for limit in shares.filter(|l| l.word != Word::NotByGravity) {
            let Some(chance) = limit.chance else { continue };
            assert!(text.contains(&squeeze(&chance.percent())), "{name}: {}", chance.percent());
        }
        if stated == 0 {
            let specification = paper("technical-specification")?;
            if specification.applies(&settled) {
                let text = self::text(&settled, specification.name, Edition::Client)?;
                assert!(!text.contains("Theeffluentshallkeep"), "{name}: specifies what is not stated");
            }
        }
    }
    assert!(kept > 0 && not > 0, "{kept} kept, {not} not: this test shows nothing");
    Ok(())
}

#[test]
fn the_papers_tell_the_numbers_of_the_settled_job() -> Outcome {
    for name in ["vehicle-yard", "transformer-yard", "refinery-basin", "market-wash"] {
        let settled = job(name, "")?;
        let design = &settled.job.design;
        let (Some(basis), Some(train), Some(p)) = (&design.basis, &design.train, &design.performance) else {
            return Err(format!("{name} has no unit").into());
        };
        let prose = |si: f64, pair: (&'static stillrise_units::Unit, &'static stillrise_units::Unit)| {
            squeeze(&print::in_prose(si, system(&settled).pick(pair)))
        };
        let flow = basis.design_flow().map(|flow| prose(flow.q.si(), (&GPM, &M3_H))).ok_or("no flow")?;
        let water = prose(train.unit.layout.water_volume.q.si(), (&GAL, &M3));
        let weights = p.shop.as_ref().and_then(|shop| shop.weights.as_ref());
        let operating = weights.and_then(|w| w.operating).map(|m| prose(m.q.si(), (&LB, &KG)));
        let read = |paper| text(&settled, paper, Edition::Client);
        let (statement, sheet, specification, scope) = (
            read("performance-statement")?,
            read("data-sheet")?,
            read("technical-specification")?,
            read("scope-split")?,
        );
        assert!(statement.contains(&flow) && specification.contains(&flow), "{name}: {flow}");
        assert!(sheet.contains(&squeeze(&train.unit.particulars.model)), "{name}: the model");
        for (paper, text) in [("data sheet", &sheet), ("specification", &specification), ("scope", &scope)] {
            assert!(text.contains(&water), "{name}, {paper}: {water}");
        }
        // The unit that a specification is drawn from meets it.
        if let Some(pack) = &train.unit.pack {
            let unit = system(&settled).pick((&FT2, &M2));
            let (_, said) = specification.split_once("projectedareanolessthan").ok_or("no plate area")?;
            let said: f64 = said.chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect::<String>().parse()?;
            let there = unit.from_si(pack.follows.area.q.si());
            assert!(said <= there * (1.0 + 1e-9) && said > there * 0.98, "{name}: {said} of {there}");
        }
        if let Some(operating) = operating.filter(|_| !train.unit.arrangement.is_built_in()) {
            for (paper, text) in [("data sheet", &sheet), ("specification", &specification), ("scope", &scope)] {
                assert!(text.contains(&operating), "{name}, {paper}: {operating}");
            }
        }
        for case in &basis.cases {
            assert!(sheet.to_lowercase().contains(&squeeze(&case.event).to_lowercase()), "{name}: {}", case.event);
        }
    }
    Ok(())
}

#[test]
fn the_matrix_has_a_row_for_every_rule_that_applies() -> Outcome {
    for name in ["vehicle-yard", "crane-yard", "truck-wash"] {
        let settled = job(name, "")?;
        let text = text(&settled, "compliance-matrix", Edition::Client)?.to_lowercase();
        for judged in
            settled.verdicts.iter().filter(|j| j.verdict.word() != "not applicable" && !j.verdict.stopped_ahead())
        {
            assert!(text.contains(&squeeze(judged.rule.title).to_lowercase()), "{name}: {}", judged.rule.title);
        }
        let skipped = settled.verdicts.iter().filter(|j| j.verdict.word() == "not applicable").count();
        assert!(text.contains(&format!("{skipped}rulesdonotapply")), "{name}: {skipped}");
    }
    Ok(())
}

#[test]
fn who_accepted_a_rule_is_named_in_our_own_edition_alone() -> Outcome {
    let decision = "\n[[decision]]\nrule = \"no-measured-results\"\ndecision = \"accepted\"\nbecause = \"tested on site instead\"\nwho = \"Q. Nobody\"\n";
    let settled = job("vehicle-yard", decision)?;
    let (client, us) =
        (text(&settled, "compliance-matrix", Edition::Client)?, text(&settled, "compliance-matrix", Edition::Us)?);
    assert!(us.contains("acceptedbyQ.Nobody") && !client.contains("Q.Nobody"), "{client}");
    assert!(client.contains("testedonsiteinstead"));
    Ok(())
}

#[test]
fn drawing_and_scope_split_name_the_same_things() -> Outcome {
    for name in ["vehicle-yard", "fuel-pad", "refinery-basin"] {
        let settled = job(name, "")?;
        let scope = text(&settled, "scope-split", Edition::Client)?;
        let sheets = drawings::set(&settled, Edition::Client);
        let drawn: Vec<&str> = sheets.iter().flat_map(|d| d.sheet_texts.lines()).collect();
        let mut both = 0;
        for item in [
            "Level float with its switch",
            "Alarm panel, wiring, power",
            "Compressed air",
            "Freight to the site",
            "Clean water for the first filling",
        ] {
            let on_paper = scope.contains(&squeeze(item));
            assert_eq!(on_paper, drawn.iter().any(|text| squeeze(text) == squeeze(item)), "{name}: {item}");
            both += usize::from(on_paper);
        }
        assert!(both > 2, "{name}");
    }
    Ok(())
}

#[test]
fn a_range_that_is_invented_gives_no_budget() -> Outcome {
    let settled = job("vehicle-yard", "")?;
    assert!(settled.job.enquiry.range.is_none());
    let text = text(&settled, "scope-split", Edition::Client)?;
    assert!(text.contains("Budget:tofollowwiththequotation") && text.contains("Delivery:tofollow"), "{text}");
    Ok(())
}

#[test]
fn without_a_unit_nothing_is_stated_specified_or_ordered() -> Outcome {
    let settled = job("vehicle-yard", "\n[unit]\nmodel = \"no such model\"\n")?;
    assert!(settled.job.design.train.is_none());
    let there: Vec<&str> = of(&settled, Edition::Client).map(|paper| paper.name).collect();
    for absent in ["data-sheet", "technical-specification", "scope-split"] {
        assert!(!there.contains(&absent), "{absent}");
    }
    let text = text(&settled, "performance-statement", Edition::Client)?;
    assert!(text.contains("Nounitwaslaidout") && !text.contains("Stated:kept"), "{text}");
    Ok(())
}
