//! Rain and process flows: intensity, runoff, wash water, volumes.

use crate::evidence::Table;

pub mod surfaces;

crate::list_pages! {
    rational_flow, composite_coefficient, kirpich, kinematic_wave, rain_depth, rain_intensity,
    wind_driven_rain, nozzle_flow, hose_flow, daily_volume, rain_volume, quick_storage, modified_rational, constant_outflow_storage, frequency_factor,
    deluge_flow, fire_water,
}

/// Check tables of this area, read row by row.
pub static TABLES: &[Table] = &[];
