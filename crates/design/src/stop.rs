//! Where the chain could not go on.

use stillrise_handbook::page::Outside;

/// A branch of the chain that could not go on.
#[derive(Debug, Clone, PartialEq)]
pub struct Stop {
    /// What was being computed.
    pub doing: String,
    /// Why it stopped, with numbers and units.
    pub reason: String,
    /// Whether a formula had no answer: its words name arguments and are for whoever checks the calculation. Else the
    /// reason is a sentence that anybody understands.
    pub formula: bool,
}

impl Stop {
    /// One whose reason is a plain sentence.
    #[must_use]
    pub fn said(doing: impl Into<String>, reason: impl Into<String>) -> Self {
        Self { doing: doing.into(), reason: reason.into(), formula: false }
    }
}

impl From<Outside> for Stop {
    fn from(outside: Outside) -> Self {
        Stop {
            doing: outside.page.replace('-', " "),
            reason: format!("{}: {}", outside.argument, outside.reason),
            formula: true,
        }
    }
}

impl core::fmt::Display for Stop {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{}: {}", self.doing, self.reason)
    }
}
