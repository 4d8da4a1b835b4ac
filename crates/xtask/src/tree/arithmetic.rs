//! Reproducible arithmetic: transcendental functions come from `units::math` and nowhere else.

use super::source::{code, line_of, places, without_tests};
use super::{Fault, Look, Rule, is_source, room};

/// The rule.
pub const RULE: Rule = Rule {
    name: "arithmetic",
    holds: "functions whose last bits differ from machine to machine are called in units/src/math.rs only",
    look: Look::File(look),
};

const ROOMS: &[&str] = &["units", "handbook", "design", "flowfield", "checks", "search", "documents"];

/// The one file that may.
const HOME: &str = "crates/units/src/math.rs";

/// Methods of `f64`, and of quantities that hand on to them. `sqrt` is exact and free.
const METHODS: &[&str] = &[
    "powi", "powf", "exp", "exp2", "exp_m1", "ln", "ln_1p", "log", "log2", "log10", "sin", "cos", "tan", "sin_cos",
    "asin", "acos", "atan", "atan2", "sinh", "cosh", "tanh", "asinh", "acosh", "atanh", "cbrt", "hypot",
];

/// Faults in one source file, tests left out.
#[must_use]
pub fn look(path: &str, text: &str) -> Vec<Fault> {
    if path == HOME || !is_source(path) || !room(path).is_some_and(|r| ROOMS.contains(&r)) {
        return Vec::new();
    }
    let code = without_tests(&code(text));
    let mut found: Vec<(usize, String)> = Vec::new();
    for method in METHODS {
        let called = format!(".{method}(");
        found.extend(places(&code, &called).map(|at| (at, called.clone())));
        for owner in ["f64", "f32", "libm"] {
            let named = format!("{owner}::{method}");
            found.extend(places(&code, &named).map(|at| (at, named.clone())));
        }
    }
    found.sort();
    let say = |(at, what): (usize, String)| {
        Fault::new(path, line_of(&code, at), format!("{what}: use `stillrise_units::math`; {}", RULE.holds))
    };
    found.into_iter().map(say).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn calls_and_paths_are_found() {
        let text = "fn f(x: f64) -> f64 {\n    x.powi(2) + x.exp()\n}\nconst G: fn(f64) -> f64 = f64::sin;\n";
        let lines: Vec<_> = look("crates/handbook/src/a.rs", text).iter().map(|f| f.line).collect();
        assert_eq!(lines, [2, 2, 4]);
        assert_eq!(
            look("crates/units/src/print.rs", "fn f() { libm::exp10(libm::pow(x, 2.0)); libm::exp(1.0) }").len(),
            1
        );
    }

    #[test]
    fn the_home_and_other_words_pass() {
        assert_eq!(look(HOME, "fn f() { x.exp() }"), []);
        assert_eq!(
            look("crates/design/src/a.rs", "fn f() { math::exp(x); x.sqrt(); a.logs(); b.sin; \"x.exp()\" }"),
            []
        );
        assert_eq!(look("crates/cli/src/a.rs", "fn f() { x.exp() }"), []);
        assert_eq!(look("crates/design/src/a.rs", "#[cfg(test)]\nmod t { fn f() { x.exp() } }"), []);
    }
}
