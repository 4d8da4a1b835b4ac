//! What the papers for shop, contractor and operator must keep, read back from the finished PDF by another library.

mod common;

use common::{job, root};
use std::error::Error;
use std::sync::OnceLock;
use stillrise_design::performance::installation::Stands;
use stillrise_documents::papers::{named, typeset};
use stillrise_documents::render::pdf::Pdf;
use stillrise_documents::render::scale::dimension_text;
use stillrise_documents::{Edition, papers};
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_search::Settled;
use stillrise_search::diagnosis::causes::{CAUSES, Id};
use stillrise_units::catalog::{GAL, IN, KG, KN, L, LB, LBF, M3, MM};
use stillrise_units::print::in_prose;
use stillrise_units::{System, Typed, Unit};

type Outcome = Result<(), Box<dyn Error>>;

/// The papers of this file, each with the most pages that it may have.
const PAPERS: [(&str, usize); 5] = [
    ("acceptance-tests", 4),
    ("start-up", 2),
    ("inspection-and-packing", 3),
    ("installation-guide", 4),
    ("maintenance-manual", 8),
];

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
            if !named(paper).ok_or(paper)?.applies(settled) {
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

/// A length as the drawings write it, without spaces, as in [`text`].
fn written(settled: &Settled, length: stillrise_units::Length) -> String {
    squeeze(&dimension_text(length, settled.job.enquiry.system()))
}

#[test]
fn the_numbers_of_the_job_stand_in_each_paper() -> Outcome {
    for (name, settled) in jobs()? {
        let (Some(train), Some(p)) = (&settled.job.design.train, &settled.job.design.performance) else { continue };
        let crest = written(settled, train.unit.outlet.crest.q);
        let oil = p.levels.iter().min_by(|a, b| a.limit.q.partial_cmp(&b.limit.q).unwrap());
        let trips = oil.and_then(|oil| oil.level(Mark::Alarm)).map(|level| written(settled, level.interface.q));
        let shuts = oil.and_then(|oil| oil.level(Mark::ShutOff)).map(|level| written(settled, level.interface.q));
        let largest = p.profiles.last().ok_or("no profile")?;
        for paper in ["acceptance-tests", "start-up"] {
            let text = text(&set(settled, paper)?)?;
            for wanted in [Some(&crest), trips.as_ref(), shuts.as_ref()].into_iter().flatten() {
                assert!(text.contains(wanted.as_str()), "{name}: {paper} does not say {wanted}");
            }
            assert!(text.contains("HIGHOILORLOWWATER"), "{name}: {paper}: the alarm's label");
            if largest.inlet.q <= train.unit.shape.height() {
                assert!(text.contains(&written(settled, largest.inlet.q)), "{name}: {paper}: highest level");
            }
        }
        let prose = |si: f64, us: &Unit, metric: &Unit| {
            let unit = if settled.job.enquiry.system() == System::Us { us } else { metric };
            squeeze(&in_prose(si, unit)).replace("m3", "m³").replace("yd3", "yd³")
        };
        let start = text(&set(settled, "start-up")?)?;
        let fill = prose(train.unit.layout.water_volume.q.si(), &GAL, &M3);
        assert!(start.contains(&fill), "{name}: start-up does not say {fill}");
        let manual = text(&set(settled, "maintenance-manual")?)?;
        if let Some(level) = oil.and_then(|oil| oil.level(Mark::PumpOut)) {
            let limit = format!("{}({}", prose(level.thickness.q.si(), &IN, &MM), prose(level.volume.q.si(), &GAL, &L));
            assert!(manual.contains(&limit), "{name}: the oil is pumped at {limit}");
        }
        let gauged = ["water-findingpaste", "Lowerasticktothetopofthesludge", "Measuretheinterface"];
        assert!(gauged.iter().all(|step| manual.contains(step)), "{name}: gauging");
        let plates = train.unit.pack.is_some() || train.unit.mesh.is_some();
        assert_eq!(plates, manual.contains("behindthecoalescer"), "{name}: head over the coalescer");
        assert!(manual.contains(&crest) && manual.contains("HIGHOILORLOWWATER"), "{name}");
        // One interval each, none of the rules that were not chosen, and the days of the job where they are short.
        assert!(!manual.contains("Dallas") && !manual.contains("ThurstonCounty,Washington"), "{name}: published rules");
        if let Some(days) = p.storage.sludge_days.map(|t| t.q.si() / 86_400.0).filter(|d| (1.0..100.0).contains(d)) {
            assert!(manual.contains(&format!("Pumpthesludgeout{}", days.floor())), "{name}: days {days}");
        }
        if !settled.job.enquiry.unit_stands() {
            let list = text(&set(settled, "inspection-and-packing")?)?;
            assert!(list.contains(&squeeze(&train.unit.particulars.model)), "{name}: designation");
            assert!(!list.contains("classI") && list.contains("claimsnoclassofastandard"), "{name}: no class");
            if let Some((_, basis)) = &train.unit.particulars.rated {
                let basis = squeeze(basis).replace("m3", "m³").replace("ft3", "ft³");
                assert!(list.contains(&basis), "{name}: the rated flow's basis is {basis}");
            }
            let guide = text(&set(settled, "installation-guide")?)?;
            if let Some(uplift) = p.flotation.as_ref().and_then(|f| f.uplift) {
                assert!(guide.contains(&prose(uplift.q.si(), &LBF, &KN)), "{name}: uplift");
            }
            if let Some(empty) = p
                .shop
                .as_ref()
                .and_then(|s| s.weights.as_ref()?.empty)
                .filter(|_| !train.unit.arrangement.is_built_in())
            {
                let weight = prose(empty.q.si(), &LB, &KG);
                assert!(guide.contains(&weight) && list.contains(&weight), "{name}: weight of {weight}");
            }
            assert!(guide.contains(&crest) && guide.contains("generalarrangement"), "{name}: guide");
        }
    }
    Ok(())
}

#[test]
fn what_a_unit_has_not_no_paper_speaks_of() -> Outcome {
    let mut seen = [false; 8];
    for (name, settled) in jobs()? {
        let Some(train) = &settled.job.design.train else { continue };
        let p = settled.job.design.performance.as_ref().ok_or("no performance")?;
        let stands = settled.job.enquiry.unit_stands();
        let (unit, pumped) = (&train.unit, settled.job.design.basis.as_ref().is_some_and(|b| b.feed.pumped));
        let tests = text(&set(settled, "acceptance-tests")?)?;
        let manual = text(&set(settled, "maintenance-manual")?)?;
        let mut agree = |k: usize, there: bool, said: bool, what: &str| {
            assert_eq!(there, said, "{name}: {what}");
            seen[k] |= there;
            seen[4 + k] |= !there;
        };
        agree(0, unit.mesh.is_some(), manual.contains("Liftthemeshout"), "the mesh is washed");
        agree(1, pumped, tests.contains("Raiseandlowerthesump"), "feed pumps are tested");
        agree(2, unit.pump_out.is_some(), tests.contains("shutoneoffandsee"), "effluent pumps are tested");
        assert_eq!(
            unit.pack.is_some(),
            manual.contains("togapsof") || manual.contains("throughgapsof"),
            "{name}: plates"
        );
        if !stands {
            let guide = text(&set(settled, "installation-guide")?)?;
            agree(3, p.flotation.is_some(), guide.contains("Hold-down"), "hold-down");
            let set_up = unit.arrangement.is_set_up() && p.site.installation.cover.is_none();
            if set_up && p.flotation.is_none() {
                assert!(!guide.contains("Fillinginlayers"), "{name}: nothing is filled in");
            }
        }
    }
    assert_eq!(seen, [true; 8], "each part is there in one job and missing in another");
    Ok(())
}

#[test]
fn trouble_shooting_is_what_a_diagnosis_would_say() -> Outcome {
    for (name, settled) in jobs()? {
        let Some(train) = &settled.job.design.train else { continue };
        let text = text(&set(settled, "maintenance-manual")?)?;
        let joined = |text: &str| squeeze(text).replace('-', "");
        let said = joined(&text);
        for cause in CAUSES {
            let there = match cause.id {
                Id::FouledMesh => train.unit.mesh.is_some(),
                Id::BlockedPlates => train.unit.pack.is_some(),
                Id::PumpShear => settled.job.design.basis.as_ref().is_some_and(|b| b.feed.pumped),
                _ => true,
            };
            assert_eq!(there, said.contains(&joined(cause.title)), "{name}: {}", cause.title);
        }
    }
    Ok(())
}

#[test]
fn other_arrangements_and_several_units_have_sound_papers_too() -> Outcome {
    for (model, more, several) in [
        ("Demo U 120", "", false),
        ("Demo V 500", "", false),
        ("Demo 80", "count = 2\n", true),
        ("Demo G 200", "pump_out = true\n", false),
    ] {
        for name in ["vehicle-yard", "fuel-pad"] {
            let settled = job(name, &format!("\n[unit]\nmodel = \"{model}\"\n{more}"))?;
            let train = settled.job.design.train.as_ref().ok_or(model)?;
            for (paper, most) in PAPERS {
                let pdf = set(&settled, paper)?;
                assert!(pdf.pages <= most, "{name}, {model}: {paper} has {} pages", pdf.pages);
            }
            let text = text(&set(&settled, "start-up")?)?;
            assert_eq!(several, text.contains("ineachunit"), "{name}, {model}");
            let stands = settled.job.design.performance.as_ref().map(|p| p.site.installation.stands.q);
            let low = matches!(stands, Some(Stands::Buried | Stands::InPit)) || !train.unit.arrangement.is_set_up();
            assert_eq!(low, text.contains("Noemptyingbefore"), "{name}, {model}");
        }
    }
    Ok(())
}

#[test]
fn every_list_is_made_for_a_job_without_a_unit_too() -> Outcome {
    let settled = job("vehicle-yard", "\n[unit]\nmodel = \"no such model\"\n")?;
    assert!(settled.job.design.train.is_none());
    let made: Vec<&str> = papers::of(&settled, Edition::Client).map(|paper| paper.name).collect();
    assert!(PAPERS.iter().all(|(name, _)| !made.contains(name)), "{made:?}");
    Ok(())
}
