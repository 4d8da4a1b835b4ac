//! Formula: runoff coefficient of several surfaces together

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::page::{Series, sum_x, sum_xy};
use crate::sources::HDS_2;
use stillrise_units::Ratio;

formula! {
    /// The mean of the coefficients of the surfaces, each weighted by its area.
    ///
    /// Where one part answers much sooner than another, compare with the fast part alone under its
    /// own, stronger rain: the mean over all of it can then give the smaller flow.
    "composite-coefficient" "Runoff coefficient of several surfaces"
    fn coefficient(
        areas: Series = "A_i|C_i" "areas and their runoff coefficients" {ACRES, M2; ONE, ONE};
    ) -> Ratio = "C" "runoff coefficient of the whole" [ONE, ONE];
    reduced [ => ONE] { sum_xy(&areas) / sum_x(&areas) }
    sources [HDS_2]
    checks [
        "areas=[21.8 ha: 0.20; 1.5 ha: 0.95; 20.4 ha: 0.40]" => "0.32", Published(&HDS_2, "example 5.5, eq. 5.29");
        "areas=[1.5 acre: 0.90; 0.5 acre: 0.95; 0.3 acre: 0.60; 0.2 acre: 0.30]" => "0.826", ByHand("2.065 acre over 2.5 acre");
        "areas=[3 acre: 0.9]" => "0.900000", Limit("one surface keeps its own coefficient");
    ]
}
