//! Formula: share of droplets that a bed of fibres lets through

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::SINGLE_FIBRE;
use core::f64::consts::PI;
use stillrise_units::math::exp;
use stillrise_units::{Length, Ratio};

formula! {
    /// Share of droplets of one size left in the water behind a bed of single fibres.
    ///
    /// Each thin slice catches the same share of what reaches it. `eta` is the sum over the ways a
    /// droplet meets a fibre (`fibre-interception`, `fibre-gravity`, `fibre-brownian`), good while
    /// it is small; texts that carry `eta d_f` as one letter divide by the square of the fibre's
    /// diameter. Some leave `1 - α` out. The share that sticks is to be calibrated: no theory
    /// gives it, it differs from oil to oil, and detergent lowers it. What happens to the caught oil,
    /// and what a loaded bed sheds, is not in here.
    "mesh-penetration" "Share of droplets that a bed of fibres lets through"
    fn penetration(
        solidity: Ratio = "alpha" "solid share of the bed" [PERCENT, PERCENT: 1.0 .. 20.0 in 0.0 .. 60.0];
        eta: Ratio = "eta" "share of the water ahead of a fibre that is swept of droplets" [ONE, ONE: 0.0 .. 1.0 in 0.0 .. 1e18];
        sticking: Ratio = "s" "share of the collisions that stick" [PERCENT, PERCENT: 1.0 .. 100.0 in 0.0 .. 100.0];
        length: Length = "L" "depth of the bed along the flow" [IN, MM: 5.0 .. 1000.0 in 0.0 .. 100000.0];
        fibre: Length = "d_f" "diameter of the fibres" [MIL, UM: 5.0 .. 600.0 in 0.1 .. 10000.0];
    ) -> Ratio = "P" "share left" [PERCENT, PERCENT];
    reduced [solidity ONE, eta ONE, sticking ONE, length M, fibre M => ONE] {
        exp(-4.0 * solidity * eta * sticking * length / (PI * fibre * (1.0 - solidity)))
    }
    sources [SINGLE_FIBRE]
    checks [
        "solidity=5 %, eta=0.03, sticking=100 %, length=150 mm, fibre=150 um" => "0.1339380", ByHand("independent evaluation in Python");
        "solidity=5 %, eta=0.03, sticking=50 %, length=150 mm, fibre=150 um" => "0.3659754", ByHand("independent evaluation in Python");
        "solidity=5 %, eta=0.03, sticking=50 %, length=300 mm, fibre=150 um" => "0.1339380",
            Limit("twice the depth at half the sticking");
        "solidity=50 %, eta=0.01, sticking=100 %, length=78.53981634 mm, fibre=1 mm" => "0.3678794", Limit("an exponent of one: 4 x 0.01 x pi/4 x 100 / pi");
        "solidity=0 %, eta=0.03, sticking=100 %, length=150 mm, fibre=150 um" => "1.000000", Limit("no fibres");
        "solidity=5 %, eta=0.03, sticking=0 %, length=150 mm, fibre=150 um" => "1.000000", Limit("nothing sticks");
        "solidity=5 %, eta=1, sticking=100 %, length=10 m, fibre=10 um" => "0.000000", Limit("a deep bed of fine fibres");
    ]
}
