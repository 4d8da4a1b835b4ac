//! Parallel channels of a long basin, which share its flow.

use crate::enquiry::fields::Count;
use crate::enquiry::keys::keys;
use crate::provenance::{Stop, Trail, given};
use crate::record;
use crate::train::row::Row;
use stillrise_units::catalog::ONE;
use stillrise_units::{Length, Ratio, ratio};

keys! {
    /// Keys of parallel channels.
    ChannelKeys "model" {
        /// Number of parallel channels of a basin
        count as "channels": Count = spec.like("2");
    }
}

record! {
    /// The channels, all alike.
    Channels {
        /// how many
        count: Ratio;
        /// inside width of one
        width: Length;
    }
}

impl Channels {
    /// As a row or a described unit lays them out.
    ///
    /// # Errors
    /// [`Stop`] where the width is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>) -> Result<Self, Stop> {
        let m = row.m;
        let count = m.parallel.count.0.unwrap_or(2);
        let why = if m.parallel.count.0.is_some() { "channels" } else { "not stated: two, so that one can be emptied" };
        let count = given(row.t, "channels", Some((&ONE, &ONE)), ratio(f64::from(count)), row.source, why);
        Ok(Self { count, width: row.need("inside width of a channel", m.width())? })
    }
}
