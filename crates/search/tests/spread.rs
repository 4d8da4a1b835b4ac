//! How sure the prediction is: the same on any machine, and what it must be where the answer is known.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{Sheet, demo};
use stillrise_design::enquiry::read_enquiry;
use stillrise_search::risk::{Risk, patient, risk};
use stillrise_units::Typed;
use stillrise_units::catalog::MG_L;

const YARD: &str = include_str!("../../../enquiries/machine-shop/enquiry.toml");

fn study(text: &str, samples: usize) -> Risk {
    let enquiry = read_enquiry(text, &|_| None).unwrap_or_else(|f| panic!("{f:?}"));
    let settled = stillrise_search::settle(&enquiry, &demo());
    risk(&settled.job, samples, &patient).expect("a prediction")
}

/// The line of the file that begins with `key`, replaced.
fn with(text: &str, key: &str, line: &str) -> String {
    let lines = text.lines().map(|l| if l.starts_with(key) { line } else { l });
    lines.collect::<Vec<_>>().join("\n")
}

#[test]
fn the_same_study_gives_the_same_bits() {
    assert_eq!(study(YARD, 200), study(YARD, 200));
}

/// The effluent falls as droplets grow, so its percentiles are the effluents at the percentiles of the
/// median droplet, if nothing else is uncertain.
#[test]
fn one_uncertain_input_gives_its_own_percentiles() {
    let narrow = study(&with(YARD, "d50", r#"d50 = { value = "70 um", low = "69 um", high = "71 um" }"#), 400);
    let d50 = narrow.carriers.iter().find(|c| c.input.key == "droplets.d50");
    assert!(d50.is_none_or(|c| !c.input.assumed && c.share.total < 0.05), "{:?}", narrow.carriers);
    let wide = with(YARD, "d50", r#"d50 = { value = "70 um", low = "20 um", high = "250 um" }"#);
    let wide = study(&wide, 400);
    let first = &wide.carriers[0];
    assert_eq!(first.input.key, "droplets.d50", "{:?}", wide.carriers);
    let [low, median, high] =
        [wide.rungs[1].low, wide.rungs[1].median, wide.rungs[1].high].map(|c| MG_L.from_si(c.si()));
    assert!(low < median && median < high && high > 2.0 * low, "{low} {median} {high}");
}

/// Rungs keep their order in every sample, so they do in every percentile.
#[test]
fn bounds_stay_bounds() {
    let study = study(YARD, 300);
    let [ideal, expected, mixed] = study.rungs;
    for (a, b) in [(ideal, expected), (expected, mixed)] {
        assert!(a.low <= b.low && a.median <= b.median && a.high <= b.high, "{a:?} {b:?}");
    }
    let mesh = study.with_mesh.expect("the unit has a mesh");
    assert!(mesh.median <= expected.median);
    for l in &study.limits {
        assert!((0.0..=1.0).contains(&l.kept) && l.kept_mixed <= l.kept);
    }
}

#[test]
fn a_watch_stops_it() {
    let enquiry = read_enquiry(YARD, &|_| None).unwrap_or_else(|f| panic!("{f:?}"));
    let settled = stillrise_search::settle(&enquiry, &demo());
    assert!(risk(&settled.job, 5000, &|done, _| done < 1000).is_none());
}

/// What is not a range, or not a distribution, is refused with place and remedy.
#[test]
fn ranges_and_distributions_that_cannot_be() {
    for (key, line, place, reason) in [
        ("d50", r#"d50 = { value = "70 um", low = "120 um", high = "35 um" }"#, "droplets: d50", "upside down"),
        (
            "d50",
            r#"d50 = { value = "70 um", low = "80 um", high = "120 um" }"#,
            "droplets: d50",
            "outside its own range",
        ),
        ("d50", r#"d50 = { value = "70 um", low = "35 um" }"#, "droplets: d50", "no \"high\""),
        ("d50", r#"d50 = "0 um""#, "droplets: d50", "not between"),
        ("spread", r#"spread = -2"#, "droplets: spread", "not between"),
        ("d50", r#"table = ["20 um: 10 %", "60 um: 40 %"]"#, "droplets: table", "end at 40 %"),
        ("d50", r#"table = ["20 um: 50 %", "60 um: 40 %", "90 um: 100 %"]"#, "droplets: table", "falls"),
        ("d50", r#"table = ["60 um: 10 %", "20 um: 100 %"]"#, "droplets: table", "does not rise"),
        ("d50", r#"table = ["20 um: 10 %", "60 um: 140 %"]"#, "droplets: table", "not between 0 and 100 %"),
        ("d50", "law = \"measured\"", "droplets: law", "without a table"),
        ("d50", "law = \"upper-limit\"\nd50 = \"70 um\"", "droplets: largest", "no largest"),
        ("d50", "law = \"rosin-rammler\"\nbase = \"number\"\nd50 = \"70 um\"", "droplets: base", "log-normal"),
        ("flow", r#"flow = "0 m3/h""#, "flow", "not between"),
    ] {
        let text = with(YARD, key, line);
        let faults = read_enquiry(&text, &|_| None).err().unwrap_or_default();
        let found = faults.iter().find(|f| f.place.contains(place) && f.reason.contains(reason));
        assert!(found.is_some_and(|f| !f.remedy.is_empty()), "{line}: {faults:?}");
    }
}

/// A measured table and the law it was read off give much the same.
#[test]
fn a_table_of_a_law_is_the_law() {
    // Log-normal, median 70 um, spread 2: shares finer by scipy 1.17.1, stats.lognorm(s=ln 2, scale=70).cdf.
    let table = r#"table = ["5 um: 0.0070 %", "10 um: 0.2498 %", "20 um: 3.5353 %", "30 um: 11.0780 %", "40 um: 20.9731 %", "60 um: 41.2004 %", "80 um: 57.6382 %", "100 um: 69.6574 %", "150 um: 86.4233 %", "200 um: 93.5060 %", "300 um: 98.2115 %", "600 um: 99.9031 %", "2000 um: 100 %"]"#;
    let law = with(&with(YARD, "d50", r#"d50 = "70 um""#), "spread", "spread = 2");
    let tabled = with(&with(YARD, "d50", table), "spread", "");
    let out = |text: &str| {
        let enquiry = read_enquiry(text, &|_| None).unwrap_or_else(|f| panic!("{f:?}"));
        let settled = stillrise_search::settle(&enquiry, &demo());
        let p = settled.job.design.performance.expect("a performance");
        p.worst().expect("a case").left.q.value
    };
    let (law, tabled) = (out(&law), out(&tabled));
    assert!((law - tabled).abs() < 0.005, "{law} {tabled}");
}

/// A study refines the shares; the questions keep the numbers that they have without it.
#[test]
fn a_study_leaves_the_questions_in_their_order() {
    let mut settled = Sheet::data("wash").settle(&demo());
    let keys = |s: &stillrise_search::Settled| s.questions().iter().map(|q| q.key.clone()).collect::<Vec<_>>();
    let before = keys(&settled);
    settled.study(400);
    assert_eq!(keys(&settled), before);
}

/// Two claims on whether both pumps run bring about other cases in some samples; each case keeps its own percentiles.
#[test]
fn a_case_keeps_its_percentiles_where_other_samples_have_other_cases() {
    let text = "[enquiry]\ntitle = \"yard\"\n[[surface]]\nname = \"yard\"\narea = \"20000 ft2\"\nkind = \"concrete\"\n[rain]\nintensity = \"2 in/h\"\n[[stream]]\nname = \"bay wash\"\nflow = \"10 gpm\"\nwith_rain = false\n[[oil]]\nkind = \"diesel\"\n[inlet]\nfeed = \"pump\"\npump = \"submersible\"\nrate = [\"150 gpm\", \"150 gpm\"]\n[outlet]\nto = \"storm water\"\n";
    let mut settled = Sheet::text("yard", text).settle(&demo());
    settled.study(300);
    let risk = settled.risk.as_ref().expect("a study");
    assert!(risk.cases.len() > 2, "{:?}", risk.cases);
    for (name, spread) in &risk.cases {
        assert!(spread.low <= spread.median && spread.median <= spread.high, "{name}: {spread:?}");
    }
}
