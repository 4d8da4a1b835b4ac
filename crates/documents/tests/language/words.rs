//! Words that only the makers of this program would understand.

use crate::texts::Texts;
use crate::units::around;
use std::collections::BTreeSet;
use stillrise_handbook::manual::WORDS;
use stillrise_handbook::manual::words::word;

/// Each with what is said instead.
const STUMBLES: &[(&str, &str)] = &[
    ("rung", "step of the ladder"),
    ("footing it is held on", "with the influent at its peak"),
    ("taken care of ahead", "separated from the water ahead"),
    ("drained elsewhere", "led elsewhere"),
    ("nobody has decided on it", "not decided yet"),
    ("in units of", "in"),
    ("mg/L not by gravity", "gravity does not remove it"),
];

/// Where they stand.
pub fn to_stumble_over(all: &Texts) -> Vec<String> {
    let mut found = Vec::new();
    for text in all.0.iter().filter(|text| !text.is_trail) {
        for ours in &text.ours {
            for (word, instead) in STUMBLES {
                if let Some(at) = ours.find(word) {
                    found.push(format!("word ({instead}): {}: {}", text.name, around(ours, at)));
                }
            }
        }
    }
    found
}

/// Terms that a report may use only where it says what they mean.
const TERMS: [&str; 16] = [
    "free oil",
    "emulsified",
    "dissolved",
    "design droplet",
    "overflow rate",
    "mixed bound",
    "ideal bound",
    "ladder of prediction",
    "interval",
    "crest",
    "downcomer",
    "invert",
    "median droplet",
    "not by gravity",
    "not shown",
    "set point",
];

/// Reports that use a term and do not define it.
pub fn undefined(all: &Texts) -> Vec<String> {
    let (mut found, mut seen) = (Vec::new(), BTreeSet::new());
    // The first edition of each: later ones hold what it does not.
    for text in all.0.iter().filter(|text| text.name.ends_with("calculation-report") && seen.insert(&text.name)) {
        for term in TERMS {
            let Ok(w) = word(term) else {
                found.push(format!("{term}: no word of the glossary"));
                continue;
            };
            let defines = text.said.iter().any(|line| line == w.says);
            let uses = text.said.iter().any(|line| !is_of_glossary(line) && w.is_used_in(&line.to_lowercase()));
            if uses && !defines {
                found.push(format!("{}: \"{term}\" is used and not defined", text.name));
            }
        }
    }
    found
}

/// Words of the glossary that no document uses.
pub fn of_no_text(all: &Texts) -> Vec<String> {
    let mut left: Vec<_> = WORDS.iter().collect();
    for line in all.0.iter().flat_map(|text| &text.said).filter(|line| !is_of_glossary(line)) {
        let small = line.to_lowercase();
        left.retain(|w| !w.is_used_in(&small));
    }
    left.into_iter().map(|w| format!("\"{}\" is defined, and stands in no document", w.word)).collect()
}

/// Whether a line is a word or a definition of the glossary itself.
fn is_of_glossary(line: &str) -> bool {
    WORDS.iter().any(|w| w.says == line || line.eq_ignore_ascii_case(w.word))
}
