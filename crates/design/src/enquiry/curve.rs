//! A measured curve: rows of a size and a share.

use super::declared::Declared;
use super::keys::{Field, KeyKind, KeySpec};
use super::reader::Reader;
use super::said::{Claimed, Claims, Line, claims, lines, nth};
use stillrise_handbook::page::Series;
use stillrise_units::parse::quantity_of;
use stillrise_units::{Dim, Fault};
use toml::de::DeValue;

/// A measured curve: droplet size and a share, size rising; empty when not said.
#[derive(Debug, Clone, Default)]
pub struct Curve {
    /// Size (m) and share.
    pub rows: Series,
    /// The rows as typed.
    pub text: String,
    /// The claims on it.
    pub claims: Claims<Series>,
}

impl Curve {
    /// Whether anybody said anything.
    #[must_use]
    pub fn is_given(&self) -> bool {
        !self.rows.0.is_empty()
    }
}

impl Field for Curve {
    const KIND: KeyKind = KeyKind::Curve;
    fn is_said(&self) -> bool {
        self.is_given()
    }
    fn read(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Self {
        // A list of texts is one curve; a list of tables or of lists is one of claims.
        let plain =
            value.as_array().is_none_or(|list| list.iter().all(|v| !v.get_ref().is_table() && !v.get_ref().is_array()));
        let mut one = |reader: &mut Reader, value: &DeValue<'_>| rows(reader, spec, place, value);
        let claims = claims(reader, spec, place, value, plain, &mut one);
        let (rows, text) = claims.taken().map(|told| (told.value.clone(), told.text.clone())).unwrap_or_default();
        Self { rows, text, claims }
    }
    fn claimed<'a>(&'a self, found: &mut Vec<&'a dyn Claimed>) {
        found.push(self);
    }
    fn claimed_mut<'a>(&'a mut self, found: &mut Vec<&'a mut dyn Claimed>) {
        found.push(self);
    }
}

impl Claimed for Curve {
    fn place(&self) -> &str {
        &self.claims.place
    }
    fn declared(&self) -> Declared {
        self.claims.declared
    }
    fn lines(&self) -> Vec<Line<'_>> {
        lines(&self.claims)
    }
    fn is_contradicted(&self) -> bool {
        self.claims.is_contradicted()
    }
    fn word(&self, claim: usize) -> &'static str {
        nth(claim)
    }
    fn take(&mut self, claim: usize) {
        if let Some(told) = self.claims.list.get(claim) {
            self.rows = told.value.clone();
            self.text.clone_from(&told.text);
        }
    }
}

/// One curve, row by row, and its rows as typed.
fn rows(reader: &mut Reader, spec: &'static KeySpec, place: &str, value: &DeValue<'_>) -> Option<(Series, String)> {
    let texts: Vec<&str> = value.as_array().into_iter().flatten().filter_map(|v| v.get_ref().as_str()).collect();
    let length = value.as_array().map_or(0, |list| list.len());
    if length < 2 || texts.len() < length {
        reader.fault(place, "is not a list of at least two rows", format!("write {} = {}", spec.name, spec.like));
        return None;
    }
    let mut rows: Vec<(f64, f64)> = Vec::new();
    let mut faults = 0;
    let reading = reader.reading;
    for (i, text) in texts.iter().enumerate() {
        let place = format!("{place}, row {}", i + 1);
        let mut fault = |reason: String, remedy: &str| {
            reader.fault(&place, reason, remedy);
            faults += 1;
        };
        let Some((size, share)) = text.split_once(':') else {
            fault(format!("\"{text}\" is not size: share"), "write for instance \"60 um: 45 %\"");
            continue;
        };
        let mut notes = Vec::new();
        let mut read = |text: &str, dim| {
            let written = quantity_of(text, dim, &reading)?;
            notes.extend_from_slice(&written.notes);
            Ok::<f64, Fault>(written.si())
        };
        match (read(size, Dim::Length), read(share, Dim::Ratio)) {
            (Ok(size), Ok(share)) if size > 0.0 && (0.0..=1.0).contains(&share) => {
                if rows.last().is_some_and(|(before, _)| size <= *before) {
                    fault(format!("the size in \"{text}\" does not rise"), "sort the rows, smallest size first");
                }
                rows.push((size, share));
            }
            (Ok(size), Ok(_)) if size > 0.0 => {
                fault(format!("the share in \"{text}\" is not between 0 and 100 %"), "check the share; 45 % or 0.45");
            }
            (Ok(_), Ok(_)) => fault(format!("the size in \"{text}\" is not above zero"), "check the size"),
            (Err(wrong), _) | (_, Err(wrong)) => fault(wrong.reason, &wrong.remedy),
        }
        reader.note(&place, &notes);
    }
    if faults > 0 {
        return None;
    }
    Some((Series(rows), texts.join("; ")))
}
