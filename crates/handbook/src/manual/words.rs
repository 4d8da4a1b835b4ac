//! The words that documents use, each once in a plain sentence, and the symbols of the formulas, read off their pages.

mod list;

use super::{Variable, result, variables};
use crate::equation::plain_symbol;
use crate::page::{Page, Source};
use crate::pages;
use std::collections::BTreeMap;
use stillrise_units::{Fault, nearest};

pub use list::WORDS;

/// A word of the trade, or one that documents of this program use in a sense of their own.
#[derive(Debug, PartialEq)]
pub struct Word {
    /// As it is looked up: small letters, one of it.
    pub word: &'static str,
    /// Other forms in which texts write it.
    pub also: &'static [&'static str],
    /// What it means, in a sentence or two.
    pub says: &'static str,
    /// Where a standard or a publication defines it; none for our own words.
    pub source: Option<&'static Source>,
}

impl Word {
    /// Its name in an address.
    #[must_use]
    pub fn id(&self) -> String {
        self.word.replace(' ', "-")
    }
    /// Whether a text, in small letters, uses it: as whole words, in any of its forms.
    #[must_use]
    pub fn is_used_in(&self, text: &str) -> bool {
        core::iter::once(&self.word).chain(self.also).any(|form| stands_in(form, text))
    }
}

/// Whether whole words stand in a text.
fn stands_in(form: &str, text: &str) -> bool {
    let is_letter = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
    text.match_indices(form).any(|(at, _)| {
        let ahead = text.get(..at).and_then(|t| t.chars().next_back());
        let behind = text.get(at + form.len()..).and_then(|t| t.chars().next());
        !is_letter(ahead) && !is_letter(behind)
    })
}

/// A word by its name or one of its forms.
///
/// # Errors
/// A fault that names the nearest one.
pub fn word(asked: &str) -> Result<&'static Word, Fault> {
    let small = asked.trim().to_lowercase().replace('-', " ");
    let is_it = |w: &&Word| core::iter::once(&w.word).chain(w.also).any(|form| form.replace('-', " ") == small);
    WORDS.iter().find(is_it).ok_or_else(|| {
        let near = nearest(&small, WORDS.iter().map(|w| w.word));
        let remedy = match near {
            Some(near) => format!("do you mean \"{near}\"? `stillrise words` lists all"),
            None => "`stillrise words` lists all".to_owned(),
        };
        Fault::new("word", format!("\"{asked}\" is no word of the list"), remedy)
    })
}

/// A symbol in one meaning, with the formulas that use it so.
#[derive(Debug, Clone, PartialEq)]
pub struct Symbol {
    /// In plain letters: `v_0`.
    pub symbol: String,
    /// As its pages write it.
    pub math: &'static str,
    /// What it is.
    pub meaning: &'static str,
    /// Where, in the order of the handbook.
    pub pages: Vec<&'static Page>,
}

/// The symbols of some pages, in the order of the alphabet; a symbol with several meanings stands once for each.
#[must_use]
pub fn symbols_of(pages: impl Iterator<Item = &'static Page>) -> Vec<Symbol> {
    let mut found: BTreeMap<(String, String, &'static str), Symbol> = BTreeMap::new();
    for page in pages {
        for v in variables(page).iter().chain([&result(page)]) {
            each(v, &mut |math| {
                let symbol = plain_symbol(math);
                let slot = found.entry((symbol.to_lowercase(), symbol.clone(), v.meaning)).or_insert_with(|| Symbol {
                    symbol,
                    math,
                    meaning: v.meaning,
                    pages: Vec::new(),
                });
                if !slot.pages.contains(&page) {
                    slot.pages.push(page);
                }
            });
        }
    }
    found.into_values().collect()
}

/// All symbols of the handbook.
#[must_use]
pub fn symbols() -> Vec<Symbol> {
    symbols_of(pages())
}

/// A series has a symbol for each column, a group none.
fn each(v: &Variable, take: &mut dyn FnMut(&'static str)) {
    v.math.split('|').filter(|math| !math.is_empty()).for_each(take);
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_word_is_defined_once_in_a_plain_sentence() {
        let mut seen = BTreeSet::new();
        for w in WORDS {
            assert!(w.says.ends_with('.') && w.says.len() > 30 && w.says.len() < 400, "{}: {}", w.word, w.says);
            for form in core::iter::once(&w.word).chain(w.also) {
                assert!(seen.insert(*form) && *form == form.to_lowercase(), "{form} stands twice or with a capital");
            }
        }
        let sorted = WORDS.windows(2).all(|pair| pair[0].word < pair[1].word);
        assert!(sorted, "the list is to be in the order of the alphabet");
    }

    #[test]
    fn a_word_is_found_by_its_forms_and_a_slip_is_told() {
        assert_eq!(word("Free oil").map(|w| w.word), Ok("free oil"));
        assert_eq!(word("nominal sizes").map(|w| w.word), Ok("nominal size"));
        let fault = word("tailwatre").unwrap_err();
        assert!(fault.remedy.contains("tailwater"), "{fault:?}");
        assert!(WORDS.iter().any(|w| w.word == "crest" && w.is_used_in("water up to the crest, 3 ft")));
        assert!(!WORDS.iter().any(|w| w.word == "crest" && w.is_used_in("a crestfallen engineer")));
    }

    #[test]
    fn symbols_come_from_the_pages() {
        let all = symbols();
        let rise = all.iter().find(|s| s.pages.iter().any(|page| page.id == "stokes-rise")).unwrap();
        assert!(!rise.meaning.is_empty() && all.len() > 200, "{}", all.len());
        assert!(all.windows(2).all(|p| p[0].symbol.to_lowercase() <= p[1].symbol.to_lowercase()));
    }
}
