//! Separation: rise of droplets, settling of grit, removal in tanks and plate packs.

use crate::evidence::Table;

crate::list_pages! {
    stokes_rise,
}

/// Check tables of this area, read row by row.
pub static TABLES: &[Table] = &[Table {
    file: "rise_rate_vs_T.csv",
    text: include_str!("../../check/rise_rate_vs_T.csv"),
    page: &stokes_rise::PAGE,
    fixed: "",
    columns: &[("d_um", "d", "um"), ("rho_w", "rho_w", "kg/m3"), ("rho_o", "rho_o", "kg/m3"), ("mu_w_mPas", "mu", "mPa s")],
    expect: ("v_stokes_m_s", "m/s"),
    within: Some((2e-5, "densities are printed to 0.0001 kg/m3")),
    only: None,
    evidence: crate::page::Evidence::ByHand("independent evaluation in Python of the same law, water from CoolProp 8.0.0"),
}];
