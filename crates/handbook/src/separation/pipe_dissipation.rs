//! Formula: dissipation in a pipe

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Dissipation, Length, Ratio, Velocity};

const OWN: &str = "independent evaluation; friction factor of a smooth pipe by Blasius, 0.316/Re^0.25, water of 20 °C";

formula! {
    /// Mean power that friction takes per mass of water in a full pipe.
    ///
    /// From the loss of head: per length `f v²/(2 D)`, times the velocity. Elbows and valves
    /// dissipate far more in a small space. Gravity sewers alone do not break oil below 100 µm.
    "pipe-dissipation" "Dissipation in a pipe"
    fn dissipation(
        f: Ratio = "f" "Darcy friction factor" [ONE, ONE: 0.005 .. 0.1 in 0.0 .. 10.0];
        v: Velocity = "v" "mean velocity" [FT_S, M_S: 0.05 .. 10.0 in 0.0 .. 1000.0];
        d: Length = "D" "inside diameter" [IN, MM: 10.0 .. 3000.0 in 0.1 .. 100000.0];
    ) -> Dissipation = "epsilon" "dissipation, power per mass" [W_KG, W_KG];
    typed { f * v * v * v / (2.0 * d) }
    sources [DEFINITION]
    checks [
        "f=0.02, v=1 m/s, d=10 mm" => "1 W/kg", Limit("whole numbers: 0.02 / (2 x 0.01)");
        "f=0.020208, v=0.6 m/s, d=100 mm" => "0.0218 W/kg", ByHand(OWN);
        "f=0.017785, v=1 m/s, d=100 mm" => "0.0889 W/kg", ByHand(OWN);
        "f=0.014955, v=2 m/s, d=100 mm" => "0.598 W/kg", ByHand(OWN);
        "f=0.013514, v=3 m/s, d=100 mm" => "1.825 W/kg" within 1e-3 "constant 0.316 or 0.3164", ByHand(OWN);
        "f=0.016071, v=1 m/s, d=150 mm" => "0.0536 W/kg", ByHand(OWN);
        "f=0.011364, v=2 m/s, d=300 mm" => "0.152 W/kg", ByHand(OWN);
        "f=0.021150, v=0.5 m/s, d=100 mm" => "0.0132 W/kg", ByHand(OWN);
        "f=0.02, v=0.768 m/s, d=102.3 mm" => "0.0442 W/kg" within 3e-3 "velocity printed to three digits",
            ByHand("100 gpm in a pipe of 4 in");
        "f=0.02, v=2.914 m/s, d=52.5 mm" => "4.72 W/kg" within 3e-3 "velocity printed to four digits",
            ByHand("100 gpm in a pipe of 2 in");
    ]
}
