//! Uncertain dimensions of a unit that stands, pumps with a range, and words that contradict, through the whole chain.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{Sheet, demo};
use stillrise_design::provenance::Origin;
use stillrise_search::Settled;
use stillrise_search::risk::{Risk, patient, risk};

fn study(settled: &Settled) -> Risk {
    risk(&settled.job, 60, &patient).expect("a prediction")
}

/// A wider gap holds fewer plates, so more oil leaves.
#[test]
fn an_uncertain_gap_of_a_stated_unit_is_drawn_and_moves_the_result() {
    let sheet = Sheet::data("pumped");
    let sure = study(&sheet.settle(&demo()));
    let claim = r#"{ value = "0.75 in", low = "0.5 in", high = "1.25 in", from = "tape measure on site" }"#;
    let unsure = study(&sheet.with("unit.dimensions.gap", claim).settle(&demo()));
    let key = "unit.dimensions.gap";
    assert!(!sure.carriers.iter().any(|c| c.input.key == key) && !sure.idle.iter().any(|i| i.key == key));
    let carrier = unsure.carriers.iter().find(|c| c.input.key == key).expect("the gap is among the inputs");
    assert!(!carrier.input.assumed && carrier.share.total > 0.0);
    let swing = unsure.swings.iter().find(|s| s.input.key == key).expect("the gap moves the effluent");
    let [narrow, wide] = swing.effluent.map(|c| c.expect("an effluent"));
    assert!(narrow < wide, "{narrow:?} {wide:?}");
    assert_eq!(unsure.stopped, 0);
}

#[test]
fn who_measured_a_dimension_reaches_the_trail() {
    let claim = r#"{ value = "0.75 in", from = "tape measure on site" }"#;
    let settled = Sheet::data("pumped").with("unit.dimensions.gap", claim).settle(&demo());
    let mut sources = settled.job.ledger.entries.iter().filter_map(|entry| match &entry.origin {
        Origin::Given { source, .. } => Some(source.to_string()),
        _ => None,
    });
    assert!(sources.any(|source| source == "unit: dimensions: gap, from tape measure on site"));
}

#[test]
fn the_rate_of_one_pump_is_drawn_by_its_own_key() {
    let rates = r#"[{ value = "50 gpm", low = "40 gpm", high = "60 gpm", from = "name plate" }, "50 gpm"]"#;
    let unsure = study(&Sheet::data("pumped").with("inlet.rate", rates).settle(&demo()));
    let carrier = unsure.carriers.iter().find(|c| c.input.key == "inlet.rate.1").expect("the pump is drawn");
    assert_eq!(carrier.input.label, "rate of pump 1");
}

#[test]
fn words_that_contradict_are_seen_by_the_rule_and_asked() {
    let claims = r#"[{ value = "progressive-cavity", from = "e-mail" }, { value = "centrifugal", from = "drawing" }]"#;
    let settled = Sheet::data("pumped").with("inlet.pump", claims).settle(&demo());
    let found = settled.verdicts.iter().find(|j| j.rule.id == "claims-contradict").expect("the rule");
    assert_eq!(found.verdict.word(), "warns");
    assert!(found.verdict.says().contains("centrifugal (inlet: pump, from drawing)"), "{}", found.verdict.says());
    let asked = settled.questions().iter().find(|q| q.key == "inlet.pump").expect("a question");
    // The other pump breaks the droplets finer: the answer is worth asking for.
    let [other] = &asked.outcomes[..] else { panic!("{:?}", asked.outcomes) };
    let now = settled.job.design.performance.as_ref().and_then(|p| p.worst()).map(|w| w.total.expected.q);
    assert!(other.effluent > now, "{:?} against {now:?}", other.effluent);
    // How hard one of that kind breaks them is a question of its own.
    let plate = settled.questions().iter().find(|q| q.key == "inlet.dissipation").expect("a question");
    assert!(plate.share.is_some_and(|share| share > 0.0), "{:?}", plate.share);
}

#[test]
fn a_limit_on_ph_is_not_by_gravity_and_no_other_word_hangs_on_it() {
    let sheet = Sheet::data("wash");
    let text = toml::to_string(&sheet.table).expect("text");
    let with = format!("{text}\n[[limit]]\npollutant = \"pH\"\nvalue = \"6-9\"\nstatistic = \"any sample\"\n");
    let settled = Sheet::text("wash with pH", &with).settle(&demo());
    let rule = settled.verdicts.iter().find(|j| j.rule.id == "limit-it-cannot-touch").expect("the rule");
    assert_eq!(rule.verdict.word(), "fails");
    assert!(
        rule.verdict.says().contains("pH 6 to 9 (neutralisation, where the water lies outside the limit)"),
        "{}",
        rule.verdict.says()
    );
    let before = sheet.settle(&demo());
    let words =
        |s: &Settled| s.job.design.performance.as_ref().map(|p| p.limits.iter().map(|l| l.word).collect::<Vec<_>>());
    assert_eq!(words(&settled), words(&before));
}
