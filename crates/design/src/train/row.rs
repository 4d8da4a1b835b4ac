//! How the dimensions of a unit are taken up: stated in the enquiry, given by a row of a range, or assumed.

use super::assumed::Assumed;
use crate::basis::stated::stated;
use crate::enquiry::fields::Text;
use crate::enquiry::keys::{Key, Quantity};
use crate::enquiry::range::Model;
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, given};
use stillrise_handbook::hydraulics::pipes::pipe_size;
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, Typed};

/// Compartments that a row offers and an enquiry takes or not.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Options {
    /// A sand compartment ahead.
    pub sand_trap: bool,
    /// A pump-out compartment behind.
    pub pump_out: bool,
}

impl Options {
    /// All that is described: of a unit that stands, what is stated is there.
    pub const ALL: Options = Options { sand_trap: true, pump_out: true };
    /// None.
    pub const NONE: Options = Options { sand_trap: false, pump_out: false };
}

/// Print units of a dimension.
pub const DIMENSION: Pair = (&IN, &MM);

/// One row or one described unit, and what is assumed where it says nothing.
pub struct Row<'a, T> {
    /// The trail.
    pub t: &'a mut T,
    /// Answers that are tried.
    pub w: &'a WhatIf,
    /// Its keys.
    pub m: &'a Model,
    /// What is assumed of it.
    pub assumed: &'a Assumed,
    /// Which of its options are taken.
    pub options: Options,
    /// Where it stands.
    pub source: &'a str,
    /// Whether the enquiry describes it; else it is a row of a range.
    pub described: bool,
}

impl<T: Trail> Row<'_, T> {
    /// Its designation.
    #[must_use]
    pub fn name(&self) -> String {
        format!("unit {}", self.m.model.as_deref().unwrap_or("stated unit"))
    }

    /// A stop that names it.
    #[must_use]
    pub fn stop(&self, reason: impl Into<String>) -> Stop {
        Stop::said(self.name(), reason.into())
    }

    /// A dimension as it is stated. One that says more than its number (who said so, how far it may be off, another claim)
    /// is taken up by its own key; a plain one is given by the row or block as a whole.
    pub fn laid<Q: Typed>(&mut self, label: &str, units: Pair, key: &Quantity<Q>) -> Option<Val<Q>> {
        let claim = key.claim()?;
        if claim.from.is_some() || claim.range.is_some() || key.is_contradicted() {
            return stated(self.t, self.w, label, key);
        }
        Some(given(self.t, label, Some(units), Q::from_si(claim.written.si()), self.source, &claim.written.text))
    }

    /// A length that must be known.
    ///
    /// # Errors
    /// [`Stop`] when it is neither stated nor assumed.
    pub fn need(&mut self, label: &str, key: Key<'_, Quantity<Length>>) -> Result<Val<Length>, Stop> {
        let found = self.assumed.get(key.spec).or_else(|| self.laid(label, DIMENSION, key.said));
        found.ok_or_else(|| self.stop(format!("{label} is not stated")))
    }

    /// A value with a usual one in its place, which is given by the row.
    pub fn or_usual<Q: Typed>(&mut self, label: &str, units: Pair, key: &Quantity<Q>, usual: Q, why: &str) -> Val<Q> {
        match self.laid(label, units, key) {
            Some(found) => found,
            None => given(self.t, label, Some(units), usual, self.source, why),
        }
    }

    /// The bore of a pipe by its nominal size.
    ///
    /// # Errors
    /// [`Stop`] when it is neither stated nor assumed.
    pub fn bore(&mut self, label: &str, pipe: Key<'_, Text>) -> Result<Val<Length>, Stop> {
        let size = pipe.said.as_deref().and_then(pipe_size);
        let stated = size
            .map(|row| given(self.t, label, Some(DIMENSION), row.inside(), pipe.said.1.source(self.source), row.word));
        stated.or_else(|| self.assumed.get(pipe.spec)).ok_or_else(|| self.stop(format!("{label} is not stated")))
    }
}
