//! How a key is declared: what it holds and is called, what is asked for it, and what stands in where nobody says.

use super::key::filled;
use super::keys::KeyKind;
use super::usual::{Usual, Why};
use stillrise_handbook::page::Source;
use stillrise_units::Unit;

/// Which of two contradicting claims is the safe one to design for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Safe {
    /// The larger.
    Larger,
    /// The smaller.
    Smaller,
    /// Neither; the first claim stands.
    First,
}

/// One key.
#[derive(Debug)]
pub struct KeySpec {
    /// Its name in the file.
    pub name: &'static str,
    /// Its path where its block stands alone: `method.reserve`.
    pub path: &'static str,
    /// What it is.
    pub doc: &'static str,
    /// What it holds.
    pub kind: KeyKind,
    /// (US, SI) print units.
    pub units: Option<(&'static Unit, &'static Unit)>,
    /// Absurd bounds: outside them it is a slip, not an enquiry.
    pub bounds: Option<(&'static str, &'static str)>,
    /// Which of contradicting claims is safe.
    pub safe: Safe,
    /// An example, as written in the file.
    pub like: &'static str,
    /// Whether the block makes no sense without it.
    pub needed: bool,
    /// The question to the customer; empty where it is not asked.
    pub asks: &'static str,
    /// Other questions for it, each with what it is asked for in place of that: when, question.
    pub asks_when: [(&'static str, &'static str); 2],
    /// What stands in where nobody says, the same in every job.
    pub usual: Option<Usual>,
    /// What stands in where nobody says, where that follows from something else.
    pub found: &'static str,
}

impl KeySpec {
    /// A key with nothing but a name, a meaning and a kind.
    #[must_use]
    pub const fn new(name: &'static str, path: &'static str, doc: &'static str, kind: KeyKind) -> Self {
        Self {
            name,
            path,
            doc,
            kind,
            units: None,
            bounds: None,
            safe: Safe::First,
            like: "",
            needed: false,
            asks: "",
            asks_when: [("", ""); 2],
            usual: None,
            found: "",
        }
    }
    /// The question to the customer, with placeholders such as `{name}` for what the caller knows.
    #[must_use]
    pub const fn asks(mut self, question: &'static str) -> Self {
        self.asks = question;
        self
    }
    /// Another question for it, in a situation that the caller names.
    #[must_use]
    pub const fn asks_when(mut self, when: &'static str, question: &'static str) -> Self {
        let free = if self.asks_when[0].0.is_empty() { 0 } else { 1 };
        self.asks_when[free] = (when, question);
        self
    }
    /// What stands in where nobody says: lowest, typical and highest, with their units, and where these come from.
    #[must_use]
    pub const fn usual(
        mut self,
        low: &'static str,
        typical: &'static str,
        high: &'static str,
        why: &'static str,
    ) -> Self {
        self.usual = Some(Usual::new(low, typical, high, Why::Words(why)));
        self
    }
    /// The same of a source of the handbook.
    #[must_use]
    pub const fn usual_by(
        mut self,
        low: &'static str,
        typical: &'static str,
        high: &'static str,
        source: &'static Source,
    ) -> Self {
        self.usual = Some(Usual::new(low, typical, high, Why::Source(source)));
        self
    }
    /// The same, where several keys share it: lowest, typical, highest, where these come from.
    #[must_use]
    pub const fn usually(self, [low, typical, high, why]: [&'static str; 4]) -> Self {
        self.usual(low, typical, high, why)
    }
    /// What stands in where nobody says and it follows from something else, in words.
    #[must_use]
    pub const fn found(mut self, from: &'static str) -> Self {
        self.found = from;
        self
    }
    /// The question in a situation, with its words; a situation that is not declared has the plain question.
    #[must_use]
    pub fn question(&self, when: &str, words: &[(&'static str, &str)]) -> String {
        let other = self.asks_when.iter().find(|(situation, _)| !when.is_empty() && *situation == when);
        filled(other.map_or(self.asks, |(_, question)| question), words)
    }
    /// Print units.
    #[must_use]
    pub const fn units(mut self, us: &'static Unit, si: &'static Unit) -> Self {
        self.units = Some((us, si));
        self
    }
    /// Absurd bounds.
    #[must_use]
    pub const fn between(mut self, low: &'static str, high: &'static str) -> Self {
        self.bounds = Some((low, high));
        self
    }
    /// Of contradicting claims the larger is designed for.
    #[must_use]
    pub const fn safe_larger(mut self) -> Self {
        self.safe = Safe::Larger;
        self
    }
    /// Of contradicting claims the smaller is designed for.
    #[must_use]
    pub const fn safe_smaller(mut self) -> Self {
        self.safe = Safe::Smaller;
        self
    }
    /// An example.
    #[must_use]
    pub const fn like(mut self, like: &'static str) -> Self {
        self.like = like;
        self
    }
    /// The names that may be written.
    #[must_use]
    pub const fn named(mut self, names: fn() -> Vec<String>) -> Self {
        self.kind = KeyKind::Named(names);
        self
    }
    /// The block makes no sense without it.
    #[must_use]
    pub const fn needed(mut self) -> Self {
        self.needed = true;
        self
    }
    /// All questions that are declared for it, with their placeholders.
    pub fn questions(&self) -> impl Iterator<Item = &'static str> {
        let others = self.asks_when.iter().map(|(_, question)| *question);
        core::iter::once(self.asks).chain(others).filter(|question| !question.is_empty())
    }
    /// What stands in where nobody says, in print: `60 um, between 20 um and 150 um (why)`; nothing where nothing does.
    #[must_use]
    pub fn stands_in(&self) -> Option<String> {
        let usual = self.usual.as_ref().map(|Usual { low, typical, high, why, .. }| match low == high {
            true => format!("{typical} ({why})"),
            false => format!("{typical}, between {low} and {high} ({why})"),
        });
        match (self.found, usual) {
            ("", usual) => usual,
            (found, None) => Some(found.to_owned()),
            (found, Some(usual)) => Some(format!("{found}; else {usual}")),
        }
    }
}

/// A question as it is shown beside its key: without the parts that stand only in some jobs, its placeholders as they are.
#[must_use]
pub fn without_options(question: &str) -> String {
    let mut out = String::with_capacity(question.len());
    let mut rest = question;
    while let Some((before, (option, behind))) =
        rest.split_once('[').and_then(|(before, after)| Some((before, after.split_once(']')?)))
    {
        out.push_str(before);
        if !option.contains('{') {
            out.push_str(option);
        }
        rest = behind;
    }
    out.push_str(rest);
    out
}
