//! Check tables of drag, crowds and large droplets, read row by row.

use super::{
    circulation_factor, drag_rise, eotvos_number, grace_rise, hindered_exponent, hindered_rise, nonspherical_drag,
    sphere_drag, stokes_rise,
};
use crate::evidence::Table;
use crate::page::Evidence::{self, ByHand, Library};

/// Values worked apart from this code.
pub(super) const OWN: Evidence = ByHand("independent evaluation in Python");
/// Values of the library of drag laws.
pub(super) const FLUIDS: Evidence = Library("fluids 1.3.1, drag.drag_sphere");

const HINDERED: &str = include_str!("../../check/hindered.csv");
const DRAG: &str = include_str!("../../check/drag_coefficient.csv");
const CIRCULATING: &str = include_str!("../../check/hadamard_rybczynski.csv");
const LARGE: &str = include_str!("../../check/drop_grace.csv");

/// Exponents of one law.
pub(super) const fn exponent(fixed: &'static str, column: &'static str) -> Table {
    Table {
        file: "hindered.csv",
        text: HINDERED,
        page: &hindered_exponent::PAGE,
        fixed,
        columns: &[("Re_t", "re", "")],
        expect: (column, ""),
        within: None,
        only: None,
        evidence: OWN,
    }
}

/// What a crowd leaves of a velocity of 1 m/s, by the exponent of one law.
pub(super) const fn crowd(
    columns: &'static [(&'static str, &'static str, &'static str)],
    column: &'static str,
) -> Table {
    Table {
        page: &hindered_rise::PAGE,
        columns,
        expect: (column, "m/s"),
        within: Some((2.6e-6, "the exponents are printed to five places, the shares to six")),
        ..exponent("v=1 m/s", "")
    }
}

/// Drag coefficients of one law.
pub(super) const fn drag(fixed: &'static str, column: &'static str, evidence: Evidence) -> Table {
    Table {
        file: "drag_coefficient.csv",
        text: DRAG,
        page: &sphere_drag::PAGE,
        fixed,
        columns: &[("Re", "re", "")],
        expect: (column, ""),
        within: None,
        only: None,
        evidence,
    }
}

/// The law of `drag-rise` against the standard drag curve.
pub(super) const CLIFT: Table = Table {
    within: Some((0.05, "another fit of the same measurements")),
    only: Some(|row| row.number("Re") <= 1000.0),
    ..drag("law=schiller-naumann", "Cd_clift", FLUIDS)
};

/// Grains that are no spheres.
pub(super) const NONSPHERICAL: Table = Table {
    file: "drag_nonspherical.csv",
    text: include_str!("../../check/drag_nonspherical.csv"),
    page: &nonspherical_drag::PAGE,
    fixed: "",
    columns: &[("Re", "re", ""), ("sphericity", "sphericity", "")],
    expect: ("Cd", ""),
    within: None,
    only: None,
    evidence: OWN,
};

/// How much faster clean droplets would rise.
pub(super) const CIRCULATION: Table = Table {
    file: "hadamard_rybczynski.csv",
    text: CIRCULATING,
    page: &circulation_factor::PAGE,
    fixed: "",
    columns: &[("mu_d_mPas", "mu_o", "mPa s"), ("mu_c_mPas", "mu", "mPa s")],
    expect: ("factor", ""),
    within: None,
    only: None,
    evidence: OWN,
};

/// The rigid droplets beside them.
pub(super) const CIRCULATING_STOKES: Table = Table {
    page: &stokes_rise::PAGE,
    fixed: "rho_w=998.2072 kg/m3",
    columns: &[("d_um", "d", "um"), ("rho_d", "rho_o", "kg/m3"), ("mu_c_mPas", "mu", "mPa s")],
    expect: ("v_stokes_m_s", "m/s"),
    within: Some((5e-6, "the viscosity is printed to six digits")),
    ..CIRCULATION
};

/// Buoyancy over tension of large droplets.
pub(super) const EOTVOS: Table = Table {
    file: "drop_grace.csv",
    text: LARGE,
    page: &eotvos_number::PAGE,
    fixed: "rho_w=998.2072 kg/m3",
    columns: &[("d_um", "d", "um"), ("rho_d", "rho_o", "kg/m3"), ("sigma_mN_m", "sigma", "mN/m")],
    expect: ("Eo", ""),
    within: Some((1e-6, "the density of the water is printed to 0.0001 kg/m3")),
    only: None,
    evidence: OWN,
};

/// Rise of those that deform; the others have words in that column.
pub(super) const GRACE: Table = Table {
    page: &grace_rise::PAGE,
    fixed: "rho_w=998.2072 kg/m3, mu=1.0016 mPa s",
    expect: ("u_grace_m_s", "m/s"),
    within: Some((4e-6, "the viscosity of the water is printed to five digits")),
    only: Some(|row| row.number("u_grace_m_s").is_finite()),
    ..EOTVOS
};

/// Rise of the same droplets as rigid spheres.
pub(super) const RIGID: Table = Table {
    page: &drag_rise::PAGE,
    fixed: "rho_w=998.2072 kg/m3, mu=1.0016 mPa s",
    columns: &[("d_um", "d", "um"), ("rho_d", "rho_o", "kg/m3")],
    expect: ("u_rigid_SN_m_s", "m/s"),
    within: Some((4e-6, "the viscosity of the water is printed to five digits")),
    ..EOTVOS
};
