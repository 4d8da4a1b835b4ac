//! Formula: salinity of two streams together

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Flow, Ratio};

formula! {
    /// Mean of two streams' salinities, weighted by their flows: the balance of salt.
    ///
    /// Weighs by volume, not by mass, which for brackish and sea water is off by no more than the
    /// 3 % of their densities.
    "mixed-salinity" "Salinity of two streams together"
    fn salinity(
        q_1: Flow = "Q_1" "flow of the first stream" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        s_1: Ratio = "S_1" "salinity of the first stream" [G_KG, G_KG: 0.0 .. 42.0 in 0.0 .. 300.0];
        q_2: Flow = "Q_2" "flow of the second stream" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        s_2: Ratio = "S_2" "salinity of the second stream" [G_KG, G_KG: 0.0 .. 42.0 in 0.0 .. 300.0];
    ) -> Ratio = "S" "salinity of the mixture" [G_KG, G_KG];
    typed { (q_1 * s_1 + q_2 * s_2) / (q_1 + q_2) }
    sources [DEFINITION]
    checks [
        "q_1=10 L/s, s_1=35 g/kg, q_2=10 L/s, s_2=0 g/kg" => "17.5000 g/kg", Limit("equal flows of sea and fresh water halve it");
        "q_1=30 L/s, s_1=20 g/kg, q_2=90 L/s, s_2=4 g/kg" => "8.0000 g/kg", ByHand("(30 x 20 + 90 x 4) / 120");
        "q_1=0 L/s, s_1=20 g/kg, q_2=0 L/s, s_2=4 g/kg" => "outside: result", Limit("no flow has no salinity");
    ]
}
