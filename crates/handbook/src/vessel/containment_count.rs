//! Formula: further containments of a kind

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use crate::units::math::ceil;
use stillrise_units::{Ratio, Volume};

formula! {
    /// How many more of a kind hold what is short, each for itself less the rain that falls into it.
    "containment-count" "Further containments of a kind"
    fn count(
        short: Volume = "V" "volume that is short" [GAL, M3: 0.0 .. 1e5 in 0.0 .. 1e9];
        each: Volume = "V_1" "what each holds beside its own rain" [GAL, M3: 0.0 .. 1e5 in 0.0 .. 1e9];
    ) -> Ratio = "n" "number of them" [ONE, ONE];
    reduced [short M3, each M3 => ONE] { ceil(short / each) }
    sources [DEFINITION]
    checks [
        "short=60 m3, each=60 m3" => "1.0000", Limit("as much as one holds");
        "short=61 m3, each=60 m3" => "2.0000", ByHand("one and a little more");
        "short=0 m3, each=60 m3" => "0", Limit("nothing is short");
        "short=60 m3, each=0 m3" => "outside: result", Limit("what holds nothing never adds up");
    ]
}
