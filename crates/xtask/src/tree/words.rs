//! Words that belong to somebody's desk: paths of one machine, notes about how a text came about.

use super::{Fault, Look, Rule};

/// The rule.
pub const RULE: Rule = Rule {
    name: "words",
    holds: "no file names a path of one machine or somebody's working notes",
    look: Look::File(look),
};

/// In two halves each, so that this file does not contain them.
const WORDS: &[&str] = &[
    concat!("/wor", "k/"),
    concat!("/tmp/", "st"),
    concat!("/tmp/", "t_"),
    concat!("/ro", "ot/"),
    concat!("tran", "script"),
    concat!("seed ", "document"),
];

/// Faults in one file of any kind; upper and lower case alike.
#[must_use]
pub fn look(path: &str, text: &str) -> Vec<Fault> {
    let find = |(n, line): (usize, &str)| {
        let line = line.to_lowercase();
        let say = |word: &&str| Fault::new(path, n + 1, format!("`{word}`: {}", RULE.holds));
        WORDS.iter().filter(|w| line.contains(**w)).map(say).collect::<Vec<_>>()
    };
    text.lines().enumerate().flat_map(find).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_word_is_found_with_its_line() {
        for word in WORDS {
            let faults = look("README.md", &format!("one\nsee {}x\n", word.to_uppercase()));
            assert_eq!((faults.len(), faults[0].line), (1, 2), "{word}");
        }
        assert_eq!(look("README.md", "work/ is done; /tmp/x"), []);
    }
}
