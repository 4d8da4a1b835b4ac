//! How the water reaches the unit.

use crate::enquiry::fields::{Flag, Quantities, Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_handbook::separation::pumps;
use stillrise_units::catalog::{FT, GPM, M, M3_H, ONE};
use stillrise_units::{Flow, Length, Ratio};

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
keys! {
    /// How the water reaches the unit.
    Inlet "inlet" {
        /// By gravity or by pump
        feed: Word<Feed> = spec.like("\"gravity\"");
        /// Kind of pump
        pump: Text = spec.named(pump_names).like("\"diaphragm\"");
        /// Rate of each pump
        rate: Quantities<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "100000 gpm").safe_larger().like("[\"60 gpm\", \"60 gpm\"]");
        /// Whether the pumps can run at once
        together: Flag = spec.like("true");
        /// Peak over mean flow of a pulsating pump
        pulsation: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "5").safe_larger().like("1.6");
        /// Invert of the incoming pipe, in the site's datum
        invert: Quantity<Length> = spec.units(&FT, &M).between("-2000 ft", "30000 ft").safe_smaller().like("\"98.40 ft\"");
    }
}
