//! Which unit.

use crate::arrangements::Arrangement;
use crate::enquiry::fields::{Count, Flag, Text, Word};
use crate::enquiry::keys::keys;
use crate::enquiry::range::Model;

keys! {
    /// Which unit.
    UnitBlock "unit" {
        /// Range file to pick from; the demo range when nothing is said
        from: Text = spec.like("\"range.toml\"");
        /// The model wanted, in place of a pick
        model: Text = spec.like("\"Model A\"");
        /// How the unit is to be arranged, in place of a choice
        arrangement: Word<Arrangement> = spec.like("\"plate cylinder\"");
        /// Whether a sand compartment ahead is wanted, where the range offers it
        sand_trap: Flag = spec.like("true");
        /// Whether a pump-out compartment behind is wanted, where the range offers it
        pump_out: Flag = spec.like("true");
        /// A unit made to measure
        custom: Flag = spec.like("true");
        /// Number in parallel
        count: Count = spec.like("2");
        /// Units that stand by beside those in parallel, and do not count for the design
        standby: Count = spec.like("1");
        /// Whether it stands already, where that does not follow from what was observed at it
        exists: Flag = spec.like("true");
        /// Its dimensions, when it is stated or exists
        dimensions: Option<Model> = spec.like("{ length = \"10 ft\", width = \"4 ft\" }");
    }
}

impl UnitBlock {
    /// Whether the enquiry says which unit it is about: one that stands, or one that is asked for.
    #[must_use]
    pub fn is_described(&self) -> bool {
        self.dimensions.is_some() || self.model.is_some()
    }
}
