//! Formula: rise by Stokes' law from specific gravity and kinematic viscosity

use crate::formula;
use crate::page::Evidence::{ByHand, Limit, Published};
use crate::sources::{NZ_PETROLEUM, STOKES};
use stillrise_units::{G, KinematicViscosity, Length, Ratio, Velocity, ratio};

formula! {
    /// Rise velocity of a droplet in the form that metric manuals print: the same law as `stokes-rise`, with the water's
    /// density taken into specific gravity and kinematic viscosity.
    "gravity-rise" "Rise by specific gravity, Stokes"
    fn rise(
        d: Length = "D" "droplet diameter" [UM, UM: 1.0 .. 150.0 in 0.0 .. 10000.0];
        s: Ratio = "S" "specific gravity of the oil, against this water" [ONE, ONE: 0.6 .. 1.05 in 0.3 .. 2.0];
        nu: KinematicViscosity = "nu" "kinematic viscosity of the water" [CST, MM2_S: 0.4 .. 2.0 in 0.01 .. 100.0];
    ) -> Velocity = "V_t" "rise velocity" [FT_MIN, M_H];
    typed { G * d * d * (ratio(1.0) - s) / (18.0 * nu) }
    sources [NZ_PETROLEUM, STOKES]
    checks [
        "d=60 um, s=0.83, nu=1.38 mm2/s" => "0.000242 m/s", Published(&NZ_PETROLEUM, "retail site: 60 µm, 0.83, 1.38e-6 m2/s at 9 °C: 0.000242 m/s");
        "d=60 um, s=0.83, nu=1.38 mm2/s" => "0.870 m/h", Published(&NZ_PETROLEUM, "retail site, as a second text transcribes it: 0.870 m/h");
        "d=60 um, s=0.84, nu=1 mm2/s" => "0.31381 mm/s", ByHand("9.80665 x 3.6e-9 x 0.16 / (18 x 1e-6)");
        "d=60 um, s=1, nu=1 mm2/s" => "0 mm/s", Limit("oil as heavy as the water stays");
    ]
}
