//! Formula: entrance length between plates

use crate::page::Evidence::{ByHand, Limit};
use crate::sources::{DURST, SHAH_LONDON};
use crate::{choice, formula};
use stillrise_units::math::pow;
use stillrise_units::{KinematicViscosity, Length, Velocity};

const OWN: &str = "independent evaluation in Python at 20 °C";

choice! {
    /// By which published form; the two agree within 4 % at the Reynolds numbers of plate packs.
    EntranceForm {
        /// Shah and London, on the hydraulic diameter: the default
        ShahLondon "shah-london",
        /// Durst and others, on the gap
        Durst "durst",
    }
}

formula! {
    /// Length over which an even flow between wide plates takes on its parabolic profile.
    ///
    /// To within 1 % of the velocity in the middle; laminar, hydraulic-diameter Reynolds number to some
    /// 2000. Both forms are recalled. Ideal capture in a gap is the same for every profile, so
    /// this length takes nothing off `laminar-capture`; it tells where wall shear and films may be
    /// reckoned as developed. It says nothing of jets and swirl that enter a pack from a bad inlet.
    "entrance-length" "Entrance length between plates"
    fn length(
        u: Velocity = "U" "mean velocity in the gap" [FT_MIN, MM_S: 0.1 .. 50.0 in 0.0 .. 1e5];
        gap: Length = "h" "gap, square to the plates" [IN, MM: 5.0 .. 50.0 in 0.0 .. 10000.0];
        nu: KinematicViscosity = "nu" "kinematic viscosity of the water" [CST, MM2_S: 0.4 .. 2.0 in 0.01 .. 100.0];
        form: EntranceForm = "form" "published form";
    ) -> Length = "L_e" "entrance length" [IN, MM];
    reduced [u M_S, gap M, nu M2_S => M] {
        let re = u * gap / nu;
        if form == EntranceForm::ShahLondon {
            2.0 * gap * (0.315 / (1.0 + 0.0175 * (2.0 * re)) + 0.011 * (2.0 * re))
        } else {
            gap * pow(pow(0.631, 1.6) + pow(0.0442 * re, 1.6), 1.0 / 1.6)
        }
    }
    sources [SHAH_LONDON, DURST]
    checks [
        "u=5 mm/s, gap=6 mm, nu=1.003395 mm2/s, form=shah-london" => "9.74031 mm", ByHand(OWN);
        "u=5 mm/s, gap=12.7 mm, nu=1.003395 mm2/s, form=shah-london" => "37.8524 mm", ByHand(OWN);
        "u=10 mm/s, gap=12.7 mm, nu=1.003395 mm2/s, form=shah-london" => "72.2010 mm", ByHand(OWN);
        "u=20 mm/s, gap=19 mm, nu=1.003395 mm2/s, form=shah-london" => "317.445 mm", ByHand(OWN);
        "u=5 mm/s, gap=6 mm, nu=1.003395 mm2/s, form=durst" => "9.37080 mm", ByHand(OWN);
        "u=5 mm/s, gap=12.7 mm, nu=1.003395 mm2/s, form=durst" => "37.5402 mm", ByHand(OWN);
        "u=10 mm/s, gap=12.7 mm, nu=1.003395 mm2/s, form=durst" => "72.3937 mm", ByHand(OWN);
        "u=20 mm/s, gap=19 mm, nu=1.003395 mm2/s, form=durst" => "319.091 mm", ByHand(OWN);
        "u=0 mm/s, gap=10 mm, nu=1 mm2/s, form=shah-london" => "6.300 mm", Limit("creeping flow: 0.315 hydraulic diameters");
        "u=0 mm/s, gap=10 mm, nu=1 mm2/s, form=durst" => "6.310 mm", Limit("creeping flow: 0.631 gaps");
        "u=100 mm/s, gap=10 mm, nu=0.01 mm2/s, form=shah-london" => "44.000 m", Limit("inertia alone: 0.011 x 2e5 x 20 mm");
        "u=100 mm/s, gap=10 mm, nu=0.01 mm2/s, form=durst" => "44.200 m", Limit("inertia alone: 0.0442 x 1e5 x 10 mm");
    ]
}
