//! Droplets: how their sizes are described, and how they come together.

use crate::evidence::Table;
use crate::page::Evidence::Library;

crate::list_pages! {
    measured_median,
    volume_finer,
    hatch_choate,
    rosin_rammler_finer,
    rosin_rammler_removal,
    upper_limit_finer,
    rosin_rammler_median,
}

/// Check tables of this area.
pub static TABLES: &[Table] = &[Table {
    file: "psd_rosin_rammler.csv",
    text: include_str!("../../check/psd_rosin_rammler.csv"),
    page: &rosin_rammler_finer::PAGE,
    fixed: "",
    columns: &[("d_um", "d", "um"), ("dm_um", "delta", "um"), ("n", "n", "")],
    expect: ("cdf_scipy", ""),
    within: None,
    only: None,
    evidence: Library("scipy 1.17.1, stats.weibull_min.cdf"),
}];
