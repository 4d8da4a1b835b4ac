//! Formula: loss of a mesh pad, clean

use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::DAVIES;
use stillrise_units::math::pow;
use stillrise_units::{Density, Length, Ratio, Velocity, Viscosity};

use super::circle::G;

formula! {
    /// Head lost in a clean pad of fibres or knitted wire, creeping flow, Davies.
    ///
    /// Fitted to fibrous filters, of 0.6 to 30 % solids as recalled. Happel's cell theory gives 11 to 21 % more; the
    /// granular-bed law gives only a seventh to a third and is wrong here. Clean, the loss is nothing:
    /// set the alarm for five to ten times it, and count oil held in the pad.
    "mesh-loss" "Loss of a mesh pad, clean"
    fn loss(
        mu: Viscosity = "mu" "viscosity of the water" [CP, MPA_S: 0.4 .. 2.0 in 0.01 .. 1e5];
        u: Velocity = "U" "velocity on the face of the pad" [FT_MIN, MM_S: 0.0 .. 20.0 in 0.0 .. 1000.0];
        length: Length = "L" "thickness of the pad" [IN, MM: 10.0 .. 1000.0 in 0.0 .. 100000.0];
        fibre: Length = "d_f" "diameter of the fibres" [MIL, UM: 5.0 .. 600.0 in 0.1 .. 10000.0];
        solidity: Ratio = "alpha" "solid share of the pad" [PERCENT, PERCENT: 0.6 .. 30.0 in 0.0 .. 60.0];
        rho: Density = "rho" "density of the water" [LB_FT3, KG_M3: 950.0 .. 1050.0 in 500.0 .. 2000.0];
    ) -> Length = "h_f" "head lost" [IN, MM];
    reduced [mu PA_S, u M_S, length M, fibre M, solidity ONE, rho KG_M3 => M] {
        let dp = 64.0 * mu * u * length * pow(solidity, 1.5) * (1.0 + 56.0 * pow(solidity, 3.0)) / (fibre * fibre);
        dp / (rho * G)
    }
    constants [G "g"]
    sources [DAVIES]
    checks [
        "mu=1 mPa s, u=10 mm/s, length=0.15 m, fibre=150 um, solidity=0.05, rho=1000 kg/m3" => "4.9 mm", ByHand("48 Pa over 9806.65 N/m3");
        "mu=1 mPa s, u=10 mm/s, length=0.10 m, fibre=250 um, solidity=0.03, rho=1000 kg/m3" => "0.54 mm", ByHand("5.3 Pa over 9806.65 N/m3");
        "mu=1.001596 mPa s, u=0.5 mm/s, length=1 m, fibre=100 um, solidity=0.02, rho=998.2072 kg/m3" => "0.92649 mm",
            ByHand("independent evaluation in Python: 9.069475 Pa/m over 998.2072 x 9.80665");
        "mu=1.001596 mPa s, u=1 mm/s, length=1 m, fibre=150 um, solidity=0.03, rho=998.2072 kg/m3" => "1.51456 mm",
            ByHand("independent evaluation in Python: 14.826141 Pa/m over 998.2072 x 9.80665");
        "mu=1.001596 mPa s, u=10 mm/s, length=1 m, fibre=250 um, solidity=0.05, rho=998.2072 kg/m3" => "11.7960 mm",
            ByHand("independent evaluation in Python: 115.472103 Pa/m over 998.2072 x 9.80665");
        "mu=1.001596 mPa s, u=5 mm/s, length=1 m, fibre=280 um, solidity=0.03, rho=998.2072 kg/m3" => "2.17332 mm",
            ByHand("independent evaluation in Python: 21.274757 Pa/m over 998.2072 x 9.80665");
        "mu=1.001596 mPa s, u=2 mm/s, length=1 m, fibre=500 um, solidity=0.05, rho=998.2072 kg/m3" => "0.58980 mm",
            ByHand("independent evaluation in Python: 5.773605 Pa/m over 998.2072 x 9.80665");
        "mu=1 mPa s, u=10 mm/s, length=0.10 m, fibre=250 um, solidity=0, rho=1000 kg/m3" => "0.0000 mm", Limit("no fibres, no loss");
    ]
}
