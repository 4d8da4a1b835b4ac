//! What may be printed of a predicted effluent: never a number below the published practical floor of plate
//! units, unless the water that arrives is lower already.

use stillrise_handbook::separation::floors;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed, print};

/// The published practical floor of plate units under ideal conditions.
#[must_use]
pub fn floor() -> Concentration {
    floors::plate_floor().value
}

/// Digits of an effluent in print, in prose and tables alike.
const DIGITS: usize = 3;

/// A predicted effluent as it may be printed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Promise {
    /// The number as computed.
    Number(Concentration),
    /// Computed below the published floor, which is all that may be said.
    AtOrBelowFloor,
    /// Computed below what arrives, which lies below the floor itself.
    AtMostInfluent(Concentration),
}

impl Promise {
    /// Of a prediction, and what arrives on the same footing.
    #[must_use]
    pub fn of(expected: Concentration, influent: Concentration) -> Self {
        if expected >= floor() {
            Promise::Number(expected)
        } else if influent > floor() {
            Promise::AtOrBelowFloor
        } else if expected >= influent {
            Promise::Number(expected)
        } else {
            Promise::AtMostInfluent(influent)
        }
    }

    /// Of a prediction of which it is not known what arrives: the floor bounds it.
    #[must_use]
    pub fn unbounded(expected: Concentration) -> Self {
        if expected >= floor() { Promise::Number(expected) } else { Promise::AtOrBelowFloor }
    }

    /// The least that may be promised where this arrives.
    #[must_use]
    pub fn least(influent: Concentration) -> Concentration {
        if influent < floor() { influent } else { floor() }
    }

    /// Where it stands on a chart: the number, or the bound.
    #[must_use]
    pub fn value(self) -> Concentration {
        match self {
            Promise::Number(c) | Promise::AtMostInfluent(c) => c,
            Promise::AtOrBelowFloor => floor(),
        }
    }

    /// Whether a bound stands in for the number.
    #[must_use]
    pub fn is_bound(self) -> bool {
        !matches!(self, Promise::Number(_))
    }

    /// In a table headed mg/L: `18.4`, or `≤ 10`.
    #[must_use]
    pub fn brief(self) -> String {
        let number = print::digits(MG_L.from_si(self.value().si()), DIGITS);
        if self.is_bound() { format!("≤ {number}") } else { number }
    }

    /// In a sentence: `18.4 mg/L`, `at or below the published floor, 10 mg/L`.
    #[must_use]
    pub fn sentence(self) -> String {
        let number = number(self.value());
        match self {
            Promise::Number(_) => number,
            Promise::AtOrBelowFloor => format!("at or below the published floor, {number}"),
            Promise::AtMostInfluent(_) => format!("at most the influent's {number}"),
        }
    }
}

/// The content of suspended solids below which a laboratory hardly tells any from none; our proposal.
const SOLIDS_MG_L: f64 = 5.0;

/// Solids that leave by the calculation, in a sentence: never a number that no laboratory could show.
#[must_use]
pub fn solids(c: Concentration) -> String {
    let least = Concentration::of(SOLIDS_MG_L, &MG_L);
    if c < least { format!("less than {}", number(least)) } else { number(c) }
}

/// A concentration in prose.
#[must_use]
pub fn number(c: Concentration) -> String {
    format!("{} mg/L", print::digits(MG_L.from_si(c.si()), DIGITS))
}
