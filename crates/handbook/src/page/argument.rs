//! What may stand in a formula's signature: quantities, words, series, and groups of these.

use super::{Outside, Symbol};
use crate::memo::Key;
use stillrise_units::{Dim, Typed};

/// A value on its way into or out of a formula, numbers in SI.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg {
    /// A number, in SI.
    Number(f64),
    /// One of a closed set of words: a method, a group, a kind.
    Choice(&'static str),
    /// Pairs of numbers, both in SI: a table, a list of areas with their coefficients.
    Series(Vec<(f64, f64)>),
    /// Arguments that go together, in the order of the group's fields.
    Group(&'static Group, Vec<Arg>),
    /// Several such groups in order: the stages that the water passes.
    Groups(Vec<Arg>),
}

/// Arguments that go together under one name: the droplets, the water, one stage.
pub struct Group {
    /// The word in files and on the terminal.
    pub word: &'static str,
    /// What it is.
    pub meaning: &'static str,
    /// Its fields, in order.
    pub fields: &'static [Symbol],
}

impl PartialEq for Group {
    fn eq(&self, other: &Self) -> bool {
        self.word == other.word
    }
}

impl Eq for Group {}

impl core::fmt::Debug for Group {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.word)
    }
}

/// Pairs of numbers, both in SI.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Series(pub Vec<(f64, f64)>);

/// What kind of value an argument takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A quantity of this dimension.
    Quantity(Dim),
    /// One of these words; each with its meaning.
    Choice(&'static [(&'static str, &'static str)]),
    /// Pairs of numbers.
    Series,
    /// Arguments that go together.
    Group(&'static Group),
    /// Several groups in order, each one of these.
    Groups(&'static [&'static Group]),
}

/// A type that may stand in a formula's signature.
pub trait Argument: Clone {
    /// Its kind, for reading, printing and the schema.
    const KIND: Kind;
    /// Into the untyped form.
    fn arg(&self) -> Arg;
    /// From the untyped form; `None` when it is of another kind.
    fn from_arg(arg: &Arg) -> Option<Self>;
    /// The number in SI, of a quantity.
    #[inline]
    fn number(&self) -> Option<f64> {
        None
    }
    /// Refuses what lies outside the domain of one of its fields; a plain value has none.
    ///
    /// # Errors
    /// [`Outside`] naming the field.
    fn within(&self, _: &'static str) -> Result<(), Outside> {
        Ok(())
    }
    /// Adds its bits to a key by which a result is kept.
    fn key(&self, key: &mut Key);
}

impl<T: Typed> Argument for T {
    const KIND: Kind = Kind::Quantity(T::DIM);
    fn arg(&self) -> Arg {
        Arg::Number(self.si())
    }
    fn from_arg(arg: &Arg) -> Option<Self> {
        match arg {
            Arg::Number(value) => Some(T::from_si(*value)),
            _ => None,
        }
    }
    #[inline]
    fn number(&self) -> Option<f64> {
        Some(self.si())
    }
    #[inline]
    fn key(&self, key: &mut Key) {
        key.push(self.si().to_bits());
    }
}

impl Argument for Series {
    const KIND: Kind = Kind::Series;
    fn arg(&self) -> Arg {
        Arg::Series(self.0.clone())
    }
    fn from_arg(arg: &Arg) -> Option<Self> {
        match arg {
            Arg::Series(pairs) => Some(Series(pairs.clone())),
            _ => None,
        }
    }
    fn key(&self, key: &mut Key) {
        key.push(self.0.len() as u64);
        for (x, y) in &self.0 {
            key.push(x.to_bits());
            key.push(y.to_bits());
        }
    }
}
