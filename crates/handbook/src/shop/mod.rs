//! Shop: plates and shells under water and ground, supports and lifting, weights, heat, vents, protection.

use crate::evidence::Table;
use crate::page::Evidence::ByHand;

crate::list_pages! {
    wall_stress, wall_deflection, floor_panel_stress, stiffener_spacing, stiffener_depth, rim_force, rim_depth,
    hoop_stress, cylinder_collapse, crown_collapse, flat_head_stress,
    box_shell_area, head_area, centre_of_gravity, support_reaction, sling_tension,
    saddle_span_stress, saddle_share, saddle_seat_stress,
    wall_heat_loss, warm_up_power, cooling_time, vent_diameter,
    protection_current, anode_mass, anode_current,
}

pub mod insulation;
pub mod panel;
pub mod strengths;
pub mod tank_thickness;
pub mod vents;

const PANELS: &str = include_str!("../../check/wall_panel.csv");
const RITZ: crate::page::Evidence =
    ByHand("Ritz's method with 18 x 18 polynomials, numpy 2.4.6, apart from the finite elements");

/// Check tables of this area, read row by row.
pub static TABLES: &[Table] = &[
    Table {
        file: "wall_panel.csv",
        text: PANELS,
        page: &wall_stress::PAGE,
        fixed: "height=1 m, t=100 mm, rho=1000 kg/m3",
        columns: &[("edges", "edges", ""), ("W_m", "width", "m")],
        expect: ("stress_kPa", "kPa"),
        within: Some((0.005, "the rows are printed to three digits")),
        only: Some(|row| row.text("place") == "row"),
        evidence: RITZ,
    },
    Table {
        file: "wall_panel.csv",
        text: PANELS,
        page: &wall_stress::PAGE,
        fixed: "height=1 m, t=100 mm, rho=1000 kg/m3",
        columns: &[("edges", "edges", ""), ("W_m", "width", "m")],
        expect: ("stress_kPa", "kPa"),
        within: Some((0.05, "a straight line between rows of the table")),
        only: Some(|row| row.text("place") == "between"),
        evidence: RITZ,
    },
    Table {
        file: "wall_panel.csv",
        text: PANELS,
        page: &wall_deflection::PAGE,
        fixed: "height=1 m, t=100 mm, rho=1000 kg/m3, e=9806.65 kPa",
        columns: &[("edges", "edges", ""), ("W_m", "width", "m")],
        expect: ("deflection_mm", "mm"),
        within: Some((0.012, "the rows are printed to two or three digits")),
        only: Some(|row| row.text("place") == "row"),
        evidence: RITZ,
    },
    Table {
        file: "wall_panel.csv",
        text: PANELS,
        page: &wall_deflection::PAGE,
        fixed: "height=1 m, t=100 mm, rho=1000 kg/m3, e=9806.65 kPa",
        columns: &[("edges", "edges", ""), ("W_m", "width", "m")],
        expect: ("deflection_mm", "mm"),
        within: Some((0.16, "a straight line between rows of the table")),
        only: Some(|row| row.text("place") == "between"),
        evidence: RITZ,
    },
];
