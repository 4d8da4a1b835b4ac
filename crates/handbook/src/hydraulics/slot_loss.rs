//! Formula: loss of a submerged slot

use crate::formula;
use crate::page::Evidence::{ByHand, Published};
use crate::sources::HDS_2_OUTLETS;
use stillrise_units::{Flow, G, Length, Ratio};

formula! {
    /// Difference of levels across a slot that is under water on both sides: below a baffle, through
    /// a distributor's opening.
    ///
    /// Coefficient 0.6 for sharp edges, to 0.8 for rounded ones; as 1.5 to 2 velocity heads when
    /// reckoned as a turn. Under a separator's baffle the loss is millimetres.
    "slot-loss" "Loss of a submerged slot"
    fn loss(
        q: Flow = "Q" "flow" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        width: Length = "b" "width of the slot" [IN, MM: 10.0 .. 10000.0 in 0.1 .. 100000.0];
        height: Length = "a" "height of the slot" [IN, MM: 10.0 .. 3000.0 in 0.1 .. 100000.0];
        c: Ratio = "C_d" "discharge coefficient" [ONE, ONE: 0.6 .. 0.8 in 0.1 .. 1.0];
    ) -> Length = "h" "difference of levels" [IN, MM];
    typed {
        let v = q / (c * width * height);
        v * v / (2.0 * G)
    }
    sources [HDS_2_OUTLETS]
    checks [
        "q=0.55 m3/s, width=1 m, height=0.247 m, c=0.6" => "0.7 m", Published(&HDS_2_OUTLETS, "example 8.4: 0.247 m2 for 0.55 m3/s at 0.7 m");
        "q=19.4 cfs, width=1 ft, height=2.66 ft, c=0.6" => "2.3 ft",
            Published(&HDS_2_OUTLETS, "example 8.4, US units: 2.66 ft2 for 19.4 cfs at 2.3 ft");
        "q=0.03 m3/s, width=1.2 m, height=0.3 m, c=0.6" => "0.98 mm", ByHand("(0.08333/0.6)^2 / 19.6133");
    ]
}
