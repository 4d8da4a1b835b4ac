//! A unit that ran well until something was changed: the good period calibrates, the change competes with the causes.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{OUT, Sheet, demo};
use stillrise_design::enquiry::date::Date;
use stillrise_search::Settled;
use stillrise_search::diagnosis::causes::CAUSES;
use stillrise_search::diagnosis::{Diagnosis, SCATTER, diagnose};
use stillrise_units::Typed;
use stillrise_units::catalog::{M3, MG_L};

fn changed() -> Sheet {
    Sheet::data("changed")
}

fn look(sheet: &Sheet) -> (Settled, Diagnosis) {
    let settled = sheet.settle(&demo());
    let found = diagnose(settled.rated()).unwrap_or_else(|s| panic!("{s}: {:?}", settled.job.design.stops));
    (settled, found)
}

/// The good samples: geometric mean and log-standard deviation worked by hand from 24, 21, 28, 23, 30 mg/L (logarithms
/// 3.17805, 3.04452, 3.33220, 3.13549, 3.40120; mean 3.21829; sum of squares 0.08510; its quarter, root: 0.14586).
#[test]
fn the_good_period_is_the_baseline() {
    let (_, found) = look(&changed());
    let c = found.calibration.expect("a good period");
    assert_eq!(c.samples, 5);
    assert!((MG_L.from_si(c.mean.si()) - 24.985).abs() < 0.002, "{c:?}");
    assert!(c.scatter.is_some_and(|s| (s - 0.14586).abs() < 5e-5), "{c:?}");
    // The baseline comes at least as near the good results as the basis did.
    let off = |x: f64| (x / c.mean.si()).ln().abs();
    assert!(off(c.after.si()) <= off(c.before.si()) + 1e-12 && off(c.after.si()) < 0.3, "{c:?}");
    for s in &found.seen {
        let baseline = MG_L.from_si(s.expected.si());
        assert!((15.0..40.0).contains(&baseline), "{}: {baseline}", s.name);
    }
    assert_eq!(found.seen.iter().filter(|s| s.good).count(), 5);
}

/// A fifth of each result: no plausible oil and droplets bring the chain down to them, and the rest is a factor on what
/// leaves. By hand: the chain within a factor of two, nine times in ten, is a variance of (0.69315/1.64485)^2 = 0.17758; the
/// mean of five that scatter by 0.14586 has 0.004255; so 0.17758/0.18184 = 0.9766 of the logarithm that oil and droplets
/// leave is taken.
#[test]
fn what_oil_and_droplets_leave_unexplained_is_a_factor() {
    let mut sheet = changed();
    for o in sheet.table["observed"].as_array_mut().expect("observations") {
        let Some(text) = o.get("oil_out").and_then(|v| v.as_str()).map(str::to_owned) else { continue };
        let (number, unit) = text.split_once(' ').expect("a number and its unit");
        let fifth = number.parse::<f64>().expect("a number") / 5.0;
        o["oil_out"] = format!("{fifth} {unit}").into();
    }
    let (_, found) = look(&sheet);
    let c = found.calibration.expect("a good period");
    let left = (c.mean.si() * c.factors.rest / c.after.si()).ln();
    assert!(left < -0.2, "oil and droplets alone do it: {c:?}");
    assert!((c.factors.rest.ln() / left - 0.9766).abs() < 5e-4, "{c:?}");
    assert!((c.after.si() / c.mean.si()).ln().abs() < 0.05, "{c:?}");
}

#[test]
fn with_four_good_samples_the_scatter_is_judged() {
    let mut sheet = changed();
    let list = sheet.table["observed"].as_array_mut().expect("observations");
    list.remove(0);
    let (_, found) = look(&sheet);
    let c = found.calibration.expect("a good period");
    assert_eq!((c.samples, c.scatter), (4, None));
    assert_eq!(c.spread().to_bits(), SCATTER.to_bits());
}

#[test]
fn the_change_leads() {
    let (settled, found) = look(&changed());
    let lead = &found.explanations[0];
    assert!(!lead.causes.is_empty() && lead.causes.iter().all(|s| s.change.is_some()), "{lead:?}");
    // Either change is in it, and both together outweigh all that is not a change.
    assert_eq!(found.changes.len(), 2);
    assert!(
        found.changes.iter().all(|(k, w)| *w > 0.25 && settled.job.enquiry.changes.len() > *k),
        "{:?}",
        found.changes
    );
    let none: f64 =
        found.explanations.iter().filter(|e| e.causes.iter().all(|s| s.change.is_none())).map(|e| e.weight).sum();
    assert!(none < 0.15, "{none}");
    // What the change explains it explains to within the range of the results; the good period stays as it ran.
    for (s, e) in found.seen.iter().zip(&lead.effluent) {
        let out = MG_L.from_si(e.expect("measured").si());
        assert!(if s.good { (15.0..40.0).contains(&out) } else { (70.0..140.0).contains(&out) }, "{}: {out}", s.name);
    }
}

#[test]
fn steps_go_from_cheap_to_dear_and_say_when_to_sample_again() {
    let (settled, found) = look(&changed());
    assert!(found.steps.len() >= 2);
    assert!(found.steps.windows(2).all(|w| w[0].cause.cost <= w[1].cause.cost));
    let unit = &settled.job.design.train.as_ref().expect("a unit").unit;
    let water = 3.0 * (unit.layout.water_volume.q.si() + unit.hopper_volume().si());
    let measured = 99.0;
    for step in &found.steps {
        assert!((step.again.water.si() - water).abs() < 1e-12 && step.again.days >= step.cause.settles);
        let Some((low, high)) = step.expect else { continue };
        let [low, high] = [low, high].map(|c| MG_L.from_si(c.si()));
        assert!(low < high && low < measured, "{}: {low} to {high}", step.cause.id.word());
    }
    // With all of it removed the unit runs as it ran.
    let (low, high) = found.as_it_ran.expect("measured");
    assert!(MG_L.from_si(low.si()) < 25.0 && MG_L.from_si(high.si()) > 25.0 && MG_L.from_si(high.si()) < 50.0);
    assert!(M3.from_si(water) > 3.0, "{water}");
}

/// The same samples without anything recorded as changed: the causes stand alone.
#[test]
fn without_a_change_the_generic_causes_answer() {
    let mut sheet = changed();
    sheet.table.remove("change");
    let (_, found) = look(&sheet);
    // The results step up, and those before are the baseline all the same.
    assert!(found.changes.is_empty() && found.jump.is_some() && found.calibration.is_some());
    assert!(found.explanations.iter().flat_map(|e| &e.causes).all(|s| s.change.is_none()));
    // Marked as good by hand they are a baseline again.
    for k in 0..5 {
        let list = sheet.table["observed"].as_array_mut().expect("observations");
        list[k].as_table_mut().expect("one").insert("regime".to_owned(), "Good".into());
    }
    let (_, found) = look(&sheet);
    assert_eq!(found.calibration.map(|c| c.samples), Some(5));
}

/// A change after the last sample explains nothing, and is said to; a gentle pump is less of a suspect than a hard one.
#[test]
fn what_a_change_says_counts() {
    let late = changed().with("change.date", "2026-07-01");
    let (_, found) = look(&late);
    assert_eq!(found.too_late, [0]);
    let shear = |sheet: &Sheet| {
        let (_, found) = look(sheet);
        let held = |e: &&stillrise_search::diagnosis::Explanation| {
            e.causes.iter().any(|s| s.cause.id.word() == "pump-shear" && s.change.is_some())
        };
        found.explanations.iter().filter(held).map(|e| e.weight).sum::<f64>()
    };
    let (hard, gentle) = (shear(&changed()), shear(&changed().with("change.pump", "progressive-cavity")));
    assert!(gentle < 0.5 * hard, "{gentle} {hard}");
}

/// With all three at work only the three together explain all: a triple is found.
#[test]
fn three_causes_are_found_together() {
    let (_, found) = look(&changed());
    assert!(found.explanations.iter().any(|e| e.causes.len() == 3), "{:?}", found.explanations.len());
    assert!(found.explanations.iter().all(|e| e.causes.len() <= 3));
    // Nothing stands twice in one set.
    for e in &found.explanations {
        let mut ids: Vec<_> = e.causes.iter().map(|s| s.cause.id.word()).collect();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), e.causes.len());
    }
    assert!(found.sets > CAUSES.len());
}

#[test]
fn a_unit_that_is_not_described_is_not_rated() {
    let mut sheet = changed();
    sheet.table.remove("unit");
    let settled = sheet.settle(&demo());
    let stop = diagnose(settled.rated()).expect_err("no unit");
    assert!(stop.reason.contains("described first") && stop.reason.contains("length, width and height"), "{stop}");
}

#[test]
fn a_good_period_alone_has_nothing_to_explain() {
    let mut sheet = changed();
    sheet.table["observed"].as_array_mut().expect("observations").truncate(5);
    let settled = sheet.settle(&demo());
    assert!(diagnose(settled.rated()).is_err_and(|s| s.reason.contains("good period")));
}

/// What is no day, no time and no change is refused with its place.
#[test]
fn slips_of_the_new_keys_are_refused() {
    for (key, value, place, words) in [
        ("change.date", "13 April", "change 1", "year-month-day"),
        ("change.date", "2026-02-30", "change 1", "28 days"),
        ("change.what", "pumps", "change 1", "pump"),
        ("observed.date", "2026-1-12", "observed \"January\"", "digits"),
        ("observed.time", "25:00", "observed \"January\"", "minutes"),
        ("observed.taken", "surface", "observed \"January\"", "from the surface"),
    ] {
        let faults = changed().with(key, value).enquiry().expect_err(key);
        let text = format!("{faults:?}");
        assert!(faults.iter().any(|f| f.place.contains(place)) && text.contains(words), "{key}: {text}");
    }
    let faults = changed().with("change.date", OUT).enquiry().expect_err("needed");
    assert!(format!("{faults:?}").contains("no \\\"date\\\""), "{faults:?}");
    assert!(Date::read("2026-04-13").is_ok());
}

/// 24, 21, 28, 23, 30 mg/L, then 95, 120, 82, 104 mg/L: means of the logarithms 3.21829 and 4.59792, squares about them
/// 0.08510 and 0.07896; pooled deviation (0.16406 / 7) ^ 0.5 = 0.1531, so that Student's t is 1.37963 / (0.1531 x 0.6708) = 13.
#[test]
fn a_step_without_a_recorded_change_ends_the_good_period() {
    let unsaid = || {
        let mut sheet = changed();
        sheet.table.remove("change");
        sheet
    };
    let (_, found) = look(&unsaid());
    let step = found.jump.expect("a step");
    assert_eq!((step.last.to_string(), step.first.to_string()), ("2026-04-06".to_owned(), "2026-04-27".to_owned()));
    assert_eq!((step.before.0, step.after.0), (5, 4));
    assert!((MG_L.from_si(step.before.1.si()) - 24.985).abs() < 0.002, "{step:?}");
    assert!((MG_L.from_si(step.after.1.si()) - 99.28).abs() < 0.02, "{step:?}");
    assert_eq!(found.seen.iter().filter(|s| s.good).count(), 5);
    assert!(found.calibration.is_some_and(|c| c.samples == 5));
    // What was recorded or marked is not guessed at.
    assert!(look(&changed()).1.jump.is_none());
    let mut marked = unsaid();
    marked.table["observed"].as_array_mut().expect("observations")[0]
        .as_table_mut()
        .expect("a block")
        .insert("regime".to_owned(), "bad".into());
    assert!(look(&marked).1.jump.is_none());
    // One high result is none, and neither are results that overlap.
    let mut one = unsaid();
    one.table["observed"].as_array_mut().expect("observations").truncate(6);
    assert!(look(&one).1.jump.is_none());
    let mut overlap = unsaid();
    overlap.table["observed"].as_array_mut().expect("observations")[6]["oil_out"] = "22 mg/L".into();
    assert!(look(&overlap).1.jump.is_none());
}

/// 7, 6, 8, 9, 11 mg/L, then 24, 31, 22, 17, then 9 and 6: means of the logarithms 2.05732 of seven and 3.13407 of four,
/// squares about them 0.30908 and 0.18425; pooled deviation (0.49334 / 9) ^ 0.5 = 0.23413, so that Student's t is
/// 1.07676 / (0.23413 x 0.62678) = 7.3.
#[test]
fn a_spell_that_ended_by_itself_leaves_the_rest_as_the_good_period() {
    let of = |results: &str| {
        let mut sheet = changed();
        sheet.table.remove("change");
        sheet.table.remove("observed");
        let text = toml::to_string(&sheet.table).expect("a table");
        let set = format!("\n[[samples]]\nname = \"outfall\"\nwhere = \"out\"\nresults = [{results}]\n");
        look(&Sheet::text("spring", &(text + &set))).1
    };
    let low = "\"2025-07-08: 7 mg/L\", \"2025-08-12: 6 mg/L\", \"2025-09-09: <5 mg/L\", \"2025-10-14: 8 mg/L\", \"2025-11-11: 9 mg/L\", \"2026-01-13: 11 mg/L\"";
    let high = "\"2026-03-10: 24 mg/L\", \"2026-03-24: 31 mg/L\", \"2026-04-07: 22 mg/L\", \"2026-04-21: 17 mg/L\"";
    let found = of(&format!("{low}, {high}, \"2026-05-12: 9 mg/L\", \"2026-06-09: 6 mg/L\""));
    let spell = found.jump.expect("a spell");
    let ended = spell.ended.map(|(last, low)| (last.to_string(), low.to_string()));
    assert_eq!(spell.first.to_string(), "2026-03-10");
    assert_eq!(ended, Some(("2026-04-21".to_owned(), "2026-05-12".to_owned())));
    assert_eq!((spell.before.0, spell.after.0), (7, 4));
    assert!((MG_L.from_si(spell.before.1.si()) - 7.825).abs() < 0.001, "{spell:?}");
    assert!((MG_L.from_si(spell.after.1.si()) - 22.967).abs() < 0.001, "{spell:?}");
    // What was not detected in the good time belongs to it too.
    assert_eq!(found.seen.iter().filter(|s| s.good).count(), 8);
    // High results at the beginning alone are no complaint that began.
    assert!(
        of(&format!("{high}, \"2026-05-12: 9 mg/L\", \"2026-06-09: 6 mg/L\", \"2026-07-09: 7 mg/L\"")).jump.is_none()
    );
}
