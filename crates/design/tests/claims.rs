//! Claims on keys that hold no quantity: who said so is kept, contradictions are seen, one is taken and asked about.

#![allow(clippy::expect_used, clippy::panic, reason = "a test fails by panicking")]

use stillrise_design::claims::{answered, any_open};
use stillrise_design::enquiry::blocks::Feed;
use stillrise_design::enquiry::{Enquiry, read_enquiry};
use stillrise_design::job::begin;
use stillrise_design::provenance::{Entry, Origin};
use stillrise_design::{Ledger, WhatIf};
use stillrise_handbook::page::Arg;

fn read(text: &str) -> Result<Enquiry, String> {
    let whole =
        format!("[enquiry]\ntitle = \"x\"\nprint = \"us\"\n[[stream]]\nname = \"wash\"\nflow = \"20 gpm\"\n{text}");
    read_enquiry(&whole, &|_| None).map_err(|f| f.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"))
}

fn enquiry(text: &str) -> Enquiry {
    read(text).unwrap_or_else(|told| panic!("{told}"))
}

fn trail(e: &Enquiry) -> Vec<Entry> {
    let mut ledger = Ledger::default();
    begin(&mut ledger, &WhatIf::default(), e);
    ledger.entries
}

fn given(entries: &[Entry], part: &str) -> bool {
    entries.iter().any(|e| matches!(&e.origin, Origin::Given { source, .. } if source.to_string().contains(part)))
}

const ALL: &str = r#"with_rain = { value = true, from = "e-mail" }
oil = { kind = { value = "diesel", from = "data sheet" } }
[inlet]
feed = { value = "pump", from = "drawing P-1" }
pump = { value = "diaphragm", from = "drawing P-2" }
rate = "60 gpm"
together = { value = true, from = "drawing P-3" }
[spill]
volume = "50 gal"
closure = { value = true, from = "drawing P-4" }
[outlet]
pipe = { value = "6 in", from = "drawing P-5" }
[method]
rise = { value = "drag", from = "specification" }
[solids]
table = { value = ["20 um: 15 %", "250 um: 100 %"], from = "sieve test" }
[unit]
count = { value = 2, from = "specification 3.1" }
[[limit]]
pollutant = "oil and grease"
value = "15 mg/L"
statistic = { value = "daily maximum", from = "permit" }
"#;

#[test]
fn who_said_so_reaches_the_trail() {
    let e = enquiry(ALL);
    assert_eq!((e.inlet.feed.0, e.unit.count.0), (Some(Feed::Pump), Some(2)));
    assert_eq!(e.inlet.pump.as_deref(), Some("diaphragm"));
    assert_eq!(e.spill.as_ref().and_then(|s| s.closure.0), Some(true));
    let entries = trail(&e);
    for part in [
        "with_rain, from e-mail",
        "kind, from data sheet",
        "feed, from drawing P-1",
        "pump, from drawing P-2",
        "together, from drawing P-3",
        "spill: closure, from drawing P-4",
        "outlet: pipe, from drawing P-5",
        "method.rise, from specification",
        "table, from sieve test",
        "unit: count, from specification 3.1",
        "statistic, from permit",
    ] {
        assert!(given(&entries, part), "nothing says \"{part}\"");
    }
}

const CONTRADICTED: &str = "[inlet]\nrate = \"60 gpm\"\npump = [{ value = \"diaphragm\", from = \"e-mail\" }, { value = \"centrifugal\", from = \"drawing\" }]\n";

#[test]
fn the_first_of_contradicting_words_is_taken_and_the_rest_asked() {
    let e = enquiry(CONTRADICTED);
    assert_eq!(e.inlet.pump.as_deref(), Some("diaphragm"));
    assert!(any_open(&e));
    let entries = trail(&e);
    let chosen = entries.iter().find_map(|e| match &e.origin {
        Origin::Chosen { among, because, .. } if e.label == "inlet: pump" => Some((among.as_str(), because.as_str())),
        _ => None,
    });
    let (among, because) = chosen.expect("a choice is recorded");
    assert_eq!(among, "diaphragm (inlet: pump, from e-mail); centrifugal (inlet: pump, from drawing)");
    assert!(because.starts_with("of contradicting claims the first was taken"), "{because}");
    let asked = entries.iter().find_map(|e| match &e.origin {
        Origin::Assumed(a) if a.key == "inlet.pump" && e.label == "inlet: pump" => Some(a.question.as_str()),
        _ => None,
    });
    assert_eq!(asked, Some("Which holds for inlet: pump: diaphragm (e-mail) or centrifugal (drawing)?"));
}

#[test]
fn an_answer_takes_the_claim_it_names() {
    let e = enquiry(CONTRADICTED);
    let mut what_if = WhatIf::default();
    assert_eq!(answered(&e, &what_if).inlet.pump.as_deref(), Some("diaphragm"));
    what_if.0.insert("inlet.pump".to_owned(), Arg::Choice("the second claim"));
    assert_eq!(answered(&e, &what_if).inlet.pump.as_deref(), Some("centrifugal"));
    let flags = enquiry("[spill]\nvolume = \"50 gal\"\nclosure = [true, false]\n");
    what_if.0.insert("spill.closure".to_owned(), Arg::Choice("no"));
    assert_eq!(answered(&flags, &what_if).spill.as_ref().and_then(|s| s.closure.0), Some(false));
}

#[test]
fn what_a_person_chose_is_no_question() {
    let e = enquiry(
        "[inlet]\nrate = \"60 gpm\"\npump = [\"diaphragm\", { value = \"centrifugal\", chosen = true, because = \"seen on site\" }]\n",
    );
    assert_eq!(e.inlet.pump.as_deref(), Some("centrifugal"));
    assert!(!any_open(&e));
    let entries = trail(&e);
    assert!(entries.iter().any(|e| matches!(&e.origin, Origin::Chosen { because, .. } if because == "seen on site")));
    assert!(!entries.iter().any(|e| e.label == "inlet: pump" && matches!(e.origin, Origin::Assumed(_))));
}

#[test]
fn the_gallon_may_be_a_claim() {
    let whole =
        "[enquiry]\ntitle = \"x\"\ngallon = { value = \"imperial\", from = \"call\" }\n[[stream]]\nflow = \"10 gpm\"\n";
    let e = read_enquiry(whole, &|_| None).expect("an enquiry");
    assert_eq!(e.streams[0].flow.claim().map(|c| c.written.unit.symbol), Some("imp gpm"));
}

#[test]
fn a_claim_that_says_nothing_is_refused() {
    for (text, said) in [
        ("[inlet]\nfeed = { from = \"x\" }\n", "a claim without value"),
        ("[inlet]\nfeed = { value = \"pmup\" }\n", "did you mean \"pump\"?"),
        ("[inlet]\nfeed = { value = \"pump\", low = \"gravity\" }\n", "\"low\" does not belong to a claim"),
        ("[inlet]\nfeed = []\n", "is an empty list"),
        (
            "[inlet]\nfeed = [{ value = \"pump\", chosen = true }, { value = \"gravity\", chosen = true }]\n",
            "more than one claim is marked chosen",
        ),
    ] {
        let told = read(text).err().unwrap_or_default();
        assert!(told.contains("line 8, inlet: feed") && told.contains(said), "{text}: {told}");
    }
}
