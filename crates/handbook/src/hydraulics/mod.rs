//! Hydraulics: pipes, fittings, weirs, slots, losses of the internals.

use crate::evidence::Table;
use crate::page::Evidence::Library;

crate::list_pages! {
    colebrook,
}

/// Check tables of this area, read row by row.
pub static TABLES: &[Table] = &[Table {
    file: "friction_factor.csv",
    text: include_str!("../../check/friction_factor.csv"),
    page: &colebrook::PAGE,
    fixed: "",
    columns: &[("Re", "re", ""), ("eps_over_D", "rough", "")],
    expect: ("f_colebrook_or_64/Re", ""),
    within: None,
    only: Some(|row| row.number("Re") >= 4000.0),
    evidence: Library("fluids 1.3.1, friction.Colebrook"),
}];
