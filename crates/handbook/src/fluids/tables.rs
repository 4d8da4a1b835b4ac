//! Check tables of this area, read row by row. Long because each table states what it is.

use super::*;
use crate::evidence::{Row, Table};
use crate::page::Evidence::{ByHand, Library};

const WATER: &str = include_str!("../../check/water_fresh.csv");
const SEAWATER: &str = include_str!("../../check/seawater.csv");
const EXPANSION: &str = include_str!("../../check/vcf_si_1980.csv");

/// The rows of one group in the table of thermal expansion.
const fn expansion(fixed: &'static str, only: fn(&Row<'_>) -> bool) -> Table {
    Table {
        file: "vcf_si_1980.csv",
        text: EXPANSION,
        page: &oil_density::PAGE,
        fixed,
        columns: &[("rho15_kg_m3", "rho_15", "kg/m3"), ("T_C", "t", "°C")],
        expect: ("rho_T_kg_m3", "kg/m3"),
        within: None,
        only: Some(only),
        evidence: ByHand("independent evaluation in Python of the closed form"),
    }
}

const BLENDS: &str = include_str!("../../check/viscosity_blending.csv");
const CORRECTION: &str = include_str!("../../check/ctl_us_2004.csv");

/// The rows of one group in the table of corrections from 60 °F, by the closed form.
const fn closed(fixed: &'static str, only: fn(&Row<'_>) -> bool) -> Table {
    Table {
        file: "ctl_us_2004.csv",
        text: CORRECTION,
        page: &volume_correction_60f::PAGE,
        fixed,
        columns: &[("rho60_kg_m3", "rho_60", "kg/m3"), ("T_F", "t", "°F")],
        expect: ("CTL_1980_form", ""),
        within: Some((2e-6, "the table takes the expansion at the density that the 2004 procedure shifts to")),
        only: Some(only),
        evidence: ByHand("independent evaluation in Python of the closed form"),
    }
}

/// The same rows by the procedure of 2004.
const fn procedure(fixed: &'static str, only: fn(&Row<'_>) -> bool) -> Table {
    Table {
        expect: ("CTL_2004", ""),
        within: Some((1.7e-5, "the closed form leaves out the shift of the temperature scale")),
        evidence: ByHand("independent evaluation in Python of the 2004 procedure"),
        ..closed(fixed, only)
    }
}

/// The table of blends, by one rule.
const fn blend(fixed: &'static str, column: &'static str) -> Table {
    Table {
        file: "viscosity_blending.csv",
        text: BLENDS,
        page: &viscosity_blend::PAGE,
        fixed,
        columns: &[("vA_mm2_s", "v_1", "mm2/s"), ("vB_mm2_s", "v_2", "mm2/s"), ("fraction_B", "share", "")],
        expect: (column, "mm2/s"),
        within: None,
        only: None,
        evidence: ByHand("independent evaluation in Python"),
    }
}

/// The blending numbers of the table of blends.
const fn blending_number(oil: &'static [(&'static str, &'static str, &'static str)], column: &'static str) -> Table {
    Table { page: &viscosity_blending_number::PAGE, columns: oil, expect: (column, ""), ..blend("", "") }
}

/// The rows at one temperature in the table of saline water; `fixed` is fresh water there.
const fn saline(fixed: &'static str, only: fn(&Row<'_>) -> bool) -> Table {
    Table {
        file: "seawater.csv",
        text: SEAWATER,
        page: &saline_viscosity::PAGE,
        fixed,
        columns: &[("S_A_g_kg", "salinity", "g/kg"), ("T_C", "t", "°C")],
        expect: ("mu_sharqawy_mPas", "mPa s"),
        within: Some((2e-5, "both viscosities are printed to five places")),
        only: Some(only),
        evidence: ByHand("independent evaluation in Python of equation 22"),
    }
}

/// Rows of the table of viscosity against temperature.
const fn walther(within: Option<(f64, &'static str)>, only: fn(&Row<'_>) -> bool) -> Table {
    Table {
        file: "viscosity_d341.csv",
        text: include_str!("../../check/viscosity_d341.csv"),
        page: &oil_viscosity::PAGE,
        fixed: "",
        columns: &[
            ("v1_mm2_s", "v_1", "mm2/s"),
            ("t1_C", "t_1", "°C"),
            ("v2_mm2_s", "v_2", "mm2/s"),
            ("t2_C", "t_2", "°C"),
            ("T_C", "t", "°C"),
        ],
        expect: ("v_full_mm2_s", "mm2/s"),
        within,
        only: Some(only),
        evidence: ByHand("independent evaluation in Python of the full form"),
    }
}

/// The rows of the table of Saybolt seconds, at one temperature of the test.
const fn seconds(fixed: &'static str, column: &'static str) -> Table {
    Table {
        file: "saybolt.csv",
        text: include_str!("../../check/saybolt.csv"),
        page: &saybolt::PAGE,
        fixed,
        columns: &[("v_mm2_s", "v", "mm2/s")],
        expect: (column, ""),
        within: None,
        only: None,
        evidence: ByHand("independent evaluation in Python"),
    }
}

/// Check tables of this area, read row by row.
pub(super) const TABLES: &[Table] = &[
    Table {
        file: "water_fresh.csv",
        text: WATER,
        page: &water_density::PAGE,
        fixed: "",
        columns: &[("T_C", "t", "°C")],
        expect: ("rho_coolprop_kg_m3", "kg/m3"),
        within: Some((1.3e-6, "two formulations, 0.0012 kg/m3 apart at most to 40 °C")),
        only: Some(|row| row.number("T_C") <= 40.0),
        evidence: Library("CoolProp 8.0.0, IAPWS-95 at 101325 Pa"),
    },
    Table {
        file: "water_fresh.csv",
        text: WATER,
        page: &water_density::PAGE,
        fixed: "",
        columns: &[("T_C", "t", "°C")],
        expect: ("rho_iapws95_kg_m3", "kg/m3"),
        within: Some((2e-5, "beyond the stated 40 °C: 0.02 kg/m3 at 60 °C")),
        only: Some(|row| row.number("T_C") > 40.0),
        evidence: Library("iapws 1.5.5, IAPWS-95 at 101325 Pa"),
    },
    Table {
        file: "water_fresh.csv",
        text: WATER,
        page: &water_density::PAGE,
        fixed: "",
        columns: &[("T_C", "t", "°C")],
        expect: ("rho_tanaka_kg_m3", "kg/m3"),
        within: None,
        // 60 °F is printed as 15.56 °C there; the page has it exactly.
        only: Some(|row| row.number("T_C") != 15.56),
        evidence: ByHand("the same equation coded apart in Python, coefficients from memory"),
    },
    Table {
        file: "water_fresh.csv",
        text: WATER,
        page: &water_viscosity::PAGE,
        fixed: "",
        columns: &[("T_C", "t", "°C")],
        expect: ("mu_coolprop_mPas", "mPa s"),
        within: Some((4e-5, "the short fit and the full formulation differ by up to 3e-5 mPa s")),
        only: Some(|row| row.number("T_C") != 15.56),
        evidence: Library("CoolProp 8.0.0, IAPWS R12-08 at 101325 Pa"),
    },
    Table {
        file: "water_fresh.csv",
        text: WATER,
        page: &water_viscosity::PAGE,
        fixed: "",
        columns: &[("T_C", "t", "°C")],
        expect: ("mu_sr6_mPas", "mPa s"),
        within: None,
        only: Some(|row| row.number("T_C") != 15.56),
        evidence: ByHand("the same equation coded apart in Python, coefficients from memory"),
    },
    Table {
        file: "water_fresh.csv",
        text: WATER,
        page: &kinematic_viscosity::PAGE,
        fixed: "",
        columns: &[("mu_coolprop_mPas", "mu", "mPa s"), ("rho_coolprop_kg_m3", "rho", "kg/m3")],
        expect: ("nu_mm2_s", "mm2/s"),
        within: Some((1.6e-5, "the viscosities are printed to five places")),
        only: None,
        evidence: Library("CoolProp 8.0.0, kinematic viscosity at 101325 Pa"),
    },
    Table {
        file: "seawater.csv",
        text: SEAWATER,
        page: &saline_density::PAGE,
        fixed: "",
        columns: &[("S_A_g_kg", "salinity", "g/kg"), ("T_C", "t", "°C")],
        expect: ("rho_gsw_kg_m3", "kg/m3"),
        within: Some((1e-7, "printed to 0.0001 kg/m3, and the salinity of one row is rounded")),
        only: None,
        evidence: Library("gsw 3.6.23 for Python, the C code of TEOS-10, polynomial"),
    },
    Table {
        file: "seawater.csv",
        text: SEAWATER,
        page: &saline_density::PAGE,
        fixed: "",
        columns: &[("S_A_g_kg", "salinity", "g/kg"), ("T_C", "t", "°C")],
        expect: ("rho_gsw_exact_kg_m3", "kg/m3"),
        within: Some((4e-6, "the polynomial against the Gibbs function it was fitted to")),
        only: None,
        evidence: Library("gsw 3.6.23 for Python, rho_t_exact, Gibbs function"),
    },
    saline("mu_w=1.79144 mPa s", |row| row.number("T_C") == 0.0),
    saline("mu_w=1.30601 mPa s", |row| row.number("T_C") == 10.0),
    saline("mu_w=1.13774 mPa s", |row| row.number("T_C") == 15.0),
    saline("mu_w=0.89015 mPa s", |row| row.number("T_C") == 25.0),
    saline("mu_w=0.79732 mPa s", |row| row.number("T_C") == 30.0),
    saline("mu_w=0.65282 mPa s", |row| row.number("T_C") == 40.0),
    closed("group=crude", |row| row.text("group") == "crude_A"),
    procedure("group=crude", |row| row.text("group") == "crude_A"),
    closed("group=fuel-oil", |row| row.text("group") == "fuel_oil_B"),
    procedure("group=fuel-oil", |row| row.text("group") == "fuel_oil_B"),
    closed("group=jet", |row| row.text("group") == "jet_B"),
    procedure("group=jet", |row| row.text("group") == "jet_B"),
    closed("group=transition", |row| row.text("group") == "transition_B"),
    procedure("group=transition", |row| row.text("group") == "transition_B"),
    closed("group=gasoline", |row| row.text("group") == "gasoline_B"),
    procedure("group=gasoline", |row| row.text("group") == "gasoline_B"),
    closed("group=lubricating", |row| row.text("group") == "lube_D"),
    procedure("group=lubricating", |row| row.text("group") == "lube_D"),
    blend("rule=refutas", "v_refutas"),
    blend("rule=walther", "v_d341_transform"),
    blend("rule=arrhenius", "v_arrhenius"),
    blend("rule=cube-root", "v_cube_root"),
    blending_number(&[("vA_mm2_s", "v", "mm2/s")], "VBN_A"),
    blending_number(&[("vB_mm2_s", "v", "mm2/s")], "VBN_B"),
    expansion("group=crude", |row| row.text("group") == "crude_A"),
    expansion("group=fuel-oil", |row| row.text("group") == "fuel_oil_B"),
    expansion("group=jet", |row| row.text("group") == "jet_B"),
    expansion("group=transition", |row| row.text("group") == "transition_B"),
    expansion("group=gasoline", |row| row.text("group") == "gasoline_B"),
    expansion("group=lubricating", |row| row.text("group") == "lube_D"),
    Table {
        file: "api_gravity.csv",
        text: include_str!("../../check/api_gravity.csv"),
        page: &api_gravity::PAGE,
        fixed: "",
        columns: &[("API", "api", "")],
        expect: ("rho_60F_kg_m3", "kg/m3"),
        within: None,
        only: None,
        evidence: ByHand("independent evaluation in Python"),
    },
    Table {
        file: "api_gravity.csv",
        text: include_str!("../../check/api_gravity.csv"),
        page: &oil_density_60f::PAGE,
        fixed: "",
        columns: &[("SG_60_60", "sg_60", "")],
        expect: ("lb_per_ft3", "lb/ft3"),
        within: None,
        only: None,
        evidence: ByHand("independent evaluation in Python, factor of pound per cubic foot by Pint 0.25.3"),
    },
    walther(None, |row| row.number("v1_mm2_s") != 163.8116),
    walther(Some((3e-6, "its first point is printed to four places")), |row| row.number("v1_mm2_s") == 163.8116),
    seconds("t=100 °F", "SUS_100F"),
    seconds("t=210 °F", "SUS_210F"),
    seconds("t=104 °F", "SUS_104F"),
    Table {
        file: "ppm_mg_L.csv",
        text: include_str!("../../check/ppm_mg_L.csv"),
        page: &volume_concentration::PAGE,
        fixed: "",
        columns: &[("c_mg_L", "c", "mg/L"), ("rho_oil", "rho_o", "kg/m3")],
        expect: ("ppm_volume_uL_L", "µL/L"),
        within: None,
        only: None,
        evidence: ByHand("independent arithmetic in Python"),
    },
];
