//! The number of a limit: a concentration, for pH a range without a unit, for a sheen that none may be seen, for what
//! settles in a cone a volume.

use super::keys::{Field, KeyKind, KeySpec, Quantity};
use super::reader::Reader;
use super::said::{Claimed, Said, claims};
use core::ops::Deref;
use stillrise_handbook::fluids::pollutants::{SHEEN, Which, pollutant};
use stillrise_units::parse::{Extent, Span, span_of};
use stillrise_units::{Concentration, Dim, Fault, Typed, print};
use toml::de::DeValue;

/// A range of pH.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ph {
    /// Lowest.
    pub low: f64,
    /// Highest.
    pub high: f64,
}

impl core::fmt::Display for Ph {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "pH {} to {}", print::digits(self.low, 4), print::digits(self.high, 4))
    }
}

/// How much a limit allows; it reads as the concentration, of which there is none for pH.
#[derive(Debug, Clone, Default)]
pub struct LimitValue {
    /// The concentration.
    pub amount: Quantity<Concentration>,
    /// The range of pH.
    pub ph: Said<Ph>,
    /// That no sheen may be seen, without a number, as it was said.
    pub unseen: Option<String>,
    /// What may settle in a cone, a volume in a volume, as it was said: no content of the water stands for it.
    pub settles: Option<String>,
}

impl LimitValue {
    /// Whether something was said of how much, in whatever form.
    #[must_use]
    pub fn is_said(&self) -> bool {
        self.amount.is_given() || self.ph.0.is_some() || self.unseen.is_some() || self.settles.is_some()
    }
}

impl Deref for LimitValue {
    type Target = Quantity<Concentration>;
    fn deref(&self) -> &Self::Target {
        &self.amount
    }
}

impl Field for LimitValue {
    const KIND: KeyKind = KeyKind::Quantity(Concentration::DIM);
    fn is_said(&self) -> bool {
        Self::is_said(self)
    }
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        if let Some(said) = none_seen(reader, value) {
            return Self { unseen: Some(said), ..Self::default() };
        }
        if let Some(said) = settles(reader, value) {
            return Self { settles: Some(said), ..Self::default() };
        }
        let is_ph = reader.pollutant.as_deref().is_some_and(|p| p.trim().eq_ignore_ascii_case("ph"));
        if !is_ph {
            return Self { amount: Field::read(reader, spec, place, value), ..Self::default() };
        }
        let mut one = |reader: &mut Reader, value: &DeValue<'_>| range(reader, place, value);
        Self { ph: claims(reader, spec, place, value, false, &mut one).into(), ..Self::default() }
    }
    fn claimed<'a>(&'a self, found: &mut Vec<&'a dyn Claimed>) {
        found.push(&self.ph);
    }
    fn claimed_mut<'a>(&'a mut self, found: &mut Vec<&'a mut dyn Claimed>) {
        found.push(&mut self.ph);
    }
}

/// How it is said that no sheen may be seen.
const NONE: &[&str] = &[
    "none",
    "no",
    "no sheen",
    "none visible",
    "no visible sheen",
    "not visible",
    "no visible oil",
    "0",
    "0 mg/l",
    "zero",
];

/// What was said of a sheen, where it is that none may be seen.
fn none_seen(reader: &Reader, value: &DeValue<'_>) -> Option<String> {
    let sheen = reader.pollutant.as_deref().is_some_and(|p| p.trim().eq_ignore_ascii_case(SHEEN));
    let said = value.as_table().and_then(|table| table.get("value")).map_or(value, |value| value.get_ref());
    let text = said.as_str().map(str::trim).or_else(|| (said.as_integer()?.as_str() == "0").then_some("0"))?;
    (sheen && NONE.iter().any(|none| text.eq_ignore_ascii_case(none))).then(|| text.to_owned())
}

/// Units of what settles in a cone, as they are written.
const CONE: &[&str] =
    &["ml/l", "ml/l/h", "ml/l/hr", "ml/l-hr", "ml per litre", "ml per liter", "cm3/l", "cc/l", "cm³/l"];

/// What was said of settleable solids, where it is a volume in a volume of water.
fn settles(reader: &Reader, value: &DeValue<'_>) -> Option<String> {
    let cone = reader.pollutant.as_deref().and_then(pollutant).is_some_and(|row| row.which == Which::SettleableSolids);
    let said = value.as_table().and_then(|table| table.get("value")).map_or(value, |value| value.get_ref());
    let text = said.as_str().map(str::trim).filter(|_| cone)?;
    let end = text.find(|c: char| c.is_alphabetic())?;
    let (number, unit) = text.split_at(end);
    let is_number = span_of(number.trim(), Dim::Ratio, &reader.reading).is_ok();
    (is_number && CONE.contains(&unit.trim().to_lowercase().as_str())).then(|| text.to_owned())
}

/// One range of pH, and how it is shown.
fn range(reader: &mut Reader, place: &str, value: &DeValue<'_>) -> Option<(Ph, String)> {
    let remedy = "a limit on pH is a range without a unit; write value = \"6-9\"";
    let text = value.as_str().unwrap_or("").trim();
    let span = match span_of(bare(text), Dim::Ratio, &reader.reading) {
        Ok(span) => span,
        Err(Fault { reason, .. }) => {
            let reason = if text.is_empty() { "is no range of pH".to_owned() } else { reason };
            reader.fault(place, reason, remedy);
            return None;
        }
    };
    let Span { extent, notes, .. } = span;
    let (low, high) = match extent {
        Extent::Between { low, high } | Extent::Around { low, high, .. } => (low.si(), high.si()),
        Extent::One(_) => {
            reader.fault(place, format!("\"{text}\" is one number, not a range"), remedy);
            return None;
        }
    };
    if low < 0.0 || high > 14.0 {
        reader.fault(place, format!("\"{text}\" is not between 0 and 14"), remedy);
        return None;
    }
    reader.note(place, &notes);
    Some((Ph { low, high }, text.to_owned()))
}

/// The text without the words that only say it is a pH.
fn bare(text: &str) -> &str {
    let led = text.get(..2).is_some_and(|head| head.eq_ignore_ascii_case("ph"));
    let text = if led { text[2..].trim_start_matches([':', '=']).trim() } else { text };
    let ends = ["standard units", "std. units", "units", "unit", "s.u.", "su", "ph"];
    let end = ends.iter().find(|end| {
        let at = text.len().checked_sub(end.len());
        at.and_then(|at| text.get(at..)).is_some_and(|tail| tail.eq_ignore_ascii_case(end))
    });
    end.map_or(text, |end| text[..text.len() - end.len()].trim())
}
