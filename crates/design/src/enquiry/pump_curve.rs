//! The curve of a pump: rows of a flow and the head that it gives there.

use super::curve::Curve;
use super::keys::{Field, KeyKind, KeySpec};
use super::reader::Reader;
use super::said::{Claimed, claims};
use core::ops::Deref;
use stillrise_handbook::page::Series;
use stillrise_units::parse::quantity_of;
use stillrise_units::{Dim, Fault};
use toml::de::DeValue;

/// Flows (m³/s), rising, and heads (m), falling; empty when not said.
#[derive(Debug, Clone, Default)]
pub struct PumpCurve(Curve);

impl Deref for PumpCurve {
    type Target = Curve;
    fn deref(&self) -> &Curve {
        &self.0
    }
}

impl Field for PumpCurve {
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
        Self(Curve { rows, text, claims })
    }
    fn claimed<'a>(&'a self, found: &mut Vec<&'a dyn Claimed>) {
        found.push(&self.0);
    }
    fn claimed_mut<'a>(&'a mut self, found: &mut Vec<&'a mut dyn Claimed>) {
        found.push(&mut self.0);
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
        let Some((flow, head)) = text.split_once(':') else {
            fault(format!("\"{text}\" is not flow: head"), "write for instance \"60 gpm: 34 ft\"");
            continue;
        };
        let mut notes = Vec::new();
        let mut read = |text: &str, dim| {
            let written = quantity_of(text, dim, &reading)?;
            notes.extend_from_slice(&written.notes);
            Ok::<f64, Fault>(written.si())
        };
        match (read(flow, Dim::Flow), read(head, Dim::Length)) {
            (Ok(flow), Ok(head)) if flow >= 0.0 && head >= 0.0 && flow < MOST && head < MOST => {
                match rows.last() {
                    Some((before, _)) if flow <= *before => {
                        fault(format!("the flow in \"{text}\" does not rise"), "sort the rows, smallest flow first");
                    }
                    Some((_, before)) if head >= *before => {
                        fault(
                            format!("the head in \"{text}\" does not fall"),
                            "check the head; leave out the part of a curve that rises with the flow",
                        );
                    }
                    _ => {}
                }
                rows.push((flow, head));
            }
            (Ok(_), Ok(_)) => fault(
                format!("flow or head in \"{text}\" is below zero or beyond any pump"),
                "check the row; 60 gpm: 34 ft",
            ),
            (Err(wrong), _) | (_, Err(wrong)) => fault(wrong.reason, &wrong.remedy),
        }
        reader.note(&place, &notes);
    }
    if faults > 0 {
        return None;
    }
    Some((Series(rows), texts.join("; ")))
}

/// No pump lifts so many cubic metres a second, or so many metres.
const MOST: f64 = 1e4;
