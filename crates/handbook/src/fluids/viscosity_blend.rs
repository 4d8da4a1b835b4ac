//! Formula: viscosity of two oils together

use super::viscosity_blending_number::{VBN_BASE, VBN_OFFSET, VBN_SLOPE};
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{ASTM_D341, ASTM_D7152, BLENDING_RULES, REFUTAS};
use crate::{choice, formula};
use stillrise_units::math::{exp, exp10, ln, log10, pow};
use stillrise_units::{KinematicViscosity, Ratio};

choice! {
    /// By which rule, and so which share is meant.
    BlendRule {
        /// Refutas' blending number, shares of mass: the default
        Refutas "refutas",
        /// Walther's double logarithm as in ASTM D7152, shares of volume
        Walther "walther",
        /// logarithm of viscosity, Arrhenius; as a rule too thick
        Arrhenius "arrhenius",
        /// cube root of viscosity, Kendall and Monroe; far too thick for unlike oils
        CubeRoot "cube-root",
    }
}

formula! {
    /// Kinematic viscosity of two oils that dissolve in each other, at one temperature.
    ///
    /// A little thin oil thins much: half diesel in lubricating oil has a tenth, not half, of its viscosity.
    /// Refutas and Walther agree within 3 % where the thinner oil has 4 mm²/s or more, and within 11 % with petrol; the other two rules stand for comparison. Emulsified water is
    /// no blend.
    "viscosity-blend" "Viscosity of two oils together"
    fn viscosity(
        v_1: KinematicViscosity = "nu_1" "viscosity of the first oil" [CST, MM2_S: 0.5 .. 1e5 in 0.21 .. 2e7];
        v_2: KinematicViscosity = "nu_2" "viscosity of the second oil" [CST, MM2_S: 0.5 .. 1e5 in 0.21 .. 2e7];
        share: Ratio = "x" "share of the second oil" [PERCENT, PERCENT: 0.0 .. 100.0 in 0.0 .. 100.0];
        rule: BlendRule = "rule" "rule of blending";
    ) -> KinematicViscosity = "nu" "viscosity of the blend" [CST, MM2_S];
    reduced [v_1 MM2_S, v_2 MM2_S, share ONE => MM2_S] {
        let n_1 = VBN_SLOPE * ln(ln(v_1 + VBN_OFFSET)) + VBN_BASE;
        let n_2 = VBN_SLOPE * ln(ln(v_2 + VBN_OFFSET)) + VBN_BASE;
        let n = (1.0 - share) * n_1 + share * n_2;
        let w_1 = log10(log10(v_1 + 0.7 + exp(-1.47 - 1.84 * v_1 - 0.51 * pow(v_1, 2.0))));
        let w_2 = log10(log10(v_2 + 0.7 + exp(-1.47 - 1.84 * v_2 - 0.51 * pow(v_2, 2.0))));
        let y = exp10(exp10((1.0 - share) * w_1 + share * w_2)) - 0.7;
        if rule == BlendRule::Refutas { exp(exp((n - VBN_BASE) / VBN_SLOPE)) - VBN_OFFSET }
        else if rule == BlendRule::Walther { y - exp(-0.7487 - 3.295 * y + 0.6119 * pow(y, 2.0) - 0.3193 * pow(y, 3.0)) }
        else if rule == BlendRule::Arrhenius { exp((1.0 - share) * ln(v_1) + share * ln(v_2)) }
        else { pow((1.0 - share) * pow(v_1, 1.0 / 3.0) + share * pow(v_2, 1.0 / 3.0), 3.0) }
    }
    constants [VBN_SLOPE "14.534", VBN_BASE "10.975", VBN_OFFSET "0.8"]
    sources [REFUTAS, ASTM_D7152, ASTM_D341, BLENDING_RULES]
    checks [
        "v_1=5 mm2/s, v_2=20 mm2/s, share=40 %, rule=refutas" => "8.1085 mm2/s", ByHand("independent evaluation in Python");
        "v_1=32 mm2/s, v_2=32 mm2/s, share=30 %, rule=refutas" => "32.000000 mm2/s", Limit("two oils of one viscosity keep it");
        "v_1=32 mm2/s, v_2=32 mm2/s, share=30 %, rule=walther" => "32.000000 mm2/s", Limit("two oils of one viscosity keep it");
        "v_1=4 mm2/s, v_2=100 mm2/s, share=50 %, rule=arrhenius" => "20.000000 mm2/s", Limit("the geometric mean of equal parts");
        "v_1=8 mm2/s, v_2=64 mm2/s, share=50 %, rule=cube-root" => "27.000000 mm2/s", Limit("cube roots 2 and 4 have the mean 3");
    ]
}
