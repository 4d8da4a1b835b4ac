//! Formula: curve number of several surfaces together

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::page::{Series, sum_x, sum_xy};
use crate::sources::{HDS_2, TR_55};
use stillrise_units::Ratio;

formula! {
    /// The mean of the curve numbers of the surfaces, each weighted by its area.
    ///
    /// Runoff does not grow in proportion with the number, so that paving beside grass sheds more of a small rain than
    /// the mean says.
    "composite-curve-number" "Curve number of several surfaces"
    fn number(
        areas: Series = "A_i|CN_i" "areas and their curve numbers" {ACRES, M2; ONE, ONE};
    ) -> Ratio = "CN" "curve number of the whole" [ONE, ONE];
    reduced [ => ONE] { sum_xy(&areas) / sum_x(&areas) }
    sources [HDS_2, TR_55]
    checks [
        "areas=[3 acre: 98; 1 acre: 74]" => "92", ByHand("(3 x 98 + 74) / 4");
        "areas=[2 acre: 98]" => "98.0000", Limit("one surface keeps its own number");
    ]
}
