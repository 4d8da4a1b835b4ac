//! Limits on what leaves.

use crate::enquiry::fields::{Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use crate::enquiry::limit_value::LimitValue;
use stillrise_handbook::choice;
use stillrise_handbook::fluids::pollutants;
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
        /// How much; of pH a range, such as "6-9"; of a sheen "none" where it is judged by eye; left out while nobody knows it
        value: LimitValue = spec.units(&MG_L, &MG_L).between("0.000001 mg/L", "100000 mg/L").safe_smaller().like("\"15 mg/L\"");
        /// Of which statistic
        statistic: Word<Statistic> = spec.like("\"daily maximum\"");
        /// Samples in a monthly average
        samples: Quantity<Ratio> = spec.units(&ONE, &ONE).between("1", "100").like("4");
        /// Coefficient of variation of the effluent
        variation: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.01", "5").safe_larger().like("0.6");
        /// Method of analysis
        method: Text = spec.like("\"EPA 1664B\"");
        /// Who set it
        authority: Text = spec.like("\"city permit\"");
    }
}
