//! A key where it stands: what was said of it, how it is declared, and the block that it stands in. From these follow its
//! path, the question to the customer and what stands in for an answer, so that none of them is spelled where it is used.

use super::keys::{Block, KeySpec};
use super::said::{Said, Word};
use crate::provenance::Whence;
use std::borrow::Cow;
use std::sync::Arc;
use stillrise_units::Unit;

/// Where a block stands: `method`, `stream "wash"`, the table `oil` of one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    block: &'static str,
    /// Block and name, shared by all copies of an enquiry; nothing where the block stands alone.
    named: Option<Arc<str>>,
    table: &'static str,
}

impl Place {
    /// A block that stands alone.
    #[must_use]
    pub const fn plain(block: &'static str) -> Self {
        Self { block, named: None, table: "" }
    }
    /// A block as the reader calls it: `method`, `stream "wash"`, `stream 2`.
    #[must_use]
    pub fn read(block: &'static str, place: &str) -> Self {
        Self { block, named: (place != block).then(|| place.into()), table: "" }
    }
    /// One of several, by its name: `oil "diesel"`.
    #[must_use]
    pub fn named(block: &'static str, name: &str) -> Self {
        Self { block, named: Some([block, " \"", name, "\""].concat().into()), table: "" }
    }
    /// One of several of a name, by its number: `limit 2 "oil and grease"`.
    #[must_use]
    pub fn numbered(block: &'static str, number: usize, name: &str) -> Self {
        Self { block, named: Some(format!("{block} {number} \"{name}\"").into()), table: "" }
    }
    /// A table in it.
    #[must_use]
    pub fn inside(&self, table: &'static str) -> Self {
        if self.table.is_empty() {
            return Self { table, ..self.clone() };
        }
        // A table in a table.
        let named = [self.head(), ".", self.table].concat();
        Self { block: self.block, named: Some(named.into()), table }
    }
    /// Block and name, without a table in it: `stream "wash"`.
    #[must_use]
    pub fn head(&self) -> &str {
        self.named.as_deref().unwrap_or(self.block)
    }
    /// The path of one of its keys: `stream "wash".oil.mean`.
    #[must_use]
    pub fn path(&self, spec: &'static KeySpec) -> Cow<'static, str> {
        match (&self.named, self.table) {
            (None, "") => Cow::Borrowed(spec.path),
            (_, "") => Cow::Owned([self.head(), ".", spec.name].concat()),
            (_, table) => Cow::Owned([self.head(), ".", table, ".", spec.name].concat()),
        }
    }
}

/// A key where it stands.
#[derive(Debug)]
pub struct Key<'a, F> {
    /// What was said of it.
    pub said: &'a F,
    /// As declared.
    pub spec: &'static KeySpec,
    at: &'a Place,
    units: Option<(&'static Unit, &'static Unit)>,
    words: [(&'static str, &'a str); 2],
    when: &'static str,
    is_asked: bool,
}

impl<F> Copy for Key<'_, F> {}

impl<F> Clone for Key<'_, F> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<'a, F> Key<'a, F> {
    /// A key of a block.
    #[must_use]
    pub const fn new(said: &'a F, spec: &'static KeySpec, at: &'a Place) -> Self {
        Self { said, spec, at, units: spec.units, words: [("", ""); 2], when: "", is_asked: true }
    }
    /// The same where an answer is to stand in another block of its kind.
    #[must_use]
    pub fn at(self, at: &'a Place) -> Self {
        Self { at, ..self }
    }
    /// The same with a word for a placeholder of its question: `{name}`.
    #[must_use]
    pub fn word(mut self, placeholder: &'static str, word: &'a str) -> Self {
        if let Some(free) = self.words.iter_mut().find(|(known, _)| known.is_empty()) {
            *free = (placeholder, word);
        }
        self
    }
    /// The same of something with a name.
    #[must_use]
    pub fn of(self, name: &'a str) -> Self {
        self.word("name", name)
    }
    /// The same with the other question that is declared for this.
    #[must_use]
    pub fn when(self, when: &'static str) -> Self {
        Self { when, ..self }
    }
    /// The same without a question, where nobody could answer it.
    #[must_use]
    pub fn unasked(self) -> Self {
        Self { is_asked: false, ..self }
    }
    /// The same, asked only on a condition.
    #[must_use]
    pub fn asked_if(self, asked: bool) -> Self {
        Self { is_asked: self.is_asked && asked, ..self }
    }
    /// The same in other units of print.
    #[must_use]
    pub fn in_units(self, us: &'static Unit, si: &'static Unit) -> Self {
        Self { units: Some((us, si)), ..self }
    }
    /// Print units.
    #[must_use]
    pub fn units(&self) -> Option<(&'static Unit, &'static Unit)> {
        self.units
    }
    /// Its path: `stream "wash".flow`.
    #[must_use]
    pub fn path(&self) -> Cow<'static, str> {
        self.at.path(self.spec)
    }
    /// Where a value comes from that stands in the company's settings under it.
    #[must_use]
    pub fn by_settings(&self) -> Whence<'static> {
        Whence::Settings { key: self.path() }
    }
    /// The block that it stands in, by its name: `stream "wash"`.
    #[must_use]
    pub fn head(&self) -> &str {
        self.at.head()
    }
    /// Where it stands, in words: `stream "wash": flow`.
    #[must_use]
    pub fn place(&self) -> String {
        match self.at.table {
            "" => format!("{}: {}", self.at.head(), self.spec.name),
            table => format!("{}: {table}: {}", self.at.head(), self.spec.name),
        }
    }
    /// The table that stands, or would stand, under it.
    #[must_use]
    pub fn inside(&self) -> Place {
        self.at.inside(self.spec.name)
    }
    /// The question to the customer, with its words filled in; empty where none is asked.
    #[must_use]
    pub fn question(&self) -> String {
        if self.is_asked { self.spec.question(self.when, &self.words) } else { String::new() }
    }
}

impl<'a, B: Block> Key<'a, Option<B>> {
    /// The table, or one of which nobody said a word.
    #[must_use]
    pub fn or_unsaid(&self) -> Cow<'a, B> {
        match self.said {
            Some(table) => Cow::Borrowed(table),
            None => Cow::Owned(B::standing(self.inside())),
        }
    }
}

impl<'a, T: PartialEq> Key<'a, Said<T>> {
    /// Where it stands, and where the claim that is taken comes from: `outlet: pipe, from drawing P-2`.
    #[must_use]
    pub fn source(&self) -> Whence<'a> {
        self.said.1.source(self.place())
    }
    /// The same by its path: `method.mesh_credit, from drawing P-2`.
    #[must_use]
    pub fn source_by_path(&self) -> Whence<'a> {
        self.said.1.source(self.path())
    }
}

impl<'a, C: PartialEq> Key<'a, Word<C>> {
    /// Where it stands, and where the claim that is taken comes from: `european: system, from the client`.
    #[must_use]
    pub fn source(&self) -> Whence<'a> {
        self.said.1.source(self.place())
    }
    /// The same by its path: `method.rise, from the client`.
    #[must_use]
    pub fn source_by_path(&self) -> Whence<'a> {
        self.said.1.source(self.path())
    }
}

/// A question with words in place of its placeholders, `{name}`. What stands in brackets stands only where every word in
/// it is known: `Has the size[ of the {name}] been measured?`
pub(super) fn filled(text: &str, words: &[(&'static str, &str)]) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(open) = rest.find('[') {
        let (before, after) = rest.split_at(open);
        out.push_str(&plain(before, words).0);
        let (part, behind) = after[1..].split_once(']').unwrap_or((&after[1..], ""));
        let (part, is_known) = plain(part, words);
        if is_known {
            out.push_str(&part);
        }
        rest = behind;
    }
    out.push_str(&plain(rest, words).0);
    out
}

/// A text without brackets, and whether all words in it were known.
fn plain(text: &str, words: &[(&'static str, &str)]) -> (String, bool) {
    let (mut out, mut is_known) = (String::new(), true);
    let mut rest = text;
    while let Some((before, (name, behind))) =
        rest.split_once('{').and_then(|(before, after)| Some((before, after.split_once('}')?)))
    {
        out.push_str(before);
        match words.iter().find(|(known, word)| *known == name && !word.is_empty()) {
            Some((_, word)) => out.push_str(word),
            None => is_known = false,
        }
        rest = behind;
    }
    out.push_str(rest);
    (out, is_known)
}

#[cfg(test)]
mod tests {
    use super::{Place, filled};

    #[test]
    fn words_stand_where_their_placeholders_stood() {
        let text = "Has the size[ of the {name}] been measured, {name} [or {other}]?";
        assert_eq!(filled(text, &[("name", "rain"), ("other", "")]), "Has the size of the rain been measured, rain ?");
        assert_eq!(filled("How deep is the {name}?", &[("name", "{pit}")]), "How deep is the {pit}?");
        assert_eq!(filled("Is it [open?", &[]), "Is it open?");
    }

    #[test]
    fn a_table_in_a_table_is_named_by_both() {
        let place = Place::named("stream", "wash").inside("oil");
        assert_eq!((place.head(), place.table), ("stream \"wash\"", "oil"));
        let deeper = place.inside("droplets");
        assert_eq!((deeper.head(), deeper.table), ("stream \"wash\".oil", "droplets"));
    }
}
