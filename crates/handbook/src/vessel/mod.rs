//! Vessel: levels and the oil they leave room for, floats, volumes, accumulation, weights, packs.

use crate::evidence::Table;
use crate::page::Evidence::{Library, Published};

crate::list_pages! {
    oil_surface_rise, interface_drop,
    lip_cap, pack_cap, wall_cap, inlet_cap, set_point,
    float_submergence, float_density, float_force_in_oil, float_force_in_water,
    oil_draw_residue, skim_start, oil_held,
    layer_volume, layer_thickness,
    box_volume, frustum_volume, hopper_volume, horizontal_cylinder_volume, cylinder_ellipsoidal_volume,
    cylinder_surface, cylinder_part_volume, cylinder_part_surface, cylinder_chord, torispherical_depth,
    dry_solids, sludge_rate, oil_rate, days_to_fill,
    plate_weight, water_weight, bearing_pressure,
    plate_count, pack_area, pack_open_area, pack_void,
    oil_mass_volume, containment_void, containment_depth, containment_allowance, containment_count, displaced_water, drain_down,
}

pub mod alarms;
pub mod cautions;
pub mod materials;
pub mod shape;
pub mod shapes;
pub mod testing;
pub mod triggers;

const TANKS: &str = include_str!("../../check/tank_partial.csv");
const TOTALS: &str = include_str!("../../check/tank_total.csv");
const FLUIDS: crate::page::Evidence = Library("fluids 1.3.1, geometry.TANK");

/// Check tables of this area, read row by row.
pub static TABLES: &[Table] = &[
    Table {
        file: "tank_partial.csv",
        text: TANKS,
        page: &horizontal_cylinder_volume::PAGE,
        fixed: "d=1.2192 m, length=3.6576 m",
        columns: &[("h_m", "h", "m")],
        expect: ("V_m3", "m3"),
        within: None,
        only: Some(|row| row.text("tank") == "H_flat_D1.2192_L3.6576"),
        evidence: FLUIDS,
    },
    Table {
        file: "tank_partial.csv",
        text: TANKS,
        page: &cylinder_ellipsoidal_volume::PAGE,
        fixed: "d=3.048 m, length=12.192 m, head=0.762 m",
        columns: &[("h_m", "h", "m")],
        expect: ("V_m3", "m3"),
        within: None,
        only: Some(|row| row.text("tank") == "H_ellips2:1_D3.048_L12.192"),
        evidence: FLUIDS,
    },
    Table {
        file: "tank_partial.csv",
        text: TANKS,
        page: &cylinder_ellipsoidal_volume::PAGE,
        fixed: "d=2 m, length=6 m, head=1 m",
        columns: &[("h_m", "h", "m")],
        expect: ("V_m3", "m3"),
        within: None,
        only: Some(|row| row.text("tank") == "H_hemisph_D2_L6"),
        evidence: FLUIDS,
    },
    Table {
        file: "tank_partial.csv",
        text: TANKS,
        page: &cylinder_part_volume::PAGE,
        fixed: "d=2.4384 m, length=9.144 m, form=torispherical, heads=2",
        columns: &[("h_m", "h", "m")],
        expect: ("V_m3", "m3"),
        within: None,
        only: Some(|row| row.text("tank") == "H_torisph_DIN28011_D2.4384_L9.144"),
        evidence: FLUIDS,
    },
    Table {
        file: "tank_partial.csv",
        text: TANKS,
        page: &cylinder_part_surface::PAGE,
        fixed: "d=2.4384 m, length=9.144 m, form=torispherical, heads=2",
        columns: &[("h_m", "h", "m")],
        expect: ("free_surface_total_m2", "m2"),
        within: None,
        only: Some(|row| {
            row.text("tank") == "H_torisph_DIN28011_D2.4384_L9.144" && !row.text("free_surface_total_m2").is_empty()
        }),
        evidence: FLUIDS,
    },
    Table {
        file: "tank_partial.csv",
        text: TANKS,
        page: &cylinder_part_volume::PAGE,
        fixed: "d=2.4384 m, length=9.144 m, form=torispherical-shallow, heads=2",
        columns: &[("h_m", "h", "m")],
        expect: ("V_m3", "m3"),
        within: Some((1e-8, "the library sums the head numerically")),
        only: Some(|row| row.text("tank") == "H_torisph_ASME_D2.4384_L9.144"),
        evidence: FLUIDS,
    },
    Table {
        file: "tank_partial.csv",
        text: TANKS,
        page: &cylinder_part_surface::PAGE,
        fixed: "d=2.4384 m, length=9.144 m, form=torispherical-shallow, heads=2",
        columns: &[("h_m", "h", "m")],
        expect: ("free_surface_total_m2", "m2"),
        within: None,
        only: Some(|row| {
            row.text("tank") == "H_torisph_ASME_D2.4384_L9.144" && !row.text("free_surface_total_m2").is_empty()
        }),
        evidence: FLUIDS,
    },
    Table {
        file: "tank_partial.csv",
        text: TANKS,
        page: &cylinder_part_volume::PAGE,
        fixed: "d=3.048 m, length=12.192 m, form=ellipsoidal, heads=2",
        columns: &[("h_m", "h", "m")],
        expect: ("V_m3", "m3"),
        within: None,
        only: Some(|row| row.text("tank") == "H_ellips2:1_D3.048_L12.192"),
        evidence: FLUIDS,
    },
    Table {
        file: "tank_partial.csv",
        text: TANKS,
        page: &cylinder_part_surface::PAGE,
        fixed: "d=3.048 m, length=12.192 m, form=ellipsoidal, heads=2",
        columns: &[("h_m", "h", "m")],
        expect: ("free_surface_total_m2", "m2"),
        within: None,
        only: Some(|row| {
            row.text("tank") == "H_ellips2:1_D3.048_L12.192" && !row.text("free_surface_total_m2").is_empty()
        }),
        evidence: FLUIDS,
    },
    Table {
        file: "tank_total.csv",
        text: TOTALS,
        page: &horizontal_cylinder_volume::PAGE,
        fixed: "",
        columns: &[("D_m", "d", "m"), ("L_m", "length", "m"), ("h_max_m", "h", "m")],
        expect: ("V_total_m3", "m3"),
        within: None,
        only: Some(|row| row.text("tank").starts_with("H_flat")),
        evidence: FLUIDS,
    },
    Table {
        file: "tank_total.csv",
        text: TOTALS,
        page: &cylinder_ellipsoidal_volume::PAGE,
        fixed: "",
        columns: &[("D_m", "d", "m"), ("L_m", "length", "m"), ("sideA_a_m", "head", "m"), ("h_max_m", "h", "m")],
        expect: ("V_total_m3", "m3"),
        within: None,
        // Torispherical heads and upright vessels have no page.
        only: Some(|row| row.text("tank").starts_with("H_ellips") || row.text("tank").starts_with("H_hemisph")),
        evidence: FLUIDS,
    },
    Table {
        file: "steel_gauge.csv",
        text: include_str!("../../check/steel_gauge.csv"),
        page: &plate_weight::PAGE,
        fixed: "area=1 ft2, rho=501.84 lb/ft3",
        columns: &[("thickness_in", "thickness", "in")],
        expect: ("weight_lb_ft2", "lb"),
        within: Some((1e-3, "thickness is printed to 0.0001 in")),
        only: None,
        evidence: Published(&crate::sources::SHEET_GAUGE, "thickness and weight, at 41.82 lb/ft2 for each inch"),
    },
];
