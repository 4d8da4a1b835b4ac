//! Formula: droplets that touch a fibre in passing

use super::kuwabara_factor;
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::KUWABARA;
use stillrise_units::math::{ln, sqrt};
use stillrise_units::{Ratio, Typed, ratio};

const CELL: &str = "the stream function of the cell as four linear equations, solved in Python, read at 1 + R";

formula! {
    /// Share of the water that would meet the fibre from which droplets of one size touch it,
    /// because they are as large as they are: one fibre of Kuwabara's bed, exact.
    ///
    /// A droplet follows the streamline of its centre, and touches when that comes within its
    /// radius. The flow ends at the rim of the cell, where the droplet is as wide as the space
    /// between fibres and the share is `1/sqrt(α)`; beyond, it stays there, for the form itself goes on
    /// to values that mean nothing. For small droplets it grows as the square of R. Touching is
    /// not staying: see `mesh-penetration`.
    "fibre-interception" "Droplets that touch a fibre in passing"
    fn interception(
        r: Ratio = "R" "droplet diameter over fibre diameter" [ONE, ONE: 0.001 .. 3.0 in 0.0 .. 1e9];
        solidity: Ratio = "alpha" "solid share of the bed" [PERCENT, PERCENT: 1.0 .. 20.0 in 0.0001 .. 60.0];
    ) -> Ratio = "eta_R" "share by interception" [ONE, ONE];
    reduced [r ONE, solidity ONE => ONE] {
        let m = 1.0 + r;
        let edge = 1.0 / sqrt(solidity);
        if m < edge {
            m / (2.0 * ku(solidity)) * (2.0 * ln(m) - 1.0 + solidity + (1.0 - solidity / 2.0) / (m * m) - solidity / 2.0 * m * m)
        } else { edge }
    }
    helpers [ku(f64) "Ku" "Kuwabara's factor, `kuwabara-factor`"]
    sources [KUWABARA]
    checks [
        "r=0.08, solidity=3 %" => "0.00570018918", ByHand(CELL);
        "r=0.1333333333333, solidity=5 %" => "0.0194031523", ByHand(CELL);
        "r=0.6666666666667, solidity=10 %" => "0.542580880", ByHand(CELL);
        "r=2, solidity=5 %" => "2.12713166", ByHand(CELL);
        "r=2.1, solidity=10 %" => "3.04895765", ByHand(CELL);
        "r=0.001, solidity=5 %" => "0.0000011916" within 1e-3 "the next term is R times the first",
            Limit("a small droplet: (1 - alpha) R^2 / Ku = 0.95e-6 / 0.797241");
        "r=1, solidity=25 %" => "2.000000", Limit("the rim of the cell: 1/sqrt(0.25)");
        "r=0.999999999, solidity=25 %" => "2.000000", Limit("the flow meets the rim without a step");
        "r=50, solidity=4 %" => "5.000000", Limit("beyond the rim no more than the cell's own water: 1/sqrt(0.04)");
        "r=0, solidity=5 %" => "0.000000", Limit("a point that follows the water never touches");
    ]
}

pub(super) fn ku(solidity: f64) -> f64 {
    kuwabara_factor::factor(ratio(solidity)).map_or(f64::NAN, Typed::si)
}
