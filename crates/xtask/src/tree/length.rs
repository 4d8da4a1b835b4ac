//! Lengths: a file of Rust stays under 400 lines, or says why not, and under 600 in any case.

use super::{Fault, Look, Rule};

/// The rule.
pub const RULE: Rule = Rule {
    name: "length",
    holds: "no .rs file is over 600 lines, and over 400 only with \"(long because ...)\" in its first three",
    look: Look::File(look),
};

const LONG: usize = 400;
const NEVER: usize = 600;
const REASON: &str = "(long because ";

/// Faults in one file.
#[must_use]
pub fn look(path: &str, text: &str) -> Vec<Fault> {
    if !path.ends_with(".rs") {
        return Vec::new();
    }
    let lines = text.lines().count();
    let reason = text.lines().take(3).any(|l| l.contains(REASON));
    if lines > NEVER {
        vec![Fault::new(path, 0, format!("{lines} lines: over {NEVER}, split it by what it knows"))]
    } else if lines > LONG && !reason {
        vec![Fault::new(path, 0, format!("{lines} lines: over {LONG} without \"{REASON}...)\" in its head"))]
    } else {
        Vec::new()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_files_need_a_reason_and_longest_have_none() {
        assert_eq!(look("a.rs", &"x\n".repeat(401)).len(), 1);
        assert_eq!(look("a.rs", &format!("//! Table (long because one row an oil)\n{}", "x\n".repeat(500))), []);
        assert_eq!(look("a.rs", &format!("//! Table (long because one row an oil)\n{}", "x\n".repeat(600))).len(), 1);
        assert_eq!(look("a.rs", &format!("{}// (long because late)\n", "x\n".repeat(450))).len(), 1);
    }

    #[test]
    fn short_files_and_other_files_pass() {
        assert_eq!(look("a.rs", &"x\n".repeat(400)), []);
        assert_eq!(look("a.csv", &"x\n".repeat(4000)), []);
    }
}
