//! Nothing unfinished, nothing silenced: no placeholders, no debug prints, no ignored tests.

use super::source::{code, line_of, places};
use super::{Fault, Look, Rule};

/// The rule.
pub const RULE: Rule =
    Rule { name: "unfinished", holds: "no todo!, unimplemented!, dbg! or ignored test", look: Look::File(look) };

const MARKS: &[&str] = &["todo!", "unimplemented!", "dbg!", "#[ignore", "#![ignore"];

/// Faults in one file of Rust, tests included; words in comments and strings do not count.
#[must_use]
pub fn look(path: &str, text: &str) -> Vec<Fault> {
    if !path.ends_with(".rs") {
        return Vec::new();
    }
    let code = code(text);
    let find = |mark: &&'static str| {
        let say = |at| Fault::new(path, line_of(&code, at), format!("{mark}: finish it, or take it out"));
        places(&code, mark).map(say).collect::<Vec<_>>()
    };
    MARKS.iter().flat_map(find).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_mark_is_found() {
        for mark in
            ["todo!()", "unimplemented!(\"x\")", "dbg!(x)", "#[ignore] fn f() {}", "#[ignore = \"slow\"] fn f() {}"]
        {
            assert_eq!(look("crates/units/tests/a.rs", &format!("fn a() {{}}\n{mark}")).len(), 1, "{mark}");
        }
    }

    #[test]
    fn talk_about_them_passes() {
        assert_eq!(look("a.rs", "// no todo!() here\nlet a = \"#[ignore]\"; my_todo!();"), []);
        assert_eq!(look("a.md", "todo!()"), []);
    }
}
