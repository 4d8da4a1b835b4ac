//! A tank outside the unit that takes the oil.

use crate::enquiry::keys::{Quantity, keys};
use stillrise_units::catalog::{GAL, M3, PERCENT};
use stillrise_units::{Ratio, Volume};

keys! {
    /// A holding tank outside the unit, into which the oil is drawn off.
    OilTank "oil_tank" {
        /// Its volume
        volume: Quantity<Volume> = spec.units(&GAL, &M3).between("1 gal", "1000000 gal").safe_smaller().like("\"550 gal\"").needed();
        /// Share of it that may be filled
        fill: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("10 %", "100 %").safe_smaller().like("\"90 %\"")
            .usual("0.8", "0.9", "0.95", "common practice: an alarm at 90 % of a tank of oil, and the flow shut off at 95 %");
    }
}
