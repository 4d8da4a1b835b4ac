//! Droplets: how their sizes are described, and how they come together.

use crate::evidence::Table;

crate::list_pages! {
    measured_median,
    volume_finer,
    hatch_choate,
}

/// Check tables of this area.
pub static TABLES: &[Table] = &[];
