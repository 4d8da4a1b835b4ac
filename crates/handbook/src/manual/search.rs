//! Search by words over formulas, data and whatever a later room adds.
//!
//! Every word of a query must stand in an entry, whole or as the beginning of a word; where no entry has them all, those
//! with the most are given. A hit in the title counts most, then one among symbols and meanings, then one in the text.

/// What an entry is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// A formula.
    Formula,
    /// A row of published data; its id is that of the table, a stroke and the row's word.
    Data,
    /// A rule.
    Rule,
}

impl Kind {
    /// The word in print.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Kind::Formula => "formula",
            Kind::Data => "data",
            Kind::Rule => "rule",
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
    /// Where in its text a word of the query stands first, with what is around it; empty where none does.
    pub excerpt: &'a str,
}

/// What a word in the title, the keys and the text counts: as a whole, and as a beginning.
const WEIGHTS: [(u32, u32); 3] = [(100, 70), (40, 25), (10, 6)];
/// What counts on top where the whole title is the query.
const EXACT: u32 = 200;
/// Longest excerpt, in bytes.
const EXCERPT: usize = 160;

/// Entries ready to be searched.
#[derive(Debug)]
pub struct Index {
    entries: Vec<Entry>,
    words: Vec<Words>,
}

/// The words of one entry.
#[derive(Debug)]
struct Words {
    /// Those of the title, in order.
    title: String,
    /// Those of title, keys and text, each list sorted.
    lists: [Vec<String>; 3],
}

impl Index {
    /// Reads the words of all entries.
    #[must_use]
    pub fn new(entries: Vec<Entry>) -> Self {
        let sorted = |text: &str| {
            let mut found = words(text);
            found.sort_unstable();
            found.dedup();
            found
        };
        let words = entries.iter().map(|e| Words {
            title: words(&e.title).join(" "),
            lists: [sorted(&e.title), sorted(&format!("{} {}", e.id, e.keys)), sorted(&e.text)],
        });
        Self { words: words.collect(), entries }
    }

    /// What fits a query, the best first; equal ones in the order of the entries.
    #[must_use]
    pub fn search(&self, query: &str) -> Vec<Hit<'_>> {
        let asked = words(query);
        if asked.is_empty() {
            return Vec::new();
        }
        let whole = asked.join(" ");
        let scored = self.entries.iter().zip(&self.words).filter_map(|(entry, own)| {
            let scores: Vec<u32> =
                asked.iter().map(|word| score(word, &own.lists)).filter(|score| *score > 0).collect();
            let exact = if own.title == whole { EXACT } else { 0 };
            (!scores.is_empty()).then(|| (scores.len(), scores.iter().sum::<u32>() + exact, entry))
        });
        let scored: Vec<_> = scored.collect();
        let most = scored.iter().map(|(count, ..)| *count).max().unwrap_or(0);
        let mut hits: Vec<Hit<'_>> = scored
            .into_iter()
            .filter(|(count, ..)| *count == most)
            .map(|(_, score, entry)| Hit { entry, score, excerpt: excerpt(&entry.text, &asked) })
            .collect();
        // A stable sort keeps the order of the entries among equals.
        hits.sort_by_key(|hit| core::cmp::Reverse(hit.score));
        hits
    }
}

/// What one word counts in an entry: the best of its places, and a little for each other one.
fn score(word: &str, lists: &[Vec<String>; 3]) -> u32 {
    let found = lists.iter().zip(WEIGHTS).map(|(list, (whole, beginning))| match stands(word, list) {
        Some(true) => whole,
        Some(false) => beginning,
        None => 0,
    });
    let (best, sum) = found.fold((0, 0), |(best, sum), score| (score.max(best), sum + score));
    best + (sum - best) / 10
}

/// Whether a word stands in a sorted list, whole or as the beginning of another.
fn stands(word: &str, list: &[String]) -> Option<bool> {
    let one = |word: &str| {
        let at = list.partition_point(|other| other.as_str() < word);
        list.get(at).filter(|other| other.starts_with(word)).map(|other| other == word)
    };
    // Droplets are asked for and a droplet is described: one is as good as several.
    let singular = word.strip_suffix('s').filter(|rest| rest.chars().count() > 2);
    match (one(word), singular.and_then(one)) {
        (Some(true), _) | (_, Some(true)) => Some(true),
        (a, b) => a.or(b),
    }
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
        asked.iter().any(|asked| word.starts_with(asked.strip_suffix('s').unwrap_or(asked)))
    };
    let Some((at, _)) = text.char_indices().find(|(at, c)| c.is_alphanumeric() && begins(*at) && fits(&text[*at..]))
    else {
        return "";
    };
    // From the beginning of the sentence, where that is near.
    let start = text[..at].rfind(". ").map_or(0, |end| end + 2);
    let start = if at - start > EXCERPT / 2 { at } else { start };
    let rest = &text[start..];
    let longest = rest.char_indices().map(|(k, _)| k).chain([rest.len()]).take_while(|k| *k <= EXCERPT).last();
    let longest = longest.unwrap_or(0);
    if longest == rest.len() {
        return rest;
    }
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
    fn an_excerpt_is_what_stands_around_the_word() {
        let index = index();
        assert_eq!(index.search("creeping")[0].excerpt, "Creeping flow.");
        assert_eq!(index.search("slow")[0].excerpt, "Long before that, flow is slow.");
        assert_eq!(index.search("crest")[0].excerpt, "");
        let long = "µ".repeat(100) + " end of it " + &"word ".repeat(60);
        let cut = excerpt(&long, &["end".to_owned()]);
        assert!(cut.starts_with("end of it") && cut.len() <= EXCERPT && cut.ends_with("word"), "{cut}");
    }
}
