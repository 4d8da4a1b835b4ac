//! Formula: polar share of what hexane extracts

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::EPA_1664B;
use stillrise_units::{Concentration, Ratio, ratio};

formula! {
    /// Share of the hexane-extractable material that silica gel takes off.
    ///
    /// Method 1664 weighs what n-hexane extracts (HEM, oil and grease); silica gel then holds back what is polar, such
    /// as animal and vegetable oil, grease, soap and surfactant, and what is left (SGT-HEM, non-polar material) is
    /// mostly mineral oil. A negative share is the scatter of two weighings. Both must be of the same bottle.
    "polar-share" "Polar share of what hexane extracts"
    fn share(
        hem: Concentration = "C_HEM" "hexane-extractable material" [MG_L, MG_L: 5.0 .. 1000.0 in 1e-3 .. 1e6];
        sgt: Concentration = "C_SGT" "the same after silica gel" [MG_L, MG_L: 5.0 .. 1000.0 in 0.0 .. 1e6];
    ) -> Ratio = "p" "polar share" [PERCENT, PERCENT];
    typed { ratio(1.0) - sgt / hem }
    sources [EPA_1664B]
    checks [
        "hem=40 mg/L, sgt=10 mg/L" => "75.000 %", ByHand("30 of 40");
        "hem=20 mg/L, sgt=20 mg/L" => "0 %", Limit("silica gel takes nothing off mineral oil");
        "hem=20 mg/L, sgt=0 mg/L" => "100.00 %", Limit("fat and soap alone");
    ]
}
