//! Formula: least number of channels of an API basin

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::API_421;
use stillrise_units::math::{ceil, max};
use stillrise_units::{Area, Ratio};

formula! {
    /// Channels of at most 20 ft by 8 ft, 160 ft2 each; at least one.
    ///
    /// The billionth below keeps 160 ft2 in one channel however its unit was converted. Two
    /// channels are usual where service must not stop.
    "api-channels" "Least number of channels of an API basin"
    fn count(
        a: Area = "A_c" "cross-section of the flow" [FT2, M2: 0.0 .. 150.0 in 0.0 .. 100000.0];
    ) -> Ratio = "n" "number of channels" [ONE, ONE];
    reduced [a FT2 => ONE] { max(1.0, ceil(a / 160.0 - 1e-9)) }
    sources [API_421]
    checks [
        "a=160 ft2" => "1", Published(&API_421, "n is A_c over 160 ft2, as two articles quote it");
        "a=15.596 ft2" => "1", ByHand("350 gpm at 3 ft/min");
        "a=161 ft2" => "2", Limit("one square foot more than a channel holds");
        "a=480 ft2" => "3", Limit("three full channels");
        "a=0 ft2" => "1", Limit("a basin has a channel");
    ]
}
