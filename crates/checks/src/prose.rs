//! Sentences of rules, told in either system.

use stillrise_units::spoken::{in_both, pairs};
use stillrise_units::{System, spoken};

/// A sentence of a rule, whose quantities are told in either system: `"above {2 ft/min|10.2 mm/s} it warns"`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Prose(pub(crate) &'static str);

impl Prose {
    /// For readers of one system.
    #[must_use]
    pub fn to(self, system: System) -> String {
        spoken(self.0, system)
    }
    /// For readers of whom nothing is known: in SI, with US in brackets.
    #[must_use]
    pub fn in_both(self) -> String {
        in_both(self.0)
    }
    /// Its quantities: US and SI.
    #[must_use]
    pub fn pairs(self) -> Vec<(&'static str, &'static str)> {
        pairs(self.0)
    }
}
