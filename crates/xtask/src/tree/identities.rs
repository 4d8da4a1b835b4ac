//! Typed identities: no rule, verdict, cause, key, section or reason is found by its text.

use super::source::{code, without_tests};
use super::{Fault, Look, Rule, is_source, room};

/// The rule.
pub const RULE: Rule = Rule {
    name: "identities",
    holds: "what has a kind is asked for its kind: no id, word, key, label, section or reason is compared with a text",
    look: Look::File(look),
};

const ROOMS: &[&str] = &["design", "checks", "search", "documents"];

/// Where words of the enquiry become kinds.
const READS: &str = "crates/design/src/enquiry/";

/// How a text is compared, as rustfmt writes it.
const COMPARED: &[&str] = &[
    ".id == \"",
    ".id != \"",
    ".word == \"",
    ".word != \"",
    ".word() == \"",
    ".word() != \"",
    ".key == \"",
    ".key != \"",
    ".key.ends_with(",
    ".label.starts_with(",
    ".section.starts_with(",
    ".because.contains(",
];

/// Faults in one source file, tests left out.
#[must_use]
pub fn look(path: &str, text: &str) -> Vec<Fault> {
    if path.starts_with(READS) || !is_source(path) || !room(path).is_some_and(|r| ROOMS.contains(&r)) {
        return Vec::new();
    }
    // The texts are needed, so the lines are those of the file, and the blanked ones tell which of them are code.
    let blanked = without_tests(&code(text));
    let lines = text.lines().zip(blanked.lines()).enumerate().filter(|(_, (_, kept))| !kept.trim().is_empty());
    let in_line = |(n, (line, _)): (usize, (&str, &str))| {
        let how = COMPARED.iter().find(|how| line.contains(*how))?;
        Some(Fault::new(path, n + 1, format!("{how}: {}", RULE.holds)))
    };
    lines.filter_map(in_line).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_compared_are_found() {
        let text =
            "fn f() {\n    v.rule.id == \"a\";\n    v.verdict.word() == \"warns\";\n    q.key.ends_with(\".b\");\n}\n";
        let lines: Vec<_> = look("crates/documents/src/a.rs", text).iter().map(|f| f.line).collect();
        assert_eq!(lines, [2, 3, 4]);
    }

    #[test]
    fn kinds_tests_and_the_reader_pass() {
        assert_eq!(look("crates/search/src/a.rs", "fn f() { v.grade() == Grade::Warns; a.key == b.key }"), []);
        assert_eq!(look("crates/search/src/a.rs", "#[cfg(test)]\nmod t { fn f() { v.id == \"a\" } }"), []);
        assert_eq!(look("crates/design/src/enquiry/a.rs", "fn f() { a.word == \"b\" }"), []);
    }
}
