//! Unit factors: a number that turns one unit into another is written in `units`, once.

use super::source::{code, is_word, line_of, without_tests};
use super::{Fault, Look, Rule, is_source, room};

/// The rule.
pub const RULE: Rule =
    Rule { name: "factors", holds: "a unit factor is written in crate units only", look: Look::File(look) };

/// Factors that are found at any power of ten, when at least four digits are written.
const FACTORS: &[(f64, &str)] = &[
    (3.785_411_784, "US gallon"),
    (4.546_09, "imperial gallon"),
    (6.309_019_64, "US gallon a minute"),
    (4.046_856_422_4, "acre"),
    (4.535_923_7, "pound"),
    (4.488_311_7, "cubic feet a second in gpm"),
    (7.480_519_48, "gallons in a cubic foot"),
    (2.831_684_659_2, "cubic foot"),
    (9.290_304, "square foot"),
    (6.894_757_29, "pound a square inch"),
    (1.589_872_95, "barrel"),
    (1.609_344, "mile"),
];

/// Short ones, found exactly as written: as digits alone they could be anything.
const SHORT: &[(f64, &str)] = &[
    (0.3048, "foot"),
    (304.8, "foot"),
    (0.0254, "inch"),
    (2.54, "inch"),
    (25.4, "inch"),
    (7.48, "gallons in a cubic foot"),
    (448.8, "cubic feet a second in gpm"),
];

/// Written on the same line, it says that the digits only happen to look like a factor.
const EXCUSE: &str = "not a unit factor:";

/// Faults in one source file; comments, strings and tests may name any number.
#[must_use]
pub fn look(path: &str, text: &str) -> Vec<Fault> {
    if !is_source(path) || matches!(room(path), Some("units" | "xtask")) {
        return Vec::new();
    }
    let code = without_tests(&code(text));
    numbers(&code)
        .into_iter()
        .filter_map(|(at, literal)| {
            let what = factor(&literal)?;
            let line = line_of(&code, at);
            let excused = text.lines().nth(line - 1).is_some_and(|l| l.contains(EXCUSE));
            let say =
                format!("{literal} looks like the factor of the {what}: {} (or say `// {EXCUSE} why`)", RULE.holds);
            (!excused).then(|| Fault::new(path, line, say))
        })
        .collect()
}

/// The unit whose factor a literal looks like.
fn factor(literal: &str) -> Option<&'static str> {
    let plain = literal.replace('_', "");
    let value: f64 = plain.parse().ok()?;
    if let Some((_, what)) = SHORT.iter().find(|(short, _)| *short == value) {
        return Some(what);
    }
    let mantissa = plain.split(['e', 'E']).next().unwrap_or_default();
    let digits: String = mantissa.chars().filter(char::is_ascii_digit).collect();
    let digits = digits.trim_start_matches('0').trim_end_matches('0');
    if digits.len() < 4 {
        return None;
    }
    let written: f64 = format!("{}.{}", &digits[..1], &digits[1..]).parse().ok()?;
    let half_unit: f64 = format!("0.51e-{}", digits.len() - 1).parse().ok()?;
    FACTORS.iter().find(|(f, _)| (f - written).abs() <= half_unit).map(|(_, what)| *what)
}

/// Number literals of the code, without their type suffix, and where they begin.
fn numbers(code: &str) -> Vec<(usize, String)> {
    let bytes = code.as_bytes();
    let mut found = Vec::new();
    let mut at = 0;
    while at < bytes.len() {
        let before = code[..at].chars().next_back();
        if !bytes[at].is_ascii_digit() || before.is_some_and(is_word) {
            at += code[at..].chars().next().map_or(1, char::len_utf8);
            continue;
        }
        let end = number_end(bytes, at);
        // `pair.0` is a place in a tuple, `0..10` is two numbers.
        if before != Some('.') || code[..at].ends_with("..") {
            found.push((at, code[at..end].trim_end_matches('_').to_owned()));
        }
        at = end;
    }
    found
}

fn number_end(bytes: &[u8], start: usize) -> usize {
    let digits = |mut at: usize| {
        while bytes.get(at).is_some_and(|b| b.is_ascii_digit() || *b == b'_') {
            at += 1;
        }
        at
    };
    let is_digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
    let mut at = digits(start);
    if bytes.get(at) == Some(&b'.') && is_digit(at + 1) {
        at = digits(at + 1);
    }
    if matches!(bytes.get(at), Some(b'e' | b'E')) {
        let signed = at + 1 + usize::from(matches!(bytes.get(at + 1), Some(b'+' | b'-')));
        if is_digit(signed) {
            at = digits(signed);
        }
    }
    at
}

#[cfg(test)]
mod tests {
    use super::*;

    const PATH: &str = "crates/handbook/src/a.rs";

    #[test]
    fn factors_are_found_however_they_are_written() {
        let written = [
            "0.3048",
            "0.304_8_f64",
            "304.8",
            "3.785411784",
            "3.785e-3",
            "6.30902e-5",
            "0.0254",
            "4046.856",
            "4_047.0",
            "0.45359237",
            "448.83",
            "448.8",
            "7.48052",
            "7.48",
            "6894.757",
            "0.028_316_8",
        ];
        for literal in written {
            let faults = look(PATH, &format!("fn f(x: f64) -> f64 {{\n    x * {literal}\n}}\n"));
            assert_eq!((faults.len(), faults.first().map(|f| f.line)), (1, Some(2)), "{literal}");
        }
    }

    #[test]
    fn other_numbers_and_other_places_pass() {
        for fine in ["254.0", "30.48", "0.305", "9.80665", "1.486", "x.0254", "0..3", "4.05", "378.0", "18.0", "0x3048"]
        {
            assert_eq!(look(PATH, &format!("let y = {fine};")), [], "{fine}");
        }
        assert_eq!(look(PATH, "// 0.3048\nlet a = \"d=0.3048 m\";"), []);
        assert_eq!(look(PATH, "let c = 2.54; // not a unit factor: coefficient of the regression"), []);
        assert_eq!(look("crates/units/src/catalog.rs", "let c = 0.3048;"), []);
        assert_eq!(look("crates/handbook/tests/a.rs", "let c = 0.3048;"), []);
    }
}
