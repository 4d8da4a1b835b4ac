//! Formula: stub
use crate::formula;
use crate::page::Evidence::Limit;
use crate::sources::DEFINITION;
use stillrise_units::{Length, Velocity, KinematicViscosity};
formula! {
    /// Stub.
    "camp-eddy" "Stub"
    fn diffusivity(
        u: Velocity = "U" "velocity" [FT_MIN, MM_S: 0.1 .. 500.0 in 0.0 .. 1e6];
        depth: Length = "H" "depth" [FT, M: 0.1 .. 4.0 in 0.0 .. 100.0];
    ) -> KinematicViscosity = "epsilon_y" "eddy diffusivity" [MM2_S, MM2_S];
    reduced [u M_S, depth M => MM2_S] { 4108.0 * u * depth }
    sources [DEFINITION]
    checks ["u=0 mm/s, depth=1 m" => "0 mm2/s", Limit("none");]
}
