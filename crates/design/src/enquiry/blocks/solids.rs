//! Solids and sludge.

use crate::enquiry::fields::Curve;
use crate::enquiry::keys::{Quantity, keys};
use stillrise_units::catalog::{KG_M3, LB_FT3, ONE, PERCENT, UM};
use stillrise_units::{Density, Length, Ratio};

keys! {
    /// Solids and sludge.
    Solids "solids" {
        /// Median size of the grains
        d50: Quantity<Length> = spec.units(&UM, &UM).between("0.1 um", "20000 um").safe_larger().like("\"100 um\"")
            .asks("How fine are the solids?")
            .usual("20 um", "60 um", "200 um", "engineering judgement: silt to fine sand off paved yards");
        /// Density of the grains
        density: Quantity<Density> = spec.units(&LB_FT3, &KG_M3).between("1010 kg/m3", "8000 kg/m3").like("\"2650 kg/m3\"")
            .asks("What are the solids made of?")
            .usual("1200 kg/m3", "2650 kg/m3", "2650 kg/m3", "quartz; the low end for organic or oil-coated solids");
        /// Geometric standard deviation of the sizes, by mass
        spread: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1.01", "20").like("2.5")
            .usual("1.5", "2.5", "4", "engineering judgement: graded silt and sand");
        /// Sieved: size, and share of the mass that is finer; in place of d50 and spread
        table: Curve = spec.like("[\"20 um: 15 %\", \"63 um: 55 %\", \"250 um: 100 %\"]");
        /// Oil that clings to the grains, as a share of the mass of both
        oil: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "95 %").safe_larger().like("\"10 %\"");
        /// Dry solids in settled sludge, by mass
        in_sludge: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("1 %", "90 %").safe_smaller().like("\"20 %\"")
            .asks("How thick does the sludge settle?")
            .usual("10 %", "20 %", "40 %", "engineering judgement");
        /// Density of settled sludge
        sludge_density: Quantity<Density> = spec.units(&LB_FT3, &KG_M3).between("1000 kg/m3", "2500 kg/m3").like("\"1100 kg/m3\"")
            .asks("How heavy is the settled sludge?")
            .usual("1041 kg/m3", "1121 kg/m3", "1201 kg/m3", "from memory: {65 to 75 lb/ft3|1040 to 1200 kg/m3} wet");
    }
}
