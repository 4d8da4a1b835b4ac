//! Formula: Eötvös number of a droplet

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::GRACE;
use stillrise_units::{Density, G, Length, Ratio, SurfaceTension};

formula! {
    /// Buoyancy of a droplet over the tension that keeps it round (Bond's number on its diameter).
    ///
    /// Below some 0.4 it is a sphere; droplets of separators have a thousandth. Recalled: clean droplets
    /// circulate above 4, for diesel a droplet of 8 mm.
    "eotvos-number" "Eötvös number of a droplet"
    fn number(
        d: Length = "d" "droplet diameter" [UM, UM: 1.0 .. 10000.0 in 0.0 .. 100000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
        sigma: SurfaceTension = "sigma" "interfacial tension" [MN_M, MN_M: 1.0 .. 60.0 in 0.001 .. 1000.0];
    ) -> Ratio = "Eo" "Eötvös number" [ONE, ONE];
    typed { G * (rho_w - rho_o) * d * d / sigma }
    sources [GRACE]
    checks [
        "d=1 mm, rho_w=1000 kg/m3, rho_o=1000 kg/m3, sigma=30 mN/m" => "0", Limit("no buoyancy");
        "d=1 mm, rho_w=1000 kg/m3, rho_o=900 kg/m3, sigma=9.80665 mN/m" => "0.1000000", Limit("g cancels: 100 x 1e-6 / 1e-3");
        "d=8 mm, rho_w=998.2072 kg/m3, rho_o=840 kg/m3, sigma=25 mN/m" => "4.0", ByHand("9.80665 x 158.2 x 6.4e-5 / 0.025 = 3.97");
    ]
}
