//! Remedies of the worked jobs: each that is offered settles its rule when the changed enquiry is settled in full, and what is told
//! of it is what is found then.

#![allow(
    clippy::panic,
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a test fails by panicking, and tells times"
)]

mod common;

use common::{Sheet, demo, worked};
use std::time::Instant;
use stillrise_checks::{Grade, Judged, RULES};
use stillrise_design::enquiry::range::Range;
use stillrise_design::enquiry::{Enquiry, read_enquiry};
use stillrise_edit::{Action, apply};
use stillrise_search::remedies::{Remedy, remedies};
use stillrise_search::{Settled, settle};

/// The enquiry of a worked job with keys set in its text as it is written.
fn changed(sheet: &Sheet, keys: &[(String, String)]) -> Option<Enquiry> {
    let mut text = std::fs::read_to_string(sheet.folder.join("enquiry.toml")).expect("a worked job can be read");
    for (path, value) in keys {
        let action = Action::Set { path: path.parse().ok()?, value: value.clone(), from: None };
        text = apply(&text, &action).ok()?;
    }
    read_enquiry(&text, &|file| std::fs::read(sheet.folder.join(file)).ok()).ok()
}

fn of(sheet: &Sheet, settled: &Settled, range: &Range, rule: &str) -> Vec<Remedy> {
    let rule = RULES.iter().find(|r| r.id == rule).unwrap_or_else(|| panic!("no rule {rule}"));
    remedies(settled, range, rule, &|keys| changed(sheet, keys))
}

fn job(name: &str) -> Sheet {
    worked().into_iter().find(|sheet| sheet.name == name).unwrap_or_else(|| panic!("no job {name}"))
}

fn grade(settled: &Settled, rule: &str) -> Grade {
    settled.verdicts.iter().find(|j| j.rule.id == rule).map_or(Grade::NotApplicable, Judged::grade)
}

/// What a remedy says follows from it is what the changed enquiry comes to, settled as any other.
fn holds(sheet: &Sheet, before: &Settled, range: &Range, rule: &str, remedy: &Remedy) {
    let enquiry = changed(sheet, &remedy.keys).expect("what is offered can be read");
    let after = settle(&enquiry, range);
    let at = format!("{}, {rule}: {}", sheet.name, remedy.says);
    let (was, then) = (grade(before, rule), grade(&after, rule));
    assert_eq!(then, remedy.then.grade, "{at}");
    assert!(
        matches!(then, Grade::Passes | Grade::NotApplicable) || was == Grade::Fails && then == Grade::Warns,
        "{at}: {then:?}"
    );
    let of_range = enquiry.range.as_ref().unwrap_or(range);
    assert_eq!(after.pick.as_ref().map(|pick| pick.name(of_range)), remedy.then.unit, "{at}");
    let newly = after.verdicts.iter().filter(|j| {
        j.grade() == Grade::Fails && !j.is_settled() && j.rule.id != rule && grade(before, j.rule.id) != Grade::Fails
    });
    let newly: Vec<&str> = newly.map(|j| j.rule.id).collect();
    let told: Vec<&str> = remedy.then.fails.iter().map(|(rule, _)| rule.id).collect();
    assert_eq!(newly, told, "{at}");
    let words = |s: &Settled| -> Vec<_> {
        s.job.design.performance.iter().flat_map(|p| &p.limits).map(|l| l.word).collect::<Vec<_>>()
    };
    assert_eq!(words(&after), remedy.then.words.iter().map(|w| w.then).collect::<Vec<_>>(), "{at}");
}

#[test]
fn each_remedy_of_the_worked_jobs_settles_its_rule() {
    let range = demo();
    let mut longest = std::time::Duration::ZERO;
    let (mut offered, mut without) = (0, 0);
    for sheet in worked() {
        let settled = sheet.settle(&range);
        let open = settled.verdicts.iter().filter(|j| {
            matches!(j.grade(), Grade::Fails | Grade::Warns | Grade::CannotJudge) && !j.verdict.stopped_ahead()
        });
        for judged in open {
            let begun = Instant::now();
            let found = of(&sheet, &settled, &range, judged.rule.id);
            let took = begun.elapsed();
            longest = longest.max(took);
            let says: Vec<&str> = found.iter().map(|r| r.says.as_str()).collect();
            println!(
                "{:6.0} ms {} {} {:?}: {says:#?}",
                took.as_secs_f64() * 1e3,
                sheet.name,
                judged.rule.id,
                judged.grade()
            );
            assert!(found.len() <= 3);
            without += usize::from(found.is_empty());
            offered += found.len();
            // The full chain is dear; the first of each is the one that is taken.
            if let Some(first) = found.first() {
                holds(&sheet, &settled, &range, judged.rule.id, first);
            }
        }
    }
    println!("{offered} offered, {without} findings without, {:.0} ms at most", longest.as_secs_f64() * 1e3);
    assert!(offered > 20 && without > 20, "{offered} offered, {without} findings without");
}

/// What each must hold: the rule, and a part of what is said.
const EXPECTED: [(&str, &str, &str); 6] = [
    ("truck-wash", "frost-outdoors", "Insulate"),
    ("truck-wash", "not-a-gravity-duty", "quick-break"),
    ("hydro-deck", "drain-valve-open", "Keep the drain of pit 1 and pit 2 closed"),
    ("market-wash", "limit-not-shown", "Take Demo G 100"),
    ("transformer-yard", "spill-without-closure", "closure shut the outlet"),
    ("transformer-yard", "sheared-before-unit", "positive-displacement"),
];

#[test]
fn what_the_trade_would_do_is_among_them() {
    let range = demo();
    for (name, rule, says) in EXPECTED {
        let sheet = job(name);
        let settled = sheet.settle(&range);
        let found = of(&sheet, &settled, &range, rule);
        assert!(found.iter().any(|r| r.says.contains(says)), "{name}, {rule}: {found:#?}");
    }
}

#[test]
fn a_rule_that_passes_and_one_that_nothing_settles_have_none() {
    let range = demo();
    let sheet = job("truck-wash");
    let settled = sheet.settle(&range);
    // Benzene is dissolved, whatever is built; two areas contradict, and only the client knows which holds.
    for rule in ["limit-it-cannot-touch", "claims-contradict", "no-measured-results"] {
        assert_ne!(grade(&settled, rule), Grade::Passes, "{rule}");
        assert!(of(&sheet, &settled, &range, rule).is_empty(), "{rule}");
    }
    let passes = settled.verdicts.iter().find(|j| j.grade() == Grade::Passes).expect("some rule passes");
    assert!(of(&sheet, &settled, &range, passes.rule.id).is_empty(), "{}", passes.rule.id);
}

/// Facts of the customer's are never changed: areas, flows, contents, limits and levels.
#[test]
fn no_remedy_changes_what_the_customer_states() {
    let range = demo();
    let stated =
        ["surface", "rain", "stream", "limit", "oil ", "water", "droplets", "solids", "stated", "asked", "enquiry"];
    for name in ["tram-depot", "crane-yard"] {
        let sheet = job(name);
        let settled = sheet.settle(&range);
        for judged in settled.verdicts.iter().filter(|j| j.verdict.is_finding()) {
            for remedy in of(&sheet, &settled, &range, judged.rule.id) {
                for (path, _) in &remedy.keys {
                    assert!(!stated.iter().any(|block| path.starts_with(block)), "{name}: {path}");
                }
            }
        }
    }
}
