//! Formula: temperature of two streams together

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Flow, Temperature};

formula! {
    /// Mean of two streams' temperatures, weighted by their flows: the balance of heat.
    ///
    /// Takes heat per volume as the same in both, which holds within 2 % from 0 to 60 °C; what
    /// pipes, sump and air take is not counted.
    "mixed-temperature" "Temperature of two streams together"
    fn temperature(
        q_1: Flow = "Q_1" "flow of the first stream" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        t_1: Temperature = "T_1" "temperature of the first stream" [DEG_F, DEG_C: 0.0 .. 95.0 in -20.0 .. 150.0];
        q_2: Flow = "Q_2" "flow of the second stream" [GPM, L_S: 0.0 .. 500.0 in 0.0 .. 1e6];
        t_2: Temperature = "T_2" "temperature of the second stream" [DEG_F, DEG_C: 0.0 .. 95.0 in -20.0 .. 150.0];
    ) -> Temperature = "T" "temperature of the mixture" [DEG_F, DEG_C];
    reduced [q_1 M3_S, t_1 K, q_2 M3_S, t_2 K => K] { (q_1 * t_1 + q_2 * t_2) / (q_1 + q_2) }
    sources [DEFINITION]
    checks [
        "q_1=10 L/s, t_1=60 °C, q_2=10 L/s, t_2=10 °C" => "35.0000 °C", Limit("equal flows meet halfway");
        "q_1=5 L/s, t_1=12 °C, q_2=0 L/s, t_2=80 °C" => "12.0000 °C", Limit("one stream alone keeps its temperature");
        "q_1=30 gpm, t_1=140 °F, q_2=90 gpm, t_2=44 °F" => "68.0000 °F", ByHand("(30 x 140 + 90 x 44) / 120");
        "q_1=0 gpm, t_1=140 °F, q_2=0 gpm, t_2=44 °F" => "outside: result", Limit("no flow has no temperature");
    ]
}
