//! Formula: share of the free flow that passes a submerged weir

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{HDS_2_OUTLETS, VILLEMONTE};
use stillrise_units::math::pow;
use stillrise_units::{Length, Ratio};

formula! {
    /// Flow over a rectangular weir whose tailwater stands above the crest, over its free flow.
    ///
    /// Villemonte, with the exponent 1.5 of a rectangular weir. Both heads count from the crest. A
    /// tailwater above the upstream level has no answer: the flow would turn round.
    "submerged-weir" "Submerged weir, share of the free flow"
    fn share(
        h_1: Length = "h_1" "head upstream" [IN, MM: 10.0 .. 1000.0 in 0.0 .. 10000.0];
        h_2: Length = "h_2" "head downstream, 0 while the tailwater is below the crest" [IN, MM: 0.0 .. 1000.0 in 0.0 .. 10000.0];
    ) -> Ratio = "s" "share of the free flow" [ONE, ONE];
    reduced [h_1 M, h_2 M => ONE] { pow(1.0 - pow(h_2 / h_1, 1.5), 0.385) }
    sources [HDS_2_OUTLETS, VILLEMONTE]
    checks [
        "h_1=1 m, h_2=0.1 m" => "0.98770", ByHand("(1 - 0.1^1.5)^0.385");
        "h_1=1 m, h_2=0.3 m" => "0.93322", ByHand("(1 - 0.3^1.5)^0.385");
        "h_1=1 m, h_2=0.5 m" => "0.84539", ByHand("(1 - 0.5^1.5)^0.385");
        "h_1=1 m, h_2=0.7 m" => "0.71233", ByHand("(1 - 0.7^1.5)^0.385");
        "h_1=1 m, h_2=0.9 m" => "0.47697", ByHand("(1 - 0.9^1.5)^0.385");
        "h_1=1 m, h_2=0 m" => "1.000000", Limit("a tailwater at the crest takes nothing");
        "h_1=1 m, h_2=1 m" => "0.000000", Limit("equal levels, no flow");
        "h_1=1 m, h_2=1.1 m" => "outside: result", Limit("the flow would turn round");
    ]
}
