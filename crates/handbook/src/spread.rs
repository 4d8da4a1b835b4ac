//! A published or judged value that is not one number: low, typical, high, and who says so.

use crate::page::{Seen, Source};
use stillrise_units::{Unit, print};

/// Low, typical and high of a property, with its source.
///
/// The ends are what a careful engineer would try, not bounds that nothing can pass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// The low end, in `unit`.
    pub low: f64,
    /// The value to assume when nothing is known, in `unit`.
    pub typical: f64,
    /// The high end, in `unit`.
    pub high: f64,
    /// The unit of the three numbers.
    pub unit: &'static Unit,
    /// Where they come from; when parts differ, the weakest, and [`Spread::note`] says more.
    pub source: &'static Source,
    /// What a reader should know of the numbers; empty when there is nothing.
    pub note: &'static str,
}

impl Spread {
    /// Low, typical, high.
    #[must_use]
    pub const fn new(low: f64, typical: f64, high: f64, unit: &'static Unit, source: &'static Source) -> Self {
        Self { low, typical, high, unit, source, note: "" }
    }

    /// The same, with a note on the numbers.
    #[must_use]
    pub const fn noted(self, note: &'static str) -> Self {
        Self { note, ..self }
    }

    /// The low end in SI.
    #[must_use]
    pub fn low_si(&self) -> f64 {
        self.unit.to_si(self.low)
    }

    /// The typical value in SI.
    #[must_use]
    pub fn typical_si(&self) -> f64 {
        self.unit.to_si(self.typical)
    }

    /// The high end in SI.
    #[must_use]
    pub fn high_si(&self) -> f64 {
        self.unit.to_si(self.high)
    }

    /// Whether the numbers are finite and in order.
    #[must_use]
    pub fn is_ordered(&self) -> bool {
        self.low.is_finite() && self.high.is_finite() && self.low <= self.typical && self.typical <= self.high
    }

    /// Whether the numbers rest on memory or judgement, to be replaced by the site's own.
    #[must_use]
    pub fn rests_on_memory(&self) -> bool {
        self.source.seen == Seen::Memory
    }
}

impl core::fmt::Display for Spread {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let number = |value| print::digits(value, 4);
        write!(f, "{} ({} to {}) {}", number(self.typical), number(self.low), number(self.high), self.unit.symbol)?;
        write!(f, ", {}", self.source)?;
        if self.note.is_empty() { Ok(()) } else { write!(f, "; {}", self.note) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sources::JUDGEMENT;
    use stillrise_units::catalog::{DEG_C, MG_L};

    #[test]
    fn numbers_are_given_in_si_and_printed_in_their_unit() {
        let spread = Spread::new(50.0, 150.0, 300.0, &MG_L, &JUDGEMENT).noted("none measured");
        assert_eq!(spread.low_si(), 0.05);
        assert!((spread.typical_si() - 0.15).abs() < 1e-15);
        assert_eq!(
            spread.to_string(),
            "150 (50 to 300) mg/L, Engineering judgement of this handbook [from memory, not confirmed]; none measured"
        );
        assert_eq!(Spread::new(0.0, 20.0, 60.0, &DEG_C, &JUDGEMENT).high_si(), 333.15);
    }

    #[test]
    fn order_and_origin_can_be_asked() {
        let spread = Spread::new(1.0, 3.0, 2.0, &MG_L, &JUDGEMENT);
        assert!(!spread.is_ordered());
        assert!(spread.rests_on_memory());
    }
}
