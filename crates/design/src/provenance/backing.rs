//! What stands behind a default.

use std::borrow::Cow;
use stillrise_handbook::page::Source;

/// Where a default comes from.
#[derive(Debug, Clone)]
pub enum Backing<'a> {
    /// In words.
    Words(Cow<'a, str>),
    /// A source of the handbook.
    Source(&'static Source),
    /// No default: claims contradict and nobody chose; how one was taken.
    Contradiction(Cow<'a, str>),
}

impl Backing<'_> {
    /// In words.
    pub(super) fn text(self) -> String {
        match self {
            Backing::Words(words) | Backing::Contradiction(words) => words.into_owned(),
            Backing::Source(source) => source.to_string(),
        }
    }
}

impl<'a> From<&'a str> for Backing<'a> {
    fn from(words: &'a str) -> Self {
        Backing::Words(words.into())
    }
}

impl From<String> for Backing<'_> {
    fn from(words: String) -> Self {
        Backing::Words(words.into())
    }
}
