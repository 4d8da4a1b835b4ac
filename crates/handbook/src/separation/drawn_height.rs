//! Formula: height over a submerged mouth from which a lighter layer is drawn in

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{CRAYA_GARIEL, LUBIN_SPRINGER};
use stillrise_units::math::pow;
use stillrise_units::{Density, Flow, G, Length};

/// Standard acceleration of free fall as a plain number.
const GRAVITY: f64 = G.value;
/// Flow over the root of the reduced gravity and the 5/2 power of the height, at which the layer begins to be drawn in.
const CRITICAL: f64 = 2.55;

formula! {
    /// How high the interface must stand over the mouth of a pipe, so that the layer above is not yet drawn in with the water.
    ///
    /// A mouth in a wall between two still layers, steady flow: an open mouth draws from all around, and its layer is drawn
    /// in a little later. Below this height the layer dips into the mouth all at once; keep well above it.
    "drawn-height" "Height from which a submerged mouth draws the layer above"
    fn height(
        flow: Flow = "Q" "flow into the mouth" [GPM, M3_H: 0.1 .. 2000.0 in 0.0 .. 1e6];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
    ) -> Length = "h_d" "least height of the interface over the mouth" [IN, MM];
    reduced [flow M3_S, rho_w KG_M3, rho_o KG_M3 => M] {
        let reduced_gravity = GRAVITY * (rho_w - rho_o) / rho_w;
        pow(flow * flow / (CRITICAL * CRITICAL * reduced_gravity), 0.2)
    }
    constants [GRAVITY "g", CRITICAL "F_c"]
    sources [CRAYA_GARIEL, LUBIN_SPRINGER]
    checks [
        "flow=1 m3/s, rho_w=1000 kg/m3, rho_o=898.0284 kg/m3" => "0.69 m", Published(&LUBIN_SPRINGER, "h = 0.69 (Q2/g')^(1/5); the densities give g' = 1 m/s2");
        "flow=0.01 m3/s, rho_w=998 kg/m3, rho_o=850 kg/m3" => "0.1011 m", ByHand("g' = 1.45429; (1e-4 / (6.5025 x 1.45429))^0.2 = (1.0575e-5)^0.2");
        "flow=0 m3/h, rho_w=998 kg/m3, rho_o=850 kg/m3" => "0.0000 m", Limit("no flow draws nothing");
        "flow=10 m3/h, rho_w=998 kg/m3, rho_o=1010 kg/m3" => "outside: result", Limit("heavier oil has no layer on top");
    ]
}
