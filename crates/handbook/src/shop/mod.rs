//! Shop: plates and shells under water and ground, supports and lifting, weights, heat, vents, protection.

use crate::evidence::Table;

crate::list_pages! {
    hoop_stress,
}

/// Check tables of this area, read row by row.
pub static TABLES: &[Table] = &[];
