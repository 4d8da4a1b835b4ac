//! Rain and process flows: intensity, runoff, wash water, volumes.

use crate::evidence::Table;
use crate::page::Evidence::{ByHand, Published};

pub mod curve_numbers;
pub mod surfaces;

crate::list_pages! {
    rational_flow, composite_coefficient, kirpich, kinematic_wave, rain_depth, rain_intensity,
    wind_driven_rain, nozzle_flow, hose_flow, daily_volume, rain_volume, quick_storage, modified_rational, constant_outflow_storage, frequency_factor,
    deluge_flow, fire_water,
    sheet_flow_time, shallow_flow_velocity, travel_time, curve_number_runoff, graphical_peak, linear_reservoir,
    faa_time, nrcs_lag_time, initial_loss, composite_curve_number, volumetric_runoff, water_quality_volume,
    water_quality_curve_number,
}

/// Check tables of this area, read row by row.
pub static TABLES: &[Table] = &[
    Table {
        file: "runoff_cn.csv",
        text: include_str!("../../check/runoff_cn.csv"),
        page: &curve_number_runoff::PAGE,
        fixed: "",
        columns: &[("P_in", "p", "in"), ("CN", "cn", "")],
        expect: ("Q_in", "in"),
        within: None,
        only: None,
        evidence: Published(&crate::sources::TR_55, "table 2-1"),
    },
    Table {
        file: "linear_reservoir.csv",
        text: include_str!("../../check/linear_reservoir.csv"),
        page: &linear_reservoir::PAGE,
        fixed: "dt=5 min, k=10 min",
        columns: &[("I1_cfs", "i_1", "cfs"), ("I2_cfs", "i_2", "cfs"), ("O1_cfs", "o_1", "cfs")],
        expect: ("O2_cfs", "cfs"),
        within: Some((3e-6, "flows are printed to 1e-7 cfs, down to 0.02")),
        only: None,
        evidence: ByHand("independent evaluation in Python"),
    },
];
