//! What customers type: ranges become claims with ends, bounds and "about" become notes, and nothing is silent.

#![allow(clippy::expect_used, reason = "a test fails by panicking")]

use stillrise_design::enquiry::distribution::Distribution;
use stillrise_design::enquiry::keys::{Claim, Quantity};
use stillrise_design::enquiry::{Enquiry, read_enquiry};
use stillrise_design::provenance::Origin;
use stillrise_units::catalog::{GPM, IN, MG_L};
use stillrise_units::{Fault, Typed};

fn read(text: &str) -> Result<Enquiry, Vec<Fault>> {
    read_enquiry(&format!("[enquiry]\ntitle = \"x\"\nprint = \"us\"\n{text}"), &|_| None)
}

fn enquiry(text: &str) -> Enquiry {
    read(text).unwrap_or_else(|faults| panic_with(&faults))
}

#[allow(clippy::panic, reason = "a test fails by panicking")]
fn panic_with(faults: &[Fault]) -> Enquiry {
    panic!("{}", faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"))
}

fn refused(text: &str) -> String {
    read(text).expect_err("it is refused").iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")
}

fn claim<Q: Typed>(key: &Quantity<Q>) -> &Claim {
    key.claim().expect("something was said")
}

/// Value, low and high in US gallons per minute.
fn gpm(flow: &Claim) -> [f64; 3] {
    let (low, high, _) = flow.range.as_ref().expect("a range");
    [flow.written.si(), low.si(), high.si()].map(|si| GPM.from_si(si)).map(|x| (x * 1e9).round() / 1e9)
}

fn notes(e: &Enquiry) -> String {
    e.notes.iter().map(|(place, note)| format!("{place}: {note}")).collect::<Vec<_>>().join("\n")
}

#[test]
fn a_range_is_a_claim_with_its_safe_end_as_the_value() {
    let e = enquiry("[[stream]]\nname = \"wash\"\nflow = \"10 to 20 gpm\"\n");
    let flow = claim(&e.streams[0].flow);
    assert_eq!(gpm(flow), [20.0, 10.0, 20.0]);
    assert_eq!(flow.written.text, "10 to 20 gpm");
    assert!(matches!(flow.range, Some((_, _, Distribution::Uniform))));
    assert!(notes(&e).contains("stream \"wash\": flow: of \"10 to 20 gpm\" the larger end"), "{}", notes(&e));

    let e = enquiry("[[stream]]\nflow = \"20 gpm +/- 10 %\"\n[water]\ncoldest = \"40-50 °F\"\n");
    assert_eq!(gpm(claim(&e.streams[0].flow)), [20.0, 18.0, 22.0]);
    assert!((claim(&e.water.coldest).written.value - 40.0).abs() < 1e-12);
    assert!(notes(&e).contains("the smaller end"), "{}", notes(&e));
}

#[test]
fn where_neither_end_is_safe_the_middle_is_taken_and_said() {
    let e =
        enquiry("[[stream]]\nflow = \"20 gpm\"\n[rain]\npath = \"200 to 300 ft\"\n[[surface]]\narea = \"1 acre\"\n");
    let path = e.rain.as_ref().map(|r| claim(&r.path).written.value);
    assert_eq!(path, Some(250.0));
    assert!(notes(&e).contains("the middle of the range was taken"), "{}", notes(&e));
}

#[test]
fn a_claim_with_a_range_takes_the_distribution_said() {
    let e = enquiry(
        "[[stream]]\nflow = { value = \"10 to 20 gpm\", distribution = \"triangular\", from = \"call of 3 May\" }\n",
    );
    let flow = claim(&e.streams[0].flow);
    assert!(matches!(flow.range, Some((_, _, Distribution::Triangular))));
    assert_eq!(flow.from.as_deref(), Some("call of 3 May"));
    let twice = refused("[[stream]]\nflow = { value = \"10 to 20 gpm\", low = \"5 gpm\", high = \"30 gpm\" }\n");
    assert!(twice.contains("line 5") && twice.contains("is a range, and low or high stands beside it"), "{twice}");
}

#[test]
fn about_and_bounds_are_notes_only() {
    for (text, said) in [("about 20 gpm", "how far it may be off is not said"), ("max 20 gpm", "an upper bound")] {
        let e = enquiry(&format!("[[stream]]\nflow = \"{text}\"\n"));
        let flow = claim(&e.streams[0].flow);
        assert!(flow.range.is_none() && flow.written.text == text);
        assert!((flow.written.value - 20.0).abs() < 1e-12 && notes(&e).contains(said), "{}", notes(&e));
    }
}

#[test]
fn bounds_of_the_key_hold_for_both_ends() {
    let far = refused("[[stream]]\nflow = \"10 to 200000 gpm\"\n");
    assert!(far.contains("200000 gpm is not between 0.01 gpm and 100000 gpm"), "{far}");
    let unit = refused("[[stream]]\nflow = \"10 to 20 gmp\"\n");
    assert!(unit.contains("did you mean \"gpm\"? use m3/s"), "{unit}");
}

/// 5 ft 6 1/2 in = 66.5 in; 3 600 of anything = 3600.
#[test]
fn lengths_and_groups_as_they_are_written() {
    let e = enquiry("[[stream]]\nflow = \"20 gpm\"\n[site]\nmax_length = \"5' 6 1/2\\\"\"\nlifting = \"3 600 lb\"\n");
    assert!((IN.from_si(claim(&e.site.max_length).written.si()) - 66.5).abs() < 1e-9);
    assert!((claim(&e.site.lifting).written.value - 3600.0).abs() < 1e-9);
    assert!(notes(&e).contains("site: lifting: \"3 600\" was read as 3600"), "{}", notes(&e));
}

#[test]
fn each_pump_has_its_own_claim() {
    let e = enquiry(
        "[inlet]\nrate = [{ value = \"60 gpm\", low = \"50 gpm\", high = \"70 gpm\", from = \"name plate\" }, \"60 gpm\"]\n",
    );
    let [first, second] = &e.inlet.rate.0[..] else { return assert_eq!(e.inlet.rate.0.len(), 2) };
    assert_eq!(gpm(claim(first)), [60.0, 50.0, 70.0]);
    assert_eq!((first.place.as_str(), second.place.as_str()), ("inlet: rate.1", "inlet: rate.2"));
    assert_eq!(claim(first).from.as_deref(), Some("name plate"));
    assert!(claim(second).range.is_none());
    // Claims on one pump stand in a list of their own.
    let e = enquiry("[inlet]\nrate = [[\"60 gpm\", \"70 gpm\"], \"50 gpm\"]\n");
    assert!(e.inlet.rate.0.len() == 2 && e.inlet.rate.0[0].is_contradicted());
    assert!((claim(&e.inlet.rate.0[0]).written.value - 70.0).abs() < 1e-12);
}

#[test]
fn rows_of_a_curve_say_what_was_interpreted() {
    let e = enquiry("[[stream]]\nflow = \"20 gpm\"\n[solids]\ntable = [\"20,5 um: 15 %\", \"250 um: 100 %\"]\n");
    assert!(notes(&e).contains("row 1: \"20,5\" was read with a decimal comma"), "{}", notes(&e));
}

/// Who writes "4,5" may part thousands with a point: it is told, and refused where a zero ends it; who writes no decimal comma
/// means a decimal point, but that "2.600" among metric units may be 2600. A level of 112.345 m can be no thousands.
#[test]
fn a_point_with_three_digits_behind_it_is_told_or_refused_beside_decimal_commas() {
    let yard = |area: &str, width: &str| {
        format!(
            "[[surface]]\nname = \"yard\"\narea = \"{area}\"\n[site]\nmax_width = \"{width}\"\nground = \"112.345 m\"\n"
        )
    };
    let told = "was read with a decimal point; where it parts thousands";
    let comma = notes(&enquiry(&yard("1.712 m2", "4,5 m")));
    assert_eq!(comma.matches(told).count(), 1, "{comma}");
    assert_eq!(notes(&enquiry(&yard("1.710 m2", "4.5 m"))).matches(told).count(), 0);
    for (system, width) in [("us", "4,5 m"), ("si", "4.5 m")] {
        let text = format!("[enquiry]\ntitle = \"x\"\nprint = \"{system}\"\n{}", yard("2.600 m2", width));
        let faults = read_enquiry(&text, &|_| None).expect_err("it is refused");
        let faults = faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n");
        assert_eq!(faults.matches("\"2.600\" may be a thousand times as much").count(), 1, "{faults}");
    }
    let level = yard("0.500 m2", "4.5 m").replace("112.345", "112.500");
    assert_eq!(notes(&enquiry(&level)).matches("thousand").count(), 0);
    let faults = refused(&yard("1.710 m2", "4,5 m"));
    assert_eq!(faults.matches("may be a thousand times as much").count(), 1, "{faults}");
    assert!(faults.contains("1.710") && faults.contains("write a decimal comma"), "{faults}");
}

/// "None" is a limit on a sheen, and on nothing else: it is any sample, and the number is ours.
#[test]
fn a_sheen_may_be_forbidden_without_a_number() {
    let e = enquiry(&limit("sheen", "{ value = \"no visible sheen\", from = \"permit\" }"));
    assert_eq!(e.limits[0].value.unseen.as_deref(), Some("no visible sheen"));
    assert!(refused(&limit("oil and grease", "\"none\"")).contains("none"));
    let basis = stillrise_design::basis::limits::limits(
        &mut stillrise_design::Off,
        &stillrise_design::WhatIf::default(),
        &e,
        &[],
    );
    let Ok([limit]) = basis.as_deref() else { return assert!(basis.is_ok()) };
    assert!((limit.value.q.in_unit(&MG_L) - 15.0).abs() < 1e-9 && limit.unseen.is_some());
    assert_eq!(limit.statistic.q.word(), "any sample");
}

fn limit(pollutant: &str, value: &str) -> String {
    format!("[[stream]]\nflow = \"20 gpm\"\n[[limit]]\npollutant = \"{pollutant}\"\nvalue = {value}\n")
}

#[test]
fn a_limit_on_ph_is_a_range() {
    for value in ["6-9", "pH 6-9", "6 to 9", "6.0–9.0", "pH 6-9 units", "6.0 - 9.0 s.u.", "7.5 ± 1.5"] {
        let e = enquiry(&limit("pH", &format!("\"{value}\"")));
        let ph = e.limits[0].value.ph.0.map(|ph| (ph.low.to_bits(), ph.high.to_bits()));
        assert_eq!(ph, Some((6.0_f64.to_bits(), 9.0_f64.to_bits())), "{value}");
        assert!(!e.limits[0].value.is_given());
        assert_eq!(e.limits[0].value.ph.0.map(|ph| ph.to_string()).as_deref(), Some("pH 6 to 9"));
    }
    let e = enquiry(&limit("pH", "{ value = \"6-9\", from = \"permit\" }"));
    assert_eq!(e.limits[0].value.ph.1.source("x").to_string(), "x, from permit");
}

#[test]
fn what_is_no_range_of_ph_is_refused_and_so_is_a_range_without_a_unit_elsewhere() {
    for (pollutant, value, said) in [
        ("pH", "15 mg/L", "is a density or concentration, not a pure number; a limit on pH is a range without a unit"),
        ("pH", "9", "is one number, not a range"),
        ("pH", "6 to 19", "is not between 0 and 14"),
        ("oil and grease", "6-9", "has no unit"),
        ("oil and grease", "pH 6-9", "does not begin with a number"),
    ] {
        let told = refused(&limit(pollutant, &format!("\"{value}\"")));
        assert!(told.contains("line 8, limit") && told.contains(said), "{pollutant} {value}: {told}");
    }
}

#[test]
fn the_basis_holds_a_limit_on_ph_as_a_range() {
    let e = enquiry(&limit("pH", "{ value = \"6-9\", from = \"permit\" }"));
    let mut ledger = stillrise_design::Ledger::default();
    let design = stillrise_design::job::begin(&mut ledger, &stillrise_design::WhatIf::default(), &e);
    let basis = design.basis.expect("a basis");
    assert!(basis.limits.is_empty());
    assert_eq!(basis.ph_limits.iter().map(|l| l.shown()).collect::<Vec<_>>(), ["pH 6 to 9"]);
    let says = design.triage.iter().find(|l| l.subject == "limit on pH").map(|l| l.says.as_str());
    assert!(says.is_some_and(|says| says.contains("a separator does not touch it")), "{says:?}");
    let lowest = ledger.entries.iter().find(|e| e.label == "lowest pH allowed");
    let source =
        lowest.and_then(|e| if let Origin::Given { source, .. } = &e.origin { Some(source.to_string()) } else { None });
    assert_eq!(source.as_deref(), Some("limit \"pH\": value, from permit"));
}
