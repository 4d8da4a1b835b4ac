//! A customer's answers to our questions, matched to them: written between or under the quoted questions, by their numbers, or
//! in free sentences.
//!
//! Quoted questions are found word by word, whatever marks, line breaks and blanks the mail put between the words. What stands
//! behind one, up to the next, answers it. Without such answers numbers are read, and without these the sentences whose words
//! and finds point to a question. Nothing is guessed: an answer that gives no value keeps its words.

mod free;
mod lines;
mod numbered;
mod quoted;
mod value;

use crate::Mail;
use core::ops::Range;
use stillrise_units::parse::Reading;

/// A question that was asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Asked {
    /// Its number in our mail.
    pub number: usize,
    /// The question as it was printed.
    pub text: String,
    /// The keys that take the answer, as the program prints their paths; none where several could.
    pub keys: Vec<String>,
}

/// An answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// Which question, by its place among those asked.
    pub question: usize,
    /// The bytes of the text that answer it.
    pub at: Range<usize>,
    /// The key that takes the value.
    pub key: Option<String>,
    /// The value as the key takes it; nothing where the words give none.
    pub value: Option<String>,
    /// The words, without marks of quotation and line breaks.
    pub said: String,
}

/// The answers in a text, which was read as `mail`, in the order of the questions, at most one to each.
#[must_use]
pub fn answers(text: &str, mail: &Mail, questions: &[Asked], reading: &Reading) -> Vec<Answer> {
    let lines = lines::lines(text);
    let quotes = quoted::quotes(text, questions);
    let mut found: Vec<(usize, Range<usize>)> = quoted::behind(text, &lines, &quotes);
    let is_open = |found: &[(usize, Range<usize>)], k: usize| found.iter().all(|(other, _)| *other != k);
    // What is quoted is ours, and no answer.
    let own = lines::own(text, &lines, &quotes);
    if found.is_empty() {
        let by_number = numbered::numbered(text, &own, questions);
        found.extend(by_number);
    }
    let open: Vec<usize> = (0..questions.len()).filter(|k| is_open(&found, *k)).collect();
    let taken: Vec<Range<usize>> = found.iter().map(|(_, at)| at.clone()).collect();
    found.extend(free::free((text, mail), &own, &taken, questions, &open, reading));
    found.sort_by_key(|(k, at)| (*k, at.start));
    found.dedup_by_key(|(k, _)| *k);
    let answer = |(question, at): (usize, Range<usize>)| {
        let said = lines::plain(&text[at.clone()]);
        let keys = questions.get(question).map_or(&[][..], |asked| &asked.keys);
        let read = keys.iter().find_map(|key| Some((key.clone(), value::value(key, &said, reading)?)));
        let (key, value) = match read {
            Some((key, value)) => (Some(key), Some(value)),
            None => (keys.first().cloned(), None),
        };
        Answer { question, at, key, value, said }
    };
    found.into_iter().map(answer).collect()
}

/// A path without names and numbers: `stream.oil.mean` of `stream "wash".oil.mean`.
#[must_use]
pub fn unnamed(key: &str) -> String {
    let mut out = String::new();
    let mut rest = key;
    // What stands in quotes is a name, dots and all.
    while let Some((before, behind)) = rest.split_once('"') {
        out.push_str(before);
        rest = behind.split_once('"').map_or("", |(_, behind)| behind);
    }
    out.push_str(rest);
    let parts = out.split('.').map(|part| part.split_whitespace().next().unwrap_or("").to_owned());
    let parts: Vec<String> =
        parts.filter(|part| !part.is_empty() && !part.chars().all(|c| c.is_ascii_digit())).collect();
    parts.join(".")
}
