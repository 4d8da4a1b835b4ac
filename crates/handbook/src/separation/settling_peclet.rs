//! Formula: stub
use crate::formula;
use crate::page::Evidence::Limit;
use crate::sources::DEFINITION;
use stillrise_units::{Length, Velocity, KinematicViscosity, Ratio};
formula! {
    /// Stub.
    "settling-peclet" "Stub"
    fn peclet(
        v: Velocity = "v" "velocity" [FT_MIN, MM_S: 0.001 .. 50.0 in 0.0 .. 1e9];
        depth: Length = "H" "depth" [FT, M: 0.1 .. 4.0 in 0.0 .. 100.0];
        eddy: KinematicViscosity = "epsilon_y" "eddy diffusivity" [MM2_S, MM2_S: 0.001 .. 1e6 in 1e-9 .. 1e12];
    ) -> Ratio = "P" "number" [ONE, ONE];
    reduced [v M_S, depth M, eddy M2_S => ONE] { v * depth / eddy }
    sources [DEFINITION]
    checks ["v=0 mm/s, depth=1 m, eddy=1 mm2/s" => "0", Limit("none");]
}
