//! Formula: mass of oil in a flow

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Concentration, Flow, MassRate};

formula! {
    /// Mass per time that a flow carries at a concentration.
    "oil-load" "Mass of oil in a flow"
    fn rate(
        q: Flow = "Q" "flow" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        c: Concentration = "C" "concentration" [MG_L, MG_L: 0.0 .. 100000.0 in 0.0 .. 2e6];
    ) -> MassRate = "m" "mass of oil per time" [LB_D, KG_D];
    typed { q * c }
    sources [DEFINITION]
    checks [
        "q=1 m3/d, c=1000 mg/L" => "1 kg/d", Limit("a cubic metre at a gram a litre");
        "q=1 MGD, c=1 mg/L" => "8.345 lb/d", ByHand("3785.411784 m3 x 1 g / 453.59237 g");
        "q=100 gpm, c=150 mg/L" => "81.76 kg/d", ByHand("545.0993 m3/d x 0.15 kg/m3 = 81.765");
    ]
}
