//! A value with the ends between which it lies where nobody said it.

use crate::basis::stated::{standby, stated_or_by_hand};
use crate::enquiry::keys::Quantity;
use crate::provenance::{Standby, Trail, Val, WhatIf, assume};
use crate::reckon;
use stillrise_units::{Typed, Volume};

/// What nobody said, or several said differently.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Open {
    /// The key that answers it.
    pub key: String,
    /// What it is.
    pub what: String,
}

/// A value and its ends; both ends are the value where somebody said it.
#[derive(Debug, Clone, Copy)]
pub struct Reach<Q> {
    /// What the design counts with.
    pub val: Val<Q>,
    /// The lowest that it may turn out.
    pub low: Q,
    /// The highest.
    pub high: Q,
}

impl<Q: Typed> Reach<Q> {
    /// A value that is known.
    #[must_use]
    pub fn known(val: Val<Q>) -> Self {
        Self { val, low: val.q, high: val.q }
    }
}

impl Reach<Volume> {
    /// Two volumes together.
    #[must_use]
    pub fn plus<T: Trail>(&self, t: &mut T, label: &str, next: &Self) -> Self {
        let val = reckon!(t, label, [GAL, M3], (sum = self.val, next = next.val) sum + next);
        Self { val, low: self.low + next.low, high: self.high + next.high }
    }
    /// This less another, and nothing where that is more.
    #[must_use]
    pub fn beyond<T: Trail>(&self, t: &mut T, label: &str, other: &Self, zero: Val<Volume>) -> Self {
        let val = reckon!(t, label, [GAL, M3], (all = self.val, other = other.val, zero = zero)(all - other).max(zero));
        Self { val, low: (self.low - other.high).max(zero.q), high: (self.high - other.low).max(zero.q) }
    }
}

/// What somebody stated; else, and where claims contradict, the ends of what it may be, with a question.
pub fn asked<T: Trail, Q: Typed + PartialOrd>(
    t: &mut T,
    w: &WhatIf,
    key: &Quantity<Q>,
    standby: Standby<'_, Q>,
    open: &mut Vec<Open>,
) -> Reach<Q> {
    let name = standby.key.to_string();
    let settled = key.claim().is_some_and(|c| c.chosen || !key.is_contradicted());
    // An answer that is tried counts as said.
    let answered = w.0.contains_key(&name);
    let claims = key.claims.iter().map(|c| c.written.si());
    let (low, high) = if key.is_given() {
        (Q::from_si(claims.clone().fold(f64::INFINITY, f64::min)), Q::from_si(claims.fold(f64::NEG_INFINITY, f64::max)))
    } else {
        (standby.low, standby.high)
    };
    let what = standby.label.to_owned();
    let val = stated_or_by_hand(t, w, key, || standby);
    if settled || answered {
        return Reach::known(val);
    }
    open.push(Open { key: name, what });
    Reach { val, low, high }
}

/// A default that is asked about, where no key of the enquiry could have stated it.
pub fn guessed<T: Trail, Q: Typed>(t: &mut T, w: &WhatIf, standby: Standby<'_, Q>, open: &mut Vec<Open>) -> Reach<Q> {
    let (name, what) = (standby.key.to_string(), standby.label.to_owned());
    let (low, high) = (standby.low, standby.high);
    let val = assume(t, w, standby);
    if w.0.contains_key(&name) {
        return Reach::known(val);
    }
    open.push(Open { key: name, what });
    Reach { val, low, high }
}
