//! What was said of a key that holds no quantity: a word, a text, a flag, a count or a curve, with who said so and
//! whether another said otherwise.

use super::declared::Declared;
use super::keys::KeySpec;
use super::reader::Reader;
use crate::provenance::Whence;
use core::ops::Deref;
use std::borrow::Cow;
use stillrise_handbook::page::{Arg, Argument};
use toml::de::DeValue;

/// One claim.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Told<T> {
    /// What was claimed.
    pub value: T,
    /// As it is shown.
    pub text: String,
    /// Where it comes from, if said.
    pub from: Option<String>,
    /// Whether a person chose it among contradicting ones.
    pub chosen: bool,
    /// Why.
    pub because: Option<String>,
}

/// All claims on one key, in the order of the file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Claims<T> {
    /// The claims.
    pub list: Vec<Told<T>>,
    /// Where they stand: `spill: closure`.
    pub place: String,
    /// How the key is declared.
    pub declared: Declared,
}

impl<T> Default for Claims<T> {
    fn default() -> Self {
        Self { list: Vec::new(), place: String::new(), declared: Declared::default() }
    }
}

impl<T: PartialEq> Claims<T> {
    /// The claim to design for: the one a person chose, else the first.
    #[must_use]
    pub fn taken(&self) -> Option<&Told<T>> {
        self.list.iter().find(|c| c.chosen).or(self.list.first())
    }
    /// Whether the claims differ.
    #[must_use]
    pub fn is_contradicted(&self) -> bool {
        self.list.windows(2).any(|pair| pair[0].value != pair[1].value)
    }
    /// `source`, and where the claim that was taken comes from: `spill: closure, from drawing P-2`.
    #[must_use]
    pub fn source<'a>(&'a self, source: impl Into<Cow<'a, str>>) -> Whence<'a> {
        Whence::said(source, self.taken().and_then(|told| told.from.as_deref()))
    }
}

/// A text, a name, a flag or a count; it reads as the value that is taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said<T>(pub Option<T>, pub Claims<T>);

impl<T> Default for Said<T> {
    fn default() -> Self {
        Self(None, Claims::default())
    }
}

impl<T> Deref for Said<T> {
    type Target = Option<T>;
    fn deref(&self) -> &Option<T> {
        &self.0
    }
}

impl<T: Clone + PartialEq> From<Claims<T>> for Said<T> {
    fn from(claims: Claims<T>) -> Self {
        Self(claims.taken().map(|told| told.value.clone()), claims)
    }
}

/// One of a closed set of words, and the claims on it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Word<C>(pub Option<C>, pub Claims<C>);

impl<C> Default for Word<C> {
    fn default() -> Self {
        Self(None, Claims::default())
    }
}

impl<C: Clone + PartialEq> From<Claims<C>> for Word<C> {
    fn from(claims: Claims<C>) -> Self {
        Self(claims.taken().map(|told| told.value.clone()), claims)
    }
}

/// What a claim on any key says, without its value.
#[derive(Debug, Clone, Copy)]
pub struct Line<'a> {
    /// As it is shown.
    pub text: &'a str,
    /// Where it comes from, if said.
    pub from: Option<&'a str>,
    /// Whether a person chose it.
    pub chosen: bool,
    /// Why.
    pub because: Option<&'a str>,
}

/// Any key that holds no quantity, seen from outside: its claims, and that another of them may be taken.
pub trait Claimed {
    /// Where it stands.
    fn place(&self) -> &str;
    /// How its key is declared.
    fn declared(&self) -> Declared;
    /// Its claims.
    fn lines(&self) -> Vec<Line<'_>>;
    /// Whether they differ.
    fn is_contradicted(&self) -> bool;
    /// The word that stands for one of them in the trail and in a what-if.
    fn word(&self, claim: usize) -> &'static str;
    /// Takes one of them.
    fn take(&mut self, claim: usize);

    /// The claim that is taken, by its place.
    fn taken(&self) -> usize {
        self.lines().iter().position(|line| line.chosen).unwrap_or(0)
    }
    /// The path of the key: `spill.closure`.
    fn path(&self) -> String {
        path_of(self.place())
    }
    /// Whether they differ and nobody chose.
    fn is_open(&self) -> bool {
        self.is_contradicted() && self.lines().iter().all(|line| !line.chosen)
    }
}

/// The path of a key that was read at a place: `stream "wash".flow` of `stream "wash": flow`.
#[must_use]
pub fn path_of(place: &str) -> String {
    place.replace(": ", ".")
}

/// The question where claims on one thing contradict.
#[must_use]
pub fn which_holds(of: &str, said: &str) -> String {
    format!("Which holds for {of}: {said}?")
}

/// Words for claims whose value is no word of a list.
const NTH: [&str; 6] =
    ["the first claim", "the second claim", "the third claim", "the fourth claim", "the fifth claim", "a later claim"];

/// The word for a claim by its place.
#[must_use]
pub fn nth(claim: usize) -> &'static str {
    NTH[claim.min(NTH.len() - 1)]
}

pub(super) fn lines<T>(claims: &Claims<T>) -> Vec<Line<'_>> {
    let line = |c| {
        let Told { text, from, chosen, because, .. }: &Told<T> = c;
        Line { text, from: from.as_deref(), chosen: *chosen, because: because.as_deref() }
    };
    claims.list.iter().map(line).collect()
}

impl<T: Clone + PartialEq> Claimed for Said<T> {
    fn place(&self) -> &str {
        &self.1.place
    }
    fn declared(&self) -> Declared {
        self.1.declared
    }
    fn lines(&self) -> Vec<Line<'_>> {
        lines(&self.1)
    }
    fn is_contradicted(&self) -> bool {
        self.1.is_contradicted()
    }
    fn word(&self, claim: usize) -> &'static str {
        match self.1.list.get(claim).map(|told| told.text.as_str()) {
            Some("true") => "yes",
            Some("false") => "no",
            _ => nth(claim),
        }
    }
    fn take(&mut self, claim: usize) {
        self.0 = self.1.list.get(claim).map(|told| told.value.clone()).or(self.0.take());
    }
}

impl<C: Argument + PartialEq> Claimed for Word<C> {
    fn place(&self) -> &str {
        &self.1.place
    }
    fn declared(&self) -> Declared {
        self.1.declared
    }
    fn lines(&self) -> Vec<Line<'_>> {
        lines(&self.1)
    }
    fn is_contradicted(&self) -> bool {
        self.1.is_contradicted()
    }
    fn word(&self, claim: usize) -> &'static str {
        match self.1.list.get(claim).map(|told| told.value.arg()) {
            Some(Arg::Choice(word)) => word,
            _ => nth(claim),
        }
    }
    fn take(&mut self, claim: usize) {
        self.0 = self.1.list.get(claim).map(|told| told.value.clone()).or(self.0.take());
    }
}

/// Reads one value, and how it is shown; faults go to the reader.
type One<'a, T> = &'a mut dyn FnMut(&mut Reader, &DeValue<'_>) -> Option<(T, String)>;

/// Reads the claims on a key: one value, a table that says who said so, or a list of either. `plain` says of a list
/// that it is one value, as the rows of a curve.
pub(super) fn claims<T>(
    reader: &mut Reader,
    spec: &'static KeySpec,
    place: &str,
    value: &DeValue<'_>,
    plain: bool,
    one: One<'_, T>,
) -> Claims<T> {
    let list: Vec<Told<T>> = match value {
        DeValue::Array(list) if !plain => {
            if list.is_empty() {
                reader.fault(place, "is an empty list", format!("write {} = {}", spec.name, spec.like));
            }
            list.iter().filter_map(|item| told(reader, spec, place, item.get_ref(), one)).collect()
        }
        value => told(reader, spec, place, value, one).into_iter().collect(),
    };
    if list.iter().filter(|told| told.chosen).count() > 1 {
        reader.fault(place, "more than one claim is marked chosen", "mark one");
    }
    Claims { list, place: place.to_owned(), declared: Declared(Some(spec)) }
}

fn told<T>(
    reader: &mut Reader,
    spec: &'static KeySpec,
    place: &str,
    value: &DeValue<'_>,
    one: One<'_, T>,
) -> Option<Told<T>> {
    let DeValue::Table(table) = value else {
        let (value, text) = one(reader, value)?;
        return Some(Told { value, text, from: None, chosen: false, because: None });
    };
    let mut found = None;
    let (mut from, mut because, mut chosen) = (None, None, false);
    for (key, value) in table {
        let name: &str = key.get_ref();
        match (name, value.get_ref()) {
            ("value", value) => found = Some(one(reader, value)?),
            ("from", DeValue::String(text)) => from = Some(text.to_string()),
            ("because", DeValue::String(text)) => because = Some(text.to_string()),
            ("chosen", DeValue::Boolean(yes)) => chosen = *yes,
            (other, _) => reader.fault(
                place,
                format!("\"{other}\" does not belong to a claim on it, or is of the wrong kind"),
                "such a claim has value, from, chosen and because",
            ),
        }
    }
    let Some((value, text)) = found else {
        reader.fault(
            place,
            "a claim without value",
            format!("write {} = {{ value = {}, from = \"...\" }}", spec.name, spec.like),
        );
        return None;
    };
    Some(Told { value, text, from, chosen, because })
}

/// The text that a key holds, whether plain or claimed: what is needed before the key itself is read.
pub(super) fn plain_text<'a>(value: &'a DeValue<'_>) -> Option<&'a str> {
    match value {
        DeValue::Table(table) => {
            table.iter().find(|(key, _)| key.get_ref() == "value").and_then(|(_, value)| value.get_ref().as_str())
        }
        DeValue::Array(list) => {
            let chosen = |value: &&DeValue<'_>| {
                let table = value.as_table().into_iter().flatten();
                table
                    .into_iter()
                    .any(|(key, value)| key.get_ref() == "chosen" && value.get_ref().as_bool() == Some(true))
            };
            let mut values = list.iter().map(|item| item.get_ref());
            values.clone().find(chosen).or(values.next()).and_then(plain_text)
        }
        value => value.as_str(),
    }
}
