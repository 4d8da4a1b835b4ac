//! Formula: stress in a flat wall under water

use super::panel::{PanelEdges, stress_factor};
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::PLATE_TABLE;
use stillrise_units::{Density, G, Length, Pressure};

const GRAVITY: f64 = G.value;

formula! {
    /// Greatest bending stress of a wall panel with water to its rim: nothing at the top, the full head at the bottom.
    ///
    /// Width is between corners or stiffeners. Welded corners lie between fixed and supported: take the larger of the
    /// two stresses. With the rim free the greatest deflection is at its middle; a rim beam changes that. The table
    /// reaches from half as wide as high to four times as wide, and lies up to 3 % low between its rows. Work empty
    /// with soil and groundwater outside, one compartment full, and the test to the rim as cases of their own.
    "wall-stress" "Stress in a flat wall under water"
    fn stress(
        edges: PanelEdges = "edges" "how its edges are held";
        width: Length = "W" "width of the panel" [IN, M: 0.2 .. 10.0 in 0.001 .. 1000.0];
        height: Length = "H" "height of the panel and of the water" [IN, M: 0.2 .. 5.0 in 0.001 .. 1000.0];
        t: Length = "t" "thickness of the plate" [IN, MM: 1.0 .. 25.0 in 0.001 .. 1000.0];
        rho: Density = "rho" "density of the liquid" [LB_FT3, KG_M3: 700.0 .. 1500.0 in 100.0 .. 20000.0];
    ) -> Pressure = "sigma" "greatest bending stress" [PSI, KPA];
    reduced [width M, height M, t M, rho KG_M3 => PA] {
        let coefficient = stress_factor(edges, width / height);
        coefficient * (rho * GRAVITY * height) * height * height / (t * t)
    }
    constants [GRAVITY "g"]
    helpers [stress_factor(PanelEdges, f64) "beta" "coefficient of the table by edges and width over height"]
    sources [PLATE_TABLE]
    checks [
        "edges=three fixed, width=120 in, height=60 in, t=0.25 in, rho=62.4 lb/ft3" => "64771 psi", ByHand("0.519 x 2.166667 x 3,600 / 0.0625");
        "edges=fixed with rim, width=120 in, height=60 in, t=0.25 in, rho=62.4 lb/ft3" => "46550 psi", ByHand("0.373 x 124,800");
        "edges=fixed with rim, width=60 in, height=60 in, t=0.25 in, rho=62.4 lb/ft3" => "25958 psi", ByHand("0.208 x 124,800");
        "edges=fixed with rim, width=30 in, height=60 in, t=0.25 in, rho=62.4 lb/ft3" => "9360 psi", ByHand("0.075 x 124,800");
        "edges=four fixed, width=4 m, height=1 m, t=100 mm, rho=1000 kg/m3" => "294.2 kPa" within 0.01 "a wall four times as wide as high is nearly a strip",
            Limit("strip fixed at both ends: p0 H2/20 over t2/6, 0.30 x 980.665");
        "edges=four supported, width=4 m, height=1 m, t=100 mm, rho=1000 kg/m3" => "377.46 kPa" within 0.015 "a wall four times as wide as high is nearly a strip",
            Limit("strip supported at both ends: p0 H2/(9 x 3^0.5) over t2/6, 0.3849 x 980.665");
        "edges=fixed with rim, width=4 m, height=1 m, t=100 mm, rho=1000 kg/m3" => "392.27 kPa" within 0.005 "a wall four times as wide as high is nearly a strip",
            Limit("strip fixed below and supported above: p0 H2/15 over t2/6, 0.40 x 980.665");
        "edges=three fixed, width=5 m, height=1 m, t=100 mm, rho=1000 kg/m3" => "outside: result", Limit("the table ends at four times the height");
    ]
}
