//! Formula: capacity of a full round pipe, Manning

use crate::formula;
use crate::page::Evidence::ByHand;
use crate::sources::MANNING;
use core::f64::consts::PI;
use stillrise_units::math::{pow, sqrt};
use stillrise_units::{Flow, Length, Ratio};

formula! {
    /// Flow of a round pipe that runs just full on its own slope.
    ///
    /// The same pipe carries 7.6 % more at 0.94 of its depth, which is no reserve: there it may fill
    /// at any disturbance. Manuals in US units print 1.49 or 1.486 for the exact 1.48592.
    "manning-capacity" "Capacity of a full round pipe, Manning"
    fn flow(
        d: Length = "D" "inside diameter" [IN, MM: 75.0 .. 3000.0 in 0.0 .. 20000.0];
        slope: Ratio = "S" "slope of the pipe" [PERCENT, PERCENT: 0.1 .. 15.0 in 0.0 .. 100.0];
        n: Ratio = "n" "Manning's roughness" [ONE, ONE: 0.009 .. 0.03 in 0.001 .. 0.5];
    ) -> Flow = "Q" "flow of the full pipe" [GPM, L_S];
    reduced [d M, slope ONE, n ONE => M3_S] {
        let a = PI * d * d / 4.0;
        let r = d / 4.0;
        a * pow(r, 2.0 / 3.0) * sqrt(slope) / n
    }
    sources [MANNING]
    checks [
        "d=8 in, slope=0.005, n=0.013" => "383.5 gpm", ByHand("0.4632/n x D^(8/3) x S^0.5 in feet: 0.8545 cfs");
        "d=12 in, slope=0.01, n=0.013" => "3.563 cfs", ByHand("0.4632/0.013 x 1 x 0.1");
        "d=15 in, slope=0.009, n=0.011" => "7.243 cfs" within 0.0003 "the hand factor 0.4632 stands for 0.46314",
             ByHand("0.4632/0.011 x 1.25^(8/3) x 0.009^0.5");
        "d=24 in, slope=0.004, n=0.013" => "14.31 cfs", ByHand("0.4632/0.013 x 2^(8/3) x 0.004^0.5");
    ]
}
