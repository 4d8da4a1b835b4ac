//! What is turned at one end moves at the other: dimensions, units and decisions.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{Sheet, demo, worked};
use stillrise_checks::Verdict;
use stillrise_design::Val;
use stillrise_design::performance::levels::OilLevels;
use stillrise_design::performance::{Performance, removal::Removal};
use stillrise_design::stages::Place;
use stillrise_design::train::unit::Unit;
use stillrise_handbook::page::Arg;
use stillrise_search::Settled;
use stillrise_units::{Concentration, Typed};

fn performance(settled: &Settled) -> &Performance {
    settled.job.design.performance.as_ref().expect("a performance was found")
}

fn cap(levels: &OilLevels, name: &str) -> f64 {
    levels.caps.iter().find(|c| c.of.word() == name).unwrap_or_else(|| panic!("no cap by the {name}")).thickness.q.si()
}

/// Within `share` of the larger of the two.
fn near(a: f64, b: f64, share: f64) -> bool {
    (a - b).abs() <= share * a.abs().max(b.abs()).max(1e-12)
}

#[test]
fn a_wider_outlet_lowers_the_well_and_lets_more_oil_stand() {
    // Walls so low that the freeboard decides how much oil may stand.
    let low = Sheet::data("wash").with("unit.dimensions.height", "58 in");
    let (narrow, wide) =
        (low.with("outlet.pipe", "4 in").settle(&demo()), low.with("outlet.pipe", "6 in").settle(&demo()));
    let (narrow, wide) = (performance(&narrow), performance(&wide));
    for (a, b) in narrow.profiles.iter().zip(&wide.profiles).skip(1) {
        assert!(b.well.q.si() < a.well.q.si() - 0.005, "{}: {:?} then {:?}", a.at.name(), a.well.q, b.well.q);
        assert!(b.inlet.q.si() < a.inlet.q.si() - 0.005, "{}", a.at.name());
        // What the water loses inside the unit has nothing to do with the outlet.
        assert!(near(a.inlet.q.si() - a.well.q.si(), b.inlet.q.si() - b.well.q.si(), 1e-9), "{}", a.at.name());
    }
    for (a, b) in narrow.levels.iter().zip(&wide.levels) {
        for name in ["wall", "inlet"] {
            assert!(cap(b, name) > cap(a, name) + 0.01, "{name}: {} then {}", cap(a, name), cap(b, name));
        }
        for name in ["downcomer lip", "top of the pack"] {
            assert_eq!(cap(a, name).to_bits(), cap(b, name).to_bits(), "{name} hangs on the crest alone");
        }
        assert!(
            ["wall", "inlet"].contains(&a.caps[a.governing].of.word()),
            "{} governs",
            a.caps[a.governing].of.word()
        );
        for (a, b) in a.levels.iter().zip(&b.levels) {
            assert!(b.thickness.q > a.thickness.q, "{} did not move", a.point.title);
            assert!(b.interface.q < a.interface.q, "{} did not move", a.point.title);
            assert!(b.volume.q > a.volume.q, "{} did not move", a.point.title);
        }
    }
}

#[test]
fn a_wider_outlet_of_a_worked_job_lowers_its_well() {
    let job = worked().into_iter().find(|j| j.name == "vehicle-yard").expect("the vehicle yard is a worked job");
    let job = job.with("unit.model", "Demo 260");
    let (six, eight) =
        (job.with("outlet.pipe", "6 in").settle(&demo()), job.with("outlet.pipe", "8 in").settle(&demo()));
    let pick = |s: &Settled| s.pick.as_ref().map(|p| (p.how, p.count));
    assert_eq!(pick(&six), pick(&eight), "the comparison is of one unit");
    let (a, b) = (performance(&six), performance(&eight));
    assert!(b.highest().well.q < a.highest().well.q);
    for (a, b) in a.levels.iter().zip(&b.levels) {
        assert!(cap(b, "inlet") > cap(a, "inlet") && cap(b, "wall") > cap(a, "wall"), "{}", a.oil);
    }
}

/// Worked jobs and bases, with a weir and made to measure as well.
fn all() -> Vec<(String, Settled)> {
    let demo = demo();
    let bases = ["wash", "pumped", "ranged", "twin_us"].map(Sheet::data);
    let custom = Sheet::data("twin_us").with("unit.custom", "true").with("site.max_width", "60 ft");
    let weir = Sheet::data("wash").with("unit.dimensions.weir_crest", "46.5 in");
    let full = Sheet::data("wash").with("outlet.pipe", "2 in");
    let sheets = worked().into_iter().chain(bases).chain([custom, weir, full]);
    sheets.map(|sheet| (sheet.name.clone(), sheet.settle(&demo))).collect()
}

#[test]
fn losses_sum_from_crest_to_inlet() {
    for (name, settled) in all() {
        let crest = settled.job.design.train.as_ref().expect("a train").unit.outlet.crest.q.si();
        for profile in &performance(&settled).profiles {
            let losses: f64 = profile.steps.iter().map(|s| s.loss.q.si()).sum();
            let fall = profile.inlet.q.si() - crest;
            assert!((losses - fall).abs() < 1e-9, "{name}, {}: {losses} against {fall}", profile.at.name());
            assert_eq!(profile.steps.last().map(|s| s.level.q), Some(profile.inlet.q), "{name}, {}", profile.at.name());
        }
    }
}

#[test]
fn zones_sum_to_the_water_of_the_vessel() {
    for (name, settled) in all() {
        let unit = &settled.job.design.train.as_ref().expect("a train").unit;
        let water = unit.layout.water_volume.q.si();
        let volumes: f64 =
            unit.compartments.iter().filter(|c| c.place != Place::PumpOut).map(|z| z.volume.q.si()).sum();
        assert!(near(volumes, water, 1e-12), "{name}: zones {volumes}, vessel {water}");
        let lengths: f64 = unit.compartments.iter().map(|z| z.length.q.si()).sum();
        assert!(near(lengths, unit.body.length().q.si(), 1e-12), "{name}: zones {lengths}");
        for pair in unit.compartments.windows(2) {
            assert!(near(pair[0].to.si(), pair[1].from.si(), 1e-12), "{name}: {:?} ends elsewhere", pair[0].place);
        }
    }
}

#[test]
fn a_longer_pack_moves_layout_and_effluent() {
    // Droplets so fine that a little more plate area is seen, and a hopper that leaves room for the pack.
    let base = Sheet::data("wash").with("droplets.d50", "40 um").with("unit.dimensions.hopper_length", "24 in");
    let (short, long) = (base.settle(&demo()), base.with("unit.dimensions.pack_length", "66 in").settle(&demo()));
    let unit = |s: &Settled| s.job.design.train.as_ref().expect("a train").unit.clone();
    let (a, b) = (unit(&short), unit(&long));
    let pack = |u: &Unit| u.pack.as_ref().expect("plates").follows.clone();
    assert!(near(pack(&b).area.q.si() / pack(&a).area.q.si(), 66.0 / 60.0, 1e-12), "plates are as long as the pack");
    assert_eq!(pack(&a).plates.q, pack(&b).plates.q);
    let (a, b) = (a.layout, b.layout);
    let inch = 0.0254;
    assert!(
        near(a.primary_length.q.si() - b.primary_length.q.si(), 6.0 * inch, 1e-9),
        "the vessel is as long as before"
    );
    assert!(b.tank_area.q < a.tank_area.q);
    assert!(near(a.oil_area.q.si(), b.oil_area.q.si(), 1e-12), "oil stands over both alike");
    for (a, b) in performance(&short).removals.iter().zip(&performance(&long).removals) {
        let (before, after) = (a.free.ideal.expect("worked").q, b.free.ideal.expect("worked").q);
        assert!(after < before, "{}: {before:?} then {after:?}", a.case);
        assert!(b.total.expected.q < a.total.expected.q, "{}", a.case);
        assert_eq!(a.content.total.q, b.content.total.q);
    }
    let pack =
        |s: &Settled| performance(s).highest().steps.iter().find(|s| s.name == "plate pack").expect("a pack").loss.q;
    assert!(pack(&long) > pack(&short), "a longer pack loses more head");
}

#[test]
fn us_and_si_are_the_same_job() {
    let (us, si) = (Sheet::data("twin_us").settle(&demo()), Sheet::data("twin_si").settle(&demo()));
    let name = |s: &Settled| s.pick.as_ref().map(|p| (p.how, p.count, p.fits, p.because.clone()));
    assert_eq!(name(&us), name(&si));
    let tags = |s: &Settled| s.candidates.iter().map(|c| (c.unit.clone(), c.taken)).collect::<Vec<_>>();
    assert_eq!(tags(&us), tags(&si));
    let (a, b) = (&us.job.ledger.entries, &si.job.ledger.entries);
    assert_eq!(a.len(), b.len(), "the trails are of one length");
    for (a, b) in a.iter().zip(b) {
        let here = format!("{}, {}", a.section, a.label);
        // A label names the temperature of a density as its reader does.
        let in_si = |label: &str| label.replace("59 °F", "15 °C");
        assert_eq!((&a.section, in_si(&a.label)), (&b.section, in_si(&b.label)));
        let same = match (&a.value, &b.value) {
            // Differences of levels are held to the micrometre's thousandth, not to a share of nearly nothing.
            (Arg::Number(a), Arg::Number(b)) => near(*a, *b, 1e-9) || (a - b).abs() < 1e-9,
            (Arg::Series(a), Arg::Series(b)) => {
                a.len() == b.len() && a.iter().zip(b).all(|(a, b)| near(a.0, b.0, 1e-9) && near(a.1, b.1, 1e-9))
            }
            // What is gathered stands in lines of its own.
            (Arg::Group(a, _), Arg::Group(b, _)) => a == b,
            (Arg::Groups(a), Arg::Groups(b)) => a.len() == b.len(),
            (a, b) => a == b,
        };
        assert!(same, "{here}: {:?} in US units, {:?} in SI units", a.value, b.value);
    }
    let (a, b) = (performance(&us), performance(&si));
    let bound = |bound: Option<Val<Concentration>>| bound.expect("worked").q.si();
    let left = |r: &Removal| [r.flow.q.si(), bound(r.total.ideal), r.total.expected.q.si(), bound(r.total.mixed)];
    assert_eq!(a.removals.len(), b.removals.len());
    for (a, b) in a.removals.iter().zip(&b.removals) {
        assert!(left(a).iter().zip(left(b)).all(|(a, b)| near(*a, b, 1e-9)), "{}: {:?} {:?}", a.case, left(a), left(b));
    }
    let words = |s: &Settled| s.verdicts.iter().map(|j| (j.rule.id, j.verdict.word())).collect::<Vec<_>>();
    assert_eq!(words(&us), words(&si));
    let asked = |s: &Settled| s.questions().iter().map(|q| q.key.clone()).collect::<Vec<_>>();
    assert_eq!(asked(&us), asked(&si), "the same questions in the same order");
}

#[test]
fn accepted_findings_no_longer_fail() {
    let job =
        worked().into_iter().find(|j| j.name == "transformer-yard").expect("the transformer yard is a worked job");
    let settled = job.settle(&demo());
    assert!(settled.fails(), "this job is meant to fail");
    let failing: Vec<&str> =
        settled.verdicts.iter().filter(|j| matches!(j.verdict, Verdict::Fails(_))).map(|j| j.rule.id).collect();
    assert!(failing.len() > 1, "{failing:?}");
    let decided = |rules: &[&str], word: &str| {
        let mut sheet = job.clone();
        let list = rules.iter().map(|rule| {
            let pairs = [("rule", *rule), ("decision", word), ("because", "settled with the client")];
            toml::Value::Table(
                pairs.map(|(k, v)| (k.to_owned(), toml::Value::String(v.to_owned()))).into_iter().collect(),
            )
        });
        sheet.table.insert("decision".to_owned(), toml::Value::Array(list.collect()));
        sheet.settle(&demo())
    };
    for word in ["accepted", "by others"] {
        let all = decided(&failing, word);
        assert!(!all.fails(), "{word}: everything that fails is settled");
        let still = |j: &&stillrise_checks::Judged| matches!(j.verdict, Verdict::Fails(_));
        assert_eq!(all.verdicts.iter().filter(still).count(), failing.len(), "a decision hides no finding");
        assert!(decided(&failing[1..], word).fails(), "{}: nobody decided on it", failing[0]);
    }
    assert!(decided(&failing, "open").fails(), "an open decision settles nothing");
}
