//! Search by words over formulas, data and whatever a later room adds.
//!
//! Every word of a query must stand in an entry, whole or as the beginning of a word; where no entry has them all, those
//! with the most are given. A hit in the title counts most, then one among symbols and meanings, then one in the text.

use core::ops::Bound;
use std::collections::BTreeMap;

/// What an entry is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// A formula.
    Formula,
    /// A row of published data; its id is that of the table, a stroke and the row's word.
    Data,
    /// A rule.
    Rule,
    /// A method of an authority.
    Method,
    /// A key of a file.
    Key,
    /// A cause of trouble.
    Cause,
    /// A part of the guide.
    Guide,
    /// A word of the glossary.
    Word,
}

impl Kind {
    /// The word in print.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Kind::Formula => "formula",
            Kind::Data => "data",
            Kind::Rule => "rule",
            Kind::Method => "method",
            Kind::Key => "key",
            Kind::Cause => "cause",
            Kind::Guide => "guide",
            Kind::Word => "word",
        }
    }
}

/// What can be found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// What it is.
    pub kind: Kind,
    /// What names it.
    pub id: String,
    /// Its title.
    pub title: String,
    /// Ids, symbols, meanings and other short words.
    pub keys: String,
    /// Everything else that is said of it.
    pub text: String,
}

/// One entry that was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hit<'a> {
    /// The entry.
    pub entry: &'a Entry,
    /// How well it fits; the larger the better.
    pub score: u32,
}

impl<'a> Hit<'a> {
    /// What stands in its text around the first word of a query, or the beginning of it where no word stands there.
    #[must_use]
    pub fn excerpt(&self, query: &str) -> &'a str {
        excerpt(&self.entry.text, &asked(query))
    }
}

/// What a word in the title, the keys and the text counts: as a whole, and as a beginning.
const WEIGHTS: [(u32, u32); 3] = [(100, 70), (40, 25), (10, 6)];
/// What counts on top where the whole title is the query.
const EXACT: u32 = 200;
/// Longest excerpt, in bytes.
const EXCERPT: usize = 160;
/// Shortest word that is also looked for as the beginning of another.
const BEGINS: usize = 3;
/// Words that say nothing of what is looked for.
const COMMON: &[&str] = &[
    "a", "an", "and", "are", "at", "by", "do", "does", "for", "from", "how", "in", "is", "it", "of", "on", "or", "the",
    "to", "what", "when", "which", "with",
];

/// Entries ready to be searched.
#[derive(Debug)]
pub struct Index {
    entries: Vec<Entry>,
    /// The words of each title, in order.
    titles: Vec<String>,
    /// For each word the entries in which it stands, and in which part: title, keys, text.
    places: BTreeMap<String, Vec<(usize, usize)>>,
}

impl Index {
    /// Reads the words of all entries.
    #[must_use]
    pub fn new(entries: Vec<Entry>) -> Self {
        let mut places: BTreeMap<String, Vec<(usize, usize)>> = BTreeMap::new();
        for (at, entry) in entries.iter().enumerate() {
            let keys = format!("{} {}", entry.id, entry.keys);
            for (part, text) in [&entry.title, &keys, &entry.text].into_iter().enumerate() {
                for word in words(text) {
                    let found = places.entry(word).or_default();
                    if found.last() != Some(&(at, part)) {
                        found.push((at, part));
                    }
                }
            }
        }
        let titles = entries.iter().map(|entry| words(&entry.title).join(" ")).collect();
        Self { entries, titles, places }
    }

    /// What fits a query, the best first; equal ones in the order of the entries.
    #[must_use]
    pub fn search(&self, query: &str) -> Vec<Hit<'_>> {
        let whole = words(query).join(" ");
        // How many words stand in an entry, and what they count.
        let mut found: BTreeMap<usize, (usize, u32)> = BTreeMap::new();
        for word in asked(query) {
            for (at, parts) in self.stands(&word) {
                let (count, score) = found.entry(at).or_default();
                *count += 1;
                *score += counts(parts);
            }
        }
        let most = found.values().map(|(count, _)| *count).max().unwrap_or(0);
        let best = found.into_iter().filter(|(_, (count, _))| *count == most);
        let mut hits: Vec<Hit<'_>> = best
            .filter_map(|(at, (_, score))| {
                let exact = if self.titles.get(at) == Some(&whole) { EXACT } else { 0 };
                self.entries.get(at).map(|entry| Hit { entry, score: score + exact })
            })
            .collect();
        // A stable sort keeps the order of the entries among equals.
        hits.sort_by_key(|hit| core::cmp::Reverse(hit.score));
        hits
    }

    /// The entries in which a word stands, whole or as the beginning of another, with what it counts in each part.
    fn stands(&self, word: &str) -> BTreeMap<usize, [u32; 3]> {
        let mut found: BTreeMap<usize, [u32; 3]> = BTreeMap::new();
        for form in [word, singular(word)] {
            let from = (Bound::Included(form), Bound::Unbounded);
            for (other, places) in self.places.range::<str, _>(from).take_while(|(other, _)| other.starts_with(form)) {
                let is_whole = other == form;
                if !is_whole && form.chars().count() < BEGINS {
                    break;
                }
                for (at, part) in places {
                    let (whole, beginning) = WEIGHTS[*part];
                    let slot = &mut found.entry(*at).or_default()[*part];
                    *slot = (*slot).max(if is_whole { whole } else { beginning });
                }
            }
        }
        found
    }
}

/// What one word counts in an entry: the best of its places, and a little for each other one.
fn counts(parts: [u32; 3]) -> u32 {
    let best = parts.into_iter().max().unwrap_or(0);
    best + (parts.into_iter().sum::<u32>() - best) / 10
}

/// Droplets are asked for and a droplet is described: one is as good as several.
fn singular(word: &str) -> &str {
    word.strip_suffix('s').filter(|rest| rest.chars().count() >= BEGINS).unwrap_or(word)
}

/// The words of a query, without those that say nothing where others do.
fn asked(query: &str) -> Vec<String> {
    let all = words(query);
    let telling: Vec<String> = all.iter().filter(|word| !COMMON.contains(&word.as_str())).cloned().collect();
    if telling.is_empty() { all } else { telling }
}

/// The words of a text in small letters; those joined by a hyphen or a subscript also by their parts.
fn words(text: &str) -> Vec<String> {
    let small = text.to_lowercase().replace('μ', "µ");
    let mut found = Vec::new();
    for word in small.split(|c: char| !(c.is_alphanumeric() || c == '_' || c == '-')) {
        let word = word.trim_matches(['-', '_']);
        if !word.is_empty() {
            found.push(word.to_owned());
        }
        if word.contains(['-', '_']) {
            found.extend(word.split(['-', '_']).filter(|part| !part.is_empty()).map(str::to_owned));
        }
    }
    found
}

/// The part of a text around the first word asked for, cut between words.
fn excerpt<'a>(text: &'a str, asked: &[String]) -> &'a str {
    let begins = |at: usize| text[..at].chars().next_back().is_none_or(|c| !c.is_alphanumeric());
    let fits = |rest: &str| {
        let word: String = rest.chars().take_while(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect();
        asked.iter().any(|asked| word == *asked || asked.len() >= BEGINS && word.starts_with(singular(asked)))
    };
    let mut places = text.char_indices().filter(|(_, c)| c.is_alphanumeric()).map(|(at, _)| at);
    let at = places.find(|at| begins(*at) && fits(&text[*at..])).unwrap_or(0);
    // From the beginning of the sentence where that is near, else from a word a little ahead.
    let sentence = text[..at].rfind(". ").map_or(0, |end| end + 2);
    let ahead =
        || text[..at].char_indices().find(|(k, c)| *c == ' ' && k + EXCERPT / 3 >= at).map_or(at, |(k, _)| k + 1);
    let rest = &text[if at - sentence > EXCERPT / 2 { ahead() } else { sentence }..];
    if rest.len() <= EXCERPT {
        return rest;
    }
    let longest = rest.char_indices().map(|(k, _)| k).take_while(|k| *k <= EXCERPT).last().unwrap_or(0);
    rest[..longest].rfind(' ').map_or(&rest[..longest], |end| &rest[..end])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn index() -> Index {
        let entry = |id: &str, title: &str, keys: &str, text: &str| Entry {
            kind: Kind::Data,
            id: id.to_owned(),
            title: title.to_owned(),
            keys: keys.to_owned(),
            text: text.to_owned(),
        };
        Index::new(vec![
            entry("a", "Flow over a weir", "crest head", "The droplet is not meant."),
            entry("b", "Rise of a droplet", "rho_w density of the water", "Creeping flow."),
            entry("c", "Sheet flow", "n", "A weir stands elsewhere. Long before that, flow is slow."),
        ])
    }

    fn ids<'a>(index: &'a Index, query: &str) -> Vec<&'a str> {
        index.search(query).iter().map(|hit| hit.entry.id.as_str()).collect()
    }

    #[test]
    fn the_title_goes_before_keys_and_keys_before_text() {
        let index = index();
        assert_eq!(ids(&index, "droplets"), ["b", "a"]);
        assert_eq!(ids(&index, "weir"), ["a", "c"]);
        // Both have it in the title, the sheet in its text as well.
        assert_eq!(ids(&index, "FLOW"), ["c", "a", "b"]);
        assert_eq!(ids(&index, "rho"), ["b"]);
        assert_eq!(ids(&index, "sheet flow"), ["c"]);
    }

    #[test]
    fn all_words_are_asked_for_and_else_the_most() {
        let index = index();
        assert_eq!(ids(&index, "weir crest"), ["a"]);
        assert_eq!(ids(&index, "weir elsewhere nowhere"), ["c"]);
        assert!(ids(&index, "zinc").is_empty() && ids(&index, " - ").is_empty() && ids(&index, "").is_empty());
    }

    #[test]
    fn short_words_are_whole_and_common_ones_are_passed_over() {
        let index = index();
        // No title begins with sl that is not "slow", in a text; n is a symbol and no beginning.
        assert!(ids(&index, "sl").is_empty());
        assert_eq!(ids(&index, "n"), ["c"]);
        assert_eq!(ids(&index, "what is the rise of a droplet"), ["b"]);
        assert_eq!(ids(&index, "the"), ["b", "a"]);
    }

    #[test]
    fn an_excerpt_is_what_stands_around_the_word() {
        let index = index();
        let excerpt_of = |query: &str| index.search(query)[0].excerpt(query);
        assert_eq!(excerpt_of("creeping"), "Creeping flow.");
        assert_eq!(excerpt_of("slow"), "Long before that, flow is slow.");
        assert_eq!(excerpt_of("crest"), "The droplet is not meant.");
        let long = "µ".repeat(100) + " end of it " + &"word ".repeat(60);
        let cut = excerpt(&long, &["end".to_owned()]);
        assert!(cut.starts_with("end of it") && cut.len() <= EXCERPT && cut.ends_with("word"), "{cut}");
    }
}
