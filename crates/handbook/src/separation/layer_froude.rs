//! Formula: densimetric Froude number of the water under an oil layer

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::JUDGEMENT;
use stillrise_units::math::sqrt;
use stillrise_units::{Density, G, Length, Ratio, Velocity};

/// Standard acceleration of free fall as a plain number.
const GRAVITY: f64 = G.value;

formula! {
    /// Velocity of the water under an oil layer over that of a wave along the layer's underside.
    ///
    /// For the water that dips under an oil-retaining baffle. By judgement keep it below 0.5: between that
    /// and one, the layer is drawn down and drops are torn off it. Viscous oils and emulsions hold
    /// longer, detergent lets go sooner. It tells whether the layer is carried under, not how much of it.
    "layer-froude" "Froude number of the water under an oil layer"
    fn froude(
        u: Velocity = "U" "velocity under the layer" [FT_MIN, MM_S: 1.0 .. 500.0 in 0.0 .. 1e6];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        rho_o: Density = "rho_o" "density of the oil" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 300.0 .. 2000.0];
        layer: Length = "h_o" "thickness of the oil layer" [IN, MM: 5.0 .. 1000.0 in 0.0 .. 100000.0];
    ) -> Ratio = "Fr_o" "Froude number of the layer" [ONE, ONE];
    reduced [u M_S, rho_w KG_M3, rho_o KG_M3, layer M => ONE] {
        u / sqrt(GRAVITY * (rho_w - rho_o) / rho_w * layer)
    }
    constants [GRAVITY "g"]
    sources [JUDGEMENT]
    checks [
        "u=10 mm/s, rho_w=998 kg/m3, rho_o=850 kg/m3, layer=50 mm" => "0.0370842", ByHand("independent evaluation in Python");
        "u=15 mm/s, rho_w=998 kg/m3, rho_o=850 kg/m3, layer=50 mm" => "0.0556263", ByHand("independent evaluation in Python");
        "u=0.980665 m/s, rho_w=1000 kg/m3, rho_o=900 kg/m3, layer=0.980665 m" => "1.000000", Limit("whole numbers: U = g/10, so U2 = g/10 x h");
        "u=10 mm/s, rho_w=998 kg/m3, rho_o=850 kg/m3, layer=0 mm" => "outside: result", Limit("no layer");
        "u=10 mm/s, rho_w=998 kg/m3, rho_o=1010 kg/m3, layer=50 mm" => "outside: result", Limit("heavier oil has no layer on top");
    ]
}
