//! Formula: exponent of hindered rise

use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{GARSIDE, RICHARDSON_ZAKI, ROWE};
use crate::{choice, formula};
use stillrise_units::Ratio;
use stillrise_units::math::pow;

choice! {
    /// By whose law.
    HinderedLaw {
        /// Richardson and Zaki 1954, four pieces that do not quite join
        RichardsonZaki "richardson-zaki",
        /// Rowe 1987, a smooth curve through the same data
        Rowe "rowe",
        /// Garside and Al-Dibouni 1977, smooth, 5.1 in creeping flow
        GarsideAlDibouni "garside-al-dibouni",
    }
}

formula! {
    /// Exponent n of `(1 - phi)^n`, by which a crowd of droplets or grains rises or settles slower than one alone.
    ///
    /// Far from walls. In creeping flow the laws say 4.65, 4.70 and 5.1; a survey of newer measurements says
    /// 4.48. Richardson and Zaki's pieces step by 0.09 at a Reynolds number of 0.2 and by 0.10 at 1.
    "hindered-exponent" "Exponent of hindered rise"
    fn exponent(
        re: Ratio = "Re" "Reynolds number of one alone at its terminal velocity" [ONE, ONE: 0.0 .. 1000.0 in 0.0 .. 1e6];
        law: HinderedLaw = "law" "whose law";
    ) -> Ratio = "n" "exponent" [ONE, ONE];
    reduced [re ONE => ONE] {
        let piece = if re < 0.2 { 4.65 } else if re < 1.0 { 4.35 * pow(re, -0.03) }
            else if re < 500.0 { 4.45 * pow(re, -0.1) } else { 2.39 };
        let rowe = 0.175 * pow(re, 0.75);
        let garside = 0.1 * pow(re, 0.9);
        if law == HinderedLaw::RichardsonZaki { piece }
        else if law == HinderedLaw::Rowe { 2.35 * (2.0 + rowe) / (1.0 + rowe) }
        else { (5.1 + 2.7 * garside) / (1.0 + garside) }
    }
    sources [RICHARDSON_ZAKI, ROWE, GARSIDE]
    checks [
        "re=0, law=richardson-zaki" => "4.650000", Limit("creeping flow");
        "re=0, law=rowe" => "4.700000", Limit("creeping flow: twice 2.35");
        "re=0, law=garside-al-dibouni" => "5.100000", Limit("creeping flow");
        "re=1000000, law=richardson-zaki" => "2.390000", Limit("drag of a constant coefficient");
        "re=0.5, law=richardson-zaki" => "4.44140", ByHand("4.35 x 0.5^-0.03");
    ]
}
