//! Formula: droplet that just rises at a given velocity

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::STOKES;
use stillrise_units::{Density, G, Length, Velocity, Viscosity};

formula! {
    /// Diameter whose Stokes velocity equals an overflow rate: the cut of a tank or a plate pack.
    ///
    /// Holds while that droplet obeys Stokes' law, up to some 150 µm for light oil in water at
    /// 20 °C; a larger droplet is slower than Stokes says, so the true cut is then coarser.
    /// Oil as heavy as the water has no cut.
    "stokes-cut" "Droplet that just rises at a given velocity"
    fn diameter(
        v: Velocity = "v" "rise velocity" [FT_MIN, MM_S: 0.0 .. 2.0 in -1e6 .. 1e6];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 100.0];
    ) -> Length = "d" "droplet diameter" [UM, UM];
    typed { (18.0 * mu * v / (G * (rho_w - rho_o))).sqrt() }
    sources [STOKES]
    checks [
        "v=0.3098019 mm/s, rho_w=998.2072 kg/m3, rho_o=840 kg/m3, mu=1.001596 mPa s" => "60.000 um",
            ByHand("the inverse of 9.80665 x 158.2072 x 3.6e-9 / (18 x 1.001596e-3) = 3.098019e-4 m/s");
        "v=0.35719 ft/min, rho_w=998.21 kg/m3, rho_o=850 kg/m3, mu=1.0016 cP" => "150.0 um",
            ByHand("the inverse of 0.35719 ft/min at 150 µm, from the table of rise rates at 20 °C");
        "v=0 mm/s, rho_w=1000 kg/m3, rho_o=850 kg/m3, mu=1 cP" => "0 um", Limit("what does not rise has no size");
        "v=0.3 mm/s, rho_w=1000 kg/m3, rho_o=1000 kg/m3, mu=1 cP" => "outside: result", Limit("no cut without a difference of density");
    ]
}
