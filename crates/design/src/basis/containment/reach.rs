//! A value with the ends between which it lies where nobody said it.

use crate::basis::stated::{StandIn, is_tried, stated_or};
use crate::enquiry::declared::Declared;
use crate::enquiry::keys::{Key, Quantity};
use crate::provenance::{Trail, Val, WhatIf};
use crate::reckon;
use stillrise_units::{Typed, Volume};

/// What nobody said, or several said differently.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Open {
    /// The key that answers it.
    pub key: String,
    /// How that key is declared.
    pub declared: Declared,
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
    key: Key<'_, Quantity<Q>>,
    label: &str,
    stand_in: StandIn<'_, Q>,
    open: &mut Vec<Open>,
) -> Reach<Q> {
    let said = key.said;
    let settled = said.claim().is_some_and(|c| c.chosen || !said.is_contradicted());
    // An answer that is tried counts as said.
    let answered = is_tried(w, &key);
    let claims = said.claims.iter().map(|c| c.written.si());
    let [low, high] = if said.is_given() {
        let low = claims.clone().fold(f64::INFINITY, f64::min);
        [low, claims.fold(f64::NEG_INFINITY, f64::max)].map(Q::from_si)
    } else {
        stand_in.ends()
    };
    let (path, declared) = (key.path(), Declared(Some(key.spec)));
    let val = stated_or(t, w, key, label, || stand_in);
    if settled || answered {
        return Reach::known(val);
    }
    open.push(Open { key: path.into_owned(), declared, what: label.to_owned() });
    Reach { val, low, high }
}
