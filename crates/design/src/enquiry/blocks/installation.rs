//! How the unit is lifted, kept from frost, vented and protected: what shop and site have to agree on.

use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::sources::UFC_3_570_02A;
use stillrise_units::catalog::{DEG, DEG_C, DEG_F, GPM, IN, M3_H, MM, ONE, PERCENT, YR};
use stillrise_units::{Angle, Flow, Length, Ratio, Temperature, Time};

keys! {
    /// How the unit is lifted, kept from frost, vented and protected.
    InstallationBlock "installation" {
        /// Angle of the slings from the level when the empty unit is lifted
        sling_angle: Quantity<Angle> = spec.units(&DEG, &DEG).between("5 deg", "90 deg").safe_smaller().like("\"60 deg\"")
            .asks("At which angle from the level do the slings hang when the unit is lifted?")
            .usual("45 deg", "60 deg", "75 deg", "common practice");
        /// Number of lifting points
        lifting_points: Quantity<Ratio> = spec.units(&ONE, &ONE).between("2", "12").safe_smaller().like("4")
            .asks("How many lifting points has the unit?")
            .usual("2", "4", "4", "common practice");
        /// Thickness of the insulation, 0 for none
        insulation: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "20 in").safe_smaller().like("\"2 in\"");
        /// Conductivity of the insulation in W/(m K)
        conductivity: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.01", "0.5").safe_larger().like("0.04")
            .asks("What is the conductivity of the insulation, in W/(m K)?")
            .found("that of the usual insulation of the handbook");
        /// Temperature at which a heater keeps the water in frost
        kept_at: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("0 °C", "40 °C").safe_larger().like("\"41 °F\"")
            .asks("At which temperature is a heater to keep the water in frost?")
            .usual("2 °C", "5 °C", "10 °C", "common practice");
        /// Rate at which a suction truck empties the unit
        emptied_at: Quantity<Flow> = spec.units(&GPM, &M3_H).between("1 gpm", "5000 gpm").safe_larger().like("\"200 gpm\"")
            .asks("At which rate does the suction truck empty the unit?")
            .usual("100 gpm", "200 gpm", "400 gpm", "suction trucks in service, from memory");
        /// Share of the coated steel in the ground that is bare
        bare: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0.1 %", "100 %").safe_larger().like("\"2 %\"")
            .asks("How is the outside coated: at the factory and unhurt in the ground (some 2 % bare), or in the field (some 20 %)?")
            .usual_by("2 %", "20 %", "20 %", &UFC_3_570_02A);
        /// Current that protects bare steel, in mA for each square foot
        current: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.1", "20").safe_larger().like("2")
            .asks("Which current does bare steel need in this soil, in mA for each square foot?")
            .usual_by("1", "2", "3", &UFC_3_570_02A);
        /// How long the anodes are to last
        anode_life: Quantity<Time> = spec.units(&YR, &YR).between("1 yr", "100 yr").safe_larger().like("\"30 yr\"")
            .asks("How long are the anodes to last?")
            .usual("15 yr", "30 yr", "40 yr", "engineering judgement");
        /// Resistivity of the soil in ohm centimetres
        soil_resistivity: Quantity<Ratio> = spec.units(&ONE, &ONE).between("50", "1000000").safe_larger().like("5000")
            .asks("What is the resistivity of the soil, in ohm centimetres?")
            .usual("1000", "5000", "20000", "engineering judgement: clay to dry sand");
    }
}
