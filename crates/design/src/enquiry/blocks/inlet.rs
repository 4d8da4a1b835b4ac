//! How the water reaches the unit.

use crate::enquiry::fields::{Flag, Quantities, Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_handbook::separation::pumps;
use stillrise_units::catalog::{FT, FT2, GAL, GPM, HP, IN, KW, M, M2, M3, M3_H, MM, ONE, PERCENT, RPM, W_KG};
use stillrise_units::{Area, Dissipation, Flow, Length, Power, Ratio, ShearRate, Volume};

names! {
    pump_names = pumps::PUMPS;
}

choice! {
    /// How the water reaches the unit.
    Feed {
        /// by gravity
        Gravity "gravity",
        /// by pump
        Pump "pump",
    }
}
/// What stands in for what is not said of a pump with an impeller, wherever it stands.
pub(in crate::enquiry) const EFFICIENCY: [&str; 4] = [
    "25 %",
    "50 %",
    "75 %",
    "from memory: small sump pumps turn some half of the shaft's power into head, less away from their best point",
];
pub(in crate::enquiry) const HEAD_COEFFICIENT: [&str; 4] =
    ["0.4", "0.5", "0.6", "from memory: radial impellers at their best point"];
pub(in crate::enquiry) const IMPELLER_WIDTH: [&str; 4] =
    ["5 %", "10 %", "25 %", "engineering judgement: open and vortex impellers of sump pumps"];

keys! {
    /// How the water reaches the unit.
    Inlet "inlet" {
        /// By gravity or by pump
        feed: Word<Feed> = spec.like("\"gravity\"");
        /// Kind of pump
        pump: Text = spec.named(pump_names).like("\"diaphragm\"")
            .asks("Which pump lifts the water to the separator?")
            .found("the centrifugal pump of most sumps");
        /// Power its shaft takes while it runs
        pump_power: Quantity<Power> = spec.units(&HP, &KW).between("1 W", "10000 kW").safe_larger().like("\"1.5 hp\"");
        /// Head it works against
        pump_head: Quantity<Length> = spec.units(&FT, &M).between("0.1 m", "1000 m").safe_larger().like("\"20 ft\"");
        /// Speed it turns at
        pump_speed: Quantity<ShearRate> = spec.units(&RPM, &RPM).between("10 rpm", "30000 rpm").safe_larger().like("\"1750 rpm\"")
            .asks("How fast does the {name} turn, and how large is its impeller?")
            .found("that of a motor of two poles on the mains of the place");
        /// Diameter of its impeller
        impeller: Quantity<Length> = spec.units(&IN, &MM).between("5 mm", "5000 mm").safe_smaller().like("\"6 in\"");
        /// Width of its impeller over the diameter
        impeller_width: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("1 %", "150 %").safe_smaller().like("\"10 %\"").usually(IMPELLER_WIDTH);
        /// Share of the shaft's power that becomes head
        efficiency: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("1 %", "95 %").safe_smaller().like("\"50 %\"").usually(EFFICIENCY);
        /// Head over the square of its tip speed
        head_coefficient: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.05", "1.2").like("0.5").usually(HEAD_COEFFICIENT);
        /// Power dissipated where it breaks the droplets, in place of all that is said of the pump above
        dissipation: Quantity<Dissipation> = spec.units(&W_KG, &W_KG).between("0.000001 W/kg", "10000000 W/kg").safe_larger().like("\"100 W/kg\"")
            .asks("May we have the pump's curve or name plate, with flow, head, power and speed, which show how hard it breaks the oil?")
            .found("by the kind of pump, from the handbook");
        /// Rate of each pump, one entry a pump; two statements about one pump stand in brackets of their own: [[.., ..]]
        rate: Quantities<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "100000 gpm").safe_larger().like("[\"60 gpm\", \"60 gpm\"]");
        /// Whether the pumps can run at once
        together: Flag = spec.safe_larger().like("true")
            .asks("Can the pumps run at the same time, or is one a standby?")
            .found("yes");
        /// Whether an interlock keeps a second pump from starting beside the first
        interlocked: Flag = spec.safe_smaller().like("true")
            .asks("Does an interlock keep the second pump from starting beside the first, or only a level or a schedule?")
            .found("yes, where it was said that they cannot run together");
        /// Water in the sump between start and stop level of the lead pump
        sump_volume: Quantity<Volume> = spec.units(&GAL, &M3).between("0.1 gal", "1000000 gal").safe_smaller().like("\"150 gal\"");
        /// Level at which the lead pump starts, in place of that volume, in the site's datum
        start_level: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").safe_smaller().like("\"95.0 ft\"");
        /// Level at which it stops
        stop_level: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").safe_larger().like("\"93.5 ft\"");
        /// Surface of the sump between these levels
        sump_area: Quantity<Area> = spec.units(&FT2, &M2).between("0.1 ft2", "100000 ft2").safe_smaller().like("\"16 ft2\"");
        /// Peak over mean flow of a pulsating pump
        pulsation: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "5").safe_larger().like("1.6")
            .asks("How far does the pump's flow pulsate, and is there a damper?")
            .found("by the kind of pump, from the handbook");
        /// Invert of the incoming pipe, in the site's datum
        invert: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").safe_smaller().like("\"98.40 ft\"");
    }
}
