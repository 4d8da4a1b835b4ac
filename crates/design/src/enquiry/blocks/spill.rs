//! The spill that must stay in, and the water that comes with a fire.

use crate::enquiry::fields::{Flag, Text};
use crate::enquiry::keys::{Quantity, keys};
use stillrise_units::catalog::{GAL, GPM, M3, M3_H, MIN};
use stillrise_units::{Flow, Time, Volume};

/// How the volume of a spill is asked for.
pub const SPILL_VOLUME: &str =
    "How much oil could be spilled at once and must stay in, as from the largest tank or hose?";

keys! {
    /// The spill that must stay in, and the water that comes with a fire.
    Spill "spill" {
        /// Volume of oil
        volume: Quantity<Volume> = spec.units(&GAL, &M3).between("0.1 gal", "1000000 gal").safe_larger().like("\"300 gal\"")
            .asks(SPILL_VOLUME)
            .found("five minutes at its rate, from one to thirty");
        /// Which oil it is: a kind of the handbook, or the name of a block that stands for one
        oil: Text = spec.like("\"jet-fuel\"");
        /// Rate at which it arrives
        rate: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "100000 gpm").safe_larger().like("\"100 gpm\"");
        /// Whether a closure shuts the outlet when oil comes near it
        closure: Flag = spec.safe_smaller().like("true");
        /// The containment in which it happens, by its name; "separator" where it runs there past all of them
        into: Text = spec.like("\"transformer pit\"");
        /// Flow of deluge, hydrants and hoses together that must be held too
        fire_flow: Quantity<Flow> = spec.units(&GPM, &M3_H).between("0.1 gpm", "100000 gpm").safe_larger().like("\"760 gpm\"");
        /// How long that flow is held
        fire_duration: Quantity<Time> = spec.units(&MIN, &MIN).between("0.1 min", "48 h").safe_larger().like("\"10 min\"")
            .asks("For how long must fire water be held?")
            .usual("10 min", "10 min", "60 min", "NFPA 850, from memory: ten minutes; supplies are laid out for an hour");
        /// Volume of fire water to hold, in place of flow and duration
        fire_volume: Quantity<Volume> = spec.units(&GAL, &M3).between("0 gal", "10000000 gal").safe_larger().like("\"7600 gal\"")
            .asks("Must fire water of a deluge or of hydrants be held too, and how much of it, if any?")
            .usual("0 gal", "0 gal", "45600 gal", "engineering judgement: none, to an hour of {760 gpm|173 m3/h} of deluge and hose");
    }
}
