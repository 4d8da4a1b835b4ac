//! Formula: flow out of a store at its storage

use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::page::Series;
use crate::sources::HDS_2_ROUTING;
use stillrise_units::{Flow, Volume};

/// Outflow in m3/s at a storage in m3, on the straight line between two rows; not a number outside them, nor
/// for a curve whose storages do not rise or whose outflows fall.
pub(super) fn outflow(curve: Series, s: f64) -> f64 {
    let rows = &curve.0;
    if !rows.windows(2).all(|w| w[1].0 > w[0].0 && w[1].1 >= w[0].1) {
        return f64::NAN;
    }
    for pair in rows.windows(2) {
        if let [low, high] = pair
            && s >= low.0
            && s <= high.0
        {
            return low.1 + (s - low.0) / (high.0 - low.0) * (high.1 - low.1);
        }
    }
    f64::NAN
}

formula! {
    /// Flow that leaves a store at a storage, between the rows of its curve.
    ///
    /// The curve joins what the outlet passes at a level with what the store holds at that level. Straight
    /// lines between rows: give rows close together where the outlet starts to spill.
    "storage-outflow" "Flow out of a store at its storage"
    fn flow(
        curve: Series = "S_i|O_i" "storages and their outflows" {FT3, M3; CFS, M3_S};
        s: Volume = "S" "storage" [FT3, M3: 0.0 .. 1e6 in 0.0 .. 1e9];
    ) -> Flow = "O" "outflow" [CFS, M3_S];
    reduced [s M3 => M3_S] { outflow(curve.clone(), s) }
    helpers [outflow(Series, f64) "O" "outflow at the storage, straight between the rows of the curve"]
    sources [HDS_2_ROUTING]
    checks [
        "curve=[34000 ft3: 4.6 cfs; 51600 ft3: 8.5 cfs], s=50900 ft3" => "8.4 cfs" within 0.01 "straight between rows, both rounded",
            Published(&HDS_2_ROUTING, "example 8.11: 8.4 cfs at 50,900 ft3");
        "curve=[69300 ft3: 13.1 cfs; 87100 ft3: 18.4 cfs], s=84700 ft3" => "17.7 cfs",
            Published(&HDS_2_ROUTING, "example 8.11: 17.7 cfs at 84,700 ft3");
        "curve=[105100 ft3: 24.1 cfs; 123100 ft3: 30.4 cfs], s=122900 ft3" => "30.3 cfs",
            Published(&HDS_2_ROUTING, "example 8.11: 30.3 cfs at 122,900 ft3");
        "curve=[141200 ft3: 37.2 cfs; 159300 ft3: 44.3 cfs], s=149900 ft3" => "40.6 cfs",
            Published(&HDS_2_ROUTING, "example 8.11: 40.6 cfs at 149,900 ft3");
        "curve=[159300 ft3: 44.3 cfs; 177600 ft3: 51.9 cfs], s=161000 ft3" => "45.0 cfs",
            Published(&HDS_2_ROUTING, "example 8.11: 45.0 cfs at 161,000 ft3");
        "curve=[0 m3: 0 m3/s; 10 m3: 1 m3/s], s=0 m3" => "0 m3/s", Limit("an empty store");
        "curve=[0 m3: 0 m3/s; 10 m3: 1 m3/s], s=11 m3" => "outside: result", Limit("never beyond the last row");
        "curve=[10 m3: 0 m3/s; 0 m3: 1 m3/s], s=5 m3" => "outside: result", Limit("storages must rise");
    ]
}
