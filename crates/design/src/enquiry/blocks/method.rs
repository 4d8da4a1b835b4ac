//! Methods and margins.

use crate::enquiry::fields::{Flag, Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_handbook::rain::rational_flow::RationalFactor;
use stillrise_handbook::separation::api_factor::FactorRounding;
use stillrise_handbook::separation::gap_reynolds::ReynoldsBasis;
use stillrise_handbook::separation::grit_settling::GrainShape;
use stillrise_handbook::separation::remaining_oil::RiseLaw;
use stillrise_handbook::separation::tank_removal::TankModel;
use stillrise_handbook::vessel::triggers;
use stillrise_units::catalog::{ONE, PERCENT, UM};
use stillrise_units::{Length, Ratio};

names! {
    trigger_names = triggers::TRIGGERS;
}

choice! {
    /// How the time of concentration is found.
    ConcentrationTime {
        /// as stated in the enquiry
        Stated "stated",
        /// Kirpich's formula over the longest path
        Kirpich "kirpich",
        /// the kinematic wave, with the rain table
        KinematicWave "kinematic wave",
    }
}
keys! {
    /// Methods and margins where there is a choice.
    Method "method" {
        /// Factor of the rational method
        rational: Word<RationalFactor> = spec.like("\"exact\"");
        /// How the time of concentration is found
        concentration_time: Word<ConcentrationTime> = spec.like("\"kinematic wave\"");
        /// Droplet for which the plates are sized
        droplet: Quantity<Length> = spec.units(&UM, &UM).between("5 um", "1000 um").safe_smaller().like("\"60 um\"")
            .usual("20 um", "60 um", "150 um", "60 µm is usual for plates (MIL-HDBK-1005/16, 1997); 20 µm in US guide specifications, 150 µm for API basins");
        /// Law of rise
        rise: Word<RiseLaw> = spec.like("\"drag\"");
        /// How well the tank ahead of the plates is thought to separate
        tank: Word<TankModel> = spec.like("\"mixed\"");
        /// Index of that model: tanks in series, or dispersion number
        tank_index: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.001", "1000").like("3")
            .usual("3", "3", "3", "three tanks in series, a good basin by practice; used by the models that ask for it");
        /// Whether the mesh counts in the headline
        mesh_credit: Flag = spec.like("false");
        /// Share of the droplets that touch a fibre of the mesh and stay
        mesh_sticking: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "100 %").safe_smaller().like("\"50 %\"")
            .usual("10 %", "50 %", "100 %", "engineering judgement; a value of 1 is the ideal fibre, detergents keep droplets from sticking");
        /// Share of the mesh's voids that oil fills
        mesh_saturation: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "90 %").safe_larger().like("\"15 %\"")
            .usual("5 %", "15 %", "30 %", "published tests on felt found 10 to 15 % of oil to work best");
        /// How much the oil's own viscosity resists breaking: 0 for a thin oil, the safe side
        viscosity_group: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0", "2").safe_smaller().like("0.25")
            .usual("0", "0", "0.25", "0, a thin oil, is the safe side; from memory Davies (1985) lets the tension grow by a quarter of viscosity times eddy velocity, which is 0.25 at a Weber number of one");
        /// Which rounding of the API factor
        factor: Word<FactorRounding> = spec.like("\"product\"");
        /// Basis of the gap Reynolds number
        reynolds: Word<ReynoldsBasis> = spec.like("\"hydraulic-diameter\"");
        /// Shape of grit
        grains: Word<GrainShape> = spec.like("\"natural\"");
        /// Unequal flow between the gaps of the pack, as a share of the mean
        maldistribution: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "90 %").safe_larger().like("\"20 %\"")
            .usual("10 %", "20 %", "40 %", "engineering judgement: halves of the pack at ±20 % of the mean");
        /// Plate area lost to oil and solids at the end of the interval
        fouling: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "90 %").safe_larger().like("\"20 %\"")
            .usual("10 %", "20 %", "40 %", "engineering judgement, of the size of the 20 % that UFGS 44 42 53 takes off the separation volume for stored oil and solids");
        /// Reserve of plate area that a picked unit must have
        reserve: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "300 %").safe_larger().like("\"15 %\"")
            .usual("0 %", "15 %", "30 %", "our proposal");
        /// Share of the thickest permitted layer at which the high-oil alarm stands
        alarm: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("5 %", "100 %").safe_smaller().like("\"60 %\"");
        /// Rule for pumping out
        trigger: Text = spec.named(trigger_names).like("\"en-858-2\"");
    }
}
