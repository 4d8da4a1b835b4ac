//! Whether a value has the shape of a schema.

use serde_json::Value;

/// What a schema leads to behind its references.
pub fn behind<'a>(root: &'a Value, mut schema: &'a Value) -> &'a Value {
    while let Some(to) = schema["$ref"].as_str() {
        schema = root.pointer(to.trim_start_matches('#')).unwrap_or_else(|| panic!("{to} leads nowhere"));
    }
    schema
}

/// Words of a schema that this client understands; one that it does not would be passed over in silence.
const KNOWN: &[&str] = &[
    "$ref",
    "$defs",
    "title",
    "description",
    "type",
    "enum",
    "const",
    "anyOf",
    "oneOf",
    "properties",
    "required",
    "additionalProperties",
    "items",
    "prefixItems",
    "minItems",
    "maxItems",
    "minimum",
    "maximum",
    "minLength",
];

/// The first place where a value has not the shape of a schema.
pub fn astray(root: &Value, schema: &Value, value: &Value, at: &str) -> Option<String> {
    let schema = behind(root, schema);
    if let Some(word) = schema.as_object().and_then(|s| s.keys().find(|key| !KNOWN.contains(&key.as_str()))) {
        panic!("{at}: \"{word}\" is not understood");
    }
    if let Some(any) = schema["anyOf"].as_array().or_else(|| schema["oneOf"].as_array()) {
        let all: Vec<Option<String>> = any.iter().map(|one| astray(root, one, value, at)).collect();
        let fits = all.iter().filter(|one| one.is_none()).count();
        if fits == 0 || fits > 1 && schema["oneOf"].is_array() {
            return Some(format!("{at} fits {fits} of its shapes: {all:?}"));
        }
    }
    if schema.get("const").is_some_and(|only| only != value)
        || schema["enum"].as_array().is_some_and(|all| !all.contains(value))
    {
        return Some(format!("{at} is {value}"));
    }
    let kind = match value {
        Value::Null => "null",
        Value::Bool(_) => "boolean",
        Value::Number(n) if n.is_f64() => "number",
        Value::Number(_) => "integer",
        Value::String(_) => "string",
        Value::Array(_) => "array",
        Value::Object(_) => "object",
    };
    let fits = |t: &Value| t == kind || t == "number" && kind == "integer";
    let typed = match &schema["type"] {
        Value::Null => true,
        Value::Array(list) => list.iter().any(fits),
        one => fits(one),
    };
    if !typed {
        return Some(format!("{at} is a {kind}: {value}"));
    }
    match value {
        Value::Array(list) => {
            let (least, most) =
                (schema["minItems"].as_u64().unwrap_or(0), schema["maxItems"].as_u64().unwrap_or(u64::MAX));
            if !(least..=most).contains(&(list.len() as u64)) {
                return Some(format!("{at} has {} items", list.len()));
            }
            let shape = |k: usize| schema["prefixItems"].get(k).or_else(|| schema.get("items")).unwrap_or(&Value::Null);
            list.iter().enumerate().find_map(|(k, v)| astray(root, shape(k), v, &format!("{at}[{k}]")))
        }
        Value::Object(map) => {
            let needed = schema["required"].as_array().into_iter().flatten().filter_map(Value::as_str);
            let missing =
                needed.into_iter().find(|key| !map.contains_key(*key)).map(|key| format!("{at} has no {key}"));
            missing.or_else(|| {
                map.iter().find_map(|(key, v)| match (schema["properties"].get(key), &schema["additionalProperties"]) {
                    (Some(shape), _) => astray(root, shape, v, &format!("{at}.{key}")),
                    (None, Value::Bool(false)) => Some(format!("{at} has {key}, which is not described")),
                    (None, shape) => astray(root, shape, v, &format!("{at}.{key}")),
                })
            })
        }
        Value::Number(n) => {
            let below = schema["minimum"].as_f64().is_some_and(|least| n.as_f64().is_some_and(|n| n < least));
            below.then(|| format!("{at} is {n}"))
        }
        _ => None,
    }
}

#[test]
fn the_client_tells_shapes_apart() {
    let root = serde_json::json!({ "a": { "type": "object", "additionalProperties": false, "required": ["n"], "properties": { "n": { "type": "integer", "minimum": 0 } } } });
    let shape = serde_json::json!({ "anyOf": [{ "$ref": "#/a" }, { "type": "array", "items": { "enum": ["x"] }, "maxItems": 1 }] });
    for (value, fits) in [
        (serde_json::json!({ "n": 1 }), true),
        (serde_json::json!({ "n": -1 }), false),
        (serde_json::json!({ "n": "1" }), false),
        (serde_json::json!({}), false),
        (serde_json::json!({ "n": 1, "m": 1 }), false),
        (serde_json::json!(["x"]), true),
        (serde_json::json!(["y"]), false),
        (serde_json::json!(["x", "x"]), false),
        (serde_json::json!(null), false),
    ] {
        assert_eq!(astray(&root, &shape, &value, "it").is_none(), fits, "{value}");
    }
}
