//! What a room may touch: files, network, clock, processes and the terminal belong to the outermost.

use super::source::{code, line_of, places, without_tests};
use super::{Fault, Look, Rule, is_source, room};

/// The rule.
pub const RULE: Rule = Rule {
    name: "rooms",
    holds: "only desk, web, cli and xtask touch files, network, clock, environment, processes and the terminal",
    look: Look::File(look),
};

/// Rooms that may; `store` will be of them when it exists.
const MAY: &[&str] = &["desk", "cli", "xtask", "store", "web"];

/// Modules of the standard library that reach outside the process.
const MODULES: &[&str] = &["fs", "net", "time", "process", "env", "os"];

/// Other doors to the same.
const DOORS: &[&str] = &[
    "println!",
    "print!",
    "eprintln!",
    "eprint!",
    "Instant::now",
    "SystemTime::now",
    "File::open",
    "File::create",
    "io::stdin",
    "io::stdout",
    "io::stderr",
    "OffsetDateTime::now_utc",
];

/// Faults in one source file; code under `#[cfg(test)]` may do as it likes.
#[must_use]
pub fn look(path: &str, text: &str) -> Vec<Fault> {
    if !is_source(path) || room(path).is_some_and(|r| MAY.contains(&r)) {
        return Vec::new();
    }
    let code = without_tests(&code(text));
    let mut found: Vec<(usize, String)> = Vec::new();
    for module in MODULES {
        let direct = format!("std::{module}");
        found.extend(places(&code, &direct).map(|at| (at, direct.clone())));
    }
    for at in places(&code, "std::{") {
        for module in grouped(&code[at + 5..]).into_iter().filter(|m| MODULES.contains(m)) {
            found.push((at, format!("std::{module}")));
        }
    }
    for door in DOORS {
        found.extend(places(&code, door).map(|at| (at, (*door).to_owned())));
    }
    found.sort();
    let say = |(at, what): (usize, String)| Fault::new(path, line_of(&code, at), format!("{what}: {}", RULE.holds));
    found.into_iter().map(say).collect()
}

/// First words of the entries of a `{a::b, c::{d, e}}` group.
fn grouped(text: &str) -> Vec<&str> {
    let mut words = Vec::new();
    let (mut depth, mut start) = (0_i32, 0);
    for (at, c) in text.char_indices() {
        match c {
            '{' => {
                depth += 1;
                if depth == 1 {
                    start = at + 1;
                }
            }
            ',' | '}' if depth == 1 => {
                words.push(text[start..at].split("::").next().unwrap_or_default().trim());
                start = at + 1;
                if c == '}' {
                    break;
                }
            }
            '}' => depth -= 1,
            _ => {}
        }
    }
    words.iter().map(|w| w.split_whitespace().next().unwrap_or_default()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_read_in_the_handbook_is_found() {
        let text = "//! x\nfn f() -> Option<String> {\n    std::fs::read_to_string(\"a\").ok()\n}\n";
        let faults = look("crates/handbook/src/a.rs", text);
        assert_eq!((faults.len(), faults[0].line), (1, 3));
    }

    #[test]
    fn groups_clocks_and_prints_are_found() {
        let text =
            "use std::{fmt, collections::{BTreeMap, BTreeSet}, time as t};\nfn f() { println!(\"\"); Instant::now(); }";
        assert_eq!(look("crates/design/src/a.rs", text).len(), 3);
    }

    #[test]
    fn comments_tests_other_rooms_and_look_alikes_pass() {
        let text = "// std::fs\nfn f() { g(\"std::net\"); env!(\"X\"); }\n#[cfg(test)]\nmod tests { use std::fs; }\n";
        assert_eq!(look("crates/checks/src/a.rs", text), []);
        assert_eq!(look("crates/cli/src/a.rs", "use std::fs;"), []);
        assert_eq!(look("crates/checks/tests/a.rs", "use std::fs;"), []);
        assert_eq!(look("crates/checks/src/a.rs", "use std::{fmt, path::Path};\nmod timely;"), []);
    }
}
