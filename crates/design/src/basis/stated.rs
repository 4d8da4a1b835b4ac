//! Turning what was said into values: one claim, contradicting claims, or a default and a question.

use crate::enquiry::declared::Declared;
use crate::enquiry::keys::{Claim, Key, KeySpec, Quantity, Safe};
use crate::enquiry::said::{path_of, which_holds};
use crate::enquiry::usual::Why;
use crate::provenance::{
    Backing, Chooser, Pair, Standby, Trail, Val, WhatIf, Whence, Within, assume, choose_claim, given, given_within,
};
use stillrise_handbook::page::{Arg, Argument};
use stillrise_units::Typed;

/// The value somebody stated, with all contradicting claims in the trail; `None` if nobody did.
///
/// Where claims contradict and no person chose, the safe one is taken and the rest becomes a question.
pub fn stated<T: Trail, Q: Typed>(t: &mut T, w: &WhatIf, label: &str, key: &Quantity<Q>) -> Option<Val<Q>> {
    let units = key.spec.and_then(|s| s.units);
    let claim = key.claim()?;
    let value = |t: &mut _, c: &Claim| claimed(t, w, label, units, key, c);
    if !key.is_contradicted() {
        return Some(value(t, claim));
    }
    let nodes: Vec<_> = key.claims.iter().map(|c| value(t, c).at).collect();
    let among = key
        .claims
        .iter()
        .map(|c| format!("{} ({})", c.written.text, source(&key.place, c)))
        .collect::<Vec<_>>()
        .join("; ");
    let because = match (&claim.because, claim.chosen, key.spec.map(|s| s.safe)) {
        (Some(because), true, _) => because.to_string(),
        (None, true, _) => "chosen in the enquiry, no reason given".to_owned(),
        (_, _, Some(Safe::Larger)) => "of contradicting claims the larger is on the safe side".to_owned(),
        (_, _, Some(Safe::Smaller)) => "of contradicting claims the smaller is on the safe side".to_owned(),
        _ => "of contradicting claims the first was taken; neither side is the safe one".to_owned(),
    };
    let by = if claim.chosen { Chooser::Person } else { Chooser::Nobody };
    let taken = Q::from_si(claim.written.si());
    let chosen = choose_claim(t, label, units, taken, by, (&among, &because), &nodes);
    if claim.chosen {
        return Some(chosen);
    }
    let low = key.claims.iter().map(|c| c.written.si()).fold(f64::INFINITY, f64::min);
    let high = key.claims.iter().map(|c| c.written.si()).fold(f64::NEG_INFINITY, f64::max);
    let said = key
        .claims
        .iter()
        .map(|c| format!("{}{}", c.written.text, c.from.as_ref().map_or_else(String::new, |f| format!(" ({f})"))))
        .collect::<Vec<_>>()
        .join(" or ");
    Some(assume(
        t,
        w,
        Standby {
            label,
            units,
            key: path_of(&key.place).into(),
            declared: Declared(key.spec),
            question: which_holds(&format!("the {label}"), &said).into(),
            value: chosen.q,
            low: Q::from_si(low),
            high: Q::from_si(high),
            source: Backing::Contradiction(because.into()),
        },
    ))
}

/// The value of one claim, with its range if it has one.
fn claimed<T: Trail, Q: Typed>(
    t: &mut T,
    w: &WhatIf,
    label: &str,
    units: Option<Pair>,
    key: &Quantity<Q>,
    claim: &Claim,
) -> Val<Q> {
    let q = Q::from_si(claim.written.si());
    let source = source(&key.place, claim);
    let Some((low, high, distribution)) = &claim.range else {
        return given(t, label, units, q, source, &claim.written.text);
    };
    let within = Within {
        key: path_of(&key.place),
        declared: Declared(key.spec),
        low: Arg::Number(low.si()),
        high: Arg::Number(high.si()),
        distribution: *distribution,
    };
    let text = if T::RECORDS {
        format!("{}, {} to {}, {}", claim.written.text, low.text, high.text, distribution.word())
    } else {
        String::new()
    };
    given_within(t, w, label, units, q, within, source, &text)
}

fn source<'a>(place: &'a str, claim: &'a Claim) -> Whence<'a> {
    Whence::said(place, claim.from.as_deref())
}

/// What stands in for an answer nobody gave, where it follows from something that the key cannot know.
#[derive(Debug, Clone)]
pub struct StandIn<'a, Q> {
    /// Lowest plausible answer, default, highest.
    range: (Q, Q, Q),
    /// Where these come from.
    source: Backing<'a>,
}

impl<Q: Copy> StandIn<'_, Q> {
    /// The same with more words on where it comes from.
    #[must_use]
    pub fn adding(mut self, more: &str) -> Self {
        if let Backing::Words(words) = &mut self.source
            && !more.is_empty()
        {
            words.to_mut().push_str(more);
        }
        self
    }
    /// What is taken.
    #[must_use]
    pub fn likely(&self) -> Q {
        self.range.1
    }
    /// Lowest and highest plausible answer.
    #[must_use]
    pub fn ends(&self) -> [Q; 2] {
        [self.range.0, self.range.2]
    }
}

impl<Q: Typed> StandIn<'_, Q> {
    /// Of a share this, of the rest another.
    #[must_use]
    pub fn blended(&self, rest: &Self, share: f64, source: String) -> Self {
        let both = |own: Q, other: Q| Q::from_si(own.si() * share + other.si() * (1.0 - share));
        let ((low, value, high), (least, usual, most)) = (self.range, rest.range);
        StandIn { range: (both(low, least), both(value, usual), both(high, most)), source: source.into() }
    }
}

/// Whether an answer to a key is being tried.
#[must_use]
pub fn is_tried<F>(w: &WhatIf, key: &Key<'_, F>) -> bool {
    !w.0.is_empty() && w.0.contains_key(&*key.path())
}

/// A default between its plausible ends.
pub fn stand_in<'a, Q>(range: (Q, Q, Q), source: impl Into<Backing<'a>>) -> StandIn<'a, Q> {
    StandIn { range, source: source.into() }
}

/// A range of the handbook.
#[must_use]
pub fn spread<'a, Q: Typed>(spread: &stillrise_handbook::spread::Spread) -> StandIn<'a, Q> {
    let range = (Q::from_si(spread.low_si()), Q::from_si(spread.typical_si()), Q::from_si(spread.high_si()));
    StandIn { range, source: Backing::Source(spread.source) }
}

/// What is declared with the key itself. A key without it has no number, which no formula answers for: a test finds it.
#[must_use]
pub fn declared<'a, Q: Typed>(spec: &'static KeySpec) -> StandIn<'a, Q> {
    let range = spec.usual.as_ref().and_then(|usual| usual.range().ok());
    let none = Q::from_si(f64::NAN);
    let source = spec.usual.as_ref().map_or(Backing::from(""), |usual| match usual.why {
        Why::Words(words) => words.into(),
        Why::Source(source) => Backing::Source(source),
    });
    StandIn { range: range.unwrap_or((none, none, none)), source }
}

/// The typical value that is declared with a key.
#[must_use]
pub fn usual_of<F, Q: Typed>(key: &Key<'_, F>) -> Q {
    declared(key.spec).range.1
}

/// A default under its key, with the question to the customer that is declared there.
pub fn under<'a, T: Trail, F, Q>(key: &Key<'_, F>, label: &'a str, stand_in: StandIn<'a, Q>) -> Standby<'a, Q> {
    let (low, value, high) = stand_in.range;
    let question = if T::RECORDS { key.question() } else { String::new() };
    Standby {
        label,
        units: key.units(),
        key: key.path(),
        declared: Declared(Some(key.spec)),
        question: question.into(),
        value,
        low,
        high,
        source: stand_in.source,
    }
}

/// Takes a default for what nobody said.
pub fn assumed<T: Trail, F, Q: Argument>(
    t: &mut T,
    w: &WhatIf,
    key: &Key<'_, F>,
    label: &str,
    stand_in: StandIn<'_, Q>,
) -> Val<Q> {
    assume(t, w, under::<T, F, Q>(key, label, stand_in))
}

/// The value somebody stated, or what stands in for it; that is only made where somebody looks at it.
pub fn stated_or<'a, T: Trail, Q: Typed>(
    t: &mut T,
    w: &WhatIf,
    key: Key<'_, Quantity<Q>>,
    label: &str,
    stand_in: impl FnOnce() -> StandIn<'a, Q>,
) -> Val<Q> {
    match stated(t, w, label, key.said) {
        Some(value) => value,
        None => assumed(t, w, &key, label, stand_in()),
    }
}

/// The value somebody stated, or what is declared with its key.
pub fn stated_or_usual<T: Trail, Q: Typed>(t: &mut T, w: &WhatIf, key: Key<'_, Quantity<Q>>, label: &str) -> Val<Q> {
    let spec = key.spec;
    stated_or(t, w, key, label, || declared(spec))
}

/// The value somebody stated, else that of the company's settings, else what is declared with its key. A setting is one number:
/// its reader takes no other.
pub fn stated_or_company<T: Trail, Q: Typed>(
    t: &mut T,
    w: &WhatIf,
    key: Key<'_, Quantity<Q>>,
    company: Option<Key<'_, Quantity<Q>>>,
    label: &str,
) -> Val<Q> {
    let claim = company.filter(|_| !key.said.is_given()).and_then(|own| Some((own, own.said.claim()?)));
    match claim {
        Some((own, claim)) => {
            given(t, label, own.units(), Q::from_si(claim.written.si()), own.by_settings(), &claim.written.text)
        }
        None => stated_or_usual(t, w, key, label),
    }
}
