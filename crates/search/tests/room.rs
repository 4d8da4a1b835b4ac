//! How a unit stands by the levels that are known, and the room that several need; through the real chain. The
//! expected numbers are worked by hand from the wash bay's dimensions: 132 x 48 in inside, walls 68 in, hopper 20 in with
//! 6 in of room below it, inlet nozzle at 56 in, outlet at 46 in and 20 ft of pipe at 1 % behind it.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::bases::look;
use common::{OUT, Sheet, demo};
use proptest::prelude::*;
use std::sync::OnceLock;
use stillrise_design::enquiry::blocks::Arrangement;
use stillrise_design::enquiry::range::Range;
use stillrise_design::performance::Performance;
use stillrise_design::performance::installation::{Because, Stands};
use stillrise_search::Settled;
use stillrise_units::catalog::FT;
use stillrise_units::{Length, Typed};

fn range() -> &'static Range {
    static RANGE: OnceLock<Range> = OnceLock::new();
    RANGE.get_or_init(demo)
}

fn wash(values: &[(&str, &str)]) -> Settled {
    values.iter().fold(Sheet::data("wash"), |sheet, (key, value)| sheet.with(key, value)).settle(range())
}

fn performance(settled: &Settled) -> &Performance {
    settled.job.design.performance.as_ref().expect("the wash bay has a performance")
}

/// Feet, to a thousandth: an eighth of the inch to which dimensions are stated.
fn close(found: Option<Length>, feet: Option<f64>) -> bool {
    match (found, feet) {
        (Some(found), Some(feet)) => (found.in_unit(&FT) - feet).abs() < 0.001,
        (None, None) => true,
        _ => false,
    }
}

#[test]
fn ground_and_incoming_pipe_say_how_it_stands_before_the_outfall_is_known() {
    // What is set; how it stands and why; lowest point over the ground, highest outfall, ft.
    type Row = (&'static [(&'static str, &'static str)], S, B, Option<f64>, Option<f64>);
    const OPEN: (&str, &str) = ("outlet.invert", OUT);
    use {Because as B, Stands as S};
    let rows: [Row; 16] = [
        (&[], S::OnGround, B::Reached, Some(0.0), None),
        (&[OPEN], S::OnGround, B::Reached, Some(0.0), Some(103.0 - 56.0 / 12.0 + 46.0 / 12.0 - 0.2)),
        (&[OPEN, ("site.ground", "100 ft")], S::InPit, B::PipeLow, Some(-3.8333), Some(101.9667)),
        (&[OPEN, ("site.ground", "105 ft")], S::Buried, B::PipeDeep, Some(-8.8333), Some(101.9667)),
        (&[("outlet.invert", "102.5 ft")], S::LiftPump, B::NoFall, Some(1.7), None),
        (&[("outlet.invert", "102.5 ft"), ("site.ground", OUT)], S::LiftPump, B::NoFall, None, None),
        // Behind the pump it stands on the ground, deep as the outfall lies.
        (&[("outlet.invert", "102.5 ft"), ("site.ground", "105 ft")], S::LiftPump, B::NoFall, Some(0.0), None),
        (&[("outlet.invert", "101.5 ft")], S::OnPlinth, B::OutfallHigh, Some(0.7), None),
        // The outfall's water lies at the level of the outlet, 46 in over the floor: at 101.5 ft that asks for 97.667 ft.
        (&[("outlet.tailwater", "101.5 ft")], S::OnPlinth, B::WaterHigh, Some(0.5), None),
        (&[OPEN, ("outlet.tailwater", "101.5 ft")], S::OnPlinth, B::WaterHigh, Some(0.5), Some(101.9667)),
        // At 102.5 ft for 98.667 ft, and the incoming pipe reaches 103 ft less 56 in.
        (&[("outlet.tailwater", "102.5 ft")], S::LiftPump, B::WaterOver, Some(1.5), None),
        (&[OPEN, ("outlet.tailwater", "102.5 ft")], S::LiftPump, B::WaterOver, Some(1.5), None),
        (&[OPEN, ("inlet.feed", "pump")], S::OnGround, B::Pumped, Some(0.0), Some(100.8)),
        (&[("inlet.feed", "pump"), ("outlet.invert", "101.5 ft")], S::OnPlinth, B::OutfallHigh, Some(0.7), None),
        (&[OPEN, ("site.ground", OUT)], S::Unknown, B::NoGround, None, Some(101.9667)),
        (&[OPEN, ("inlet.invert", OUT)], S::Unknown, B::NoIncoming, None, None),
    ];
    for (with, stands, because, over_ground, highest_outfall) in rows {
        let settled = wash(with);
        let found = performance(&settled).site.installation;
        assert_eq!((found.stands.q, found.because), (stands, because), "{with:?}");
        let over = found.over_ground.map(|v| v.q);
        assert!(close(over, over_ground), "{with:?}: {over:?}");
        let highest = found.highest_outfall.map(|v| v.q);
        assert!(close(highest, highest_outfall), "{with:?}: {highest:?}");
    }
}

/// With the pump behind it the unit stands where the incoming pipe lets it: 103 ft less the nozzle's 56 in, as deep as the
/// buried one above. There it may float when it is emptied, and with the pump ahead of it it cannot.
#[test]
fn with_the_pump_behind_it_the_unit_stands_in_the_ground_and_may_float() {
    let no_fall = [("outlet.invert", "102.5 ft"), ("site.ground", "105 ft")];
    let settled = wash(&no_fall);
    let found = performance(&settled).site.installation;
    assert!(close(found.floor_ahead_of_pump.map(|v| v.q), Some(103.0 - 56.0 / 12.0)));
    assert!(close(found.over_ground_ahead_of_pump.map(|v| v.q), Some(-8.8333)));
    let floats = look(&settled, "floats-when-emptied");
    assert!(floats.asks().iter().any(|ask| ask.key.as_deref() == Some("site.groundwater")), "{floats:?}");
    assert!(floats.says().starts_with("with the pump behind it"), "{}", floats.says());
    let at = |level: &'static str| {
        let weight = ("unit.dimensions.empty_weight", "2100 lb");
        look(&wash(&[no_fall[0], no_fall[1], weight, ("site.groundwater", level)]), "floats-when-emptied").word()
    };
    assert_eq!((at("104 ft"), at("98 ft")), ("warns", "passes"));
    assert!(performance(&wash(&[])).site.installation.floor_ahead_of_pump.is_none(), "no pump is asked for");
}

#[test]
fn the_question_for_the_outfall_names_the_highest_that_would_do() {
    let settled = wash(&[("outlet.invert", OUT)]);
    let asks = look(&settled, "not-enough-fall").asks();
    assert!(asks.iter().any(|ask| ask.question.contains("101.97 ft")), "{asks:?}");
}

#[test]
fn water_at_the_outfall_above_the_crest_fails_by_its_height_and_not_for_want_of_fall() {
    // 102.5 ft less 103 ft, plus the 10 in from the outlet's invert to the inlet's: 4 in.
    let settled = wash(&[("outlet.invert", OUT), ("outlet.tailwater", "102.5 ft")]);
    let over = performance(&settled).site.installation.water_over_crest.map(|v| v.q);
    assert!(close(over, Some(4.0 / 12.0)), "{over:?}");
    let drowned = look(&settled, "outlet-drowned");
    assert_eq!(drowned.word(), "fails");
    assert!(drowned.says().contains("4 in above the crest"), "{}", drowned.says());
    let lower = wash(&[("outlet.invert", OUT), ("outlet.tailwater", "102.1 ft")]);
    assert_eq!(look(&lower, "outlet-drowned").word(), "passes", "on a plinth the outlet stands above it");
}

#[test]
fn a_pit_shows_without_the_outfall() {
    let on_ground = wash(&[("outlet.invert", OUT)]);
    assert_eq!(look(&on_ground, "floor-in-a-pit").word(), "passes");
    let in_pit = wash(&[("outlet.invert", OUT), ("site.ground", "100 ft")]);
    assert_eq!(look(&in_pit, "floor-in-a-pit").word(), "fails");
}

#[test]
fn several_units_need_room_for_all_and_stand_the_way_that_fits() {
    let two = [("unit.count", "2"), ("site.access", "2 ft")];
    let settled = wash(&[two[0], two[1], ("site.max_length", "30 ft"), ("site.max_width", "9 ft")]);
    let fit = &performance(&settled).fit;
    let shown: Vec<_> = fit
        .ways
        .iter()
        .map(|w| [w.row_length, w.row_width, w.length, w.width].map(|v| (v.q.in_unit(&FT) * 1000.0).round() / 1000.0))
        .collect();
    assert_eq!(shown, [[11.0, 10.0, 15.0, 14.0], [24.0, 4.0, 28.0, 8.0]]);
    assert_eq!(fit.way().arrangement, Arrangement::InLine, "10 ft side by side do not fit 9 ft");
    assert_eq!(look(&settled, "does-not-fit").word(), "passes");
    let wide = wash(&[two[0], two[1], ("site.max_width", "14 ft")]);
    assert_eq!(performance(&wide).fit.way().arrangement, Arrangement::SideBySide);
    let neither = wash(&two);
    assert_eq!(look(&neither, "does-not-fit").word(), "fails", "16 x 8 ft hold neither 11 x 10 ft nor 24 x 4 ft");
    // Twice 4 ft wide go into 8 ft; the walkway between them nobody asked for.
    let unsaid = wash(&[("unit.count", "2")]);
    let found = look(&unsaid, "does-not-fit");
    assert_eq!(found.word(), "cannot judge", "{}", found.says());
    assert!(found.asks().iter().any(|ask| ask.key.as_deref() == Some("site.access")), "{:?}", found.asks());
}

#[test]
fn headroom_counts_hopper_drain_walls_pack_and_hook() {
    // 6 + 20 + 68 in of unit, 24 in of pack, 12 in of sling and hook; 8.8333 ft less where it stands in a pit.
    for (with, feet) in [(None, 130.0 / 12.0), (Some(("site.ground", "105 ft")), 130.0 / 12.0 - 8.8333)] {
        let settled = wash(with.as_slice());
        assert!(close(Some(performance(&settled).fit.headroom.q), Some(feet)), "{with:?}");
    }
    let fixed = wash(&[("unit.dimensions.pack_lifts_out", "false")]);
    assert!(close(Some(performance(&fixed).fit.headroom.q), Some(118.0 / 12.0)), "24 in to reach in");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_fits_still_fits_when_the_room_grows(
        long in (8.0..60.0, 1.0..2.0), wide in (3.0..40.0, 1.0..2.0), high in (5.0..20.0, 1.0..2.0),
        access in 0.0..4.0, count in 1_u32..4
    ) {
        let at = |larger: bool| {
            let side = |(x, more): (f64, f64)| format!("{} ft", if larger { x * more } else { x });
            let (long, wide, high) = (side(long), side(wide), side(high));
            let (access, count) = (format!("{access} ft"), count.to_string());
            wash(&[
                ("site.max_length", &long), ("site.max_width", &wide), ("site.headroom", &high),
                ("site.access", &access), ("unit.count", &count),
            ])
        };
        let (small, large) = (at(false), at(true));
        for rule in ["does-not-fit", "headroom-too-low"] {
            let rank = |settled: &Settled| match look(settled, rule).word() {
                "passes" => 2,
                "warns" => 1,
                "fails" => 0,
                other => panic!("{rule} says {other}, and all is known"),
            };
            prop_assert!(rank(&large) >= rank(&small), "{}: {}", rule, look(&large, rule).says());
        }
    }
}

/// The outlet drains to 102.5 ft from a floor at 102.5 - 46 in + 0.2 ft = 98.867 ft; the inlet nozzle then lies at 103.533, the
/// incoming pipe at 103: 6.4 in are missing, wherever the ground lies. With pipe and slope assumed, 20 ft at 1 %, the pipe takes 2.4 in.
#[test]
fn the_fall_that_is_missing_is_that_of_gravity_and_the_pipe_nobody_stated_is_named() {
    for ground in ["95 ft", "105 ft"] {
        let settled = wash(&[("outlet.invert", "102.5 ft"), ("site.ground", ground)]);
        assert!(close(performance(&settled).site.spare_fall.map(|v| v.q), Some(-6.4 / 12.0)), "{ground}");
        // Behind a lift pump it stands on the ground. With the pump behind it its walls end at 98.333 ft + 68 in = 104 ft.
        let pit = look(&settled, "floor-in-a-pit");
        if ground == "95 ft" {
            assert_eq!(pit.word(), "passes");
        } else {
            assert_eq!(pit.word(), "warns");
            assert!(
                pit.says()
                    .contains("lowest point would lie 8.83 ft below the ground and its walls would end 1 ft below it"),
                "{}",
                pit.says()
            );
        }
        assert!(!look(&settled, "not-enough-fall").says().contains("nobody said"));
    }
    let open = wash(&[("outlet.invert", "102.5 ft"), ("outlet.slope", OUT)]);
    let says = look(&open, "not-enough-fall").says();
    assert!(says.contains("2.4 in of fall") && says.contains("its slope nobody said"), "{says}");
}

#[test]
fn frost_bars_no_unit_whose_walls_end_below_the_ground_but_names_what_still_freezes() {
    let buried = wash(&[("outlet.invert", OUT), ("site.ground", "105 ft"), ("site.coldest_air", "10 °F")]);
    assert_eq!(performance(&buried).site.installation.stands.q, Stands::Buried);
    assert_eq!(look(&buried, "frost-outdoors").word(), "warns");
    let standing = wash(&[("site.coldest_air", "10 °F")]);
    assert_eq!(look(&standing, "frost-outdoors").word(), "fails");
}
