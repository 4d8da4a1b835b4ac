//! Answers in free sentences: those whose finds could answer the key of a question, and those that share its words.

use super::{Asked, unnamed, value};
use crate::text::sentences;
use crate::{Find, Mail};
use core::ops::Range;
use stillrise_units::parse::Reading;

/// Letters by which two words are held to be the same.
const STEM: usize = 5;
/// Words that a sentence must share with a question where no find points to its key.
const SHARED: usize = 2;
/// Letters of a word that says something.
const LONG: usize = 4;
/// Words that stand in any question.
const COMMON: [&str; 28] = [
    "what",
    "which",
    "does",
    "where",
    "when",
    "water",
    "separator",
    "took",
    "with",
    "that",
    "this",
    "from",
    "there",
    "have",
    "they",
    "your",
    "into",
    "much",
    "many",
    "will",
    "would",
    "them",
    "each",
    "these",
    "only",
    "other",
    "than",
    "unit",
];

/// What a text says, by the stems of its words.
fn stems(text: &str) -> Vec<String> {
    let mut all: Vec<String> = text
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| word.chars().count() >= LONG && !word.chars().any(|c| c.is_ascii_digit()))
        .map(str::to_lowercase)
        .filter(|word| !COMMON.contains(&word.as_str()))
        .map(|word| word.chars().take(STEM).collect())
        .collect();
    all.sort();
    all.dedup();
    all
}

/// The question itself, without what was taken and why it is asked.
fn core_of(text: &str) -> &str {
    text.find('?').map_or(text, |end| &text[..end])
}

/// For each open question the sentence that answers it best.
pub(super) fn free(
    (text, mail): (&str, &Mail),
    own: &[Range<usize>],
    taken: &[Range<usize>],
    questions: &[Asked],
    open: &[usize],
    reading: &Reading,
) -> Vec<(usize, Range<usize>)> {
    if open.is_empty() {
        return Vec::new();
    }
    let cores: Vec<_> = questions.iter().map(|asked| stems(core_of(&asked.text))).collect();
    let paths: Vec<Vec<String>> =
        questions.iter().map(|asked| asked.keys.iter().map(|key| unnamed(key)).collect()).collect();
    let within = |at: &Range<usize>| own.iter().any(|piece| piece.start < at.end && at.start < piece.end);
    let is_taken = |at: &Range<usize>| taken.iter().any(|piece| piece.start < at.end && at.start < piece.end);
    let said = sentences(text);
    let mut scored: Vec<(usize, usize, usize)> = Vec::new();
    for (s, sentence) in said.iter().enumerate() {
        if sentence.is_aside || !within(&sentence.at) || is_taken(&sentence.at) {
            continue;
        }
        let line = &text[sentence.at.clone()];
        if line.trim_end().ends_with('?') {
            continue;
        }
        let (words, low) = (stems(line), line.to_lowercase());
        let finds: Vec<&Find> = mail.finds.iter().filter(|find| find.sentence == s).collect();
        for k in open.iter().copied() {
            let asked = &questions[k];
            let shared = cores[k].iter().filter(|stem| words.contains(stem)).count();
            let points = asked.keys.iter().zip(&paths[k]).map(|(key, path)| {
                let of = finds.iter().flat_map(|find| &find.offers);
                let weight = of.filter(|o| o.path == *path && o.weight > 0).map(|o| o.weight).max();
                // Of several waters the one that is named is meant.
                let name = key.split('"').nth(1).map(str::to_lowercase);
                let named = name.is_some_and(|name| low.contains(&name));
                weight.map_or(0, |weight| weight as usize + 2) + 3 * usize::from(named && weight.is_some())
            });
            let points = points.max().unwrap_or(0);
            let points_to = points > 2 && (shared > 0 || points > 8);
            if !points_to && shared < SHARED {
                continue;
            }
            let read = asked.keys.iter().any(|key| value::value(key, line, reading).is_some());
            let shares = shared >= SHARED && (read || shared > SHARED);
            if points_to || shares {
                scored.push((points + 3 * shared + 2 * usize::from(read), k, s));
            }
        }
    }
    // The strongest first; each sentence answers one question, and each question is answered once.
    scored.sort_by(|a, b| b.0.cmp(&a.0).then(a.1.cmp(&b.1)).then(a.2.cmp(&b.2)));
    let mut all: Vec<(usize, Range<usize>)> = Vec::new();
    let (mut questions_done, mut sentences_done) = (Vec::new(), Vec::new());
    for (_, k, s) in scored {
        if !questions_done.contains(&k) && !sentences_done.contains(&s) {
            questions_done.push(k);
            sentences_done.push(s);
            all.push((k, said[s].at.clone()));
        }
    }
    all
}
