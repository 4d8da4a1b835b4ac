//! Formula: net force of a float up in the water

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::{Density, Force, G, Volume};

formula! {
    /// Buoyancy less weight of a float wholly in the water; positive when it floats, as it must.
    ///
    /// Should be at least twice the friction of switch and cable (a proposal of this handbook).
    "float-force-in-water" "Net force of a float up in the water"
    fn force(
        rho_f: Density = "rho_f" "density of the float" [LB_FT3, KG_M3: 700.0 .. 1050.0 in 100.0 .. 3000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        v: Volume = "V" "volume of the float" [L, L: 0.05 .. 5.0 in 0.0 .. 1000.0];
    ) -> Force = "F_w" "net force upwards in the water" [LBF, NEWTON];
    typed { (rho_w - rho_f) * G * v }
    sources [HYDROSTATICS]
    checks [
        "rho_f=0.93 g/cm3, rho_w=0.998 g/cm3, v=0.3 L" => "0.200 N", ByHand("hand arithmetic; float 0.93, 300 mL");
        "rho_f=0.998 g/cm3, rho_w=0.998 g/cm3, v=0.3 L" => "0.000000 N", Limit("a float as heavy as the water hovers");
    ]
}
