//! A vault with plates, built into the ground: its water and oil are those of a box, its plates those of a pack, and it stands in
//! the ground as a basin does. Expected numbers are worked by hand beside each test.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::bases::look;
use common::hand::{close, performance, unit};
use common::{OUT, Sheet, demo};
use stillrise_design::arrangements::Arrangement;
use stillrise_design::performance::installation::Stands;
use stillrise_design::stages::Place;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::Typed;
use stillrise_units::catalog::{FT, FT_S, FT2, GAL, GPM_FT2, IN, LB, LBF, ONE};

/// 15 ft x 5 ft under 54 in of water: 337.5 ft3 = 2524.675 gal. Of 180 in the chamber takes 24, the pack 60, oil and clear well
/// 24 each: 48 in of open water are left. Ahead of the pack lie 72 in, 30 ft2; oil is held over 48 + 60 + 24 in, 55 ft2.
#[test]
fn water_and_surfaces_are_those_of_a_box() {
    let settled = Sheet::data("vault").settle(&demo());
    let unit = unit(&settled);
    assert_eq!(unit.arrangement, Arrangement::PlateVault);
    close(unit.layout.water_volume.q, 2524.675, &GAL, 1e-6);
    close(unit.layout.primary_length.q, 48.0, &IN, 1e-9);
    close(unit.layout.tank_area.q, 30.0, &FT2, 1e-9);
    close(unit.layout.oil_area.q, 55.0, &FT2, 1e-9);
    let order = [Place::InletChamber, Place::GravityZone, Place::PlatePack, Place::Retention, Place::ClearWell];
    assert_eq!(unit.compartments.iter().map(|c| c.place).collect::<Vec<_>>(), order);
    assert!(unit.channels.is_none() && unit.access.is_none() && unit.hopper.is_none());
}

/// 30 in x cos 55 = 17.2073 in over a pitch of 0.79 in is 21.78: 21 plates of 5 ft x 5 ft throw 525 ft2. They leave 5 ft x 2.5 ft
/// x 0.75 / 0.79 = 11.8671 ft2. With a fifth of the plates lost 60 gpm load 420 ft2 with 0.142857 gpm/ft2.
#[test]
fn the_plates_are_those_that_fit_into_the_pack() {
    let settled = Sheet::data("vault").with("method.fouling", "20 %").settle(&demo());
    let pack = unit(&settled).pack.as_ref().expect("plates");
    close(pack.follows.plates.q, 21.0, &ONE, 1e-12);
    close(pack.follows.area.q, 525.0, &FT2, 1e-9);
    close(pack.follows.open.q, 11.8671, &FT2, 1e-5);
    let plates = performance(&settled).worst().expect("a worst case").passage.plates().expect("plates");
    close(plates.v_0.q, 0.142_857, &GPM_FT2, 1e-5);
}

/// 60 gpm is 0.133681 ft3/s. Along the vault, 5 ft x 4.5 ft: 0.0059414 ft/s; under the downcomer, 5 ft x 14 in = 5.8333 ft2:
/// 0.0229167 ft/s; in clean gaps, 11.8671 ft2: 0.0112648 ft/s, in four fifths of them 0.0140810 ft/s.
#[test]
fn the_water_runs_as_fast_as_its_sections_let_it() {
    let settled = Sheet::data("vault").with("method.fouling", "20 %").settle(&demo());
    let found = performance(&settled);
    close(found.velocities.along.q, 0.005_941_4, &FT_S, 1e-4);
    close(found.velocities.slot.q, 0.022_916_7, &FT_S, 1e-5);
    let mut seen = [false; 2];
    for removal in &found.removals {
        let end = removal.state.is_end();
        let by_hand = if end { 0.014_081_0 } else { 0.011_264_8 };
        close(removal.passage.plates().expect("plates").gap_velocity.q, by_hand, &FT_S, 1e-4);
        seen[usize::from(end)] = true;
    }
    assert_eq!(seen, [true, true], "clean and fouled");
}

/// Diesel of 840 kg/m3 at 59 °F swells by 186.9696 / 840^2 + 0.4862 / 840 = 8.438e-4 a kelvin (ASTM D1250, fuel oils): 5 K colder
/// it weighs 843.54, water 999.70, a share of 0.84379. 54 in less 1 in of evaporation, 42 in of pack and 2 in over it are 9 in of
/// water, 10.6661 in of oil. At the alarm, 60 % of that, 6.3997 in, the interface stands 5.4 in under the crest, at 48.6 in, and
/// the surface at 54.9997 in. Over 55 ft2 that is 55 x 144 x 6.3997 = 50686 in3, 219.42 gal.
#[test]
fn the_top_of_the_pack_limits_the_oil() {
    let settled = Sheet::data("vault").settle(&demo());
    let oil = &performance(&settled).levels[0];
    assert_eq!(oil.caps[oil.governing].of.word(), "top of the pack");
    close(oil.limit.q, 10.6661, &IN, 1e-4);
    let alarm = oil.level(Mark::Alarm).expect("an alarm");
    close(alarm.interface.q, 48.6, &IN, 1e-9);
    close(alarm.surface.q, 54.9997, &IN, 1e-5);
    close(alarm.volume.q, 219.42, &GAL, 1e-4);
}

/// The pipe at 103 ft reaches a floor of 103 - 64/12 = 97.6667 ft, 7.3333 ft below the ground at 105 ft; walls of 8 ft end
/// 0.6667 ft over it. To lift a module of 2.5 ft with 1 ft of sling takes 4.1667 ft over the ground.
#[test]
fn it_is_built_into_the_ground_and_reached_from_above() {
    let settled = Sheet::data("vault").settle(&demo());
    let found = performance(&settled);
    let installation = &found.site.installation;
    assert_eq!(installation.stands.q, Stands::InPit);
    close(installation.floor.expect("a floor").q, 97.666_667, &FT, 1e-6);
    close(installation.over_ground.expect("a ground").q, -7.333_333, &FT, 1e-6);
    close(found.fit.top.q, 0.666_667, &FT, 1e-5);
    close(found.fit.headroom.q, 4.166_667, &FT, 1e-6);
    assert!(installation.cover.is_none(), "nothing lies over it");
    assert_eq!(look(&settled, "floor-in-a-pit").word(), "not applicable");
    assert_eq!(look(&settled, "pack-cannot-be-lifted").word(), "passes");
    // Where the yard lies over its walls, it runs into it: 106 - 105.6667 ft.
    let deep = Sheet::data("vault").with("site.ground", "106.0 ft").settle(&demo());
    assert_eq!(look(&deep, "floor-in-a-pit").word(), "fails");
}

/// The enquiry asks for one. The smallest has the plates of the base, 420 ft2 at the end of the interval: 60 gpm load them with
/// 0.143 gpm/ft2, 250 gpm with 0.595. Droplets of 60 µm of oil of 844 kg/m3 rise in water of 1.31 mPa s
/// 9.81 x 3.6e-9 x 156 / (18 x 1.31e-3) = 2.34e-4 m/s, 0.344 gpm/ft2. The next has 26 plates of 8 ft x 7 ft, four fifths of
/// which are 1165 ft2: 250 gpm load them with 0.215.
#[test]
fn it_is_found_in_the_range() {
    let taken = |flow: &str| {
        let asked = Sheet::data("vault").with("unit.dimensions", OUT).with("unit.arrangement", "plate vault");
        let settled = asked.with("stream.flow", flow).with("method.fouling", "20 %").settle(&demo());
        assert_eq!(unit(&settled).arrangement, Arrangement::PlateVault);
        unit(&settled).particulars.model.clone()
    };
    assert_eq!([taken("60 gpm"), taken("250 gpm")], ["Demo V 100", "Demo V 250"]);
}

/// Length, width and height alone describe it; the rest is assumed, and asked for. 75 % of 96 in is 72 in of water; the pack is
/// 60 % of that high.
#[test]
fn its_sides_describe_it() {
    let text = std::fs::read_to_string(common::at_data("vault.toml")).expect("the data");
    let base = text.split("[unit.dimensions]").next().expect("a base").to_owned();
    let head = "[unit.dimensions]\narrangement = \"plate vault\"\n";
    let rough = |sides: &str| Sheet::text("rough", &format!("{base}{head}{sides}"));
    let settled = rough("length = \"180 in\"\nwidth = \"60 in\"\nheight = \"96 in\"\n").settle(&demo());
    let found = unit(&settled);
    close(found.outlet.crest.q, 72.0, &IN, 1e-9);
    close(found.pack.as_ref().expect("plates").laid.height.q, 43.2, &IN, 1e-9);
    let Err(faults) = rough("length = \"180 in\"\nwidth = \"60 in\"\n").enquiry() else {
        panic!("a height is missing")
    };
    assert!(faults.iter().any(|fault| fault.to_string().contains("lacks height")), "{faults:?}");
}

/// A vault whose pack was taken out is not worked as if its plates were there.
#[test]
fn without_its_pack_it_is_refused() {
    let text = std::fs::read_to_string(common::at_data("vault.toml")).expect("the data");
    let base = text.split("[unit.dimensions]").next().expect("a base").to_owned();
    let sides = "length = \"180 in\"\nwidth = \"60 in\"\nheight = \"96 in\"\n";
    let bare = format!("{base}[unit.dimensions]\narrangement = \"plate vault\"\npack = \"none\"\n{sides}");
    let settled = Sheet::text("bare", &bare).settle(&demo());
    let stops = format!("{:?}", settled.job.design.stops);
    assert!(stops.contains("to have no pack"), "{stops}");
}

/// The vault's floor lies at 97.667 ft; groundwater at grade, 105 ft, stands 7.333 ft over it and 8 ft over the underside of its
/// floor, 8 in thick. Outside it is 196 in by 76 in: 196 x 76 / 144 = 103.444 ft2, 827.56 ft3, 51,648 lbf at 62.41 lb/ft3. It
/// weighs 54,000 lb: 1.0455, below 1.2. By inside measures it would have passed.
#[test]
fn thick_walls_float_by_their_outside() {
    let settled = Sheet::data("vault").with("site.groundwater", "105 ft").settle(&demo());
    let found = performance(&settled).flotation.as_ref().expect("in the ground");
    close(found.uplift.expect("water").q, 51_648.0, &LBF, 1e-3);
    let weight = unit(&settled).particulars.empty_weight.expect("stated");
    let factor = found.held.as_ref().expect("its weight is known").factor.q.si();
    assert!((factor / (LB.from_si(weight.q.si()) / 51_648.0) - 1.0).abs() < 1e-3, "{factor}");
    assert_eq!(look(&settled, "floats-when-emptied").word(), "fails");
}
