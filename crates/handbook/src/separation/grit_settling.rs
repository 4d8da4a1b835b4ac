//! Formula: settling of a grain of sand

use crate::page::Evidence::{ByHand, Limit};
use crate::sources::FERGUSON_CHURCH;
use crate::{choice, formula};
use stillrise_units::{Density, G, KinematicViscosity, Length, Velocity};

choice! {
    /// Which grains, and which diameter of them is meant.
    GrainShape {
        /// natural sand and grit by sieve diameter (18, 1.0): the default
        Natural "natural",
        /// smooth spheres (18, 0.4)
        Sphere "sphere",
        /// natural grains by nominal diameter (20, 1.1)
        Nominal "nominal",
        /// very angular grains (24, 1.2); this pair from memory
        Angular "angular",
    }
}

formula! {
    /// Settling velocity of one grain in still water, from silt to gravel.
    ///
    /// For small grains it becomes Stokes' law, for large ones a constant drag coefficient. Natural
    /// grains of 0.5 mm settle 25 % slower than spheres by this formula; and its spheres are up to
    /// 24 % too fast near 0.5 mm, where `drag-rise` is the better law of a true sphere. Grains
    /// lighter than water have no answer.
    "grit-settling" "Settling of a grain of sand"
    fn settling(
        d: Length = "d" "grain diameter" [UM, UM: 10.0 .. 10000.0 in 0.0 .. 100000.0];
        rho_s: Density = "rho_s" "density of the grain" [LB_FT3, KG_M3: 1050.0 .. 3000.0 in 500.0 .. 20000.0];
        rho_w: Density = "rho_w" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
        nu: KinematicViscosity = "nu" "kinematic viscosity of the water" [CST, MM2_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        shape: GrainShape = "shape" "kind of grain";
    ) -> Velocity = "w" "settling velocity" [FT_MIN, MM_S];
    typed {
        let c_1 = if shape == GrainShape::Nominal { 20.0 } else if shape == GrainShape::Angular { 24.0 } else { 18.0 };
        let c_2 = if shape == GrainShape::Sphere { 0.4 } else if shape == GrainShape::Natural { 1.0 }
            else if shape == GrainShape::Nominal { 1.1 } else { 1.2 };
        let r = (rho_s - rho_w) / rho_w;
        r * G * d * d / (c_1 * nu + (0.75 * c_2 * r * G * d * d * d).sqrt())
    }
    sources [FERGUSON_CHURCH]
    checks [
        "d=1 um, rho_s=2650 kg/m3, rho_w=1000 kg/m3, nu=1 mm2/s, shape=natural" => "0.000899 mm/s",
            Limit("Stokes' law for a small grain: 1.65 x 9.80665 x 1e-12 / 18e-6 m/s");
        "d=100 mm, rho_s=2650 kg/m3, rho_w=1000 kg/m3, nu=0.01 mm2/s, shape=sphere" => "2322 mm/s",
            Limit("constant drag for a large grain: sqrt(1.65 x 9.80665 x 0.1 / 0.3) m/s");
        "d=500 um, rho_s=1000 kg/m3, rho_w=1000 kg/m3, nu=1 mm2/s, shape=angular" => "0 mm/s", Limit("no weight in water");
        "d=500 um, rho_s=2650 kg/m3, rho_w=1000 kg/m3, nu=1 mm2/s, shape=natural" => "71.0496 mm/s"
            within 4e-4 "evaluated with g = 9.81 m/s2",
            ByHand("independent evaluation in Python");
    ]
}
