//! Where every value comes from.
//!
//! A [`Val`] is a quantity and its place in the trail. It is made only by [`given`], [`assume`],
//! [`choose`], [`by!`](crate::by) (a handbook formula) and [`reckon!`](crate::reckon) (plain
//! arithmetic whose text is kept), so that a number without origin cannot come into a basis, a
//! train or a performance. A [`Ledger`] records; [`Off`] records nothing and costs nothing.

mod adopt;
mod backing;
mod ledger;
mod part;
mod whence;

use crate::enquiry::declared::Declared;
use crate::enquiry::distribution::Distribution;
pub use crate::stop::Stop;
pub use crate::uncertain::Uncertain;
pub use backing::Backing;
pub use ledger::Ledger;
pub use part::Part;
use std::borrow::Cow;
use std::collections::BTreeMap;
use stillrise_handbook::page::{Arg, Argument, Page};
use stillrise_units::{System, Unit, print};
pub use whence::Whence;

/// A place in the trail.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Node(u32);

impl Node {
    /// No place: nothing was recorded.
    pub const NONE: Node = Node(u32::MAX);
    /// Position in [`Ledger::entries`].
    #[must_use]
    pub fn index(self) -> Option<usize> {
        (self != Node::NONE).then_some(self.0 as usize)
    }
}

/// A value and where it comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Val<Q> {
    /// The value.
    pub q: Q,
    /// Its entry in the trail.
    pub at: Node,
}

/// (US, SI) print units.
pub type Pair = (&'static Unit, &'static Unit);

/// Who chose one among several.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Chooser {
    /// A method or a rule.
    Method,
    /// A person, among claims that contradict.
    Person,
    /// Nobody, among claims that contradict: the safe one stands in, or the first.
    Nobody,
}

/// How a value came to be.
#[derive(Debug, Clone)]
pub enum Origin {
    /// Somebody said so: who or where, and the text as typed.
    Given {
        /// The key of the enquiry or the row of the range, and the source note.
        source: Whence<'static>,
        /// As typed.
        text: String,
    },
    /// Nobody said; a default stands in.
    Assumed(Assumption),
    /// Chosen among several.
    Chosen {
        /// By whom.
        by: Chooser,
        /// Among what.
        among: String,
        /// Why this one.
        because: String,
        /// The values it was chosen from.
        inputs: Vec<Node>,
    },
    /// A formula of the handbook.
    Derived {
        /// The page.
        page: &'static Page,
        /// Its arguments, in order.
        inputs: Vec<Node>,
    },
    /// Plain arithmetic on earlier values.
    Reckoned {
        /// The expression, as in the code.
        text: &'static str,
        /// The names in it and what they stand for.
        inputs: Vec<(&'static str, Node)>,
    },
    /// Earlier values under one name: the fields of a group, or groups in order.
    Gathered {
        /// The fields or groups, in order.
        inputs: Vec<Node>,
    },
}

impl Origin {
    /// The earlier values that it rests on, in order.
    pub fn inputs(&self) -> impl Iterator<Item = Node> {
        let (plain, named): (&[Node], &[(&str, Node)]) = match self {
            Origin::Given { .. } | Origin::Assumed(_) => (&[], &[]),
            Origin::Chosen { inputs, .. } | Origin::Derived { inputs, .. } | Origin::Gathered { inputs } => {
                (inputs, &[])
            }
            Origin::Reckoned { inputs, .. } => (&[], inputs),
        };
        plain.iter().copied().chain(named.iter().map(|(_, node)| *node))
    }
}

/// A default that stands in for what nobody said.
#[derive(Debug, Clone, PartialEq)]
pub struct Assumption {
    /// The key of the enquiry that would answer it, as `water.coldest`.
    pub key: String,
    /// How that key is declared.
    pub declared: Declared,
    /// The question to the customer.
    pub question: String,
    /// Lowest plausible answer, or another word.
    pub low: Arg,
    /// Highest plausible answer, or another word.
    pub high: Arg,
    /// Where default and range come from.
    pub source: String,
    /// Whether it is none, but what was taken of claims that contradict.
    pub contradiction: bool,
}

/// One line of the trail.
#[derive(Debug, Clone)]
pub struct Entry {
    /// The section of the work it belongs to, as it is printed: `basis`, `storm, cold`.
    pub section: String,
    /// What that section is, where somebody asks for it.
    pub part: Part,
    /// What it is.
    pub label: String,
    /// Its value, SI.
    pub value: Arg,
    /// Print units.
    pub units: Option<Pair>,
    /// Where it comes from.
    pub origin: Origin,
    /// What a reader must know: outside a trusted range, read with a decimal comma.
    pub notes: Vec<String>,
    /// The range of a given value, when somebody said how far it may be off.
    pub range: Option<Within>,
}

/// How far a given value may be off.
#[derive(Debug, Clone, PartialEq)]
pub struct Within {
    /// The key that gave it, as `droplets.d50`.
    pub key: String,
    /// How that key is declared.
    pub declared: Declared,
    /// Lowest value.
    pub low: Arg,
    /// Highest value.
    pub high: Arg,
    /// How it spreads between.
    pub distribution: Distribution,
}

impl Entry {
    /// The value in print.
    #[must_use]
    pub fn shown(&self, system: System) -> String {
        show(&self.value, self.units, system)
    }
    /// The value in prose and tables, three digits; see [`print::told`].
    #[must_use]
    pub fn told(&self, system: System) -> String {
        told(&self.value, self.units, system)
    }
    /// How the key of an uncertain value is declared: of one assumed, or given with a range.
    #[must_use]
    pub fn declared(&self) -> Declared {
        match (&self.origin, &self.range) {
            (Origin::Assumed(a), _) => a.declared,
            (_, Some(within)) => within.declared,
            _ => Declared::default(),
        }
    }
}

/// A value in prose and tables, three digits; see [`print::told`].
#[must_use]
pub fn told(value: &Arg, units: Option<Pair>, system: System) -> String {
    match (value, units) {
        (Arg::Number(si), Some(pair)) => print::told(*si, system.pick(pair)),
        (Arg::Number(si), None) => print::digits(print::or_nothing(*si), 3),
        _ => show(value, units, system),
    }
}

/// A value in print.
#[must_use]
pub fn show(value: &Arg, units: Option<Pair>, system: System) -> String {
    match (value, units) {
        (Arg::Number(si), Some(pair)) => print::with_unit(*si, system.pick(pair)),
        (Arg::Number(si), None) => print::digits(*si, 4),
        (Arg::Choice(word), _) => (*word).to_owned(),
        (Arg::Series(pairs), _) => format!("{} rows", pairs.len()),
        (Arg::Group(group, fields), _) => {
            let fields = group.fields.iter().zip(fields);
            let each: Vec<String> =
                fields.map(|(field, arg)| format!("{} {}", field.name, show(arg, field.units, system))).collect();
            format!("{}({})", group.word, each.join(", "))
        }
        (Arg::Groups(groups), _) => {
            let words = groups.iter().map(|one| if let Arg::Group(group, _) = one { group.word } else { "?" });
            let words: Vec<&str> = words.collect();
            if words.is_empty() { "none".to_owned() } else { words.join(", ") }
        }
    }
}

/// A value in prose: three digits.
#[must_use]
pub fn show_in_prose(value: &Arg, units: Option<Pair>, system: System) -> String {
    match (value, units) {
        (Arg::Number(si), Some(pair)) => print::in_prose(*si, system.pick(pair)),
        (Arg::Number(si), None) => print::digits(*si, 3),
        (other, _) => show(other, units, system),
    }
}

/// Something that may record the trail.
pub trait Trail {
    /// Whether anything is recorded: texts that nobody will read need not be made.
    const RECORDS: bool;
    /// Whether at least what is uncertain is recorded.
    const GATHERS: bool = Self::RECORDS;
    /// Records the entry that `entry` makes, or does not even make it.
    fn push(&mut self, entry: impl FnOnce() -> Entry) -> Node;
    /// The same of a value that is uncertain: an assumption, or one given with a range.
    fn uncertain(&mut self, entry: impl FnOnce() -> Entry) -> Node {
        self.push(entry)
    }
    /// Begins a new section of the work.
    fn section(&mut self, name: impl core::fmt::Display) {
        self.part(Part::Other, name);
    }
    /// Begins one that somebody asks for.
    fn part(&mut self, part: Part, name: impl core::fmt::Display);
    /// In which system the reader is told what we say of a value.
    fn speaks(&mut self, _: System) {}
}

/// Records nothing.
#[derive(Debug, Clone, Copy, Default)]
pub struct Off;

impl Trail for Off {
    const RECORDS: bool = false;
    fn push(&mut self, _: impl FnOnce() -> Entry) -> Node {
        Node::NONE
    }
    fn part(&mut self, _: Part, _: impl core::fmt::Display) {}
}

/// Values that stand in for assumptions, by key: how the ranking of questions asks "what if".
#[derive(Debug, Clone, Default, PartialEq)]
pub struct WhatIf(pub BTreeMap<String, Arg>);

/// A value that somebody gave.
pub fn given<'w, Q: Argument>(
    t: &mut impl Trail,
    label: &str,
    units: Option<Pair>,
    q: Q,
    source: impl Into<Whence<'w>>,
    text: &str,
) -> Val<Q> {
    let at = t.push(|| entry(label, &q, units, Origin::Given { source: source.into().kept(), text: text.to_owned() }));
    Val { q, at }
}

/// A value that somebody gave with its range; the what-if may put another in its place.
#[allow(clippy::too_many_arguments)]
pub fn given_within<'w, Q: Argument>(
    t: &mut impl Trail,
    what_if: &WhatIf,
    label: &str,
    units: Option<Pair>,
    q: Q,
    within: Within,
    source: impl Into<Whence<'w>>,
    text: &str,
) -> Val<Q> {
    let q = what_if.0.get(&within.key).and_then(Q::from_arg).unwrap_or(q);
    let at = t.uncertain(|| Entry {
        range: Some(within),
        ..entry(label, &q, units, Origin::Given { source: source.into().kept(), text: text.to_owned() })
    });
    Val { q, at }
}

/// What stands by for an answer nobody gave.
pub struct Standby<'a, Q> {
    /// What it is.
    pub label: &'a str,
    /// Print units.
    pub units: Option<Pair>,
    /// The key that would answer it.
    pub key: Cow<'a, str>,
    /// How that key is declared.
    pub declared: Declared,
    /// The question to the customer.
    pub question: Cow<'a, str>,
    /// Default.
    pub value: Q,
    /// Lowest plausible answer.
    pub low: Q,
    /// Highest plausible answer.
    pub high: Q,
    /// Where these come from.
    pub source: Backing<'a>,
}

/// Takes the default, or what the what-if puts in its place.
pub fn assume<Q: Argument>(t: &mut impl Trail, what_if: &WhatIf, d: Standby<'_, Q>) -> Val<Q> {
    let q = what_if.0.get(d.key.as_ref()).and_then(Q::from_arg).unwrap_or(d.value);
    let at = t.uncertain(|| {
        let assumption = Assumption {
            key: d.key.into_owned(),
            declared: d.declared,
            question: d.question.into_owned(),
            low: d.low.arg(),
            high: d.high.arg(),
            contradiction: matches!(d.source, Backing::Contradiction(_)),
            source: d.source.text(),
        };
        entry(d.label, &q, d.units, Origin::Assumed(assumption))
    });
    Val { q, at }
}

/// A value chosen among others, or by a stated method.
pub fn choose<Q: Argument>(
    t: &mut impl Trail,
    label: &str,
    units: Option<Pair>,
    q: Q,
    among: &str,
    because: &str,
    inputs: &[Node],
) -> Val<Q> {
    let at = t.push(|| {
        let (among, because, inputs) = (among.to_owned(), because.to_owned(), inputs.to_vec());
        entry(label, &q, units, Origin::Chosen { by: Chooser::Method, among, because, inputs })
    });
    Val { q, at }
}

/// A value chosen among claims that contradict, by a person or by none.
pub fn choose_claim<Q: Argument>(
    t: &mut impl Trail,
    label: &str,
    units: Option<Pair>,
    q: Q,
    by: Chooser,
    (among, because): (&str, &str),
    inputs: &[Node],
) -> Val<Q> {
    let at = t.push(|| {
        let (among, because, inputs) = (among.to_owned(), because.to_owned(), inputs.to_vec());
        entry(label, &q, units, Origin::Chosen { by, among, because, inputs })
    });
    Val { q, at }
}

/// An entry without section and notes.
pub fn entry<Q: Argument>(label: &str, q: &Q, units: Option<Pair>, origin: Origin) -> Entry {
    Entry {
        section: String::new(),
        part: Part::Other,
        label: label.to_owned(),
        value: q.arg(),
        units,
        origin,
        notes: Vec::new(),
        range: None,
    }
}
