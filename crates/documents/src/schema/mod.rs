//! JSON Schema of the enquiry and range files, from the one list of keys, and of what is answered to programs.

mod flow;
mod glance;
mod issue;
pub mod kit;
mod rating;
mod reading;
mod result;
mod risk;

pub use flow::flow_schema;
pub use glance::{compare_schema, glance_schema, with_range_schema};
pub use issue::{changes_schema, issued_schema};
pub use rating::rating_schema;
pub use reading::read_schema;
pub use result::result_schema;
pub use risk::risk_schema;

use serde_json::{Map, Value, json};
use stillrise_design::enquiry::distribution::Distribution;
use stillrise_design::enquiry::keys::{Block, BlockSpec, KeyKind, KeySpec};
use stillrise_design::enquiry::range::{Model, RangeHead};
use stillrise_design::enquiry::spec::without_options;
use stillrise_units::Unit;

const DIALECT: &str = "https://json-schema.org/draft/2020-12/schema";

/// The schema of an enquiry file (TOML, read as JSON).
#[must_use]
pub fn enquiry_schema() -> Value {
    file("An enquiry", stillrise_design::enquiry::blocks(), &["enquiry"])
}

/// The schema of a file of company settings.
#[must_use]
pub fn settings_schema() -> Value {
    file("A company's settings", stillrise_design::enquiry::settings::blocks(), &["company"])
}

/// The schema of a range file.
#[must_use]
pub fn range_schema() -> Value {
    file("A range of units", [(RangeHead::spec(), false), (Model::spec(), true)].into_iter(), &["range", "model"])
}

fn file(title: &str, blocks: impl Iterator<Item = (&'static BlockSpec, bool)>, required: &[&str]) -> Value {
    let properties: Map<String, Value> = blocks
        .map(|(spec, many)| {
            let one = block(spec);
            let value = if many { json!({ "description": spec.doc, "type": "array", "items": one }) } else { one };
            (spec.name.to_owned(), value)
        })
        .collect();
    json!({ "$schema": DIALECT, "title": title, "type": "object", "additionalProperties": false, "required": required, "properties": properties })
}

fn block(spec: &'static BlockSpec) -> Value {
    let properties: Map<String, Value> = spec.keys().into_iter().map(|k| (k.name.to_owned(), key(k))).collect();
    let required: Vec<&str> = spec.keys().into_iter().filter(|k| k.needed).map(|k| k.name).collect();
    json!({ "description": spec.doc, "type": "object", "additionalProperties": false, "required": required, "properties": properties })
}

fn key(k: &'static KeySpec) -> Value {
    let mut out = match k.kind {
        KeyKind::Pattern(form) => json!({ "type": "string", "pattern": form }),
        KeyKind::Text => claimed(&json!({ "type": "string" })),
        KeyKind::Texts => {
            json!({ "anyOf": [{ "type": "string" }, { "type": "array", "items": { "type": "string" } }] })
        }
        KeyKind::Curve => claimed(&json!({ "type": "array", "minItems": 2, "items": { "type": "string" } })),
        KeyKind::Flag => claimed(&json!({ "type": "boolean" })),
        KeyKind::Count => claimed(&json!({ "type": "integer", "minimum": 1, "maximum": 1000 })),
        KeyKind::Choice(words) | KeyKind::ClaimedChoice(words) => {
            let words = words.iter().map(|(w, meaning)| json!({ "const": w, "description": meaning }));
            claimed(&json!({ "oneOf": words.collect::<Vec<_>>() }))
        }
        KeyKind::Named(names) => claimed(&json!({ "enum": names() })),
        KeyKind::Table(spec) => block(spec()),
        KeyKind::Results(_) => {
            json!({ "anyOf": [{ "type": "string" }, { "type": "array", "minItems": 1, "items": { "type": "string" } }] })
        }
        KeyKind::Quantities(_) => {
            let claims = json!({ "type": "array", "items": { "anyOf": [quantity(k), claim(k)] } });
            json!({ "anyOf": [quantity(k), claim(k), { "type": "array", "items": { "anyOf": [quantity(k), claim(k), claims] } }] })
        }
        KeyKind::Quantity(_) => {
            json!({ "anyOf": [quantity(k), claim(k), { "type": "array", "items": { "anyOf": [quantity(k), claim(k)] } }] })
        }
    };
    if let Value::Object(map) = &mut out {
        map.insert("description".to_owned(), json!(describe(k)));
        if !k.like.is_empty() {
            map.insert("examples".to_owned(), json!([k.like.trim_matches('"')]));
        }
    }
    out
}

/// One value, a claim on it, or a list of either.
fn claimed(value: &Value) -> Value {
    let mut properties = who();
    properties.insert("value".to_owned(), value.clone());
    let claim =
        json!({ "type": "object", "additionalProperties": false, "required": ["value"], "properties": properties });
    json!({ "anyOf": [value, claim, { "type": "array", "minItems": 1, "items": { "anyOf": [value, claim] } }] })
}

/// Who made a claim, and whether it was chosen.
fn who() -> Map<String, Value> {
    let text = |description: &str| json!({ "type": "string", "description": description });
    let chosen = json!({ "type": "boolean", "description": "A person chose this claim among contradicting ones" });
    [("from", text("Who or what says so")), ("chosen", chosen), ("because", text("Why it was chosen"))]
        .map(|(name, value)| (name.to_owned(), value))
        .into_iter()
        .collect()
}

/// The key's meaning, units and bounds in a sentence, how it is asked for, and what stands in where nobody says.
fn describe(k: &KeySpec) -> String {
    let mut text = k.doc.to_owned();
    if let KeyKind::Quantity(dim) | KeyKind::Quantities(dim) | KeyKind::Results(dim) = k.kind {
        let units: Vec<&str> = Unit::of_dim(dim).map(|u| u.symbol).filter(|s| !s.is_empty()).collect();
        if units.is_empty() {
            text.push_str("; a number without a unit");
        } else {
            text.push_str(&format!("; a number and one of {}", units.join(", ")));
        }
    }
    if let Some((low, high)) = k.bounds {
        text.push_str(&format!("; between {low} and {high}"));
    }
    for question in k.questions() {
        text.push_str(&format!("; asked as: {}", without_options(question)));
    }
    if let Some(stands_in) = k.stands_in() {
        text.push_str(&format!("; where nobody says: {stands_in}"));
    }
    text
}

/// A quantity as text, or a plain number where it has no unit.
fn quantity(k: &KeySpec) -> Value {
    let plain = matches!(
        k.kind,
        KeyKind::Quantity(stillrise_units::Dim::Ratio) | KeyKind::Quantities(stillrise_units::Dim::Ratio)
    );
    if plain { json!({ "type": ["string", "number"] }) } else { json!({ "type": "string" }) }
}

fn claim(k: &KeySpec) -> Value {
    let mut properties = who();
    for name in ["value", "low", "high"] {
        properties.insert(name.to_owned(), quantity(k));
    }
    let meanings: Vec<String> = Distribution::ALL.iter().map(|d| format!("{}: {}", d.word(), d.meaning())).collect();
    properties.insert(
        "distribution".to_owned(),
        json!({
            "enum": Distribution::ALL.iter().map(|d| d.word()).collect::<Vec<_>>(),
            "description": meanings.join("; "),
        }),
    );
    json!({ "type": "object", "additionalProperties": false, "required": ["value"], "properties": properties })
}
