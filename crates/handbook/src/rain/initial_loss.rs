//! Formula: loss before runoff over the rain

use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::sources::{HDS_2, TR_55};
use stillrise_units::{Length, Ratio};

formula! {
    /// Share of a rain that the ground takes before anything runs off, by its curve number.
    ///
    /// A fifth of the ground's storage, over the rain; `graphical-peak` takes it. Above 1 nothing runs off.
    "initial-loss" "Loss before runoff over the rain"
    fn share(
        p: Length = "P" "depth of rain" [IN, MM: 10.0 .. 400.0 in 0.1 .. 5000.0];
        cn: Ratio = "CN" "curve number" [ONE, ONE: 40.0 .. 100.0 in 1.0 .. 100.0];
    ) -> Ratio = "I_a/P" "loss before runoff over rain" [ONE, ONE];
    reduced [p IN, cn ONE => ONE] {
        let s = 1000.0 / cn - 10.0;
        let i_a = 0.2 * s;
        i_a / p
    }
    sources [TR_55, HDS_2]
    checks [
        "p=6.0 in, cn=75" => "0.111", Published(&TR_55, "example 4-1, as a second text quotes it: I_a 0.667, I_a/P 0.111");
        "p=4.8 in, cn=67" => "0.21", Published(&HDS_2, "example 8.11, before building");
        "p=4.8 in, cn=84" => "0.08", Published(&HDS_2, "example 8.11, built over: I_a 0.38 of 4.8 in");
        "p=2 in, cn=100" => "0", Limit("ground that holds nothing");
    ]
}
