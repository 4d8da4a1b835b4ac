//! The manual as data: what a page of the handbook says, its tables of published data, and a search over all of it.
//! Whoever shows it, on a terminal or on a page, decides how; no words are made up there.
//!
//! A formula is described by [`formula()`] and worked by [`work()`]; [`tables()`] lists published data; [`entries`] gives all of
//! it to a [`search::Index`], to which a later room adds what it knows.

pub mod area;
pub mod formula;
mod oil;
pub mod search;
pub mod table;
mod tables;
mod variable;
pub mod words;
mod work;

pub use area::{AREAS, Area};
pub use formula::{Formula, formula};
pub use oil::viscosities;
pub use table::Table;
pub use tables::tables;
pub use variable::{Variable, result, span, variables};
pub use words::WORDS;
pub use work::{Worked, named, shown, work};

use crate::equation::plain_symbol;
use crate::pages;
use search::{Entry, Kind};

/// An entry for every formula, every row of published data and every word of the glossary, formulas first.
#[must_use]
pub fn entries() -> Vec<Entry> {
    let formulas = pages().map(|page| {
        let mut keys: Vec<String> = vec![page.id.to_owned()];
        for v in variables(page).iter().chain([&result(page)]) {
            keys.extend(v.math.split('|').flat_map(|m| [m.to_owned(), plain_symbol(m)]));
            keys.push(v.meaning.to_owned());
        }
        keys.extend(Area::of(page).map(|area| area.title.to_owned()));
        keys.extend(page.helpers.iter().map(|h| h.meaning.to_owned()));
        let mut text = formula::paragraphs(page.note);
        text.extend(page.sources.iter().map(ToString::to_string));
        Entry {
            kind: Kind::Formula,
            id: page.id.to_owned(),
            title: page.title.to_owned(),
            keys: keys.join(" "),
            text: text.join(" "),
        }
    });
    let data = tables().into_iter().flat_map(|table| {
        let head = table.columns.iter().map(|c| c.title).collect::<Vec<_>>().join(" ");
        table.rows.iter().map(|row| row.entry(&table, &head)).collect::<Vec<_>>()
    });
    formulas.chain(data).chain(WORDS.iter().map(defined)).collect()
}

/// A word of the glossary as a search finds it.
fn defined(w: &words::Word) -> Entry {
    let source = w.source.map_or_else(String::new, |source| format!(" {source}"));
    Entry {
        kind: Kind::Word,
        id: w.id(),
        title: w.word.to_owned(),
        keys: w.also.join(" "),
        text: format!("{}{source}", w.says),
    }
}
