//! Finds in a customer's text what an enquiry asks for: every quantity, oil, product, surface, pump, place and limited
//! pollutant, each with the keys that it could answer.
//!
//! Nothing is guessed by a model: numbers are read by the tables of units, words by those of the handbook, and which key a
//! number may answer follows from its dimension, its bounds and the words beside it, by lists that stand in [`cues`]. A
//! person takes an offer or leaves it.

pub mod answers;
mod counts;
pub mod cues;
pub mod keys;
mod offers;
mod products;
mod text;
mod words;

pub use offers::Offer;
pub use text::Sentence;

use core::ops::Range;
use stillrise_units::Dim;
use stillrise_units::parse::{Reading, Span};

/// What was found in a text.
#[derive(Debug, Clone)]
pub enum What {
    /// A quantity, and what it measures.
    Quantity(Box<Span>, Dim),
    /// A word of the trade: what kind of thing it names, and the word of an enquiry for it.
    Word(Thing, String),
    /// A range of pH.
    Ph(String),
    /// A number that counts something or is said in words: the path of the key that it answers, and how many.
    Count(&'static str, f64),
    /// A gravity without a unit, as a file takes it.
    Gravity(String),
}

/// What kind of thing a word names.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Thing {
    /// An oil or a fuel.
    Oil,
    /// A product that goes into water.
    Chemical,
    /// A paved or other surface.
    Surface,
    /// What a limit counts.
    Pollutant,
    /// Of which statistic a limit is.
    Statistic,
    /// A kind of pump.
    Pump,
    /// A kind of place.
    Facility,
    /// Where the water goes.
    Receiver,
    /// How the water comes.
    Feed,
}

impl Thing {
    /// In print.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Thing::Oil => "oil",
            Thing::Chemical => "chemical",
            Thing::Surface => "surface",
            Thing::Pollutant => "pollutant",
            Thing::Statistic => "statistic",
            Thing::Pump => "pump",
            Thing::Facility => "facility",
            Thing::Receiver => "receiver",
            Thing::Feed => "feed",
        }
    }
}

/// One find.
#[derive(Debug, Clone)]
pub struct Find {
    /// The bytes of the text that say it.
    pub at: Range<usize>,
    /// What they say.
    pub what: What,
    /// The sentence that it stands in, by place.
    pub sentence: usize,
    /// The keys that it could answer, the likeliest first.
    pub offers: Vec<Offer>,
}

/// A text that was read.
#[derive(Debug, Clone)]
pub struct Mail {
    /// Its sentences, headings and lines of tables.
    pub sentences: Vec<Sentence>,
    /// What was found, in the order of the text.
    pub finds: Vec<Find>,
}

/// Reads a customer's text.
#[must_use]
pub fn read_mail(text: &str, reading: &Reading) -> Mail {
    let sentences = text::sentences(text);
    let of = |at: usize| {
        let next = sentences.partition_point(|s| s.at.start <= at);
        next.saturating_sub(1)
    };
    let mut finds: Vec<Find> = Vec::new();
    let low = words::lower(text);
    let words = words::words(text, &low);
    // A number within a word or a set phrase is none of its own: "24 h composite", "1 in 5 years".
    let phrases: Vec<(Range<usize>, What)> = counts::odds(&low).into_iter().chain(words).collect();
    let said = |at: &Range<usize>| sentences.get(of(at.start)).is_none_or(|s| !s.is_aside);
    let take = |finds: &mut Vec<Find>, at: Range<usize>, what: What| {
        let taken = finds.iter().any(|find| find.at.start < at.end && at.start < find.at.end);
        if !taken && said(&at) {
            finds.push(Find { sentence: of(at.start), at, what, offers: Vec::new() });
        }
    };
    for (at, what) in phrases.iter().filter(|(at, _)| text[at.clone()].contains(|c: char| c.is_ascii_digit())) {
        take(&mut finds, at.clone(), what.clone());
    }
    let found = stillrise_units::parse::quantities_in(text, reading);
    for (at, span) in products::products(text, &found, reading) {
        take(&mut finds, at, What::Quantity(Box::new(span), Dim::Area));
    }
    for one in found {
        take(&mut finds, one.at, What::Quantity(Box::new(one.span), one.dim));
    }
    for (at, what) in phrases.into_iter().chain(counts::counts(&low)) {
        take(&mut finds, at, what);
    }
    finds.sort_by_key(|find| find.at.start);
    let offers: Vec<Vec<Offer>> = finds.iter().map(|find| offers::offers(text, &sentences, find)).collect();
    for (find, offers) in finds.iter_mut().zip(offers) {
        find.offers = offers;
    }
    Mail { sentences, finds }
}
