//! Reading a quantity as a person wrote it: `"120 gpm"`, `"0.62 acre"`, `"1,500 gal"`.
//!
//! Nothing is guessed silently: what had to be interpreted comes back as a note beside the
//! value, and what cannot be read comes back as a [`Fault`] with the remedy.

mod feet;
mod gravity;
mod number;
mod scan;
mod span;
mod unit;

pub use gravity::WATER_60F;
pub use number::{DECIMAL_COMMA, DECIMAL_POINT, ROUND_POINT, THOUSANDS_COMMA};
pub use scan::{Found, quantities_in};
pub use span::{Extent, Span, span_of};

use crate::catalog::{Dim, Unit};
use crate::fault::Fault;

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
    /// Whether it was read in US gallons because nobody said which gallon.
    pub gallon_open: bool,
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
    read(text, None, reading)
}

/// A number and its unit; `wanted` is what an unknown unit is answered with.
fn read(text: &str, wanted: Option<Dim>, reading: &Reading) -> Result<Written, Fault> {
    let text = text.trim();
    if let Some(length) = feet::feet_and_inches(text) {
        return length;
    }
    if wanted == Some(Dim::Density)
        && let Some(density) = gravity::gravity(text)
    {
        return Ok(density);
    }
    let number = number::leading(text).ok_or_else(|| {
        Fault::new(
            "",
            format!("\"{text}\" does not begin with a number"),
            "write a number and a unit, such as \"120 gpm\"",
        )
    })?;
    if !number.value.is_finite() {
        return Err(Fault::new(
            "",
            format!("\"{text}\" is not a finite number"),
            "write a number that a machine can hold",
        ));
    }
    let mut notes = number.notes;
    let (unit, gallon_open) = unit::unit(text[number.end..].trim(), wanted, reading, &mut notes)?;
    Ok(Written { text: text.to_owned(), value: number.value, unit, notes, gallon_open })
}

/// Reads a quantity that must have dimension `dim`.
///
/// # Errors
/// As [`quantity`], and when the unit measures something else; an unknown unit is answered with those that fit.
pub fn quantity_of(text: &str, dim: Dim, reading: &Reading) -> Result<Written, Fault> {
    of(read(text, Some(dim), reading)?, dim)
}

/// The quantity, if it is one of dimension `dim`.
fn of(written: Written, dim: Dim) -> Result<Written, Fault> {
    if written.unit.dim == dim {
        return Ok(written);
    }
    let remedy = if dim == Dim::Ratio {
        format!("write {}", unit::units_of(dim))
    } else {
        format!("write {} in one of {}", with_article(dim.name()), unit::units_of(dim))
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
            ("3 600 m2", 3600.0, "m2"),
            ("3\u{a0}600 m2", 3600.0, "m2"),
            ("3\u{2009}600 m2", 3600.0, "m2"),
            ("1 234 567 L", 1_234_567.0, "L"),
            ("1'200 m2", 1200.0, "m2"),
            ("1.200,5 m2", 1200.5, "m2"),
            ("1 200,5 m2", 1200.5, "m2"),
            ("1.200.000 L", 1.2e6, "L"),
            ("1,20,000 L", 120_000.0, "L"),
            ("1,5e3 L", 1500.0, "L"),
            ("4\"", 4.0, "in"),
            ("4″", 4.0, "in"),
            ("5'", 5.0, "ft"),
            ("1 1/2 in", 1.5, "in"),
            ("1-1/2\"", 1.5, "in"),
            ("3/4 in", 0.75, "in"),
            ("½ in", 0.5, "in"),
            ("1¼ in", 1.25, "in"),
            ("-1 ¾ in", -1.75, "in"),
            ("5' 6\"", 66.0, "in"),
            ("5'-6 1/2\"", 66.5, "in"),
            ("5′ 6″", 66.0, "in"),
            ("5 ft 6 in", 66.0, "in"),
            ("-5 ft 6 in", -66.0, "in"),
            ("5'6", 66.0, "in"),
            ("5 ft2", 5.0, "ft2"),
            ("5 1/m", 5.0, "1/m"),
            ("−1.5 m", -1.5, "m"),
        ] {
            let w = read(text).map_err(|f| f.to_string());
            assert_eq!(w.as_ref().map(|w| (w.value, w.unit.symbol)), Ok((value, symbol)), "{text}");
        }
    }

    #[test]
    fn what_was_interpreted_is_said() {
        for (text, count) in [
            ("0,62 acre", 1),
            ("1,500 gal", 1),
            ("15 ppm", 1),
            ("15 mg/L", 0),
            ("1,234.5 gal", 0),
            ("3 600 gal", 1),
            ("1'200 gal", 1),
            ("1.200,5 gal", 1),
            ("1.200 gal", 1),
            ("1.25 gal", 0),
            ("1,20,000 gal", 1),
            ("1-1/2 in", 1),
            ("1 1/2 in", 0),
            ("10/20 gpm", 1),
            ("5'6", 1),
        ] {
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
        // Whoever knows what he wants names what fits.
        let fits = quantity_of("12 gmp", Dim::Flow, &Reading::default()).err().map(|f| f.remedy).unwrap_or_default();
        assert!(fits.starts_with("did you mean \"gpm\"? use m3/s, m3/h,") && !fits.contains("ft2"), "{fits}");
        // Hours in one language and not seconds: two units are equally near, and neither is offered.
        let hours = quantity_of("5 m3/u", Dim::Flow, &Reading::default()).err().map(|f| f.remedy).unwrap_or_default();
        assert!(hours.starts_with("use ") && !hours.contains("mean"), "{hours}");
        let far = quantity_of("12 xyzzy", Dim::Area, &Reading::default()).err().map(|f| f.remedy).unwrap_or_default();
        assert!(far.starts_with("use m2, ft2,"), "{far}");
        assert!(quantity_of("5' 14\"", Dim::Length, &Reading::default()).is_err());
        // Twelve times as many inches are more than a machine can hold.
        assert!(quantity_of("1e308' 0 in", Dim::Length, &Reading::default()).is_err());
    }
}
