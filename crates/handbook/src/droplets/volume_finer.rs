//! Formula: shares of volume from shares of number

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::page::Series;
use crate::sources::DEFINITION;
use core::borrow::Borrow;
use stillrise_units::math::sqrt;

formula! {
    /// A measured distribution by volume, from the same by number of droplets.
    ///
    /// The droplets between two rows count as of the geometric mean of their sizes, those finer than the
    /// finest row as of that size. A few large droplets hold most of the volume: counts that miss them, or
    /// rows that lie far apart, make the result a rough one.
    "volume-finer" "Shares of volume from shares of number"
    fn finer(
        table: Series = "d|F_n" "size, and share of the droplets that is finer" {UM, UM; PERCENT, PERCENT};
    ) -> Series = "F" "share of the volume that is finer" {UM, UM; PERCENT, PERCENT};
    maps [table(d M, f_n ONE) => ONE] { by_volume(&table, d) }
    helpers [by_volume(Series, f64) "F" "sum of number times the cube of size up to the row, over the whole sum"]
    sources [DEFINITION]
    checks [
        "table=[10 um: 0.5; 40 um: 1]" => "[10 um: 0.111111; 40 um: 1]",
            ByHand("halves of 10 and of sqrt(10 x 40) = 20 um: 1 to 8 in volume");
        "table=[20 um: 0; 20.000001 um: 1]" => "[20 um: 0; 20.000001 um: 1]", Limit("all of one size");
    ]
}

fn by_volume(table: impl Borrow<Series>, d: f64) -> f64 {
    let rows = &table.borrow().0;
    let (mut part, mut whole) = (0.0, 0.0);
    let mut before = (rows.first().map_or(0.0, |(size, _)| *size), 0.0);
    for (size, finer) in rows {
        let mean = sqrt(before.0 * size);
        whole += (finer - before.1) * mean * mean * mean;
        if *size <= d {
            part = whole;
        }
        before = (*size, *finer);
    }
    part / whole
}
