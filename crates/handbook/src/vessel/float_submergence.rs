//! Formula: share of an interface float in the water

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::HYDROSTATICS;
use stillrise_units::{Density, Ratio};

formula! {
    /// How much of a weighted float that straddles the interface hangs in the water.
    ///
    /// Between 0 and 1 the float rides on the interface. At 0 or below it floats on the oil and the alarm
    /// never trips; above 1 it sinks in the water too. The heaviest oil and the lightest water decide.
    "float-submergence" "Share of an interface float in the water"
    fn share(
        rho_f: Density = "rho_f" "density of the float" [LB_FT3, KG_M3: 700.0 .. 1050.0 in 100.0 .. 3000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Ratio = "f_w" "share of the float in the water" [ONE, ONE];
    typed { (rho_f - rho_o) / (rho_w - rho_o) }
    sources [HYDROSTATICS]
    checks [
        "rho_f=0.93 g/cm3, rho_o=0.74 g/cm3, rho_w=0.998 g/cm3" => "0.736", ByHand("hand arithmetic; float 0.93, water 0.998");
        "rho_f=0.93 g/cm3, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "0.541", ByHand("hand arithmetic; float 0.93, water 0.998");
        "rho_f=0.93 g/cm3, rho_o=0.90 g/cm3, rho_w=0.998 g/cm3" => "0.306", ByHand("hand arithmetic; float 0.93, water 0.998");
        "rho_f=0.93 g/cm3, rho_o=0.92 g/cm3, rho_w=0.998 g/cm3" => "0.128", ByHand("hand arithmetic; float 0.93, water 0.998");
        "rho_f=0.998 g/cm3, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "1.000000",
            Limit("a float as heavy as the water is all in it");
        "rho_f=0.85 g/cm3, rho_o=0.85 g/cm3, rho_w=0.998 g/cm3" => "0.000000",
            Limit("a float as heavy as the oil is all in the oil");
        "rho_f=0.93 g/cm3, rho_o=1 g/cm3, rho_w=1 g/cm3" => "outside: result",
            Limit("without a difference of density there is no interface to ride on");
    ]
}
