//! Formula: loss of a plate pack

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::PLANE_POISEUILLE;
use stillrise_units::{Density, G, Length, Velocity, Viscosity};

formula! {
    /// Head lost in the gaps of a plate pack, laminar and developed.
    ///
    /// It is hundredths of a millimetre: a pack does not spread the flow, the baffle before it must.
    "pack-loss" "Loss of a plate pack"
    fn loss(
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 1e5];
        u: Velocity = "U" "mean velocity in the gaps" [FT_MIN, MM_S: 0.0 .. 50.0 in 0.0 .. 10000.0];
        length: Length = "L" "length of the plates" [FT, M: 0.1 .. 5.0 in 0.0 .. 1000.0];
        gap: Length = "h" "gap between the plates" [IN, MM: 5.0 .. 50.0 in 0.1 .. 1000.0];
        rho: Density = "rho" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Length = "h_f" "head lost" [IN, MM];
    typed { 12.0 * mu * u * length / (gap * gap) / (rho * G) }
    sources [PLANE_POISEUILLE]
    checks [
        "mu=1 mPa s, u=10 mm/s, length=1 m, gap=12 mm, rho=1000 kg/m3" => "0.0850 mm", ByHand("0.8333 Pa over 9806.65 N/m3");
        "mu=1 mPa s, u=10 mm/s, length=1 m, gap=12 mm, rho=1000 kg/m3" => "0.08498 mm",
            Limit("as a duct: 96/Re with Re 240 on twice the gap, 0.4 x 1/0.024 x 5.0986e-6 m");
        "mu=1 mPa s, u=10 mm/s, length=0 m, gap=12 mm, rho=1000 kg/m3" => "0.0000 mm", Limit("no plates, no loss");
    ]
}
