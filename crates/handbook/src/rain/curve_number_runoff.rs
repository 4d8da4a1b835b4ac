//! Formula: runoff of a rain by its curve number

use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::sources::{HDS_2, NEH_10, TR_55};
use stillrise_units::math::max;
use stillrise_units::{Length, Ratio};

formula! {
    /// Depth of runoff of a rain on ground of a curve number, NRCS: 98 for paving and roofs.
    ///
    /// A fifth of the ground's storage is lost before runoff starts. Made for rains of an inch and more on
    /// farm land; it understates the runoff of small rains from yards, for which take `rain-volume`.
    "curve-number-runoff" "Runoff of a rain by its curve number"
    fn runoff(
        p: Length = "P" "depth of rain" [IN, MM: 25.0 .. 400.0 in 0.0 .. 5000.0];
        cn: Ratio = "CN" "curve number" [ONE, ONE: 40.0 .. 98.0 in 1.0 .. 100.0];
    ) -> Length = "Q_d" "depth of runoff" [IN, MM];
    reduced [p IN, cn ONE => IN] {
        let s = 1000.0 / cn - 10.0;
        let i_a = 0.2 * s;
        if p > i_a { max(p - i_a, 0.0) * (p - i_a) / (p - i_a + s) } else { 0.0 }
    }
    sources [TR_55, NEH_10, HDS_2]
    checks [
        "p=4.3 in, cn=74" => "1.82 in", Published(&NEH_10, "example 10-1");
        "p=4.3 in, cn=55" => "0.65 in", Published(&NEH_10, "example 10-2");
        "p=4.3 in, cn=88" => "3.01 in", Published(&NEH_10, "example 10-2");
        "p=1.27 in, cn=80" => "0.18 in", Published(&NEH_10, "table 10-2, third row");
        "p=1.36 in, cn=80" => "0.22 in", Published(&NEH_10, "table 10-2, fourth row");
        "p=2.25 in, cn=80" => "0.72 in", Published(&NEH_10, "table 10-2, seventh row");
        "p=2.61 in, cn=80" => "0.97 in", Published(&NEH_10, "table 10-2, last row");
        "p=1.01 in, cn=80" => "0.08 in" within 0.09 "rows 2 and 5 of that table are 0.01 in off its own formula", Published(&NEH_10, "table 10-2, second row");
        "p=1.55 in, cn=80" => "0.32 in" within 0.04 "rows 2 and 5 of that table are 0.01 in off its own formula", Published(&NEH_10, "table 10-2, fifth row");
        "p=6.0 in, cn=75" => "3.28 in", Published(&TR_55, "example 2-2, as a second text quotes it");
        "p=21.988 mm, cn=80" => "1.2 mm", Published(&HDS_2, "example 6.12");
        "p=49.956 mm, cn=80" => "13.8 mm", Published(&HDS_2, "example 6.12");
        "p=73.968 mm, cn=80" => "30.1 mm", Published(&HDS_2, "example 6.12");
        "p=86.02 mm, cn=80" => "39.3 mm", Published(&HDS_2, "example 6.12");
        "p=92 mm, cn=80" => "44.0 mm", Published(&HDS_2, "example 6.12");
        "p=8.004 mm, cn=80" => "0 mm", Published(&HDS_2, "example 6.12: all of it is lost");
        "p=2 in, cn=100" => "2.000000 in", Limit("ground that holds nothing");
        "p=0.5 in, cn=80" => "0 in", Limit("the loss before runoff is 0.5 in");
    ]
}
