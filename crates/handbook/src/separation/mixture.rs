//! Formula: concentration of two streams together

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Concentration, Flow};

formula! {
    /// Mean of two streams' concentrations, weighted by their flows; nothing reacts or settles.
    "mixture" "Concentration of two streams together"
    fn concentration(
        q_1: Flow = "Q_1" "flow of the first stream" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        c_1: Concentration = "C_1" "concentration of the first stream" [MG_L, MG_L: 0.0 .. 100000.0 in 0.0 .. 2e6];
        q_2: Flow = "Q_2" "flow of the second stream" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        c_2: Concentration = "C_2" "concentration of the second stream" [MG_L, MG_L: 0.0 .. 100000.0 in 0.0 .. 2e6];
    ) -> Concentration = "C" "concentration of the mixture" [MG_L, MG_L];
    typed { (q_1 * c_1 + q_2 * c_2) / (q_1 + q_2) }
    sources [DEFINITION]
    checks [
        "q_1=45 gpm, c_1=200 mg/L, q_2=0 gpm, c_2=15 mg/L" => "200 mg/L", Limit("one stream alone keeps its concentration");
        "q_1=10 gpm, c_1=200 mg/L, q_2=10 gpm, c_2=0 mg/L" => "100 mg/L", Limit("equal flows of clean water halve it");
        "q_1=30 gpm, c_1=200 mg/L, q_2=90 gpm, c_2=15.3 mg/L" => "61.475 mg/L", ByHand("(30 x 200 + 90 x 15.3) / 120");
        "q_1=0 gpm, c_1=200 mg/L, q_2=0 gpm, c_2=15 mg/L" => "outside: result", Limit("no flow has no concentration");
    ]
}
