//! Formula: pressure across a metering orifice

use super::orifice_plate_coefficient::{OrificeTaps, coefficient};
use crate::formula;
use crate::page::Evidence::{ByHand, Limit};
use crate::sources::ISO_5167;
use core::f64::consts::PI;
use stillrise_units::math::{pow, sqrt};
use stillrise_units::{Density, Length, MassRate, Pressure, Ratio, Typed, Viscosity, ratio};

/// The coefficient of `orifice-plate-coefficient`, the bore of the pipe in metres.
fn coefficient_of(re: f64, beta: f64, d: f64, taps: OrificeTaps) -> f64 {
    coefficient(ratio(re), ratio(beta), Length::from_si(d), taps).map_or(f64::NAN, Typed::si)
}

formula! {
    /// Difference of pressure at the taps of a sharp-edged metering plate, ISO 5167.
    ///
    /// Not the loss: much of it comes back behind the plate. For water the expansibility is 1. A library that
    /// solves the same relation takes the plate's expansibility for a gas (exponent 1.33) even for water,
    /// where it prints 1.3 to 3.1 % more; its values are checked with that factor.
    "orifice-plate-pressure" "Pressure across a metering orifice"
    fn pressure(
        m: MassRate = "m" "mass flow" [LB_D, KG_S: 0.01 .. 1000.0 in 0.0 .. 1e6];
        d: Length = "D" "inside diameter of the pipe" [IN, MM: 50.0 .. 1000.0 in 10.0 .. 5000.0];
        bore: Length = "d" "bore of the plate" [IN, MM: 12.5 .. 750.0 in 0.1 .. 5000.0];
        rho: Density = "rho" "density of the fluid" [LB_FT3, KG_M3: 600.0 .. 1050.0 in 0.1 .. 2000.0];
        mu: Viscosity = "mu" "viscosity of the fluid" [CP, MPA_S: 0.3 .. 100.0 in 0.001 .. 1e5];
        taps: OrificeTaps = "taps" "where the pressure is tapped";
        expansibility: Ratio = "epsilon" "expansibility of the fluid, 1 for liquids" [ONE, ONE: 0.75 .. 1.0 in 0.1 .. 1.0];
    ) -> Pressure = "dp" "difference of pressure" [PSI, PA];
    reduced [m KG_S, d M, bore M, rho KG_M3, mu PA_S, expansibility ONE => PA] {
        let beta = bore / d;
        let re = 4.0 * m / (PI * mu * d);
        let c = coefficient_of(re, beta, d, taps);
        let area = PI * pow(bore, 2.0) / 4.0;
        pow(m * sqrt(1.0 - pow(beta, 4.0)) / (c * expansibility * area), 2.0) / (2.0 * rho)
    }
    helpers [coefficient_of(f64, f64, f64, OrificeTaps) "C" "coefficient, `orifice-plate-coefficient`"]
    sources [ISO_5167]
    checks [
        "m=5 kg/s, d=0.10226 m, bore=0.05 m, rho=998.2072 kg/m3, mu=1.0016 mPa s, taps=d-and-half, expansibility=1" => "8317.053 Pa",
            ByHand("with the coefficient 0.6068063 of fluids 1.3.1");
        "m=15 kg/s, d=0.15405 m, bore=0.09 m, rho=998.2072 kg/m3, mu=1.0016 mPa s, taps=d-and-half, expansibility=1" => "6607.401 Pa",
            ByHand("with the coefficient 0.6102097 of fluids 1.3.1");
        "m=40 kg/s, d=0.20272 m, bore=0.12 m, rho=998.2072 kg/m3, mu=1.0016 mPa s, taps=d-and-half, expansibility=1" => "14826.98 Pa",
            ByHand("with the coefficient 0.6088487 of fluids 1.3.1");
        "m=0 kg/s, d=0.1 m, bore=0.05 m, rho=1000 kg/m3, mu=1 mPa s, taps=corner, expansibility=1" => "outside: result", Limit("no flow has no Reynolds number");
        "m=5 kg/s, d=0.1 m, bore=0.11 m, rho=1000 kg/m3, mu=1 mPa s, taps=corner, expansibility=1" => "outside: result", Limit("no plate with a bore wider than its pipe");
    ]
}
