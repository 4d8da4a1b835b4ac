//! What is said of bad input: where, why, and what to do.

use core::fmt;

/// One fault in something a person wrote.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// Where: a key, an argument, a line.
    pub place: String,
    /// What is wrong, with the value seen.
    pub reason: String,
    /// What to write instead.
    pub remedy: String,
}

impl Fault {
    /// A fault at `place`.
    pub fn new(place: impl Into<String>, reason: impl Into<String>, remedy: impl Into<String>) -> Self {
        Self { place: place.into(), reason: reason.into(), remedy: remedy.into() }
    }

    /// The same fault, seen from further out: `place` is put before its own.
    #[must_use]
    pub fn at(mut self, place: &str) -> Self {
        self.place = if self.place.is_empty() { place.to_owned() } else { format!("{place}: {}", self.place) };
        self
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}; {}", self.place, self.reason, self.remedy)
    }
}

/// The candidate nearest to `word` by edit distance, if any is near enough to be meant.
pub fn nearest<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let limit = 1 + word.chars().count() / 3;
    candidates
        .into_iter()
        .map(|c| (distance(&word.to_lowercase(), &c.to_lowercase()), c))
        .filter(|(d, _)| *d <= limit)
        .min_by_key(|(d, _)| *d)
        .map(|(_, c)| c)
}

/// Edit distance in single-character insertions, deletions, replacements and swaps of neighbours.
pub(crate) fn distance(a: &str, b: &str) -> usize {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let mut table = vec![vec![0; b.len() + 1]; a.len() + 1];
    for i in 0..=a.len() {
        for j in 0..=b.len() {
            table[i][j] = if i == 0 || j == 0 {
                i + j
            } else {
                let replaced = table[i - 1][j - 1] + usize::from(a[i - 1] != b[j - 1]);
                let best = replaced.min(table[i - 1][j] + 1).min(table[i][j - 1] + 1);
                let swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
                if swapped { best.min(table[i - 2][j - 2] + 1) } else { best }
            };
        }
    }
    table[a.len()][b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_word_is_named_only_when_near() {
        assert_eq!(nearest("flwo", ["flow", "area"]), Some("flow"));
        assert_eq!(nearest("zebra", ["flow", "area"]), None);
        assert_eq!(distance("kitten", "sitting"), 3);
    }
}
