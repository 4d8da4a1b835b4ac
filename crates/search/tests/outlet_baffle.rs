//! A perforated baffle on the outlet face of the plates: what it takes of the head, where it stands among the stages, and that
//! nothing is there where no row states it. Expected numbers are worked by hand beside each test.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{OUT, Sheet, demo};
use stillrise_design::performance::Performance;
use stillrise_design::performance::hydraulics::Profile;
use stillrise_search::Settled;
use stillrise_units::Typed;
use stillrise_units::catalog::{GPM, IN, MG_L};

const OPEN: &str = "unit.dimensions.outlet_baffle_open";

fn performance(settled: &Settled) -> &Performance {
    settled.job.design.performance.as_ref().unwrap_or_else(|| panic!("{:?}", settled.job.design.stops))
}

/// Its loss in inches, where it takes one.
fn taken(profile: &Profile) -> Option<f64> {
    profile.steps.iter().find(|step| step.name == "outlet baffle").map(|step| step.loss.q.in_unit(&IN))
}

/// The pack is 48 in wide and 24 in high, 8 ft2: 60 gpm, 0.133681 ft3/s, meet it at 0.0167101 ft/s. A tenth open:
/// zeta = ((0.707 x 0.948683 + 0.9) / 0.1)^2 = 246.716, so 246.716 x 0.0167101^2 / 64.348 ft = 0.012847 in; it goes with the
/// square of the flow. With 20 % of the gaps fouled the water is 1 / 0.8 as fast and takes 1.5625 times as much.
#[test]
fn its_holes_take_their_head() {
    let settled = Sheet::data("wash").with(OPEN, "10 %").with("method.fouling", "20 %").settle(&demo());
    let mut seen = [false; 2];
    for profile in performance(&settled).profiles.iter().filter(|profile| profile.flow.q.si() > 0.0) {
        let fouled = profile.at.name().contains("end of interval");
        let share = profile.flow.q.in_unit(&GPM) / 60.0;
        let by_hand = 0.012_847 * share * share * if fouled { 1.5625 } else { 1.0 };
        let loss = taken(profile).expect("a step of its own");
        assert!((loss / by_hand - 1.0).abs() < 1e-4, "{}: {loss} in, by hand {by_hand}", profile.at.name());
        seen[usize::from(fouled)] = true;
    }
    assert_eq!(seen, [true, true], "clean and fouled");
}

/// From the outlet upstream: downcomer, baffle, mesh, pack. It adds its own loss to the level ahead of it and nothing else:
/// what leaves is the same, since no credit is taken.
#[test]
fn it_stands_behind_the_mesh_and_earns_no_credit() {
    let (with, without) = (Sheet::data("wash").with(OPEN, "10 %").settle(&demo()), Sheet::data("wash").settle(&demo()));
    let highest = performance(&with).highest();
    let names: Vec<&str> = highest.steps.iter().map(|step| step.name).collect();
    let at = names.iter().position(|name| *name == "outlet baffle").expect("a step of its own");
    assert_eq!(names.get(at - 1..at + 3), Some(&["downcomer", "outlet baffle", "mesh", "plate pack"][..]));
    let rise = (highest.chamber.q - performance(&without).highest().chamber.q).in_unit(&IN);
    assert!((rise - taken(highest).expect("a loss")).abs() < 1e-9, "{rise} in");
    let leaves = |settled| performance(settled).worst().expect("a worst case").total.expected.q.in_unit(&MG_L);
    assert_eq!(leaves(&with).to_bits(), leaves(&without).to_bits());
    // Without a mesh it stands behind the plates.
    let bare = Sheet::data("wash").with(OPEN, "10 %").with("unit.dimensions.mesh", OUT).settle(&demo());
    let names: Vec<&str> = performance(&bare).highest().steps.iter().map(|step| step.name).collect();
    let at = names.iter().position(|name| *name == "outlet baffle").expect("a step of its own");
    assert_eq!(names.get(at + 1), Some(&"plate pack"));
}

/// No row of the demo range and no base states one.
#[test]
fn where_it_is_not_stated_there_is_none() {
    let settled = Sheet::data("wash").settle(&demo());
    assert!(performance(&settled).profiles.iter().all(|profile| taken(profile).is_none()));
    assert!(settled.job.design.train.as_ref().expect("a train").unit.outlet_baffle.is_none());
    assert!(!settled.job.ledger.entries.iter().any(|entry| entry.label.contains("outlet baffle")));
}

/// Without plates there is nothing behind which it could stand.
#[test]
fn without_plates_it_is_refused() {
    let settled = Sheet::data("upright").with(OPEN, "10 %").settle(&demo());
    let stops = format!("{:?}", settled.job.design.stops);
    assert!(stops.contains("outlet baffle stands behind plates"), "{stops}");
}
