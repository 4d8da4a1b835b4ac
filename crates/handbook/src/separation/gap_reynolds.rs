//! Formula: Reynolds number in the gap between plates

use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{API_421, DEFINITION};
use crate::{choice, formula};
use stillrise_units::{KinematicViscosity, Length, Ratio, Velocity};

choice! {
    /// On which length the Reynolds number is formed; the limit means nothing without it.
    ReynoldsBasis {
        /// four times the hydraulic radius, twice the gap: the default
        HydraulicDiameter "hydraulic-diameter",
        /// the hydraulic radius itself, half the gap: four times smaller
        HydraulicRadius "hydraulic-radius",
    }
}

formula! {
    /// Reynolds number of the flow between wide plates, hydraulic radius half the gap.
    ///
    /// Manuals ask for less than 500 and rarely say on which length; on the hydraulic diameter the
    /// flow is laminar to some 2000. Print the basis with the number. Warm water governs.
    "gap-reynolds" "Reynolds number in the gap between plates"
    fn reynolds(
        u: Velocity = "U" "mean velocity in the gap" [FT_MIN, MM_S: 0.1 .. 50.0 in 0.0 .. 1e5];
        gap: Length = "h" "gap, square to the plates" [IN, MM: 5.0 .. 50.0 in 0.0 .. 10000.0];
        nu: KinematicViscosity = "nu" "kinematic viscosity of the water" [CST, MM2_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        basis: ReynoldsBasis = "basis" "length of the Reynolds number";
    ) -> Ratio = "Re" "Reynolds number" [ONE, ONE];
    typed {
        let r_h = gap / 2.0;
        if basis == ReynoldsBasis::HydraulicDiameter { 4.0 * r_h * u / nu } else { r_h * u / nu }
    }
    sources [DEFINITION, API_421]
    checks [
        "u=0.016977 m/s, gap=0.75 in, nu=1.3073922 mm2/s, basis=hydraulic-diameter" => "494.8"
            within 2e-4 "evaluated with more digits of the viscosity",
            ByHand("100 gpm through 4 ft2 of 3/4 in gaps at 10 °C");
        "u=10 mm/s, gap=20 mm, nu=1 mm2/s, basis=hydraulic-diameter" => "400", Limit("twice the gap: 10 x 40 / 1");
        "u=10 mm/s, gap=20 mm, nu=1 mm2/s, basis=hydraulic-radius" => "100", Limit("half the gap: 10 x 10 / 1");
    ]
}
