//! A unit that stands, of which little is known: what nobody could send is assumed, asked for and drawn.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{OUT, Sheet, demo};
use stillrise_design::provenance::Origin;
use stillrise_design::stages::plate_pack::Dimensions;
use stillrise_design::train::UnitOrigin;
use stillrise_design::train::unit::Unit;
use stillrise_search::Settled;
use stillrise_units::Typed;
use stillrise_units::catalog::{IN, MM};

fn rough() -> Sheet {
    Sheet::data("changed")
}

fn unit(settled: &Settled) -> Unit {
    let design = &settled.job.design;
    design.train.as_ref().unwrap_or_else(|| panic!("{:?}", design.stops)).unit.clone()
}

fn pack(unit: &Unit) -> &Dimensions {
    &unit.pack.as_ref().expect("plates").laid
}

#[test]
fn three_outside_dimensions_a_pack_and_the_flow_will_do() {
    let settled = rough().settle(&demo());
    assert!(settled.job.design.performance.is_some(), "{:?}", settled.job.design.stops);
    let f = unit(&settled);
    let [length, width, height] = f.body.sizes().1.into_inner().expect("three sides");
    // Two walls of 1/4 in off length and width, one floor off the height.
    assert!((length.in_unit(&MM) - (2400.0 - 12.7)).abs() < 1e-9);
    assert!((width.in_unit(&MM) - (1200.0 - 12.7)).abs() < 1e-9);
    assert!((height.in_unit(&MM) - (1500.0 - 6.35)).abs() < 1e-9);
    assert!((f.outlet.invert.q.si() / height.si() - 0.75).abs() < 1e-9);
    assert!((pack(&f).gap.q.in_unit(&IN) - 0.75).abs() < 1e-9);
    assert!(
        f.underflow.edge().q < f.outlet.crest.q && f.inlet.invert.q > f.outlet.invert.q && f.inlet.invert.q < height
    );
    let train = settled.job.design.train.as_ref().expect("a train");
    assert_eq!(train.origin, UnitOrigin::Stated { assumed: true });
    assert!(train.unit.layout.primary_length.q.si() > 0.0);
}

/// Every dimension assumed is an assumption with a key, a question and a range that holds it; the questions ask for them.
#[test]
fn what_is_assumed_is_asked_for() {
    let settled = rough().settle(&demo());
    let assumed: Vec<_> = settled
        .job
        .ledger
        .entries
        .iter()
        .filter_map(|e| match &e.origin {
            Origin::Assumed(a) if a.key.starts_with("unit.dimensions.") => Some((e, a)),
            _ => None,
        })
        .collect();
    for key in [
        "outlet_invert",
        "inlet_invert",
        "outlet_pipe",
        "inlet_pipe",
        "inlet_length",
        "pack_length",
        "pack_height",
        "pack_bottom",
        "gap",
        "angle",
        "retention_length",
        "well_length",
        "lip",
        "wall",
    ] {
        let (entry, a) = assumed
            .iter()
            .find(|(_, a)| a.key == format!("unit.dimensions.{key}"))
            .unwrap_or_else(|| panic!("{key} is not assumed"));
        assert!(!a.question.is_empty(), "{key}");
        let number = |x: &stillrise_handbook::page::Arg| match x {
            stillrise_handbook::page::Arg::Number(x) => *x,
            other => panic!("{other:?}"),
        };
        let (low, value, high) = (number(&a.low), number(&entry.value), number(&a.high));
        assert!(low <= value && value <= high && low < high, "{key}: {low} {value} {high}");
    }
    assert!(settled.questions().iter().any(|q| q.key == "unit.dimensions.gap"));
}

/// No two ends of the ranges contradict one another: each assumption at either end, and all at either end.
#[test]
fn the_chain_stands_at_the_ends_of_what_is_assumed() {
    let mut settled = rough().settle(&demo());
    settled.study(40);
    let risk = settled.risk.as_ref().expect("a study");
    assert!(risk.samples >= 40 && risk.stopped == 0, "{} stopped", risk.stopped);
}

#[test]
fn stated_dimensions_go_before_assumed_ones() {
    let known = rough()
        .with("unit.dimensions.pack_length", "900 mm")
        .with("unit.dimensions.pack_height", "600 mm")
        .with("unit.dimensions.gap", "0.5 in");
    let f = unit(&known.settle(&demo()));
    let f = pack(&f);
    assert!((f.length.q.in_unit(&MM) - 900.0).abs() < 1e-9 && (f.gap.q.in_unit(&IN) - 0.5).abs() < 1e-9);
    let volume = rough().with("unit.dimensions.pack_volume", "0.6 m3").with("unit.dimensions.pack_height", "600 mm");
    let f = unit(&volume.settle(&demo()));
    assert!((pack(&f).length.q.si() * f.body.width().q.si() * 0.6 - 0.6).abs() < 1e-9);
    let inside = unit(&rough().with("unit.dimensions.outside", "false").settle(&demo()));
    assert!((inside.body.length().q.in_unit(&MM) - 2400.0).abs() < 1e-9);
}

/// An open tank counts with its own plan, all of it up to the downcomer.
#[test]
fn a_unit_without_a_pack_has_its_own_plan_alone() {
    let settled = rough().with("unit.dimensions.pack", "none").settle(&demo());
    let unit = unit(&settled);
    assert!(unit.pack.is_none() && unit.mesh.is_none());
    let plan = (unit.body.length().q - unit.clear_well.as_ref().expect("a clear well").length.q) * unit.body.width().q;
    assert!((unit.layout.tank_area.q.si() - plan.si()).abs() < 1e-12);
    let packed = rough().settle(&demo());
    let out = |s: &Settled| s.job.design.performance.as_ref().and_then(|p| p.worst()).map(|r| r.total.expected.q.si());
    assert!(out(&settled) > out(&packed));
}

#[test]
fn what_must_be_stated_and_what_contradicts_is_refused() {
    for (changes, words) in [
        (&[("unit.dimensions.width", OUT)][..], "lacks width"),
        (&[("unit.dimensions.pack_length", "2.5 m")], "leave nothing"),
        (&[("unit.dimensions.pack_height", "1.6 m")], "above the water"),
        (&[("unit.dimensions.outlet_invert", "1.5 m")], "the outlet lies"),
        (&[("unit.dimensions.wall", "600 mm")], "twice the wall"),
        (&[("unit.dimensions.pack", "none"), ("unit.dimensions.gap", "0.5 in")], "no pack"),
        (&[("unit.dimensions.pack_volume", "0.4 m3"), ("unit.dimensions.pack_length", "0.5 m")], "beside each other"),
    ] {
        let sheet = changes.iter().fold(rough(), |sheet, (key, value)| sheet.with(key, value));
        let faults = sheet.enquiry().expect_err(words);
        assert!(faults.iter().any(|f| f.reason.contains(words) && !f.remedy.is_empty()), "{faults:?}");
    }
}
