//! Droplets: how their sizes are described, and how they come together.

use crate::evidence::Table;

crate::list_pages! {
    hatch_choate,
    rosin_rammler_finer,
    upper_limit_finer,
    measured_median,
    volume_finer,
    shear_collision_time,
    smoluchowski_number,
    smoluchowski_density,
    smoluchowski_sum,
    smoluchowski_equal,
}

/// Check tables of this area.
pub static TABLES: &[Table] = &[];
