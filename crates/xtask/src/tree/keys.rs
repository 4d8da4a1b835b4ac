//! What is asked and where an answer goes stands at the key: neither is spelled where a value is used. Keys stand in `enquiry`,
//! those of a stage's dimensions in its own file.

use super::source::strings;
use super::{Fault, File, Look, Rule, is_source};

/// The rule.
pub const RULE: Rule = Rule {
    name: "keys",
    holds: "in crate design, questions to the customer and paths of keys stand at the keys only: in `enquiry`, and where a stage declares its own",
    look: Look::Tree(look),
};

/// Where they may stand.
const AT_THE_KEYS: &str = "crates/design/src/enquiry/";
/// Where they may not.
const ELSEWHERE: &str = "crates/design/src/";

/// Faults in all files. A path is known by the name of its block, so that "unit: what is assumed of it" is none.
#[must_use]
pub fn look(files: &[File]) -> Vec<Fault> {
    let at_the_keys = files.iter().filter(|f| f.path.starts_with(AT_THE_KEYS));
    let blocks: Vec<&str> = at_the_keys.flat_map(|f| declared(&f.text)).collect();
    let others = files.iter().filter(|f| is_source(&f.path) && f.path.starts_with(ELSEWHERE));
    others.filter(|f| !f.path.starts_with(AT_THE_KEYS)).flat_map(|f| in_file(f, &blocks)).collect()
}

/// The blocks that a file declares: `Method "method" {` within `keys!`.
fn declared(text: &str) -> impl Iterator<Item = &str> {
    text.split("keys! {").skip(1).filter_map(|declared| {
        let head = declared.lines().map(str::trim).find(|line| !line.is_empty() && !line.starts_with("///"))?;
        head.strip_suffix("\" {")?.split_once(" \"").map(|(_, name)| name)
    })
}

fn in_file(file: &File, blocks: &[&str]) -> Vec<Fault> {
    let say = |line: usize, what: &str| {
        Fault::new(&file.path, line, format!("{what}: ask for it at its key, in {AT_THE_KEYS}, and take it from there"))
    };
    strings(&without_keys(&file.text))
        .into_iter()
        .filter_map(|(line, text)| Some(say(line, fault(&text, blocks)?)))
        .collect()
}

/// A file without the keys that it declares, line by line as before.
fn without_keys(text: &str) -> String {
    let mut declares = false;
    let keep = |line: &str| {
        declares |= line.starts_with("keys! {");
        let kept = if declares { "" } else { line }.to_owned();
        declares &= line != "}";
        kept
    };
    text.lines().map(keep).collect::<Vec<_>>().join("\n")
}

/// What is wrong with a text.
fn fault(text: &str, blocks: &[&str]) -> Option<&'static str> {
    // "?" alone stands for a name that is not known.
    if text.ends_with('?') && text.contains(' ') {
        return Some("a question");
    }
    let is_key = |word: &str| !word.is_empty() && word.bytes().all(|b| b.is_ascii_lowercase() || b"_.".contains(&b));
    let of_block = |block: &&str| {
        let rest = text.strip_prefix(block);
        rest.and_then(|rest| rest.strip_prefix('.').or(rest.strip_prefix(": "))).is_some_and(is_key)
    };
    let of_named = text.split_once("\\\".").is_some_and(|(_, rest)| is_key(rest));
    (of_named || blocks.iter().any(of_block)).then_some("the path of a key")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(path: &str, text: &str) -> Vec<usize> {
        let declared = "keys! {\n    /// Methods.\n    Method \"method\" {\n    }\n}\nkeys! {\n    /// A\n    /// stream.\n    Stream \"stream\" {\n    }\n}\n";
        let files = [File::new("crates/design/src/enquiry/blocks/a.rs", declared), File::new(path, text)];
        look(&files).iter().map(|fault| fault.line).collect()
    }

    #[test]
    fn questions_and_paths_are_found() {
        let text = "f(\"How deep is it?\");\nf(\"method.reserve\");\nf(\"method: reserve\");\nf(\"stream \\\"{name}\\\".flow\");\n";
        assert_eq!(found("crates/design/src/basis/a.rs", text), [1, 2, 3, 4]);
    }

    #[test]
    fn keys_of_a_stage_stand_in_its_file() {
        let text = "keys! {\n    /// Keys.\n    DipKeys \"method\" {\n        /// Its mouth\n        mouth: L = spec.asks(\"How deep is it?\");\n    }\n}\nf(\"How deep is it?\");\n";
        assert_eq!(found("crates/design/src/stages/a.rs", text), [8]);
    }

    #[test]
    fn labels_comments_tests_and_other_rooms_pass() {
        let text = "// \"How?\" method.reserve\nf(\"method: what is chosen\", \"?\", \"a.b\", \"streams.flow\");\n#[cfg(test)]\nmod tests { f(\"method.reserve\"); }\n";
        assert_eq!(found("crates/design/src/basis/a.rs", text), [0_usize; 0]);
        assert_eq!(found("crates/design/src/enquiry/mod.rs", "f(\"method.reserve\");"), [0_usize; 0]);
        assert_eq!(found("crates/checks/src/ask.rs", "f(\"method.reserve\");"), [0_usize; 0]);
    }
}
