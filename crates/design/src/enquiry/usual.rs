//! What stands in for an answer nobody gave, where it is the same in every job: declared with the key, as texts with
//! units, and read once.

use core::sync::atomic::{AtomicU64, Ordering};
use stillrise_handbook::page::Source;
use stillrise_units::parse::{Gallon, Reading, quantity_of};
use stillrise_units::{Fault, Typed};

/// A default with its plausible range.
#[derive(Debug)]
pub struct Usual {
    /// Lowest plausible answer.
    pub low: &'static str,
    /// What stands in.
    pub typical: &'static str,
    /// Highest plausible answer.
    pub high: &'static str,
    /// Where these come from.
    pub why: Why,
    /// The three once they were read, SI as bits: a study asks for them with every sample.
    read: [AtomicU64; 3],
}

/// Where a default comes from.
#[derive(Debug, Clone, Copy)]
pub enum Why {
    /// In words.
    Words(&'static str),
    /// A source of the handbook.
    Source(&'static Source),
}

impl core::fmt::Display for Why {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Why::Words(words) => f.write_str(words),
            Why::Source(source) => source.fmt(f),
        }
    }
}

/// Not read yet; the bits of no number that a text could give.
const UNREAD: u64 = u64::MAX;

impl Usual {
    /// As declared.
    #[must_use]
    pub const fn new(low: &'static str, typical: &'static str, high: &'static str, why: Why) -> Self {
        let read = [AtomicU64::new(UNREAD), AtomicU64::new(UNREAD), AtomicU64::new(UNREAD)];
        Self { low, typical, high, why, read }
    }

    /// Lowest, typical and highest value.
    ///
    /// # Errors
    /// The fault of a text that is no such quantity.
    pub fn range<Q: Typed>(&self) -> Result<(Q, Q, Q), Fault> {
        let one = |k: usize, text: &str| {
            let bits = self.read[k].load(Ordering::Relaxed);
            if bits != UNREAD {
                return Ok(Q::from_si(f64::from_bits(bits)));
            }
            let si = quantity_of(text, Q::DIM, &Reading { gallon: Some(Gallon::Us) })?.si();
            self.read[k].store(si.to_bits(), Ordering::Relaxed);
            Ok(Q::from_si(si))
        };
        Ok((one(0, self.low)?, one(1, self.typical)?, one(2, self.high)?))
    }
}
