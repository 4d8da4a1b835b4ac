//! Formula: Reynolds number of a full pipe

use crate::formula;
use crate::page::Evidence::Library;
use crate::sources::DARCY;
use stillrise_units::{KinematicViscosity, Length, Ratio, Velocity};

formula! {
    /// Ratio of inertia to viscosity in a full pipe: below 2300 the flow is laminar.
    "pipe-reynolds" "Reynolds number of a full pipe"
    fn reynolds(
        v: Velocity = "V" "mean velocity" [FT_S, M_S: 0.0 .. 5.0 in 0.0 .. 100.0];
        d: Length = "D" "inside diameter" [IN, MM: 10.0 .. 1500.0 in 0.0 .. 20000.0];
        nu: KinematicViscosity = "nu" "kinematic viscosity" [CST, MM2_S: 0.3 .. 2000.0 in 1e-3 .. 1e6];
    ) -> Ratio = "Re" "Reynolds number" [ONE, ONE];
    typed { v * d / nu }
    sources [DARCY]
    checks [
        "v=2.5 m/s, d=0.25 m, nu=16.36 mm2/s" => "38202.934", Library("fluids 1.3.1, Reynolds");
    ]
}
