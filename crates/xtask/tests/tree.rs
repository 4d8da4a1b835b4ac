//! The tree keeps its own rules. `cargo xtask tree` prints the same, faster.

use xtask::tree::{self, File, RULES, Rule};

fn files() -> Vec<File> {
    let files = tree::root().and_then(|root| tree::read(&root)).unwrap_or_default();
    // An empty walk would keep every rule.
    for known in ["Cargo.toml", "crates/units/src/math.rs", "crates/xtask/tests/tree.rs"] {
        assert!(files.iter().any(|f| f.path == known), "{known} was not read");
    }
    files
}

fn holds(rule: Rule) {
    let faults: Vec<String> = rule.faults(&files()).iter().map(ToString::to_string).collect();
    assert!(faults.is_empty(), "{}\n{}", rule.holds, faults.join("\n"));
}

/// One test a rule, so that a failing build names it; the last sees that none was forgotten.
macro_rules! rules {
    ($($name:ident)*) => {
        $(
            #[test]
            fn $name() {
                holds(tree::$name::RULE);
            }
        )*

        #[test]
        fn every_rule_has_its_test() {
            let tested = [$(stringify!($name)),*];
            let listed: Vec<_> = RULES.iter().map(|r| r.name).collect();
            assert_eq!(tested.as_slice(), listed.as_slice());
        }
    };
}

rules! { arrows rooms arithmetic factors registered keys identities length unfinished words papers links }
