//! Reading a quantity as a person wrote it: `"120 gpm"`, `"0.62 acre"`, `"1,500 gal"`.
//!
//! Nothing is guessed silently: what had to be interpreted comes back as a note beside the
//! value, and what cannot be read comes back as a [`Fault`] with the remedy.

use crate::catalog::{Dim, GAL, GPD, GPH, GPM, IMP_GAL, IMP_GPD, IMP_GPH, IMP_GPM, MG_L, UNITS, Unit};
use crate::fault::{Fault, nearest};

/// Which gallon a bare "gal" means.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Gallon {
    /// 231 cubic inches.
    #[default]
    Us,
    /// 4.54609 litres.
    Imperial,
}

/// How ambiguous text is to be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Reading {
    /// The gallon meant; `None` when nobody said, which is read as US and noted.
    pub gallon: Option<Gallon>,
}

/// A quantity as it was written.
#[derive(Debug, Clone)]
pub struct Written {
    /// The text, trimmed.
    pub text: String,
    /// The number in `unit`.
    pub value: f64,
    /// The unit named.
    pub unit: &'static Unit,
    /// What had to be interpreted, in whole sentences.
    pub notes: Vec<String>,
}

impl Written {
    /// The number in SI.
    #[must_use]
    pub fn si(&self) -> f64 {
        self.unit.to_si(self.value)
    }
}

/// Reads a number followed by a unit of any dimension.
///
/// # Errors
/// A [`Fault`] without a place (the caller knows it) when there is no number, the number is not
/// finite, or the unit is unknown.
pub fn quantity(text: &str, reading: &Reading) -> Result<Written, Fault> {
    let text = text.trim();
    let split = number_end(text);
    let (digits, rest) = text.split_at(split);
    let mut notes = Vec::new();
    let value = number(digits, &mut notes).ok_or_else(|| {
        Fault::new(
            "",
            format!("\"{text}\" does not begin with a number"),
            "write a number and a unit, such as \"120 gpm\"",
        )
    })?;
    if !value.is_finite() {
        return Err(Fault::new(
            "",
            format!("\"{text}\" is not a finite number"),
            "write a number that a machine can hold",
        ));
    }
    let unit = unit(rest.trim(), reading, &mut notes)?;
    Ok(Written { text: text.to_owned(), value, unit, notes })
}

/// Reads a quantity that must have dimension `dim`.
///
/// # Errors
/// As [`quantity`], and when the unit measures something else.
pub fn quantity_of(text: &str, dim: Dim, reading: &Reading) -> Result<Written, Fault> {
    let written = quantity(text, reading)?;
    if written.unit.dim == dim {
        return Ok(written);
    }
    let examples: Vec<_> = Unit::of_dim(dim).map(|u| u.symbol).filter(|s| !s.is_empty()).take(6).collect();
    let remedy = if examples.is_empty() {
        "write a number without a unit".to_owned()
    } else {
        format!("write {} in one of {}", with_article(dim.name()), examples.join(", "))
    };
    let reason = if written.unit.symbol.is_empty() {
        format!("\"{}\" has no unit", written.text)
    } else {
        format!("\"{}\" is {}, not {}", written.text, with_article(written.unit.dim.name()), with_article(dim.name()))
    };
    Err(Fault::new("", reason, remedy))
}

fn with_article(name: &str) -> String {
    let article = if name.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
    format!("{article} {name}")
}

/// Where the leading number ends (an exponent belongs to it only with digits behind it).
fn number_end(text: &str) -> usize {
    let bytes = text.as_bytes();
    let mut end = 0;
    while end < bytes.len() {
        let here = bytes[end];
        let sign = matches!(here, b'+' | b'-') && end == 0;
        let exponent = matches!(here, b'e' | b'E')
            && end > 0
            && match bytes.get(end + 1) {
                Some(b'0'..=b'9') => true,
                Some(b'+' | b'-') => matches!(bytes.get(end + 2), Some(b'0'..=b'9')),
                _ => false,
            };
        if exponent {
            end += 2;
        } else if sign || here.is_ascii_digit() || matches!(here, b'.' | b',' | b'_') {
            end += 1;
        } else {
            break;
        }
    }
    end
}

/// A number that may hold a decimal comma or thousands separators.
fn number(digits: &str, notes: &mut Vec<String>) -> Option<f64> {
    let plain = digits.replace('_', "");
    if !plain.contains(',') {
        return plain.parse().ok();
    }
    let groups: Vec<&str> = plain.split(',').collect();
    let head = groups[0].trim_start_matches(['+', '-']);
    let last = groups[groups.len() - 1].split('.').next().unwrap_or("");
    let thousands = head.len() <= 3
        && !head.is_empty()
        && head != "0"
        && groups[1..groups.len() - 1].iter().all(|g| g.len() == 3)
        && last.len() == 3;
    if thousands {
        if groups.len() == 2 && !plain.contains('.') {
            notes.push(format!("\"{digits}\" was read with a thousands comma, not a decimal comma"));
        }
        return plain.replace(',', "").parse().ok();
    }
    if groups.len() == 2 && !plain.contains('.') {
        notes.push(format!("\"{digits}\" was read with a decimal comma"));
        return plain.replace(',', ".").parse().ok();
    }
    None
}

fn unit(text: &str, reading: &Reading, notes: &mut Vec<String>) -> Result<&'static Unit, Fault> {
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    if text.eq_ignore_ascii_case("ppm") {
        notes.push("\"ppm\" was read as mg/L; by volume it would be another number".to_owned());
        return Ok(&MG_L);
    }
    let found = UNITS
        .iter()
        .find(|u| u.symbol == text || u.also.contains(&text.as_str()))
        .or_else(|| unique_ignoring_case(&text));
    let Some(unit) = found else {
        let names = UNITS.iter().flat_map(|u| core::iter::once(u.symbol).chain(u.also.iter().copied()));
        let remedy = match nearest(&text, names.filter(|n| !n.is_empty())) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => "use a unit listed by the schema".to_owned(),
        };
        return Err(Fault::new("", format!("the unit \"{text}\" is not known"), remedy));
    };
    let imperial = [(&GAL, &IMP_GAL), (&GPM, &IMP_GPM), (&GPH, &IMP_GPH), (&GPD, &IMP_GPD)]
        .into_iter()
        .find_map(|(us, imperial)| (**unit == *us).then_some(imperial));
    let stated_us = text.to_ascii_lowercase().starts_with("us");
    match (imperial, reading.gallon) {
        (Some(imperial), Some(Gallon::Imperial)) if !stated_us => Ok(imperial),
        (Some(_), None) if !stated_us => {
            notes.push(format!("\"{text}\" was read as US gallons; nobody said which gallon"));
            Ok(unit)
        }
        _ => Ok(unit),
    }
}

/// A unit whose spelling matches but for case, when only one dimension can be meant.
fn unique_ignoring_case(text: &str) -> Option<&'static &'static Unit> {
    let mut matches = UNITS
        .iter()
        .filter(|u| u.symbol.eq_ignore_ascii_case(text) || u.also.iter().any(|a| a.eq_ignore_ascii_case(text)));
    let first = matches.next()?;
    matches.next().is_none().then_some(first)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<Written, Fault> {
        quantity(text, &Reading { gallon: Some(Gallon::Us) })
    }

    #[test]
    fn the_trade_writes_quantities_in_many_ways() {
        for (text, value, symbol) in [
            ("120 gpm", 120.0, "gpm"),
            ("-4 °C", -4.0, "°C"),
            ("3.1in/hr", 3.1, "in/h"),
            ("1e5 gpm", 1e5, "gpm"),
            ("0,62 acre", 0.62, "acre"),
            ("1,500 gal", 1500.0, "gal"),
            ("15 ppm", 15.0, "mg/L"),
            ("0.9", 0.9, ""),
            ("12 SQ FT", 12.0, "ft2"),
        ] {
            let w = read(text).map_err(|f| f.to_string());
            assert_eq!(w.as_ref().map(|w| (w.value, w.unit.symbol)), Ok((value, symbol)), "{text}");
        }
    }

    #[test]
    fn what_was_interpreted_is_said() {
        for (text, count) in [("0,62 acre", 1), ("1,500 gal", 1), ("15 ppm", 1), ("15 mg/L", 0), ("1,234.5 gal", 0)] {
            assert_eq!(read(text).map(|w| w.notes.len()).ok(), Some(count), "{text}");
        }
        assert_eq!(quantity("10 gal", &Reading::default()).map(|w| w.notes.len()).ok(), Some(1));
    }

    #[test]
    fn an_imperial_gallon_is_read_when_stated() {
        let imperial = Reading { gallon: Some(Gallon::Imperial) };
        let si = quantity("1 gal", &imperial).map(|w| w.si()).unwrap_or(0.0);
        assert_eq!(si, 4.546_09e-3);
        let us = quantity("1 US gal", &imperial).map(|w| w.si()).unwrap_or(0.0);
        assert_eq!(us, 3.785_411_784e-3);
    }

    #[test]
    fn faults_name_the_remedy() {
        for (text, remedy) in
            [("12 gmp", "did you mean \"gpm\"?"), ("gpm", "write a number"), ("1e999 gpm", "a machine can hold")]
        {
            let fault = read(text).err().map(|f| f.to_string()).unwrap_or_default();
            assert!(fault.contains(remedy), "{text}: {fault}");
        }
        let wrong = quantity_of("12 gpm", Dim::Area, &Reading::default()).err().map(|f| f.to_string());
        assert!(wrong.is_some_and(|f| f.contains("is a flow, not a") && f.contains("in one of")));
    }
}
