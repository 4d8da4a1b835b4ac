//! The tables of published data, area by area; each row is read off the data itself.

mod arrivals;
mod ground;
mod hydraulics;
mod oils;
mod shop;
mod upkeep;
mod vessel;

use super::Table;

/// All tables, in reading order.
#[must_use]
pub fn tables() -> Vec<Table> {
    [
        oils::tables(),
        arrivals::tables(),
        hydraulics::tables(),
        vessel::tables(),
        upkeep::tables(),
        ground::tables(),
        shop::tables(),
    ]
    .into_iter()
    .flatten()
    .collect()
}
