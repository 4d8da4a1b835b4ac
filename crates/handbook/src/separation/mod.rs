//! Separation: rise of droplets, settling of grit, removal in tanks and plate packs.

use crate::evidence::{Row, Table};
use crate::page::Evidence::{self, ByHand, Library};

crate::list_pages! {
    stokes_rise,
    stokes_cut,
    drag_rise,
    drag_cut,
    grit_settling,
    sphere_drag,
    nonspherical_drag,
    hindered_exponent,
    hindered_rise,
    circulation_factor,
    eotvos_number,
    grace_rise,
    lognormal_finer,
    lognormal_removal,
    tank_removal,
    hindered_overflow_rate,
    plate_removal,
    laminar_capture,
    remaining_oil,
    api_horizontal_velocity,
    api_cross_section,
    api_channels,
    api_factor,
    api_length,
    api_area,
    plate_area,
    true_plate_area,
    gap_reynolds,
    residence_time,
    residence_volume,
    rise_time,
    hinze_droplet, sheared_median,
    pipe_dissipation,
    mixture,
    oil_load,
    permit_multiplier,
    long_term_mean,
    en858_nominal_size, en858_tap_flow, en858_wash_equipment, en858_impediment_factor,
    en858_density_factor, en858_standard_size, en858_sludge_trap,
    ppg3_size, ppg3_oil_store, ppg3_silt_store, gravity_rise, manual_plate_area, forebay_area, detention_volume,
    kuwabara_factor, happel_factor,
    fibre_interception,
    fibre_gravity,
    fibre_brownian,
    mesh_penetration,
    mesh_removal,
    mesh_permeability,
    entrance_length,
    film_thickness,
    film_shear_ratio,
    capillary_length,
    densimetric_froude,
    density_current_speed,
    layer_froude,
    drawn_height,
    camp_scour,
    screen_flattening,
    jet_dissipation,
    loss_dissipation,
    valve_dissipation,
    shear_rate,
    kolmogorov_length,
    viscous_hinze,
    mesh_curve,
    tanks_in_series,
    dispersed_removal,
    dobbins_camp,
    camp_eddy,
    settling_peclet,
    tanks_quantile,
    dispersion_variance,
    equivalent_tanks,
    morrill_index,
    keep_probability,
    tube_capture,
    capture_area,
    coated_density,
    remaining_solids,
    batch_mixture,
    hydraulic_power,
    impeller_head, impeller_diameter, impeller_volume,
    pump_dissipation,
}

mod feed;
mod tables;

pub mod catch;
pub mod floors;
pub mod pumps;

/// Check tables of this area, read row by row.
pub static TABLES: &[Table] = &[
    Table {
        file: "rise_rate_vs_T.csv",
        text: include_str!("../../check/rise_rate_vs_T.csv"),
        page: &stokes_rise::PAGE,
        fixed: "",
        columns: RISE_COLUMNS,
        expect: ("v_stokes_m_s", "m/s"),
        within: Some((2e-5, "densities are printed to 0.0001 kg/m3")),
        only: None,
        evidence: ByHand("independent evaluation in Python of the same law, water from CoolProp 8.0.0"),
    },
    Table {
        file: "rise_rate_design.csv",
        text: include_str!("../../check/rise_rate_design.csv"),
        page: &stokes_rise::PAGE,
        fixed: "",
        columns: &[
            ("d_um", "d", "um"),
            ("rho_w", "rho_w", "kg/m3"),
            ("rho_o", "rho_o", "kg/m3"),
            ("mu_cP", "mu", "cP"),
        ],
        expect: ("v_ft_min", "ft/min"),
        within: Some((2.5e-3, "evaluated with g = 981 cm/s2 and printed to 0.00001 ft/min, down to 0.00163")),
        only: None,
        evidence: ByHand("independent evaluation of the same law in cgs units"),
    },
    Table {
        file: "rise_rate_vs_T.csv",
        text: include_str!("../../check/rise_rate_vs_T.csv"),
        page: &drag_rise::PAGE,
        fixed: "",
        columns: RISE_COLUMNS,
        expect: ("v_SN_m_s", "m/s"),
        within: Some((2e-5, "densities are printed to 0.0001 kg/m3")),
        only: None,
        evidence: ByHand("independent evaluation in Python of the same law, water from CoolProp 8.0.0"),
    },
    Table {
        file: "terminal_velocity.csv",
        text: include_str!("../../check/terminal_velocity.csv"),
        page: &drag_rise::PAGE,
        fixed: "",
        columns: TERMINAL_COLUMNS,
        expect: ("v_schiller_naumann_m_s", "m/s"),
        within: Some((4e-6, "densities are printed to 0.0001 kg/m3, of a difference down to 18")),
        only: Some(rises),
        evidence: ByHand("the same law solved in Python, scipy brentq"),
    },
    Table {
        file: "terminal_velocity.csv",
        text: include_str!("../../check/terminal_velocity.csv"),
        page: &drag_rise::PAGE,
        fixed: "",
        columns: TERMINAL_COLUMNS,
        expect: ("v_clift_m_s", "m/s"),
        within: Some((0.04, "another fit of the same drag curve of spheres")),
        only: Some(rises),
        evidence: Library("fluids 1.3.1, drag.v_terminal by Clift, Grace and Weber"),
    },
    remaining(ByHand("closed form and quadrature in Python, agreeing to 1e-5"), None, |row| {
        row.text("reference") == "closed"
    }),
    remaining(
        Library("scipy 1.17.1, integrate.quad over the same models"),
        Some((2e-6, "panels of eight points are good to 2e-7")),
        |row| row.text("reference") == "quad",
    ),
    Table {
        file: "remaining_oil_stages.csv",
        text: include_str!("../../check/remaining_oil_stages.csv"),
        page: &remaining_oil::PAGE,
        fixed: STAGES,
        columns: &[],
        expect: ("remaining", ""),
        within: Some((2e-6, "panels of eight points are good to 2e-7 of the feed")),
        only: None,
        evidence: Library("scipy 1.17.1, integrate.quad over the same models"),
    },
    Table {
        file: "dobbins_camp.csv",
        text: include_str!("../../check/dobbins_camp.csv"),
        page: &dobbins_camp::PAGE,
        fixed: "v_0=1 mm/s",
        columns: &[("p", "p", ""), ("x_mm_s", "v", "mm/s")],
        expect: ("caught", ""),
        within: Some((3e-4, "the layers' own error")),
        only: None,
        evidence: ByHand("independent evaluation in Python, 400 layers"),
    },
    grain("shape=sphere", "w_18_0.4_m_s"),
    grain("shape=natural", "w_18_1.0_m_s"),
    grain("shape=nominal", "w_20_1.1_m_s"),
    grain("shape=angular", "w_24_1.2_m_s"),
    nominal("shape=sphere, rho_s=2650 kg/m3, rho_w=1000 kg/m3", "w_18_0.4_m_s"),
    nominal("shape=natural, rho_s=2650 kg/m3, rho_w=1000 kg/m3", "w_18_1.0_m_s"),
    nominal("shape=nominal, rho_s=2650 kg/m3, rho_w=1000 kg/m3", "w_20_1.1_m_s"),
    nominal("shape=angular, rho_s=2650 kg/m3, rho_w=1000 kg/m3", "w_24_1.2_m_s"),
    tables::exponent("law=richardson-zaki", "n_RZ"),
    tables::exponent("law=rowe", "n_Rowe"),
    tables::exponent("law=garside-al-dibouni", "n_GA"),
    tables::crowd(&[("phi", "phi", ""), ("n_RZ", "n", "")], "u_over_ut_RZ"),
    tables::crowd(&[("phi", "phi", ""), ("n_Rowe", "n", "")], "u_over_ut_Rowe"),
    tables::crowd(&[("phi", "phi", ""), ("n_GA", "n", "")], "u_over_ut_GA"),
    tables::drag("law=stokes", "Cd_stokes", tables::OWN),
    tables::drag("law=schiller-naumann", "Cd_schiller_naumann", tables::OWN),
    tables::drag("law=abraham", "Cd_abraham", tables::OWN),
    tables::drag("law=haider-levenspiel", "Cd_haider_lev", tables::FLUIDS),
    tables::drag("law=cheng", "Cd_cheng", tables::FLUIDS),
    tables::drag("law=clift-gauvin", "Cd_clift_gauvin", tables::FLUIDS),
    tables::CLIFT,
    tables::NONSPHERICAL,
    tables::CIRCULATION,
    tables::CIRCULATING_STOKES,
    tables::EOTVOS,
    tables::GRACE,
    tables::RIGID,
    finer("sg=1.6487212707001282", |row| row.text("s_ln") == "0.500000"),
    finer("sg=2.0137527074704766", |row| row.text("s_ln") == "0.700000"),
    finer("sg=2", |row| row.text("s_ln") == "0.693147"),
    finer("sg=2.718281828459045", |row| row.text("s_ln") == "1.000000"),
];

const RISE_COLUMNS: &[(&str, &str, &str)] =
    &[("d_um", "d", "um"), ("rho_w", "rho_w", "kg/m3"), ("rho_o", "rho_o", "kg/m3"), ("mu_w_mPas", "mu", "mPa s")];

const TERMINAL_COLUMNS: &[(&str, &str, &str)] = &[
    ("d_um", "d", "um"),
    ("rho_w_kg_m3", "rho_w", "kg/m3"),
    ("rho_p_kg_m3", "rho_o", "kg/m3"),
    ("mu_w_mPas", "mu", "mPa s"),
];

/// The table gives speeds; the page gives sinking droplets a sign.
fn rises(row: &Row<'_>) -> bool {
    row.number("rho_p_kg_m3") < row.number("rho_w_kg_m3")
}

const FERGUSON_CHURCH: &str = include_str!("../../check/ferguson_church.csv");

/// Settling of grains in water of 10 and 20 °C.
const fn grain(fixed: &'static str, column: &'static str) -> Table {
    Table {
        file: "ferguson_church.csv",
        text: FERGUSON_CHURCH,
        page: &grit_settling::PAGE,
        fixed,
        columns: &[
            ("d_um", "d", "um"),
            ("rho_p", "rho_s", "kg/m3"),
            ("rho_w", "rho_w", "kg/m3"),
            ("nu_mm2_s", "nu", "mm2/s"),
        ],
        expect: (column, "m/s"),
        within: Some((2e-6, "inputs are printed to seven digits")),
        only: Some(|row| !row.text("rho_p").is_empty()),
        evidence: ByHand("independent evaluation in Python of the same formula"),
    }
}

/// The rows with a submerged density of 1.65 and g of 9.81.
const fn nominal(fixed: &'static str, column: &'static str) -> Table {
    Table {
        columns: &[("d_um", "d", "um"), ("nu_mm2_s", "nu", "mm2/s")],
        within: Some((4e-4, "evaluated with g = 9.81 m/s2")),
        only: Some(|row| row.text("rho_p").is_empty()),
        ..grain(fixed, column)
    }
}

/// The log-normal distribution; the table gives the logarithm of the spread.
const fn finer(fixed: &'static str, only: fn(&Row<'_>) -> bool) -> Table {
    Table {
        file: "psd_lognormal.csv",
        text: include_str!("../../check/psd_lognormal.csv"),
        page: &lognormal_finer::PAGE,
        fixed,
        columns: &[("d_um", "d", "um"), ("dv50_um", "d50", "um")],
        expect: ("cdf_scipy", ""),
        within: None,
        only: Some(only),
        evidence: Library("scipy 1.17.1, stats.lognorm.cdf"),
    }
}

/// A feed of any law through tank, pack and mesh; each name in braces is a column.
const STAGES: &str = "droplets=(law={droplets}, d50={d50_um} um, shape={shape}, largest={largest_um} um, table=[]), \
    from={from_um} um, to={to_um} um, \
    liquids=(rho_w={rho_w} kg/m3, rho_o={rho_o} kg/m3, mu={mu_cP} cP, t={t_C} °C, law={law}), \
    stages=[tank(v_0={v_tank_mm_s} mm/s, model={tank}, index={index}); \
    plates(v_0={v_pack_mm_s} mm/s, spread={spread_pct} %, regime={regime}); \
    mesh(solidity={solidity_pct} %, fibre={fibre_um} um, length={depth_mm} mm, u={face_mm_s} mm/s, \
    sticking={sticking_pct} %, saturation={saturation_pct} %)]";

/// A log-normal feed without largest droplet, all of it counted, through tank and pack.
const PLAIN: &str = "droplets=(law=log-normal, d50={d50_um} um, shape={sg}, largest=1e9 um, table=[]), \
    from=0 um, to=1e9 um, liquids=(rho_w={rho_w} kg/m3, rho_o={rho_o} kg/m3, mu={mu_cP} cP, t=20 °C, law={law}), \
    stages=[tank(v_0={v_tank_mm_s} mm/s, model={tank}, index=0); \
    plates(v_0={v_pack_mm_s} mm/s, spread={spread_pct} %, regime={regime})]";

/// Oil left by one stage against the closed form, by two against a quadrature.
const fn remaining(evidence: Evidence, within: Option<(f64, &'static str)>, only: fn(&Row<'_>) -> bool) -> Table {
    Table {
        file: "remaining_oil.csv",
        text: include_str!("../../check/remaining_oil.csv"),
        page: &remaining_oil::PAGE,
        fixed: PLAIN,
        columns: &[],
        expect: ("remaining", ""),
        within,
        only: Some(only),
        evidence,
    }
}
