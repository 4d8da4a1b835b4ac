//! Formula: drag coefficient of a grain that is no sphere

use crate::formula;
use crate::page::Evidence::{ByHand, Library, Limit};
use crate::sources::HAIDER_LEVENSPIEL;
use stillrise_units::Ratio;
use stillrise_units::math::{exp, pow};

formula! {
    /// Drag coefficient of a grain by its sphericity, on the sphere of its volume, Haider and Levenspiel.
    ///
    /// Sphericity is the surface of the sphere of equal volume over the grain's: a cube has 0.806, an
    /// octahedron 0.85, crushed sand some 0.7 to 0.8. At 1 the fit exceeds the sphere's own by 0.06 % in
    /// creeping flow, 2 % at a Reynolds number of 10 and 5 % at 100: take `sphere-drag` there.
    "nonspherical-drag" "Drag coefficient of a grain that is no sphere"
    fn coefficient(
        re: Ratio = "Re" "Reynolds number on the sphere of equal volume" [ONE, ONE: 0.01 .. 25000.0 in 1e-9 .. 2e5];
        sphericity: Ratio = "phi" "sphericity of the grain" [ONE, ONE: 0.6 .. 1.0 in 0.02 .. 1.0];
    ) -> Ratio = "C_d" "drag coefficient" [ONE, ONE];
    reduced [re ONE, sphericity ONE => ONE] {
        let a = exp(2.3288 - 6.4581 * sphericity + 2.4486 * pow(sphericity, 2.0));
        let b = 0.0964 + 0.5565 * sphericity;
        let c = exp(4.905 - 13.8944 * sphericity + 18.4222 * pow(sphericity, 2.0) - 10.2599 * pow(sphericity, 3.0));
        let d = exp(1.4681 + 12.2584 * sphericity - 20.7322 * pow(sphericity, 2.0) + 15.8855 * pow(sphericity, 3.0));
        24.0 / re * (1.0 + a * pow(re, b)) + c / (1.0 + d / re)
    }
    sources [HAIDER_LEVENSPIEL]
    checks [
        "re=10, sphericity=1" => "4.31853" within 0.022 "the general fit and the sphere's own differ by 2 % there",
            Library("fluids 1.3.1, drag.Haider_Levenspiel, spheres");
        "re=0.000001, sphericity=0.8" => "24000000" within 1e-3 "Stokes' law at a vanishing Reynolds number", Limit("24 over the Reynolds number");
        "re=1, sphericity=0.806" => "30.637514", ByHand("independent evaluation in Python");
    ]
}
