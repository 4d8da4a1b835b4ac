//! Formula: dissipation of a lost head in a zone

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DEFINITION;
use stillrise_units::{Dissipation, Flow, G, Length, Volume};

formula! {
    /// Mean power per mass of water that a baffle, a weir or a fitting leaves in the zone behind it.
    ///
    /// Its head loss times the flow's weight, over the mass of the zone. The jets of a baffle spend it within some
    /// spacings of its holes, so that it is many times more there and little beyond.
    "loss-dissipation" "Dissipation of a lost head in a zone"
    fn dissipation(
        h: Length = "h" "head lost" [IN, MM: 0.01 .. 1000.0 in 0.0 .. 1e6];
        q: Flow = "Q" "flow" [GPM, L_S: 0.01 .. 500.0 in 0.0 .. 1e6];
        volume: Volume = "V" "volume of water in the zone" [GAL, M3: 0.05 .. 500.0 in 1e-6 .. 1e9];
    ) -> Dissipation = "epsilon" "dissipation, power per mass" [W_KG, W_KG];
    typed { G * h * q / volume }
    sources [DEFINITION]
    checks [
        "h=1 m, q=1 L/s, volume=1 m3" => "0.00980665 W/kg", Limit("9.80665 W in a tonne");
        "h=10 mm, q=5 L/s, volume=2 m3" => "0.000245166 W/kg", ByHand("9.80665 x 0.01 x 0.005 / 2");
        "h=0 mm, q=5 L/s, volume=2 m3" => "0 W/kg", Limit("nothing lost");
    ]
}
