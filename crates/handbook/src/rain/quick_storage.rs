//! Formula: first size of a storage that holds back a peak

use crate::formula;
use crate::page::Evidence::Published;
use crate::sources::HDS_2;
use stillrise_units::{Flow, Time, Volume};

formula! {
    /// Storage that brings a peak down to what may leave: the difference of the two peaks over the
    /// time of concentration. A first size only; routing the hydrograph decides.
    "quick-storage" "First size of a storage that holds back a peak"
    fn volume(
        q_in: Flow = "Q_in" "peak that arrives" [GPM, M3_H: 0.0 .. 10000.0 in 0.0 .. 1e7];
        q_out: Flow = "Q_out" "peak that may leave" [GPM, M3_H: 0.0 .. 10000.0 in 0.0 .. 1e7];
        t_c: Time = "t_c" "time of concentration" [MIN, MIN: 5.0 .. 120.0 in 0.0 .. 1e5];
    ) -> Volume = "V_s" "storage" [GAL, M3];
    typed { (q_in - q_out) * t_c }
    sources [HDS_2]
    checks [
        "q_in=0.83 m3/s, q_out=0.34 m3/s, t_c=13 min" => "382 m3", Published(&HDS_2, "example 8.2, SI");
        "q_in=29 cfs, q_out=12 cfs, t_c=13 min" => "13260 ft3", Published(&HDS_2, "example 8.2, customary units: 13,300 ft3 rounded");
    ]
}
