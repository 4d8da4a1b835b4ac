//! Units in the ground: a lying cylinder follows its circle, lies where cover and incoming pipe let it, floats and is cured,
//! holds sand ahead and pumps behind. Expected numbers are worked by hand beside each test.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::hand::{close, performance, unit};
use common::{OUT, Sheet, demo};
use stillrise_design::arrangements::Arrangement;
use stillrise_design::performance::installation::Because;
use stillrise_design::stages::Place;
use stillrise_handbook::vessel::shape::Part;
use stillrise_search::Settled;
use stillrise_search::arrangement::Why;
use stillrise_search::because::Because as Taken;
use stillrise_units::catalog::{FT, FT2, GAL, IN, LBF, MIN, PSI};
use stillrise_units::{Length, Typed};

/// D 72 in, shell 160 + 48 in, 2:1 heads 18 in deep, crest at 52 in. Segment at 52 in: 3148.61 in2; a head below it
/// 39642.7 in3. The chord there is 2 sqrt(52 x 20) = 64.498 in; ahead of the plates lie 14 + 36 in of it and one head with
/// pi x 18 x 52 x 20 / 72 = 816.8 in2.
#[test]
fn water_and_surface_follow_the_circle() {
    let settled = Sheet::data("buried").settle(&demo());
    let unit = unit(&settled);
    // Without the pump-out compartment, 48 in of shell and a head.
    close(unit.layout.water_volume.q, (3148.6145 * 160.0 + 39642.71) / 231.0, &GAL, 1e-6);
    close(unit.layout.primary_length.q, 36.0, &IN, 1e-12);
    close(unit.layout.tank_area.q, (64.4981 * 50.0 + 816.81) / 144.0, &FT2, 1e-5);
    let mut standing = unit.compartments.iter().filter(|c| c.place != Place::PumpOut);
    let volumes: f64 = standing.clone().map(|c| c.volume.q.si()).sum();
    let end = standing.next_back().map(|c| c.to).expect("compartments");
    assert!((volumes / unit.layout.water_volume.q.si() - 1.0).abs() < 1e-12);
    // The slope of the volume is the surface: both asked of the shape.
    let step = 1e-6;
    let at = |z: f64| unit.shape.volume(Length::from_si(unit.outlet.crest.q.si() + z)).si();
    let slope = (at(step) - at(-step)) / (2.0 * step);
    assert!((slope / unit.shape.surface(unit.outlet.crest.q).si() - 1.0).abs() < 1e-8);
    let part = Part { from: Length::from_si(0.0), to: end };
    let by_shape = unit.shape.volume_of(part, unit.outlet.crest.q).si();
    assert!((by_shape / unit.layout.water_volume.q.si() - 1.0).abs() < 1e-9, "pages and shape say the same");
}

/// Oil between two levels is the water that fits between them, compartment by compartment.
#[test]
fn oil_held_by_levels_is_oil_held_by_volumes() {
    let settled = Sheet::data("buried").settle(&demo());
    let unit = unit(&settled);
    let part = |z: Length| -> f64 {
        let held = [Place::GravityZone, Place::PlatePack, Place::Mesh, Place::Retention];
        let parts = held.iter().filter_map(|place| unit.compartment(*place));
        parts.map(|c| unit.shape.volume_of(Part { from: c.from, to: c.to }, z).si()).sum()
    };
    for level in performance(&settled).levels.iter().flat_map(|oil| &oil.levels) {
        let between = part(level.surface.q) - part(level.interface.q);
        assert!((between / level.volume.q.si() - 1.0).abs() < 1e-9, "{}: {between}", level.point.word);
    }
}

/// The pipe at 103 ft reaches a floor of 103 - 61/12 = 97.917 ft; two feet of cover under 106 ft let it lie at 98 ft.
#[test]
fn it_lies_as_high_as_cover_and_pipe_let_it() {
    let settled = Sheet::data("buried").settle(&demo());
    let found = performance(&settled).site.installation;
    assert_eq!(found.because, Because::PipeReaches);
    close(found.floor.expect("a floor").q, 97.916_667, &FT, 1e-6);
    close(found.cover.expect("a cover").q, 2.083_333, &FT, 1e-5);
    let deeper = Sheet::data("buried").with("site.cover", "3 ft").settle(&demo());
    let found = performance(&deeper).site.installation;
    assert_eq!(found.because, Because::Covered);
    close(found.floor.expect("a floor").q, 97.0, &FT, 1e-9);
}

/// Between 12 and 40 in lie 48 in of shell, 2323.158 - 446.037 in2, and one head, 28483.77 - 3619.11 in3: 497.69 gal. At
/// half of 90 gpm that is 4 x 497.69 / 90 = 22.12 min. The outfall at 102 ft lies 4.0833 ft over the floor, 3.0833 ft over
/// the stop level.
#[test]
fn effluent_pumps_are_worked_by_their_compartment() {
    let settled = Sheet::data("buried").settle(&demo());
    let runs = performance(&settled).pump_out.as_ref().expect("pumps");
    close(runs.between.q, 497.690, &GAL, 1e-5);
    close(runs.cycle.q, 22.1196, &MIN, 1e-5);
    close(runs.lift.expect("a lift").q, 3.083_333, &FT, 1e-5);
    // The outfall does not place a unit that is pumped out.
    let higher = Sheet::data("buried").with("outlet.invert", "104.00 ft").settle(&demo());
    assert_eq!(
        performance(&higher).site.installation.floor.map(|v| v.q),
        performance(&settled).site.installation.floor.map(|v| v.q)
    );
}

/// Outside measures, the wall 1/4 in: groundwater 25 in over the floor is 25.25 in over the underside, the segment of a circle
/// of 72.5 in there times 244.5 in is 180.975 ft3, 11295 lb at 62.41 lb/ft3. With the groundwater at grade, 106 ft, all of the
/// cylinder lifts, pi/4 x 72.5^2 x 244.5 in3 = 584.12 ft3, and of three risers 3 x 7.069 x 2.083 = 44.18 ft3: 628.30 ft3.
#[test]
fn it_floats_when_empty_and_anchors_cure_it() {
    let at = |level: &str, more: &[(&str, &str)]| {
        let sheet = Sheet::data("buried").with("site.groundwater", level);
        more.iter().fold(sheet, |sheet, (key, value)| sheet.with(key, value)).settle(&demo())
    };
    let low = at("100.00 ft", &[]);
    let uplift = performance(&low).flotation.as_ref().expect("in the ground").uplift.expect("water");
    // Cold water of 50 F weighs 62.41 lb/ft3.
    close(uplift.q, 180.975 * 62.41, &LBF, 1e-3);
    let high = at("106.00 ft", &[]);
    let found = performance(&high).flotation.as_ref().expect("in the ground");
    close(found.uplift.expect("water").q, 628.30 * 62.41, &LBF, 1e-3);
    let held = found.held.as_ref().expect("its weight is known");
    // Soil straight above: 6 ft x (8.083 - 3) ft less half the circle, 14.137 ft2, over 20.333 ft, less three risers of
    // 7.069 ft2 over 2.083 ft, all under water: 57.6 lb/ft3.
    let soil = ((6.0 * (8.083_333 - 3.0) - 14.137_17) * 20.333_33 - 3.0 * 7.068_583 * 2.083_333) * (120.0 - 62.41);
    close(held.soil.expect("soil").q, soil, &LBF, 1e-3);
    let factor = (5400.0 + soil) / (628.30 * 62.41);
    assert!((held.factor.q.si() / factor - 1.0).abs() < 1e-3 && factor < 1.2, "{factor}");
    let needed = 1.2 * 628.30 * 62.41 - 5400.0 - soil;
    close(held.needed.q, needed, &LBF, 1e-2);
    close(held.concrete.q, needed / (150.0 - 62.41), &stillrise_units::catalog::FT3, 1e-2);
    // What was asked for cures it, no less does.
    let ask = stillrise_units::catalog::FT3.from_si(held.concrete.q.si());
    for (anchors, word) in [(ask + 0.5, "passes"), (ask - 0.5, "fails")] {
        let cured = at("106.00 ft", &[("site.anchors", &format!("{anchors} ft3"))]);
        assert_eq!(common::bases::look(&cured, "floats-when-emptied").word(), word);
    }
}

/// Planes that lean by a quarter from the underside, 8.083 ft under grade: 8.083^2 / 8 over both sides of 20.333 ft; by 30
/// degrees from the widest line, 5.083 ft under it: 5.083^2 x tan 30 / 2 along sides and heads, 2 x 26.333 ft. All under water.
#[test]
fn soil_counts_as_the_enquiry_says() {
    let by = |method: &str| {
        let sheet = Sheet::data("buried").with("site.groundwater", "106.00 ft").with("site.soil_counts", method);
        let settled = sheet.settle(&demo());
        performance(&settled).flotation.as_ref().and_then(|f| f.held.clone()).expect("its weight is known")
    };
    let under_water = 120.0 - 62.41;
    let quarter = 8.083_333 * 8.083_333 / 8.0 * 2.0 * 20.333_33 * under_water;
    close(by("wedge quarter").wedge.expect("a wedge").q, quarter, &LBF, 1e-3);
    let thirty = 5.083_333 * 5.083_333 * 0.577_350 / 2.0 * 2.0 * 26.333_33 * under_water;
    close(by("wedge thirty").wedge.expect("a wedge").q, thirty, &LBF, 1e-3);
    let (prism, none) = (by("prism"), by("no soil"));
    assert!(prism.wedge.is_none() && none.soil.is_none());
    let factor = 5400.0 / (628.30 * 62.41);
    assert!((none.factor.q.si() / factor - 1.0).abs() < 1e-3, "{}", none.factor.q.si());
    let [least, straight, more] = [&none, &prism, &by("wedge quarter")].map(|held| held.factor.q.si());
    assert!(least < straight && straight < more);
    // Planes of two beside one another would overlap: they are not counted, and that is told.
    let two = Sheet::data("buried").with("site.groundwater", "106.00 ft").with("unit.count", "2");
    let two = two.with("site.soil_counts", "wedge quarter").settle(&demo());
    let found = performance(&two).flotation.as_ref().expect("in the ground");
    assert!(found.leaves_planes_out() && found.held.as_ref().is_some_and(|held| held.wedge.is_none()));
}

/// 2.083 ft of ground lie over its top: below 2 ft of frost, above 3 ft of it.
#[test]
fn frost_goes_by_the_cover_and_its_depth() {
    let word = |depth: &str| {
        let sheet = Sheet::data("buried").with("site.coldest_air", "-18 °C").with("site.frost_depth", depth);
        common::bases::look(&sheet.settle(&demo()), "frost-outdoors").word()
    };
    assert_eq!([word("2 ft"), word("3 ft")], ["passes", "warns"]);
}

/// A duration goes with the intensity that the same person named; where nobody did, the safe one stands.
#[test]
fn a_duration_goes_with_its_intensity() {
    let text = |from: &str| {
        format!(
            "[enquiry]\ntitle = \"a\"\n[[surface]]\narea = \"900 m2\"\nkind = \"concrete\"\n[rain]\nintensity = [{{ value = \"108 mm/h\", from = \"town\" }}, {{ value = \"65 mm/h\", from = \"planner, an older sheet\" }}]\nduration = [{{ value = \"10 min\", from = \"{from}\" }}, {{ value = \"15 min\", from = \"planner\" }}]\n"
        )
    };
    let minutes = |from: &str| {
        let e = stillrise_design::enquiry::read_enquiry(&text(from), &|_| None).expect("sound");
        e.rain.and_then(|rain| rain.duration.q()).map(|q| (MIN.from_si(q.si()) * 1e6).round() / 1e6)
    };
    assert_eq!(minutes("town"), Some(10.0));
    assert_eq!(minutes("Town, letter of May"), Some(10.0));
    assert_ne!(minutes("somebody"), None);
}

/// Lowest line 106 - 97.917 = 8.083 ft under grade, groundwater there: 8.083 x 62.41 / 144 = 3.503 psi. Short tube of 1/4 in,
/// 72 in across, 208 in between its heads: 0.807 x 29e6 x 0.0625 / (208 x 36) x ((0.25/36)^2 / 0.91^3)^(1/4) = 17.47 psi.
#[test]
fn an_empty_shell_is_held_against_the_water_outside() {
    let settled = Sheet::data("buried").with("site.groundwater", "106.00 ft").settle(&demo());
    let shell = performance(&settled).shell.as_ref().expect("a shell");
    close(shell.outside.q, 3.503, &PSI, 1e-3);
    close(shell.collapse.q, 17.47, &PSI, 1e-3);
    assert!((shell.ratio.q.si() - 17.47 / 3.503).abs() < 1e-2);
}

/// A tank that would need a lift pump, stand in a pit, or may not stand above the ground gives way to one in the ground;
/// the enquiry may pin the tank all the same.
#[test]
fn levels_choose_the_arrangement_and_the_enquiry_may_pin_it() {
    let range = demo();
    let base = Sheet::data("ranged");
    let of = |with: &[(&str, &str)]| {
        let settled = with.iter().fold(base.clone(), |sheet, (key, value)| sheet.with(key, value)).settle(&range);
        (unit(&settled).arrangement, settled.pick.map(|pick| pick.because))
    };
    let with = |more: &[(&'static str, &'static str)]| -> Vec<(&'static str, &'static str)> {
        [("unit", OUT)].iter().chain(more).copied().collect()
    };
    let (tank, because) = of(&with(&[]));
    assert_eq!(tank, Arrangement::PlateTank, "{because:?}");
    let (deep, because) = of(&with(&[("site.buried", "true")]));
    assert_eq!(deep, Arrangement::PlateCylinder);
    let in_ground = |b: &Taken| matches!(b, Taken::Smallest { wanted, .. } if wanted.why == Why::MustLieInGround);
    assert!(because.as_ref().is_some_and(in_ground), "{because:?}");
    let (pinned, because) = of(&with(&[("site.buried", "true"), ("unit.arrangement", "plate tank")]));
    assert_eq!(pinned, Arrangement::PlateTank, "{because:?}");
}

/// 1500 gpm in a place 24 ft long: four of the cylinders that are short enough take 400 gpm, tanks of 264 in will do. However
/// low the pipe, a tank is named with what speaks against it; where somebody asked for one in the ground, none is.
#[test]
fn where_no_cylinder_will_do_a_tank_is_looked_for() {
    let deep = [("unit", OUT), ("site.ground", "106.0 ft"), ("site.max_length", "24 ft"), ("site.max_width", "60 ft")];
    let deep = deep.into_iter().chain([("site.access", "0 ft")]);
    let large = |more: &[(&str, &str)]| {
        let sheet = Sheet::data("wash").with("stream.flow", "1500 gpm").with("stated", OUT).with("spill", OUT);
        deep.clone()
            .chain(more.iter().copied())
            .fold(sheet, |sheet, (key, value)| sheet.with(key, value))
            .settle(&demo())
    };
    let kind = |settled: &Settled| settled.job.design.train.as_ref().map(|train| train.unit.arrangement);
    assert_eq!(kind(&large(&[])), Some(Arrangement::PlateTank));
    assert_eq!(kind(&large(&[("site.buried", "true")])), None);
}
