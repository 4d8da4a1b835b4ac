//! Ground: what lifts a buried unit and what holds it down, cover and wheels above it, pressure beside it, the
//! electrical areas around it.

use crate::evidence::Table;

crate::list_pages! {
    submerged_cylinder, submerged_box, uplift_force,
    soil_over_cylinder, soil_over_box, soil_wedge, soil_weight, submerged_weight,
    flotation_factor, anchorage_needed, ballast_volume, strap_tension,
    ground_pressure, wheel_pressure,
}

pub mod anchors;
mod circle;
pub mod cover;
pub mod electrical_areas;
pub mod flotation;
pub mod liquid_classes;
pub mod soils;

/// Check tables of this area, read row by row.
pub static TABLES: &[Table] = &[];
