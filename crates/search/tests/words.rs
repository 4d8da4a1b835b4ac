//! The word on a limit: what must hold of it whatever the numbers.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{OUT, Sheet, demo, worked};
use proptest::prelude::*;
use stillrise_design::performance::limit::{By, Word};
use stillrise_search::Settled;
use stillrise_search::pick::Condition;

/// The words on the limits, in the order of the verdicts.
fn words(settled: &Settled) -> Vec<Word> {
    settled.job.design.performance.iter().flat_map(|p| &p.limits).map(|l| l.word).collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 16, failure_persistence: None, ..ProptestConfig::default() })]

    /// Raising a limit never worsens its word.
    #[test]
    fn a_higher_limit_has_no_weaker_word(
        low in 1.0..200.0, factor in 1.0..6.0, d in 15.0..200.0, monthly in any::<bool>(), soap in any::<bool>()
    ) {
        let sheet = Sheet::data("wash").with("droplets.d50", &format!("{d} um"));
        let sheet = if monthly { sheet.with("limit.statistic", "monthly average") } else { sheet };
        let sheet = if soap {
            sheet.with("stream.oil.emulsified", OUT).with("chemical.kind", "alkaline-degreaser")
        } else {
            sheet
        };
        let at = |x: f64| words(&sheet.with("limit.value", &format!("{x} mg/L")).settle(&demo()));
        let (strict, loose) = (at(low), at(low * factor));
        for (strict, loose) in strict.iter().zip(&loose) {
            prop_assert!(loose <= strict, "{low} mg/L {strict:?}, {} mg/L {loose:?}", low * factor);
        }
    }
}

/// Leaving out what was said, so that an assumption stands in, never gives a better word: what was said was the default.
#[test]
fn an_unconfirmed_assumption_never_improves_a_word() {
    let demo = demo();
    let keys = [
        ("water.oil_peak", "1.5"),
        ("method.fouling", "20 %"),
        ("method.maldistribution", "20 %"),
        ("stream.oil.emulsified", "2 %"),
        ("limit.variation", "0.6"),
        ("droplets.spread", "2"),
        ("water.coldest", "5 °C"),
    ];
    let mut weaker = 0;
    for d50 in ["40 um", "60 um", "75 um", "100 um", "150 um"] {
        for (key, default) in keys {
            let sheet = Sheet::data("wash").with("droplets.d50", d50);
            let said = words(&sheet.with(key, default).settle(&demo));
            let unsaid = words(&sheet.with(key, default).with(key, OUT).settle(&demo));
            for (said, unsaid) in said.iter().zip(&unsaid) {
                assert!(unsaid >= said, "{d50}, {key}: {said:?} when said, {unsaid:?} when not");
                weaker += usize::from(unsaid > said);
            }
        }
    }
    assert!(weaker > 0, "no assumption weakened any word: the test shows nothing");
}

/// Where all that arrives lies below the limit, the word is no "not by gravity" of the calculation, whatever is dosed.
#[test]
fn what_arrives_below_the_limit_is_kept_whatever_is_dosed() {
    for product in ["soluble-coolant", "foam-agent", "alkaline-degreaser", "glycol"] {
        let sheet = Sheet::data("wash").with("limit.value", "900 mg/L").with("chemical.kind", product);
        let settled = sheet.settle(&demo());
        let limits = settled.job.design.performance.iter().flat_map(|p| &p.limits);
        for limit in limits {
            assert_eq!(limit.calculated, Word::Kept, "{product}: {}", limit.because);
        }
    }
}

/// An assumption that holds a word back is named with the answer that does it, and its question stands first.
#[test]
fn what_holds_a_word_back_is_asked_first() {
    let mut held = 0;
    for job in worked() {
        let settled = job.settle(&demo());
        let limits = settled.job.design.performance.iter().flat_map(|p| &p.limits);
        let asked = |limit: &stillrise_design::performance::limit::LimitVerdict| {
            let by = limit.held_back.iter().filter(|h| h.word == limit.word);
            by.filter_map(|h| match &h.by {
                By::Assumption { key, asked: true, .. } => Some(key.clone()),
                _ => None,
            })
            .collect::<Vec<_>>()
        };
        let keys: std::collections::BTreeSet<String> = limits.flat_map(asked).collect();
        let first: std::collections::BTreeSet<String> =
            settled.questions().iter().take(keys.len()).map(|q| q.key.clone()).collect();
        assert_eq!(keys, first, "{}", job.name);
        held += keys.len();
    }
    assert!(held > 0, "no worked job has a word that an assumption holds back");
}

/// A unit is never taken whose chain stopped, however large the flow; it is said what would do, or that nothing would.
#[test]
fn nothing_is_offered_whose_chain_stopped() {
    for flow in ["100 gpm", "1000 m3/h", "6000 gpm", "40000 gpm"] {
        let head = "[enquiry]\ntitle = \"A flow\"\n[[limit]]\npollutant = \"oil and grease\"\nvalue = \"100 mg/L\"\n";
        let settled = Sheet::text("a flow", &format!("{head}[stated]\nflow = \"{flow}\"")).settle(&demo());
        match &settled.pick {
            Some(pick) => {
                assert!(settled.job.design.performance.is_some(), "{flow}");
                assert!(pick.fits || matches!(pick.condition, Some(Condition::Ahead(_) | Condition::Limit)), "{flow}");
            }
            None => {
                assert!(settled.job.design.train.is_none(), "{flow}: nothing is drawn");
                let short = settled.shortfall.as_ref().unwrap_or_else(|| panic!("{flow}: nothing says what would do"));
                assert!(!short.against.is_empty(), "{flow}");
                assert!(settled.fails(), "{flow}");
            }
        }
    }
}

/// The wash bay's unit as one that stands, with an emulsified share and results of the water that leaves.
fn stands(emulsified: &str, limit: &str, results: &str) -> Settled {
    let text = std::fs::read_to_string(common::at_data("wash.toml")).expect("the file");
    let results = match results {
        "" => String::new(),
        some => format!("\n[[samples]]\nname = \"outfall\"\nwhere = \"out\"\nresults = [{some}]\n"),
    };
    let sheet = Sheet::text("a unit that stands", &(text + &results)).with("unit.exists", "true");
    let sheet = sheet.with("limit.value", limit).with("stream.oil.emulsified", emulsified);
    sheet.settle(&demo())
}

/// What was measured through the unit that stands tells more than an assumed share of oil that does not rise, and enough
/// results within a limit more than any calculation.
#[test]
fn gravity_is_not_said_to_fail_where_it_was_measured_to_keep() {
    let limit = |settled: &Settled| settled.job.design.performance.as_ref().expect("a performance").limits[0].clone();
    // 40 mg/L of emulsified oil pass any separator, so the calculation says.
    let within = limit(&stands("40 %", "30 mg/L", "\"12 mg/L\", \"15 mg/L\", \"9 mg/L\""));
    assert_eq!((within.calculated, within.word), (Word::NotByGravity, Word::NotShown));
    assert!(within.says() == "not shown" && within.reason().contains("all 3 results measured keep it"));
    // Two results show less, and one above the limit shows the contrary.
    assert_eq!(limit(&stands("40 %", "30 mg/L", "\"12 mg/L\", \"15 mg/L\"")).word, Word::NotByGravity);
    // With one above they no longer show it kept; their mean of 17.25 mg/L still shows that less than 40 mg/L do not rise.
    let above = limit(&stands("40 %", "30 mg/L", "\"12 mg/L\", \"15 mg/L\", \"9 mg/L\", \"33 mg/L\""));
    assert_eq!((above.word, above.says()), (Word::NotShown, "exceeded"));
    assert!(
        above.reason().contains("less of the oil is held in the water than the calculation takes"),
        "{}",
        above.reason()
    );
    // Results about as high as what would not rise leave the word.
    let high = limit(&stands("40 %", "30 mg/L", "\"52 mg/L\", \"45 mg/L\", \"49 mg/L\""));
    assert_eq!(high.word, Word::NotByGravity);
    // An assumed share leads no further than "not shown"; what it would be there is said.
    let unsaid = limit(&stands(OUT, "12 mg/L", ""));
    assert_eq!((unsaid.calculated < Word::NotShown, unsaid.word), (true, Word::NotShown));
    assert!(
        unsaid.reason().contains("which is plausible too, it is only \"not by gravity\", and that is the verdict"),
        "{}",
        unsaid.reason()
    );
    let exceeded = limit(&stands(OUT, "12 mg/L", "\"18 mg/L\", \"11 mg/L\""));
    assert_eq!((exceeded.word, exceeded.says()), (Word::NotShown, "exceeded"));
}

/// What lies above a limit with hardly a result that would keep it is called exceeded; what may lie on either side is not.
#[test]
fn what_plainly_lies_above_a_limit_is_called_exceeded() {
    let at = |d50: &str, limit: &str| {
        let sheet = Sheet::data("wash").with("droplets.d50", d50).with("limit.value", limit);
        let sheet = sheet.with("stream.oil.emulsified", "0 %").with("water.oil_peak", "1");
        let settled = sheet.with("stream.oil.mean", "900 mg/L").settle(&demo());
        settled.job.design.performance.as_ref().expect("a performance").limits[0].clone()
    };
    let plain = at("10 um", "40 mg/L");
    assert_eq!((plain.word, plain.says()), (Word::NotShown, "exceeded"), "{}", plain.reason());
    let open = [30.0, 35.0, 40.0, 45.0, 50.0, 60.0].map(|d| at(&format!("{d} um"), "100 mg/L"));
    assert!(open.iter().any(|l| l.word == Word::NotShown && l.says() == "not shown"), "every doubt is called exceeded");
}

/// Solids that arrive within their limit are kept whatever a unit does: an answer at which the calculation stops (sea salt in
/// hot water) does not make that doubtful. Of two waters the one with more solids is the worst case, not the oilier one:
/// 1.5 x 400 mg/L = 600 mg/L.
#[test]
fn what_a_limit_on_solids_says_goes_by_the_solids() {
    let more = "[[stream]]\nname = \"hose\"\nflow = \"5 gpm\"\nsolids = \"400 mg/L\"\nhours_per_day = 1\n\
                oil = { kind = \"diesel\", mean = \"5 mg/L\", emulsified = \"2 %\", dissolved = \"1 mg/L\" }\n\
                [[limit]]\npollutant = \"suspended solids\"\nvalue = \"1300 mg/L\"\nstatistic = \"any sample\"\n\
                [[case]]\nname = \"hose alone\"\nflow = \"5 gpm\"\nsolids = \"400 mg/L\"\n\
                oil = { kind = \"diesel\", mean = \"5 mg/L\", emulsified = \"2 %\", dissolved = \"1 mg/L\" }\n";
    let text = std::fs::read_to_string(common::at_data("wash.toml")).expect("the file");
    let settled = Sheet::text("solids", &format!("{text}\n{more}")).with("water.oil_peak", "1.5").settle(&demo());
    let performance = settled.job.design.performance.as_ref().expect("a performance");
    let limit = performance.limits.iter().find(|l| l.solids.is_some()).expect("a limit on solids");
    assert_eq!((limit.calculated, limit.word), (Word::Kept, Word::Kept), "{}", limit.reason());
    assert!(limit.because.contains("600 mg/L") && limit.because.contains("hose alone"), "{}", limit.because);
    assert_eq!(limit.where_stopped(), Word::Kept);
}

/// A unit made to measure needs water over its pack for the head that the largest flow adds, with a spill or without one: less
/// to hold asks for no more.
#[test]
fn less_to_hold_is_no_harder_to_fit() {
    let yard = "[enquiry]\ntitle = \"A yard\"\nprint = \"si\"\n[[surface]]\nname = \"yard\"\narea = \"1710 m2\"\nkind = \"concrete\"\n\
                [rain]\nintensity = \"66.6 mm/h\"\nduration = \"15 min\"\noil = { kind = \"diesel\", mean = \"100 mg/L\" }\n\
                [[limit]]\npollutant = \"oil and grease\"\nvalue = \"100 mg/L\"\n[inlet]\nfeed = \"gravity\"\n\
                [unit]\ncount = 2\ncustom = true\n[site]\nmax_length = \"7.5 m\"\nmax_width = \"4.5 m\"\n";
    for spill in
        ["", "[spill]\nvolume = \"0.1 m3\"\n", "[spill]\nvolume = \"0.5 m3\"\n", "[spill]\nvolume = \"2 m3\"\n"]
    {
        let settled = Sheet::text("a yard", &format!("{yard}{spill}")).settle(&demo());
        let said = settled.shortfall.map(|short| short.against);
        assert!(settled.pick.is_some(), "{spill:?}: {said:?}");
    }
}
