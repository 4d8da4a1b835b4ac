//! The place.

use crate::enquiry::fields::{Flag, Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_handbook::ground::flotation;
use stillrise_units::catalog::{DEG_C, DEG_F, FT, FT3, KG, LB, M, M3};
use stillrise_units::{Length, Mass, Temperature, Volume};

choice! {
    /// How several units stand to one another.
    Arrangement {
        /// next to one another, across the flow
        SideBySide "side by side",
        /// one behind the other, along the flow
        InLine "in line",
    }
}
names! {
    flotation_factors = flotation::FACTORS;
    soil_methods = flotation::METHODS;
}
/// When the cover is asked for and the depth of frost is known.
pub const FROST_KNOWN: &str = "the depth of frost is known";

keys! {
    /// The place.
    Site "site" {
        /// Ground at the unit, in the site's datum
        ground: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").like("\"100.0 ft\"");
        /// Groundwater at its highest, in the site's datum
        groundwater: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").safe_larger().like("\"97.0 ft\"");
        /// Least cover over a unit that lies in the ground
        cover: Quantity<Length> = spec.units(&FT, &M).between("0 ft", "30 ft").safe_larger().like("\"3 ft\"")
            .asks("How much cover must lie over a unit in the ground: does traffic cross it, and how deep does frost reach?")
            .asks_when(FROST_KNOWN, "How much cover must lie over a unit in the ground: does traffic cross it?")
            .usual("1 ft", "3 ft", "5 ft", "{3 ft|0.91 m} under traffic, {2 ft|0.61 m} without, of the California fire code for buried tanks (8 CCR 5597)");
        /// Concrete anchored to a unit in the ground: slab under it, anchors beside it
        anchors: Quantity<Volume> = spec.units(&FT3, &M3).between("0 ft3", "100000 ft3").safe_smaller().like("\"120 ft3\"");
        /// Whose factor against flotation is asked for
        flotation: Text = spec.named(flotation_factors).like("\"flood agency\"");
        /// How soil over and beside a unit in the ground counts against flotation; the straight prism where nothing is said
        soil_counts: Text = spec.named(soil_methods).like("\"prism\"");
        /// Whether the unit must lie in the ground
        buried: Flag = spec.like("true");
        /// Coldest air
        coldest_air: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-70 °C", "40 °C").safe_smaller().like("\"-5 °F\"");
        /// Depth to which the ground freezes at the place
        frost_depth: Quantity<Length> = spec.units(&FT, &M).between("0 ft", "20 ft").safe_larger().like("\"3 ft\"");
        /// Whether the unit stands in a heated room
        indoors: Flag = spec.safe_smaller().like("false");
        /// Whether the unit is heated or insulated and traced
        frost_protected: Flag = spec.safe_smaller().like("false");
        /// What can be lifted over the unit
        lifting: Quantity<Mass> = spec.units(&LB, &KG).between("10 lb", "1000000 lb").safe_smaller().like("\"500 lb\"");
        /// Longest unit, or group of units, that fits
        max_length: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "500 ft").safe_smaller().like("\"16 ft\"");
        /// Widest unit, or group of units, that fits
        max_width: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "500 ft").safe_smaller().like("\"8 ft\"");
        /// Clear height over the ground at the unit, up to roof, canopy, cable or hook
        headroom: Quantity<Length> = spec.units(&FT, &M).between("2 ft", "500 ft").safe_smaller().like("\"14 ft\"");
        /// How deep below the ground may be dug
        max_depth: Quantity<Length> = spec.units(&FT, &M).between("0 ft", "200 ft").safe_smaller().like("\"10 ft\"");
        /// Walkway kept free around the units and between them
        access: Quantity<Length> = spec.units(&FT, &M).between("0 ft", "30 ft").safe_larger().like("\"2 ft\"")
            .asks("How wide a walkway must stay free around the unit, and between units where there are several?")
            .usual("0.5 m", "2 ft", "1 m", "common practice: room for one person to pass");
        /// How several units stand to one another
        arrangement: Word<Arrangement> = spec.like("\"side by side\"");
    }
}
