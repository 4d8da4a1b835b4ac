//! Formula: deflection of a flat wall under water

use super::panel::{PanelEdges, deflection_factor};
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::PLATE_TABLE;
use stillrise_units::{Density, G, Length, Pressure};

const GRAVITY: f64 = G.value;

formula! {
    /// Greatest deflection of a wall panel with water to its rim.
    ///
    /// By the theory of small deflections: beyond half the thickness the plate also carries by tension, and deflects and
    /// bends less than this says. Between the rows of the table it lies up to 16 % high, and at most 3 % low. A
    /// limit of a two-hundredth of the width, or of the thickness, is a proposal of this handbook. Where the rim is free,
    /// take the supported case.
    "wall-deflection" "Deflection of a flat wall under water"
    fn deflection(
        edges: PanelEdges = "edges" "how its edges are held";
        width: Length = "W" "width of the panel" [IN, M: 0.2 .. 10.0 in 0.001 .. 1000.0];
        height: Length = "H" "height of the panel and of the water" [IN, M: 0.2 .. 5.0 in 0.001 .. 1000.0];
        t: Length = "t" "thickness of the plate" [IN, MM: 1.0 .. 25.0 in 0.001 .. 1000.0];
        rho: Density = "rho" "density of the liquid" [LB_FT3, KG_M3: 700.0 .. 1500.0 in 100.0 .. 20000.0];
        e: Pressure = "E" "modulus of elasticity" [PSI, KPA: 5e6 .. 2.2e8 in 1.0 .. 1e9];
    ) -> Length = "w" "greatest deflection" [IN, MM];
    reduced [width M, height M, t M, rho KG_M3, e PA => M] {
        let coefficient = deflection_factor(edges, width / height);
        coefficient * (rho * GRAVITY * height) * height * height * height * height / (e * t * t * t)
    }
    constants [GRAVITY "g"]
    helpers [deflection_factor(PanelEdges, f64) "alpha" "coefficient of the table by edges and width over height"]
    sources [PLATE_TABLE]
    checks [
        "edges=three fixed, width=120 in, height=60 in, t=0.25 in, rho=62.4 lb/ft3, e=29000000 psi" => "5.53 in",
            ByHand("0.0893 x 2.166667 x 60^4 / (29e6 x 0.015625) = 0.0893 x 61.970");
        "edges=fixed with rim, width=120 in, height=60 in, t=0.25 in, rho=62.4 lb/ft3, e=29000000 psi" => "1.394 in", ByHand("0.0225 x 61.970");
        "edges=fixed with rim, width=30 in, height=60 in, t=0.25 in, rho=62.4 lb/ft3, e=29000000 psi" => "0.06197 in", ByHand("0.0010 x 61.970");
        "edges=four fixed, width=4 m, height=1 m, t=100 mm, rho=1000 kg/m3, e=9806.65 kPa" => "14.29 mm" within 0.01 "a wall four times as wide as high is nearly a strip",
            Limit("strip fixed at both ends under a triangle: 0.0013085 p0 H4/D, D = E t3/10.92");
        "edges=four supported, width=5 m, height=1 m, t=100 mm, rho=1000 kg/m3, e=9806.65 kPa" => "outside: result", Limit("the table ends at four times the height");
    ]
}
