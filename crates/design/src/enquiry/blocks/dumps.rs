//! Baths that are dumped into a stream.

use super::waters::{OilContent, SOLIDS, SOLIDS_FOUND};
use crate::enquiry::fields::Text;
use crate::enquiry::keys::{Quantity, keys};
use stillrise_units::catalog::{DEG_C, DEG_F, GAL, M3, MG_L, MIN, ONE};
use stillrise_units::{Concentration, Ratio, Temperature, Time, Volume};

keys! {
    /// A bath or a sump that is let go into a stream now and then, much stronger than the stream.
    Dump "dump" {
        /// Its name
        name: Text = spec.like("\"parts washer bath\"");
        /// The stream it goes into; needs no saying where there is one only
        stream: Text = spec.like("\"bus wash rinse\"");
        /// Its volume
        volume: Quantity<Volume> = spec.units(&GAL, &M3).between("0.01 gal", "1000000 gal").safe_larger().like("\"50 gal\"").needed();
        /// What it carries
        oil: Option<OilContent> = spec.like("{ mean = \"20000 mg/L\", emulsified = \"30 %\" }");
        /// Suspended solids in it
        solids: Quantity<Concentration> = spec.units(&MG_L, &MG_L).between("0 mg/L", "100000 mg/L").safe_larger().like("\"1000 mg/L\"")
            .asks(SOLIDS).found(SOLIDS_FOUND);
        /// Its temperature, where it differs from the water of the season
        temperature: Quantity<Temperature> = spec.units(&DEG_F, &DEG_C).between("-2 °C", "95 °C").safe_smaller().like("\"140 °F\"");
        /// How often a week
        per_week: Quantity<Ratio> = spec.units(&ONE, &ONE).between("0.001", "1000").safe_larger().like("1")
            .asks("How often a week is the {name} dumped?")
            .usual("0.25", "1", "5", "engineering judgement: a bath changed once a week");
        /// Time in which it is let go
        lasts: Quantity<Time> = spec.units(&MIN, &MIN).between("0.1 min", "1440 min").safe_smaller().like("\"10 min\"");
    }
}
