//! Requests of an operation, as its schemas allow them and as they do not.

use crate::JOB;
use crate::shape::behind;
use proptest::collection::{hash_map, vec};
use proptest::prelude::*;
use proptest::sample::select;
use serde_json::{Map, Value, json};

/// Text that somebody may send: words that mean something here, odd letters, and much of it.
fn words() -> BoxedStrategy<String> {
    let known = [
        JOB,
        "water.coldest",
        "enquiry.title",
        "unit.model",
        "50 °F",
        "120 gpm",
        "stream \"wash\"",
        "accepted",
        "gap-not-laminar",
        "accuracy",
        "",
        "\u{0}",
        "\r\n[x]\n",
        "\"\"\"",
        "../..",
        "\u{202e}\u{feff}",
        "1e999",
        "-0",
        "stream",
        "surface",
        "name",
        "area",
    ];
    prop_oneof![6 => select(known.to_vec()).prop_map(str::to_owned), 3 => ".{0,40}", 1 => (1_usize..4000).prop_map(|n| "ä[=\"".repeat(n))].boxed()
}

/// Any JSON.
fn anything() -> BoxedStrategy<Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        words().prop_map(Value::from),
        Just(json!([null, null])),
        Just(json!(["set", "water.coldest", "50 °F"])),
        Just(json!(["x"]))
    ];
    leaf.prop_recursive(3, 12, 4, |inner| {
        prop_oneof![
            vec(inner.clone(), 0..4).prop_map(Value::from),
            hash_map(words(), inner, 0..4).prop_map(|map| Value::Object(map.into_iter().collect())),
        ]
    })
    .boxed()
}

/// Values of a shape.
fn of_shape(root: &Value, schema: &Value) -> BoxedStrategy<Value> {
    let schema = behind(root, schema);
    if let Some(all) = schema["enum"].as_array() {
        return select(all.clone()).boxed();
    }
    if let Some(only) = schema.get("const") {
        return Just(only.clone()).boxed();
    }
    if let Some(any) = schema["anyOf"].as_array().or_else(|| schema["oneOf"].as_array()) {
        return proptest::strategy::Union::new(any.iter().map(|one| of_shape(root, one))).boxed();
    }
    let kinds: Vec<&str> = match &schema["type"] {
        Value::Array(all) => all.iter().filter_map(Value::as_str).collect(),
        one => one.as_str().into_iter().collect(),
    };
    let one = |kind: &str| -> BoxedStrategy<Value> {
        match kind {
            "null" => Just(Value::Null).boxed(),
            "boolean" => any::<bool>().prop_map(Value::from).boxed(),
            "integer" => prop_oneof![4 => 0_u64..4, 1 => 0_u64..=u64::from(u32::MAX)].prop_map(Value::from).boxed(),
            "number" => any::<f64>().prop_map(Value::from).boxed(),
            "string" => words().prop_map(Value::from).boxed(),
            "array" => match schema["prefixItems"].as_array() {
                Some(own) => {
                    own.iter().map(|one| of_shape(root, one)).collect::<Vec<_>>().prop_map(Value::from).boxed()
                }
                None => vec(of_shape(root, &schema["items"]), 0..3).prop_map(Value::from).boxed(),
            },
            _ => {
                let needed: Vec<&str> =
                    schema["required"].as_array().into_iter().flatten().filter_map(Value::as_str).collect();
                let own = schema["properties"].as_object().into_iter().flatten().map(|(key, shape)| {
                    let value = of_shape(root, shape);
                    let value = if needed.contains(&key.as_str()) {
                        value.prop_map(Some).boxed()
                    } else {
                        proptest::option::of(value).boxed()
                    };
                    (Just(key.clone()), value)
                });
                let map = |all: Vec<(String, Option<Value>)>| {
                    all.into_iter().filter_map(|(key, value)| Some((key, value?))).collect::<Map<_, _>>()
                };
                own.collect::<Vec<_>>().prop_map(move |all| Value::Object(map(all))).boxed()
            }
        }
    };
    proptest::strategy::Union::new(kinds.into_iter().map(one)).boxed()
}

/// A value of a shape with something wrong in it: at its root, or one step or two within.
fn broken(root: &Value, schema: &Value) -> BoxedStrategy<Value> {
    (of_shape(root, schema), anything(), words(), 0_usize..5, any::<prop::sample::Index>())
        .prop_map(|(mut value, other, word, how, which)| {
            let within = match &value {
                Value::Array(list) if !list.is_empty() => Some(which.index(list.len())),
                _ => None,
            };
            let at = match within {
                Some(k) => &mut value[k],
                None => &mut value,
            };
            match (at, how) {
                (Value::Object(map), 0 | 1) if !map.is_empty() => {
                    let key = map.keys().nth(which.index(map.len())).cloned().unwrap_or_default();
                    if how == 0 {
                        map.remove(&key)
                    } else {
                        map.insert(key, other)
                    };
                }
                (Value::Object(map), 2) => {
                    map.insert(word, other);
                }
                (at, _) => *at = other,
            }
            value
        })
        .boxed()
}

/// A piece of an address.
fn encoded(text: &str) -> String {
    text.bytes()
        .map(|b| if b.is_ascii_alphanumeric() { char::from(b).to_string() } else { format!("%{b:02X}") })
        .collect()
}

/// What a client sends.
#[derive(Debug, Clone)]
pub struct Request {
    pub method: String,
    pub path: String,
    pub kind: Option<&'static str>,
    pub body: Vec<u8>,
}

/// Requests of an operation.
pub fn requests(root: &Value, method: &str, path: &str, operation: &Value, formed: bool) -> BoxedStrategy<Request> {
    let named = |name: &str| -> BoxedStrategy<String> {
        match name {
            "name" | "with" => prop_oneof![8 => Just(JOB.to_owned()), 1 => words()].boxed(),
            "number" | "entry" => prop_oneof![4 => (0_u32..9).prop_map(|n| n.to_string()), 1 => words()].boxed(),
            "id" => prop_oneof![4 => Just("stokes-rise".to_owned()), 1 => words()].boxed(),
            _ => words(),
        }
    };
    let parameters: Vec<Value> = operation["parameters"].as_array().cloned().unwrap_or_default();
    let values: Vec<BoxedStrategy<String>> = parameters.iter().filter_map(|p| p["name"].as_str()).map(named).collect();
    let schema = operation.pointer("/requestBody/content/application~1json/schema");
    let body: BoxedStrategy<(Option<&'static str>, Vec<u8>)> = match schema {
        None => Just((None, Vec::new())).boxed(),
        Some(schema) if formed => {
            of_shape(root, schema).prop_map(|v| (Some("application/json"), v.to_string().into_bytes())).boxed()
        }
        Some(schema) => prop_oneof![
            6 => broken(root, schema).prop_map(|v| (Some("application/json"), v.to_string().into_bytes())),
            1 => vec(any::<u8>(), 0..60).prop_map(|bytes| (Some("application/json"), bytes)),
            1 => of_shape(root, schema).prop_map(|v| (Some("text/plain"), v.to_string().into_bytes())),
            1 => of_shape(root, schema).prop_map(|v| (None, v.to_string().into_bytes())),
        ]
        .boxed(),
    };
    let (method, path) = (method.to_uppercase(), path.to_owned());
    (values, body)
        .prop_map(move |(values, (kind, body))| {
            let (mut to, mut query) = (path.clone(), Vec::new());
            for (parameter, value) in parameters.iter().zip(&values) {
                let name = parameter["name"].as_str().unwrap_or_default();
                if parameter["in"] == "path" {
                    // An empty piece of a path leads to another way.
                    let value = if value.is_empty() { "-" } else { value.as_str() };
                    to = to.replace(&format!("{{{name}}}"), &encoded(value));
                } else {
                    query.push(format!("{name}={}", encoded(value)));
                }
            }
            if !query.is_empty() {
                to = format!("{to}?{}", query.join("&"));
            }
            Request { method: method.clone(), path: to, kind, body }
        })
        .boxed()
}
