//! What somebody named beforehand.

use crate::enquiry::fields::Text;
use crate::enquiry::keys::{Quantity, keys};
use stillrise_units::catalog::{GPM, M3_H, MG_L, UM};
use stillrise_units::{Concentration, Flow, Length};

keys! {
    /// What the customer, or another offer, named beforehand: each is answered, with why or why not.
    Asked "asked" {
        /// Flow of the unit that was named, as in "we need a 60 gpm separator"
        flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "100000 gpm").safe_larger().like("\"60 gpm\"");
        /// Model that was named; it is looked at and not taken because of it
        model: Text = spec.like("\"Model A\"");
        /// Effluent that is to be promised
        promise: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0.001 mg/L", "100000 mg/L").safe_smaller().like("\"5 mg/L\"");
        /// Droplet that is to be removed
        droplet: Quantity<Length> = spec.units(&UM, &UM).between("1 um", "1000 um").safe_smaller().like("\"20 um\"");
        /// Nominal size that was named, by the European standard
        nominal_size: Text = spec.like("\"NS 10\"");
    }
}
