//! Pieces that schemas of answers are put together from.

use serde_json::{Value, json};

/// An object with these properties, all of them and no others.
#[must_use]
pub fn closed(properties: Value) -> Value {
    let required: Vec<String> = properties.as_object().map_or_else(Vec::new, |p| p.keys().cloned().collect());
    json!({ "type": "object", "additionalProperties": false, "required": required, "properties": properties })
}

/// Text.
#[must_use]
pub fn text() -> Value {
    json!({ "type": "string" })
}

/// Text with what it says.
#[must_use]
pub fn text_of(says: &str) -> Value {
    json!({ "type": "string", "description": says })
}

/// A number.
#[must_use]
pub fn number() -> Value {
    json!({ "type": "number" })
}

/// A number that counts from 0.
#[must_use]
pub fn count() -> Value {
    json!({ "type": "integer", "minimum": 0 })
}

/// Yes or no.
#[must_use]
pub fn flag() -> Value {
    json!({ "type": "boolean" })
}

/// What a schema says, or nothing.
#[must_use]
pub fn maybe(of: Value) -> Value {
    json!({ "anyOf": [of, { "type": "null" }] })
}

/// A list.
#[must_use]
pub fn list(of: Value) -> Value {
    json!({ "type": "array", "items": of })
}

/// A list of just two.
#[must_use]
pub fn pair(of: Value) -> Value {
    json!({ "type": "array", "items": of, "minItems": 2, "maxItems": 2 })
}

/// A whole schema with its title.
pub(super) fn titled(title: &str, mut schema: Value) -> Value {
    if let Value::Object(map) = &mut schema {
        map.insert("$schema".to_owned(), json!(super::DIALECT));
        map.insert("title".to_owned(), json!(title));
    }
    schema
}
