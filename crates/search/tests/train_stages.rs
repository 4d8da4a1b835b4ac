//! The stages around the separator by hand arithmetic, through the real chain: feed pump on its rising main, screen,
//! polisher, one unit shut, oil holding tank, bypass.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::bases::look;
use common::{OUT, Sheet, demo};
use stillrise_design::basis::lift::{Lift, Missed};
use stillrise_design::train::{StageKind, Train};
use stillrise_handbook::page::Arg;
use stillrise_search::Settled;
use stillrise_units::Typed;
use stillrise_units::catalog::{D, GPM, L_S, M, M3, MG_L, MM};

fn near(got: f64, hand: f64, share: f64, what: &str) {
    assert!((got - hand).abs() <= share * hand.abs(), "{what}: {got}, by hand {hand}");
}

fn train(settled: &Settled) -> &Train {
    settled.job.design.train.as_ref().unwrap_or_else(|| panic!("no train: {:?}", settled.job.design.stops))
}

fn lift(settled: &Settled) -> &Lift {
    settled.job.design.basis.as_ref().and_then(|b| b.feed.lift.as_ref()).expect("a lift was stated")
}

/// 15 L/s in a bore of 100 mm: 1.9099 m/s, velocity head 0.18597 m, Re 190 300 at 1.0035 mm2/s; Colebrook's factor for a
/// roughness of 0.0015 is 0.02285, so that (5 + 0.02285 x 1000) x 0.18597 m = 5.180 m are lost.
#[test]
fn the_head_at_the_stated_rate_is_lift_and_losses() {
    let settled = Sheet::data("train").settle(&demo());
    let [duty] = &lift(&settled).duties[..] else { panic!("one pump has one duty") };
    near(duty.flow.q.in_unit(&L_S), 15.0, 1e-9, "54 m3/h");
    near(duty.head.q.in_unit(&M), 6.0 + 5.180, 1e-4, "head");
    let stage = train(&settled).stages.iter().find(|s| s.kind == StageKind::Pump).expect("a pump");
    let Some((_, Arg::Number(head), _)) = &stage.size else { panic!("the pump has a head") };
    near(*head, 11.180, 1e-4, "the stage's size");
}

/// By bisection apart (Python), Colebrook's factor by iteration, 1 mm2/s: one pump 15.5508 L/s at 11.559 m, two 20.6696 L/s
/// at 15.732 m. The water here has 1.0035 mm2/s.
#[test]
fn pumps_run_where_their_curve_meets_the_main() {
    let one = Sheet::data("train").settle(&demo());
    let [point] = &lift(&one).points[..] else { panic!("one pump has one point") };
    let (flow, head) = point.at.expect("they meet");
    near(flow.q.in_unit(&L_S), 15.5508, 1e-3, "one pump");
    near(head.q.in_unit(&M), 11.559, 1e-3, "its head");
    near(point.off.expect("a rate was stated").q.si(), 15.0 / 15.5508 - 1.0, 0.03, "stated over found, less one");
    assert!(point.within.is_none(), "all of the main was stated");
    assert_eq!(look(&one, "pump-off-its-curve").word(), "passes");
    // The head of the system lies on the curve: 16 m at 10 L/s, 8 m at 20 L/s.
    near(head.q.in_unit(&M), 16.0 - 0.8 * (flow.q.in_unit(&L_S) - 10.0), 1e-9, "on the curve");

    let two = Sheet::data("train").with("inlet.rate", r#"["54 m3/h", "54 m3/h"]"#).with("inlet.together", "true");
    let two = two.settle(&demo());
    let (flow, head) = lift(&two).points[1].at.expect("they meet");
    near(flow.q.in_unit(&L_S), 20.6696, 1e-3, "two pumps");
    near(head.q.in_unit(&M), 15.732, 1e-3, "their head");
    // 30 L/s are said, 20.67 L/s come: 45 % more.
    let found = look(&two, "pump-off-its-curve");
    assert_eq!(found.word(), "warns", "{}", found.says());
    assert!(found.says().contains("2 pumps together"), "{}", found.says());
}

#[test]
fn a_rate_that_nobody_stated_is_read_off_the_curve() {
    let settled = Sheet::data("train").with("inlet.rate", OUT).settle(&demo());
    let basis = settled.job.design.basis.as_ref().expect("a basis");
    near(basis.feed.one_pump.expect("a rate").q.in_unit(&L_S), 15.5508, 1e-3, "one pump");
    near(basis.cases[0].feed.q.in_unit(&L_S), 15.5508, 1e-3, "what the unit gets");
    assert_eq!(look(&settled, "pump-off-its-curve").word(), "not applicable");
    // Two that run together on one main: less than twice as much.
    let two = Sheet::data("train").with("inlet.rate", OUT).with("lift.pumps", "2").settle(&demo());
    let basis = two.job.design.basis.as_ref().expect("a basis");
    near(basis.feed.all_pumps.expect("a rate").q.in_unit(&L_S), 20.6696, 1e-3, "two pumps");
}

#[test]
fn a_curve_that_does_not_meet_the_main_says_why() {
    let missed = |key: &str, value: &str| {
        let settled = Sheet::data("train").with(key, value).settle(&demo());
        lift(&settled).points[0].at.expect_err("they do not meet")
    };
    // 20 m without flow do not lift by 21 m; at 20 L/s without fittings and length 8 m are left over a lift of 1 m.
    assert_eq!(missed("lift.static_lift", "21 m"), Missed::CannotLift);
    assert_eq!(missed("lift.bore", "1000 mm"), Missed::Beyond);
    assert_eq!(missed("lift.curve", r#"["15 L/s: 11 m", "20 L/s: 8 m"]"#), Missed::Below);
}

/// What is assumed of the main spans the flow: an answer within the ends lies between them.
#[test]
fn what_is_assumed_of_the_main_spans_the_flow() {
    let high = Sheet::data("train").with("lift.static_lift", "8 m");
    let open = high.with("lift.length", OUT).with("lift.roughness", OUT).settle(&demo());
    let ends = lift(&open).points[0].within.expect("length and roughness are assumed");
    let [Some(least), Some(most)] = ends else { panic!("a lift of 8 m is met before the curve ends at 8 m") };
    for (length, rough) in [("20 m", "0.1 mm"), ("120 m", "1 mm")] {
        let told = high.with("lift.length", length).with("lift.roughness", rough).settle(&demo());
        let (flow, _) = lift(&told).points[0].at.expect("they meet");
        assert!(least.q < flow.q && flow.q < most.q, "{length}, {rough}");
    }
}

/// Plates 19.05 mm apart: 2.42 (10/19.05)^(4/3) x 0.36/19.6133 m x sin 60° = 2.42 x 0.42345 x 18.355 mm x 0.86603 = 16.29 mm;
/// with half covered 2.42 (19.525/9.525)^(4/3) x 18.355 mm x 0.86603 = 2.42 x 2.6040 x 15.896 mm = 100.2 mm.
#[test]
fn a_screen_is_no_wider_than_the_plates_and_loses_by_kirschmer() {
    let settled = Sheet::data("train").settle(&demo());
    let screen = train(&settled).screen.as_ref().expect("a pump and a rinse ask for one");
    assert_eq!(screen.reasons.len(), 2, "{:?}", screen.reasons);
    let bars = screen.bars.as_ref().expect("the plates are known");
    near(bars.spacing.q.in_unit(&MM), 19.05, 1e-9, "opening");
    near(bars.clean.q.in_unit(&MM), 16.29, 5e-4, "clean");
    near(bars.dirty.q.in_unit(&MM), 100.17, 5e-4, "half covered");
    let stage = train(&settled).stages.iter().find(|s| s.kind == StageKind::Screen).expect("a stage");
    assert!(stage.asked_for);
    // A pump through which less passes than between the plates governs.
    let fine = Sheet::data("train").with("lift.passage", "8 mm").with("screen.exists", "true").settle(&demo());
    let screen = train(&fine).screen.as_ref().expect("one stands");
    near(screen.bars.as_ref().expect("known").spacing.q.in_unit(&MM), 8.0, 1e-9, "opening");
    assert!(!train(&fine).stages.iter().find(|s| s.kind == StageKind::Screen).expect("a stage").asked_for);
}

#[test]
fn no_screen_is_asked_for_where_nothing_brings_leaves_or_rags() {
    let settled = Sheet::data("wash").with("screen", OUT).with("stream.name", "pit").settle(&demo());
    assert!(train(&settled).screen.is_none());
    assert_eq!(look(&settled, "screen-too-wide").word(), "not applicable");
}

/// 200 mg/L of which 10 % are emulsified and 2 mg/L dissolved: 20 and 2 mg/L pass any separator; the limit is 5 mg/L.
#[test]
fn the_polisher_takes_out_what_is_above_the_limit() {
    let settled = Sheet::data("train").settle(&demo());
    let demand = train(&settled).around.polisher.as_ref().expect("5 mg/L ask for one");
    near(demand.flow.q.in_unit(&L_S), 15.0, 1e-9, "the pump's rate");
    assert!(!demand.pumped && demand.spill);
    let [water] = &demand.reaches[..] else { panic!("one water") };
    near(water.emulsified.q.in_unit(&MG_L), 20.0, 1e-9, "emulsified");
    near(water.dissolved.q.in_unit(&MG_L), 2.0, 1e-9, "dissolved");
    let free = water.free.q.in_unit(&MG_L);
    assert!((0.0..178.0).contains(&free), "{free}");
    near(water.total.q.in_unit(&MG_L), 22.0 + free, 1e-9, "all of it");
    let [out] = &demand.takes[..] else { panic!("one limit") };
    near(out.allows.q.in_unit(&MG_L), 5.0, 1e-9, "may leave");
    let reaches = out.reaches.q.in_unit(&MG_L);
    assert!(reaches >= 22.0 + free - 1e-9, "no less than at the mean");
    near(out.takes.q.in_unit(&MG_L), reaches - 5.0, 1e-9, "to take out");
    near(out.share.q.si(), 1.0 - 5.0 / reaches, 1e-9, "share");
}

/// A weak water holds most that does not rise, 80 % of 150 mg/L, and decides the word; a strong one, 2,000 mg/L of which 2 % are
/// emulsified, leaves more through a unit too small for it. The stage has to take what that leaves.
#[test]
fn the_polisher_is_laid_out_for_the_water_that_leaves_most() {
    let text = "[enquiry]\ntitle = \"Two waters\"\nprint = \"si\"\n[[stream]]\nname = \"weak\"\nflow = \"2 m3/h\"\nhours_per_day = 4\n\
        oil = { kind = \"diesel\", mean = \"150 mg/L\", emulsified = \"80 %\" }\n[[stream]]\nname = \"strong\"\nflow = \"6 m3/h\"\n\
        hours_per_day = 2\noil = { kind = \"diesel\", mean = \"2000 mg/L\", emulsified = \"2 %\" }\n[droplets]\nd50 = \"12 um\"\n\
        [inlet]\nfeed = \"gravity\"\n[[limit]]\npollutant = \"oil and grease\"\nvalue = \"100 mg/L\"\n";
    let settled = Sheet::text("two waters", text).settle(&demo());
    let demand = train(&settled).around.polisher.as_ref().expect("100 mg/L ask for one");
    let [out] = &demand.takes[..] else { panic!("one limit") };
    let most = demand.reaches.iter().max_by(|a, b| a.total.q.si().total_cmp(&b.total.q.si())).expect("waters");
    assert_eq!((out.case.as_str(), most.case.as_str()), ("strong alone", "strong alone"));
    assert!(out.reaches.q >= most.total.q, "{:?} {:?}", out.reaches.q, most.total.q);
    let held = &settled.job.design.performance.as_ref().expect("worked").limits[0];
    assert_eq!(held.case, "weak alone", "the word comes from the other");
}

/// Behind effluent pumps the stage gets their flow: that of one pump, as the other stands by.
#[test]
fn a_polisher_behind_effluent_pumps_passes_their_flow() {
    let settled = Sheet::data("buried").with("limit.pollutant", "oil and grease").with("limit.value", "3 mg/L");
    let settled =
        settled.with("limit.statistic", "daily maximum").with("unit.dimensions.pump_flow", "150 gpm").settle(&demo());
    let demand = train(&settled).around.polisher.as_ref().expect("3 mg/L ask for one");
    near(demand.flow.q.in_unit(&GPM), 150.0, 1e-9, "one pump");
    assert!(demand.pumped);
    let stage = train(&settled).stages.iter().find(|s| s.kind == StageKind::Polisher).expect("a stage");
    let Some((_, Arg::Number(flow), _)) = &stage.size else { panic!("it has a flow") };
    near(*flow, demand.flow.q.si(), 1e-12, "the same in the list of stages");
}

/// 60 gpm through three: 20 gpm each; through two 30 gpm, half as much again; with one that stands by 20 gpm as before.
#[test]
fn one_unit_shut_loads_the_others_unless_one_stands_by() {
    let three = Sheet::data("wash").with("unit.count", "3");
    let settled = three.settle(&demo());
    let shut = train(&settled).around.shut.expect("two are left");
    near(shut.each.q.in_unit(&GPM), 30.0, 1e-9, "each");
    near(shut.over.q.si(), 0.5, 1e-9, "more");
    // What then leaves is what leaves two of them that take it all.
    let model = train(&settled).unit.particulars.model.clone();
    let two = Sheet::data("wash").with("unit.count", "2").with("unit.model", &model).settle(&demo());
    let worst =
        |s: &Settled| s.job.design.performance.as_ref().and_then(|p| p.worst()).map(|w| w.total.expected.q.si());
    near(shut.out.expect("more comes to each").q.si(), worst(&two).expect("what leaves two"), 1e-6, "out");
    assert!(shut.out.map(|out| out.q.si()) > worst(&settled));
    let spare = three.with("unit.standby", "1").settle(&demo());
    let shut = train(&spare).around.shut.expect("three are left");
    near(shut.each.q.in_unit(&GPM), 20.0, 1e-9, "each");
    assert_eq!(shut.over.q.si(), 0.0);
    assert!(shut.out.is_none(), "no more comes to each");
    near(train(&spare).bought(), 4.0, 1e-12, "bought");
    // What the others do is worked for three, with or without the one that stands by.
    let out = |s: &Settled| {
        s.job.design.performance.as_ref().and_then(|p| p.worst()).map(|w| w.total.expected.q.si().to_bits())
    };
    assert_eq!(out(&settled), out(&spare));
    assert!(train(&Sheet::data("wash").settle(&demo())).around.shut.is_none(), "one unit shares with none");
}

/// 40 m3/h for 2 h every day are 80 m3/d; of 200 mg/L 178 mg/L are free: 14.24 kg/d, at 840 kg/m3 16.952 L/d. Nine tenths of
/// 1 m3 are full after 53.09 d at the soonest; the oil stands at 20 °C and weighs some 4 kg/m3 less than at 15 °C, for which its
/// density is stated: 0.5 % sooner. The spill of 200 L leaves 700 L.
#[test]
fn an_oil_tank_lasts_by_what_comes() {
    let settled = Sheet::data("train").with("oil_tank.volume", "1 m3").settle(&demo());
    let tank = train(&settled).around.oil_tank.as_ref().expect("one was stated");
    near(tank.room.q.in_unit(&M3), 0.9, 1e-9, "room");
    near(tank.soonest.expect("oil comes").q.in_unit(&D), 53.09 * 0.9955, 1e-3, "soonest");
    let days = tank.days.expect("oil comes").q.in_unit(&D);
    assert!(days >= 53.09 * 0.99, "{days}");
    near(tank.spare.expect("a spill").q.in_unit(&M3), 0.7, 1e-9, "spare");
    // One routine draw-off of this unit is more than that tank takes, and less than one of 10 m3.
    let found = look(&settled, "oil-tank-too-small");
    assert!(found.word() == "warns" && found.says().contains("draw-off"), "{}", found.says());
    let larger = Sheet::data("train").with("oil_tank.volume", "10 m3").settle(&demo());
    assert_eq!(look(&larger, "oil-tank-too-small").word(), "passes");
    // Two units catch the same oil together; what fills the tank does not hang on their number.
    let two = Sheet::data("train").with("oil_tank.volume", "1 m3").with("unit.count", "2").settle(&demo());
    near(
        train(&two).around.oil_tank.as_ref().expect("one").soonest.expect("oil").q.in_unit(&D),
        53.09 * 0.9955,
        1e-3,
        "two",
    );
}

/// 60 gpm come and 45 gpm may leave: 15 gpm, a quarter, would run past; wash water and a spill bar that.
#[test]
fn a_bypass_would_let_the_rest_past() {
    let settled = Sheet::data("wash").with("outlet.flow_cap", "45 gpm").settle(&demo());
    let bypass = train(&settled).around.bypass.as_ref().expect("more comes than leaves");
    near(bypass.past.q.in_unit(&GPM), 15.0, 1e-9, "past");
    near(bypass.share.q.si(), 0.25, 1e-9, "share");
    assert!(bypass.barred.expect("barred").contains("spill"));
    let dry = Sheet::data("wash").with("outlet.flow_cap", "45 gpm").with("spill", OUT).settle(&demo());
    assert!(train(&dry).around.bypass.as_ref().expect("one").barred.expect("barred").contains("rain alone"));
    assert!(train(&Sheet::data("wash").settle(&demo())).around.bypass.is_none(), "all of it leaves");
}
