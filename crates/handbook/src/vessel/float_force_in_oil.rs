//! Formula: net force of a float down in the oil

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::{Density, Force, G, Volume};

formula! {
    /// Weight less buoyancy of a float wholly in the oil; positive when it sinks, as it must.
    ///
    /// Should be at least twice the friction of switch and cable (a proposal of this handbook). Negative:
    /// the float stays on the oil and the alarm never trips.
    "float-force-in-oil" "Net force of a float down in the oil"
    fn force(
        rho_f: Density = "rho_f" "density of the float" [LB_FT3, KG_M3: 700.0 .. 1050.0 in 100.0 .. 3000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        v: Volume = "V" "volume of the float" [L, L: 0.05 .. 5.0 in 0.0 .. 1000.0];
    ) -> Force = "F_o" "net force downwards in the oil" [LBF, NEWTON];
    typed { (rho_f - rho_o) * G * v }
    sources [HYDROSTATICS]
    checks [
        "rho_f=0.93 g/cm3, rho_o=0.74 g/cm3, v=0.3 L" => "0.559 N", ByHand("hand arithmetic; float 0.93, 300 mL");
        "rho_f=0.93 g/cm3, rho_o=0.85 g/cm3, v=0.3 L" => "0.235 N", ByHand("hand arithmetic; float 0.93, 300 mL");
        "rho_f=0.93 g/cm3, rho_o=0.90 g/cm3, v=0.3 L" => "0.088 N", ByHand("hand arithmetic; float 0.93, 300 mL");
        "rho_f=0.93 g/cm3, rho_o=0.92 g/cm3, v=0.3 L" => "0.029 N", ByHand("hand arithmetic; float 0.93, 300 mL");
        "rho_f=0.93 g/cm3, rho_o=0.95 g/cm3, v=0.3 L" => "-0.059 N", ByHand("hand arithmetic; float 0.93, 300 mL");
        "rho_f=0.85 g/cm3, rho_o=0.85 g/cm3, v=0.3 L" => "0.000000 N", Limit("a float as heavy as the oil hovers");
    ]
}
