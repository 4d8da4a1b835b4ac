//! Formula: volume of a mass of oil

use crate::formula;
use crate::page::Evidence::{Limit, Published};
use crate::sources::IEEE_980;
use stillrise_units::{Density, Mass, Volume};

formula! {
    /// Volume of the oil whose mass a nameplate states. The warmest, lightest oil takes most room.
    "oil-mass-volume" "Volume of a mass of oil"
    fn volume(
        mass: Mass = "m" "mass of oil" [LB, KG: 0.0 .. 200000.0 in 0.0 .. 1e9];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1000.0 in 300.0 .. 2000.0];
    ) -> Volume = "V" "volume of oil" [GAL, M3];
    typed { mass / rho_o }
    sources [IEEE_980]
    checks [
        "mass=50000 kg, rho_o=833 kg/m3" => "60 m3", Published(&IEEE_980, "50,000 kg of oil at 833 kg/m3");
        "mass=1000 kg, rho_o=1000 kg/m3" => "1.0000000 m3", Limit("definition of the density");
    ]
}
