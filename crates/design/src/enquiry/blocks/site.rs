//! The place.

use crate::enquiry::fields::Flag;
use crate::enquiry::keys::{Quantity, keys};
use stillrise_units::catalog::{DEG_C, DEG_F, FT, KG, LB, M};
use stillrise_units::{Length, Mass, Temperature};

keys! {
    /// The place.
    Site "site" {
        /// Ground at the unit, in the site's datum
        ground: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").like("\"100.0 ft\"");
        /// Coldest air
        coldest_air: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-70 °C", "40 °C").safe_smaller().like("\"-5 °F\"");
        /// Whether the unit stands in a heated room
        indoors: Flag = spec.like("false");
        /// Whether the unit is heated or insulated and traced
        frost_protected: Flag = spec.like("false");
        /// What can be lifted over the unit
        lifting: Quantity<Mass> = spec.units(&LB, &KG).between("10 lb", "1000000 lb").safe_smaller().like("\"500 lb\"");
        /// Longest unit that fits
        max_length: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "500 ft").safe_smaller().like("\"16 ft\"");
        /// Widest unit that fits
        max_width: Quantity<Length> = spec.units(&FT, &M).between("1 ft", "500 ft").safe_smaller().like("\"8 ft\"");
    }
}
