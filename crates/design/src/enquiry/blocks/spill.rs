//! The spill that must stay in.

use crate::enquiry::fields::Flag;
use crate::enquiry::keys::{Quantity, keys};
use stillrise_units::catalog::{GAL, GPM, M3, M3_H};
use stillrise_units::{Flow, Volume};

keys! {
    /// The spill that must stay in.
    Spill "spill" {
        /// Volume of oil
        volume: Quantity<Volume> = spec.units(&GAL, &M3).between("0.1 gal", "1000000 gal").safe_larger().like("\"300 gal\"").needed();
        /// Rate at which it arrives
        rate: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "100000 gpm").safe_larger().like("\"100 gpm\"");
        /// Whether a closure shuts the outlet when oil comes near it
        closure: Flag = spec.like("true");
    }
}
