//! Feet and inches in one length: `5' 6"`, `5 ft 6 in`, `5'-6 1/2"`.

use super::Written;
use super::number::leading;
use crate::catalog::{IN, INCHES_IN_FOOT};
use crate::fault::Fault;

/// Longest first.
const FEET: [&str; 7] = ["feet", "foot", "ft.", "ft", "'", "′", "’"];
const INCHES: [&str; 9] = ["inches", "inch", "in.", "in", "\"", "″", "”", "''", "′′"];

/// A length in feet and inches, held in inches; `None` when the text is not of that form.
pub(super) fn feet_and_inches(text: &str) -> Option<Result<Written, Fault>> {
    let feet = leading(text)?;
    let rest = text[feet.end..].trim_start();
    let mark = FEET.iter().find(|m| rest.get(..m.len()).is_some_and(|head| head.eq_ignore_ascii_case(m)))?;
    let rest = rest[mark.len()..].trim_start();
    let rest = rest.strip_prefix('-').unwrap_or(rest).trim_start();
    if rest.starts_with(['+', '-', '−']) {
        return None;
    }
    let inches = leading(rest)?;
    let end = rest[inches.end..].trim();
    let prime = !mark.starts_with('f');
    if !(INCHES.iter().any(|m| m.eq_ignore_ascii_case(end)) || prime && end.is_empty()) {
        return None;
    }
    let size = feet.value.abs() * INCHES_IN_FOOT + inches.value;
    // Feet near the largest number that a machine can hold are more inches than it can.
    if !size.is_finite() || feet.value.fract() != 0.0 || inches.value >= INCHES_IN_FOOT {
        return Some(Err(Fault::new(
            "",
            format!("\"{text}\" is not whole feet and fewer than 12 inches"),
            "write a length such as \"5 ft 6 in\", or in one unit, such as \"5.5 ft\"",
        )));
    }
    let mut notes = [feet.notes, inches.notes].concat();
    if end.is_empty() {
        notes.push(format!("\"{text}\" was read as feet and inches"));
    }
    let value = if feet.value.is_sign_negative() { -size } else { size };
    Some(Ok(Written { text: text.to_owned(), value, unit: &IN, notes, gallon_open: false }))
}
