//! Formula: dissipation of an inlet jet in a zone

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Dissipation, Flow, Velocity, Volume};

formula! {
    /// Mean power per mass of water that an inlet jet spends in the zone it runs into.
    ///
    /// All its kinetic energy over all the zone. At the mouth it is some hundred times more, so a mean
    /// says how the zone is stirred, not which droplets break: for those take the jet's own width and
    /// velocity. Water that leaves with speed, or falls in from above, is not counted.
    "jet-dissipation" "Dissipation of an inlet jet in a zone"
    fn dissipation(
        q: Flow = "Q" "flow through the inlet" [GPM, L_S: 0.1 .. 500.0 in 0.0 .. 1e6];
        u: Velocity = "U" "velocity in the inlet" [FT_S, M_S: 0.1 .. 3.0 in 0.0 .. 1000.0];
        volume: Volume = "V" "volume of water in the zone" [GAL, M3: 0.1 .. 500.0 in 1e-6 .. 1e9];
    ) -> Dissipation = "epsilon" "dissipation, power per mass" [W_KG, W_KG];
    typed { q * u * u / (2.0 * volume) }
    sources [DEFINITION]
    checks [
        "q=12.6 L/s, u=0.68 m/s, volume=2 m3" => "0.00145656 W/kg", ByHand("0.0126 x 0.4624 / 4");
        "q=62.2 L/s, u=1.24 m/s, volume=10 m3" => "0.00478194 W/kg", ByHand("0.0622 x 1.5376 / 20");
        "q=2 L/s, u=1 m/s, volume=1 m3" => "0.00100000 W/kg", Limit("1 W in 1000 kg");
        "q=2 L/s, u=0 m/s, volume=1 m3" => "0 W/kg", Limit("no speed, no power");
    ]
}
