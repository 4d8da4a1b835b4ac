//! rain

use crate::evidence::Table;

crate::list_pages! {}

/// Check tables of this area, read row by row.
pub static TABLES: &[Table] = &[];
