//! Formula: storage at the end of a step, level pool

use super::storage_outflow::outflow;
use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::page::Series;
use crate::sources::HDS_2_ROUTING;
use stillrise_units::math::root;
use stillrise_units::{Flow, Time, Volume};

formula! {
    /// What an equalisation store, a pond or a sump holds after a step, with a level surface, by storage indication.
    ///
    /// Gain is inflow less outflow, both as means of the step's ends; the outflow follows the storage by the
    /// curve, straight between its rows. Take steps so short that the outflow changes little against the
    /// storage over the step. Full: there is no answer beyond the curve's last row, the store runs over.
    "level-pool" "Storage after a step, level pool"
    fn storage(
        curve: Series = "S_i|O_i" "storages and their outflows" {FT3, M3; CFS, M3_S};
        i_1: Flow = "I_1" "inflow at the start of the step" [CFS, M3_S: 0.0 .. 100.0 in 0.0 .. 1e6];
        i_2: Flow = "I_2" "inflow at its end" [CFS, M3_S: 0.0 .. 100.0 in 0.0 .. 1e6];
        s_1: Volume = "S_1" "storage at its start" [FT3, M3: 0.0 .. 1e6 in 0.0 .. 1e9];
        dt: Time = "dt" "step" [MIN, MIN: 0.1 .. 60.0 in 1e-6 .. 1e5];
    ) -> Volume = "S_2" "storage at its end" [FT3, M3];
    solves [i_1 M3_S, i_2 M3_S, s_1 M3, dt S => s_2 M3] {
        s_2 / dt + outflow(curve.clone(), s_2) / 2.0 => s_1 / dt - outflow(curve.clone(), s_1) / 2.0 + (i_1 + i_2) / 2.0
    } by {
        let aim = s_1 / dt - outflow(curve.clone(), s_1) / 2.0 + (i_1 + i_2) / 2.0;
        let ends = curve.0.first().zip(curve.0.last()).map(|(low, high)| (low.0, high.0));
        ends.and_then(|(low, high)| root(low, high, |s| s / dt + outflow(curve.clone(), s) / 2.0 - aim))
    }
    helpers [outflow(Series, f64) "O" "outflow at the storage, `storage-outflow`"]
    sources [HDS_2_ROUTING]
    checks [
        "curve=[0 ft3: 0 cfs; 1000 ft3: 10 cfs], i_1=5 cfs, i_2=5 cfs, s_1=500 ft3, dt=1 min" => "500.0000 ft3", Limit("what enters leaves: the level stands");
        "curve=[0 ft3: 0 cfs; 1000 ft3: 0 cfs], i_1=1 cfs, i_2=3 cfs, s_1=500 ft3, dt=1 min" => "620.0000 ft3", Limit("nothing leaves: 2 cfs over 60 s stay");
        "curve=[0 m3: 0 m3/s; 120 m3: 1 m3/s], i_1=0 m3/s, i_2=0 m3/s, s_1=100 m3, dt=2 min" => "33.33333 m3",
            Limit("a straight curve is a linear reservoir: (1 - 1/2)/(1 + 1/2) of it stays");
        "curve=[0 m3: 0 m3/s; 10 m3: 0 m3/s], i_1=1 m3/s, i_2=1 m3/s, s_1=0 m3, dt=1 min" => "outside: result", Limit("the store runs over");
        "curve=[34000 ft3: 4.6 cfs; 51600 ft3: 8.5 cfs; 69300 ft3: 13.1 cfs; 87100 ft3: 18.4 cfs], i_1=85 cfs, i_2=129 cfs, s_1=50900 ft3, dt=6 min" => "84700 ft3"
            within 0.001 "storages are printed to 100 ft3", Published(&HDS_2_ROUTING, "example 8.11, tables 8.7 and 8.8, step to 1.3 h");
        "curve=[69300 ft3: 13.1 cfs; 87100 ft3: 18.4 cfs; 105100 ft3: 24.1 cfs; 123100 ft3: 30.4 cfs], i_1=129 cfs, i_2=131 cfs, s_1=84700 ft3, dt=6 min" => "122900 ft3"
            within 0.001 "storages are printed to 100 ft3", Published(&HDS_2_ROUTING, "example 8.11, step to 1.4 h");
        "curve=[105100 ft3: 24.1 cfs; 123100 ft3: 30.4 cfs; 141200 ft3: 37.2 cfs; 159300 ft3: 44.3 cfs], i_1=131 cfs, i_2=90 cfs, s_1=122900 ft3, dt=6 min" => "149900 ft3"
            within 0.001 "storages are printed to 100 ft3", Published(&HDS_2_ROUTING, "example 8.11, step to 1.5 h");
        "curve=[141200 ft3: 37.2 cfs; 159300 ft3: 44.3 cfs; 177600 ft3: 51.9 cfs], i_1=90 cfs, i_2=55 cfs, s_1=149900 ft3, dt=6 min" => "160600 ft3"
            within 0.001 "storages are printed to 100 ft3", Published(&HDS_2_ROUTING, "example 8.11, step to 1.6 h");
        "curve=[141200 ft3: 37.2 cfs; 159300 ft3: 44.3 cfs; 177600 ft3: 51.9 cfs], i_1=55 cfs, i_2=37 cfs, s_1=160600 ft3, dt=6 min" => "161000 ft3"
            within 0.001 "storages are printed to 100 ft3", Published(&HDS_2_ROUTING, "example 8.11, the peak, at 1.7 h");
    ]
}
