//! Which unit.

use crate::arrangements::Arrangement;
use crate::enquiry::fields::{Count, Flag, Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use crate::enquiry::range::Model;
use stillrise_units::catalog::{IN, MM, ONE, PERCENT};
use stillrise_units::{Length, Ratio};

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
        /// How much more than its share one of several in parallel gets
        split: Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0 %", "100 %").safe_larger().like("\"10 %\"")
            .usual("0 %", "10 %", "25 %", "engineering judgement: a weir box ahead, set level");
        /// Water kept over the lip of the downcomer, or over the mouth of a bend or a dip pipe, under the oil
        lip_margin: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "60 in").safe_larger().like("\"6 in\"")
            .usual("3 in", "6 in", "9 in", "our proposal");
        /// Water kept over the plates, under the oil
        pack_margin: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "60 in").safe_larger().like("\"2 in\"")
            .usual("1 in", "2 in", "4 in", "our proposal");
        /// Freeboard over the highest level
        freeboard: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "60 in").safe_larger().like("\"6 in\"")
            .usual("3 in", "6 in", "12 in", "our proposal");
        /// Gap kept between the oil and the invert of the inlet over it
        inlet_gap: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "60 in").safe_larger().like("\"1 in\"")
            .usual("0 in", "1 in", "2 in", "our proposal");
        /// How far evaporation and leakage draw the clear well below its crest
        evaporation: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "60 in").safe_larger().like("\"1 in\"")
            .usual("0 in", "1 in", "3 in", "our proposal");
        /// Loss of the fouled mesh over that of the clean one
        mesh_fouling: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "1000").safe_larger().like("10")
            .usual("5", "10", "50", "engineering judgement: cleaned at 5 to 10 times the clean loss");
        /// Least loss of a fouled mesh
        mesh_fouled_loss: Quantity<Length> = spec.units(&IN, &MM).between("0 in", "60 in").safe_larger().like("\"2 in\"")
            .usual("0.5 in", "2 in", "4 in", "our proposal, {2 to 4 in|51 to 102 mm}; multiples of a clean loss near zero stay near zero");
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
