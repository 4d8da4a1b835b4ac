//! Formula: capillary length

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Memory};
use crate::sources::DEFINITION;
use stillrise_units::math::{abs, sqrt};
use stillrise_units::{Density, G, Length, SurfaceTension};

/// Standard acceleration of free fall as a plain number.
const GRAVITY: f64 = G.value;

formula! {
    /// Length at which interfacial tension and buoyancy hold each other: the size of the drops that
    /// oil forms as it leaves the edge of a plate or a fibre mat.
    ///
    /// A scale, good to a factor of two; what leaves an edge depends on its shape and on the water
    /// that runs past. Millimetres, which rise at once, unless something behind the pack breaks
    /// them up again (`hinze-droplet`). Tension: 20 to 30 mN/m clean, 1 to 5 with detergent.
    "capillary-length" "Capillary length"
    fn length(
        sigma: SurfaceTension = "sigma" "interfacial tension" [MN_M, MN_M: 1.0 .. 50.0 in 0.0 .. 1000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 0.0 .. 2000.0];
    ) -> Length = "l_c" "capillary length" [IN, MM];
    reduced [sigma N_M, rho_w KG_M3, rho_o KG_M3 => M] { sqrt(sigma / (abs(rho_w - rho_o) * GRAVITY)) }
    constants [GRAVITY "g"]
    sources [DEFINITION]
    checks [
        "sigma=20 mN/m, rho_w=998 kg/m3, rho_o=850 kg/m3" => "3.71214 mm", ByHand("independent evaluation in Python");
        "sigma=72.8 mN/m, rho_w=998 kg/m3, rho_o=0 kg/m3" => "2.7 mm", Memory("the capillary length of water under air that textbooks quote");
        "sigma=9.80665 mN/m, rho_w=2000 kg/m3, rho_o=1000 kg/m3" => "1.000000 mm", Limit("whole numbers");
        "sigma=9.80665 mN/m, rho_w=1000 kg/m3, rho_o=2000 kg/m3" => "1.000000 mm", Limit("heavier oil hangs as lighter oil stands");
        "sigma=20 mN/m, rho_w=1000 kg/m3, rho_o=1000 kg/m3" => "outside: result", Limit("without buoyancy nothing bounds a drop");
    ]
}
