//! What was changed at a unit that stands, and when.

use crate::enquiry::date::Day;
use crate::enquiry::fields::{Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_handbook::choice;
use stillrise_handbook::fluids::chemicals;
use stillrise_handbook::separation::pumps;
use stillrise_units::catalog::{GPM, IN, M3_H, MM};
use stillrise_units::{Flow, Length};

names! {
    pump_names = pumps::PUMPS;
    chemical_names = chemicals::CHEMICALS;
}

choice! {
    /// What was changed.
    ChangeKind {
        /// the pump ahead, its speed, its valve or its level switches
        Pump "pump",
        /// a cleaner, a coolant or another chemical
        Chemical "chemical",
        /// the outlet: its pipe, level, vent or weir
        Outlet "outlet",
        /// how the plant works: hours, machines, products, washing
        Habits "habits",
        /// work on the unit itself: cleaning, plates, mesh, alarm
        Unit "unit",
        /// where, how or by whom samples are taken and analysed
        Sampling "sampling",
        /// anything else
        Other "other",
    }
}
keys! {
    /// A change at a plant with a unit that stands: it holds from its day on, and what other keys say otherwise was so before.
    Change "change" {
        /// Day from which it holds
        date: Day = spec.like("\"2026-04-13\"").needed();
        /// What was changed
        what: Word<ChangeKind> = spec.like("\"pump\"").needed();
        /// What was done, in the client's words
        text: Text = spec.like("\"sump pump replaced by a larger one\"");
        /// The new kind of pump
        pump: Text = spec.named(pump_names).like("\"centrifugal\"");
        /// The flow since then
        rate: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.01 gpm", "100000 gpm").safe_larger().like("\"40 gpm\"");
        /// The new chemical
        chemical: Text = spec.named(chemical_names).like("\"alkaline-degreaser\"");
        /// The new level of the outlet, above the floor of the unit
        outlet_level: Quantity<Length> = spec.units(&IN, &MM).between("1 in", "240 in").like("\"44 in\"");
    }
}

impl Change {
    /// In a phrase, for tables and sentences.
    #[must_use]
    pub fn says(&self) -> String {
        let what = self.what.0.map_or("change", ChangeKind::word);
        match &self.text.0 {
            Some(text) => text.clone(),
            None => format!("{what} changed"),
        }
    }
}
