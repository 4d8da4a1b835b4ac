//! Formula: power of a flow lifted against a head

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Memory};
use crate::sources::DEFINITION;
use stillrise_units::{Density, Flow, G, Length, Power};

formula! {
    /// Power that a pump gives the water: weight of the flow times the head.
    ///
    /// What the shaft takes beyond it is lost in the pump, for the greater part as eddies in the water.
    "hydraulic-power" "Power of a flow lifted against a head"
    fn power(
        rho: Density = "rho" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        q: Flow = "Q" "flow" [GPM, L_S: 0.05 .. 500.0 in 0.0 .. 1e6];
        h: Length = "H" "head" [FT, M: 0.5 .. 100.0 in 0.0 .. 10000.0];
    ) -> Power = "P_h" "power given to the water" [HP, KW];
    typed { rho * G * q * h }
    sources [DEFINITION]
    checks [
        "rho=1000 kg/m3, q=1 L/s, h=1 m" => "9.80665 W", Limit("a kilogram a second, lifted by a metre");
        "rho=998 kg/m3, q=100 gpm, h=30 ft" => "564.6 W", ByHand("998 x 9.80665 x 6.30902e-3 x 9.144");
        "rho=998.2 kg/m3, q=100 gpm, h=39.6 ft" => "1.000 hp" within 2e-3 "the divisor of the rule is rounded", Memory("rule of the trade: gpm times feet over 3960");
    ]
}
