//! An upright cylinder in the ground: one open space, a bend that leads the water in, a pipe that draws it from under the oil.
//! Expected numbers are worked by hand beside each test.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::hand::{close, performance, unit};
use common::{OUT, Sheet, demo};
use stillrise_design::arrangements::Arrangement;
use stillrise_design::stages::Place;
use stillrise_design::stages::underflow::Pull;
use stillrise_units::catalog::{FT_S, FT2, GAL, IN, LBF, PSI};
use stillrise_units::{Length, Typed};

/// D 96 in: plan 7238.23 in2 = 50.2655 ft2; with 78 in of water 564,582 in3 = 2444.08 gal. It is one compartment, in which
/// the slope of the volume is the surface.
#[test]
fn water_and_surface_are_those_of_one_circle() {
    let settled = Sheet::data("upright").settle(&demo());
    let unit = unit(&settled);
    assert_eq!(unit.compartments.iter().map(|c| c.place).collect::<Vec<_>>(), [Place::GravityZone]);
    close(unit.layout.tank_area.q, 50.265_48, &FT2, 1e-6);
    close(unit.layout.oil_area.q, 50.265_48, &FT2, 1e-6);
    close(unit.layout.water_volume.q, 2444.08, &GAL, 1e-5);
    close(unit.compartments[0].volume.q, 2444.08, &GAL, 1e-5);
    let crest = unit.outlet.crest.q;
    assert!((unit.shape.volume(crest).si() / unit.layout.water_volume.q.si() - 1.0).abs() < 1e-12);
    let at = |z: f64| unit.shape.volume(Length::from_si(crest.si() + z)).si();
    let slope = (at(1e-6) - at(-1e-6)) / 2e-6;
    assert!((slope / unit.layout.tank_area.q.si() - 1.0).abs() < 1e-8);
    for level in performance(&settled).levels.iter().flat_map(|oil| &oil.levels) {
        let between = unit.shape.volume(level.surface.q) - unit.shape.volume(level.interface.q);
        assert!((between.si() / level.volume.q.si() - 1.0).abs() < 1e-9, "{}", level.point.word);
    }
}

/// 40 gpm, 0.0891204 ft3/s, through a bore of 6.065 in, 0.200627 ft2: 0.44421 ft/s. In the dip pipe a mouth of 0.78 and a
/// tee of 60 x 0.01485 = 0.891 take 1.671 x 0.44421^2 / 64.348 ft = 0.06149 in; the inlet's bend takes 30 x 0.01485.
#[test]
fn bend_and_dip_pipe_take_their_head() {
    let settled = Sheet::data("upright").settle(&demo());
    let highest = performance(&settled).highest();
    let loss = |name: &str| highest.steps.iter().find(|step| step.name == name).expect("a step").loss.q;
    close(performance(&settled).velocities.slot.q, 0.444_21, &FT_S, 1e-4);
    close(loss("dip pipe"), 0.061_49, &IN, 2e-3);
    close(loss("inlet bend"), 0.4455 * 0.444_21 * 0.444_21 / 64.348 * 12.0, &IN, 2e-3);
    // The mouth of the bend, 56 in, caps the layer: (78 - 1 - 56 - 6) in of water over the oil's share of its density.
    let oil = &performance(&settled).levels[0];
    let cap = oil.caps.iter().find(|cap| cap.of.word() == "mouth of the inlet bend").expect("a cap");
    let basis = settled.job.design.basis.as_ref().expect("a basis");
    let share = basis.fluids.oils[0].cold.q.si() / basis.fluids.cold.density.q.si();
    close(cap.thickness.q, 15.0 / share, &IN, 1e-9);
}

/// 40 gpm, 2.5236e-3 m3/s, under an oil that leaves g' = 1.53 m/s2: (6.3686e-6 / (6.5025 x 1.53))^0.2 = 0.0577 m, 2.27 in.
/// The interface at the alarm stands far over the mouth. Less than
/// 10.6 in over the mouth is too near for 700 gpm, 7.1 in.
#[test]
fn the_dip_pipe_is_held_against_the_layer_that_it_would_draw() {
    let settled = Sheet::data("upright").settle(&demo());
    let zones = performance(&settled).zones.as_ref().expect("zones");
    let Some(Pull::IntoMouth { over, least }) = zones.pull else { panic!("a dip pipe") };
    close(least.q, 2.27, &IN, 5e-3);
    assert!(over.q.in_unit(&IN) > 40.0);
    assert_eq!(common::bases::look(&settled, "layer-drawn-under").word(), "passes");
    assert_eq!(common::bases::look(&settled, "slot-too-fast").word(), "not applicable");
    let high = Sheet::data("upright")
        .with("unit.dimensions.lip", "68 in")
        .with("unit.dimensions.inlet_invert", "92 in")
        .with("unit.dimensions.inlet_pipe", "12 in")
        .with("unit.dimensions.outlet_pipe", "12 in")
        .with("spill.rate", "700 gpm")
        .settle(&demo());
    let found = common::bases::look(&high, "layer-drawn-under");
    assert_eq!(found.word(), "warns", "{}", found.says());
}

/// Floor at 103 - 83/12 = 96.0833 ft; the ground at 106 ft lies 9.9167 ft over it, 0.9167 ft over the top. By outside
/// measures, 96.5 in across and 108.5 in high, water there lifts 50.7904 x 9.04167 + 4.9087 x 0.9167 = 463.731 ft3, 28941 lb; soil (50.2655 - 4.9087) x 0.9167 ft at 57.59 lb/ft3 is 2394 lb.
#[test]
fn it_is_held_by_its_weight_and_the_soil_on_its_top() {
    let settled =
        Sheet::data("upright").with("site.groundwater", "106.0 ft").with("site.cover", "0.5 ft").settle(&demo());
    let found = performance(&settled).flotation.as_ref().expect("in the ground");
    let uplift = (50.790_4 * 9.041_667 + 4.908_74 * 0.916_667) * 62.41;
    close(found.uplift.expect("water").q, uplift, &LBF, 1e-3);
    let held = found.held.as_ref().expect("its weight is known");
    let soil = (50.265_48 - 4.908_74) * 0.916_667 * (120.0 - 62.41);
    close(held.soil.expect("soil").q, soil, &LBF, 2e-3);
    assert!((held.factor.q.si() / ((32800.0 + soil) / uplift) - 1.0).abs() < 1e-3);
}

/// Its floor 9.9167 ft below the groundwater: 9.9167 x 62.41 / 144 = 4.298 psi. Short tube of 1/4 in, 96 in across, 108 in
/// free: 0.807 x 29e6 x 0.0625 / (108 x 48) x ((0.25/48)^2 / 0.91^3)^(1/4) = 21.86 psi.
#[test]
fn its_shell_is_held_against_the_water_outside() {
    let settled =
        Sheet::data("upright").with("site.groundwater", "106.0 ft").with("site.cover", "0.5 ft").settle(&demo());
    let shell = performance(&settled).shell.as_ref().expect("a shell");
    close(shell.outside.q, 4.298, &PSI, 1e-3);
    close(shell.collapse.q, 21.86, &PSI, 1e-3);
}

/// The enquiry asks for one; the range holds three, the smallest of which has no room for an oil layer at 40 gpm. Sand and
/// pumps have chambers of their own.
#[test]
fn it_is_found_in_the_range_and_takes_no_compartments() {
    let asked = Sheet::data("upright").with("unit.dimensions", OUT).with("unit.arrangement", "upright cylinder");
    let settled = asked.settle(&demo());
    assert_eq!(unit(&settled).arrangement, Arrangement::UprightCylinder);
    assert_eq!(unit(&settled).particulars.model, "Demo U 70");
    let sand = Sheet::data("upright").with("unit.dimensions.sand_trap_length", "30 in").settle(&demo());
    let stops = format!("{:?}", sand.job.design.stops);
    assert!(stops.contains("neither sand nor pump-out compartment"), "{stops}");
}

/// Diameter and height alone describe it; the rest is assumed, and asked for.
#[test]
fn diameter_and_height_describe_it() {
    let rough = "[unit.dimensions]\narrangement = \"upright cylinder\"\ndiameter = \"96 in\"\nheight = \"108 in\"\n";
    let text = std::fs::read_to_string(common::at_data("upright.toml")).expect("the data");
    let base = text.split("[unit.dimensions]").next().expect("a base").to_owned();
    let settled = Sheet::text("rough", &(base.clone() + rough)).settle(&demo());
    let found = unit(&settled);
    // 75 % of 108 in, and 40 % and 70 % of that.
    close(found.outlet.crest.q, 81.0, &IN, 1e-9);
    close(found.underflow.edge().q, 32.4, &IN, 1e-9);
    close(found.inlet_bend.as_ref().expect("a bend").mouth.q, 56.7, &IN, 1e-9);
    let Err(faults) =
        Sheet::text("short", &(base + "[unit.dimensions]\narrangement = \"upright cylinder\"\ndiameter = \"96 in\"\n"))
            .enquiry()
    else {
        panic!("a height is missing")
    };
    assert!(faults.iter().any(|fault| fault.to_string().contains("lacks height")), "{faults:?}");
}
