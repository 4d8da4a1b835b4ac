//! The description of the interface for programs, in OpenAPI 3.1, from the list of its ways.

use super::route::{Holds, Route};
use super::shapes::{all, named};
use serde_json::{Map, Value, json};

/// The description.
#[must_use]
pub fn description(ways: &[Route]) -> Value {
    let mut paths: Map<String, Value> = Map::new();
    for way in ways {
        let path = paths.entry(way.described_path()).or_insert_with(|| json!({}));
        path[way.method] = operation(way);
    }
    json!({
        "openapi": "3.1.0",
        "info": {
            "title": "Stillrise",
            "version": env!("CARGO_PKG_VERSION"),
            "description": "The sheet's interface for programs. Numbers of a result stand in SI where no unit stands beside them.",
            "license": { "name": "MIT OR Apache-2.0" },
        },
        "servers": [{ "url": "/" }],
        "security": [{ "key": [] }, { "cookie": [] }],
        "paths": paths,
        "components": {
            "schemas": all(),
            "securitySchemes": {
                "key": { "type": "http", "scheme": "bearer", "description": "The key in the address that is printed at the start" },
                "cookie": { "type": "apiKey", "in": "cookie", "name": "sheet-{port}", "description": "Set by the address that is printed at the start; a change by it is taken from a page of this server alone" },
            },
        },
    })
}

fn operation(way: &Route) -> Value {
    let mut parameters: Vec<Value> = way.names().map(parameter).collect();
    parameters.extend(
        way.asks.iter().map(
            |asked| json!({ "name": asked.name, "in": "query", "description": asked.says, "schema": asked.takes }),
        ),
    );
    let mut responses: Map<String, Value> = Map::new();
    let (status, holds) = &way.answers;
    responses.insert(status.to_string(), done(holds));
    for status in way.refusals() {
        responses.insert(status.to_string(), refusal(status));
    }
    let mut operation =
        json!({ "operationId": way.id, "summary": way.says, "parameters": parameters, "responses": responses });
    if let Some(shape) = &way.takes {
        operation["requestBody"] = json!({ "required": true, "content": { "application/json": { "schema": shape } } });
    }
    operation
}

fn parameter(name: &str) -> Value {
    let (says, shape) = match name {
        "number" => ("The number of the package", json!({ "type": "integer", "minimum": 0, "maximum": u32::MAX })),
        "entry" => ("The line of the trail, from 0", json!({ "type": "integer", "minimum": 0, "maximum": u32::MAX })),
        "file" => ("The name of the document, with its folder", json!({ "type": "string", "minLength": 1 })),
        "rule" => ("The id of the rule", json!({ "type": "string", "minLength": 1 })),
        "id" => ("The id of the formula", json!({ "type": "string", "minLength": 1 })),
        _ => ("The name of the enquiry in the folder", json!({ "type": "string", "minLength": 1 })),
    };
    json!({ "name": name, "in": "path", "required": true, "description": says, "schema": shape })
}

fn done(holds: &Holds) -> Value {
    match holds {
        Holds::Json(shape) => json!({ "description": "Done", "content": { "application/json": { "schema": shape } } }),
        Holds::File(kind) => json!({ "description": "The document", "content": { *kind: {} } }),
        Holds::Nothing => json!({ "description": "Done" }),
    }
}

fn refusal(status: u16) -> Value {
    let says = match status {
        400 => "The address or the body cannot be read",
        401 => "The key is missing, or is one of another start",
        403 => "A page of another origin asks",
        404 => "There is no such thing",
        409 => "The enquiry was changed meanwhile, is locked, or too much is under way",
        413 => "The body is too large",
        415 => "The body is not said to be JSON",
        421 => "The host is another",
        422 => "The input is refused; every fault is told",
        503 => "The answer took too long",
        _ => "The machine or the program failed; what stood before stands",
    };
    // Time runs out before anything is said.
    if status == 503 {
        return json!({ "description": says });
    }
    let shape = if status == 422 { named("Refusal") } else { named("Error") };
    json!({ "description": says, "content": { "application/json": { "schema": shape } } })
}
