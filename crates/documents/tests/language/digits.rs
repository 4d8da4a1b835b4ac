//! Three digits in prose and tables, all of them in the trail alone and on the sheet that works an authority's methods step by step. Lengths and levels are told to a step of their rule: a
//! hundredth of a foot, a millimetre.

use crate::texts::Texts;
use crate::units::around;
use regex::Regex;
use std::error::Error;

/// Numbers of more than three digits with a unit, or of more than four without; zeros that are none.
pub fn too_many(all: &Texts) -> Result<Vec<String>, Box<dyn Error>> {
    let number = Regex::new(r"(?:^|[^\w.,/:+-])(?P<n>\d+(?:\.\d+)?(?:e-?\d+)?)(?P<unit> ?%| [^\s,;:.)(]+)?")?;
    let nothing = Regex::new(r"\d(?:\.\d+)?e-1\d\b|\d\.\d*0{6,}\d|\d\.\d*9{6,}")?;
    let mut found = Vec::new();
    for text in all.0.iter().filter(|text| !text.is_trail && !text.name.ends_with("regulation-sheet")) {
        for ours in &text.ours {
            if let Some(hit) = nothing.find(ours) {
                found.push(format!("no zero: {}: {}", text.name, around(ours, hit.start())));
            }
            for hit in number.captures_iter(ours) {
                let (n, unit) = (&hit["n"], hit.name("unit").map_or("", |u| u.as_str().trim()));
                // A paragraph of a rule: 112.12(b).
                let is_paragraph =
                    hit.get(0).is_some_and(|whole| ours.get(whole.end()..).is_some_and(|t| t.starts_with('(')));
                let most = match unit {
                    _ if is_paragraph => continue,
                    "mm" | "in" | "ft" | "m" => continue,
                    _ if is_unit(unit) => 3,
                    _ if n.contains('.') => 4,
                    _ => continue,
                };
                if significant(n) > most {
                    let at = hit.name("n").map_or(0, |n| n.start());
                    found.push(format!("{} digits: {}: {}", significant(n), text.name, around(ours, at)));
                }
            }
        }
    }
    Ok(found)
}

fn is_unit(word: &str) -> bool {
    !word.is_empty()
        && stillrise_units::catalog::UNITS
            .iter()
            .any(|unit| unit.symbol == word && !["h", "d", "wk", "mo", "yr", "min"].contains(&word))
}

/// Significant digits: without zeros ahead, and behind a whole number.
fn significant(number: &str) -> usize {
    let mantissa = number.split('e').next().unwrap_or(number);
    let digits: String = mantissa.chars().filter(char::is_ascii_digit).collect();
    let digits = digits.trim_start_matches('0');
    if mantissa.contains('.') { digits.len() } else { digits.trim_end_matches('0').len() }
}
