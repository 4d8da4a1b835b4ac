//! The manual: what each of its pages says, made once for the sheet that serves it (`pages/manual.rs`) and for the folder that is
//! written of it (`site`). A page stands on a [`Shelf`] under an id; [`Ways`] knows where it is found.

mod cause;
mod contents;
mod data;
mod formula;
mod found;
mod guide;
mod keys;
mod link;
mod markdown;
mod method;
mod oil;
pub mod pictures;
mod rule;
mod site;
mod words;

pub use contents::{contents, shelves};
pub use found::{address, search};
pub use guide::CONTRIBUTING;
pub use link::Ways;
pub use site::{UP, site};

use maud::Markup;
use stillrise_checks::RULES;
use stillrise_design::enquiry::blocks::Regulator;
use stillrise_handbook::fluids::oils::OILS;
use stillrise_handbook::manual::{named, tables};
use stillrise_handbook::pages;
use stillrise_search::diagnosis::causes::CAUSES;

/// A kind of pages.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shelf {
    /// Formulas.
    Formula,
    /// Tables of published data.
    Data,
    /// Oils.
    Oil,
    /// Rules.
    Rule,
    /// Methods of authorities.
    Method,
    /// Keys of files, a page for each block.
    Keys,
    /// Causes of trouble.
    Cause,
    /// Words and symbols.
    Words,
    /// What tells a newcomer how it is built and added to.
    Guide,
}

/// A page by its id and title.
pub struct Leaf {
    /// Its id on its shelf.
    pub id: String,
    /// Its title.
    pub title: String,
}

impl Shelf {
    /// All of them, in the order of the contents.
    pub const ALL: [Shelf; 9] = [
        Shelf::Formula,
        Shelf::Data,
        Shelf::Oil,
        Shelf::Rule,
        Shelf::Method,
        Shelf::Keys,
        Shelf::Cause,
        Shelf::Words,
        Shelf::Guide,
    ];
    /// Its word in addresses.
    #[must_use]
    pub fn folder(self) -> &'static str {
        match self {
            Shelf::Formula => "formula",
            Shelf::Data => "data",
            Shelf::Oil => "oil",
            Shelf::Rule => "rule",
            Shelf::Method => "method",
            Shelf::Keys => "keys",
            Shelf::Cause => "cause",
            Shelf::Words => "words",
            Shelf::Guide => "guide",
        }
    }
    /// The shelf of a word.
    #[must_use]
    pub fn named(folder: &str) -> Option<Shelf> {
        Shelf::ALL.into_iter().find(|shelf| shelf.folder() == folder)
    }
    /// Its name over its pages.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Shelf::Formula => "Formulas",
            Shelf::Data => "Published data",
            Shelf::Oil => "Oils",
            Shelf::Rule => "Rules",
            Shelf::Method => "Authorities' methods",
            Shelf::Keys => "Keys of the files",
            Shelf::Cause => "Causes of trouble",
            Shelf::Words => "Words and symbols",
            Shelf::Guide => "Guide",
        }
    }
    /// What its pages tell.
    #[must_use]
    pub fn about(self) -> &'static str {
        match self {
            Shelf::Formula => {
                "Equation, symbols with their units and ranges, source, and check values with what the formula gives."
            }
            Shelf::Data => "Tables with the source of each row.",
            Shelf::Oil => "Properties with their sources, and how each oil thins as it warms.",
            Shelf::Rule => "What each looks for, why it matters and what to do.",
            Shelf::Method => "How a local authority may ask for a separator to be sized, and what that leaves out.",
            Shelf::Keys => "What an enquiry, a range of units and a company's settings may say.",
            Shelf::Cause => "Why a unit that stands falls short, what would show it, and what to do.",
            Shelf::Words => "What the words and symbols of the documents mean.",
            Shelf::Guide => "What a package holds, how the program is built, and how to correct it or add to it.",
        }
    }
    /// Its pages, in reading order.
    #[must_use]
    pub fn leaves(self) -> Vec<Leaf> {
        let leaf = |id: &str, title: &str| Leaf { id: id.to_owned(), title: title.to_owned() };
        match self {
            Shelf::Formula => pages().map(|page| leaf(page.id, page.title)).collect(),
            Shelf::Data => tables().iter().map(|table| leaf(table.id, table.title)).collect(),
            Shelf::Oil => OILS.iter().map(|oil| leaf(oil.word, oil.title)).collect(),
            Shelf::Rule => RULES.iter().map(|rule| leaf(rule.id, rule.title)).collect(),
            Shelf::Method => Regulator::ALL.iter().map(|m| leaf(m.word(), method::title(*m))).collect(),
            Shelf::Keys => keys::blocks().map(|block| leaf(&block.id(), &block.title())).collect(),
            Shelf::Cause => CAUSES.iter().map(|cause| leaf(cause.id.word(), cause.title)).collect(),
            Shelf::Words => words::PARTS.iter().map(|part| leaf(part.id, part.title)).collect(),
            Shelf::Guide => guide::PAGES.iter().map(|page| leaf(page.id, page.title)).collect(),
        }
    }
    /// What a page of it says; `with` are arguments that the reader gives a formula. Nothing where there is no such page.
    #[must_use]
    pub fn body(self, id: &str, ways: Ways, with: &str) -> Option<Markup> {
        match self {
            Shelf::Formula => named(id).ok().map(|page| formula::body(page, ways, with)),
            Shelf::Data => tables().iter().find(|table| table.id == id).map(|table| data::body(table, ways)),
            Shelf::Oil => OILS.iter().find(|oil| oil.word == id).map(|oil| oil::body(oil, ways)),
            Shelf::Rule => RULES.iter().find(|rule| rule.id == id).map(|rule| rule::body(rule, ways)),
            Shelf::Method => Regulator::from_word(id).map(|m| method::body(m, ways)),
            Shelf::Keys => keys::blocks().find(|block| block.id() == id).map(|block| keys::body(&block, ways)),
            Shelf::Cause => CAUSES.iter().find(|cause| cause.id.word() == id).map(|cause| cause::body(cause, ways)),
            Shelf::Words => words::PARTS.iter().find(|part| part.id == id).map(|part| (part.body)(ways)),
            Shelf::Guide => guide::PAGES.iter().find(|page| page.id == id).map(|page| (page.body)(ways)),
        }
    }
}

/// A page by its title, as a browser lists it.
#[must_use]
pub fn title(shelf: Shelf, id: &str) -> Option<String> {
    shelf.leaves().into_iter().find(|leaf| leaf.id == id).map(|leaf| leaf.title)
}
