//! Where a given value comes from, and who said it.

use std::borrow::Cow;

/// Where a given value comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Whence<'a> {
    /// It follows from what a thing is: nothing, one, all of it.
    Definition,
    /// A key of the company's settings, where the enquiry says nothing of it.
    Settings {
        /// The key.
        key: Cow<'a, str>,
    },
    /// A place of the enquiry, a row of a range, or a work.
    Place {
        /// The place.
        place: Cow<'a, str>,
        /// Who said it there, where that was told.
        from: Option<Cow<'a, str>>,
    },
}

impl<'a> Whence<'a> {
    /// A place, and who said it there.
    #[must_use]
    pub fn said(place: impl Into<Cow<'a, str>>, from: Option<&'a str>) -> Self {
        Whence::Place { place: place.into(), from: from.map(Cow::Borrowed) }
    }
    /// Whether it is a key of the company's settings.
    #[must_use]
    pub fn is_settings(&self) -> bool {
        matches!(self, Whence::Settings { .. })
    }
    /// The same, to be kept.
    #[must_use]
    pub fn kept(self) -> Whence<'static> {
        let owned = |text: Cow<'a, str>| Cow::Owned(text.into_owned());
        match self {
            Whence::Definition => Whence::Definition,
            Whence::Settings { key } => Whence::Settings { key: owned(key) },
            Whence::Place { place, from } => Whence::Place { place: owned(place), from: from.map(owned) },
        }
    }
    /// The place, without who said it there.
    #[must_use]
    pub fn place(&self) -> &str {
        match self {
            Whence::Definition => "definition",
            Whence::Settings { key } => key,
            Whence::Place { place, .. } => place,
        }
    }
    /// Who said it there, where that was told.
    #[must_use]
    pub fn from(&self) -> Option<&str> {
        match self {
            Whence::Definition | Whence::Settings { .. } => None,
            Whence::Place { from, .. } => from.as_deref(),
        }
    }
}

impl core::fmt::Display for Whence<'_> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        if self.is_settings() {
            return write!(f, "{}, by the company's settings", self.place());
        }
        match self.from() {
            Some(from) => write!(f, "{}, from {from}", self.place()),
            None => f.write_str(self.place()),
        }
    }
}

impl<'a> From<&'a str> for Whence<'a> {
    fn from(place: &'a str) -> Self {
        Whence::said(place, None)
    }
}

impl<'a> From<&'a String> for Whence<'a> {
    fn from(place: &'a String) -> Self {
        Whence::said(place.as_str(), None)
    }
}

impl<'a> From<&'a Cow<'_, str>> for Whence<'a> {
    fn from(place: &'a Cow<'_, str>) -> Self {
        Whence::said(&**place, None)
    }
}

impl<'a> From<&'a Whence<'_>> for Whence<'a> {
    fn from(whence: &'a Whence<'_>) -> Self {
        match whence {
            Whence::Definition => Whence::Definition,
            Whence::Settings { key } => Whence::Settings { key: Cow::Borrowed(key) },
            Whence::Place { place, from } => Whence::said(&**place, from.as_deref()),
        }
    }
}

/// Where nobody reads it, it is not even made.
impl<'a> From<Option<Whence<'a>>> for Whence<'a> {
    fn from(whence: Option<Whence<'a>>) -> Self {
        whence.unwrap_or(Whence::Place { place: Cow::Borrowed(""), from: None })
    }
}
