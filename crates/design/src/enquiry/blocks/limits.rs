//! Limits on what leaves.

use crate::enquiry::fields::{Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use crate::enquiry::limit_value::LimitValue;
use stillrise_handbook::choice;
use stillrise_handbook::fluids::pollutants::{self, Pollutant};
use stillrise_units::Ratio;
use stillrise_units::catalog::{MG_L, ONE};

names! {
    pollutant_names = pollutants::POLLUTANTS;
}

choice! {
    /// What a limit is a limit of.
    Statistic {
        /// every single sample must keep it
        AnySample "any sample",
        /// the largest daily value
        DailyMaximum "daily maximum",
        /// the mean of a month's samples
        MonthlyAverage "monthly average",
        /// a type test of the unit on a rig
        RigTest "rig test",
    }
}
keys! {
    /// A limit on what leaves.
    Limit "limit" {
        /// Of what
        pollutant: Text = spec.named(pollutant_names).like("\"oil and grease\"").needed();
        /// What the permit calls it, where the list of pollutants has no row of its own for it
        name: Text = spec.like("\"zinc\"");
        /// How much; of pH a range, such as "6-9"; of a sheen "none" where it is judged by eye; left out while nobody knows it
        value: LimitValue = spec.units(&MG_L, &MG_L).between("0.000001 mg/L", "100000 mg/L").safe_smaller().like("\"15 mg/L\"")
            .found("of a sheen judged by eye 15 mg/L of free oil, from 10 to 25, a rule of thumb for light oils");
        /// Of which statistic
        statistic: Word<Statistic> = spec.like("\"daily maximum\"")
            .asks("Is the limit on {name} for any sample, a daily maximum or a monthly average, and by which method?")
            .found("any sample, the strictest reading of a bare number");
        /// Samples in a monthly average
        samples: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "100").like("4")
            .asks("How many samples make the monthly average?")
            .usual("1", "4", "10", "weekly sampling");
        /// Coefficient of variation of the effluent
        variation: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.01", "5").safe_larger().like("0.6")
            .asks("Are there effluent data that show how far the results scatter?")
            .usual("0.3", "0.6", "1.2", "EPA Technical Support Document, 1991: 0.6 when fewer than ten results exist");
        /// Method of analysis
        method: Text = spec.like("\"EPA 1664B\"");
        /// Who set it
        authority: Text = spec.like("\"city permit\"");
    }
}

impl Limit {
    /// What it is a limit on; `None` while nobody said.
    #[must_use]
    pub fn of(&self) -> Option<&'static Pollutant> {
        self.pollutant.as_deref().and_then(pollutants::pollutant)
    }
}
