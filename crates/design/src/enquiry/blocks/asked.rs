//! What somebody named beforehand.

use crate::enquiry::date::Day;
use crate::enquiry::fields::{Flag, Text};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_units::catalog::{D, GAL, GPM, IN, M3, M3_H, MG_L, MM, UM};
use stillrise_units::{Concentration, Flow, Length, Time, Volume};

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
        /// Whether it was asked if an alarm is needed
        alarm: Flag = spec.like("true");
        /// How long it is to go without being emptied
        interval: Quantity<Time> = spec.units(&D, &D).between("1 d", "20 yr").safe_larger().like("\"1 yr\"");
        /// Volume of a tank that stands and that somebody would keep ahead of the unit
        tank_ahead: Quantity<Volume> = spec.units(&GAL, &M3).between("1 gal", "10000000 gal").safe_smaller().like("\"6 m3\"");
        /// Whether it was asked if the unit may stand ahead of the pumps
        ahead_of_pumps: Flag = spec.like("true");
        /// Thickness of the slab on which it is to stand
        slab: Quantity<Length> = spec.units(&IN, &MM).between("1 in", "120 in").safe_smaller().like("\"6 in\"");
        /// Whether a second wall around it was asked for
        double_wall: Flag = spec.like("true");
        /// Whether it was asked where samples are to be taken
        sampling: Flag = spec.like("true");
        /// Material of which it was asked for
        material: Text = spec.like("\"stainless steel\"");
        /// Day by which it is to be delivered
        delivery: Day = spec.like("\"2026-08-31\"");
    }
}
