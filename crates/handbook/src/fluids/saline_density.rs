//! Formula: density of brackish and sea water

use crate::formula;
use crate::page::Evidence::{Library, Limit};
use crate::sources::TEOS_10;
use stillrise_units::{Density, Ratio, Temperature};

/// TEOS-10 at atmospheric pressure, where in-situ and potential temperature are the same.
fn teos_10(salinity: f64, t: f64) -> f64 {
    gsw::conversions::ct_from_pt(salinity, t)
        .and_then(|ct| gsw::volume::rho(salinity, ct, 0.0))
        .unwrap_or(f64::NAN)
}

formula! {
    /// Density of water that holds sea salt, at atmospheric pressure, by the international
    /// thermodynamic equation of seawater in its polynomial form.
    ///
    /// Salinity is the mass fraction of what is dissolved: 35 g/kg in the ocean. At zero it
    /// agrees with `water-density` within 0.0015 kg/m3. Salt makes oil rise faster, so fresh
    /// water is the careful choice, and melt water full of road salt is not. Road salt is not
    /// sea salt: a brine of sodium chloride is about as dense, but this is an estimate there.
    "saline-density" "Density of brackish and sea water"
    fn density(
        t: Temperature = "t" "temperature of the water" [DEG_F, DEG_C: 0.0 .. 40.0 in -5.0 .. 60.0];
        salinity: Ratio = "S" "salinity" [G_KG, G_KG: 0.0 .. 42.0 in 0.0 .. 120.0];
    ) -> Density = "rho_w" "density of the water" [LB_FT3, KG_M3];
    reduced [t DEG_C, salinity G_KG => KG_M3] { teos_10(salinity, t) }
    helpers [teos_10(f64, f64) "rho_TEOS10" "density by TEOS-10 at a salinity in g/kg and a temperature in °C, at zero sea pressure"]
    sources [TEOS_10]
    checks [
        "t=20 °C, salinity=35 g/kg" => "1024.6402 kg/m3", Library("gsw 3.6.23 for Python, the C code of TEOS-10");
        "t=20 °C, salinity=10 g/kg" => "1005.7585 kg/m3", Library("gsw 3.6.23 for Python, the C code of TEOS-10");
        "t=20 °C, salinity=0" => "998.2072 kg/m3" within 1.5e-6 "the polynomial is within 0.0009 kg/m3 of the fresh-water standard",
            Limit("no salt: fresh water, 998.2072 kg/m3 by IAPWS-95");
        "t=5 °C, salinity=0" => "999.9666 kg/m3" within 1.5e-6 "the polynomial is within 0.0009 kg/m3 of the fresh-water standard",
            Limit("no salt: fresh water, 999.9666 kg/m3 by IAPWS-95");
    ]
}
