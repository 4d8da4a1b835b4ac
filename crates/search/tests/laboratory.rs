//! Laboratory results: what they say stands beside what was stated and predicted, and goes into the design only where
//! it may.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{OUT, Sheet, demo};
use stillrise_design::basis::evidence::SampleSet;
use stillrise_design::basis::influent::Role;
use stillrise_design::basis::limits::Scatter;
use stillrise_design::performance::measured::Place;
use stillrise_design::performance::promise::Promise;
use stillrise_design::provenance::{Entry, Origin};
use stillrise_search::Settled;
use stillrise_search::risk::inputs::inputs;
use stillrise_search::standing::Asks;
use stillrise_units::Typed;
use stillrise_units::catalog::MG_L;

/// Ten results, all detected.
const TEN: &str = r#"["12 mg/L", "8.4 mg/L", "22 mg/L", "15 mg/L", "6.1 mg/L", "9.8 mg/L", "31 mg/L", "11 mg/L", "7.7 mg/L", "18 mg/L"]"#;
/// Nine of them.
const NINE: &str =
    r#"["12 mg/L", "8.4 mg/L", "22 mg/L", "15 mg/L", "6.1 mg/L", "9.8 mg/L", "31 mg/L", "11 mg/L", "7.7 mg/L"]"#;

fn sampled(place: &str, results: &str) -> Sheet {
    let sheet = Sheet::data("wash").with("samples.name", "spring").with("samples.where", place);
    sheet.with("samples.results", results).with("samples.manner", "grab")
}

fn scatter(settled: &Settled) -> &Scatter {
    let basis = settled.job.design.basis.as_ref().expect("a basis");
    basis.limits[0].scatter.as_ref().expect("a limit on single samples has a scatter")
}

fn set(settled: &Settled, index: usize) -> &SampleSet {
    &settled.job.design.basis.as_ref().expect("a basis").evidence[index]
}

/// Total oil of the wash water, mg/L, and where it comes from.
fn influent(settled: &Settled) -> (f64, &Entry) {
    let total = settled.job.design.basis.as_ref().expect("a basis").waters[0].content.total;
    (MG_L.from_si(total.q.si()), settled.job.ledger.entry(total.at).expect("an entry"))
}

fn contradicted(settled: &Settled) -> bool {
    let found = settled.verdicts.iter().find(|j| j.rule.id == "claims-contradict").expect("the rule");
    found.verdict.word() == "warns"
}

/// scipy 1.17.1: stats.gstd of the ten gives s, stats.lognorm.std over mean of it the coefficient of variation, and
/// stats.lognorm.ppf(0.99) of a law with mean 1 the limit of 30 mg/L over the long-term mean.
#[test]
fn ten_results_scatter_the_limit_by_themselves_and_nine_do_not() {
    let demo = demo();
    let ten = sampled("out", TEN).settle(&demo);
    let s = scatter(&ten);
    assert!((s.variation.q.si() - 0.538_999_200_531).abs() < 1e-9, "{}", s.variation.q.si());
    assert!((MG_L.from_si(s.mean.q.si()) - 10.526_201_373_238).abs() < 1e-6, "{}", MG_L.from_si(s.mean.q.si()));
    let entry = ten.job.ledger.entry(s.variation.at).expect("an entry");
    assert!(matches!(&entry.origin, Origin::Derived { page, .. } if page.id == "lognormal-variation"), "{entry:?}");
    let nine = sampled("out", NINE).settle(&demo);
    let s = scatter(&nine);
    assert!((s.variation.q.si() - 0.6).abs() < 1e-12);
    let entry = nine.job.ledger.entry(s.variation.at).expect("an entry");
    assert!(matches!(&entry.origin, Origin::Assumed(a) if a.source.contains("9 results of \"spring\"")), "{entry:?}");
    let stated = sampled("out", TEN).with("limit.variation", "0.9").settle(&demo);
    assert!((scatter(&stated).variation.q.si() - 0.9).abs() < 1e-12, "what was stated goes first");
    let surface = sampled("out", TEN).with("samples.manner", "from the surface").settle(&demo);
    assert!((scatter(&surface).variation.q.si() - 0.6).abs() < 1e-12, "a film says nothing of the stream");
}

/// The mean is 110 mg/L; its interval 68.9 to 151.1 mg/L by scipy 1.17.1, stats.t.interval with stats.sem.
#[test]
fn a_mean_stands_in_where_nobody_stated_the_oil() {
    let demo = demo();
    let results = r#"["80 mg/L", "120 mg/L", "100 mg/L", "140 mg/L"]"#;
    let sheet = sampled("in", results);
    let agrees = sheet.settle(&demo);
    assert_eq!(set(&agrees, 0).role, Role::Agrees("wash".to_owned()));
    assert!((influent(&agrees).0 - 100.0).abs() < 1e-9 && !contradicted(&agrees));
    let alone = sheet.with("stream.oil.mean", OUT).settle(&demo);
    let (total, entry) = influent(&alone);
    assert!((total - 110.0).abs() < 1e-9, "{total}");
    assert!(
        matches!(&entry.origin, Origin::Given { source, .. } if source.to_string().contains("samples \"spring\"")),
        "{entry:?}"
    );
    let uncertain = inputs(&alone.job.ledger).into_iter().find(|i| i.key == "stream \"wash\".oil.mean");
    let ends = uncertain.expect("it has a range").range.ends();
    let number = |a: &stillrise_handbook::page::Arg| match a {
        stillrise_handbook::page::Arg::Number(si) => MG_L.from_si(*si),
        other => panic!("{other:?}"),
    };
    // The lower end of the interval lies below the smallest result, which then is the end.
    assert!((number(&ends[0]) - 80.0).abs() < 1e-9, "{ends:?}");
    assert!((number(&ends[1]) - 151.085_205_135_210).abs() < 1e-4, "{ends:?}");
    let sheet = sampled("in", results).with("samples.manner", "from the surface").with("stream.oil.mean", OUT);
    let left = sheet.settle(&demo);
    let (_, entry) = influent(&left);
    assert!(matches!(entry.origin, Origin::Assumed(_)), "{entry:?}");
    assert!(matches!(set(&left, 0).role, Role::Told(_)));
    // Two are too few for a mean, and all that is known: the larger, from 80/3 to 360 mg/L, and more are asked for. Beside what
    // was stated they say nothing.
    let few = sampled("in", r#"["80 mg/L", "120 mg/L"]"#).with("samples.manner", "grab");
    let alone = few.with("stream.oil.mean", OUT).settle(&demo);
    let (total, entry) = influent(&alone);
    assert!((total - 120.0).abs() < 1e-9 && matches!(entry.origin, Origin::Given { .. }), "{entry:?}");
    let uncertain = inputs(&alone.job.ledger).into_iter().find(|i| i.key == "stream \"wash\".oil.mean");
    let ends = uncertain.expect("it has a range").range.ends();
    assert!((number(&ends[0]) - 80.0 / 3.0).abs() < 1e-6 && (number(&ends[1]) - 360.0).abs() < 1e-6, "{ends:?}");
    assert_eq!(set(&alone, 0).role, Role::FewStandIn("wash".to_owned()));
    assert!(alone.standing.iter().any(|s| s.asks == Asks::MoreSamples("wash".to_owned())));
    assert!(matches!(set(&few.settle(&demo), 0).role, Role::Told(_)));
}

#[test]
fn a_mean_beside_another_statement_is_a_claim_and_never_averaged() {
    let demo = demo();
    for (results, taken) in
        [(r#"["190 mg/L", "200 mg/L", "210 mg/L"]"#, 200.0), (r#"["40 mg/L", "50 mg/L", "60 mg/L"]"#, 100.0)]
    {
        let sheet = sampled("in", results);
        let settled = sheet.settle(&demo);
        let (total, _) = influent(&settled);
        assert!((total - taken).abs() < 1e-9, "{results}: the safe claim is taken, not {total}");
        assert_eq!(set(&settled, 0).role, Role::Contradicts("wash".to_owned()));
        assert!(contradicted(&settled), "{results}");
        let chosen = sheet.with("stream.oil.mean", r#"{ value = "100 mg/L", chosen = true, because = "design load" }"#);
        let settled = chosen.settle(&demo);
        assert!((influent(&settled).0 - 100.0).abs() < 1e-9, "a person chose");
        assert!(!contradicted(&settled));
    }
}

/// Median, deviation and mean of the likeliest law: scipy 1.17.1, optimize.minimize of the log-likelihood.
#[test]
fn non_detects_count_by_maximum_likelihood_and_the_prediction_stands_beside() {
    let settled = Sheet::data("laboratory").settle(&demo());
    let out = set(&settled, 1);
    assert_eq!((out.count, out.detected), (10, 7));
    let law = out.law.as_ref().expect("a law");
    let near = |c: stillrise_units::Concentration, mg: f64| (MG_L.from_si(c.si()) / mg - 1.0).abs() < 1e-5;
    assert!(near(law.geometric.q, 8.385_62) && near(law.mean.q, 11.001_2), "{law:?}");
    assert!((law.deviation.q.si() - 0.736_872).abs() < 1e-6);
    let bounds = out.bounds.as_ref().expect("bounds");
    assert!(near(bounds.least.q, 9.7) && near(bounds.half.q, 10.7) && near(bounds.most.q, 11.7));
    assert!(out.reporting_limit.is_some_and(|r| near(r.q, 10.0)));
    // Means of the seven pairs by hand: 97.0 / 7 before, 57.5 / 7 after with 5 for what was not detected.
    let polar = out.polar.as_ref().expect("pairs");
    assert_eq!(out.pairs, (7, true));
    assert!((polar.share.q.si() - (1.0 - 57.5 / 97.0)).abs() < 1e-12, "{}", polar.share.q.si());
    assert!(set(&settled, 2).usable().is_none(), "a film has no mean that may be used");
    let performance = settled.job.design.performance.as_ref().expect("a performance");
    let [compared] = performance.measured.as_slice() else { panic!("{:?}", performance.measured) };
    assert_eq!(compared.set, 1);
    let expected = MG_L.from_si(law.mean.q.si()) / MG_L.from_si(compared.predicted.q.si());
    assert!((compared.ratio.q.si() - expected).abs() < 1e-12);
    let within = compared.predicted.q >= law.low.q && compared.predicted.q <= law.high.q;
    assert_eq!(compared.place == Place::Within, within);
}

#[test]
fn results_of_a_plant_that_is_to_be_replaced_are_not_the_units() {
    let stands = |sheet: &Sheet| sheet.enquiry().expect("it is read").unit_stands();
    let out = sampled("out", TEN);
    assert!(stands(&out), "described by its dimensions, and sampled");
    assert!(!stands(&sampled("in", TEN)), "what comes says nothing of a unit");
    assert!(!stands(&Sheet::data("wash")), "nothing was seen at it");
    assert!(!stands(&out.with("unit", OUT)), "no unit is described: the results are of the plant before it");
    assert!(!stands(&out.with("unit.exists", "false")));
    assert!(stands(&Sheet::data("wash").with("unit.exists", "true")));
}

#[test]
fn results_that_are_none_are_refused_with_a_remedy() {
    let refused = |key: &str, value: &str, reason: &str, remedy: &str| {
        let faults = sampled("out", NINE).with(key, value).enquiry().err().unwrap_or_default();
        let found = faults.iter().any(|f| f.reason.contains(reason) && f.remedy.contains(remedy));
        assert!(found, "{key} = {value}: {faults:?}");
    };
    refused("samples.results", r#"["12 mg/L", "ND"]"#, "no reporting limit", "<5 mg/L");
    refused("samples.results", r#"[">1000 mg/L"]"#, "above what the method", "diluted");
    refused("samples.results", r#"["0 mg/L"]"#, "not between", "check");
    refused("samples.results", r#"["12 gpm"]"#, "flow", "mg/L");
    refused("samples.results", "[12]", "not a text", "12 mg/L");
    refused("samples.results", "[]", "empty", "write results");
    refused("samples.dates", r#"["2026-03-02"]"#, "1 of them beside 9", "one for each");
    refused("samples.after_silica_gel", r#"["5 mg/L"]"#, "1 of them beside 9", "one for each");
    refused("samples.stream", "wsh", "no water", "did you mean \"wash\"");
    refused("samples.where", "between", "not a word", "in, out");
}

/// A prediction at or below the published floor is a bound: results that lie lower do not contradict it, results above do.
#[test]
fn a_bound_is_contradicted_from_above_only() {
    let place = |results: &str| {
        let sheet = sampled("out", results).with("stream.flow", "1 gpm");
        let sheet = sheet.with("stated", OUT).with("droplets.d50", "300 um");
        let settled = sheet.settle(&demo());
        let performance = settled.job.design.performance.expect("a performance");
        let [compared] = performance.measured.as_slice() else { panic!("{:?}", performance.measured) };
        assert!(Promise::of(compared.computed.q, compared.influent.q).is_bound(), "{compared:?}");
        compared.place
    };
    assert_eq!(place(r#"["4.1 mg/L", "5.2 mg/L", "4.7 mg/L"]"#), Place::Bounds);
    assert_eq!(place(r#"["41 mg/L", "52 mg/L", "47 mg/L"]"#), Place::Below);
}
