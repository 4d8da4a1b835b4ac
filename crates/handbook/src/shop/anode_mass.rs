//! Formula: mass of anodes that are used up

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{MIL_1004_10, UFC_3_570_02A};
use stillrise_units::{Mass, Ratio, Time};

formula! {
    /// Mass of anodes for a current over a life: what an ampere takes in a year, over the share of it that protects.
    ///
    /// Magnesium takes 8.8 lb for each ampere and year at an efficiency of 0.50, zinc 23.5 lb at 0.90. Take the next whole
    /// number of anodes, and see with `anode-current` that they give the current in the soil at hand.
    "anode-mass" "Mass of anodes that are used up"
    fn mass(
        life: Time = "Y" "life wanted" [YR, YR: 5.0 .. 40.0 in 0.0 .. 1000.0];
        rate: Mass = "S" "mass that one ampere takes in a year" [LB, KG: 0.4 .. 12.0 in 0.001 .. 1000.0];
        current: Ratio = "I" "current in amperes" [ONE, ONE: 0.0 .. 20.0 in 0.0 .. 1e6];
        efficiency: Ratio = "E" "efficiency of the anode" [ONE, ONE: 0.4 .. 0.95 in 0.01 .. 1.0];
    ) -> Mass = "W" "mass of anodes" [LB, KG];
    reduced [life YR, rate KG, current ONE, efficiency ONE => KG] { life * rate * current / efficiency }
    sources [UFC_3_570_02A, MIL_1004_10]
    checks [
        "life=15 yr, rate=8.8 lb, current=0.7, efficiency=0.5" => "184.8 lb", Published(&UFC_3_570_02A, "galvanic protection of a tank: 184.8 lb");
        "life=10 yr, rate=1 lb, current=15.2, efficiency=0.5" => "304 lb", Published(&MIL_1004_10, "weight of main anodes: 304 pounds");
        "life=10 yr, rate=1 lb, current=3.62, efficiency=0.5" => "72.4 lb", Published(&MIL_1004_10, "weight of riser anodes: 72.4 lb");
        "life=30 yr, rate=8.8 lb, current=0.01744, efficiency=0.5" => "9.208 lb", ByHand("30 x 8.8 x 0.01744 / 0.5");
        "life=1 yr, rate=1 kg, current=1, efficiency=1" => "1.000000 kg", Limit("an ampere for a year");
    ]
}
