//! Shapes of what is taken and answered, by name.

use serde_json::{Map, Value, json};
use stillrise_documents::Edition;
use stillrise_documents::schema::kit::{closed, count, flag, list, maybe, number, pair, text, text_of};
use stillrise_documents::schema::{
    changes_schema, compare_schema, glance_schema, rating_schema, read_schema, result_schema, risk_schema,
    with_range_schema,
};

/// A shape by its name.
#[must_use]
pub fn named(name: &str) -> Value {
    json!({ "$ref": format!("#/components/schemas/{name}") })
}

/// A list of a shape.
#[must_use]
pub fn of(shape: Value) -> Value {
    list(shape)
}

/// An object of which some properties may be left out, and no others stand.
fn open(required: &[&str], properties: Value) -> Value {
    json!({ "type": "object", "additionalProperties": false, "required": required, "properties": properties })
}

/// All shapes.
#[must_use]
pub fn all() -> Map<String, Value> {
    let mut all: Map<String, Value> = Map::new();
    let mut add = |name: &str, shape: Value| all.insert(name.to_owned(), shape);
    for (name, schema) in [
        ("Result", result_schema()),
        ("Risk", risk_schema()),
        ("Rating", rating_schema()),
        ("Comparison", compare_schema()),
        ("WithRange", with_range_schema()),
        ("Changes", changes_schema()),
        ("Glance", glance_schema()),
        ("Read", read_schema()),
    ] {
        add(name, within(schema, name));
    }
    let fault = closed(json!({ "place": text(), "reason": text(), "remedy": text() }));
    add("Fault", fault);
    add("Error", closed(json!({ "error": text() })));
    add("Refusal", json!({ "anyOf": [closed(json!({ "refused": list(named("Fault")) })), named("Error")] }));
    sheets(&mut add);
    taken(&mut add);
    results(&mut add);
    packages(&mut add);
    handbook(&mut add);
    all
}

/// A whole schema as one among others: its own pieces are found below its name.
fn within(mut schema: Value, name: &str) -> Value {
    fn walk(value: &mut Value, at: &str) {
        match value {
            Value::Object(map) => {
                if let Some(Value::String(to)) = map.get_mut("$ref") {
                    *to = to.replacen("#/$defs/", at, 1);
                }
                map.values_mut().for_each(|inner| walk(inner, at));
            }
            Value::Array(all) => all.iter_mut().for_each(|inner| walk(inner, at)),
            _ => {}
        }
    }
    if let Value::Object(map) = &mut schema {
        map.remove("$schema");
    }
    walk(&mut schema, &format!("#/components/schemas/{name}/$defs/"));
    schema
}

/// Shapes of enquiries.
fn sheets(add: &mut impl FnMut(&str, Value) -> Option<Value>) {
    add("Version", closed(json!({ "version": count() })));
    add("Text", closed(json!({ "version": count(), "text": text() })));
    add("Mail", closed(json!({ "version": count(), "mail": maybe(text()) })));
    add("Begun", closed(json!({ "name": text(), "address": text_of("Its page on this server") })));
    add(
        "Listed",
        list(closed(json!({
            "name": text(), "title": text(), "client": maybe(text()), "due": maybe(text()), "status": text(),
            "faults": { "type": ["integer", "null"], "description": "How many keep it from being worked; null where it cannot be read" },
            "glance": maybe(named("Glance")),
        }))),
    );
    add(
        "Sheet",
        closed(json!({
            "version": count(), "undo": maybe(text()), "redo": maybe(text()), "note": maybe(text()), "glance": maybe(named("Glance")),
            "faults": list(named("Fault")),
        })),
    );
    let claim = closed(json!({
        "value": text(), "from": maybe(text()), "chosen": flag(), "because": maybe(text()), "low": maybe(text()), "high": maybe(text()),
        "distribution": maybe(text()),
    }));
    let taken = closed(json!({ "value": text(), "low": text(), "high": text(), "source": text(), "entry": count() }));
    let input = closed(json!({
        "path": text(), "says": text(), "needed": flag(), "like": text(), "kind": { "enum": ["quantity", "word", "text"] },
        "units": list(text()), "words": list(text()), "bounds": maybe(pair(text())), "said": list(claim), "taken": maybe(taken),
        "settings": { "type": ["string", "null"], "description": "What the company's settings say of it" },
    }));
    let block =
        closed(json!({ "block": text(), "says": text(), "stands": flag(), "many": flag(), "inputs": list(input) }));
    let says = closed(
        json!({ "key": text(), "what": text(), "value": text(), "above": maybe(text()), "instead": maybe(text()) }),
    );
    add(
        "Settings",
        closed(json!({
            "file": maybe(text_of("Where it lies; null where there is none")), "text": text(), "faults": list(named("Fault")), "says": list(says),
        })),
    );
    add("Inputs", closed(json!({ "version": count(), "blocks": list(block) })));
}

/// Shapes of what is taken.
fn taken(add: &mut impl FnMut(&str, Value) -> Option<Value>) {
    let position = || json!({ "type": "integer", "minimum": 0, "maximum": u32::MAX });
    add(
        "Beginning",
        open(
            &[],
            json!({
                "name": { "type": ["string", "null"], "description": "One is found where none is given" },
                "like": { "type": ["string", "null"], "description": "The worked job that it is a copy of" },
                "mail": { "type": ["string", "null"], "description": "The customer's text that it begins with" },
            }),
        ),
    );
    add("NewText", closed(json!({ "text": text(), "over": position() })));
    add("NewMail", closed(json!({ "mail": text() })));
    add("Reading", open(&["text"], json!({ "text": text(), "gallon": { "enum": ["us", "imperial", null] } })));
    let editions: Vec<&str> = Edition::ALL.iter().map(|edition| edition.word()).collect();
    add("Wish", closed(json!({ "edition": { "enum": editions } })));
    let path = || text_of("A key, as the inputs name it");
    let from = || json!({ "type": ["string", "null"], "description": "Who says so" });
    let two = json!({ "type": "array", "prefixItems": [text(), text()], "items": false, "minItems": 2, "maxItems": 2 });
    let one = |word: &str, says: &str, required: &[&str], properties: Value| {
        let mut all = json!({ "do": { "const": word } });
        if let (Value::Object(all), Value::Object(more)) = (&mut all, properties) {
            all.extend(more);
        }
        let required: Vec<&str> = core::iter::once("do").chain(required.iter().copied()).collect();
        let mut shape = open(&required, all);
        shape["description"] = json!(says);
        shape
    };
    add(
        "Action",
        json!({ "oneOf": [
        one("set", "Writes the value of a key, in place of all that was said of it", &["path", "value"], json!({ "path": path(), "value": text(), "from": from() })),
        one("claim", "Adds a claim beside what was said of a key", &["path", "value"], json!({ "path": path(), "value": text(), "from": from() })),
        one("choose", "Chooses among claims that contradict", &["path", "nth", "because"], json!({ "path": path(), "nth": position(), "because": text() })),
        one("withdraw", "Takes a claim back", &["path", "nth"], json!({ "path": path(), "nth": position() })),
        one("unset", "Takes back all that was said of a key", &["path"], json!({ "path": path() })),
        one("add", "Adds a block with its keys and their values", &["block", "keys"], json!({ "block": text(), "keys": list(two) })),
        one("remove", "Removes a block", &["place"], json!({ "place": text_of("The block, as the inputs name it") })),
        one("decide", "Decides about a finding", &["rule", "decision", "because"], json!({ "rule": text(), "decision": text(), "because": text(), "who": from(), "date": from() })),
        one("undecide", "Takes a decision back", &["rule"], json!({ "rule": text() })),
    ] }),
    );
    add("Actions", list(named("Action")));
}

/// Shapes of what an enquiry comes to.
fn results(add: &mut impl FnMut(&str, Value) -> Option<Value>) {
    let words = || list(closed(json!({ "limit": text(), "word": text() })));
    add(
        "Units",
        closed(json!({ "units": list(closed(json!({
        "name": text(), "model": text(), "taken": flag(), "limits": words(),
        "facts": list(closed(json!({ "what": text(), "value": text() }))), "barred": list(closed(json!({ "rule": text(), "says": text() }))),
    }))) })),
    );
    add(
        "Alternatives",
        closed(json!({ "trains": list(closed(json!({
        "change": text(), "unit": maybe(text()), "nearest": maybe(text()), "flow": maybe(text()), "held_back": maybe(text()),
        "leaves_mg_l": maybe(text()), "limits": words(), "needed": list(text()), "price": maybe(text()),
    }))) })),
    );
    add(
        "Questions",
        closed(json!({ "questions": list(closed(json!({
        "key": text(), "question": text(), "now": text(), "low": text(), "high": text(), "source": text(), "contradiction": flag(), "moves": text(),
    }))) })),
    );
    add(
        "TrailLine",
        closed(json!({
            "entry": count(), "section": text(), "label": text(), "value": text(), "origin": text(), "worked": list(text()), "notes": list(text()),
            "inputs": list(closed(json!({ "entry": count(), "label": text(), "value": text(), "origin": text() }))),
        })),
    );
    add("Remedies", json!({ "type": "object", "required": ["rule", "remedies"] }));
    add("Reply", closed(json!({ "reply": text() })));
}

/// Shapes of packages.
fn packages(add: &mut impl FnMut(&str, Value) -> Option<Value>) {
    let file = closed(json!({ "name": text(), "bytes": count() }));
    let stand = json!({ "anyOf": [
        closed(json!({ "stands": { "const": "making" }, "step": text(), "done": count(), "of": count() })),
        closed(json!({ "stands": { "const": "stopped" } })),
        closed(json!({ "stands": { "const": "failed" }, "reason": text() })),
        closed(json!({ "stands": { "const": "done" }, "files": list(file) })),
    ] });
    add("Stand", stand);
    add("PackageBegun", closed(json!({ "package": count() })));
    add(
        "Package",
        closed(
            json!({ "package": count(), "sheet": text(), "version": count(), "edition": text(), "stand": named("Stand") }),
        ),
    );
    add(
        "Documents",
        closed(json!({
            "editions": list(closed(json!({ "edition": text(), "name": text() }))),
            "packages": list(closed(json!({ "package": count(), "version": count(), "edition": text(), "stand": named("Stand") }))),
        })),
    );
    add("Saved", closed(json!({ "folder": text_of("Its folder, beside the enquiry") })));
}

/// Shapes of the manual.
fn handbook(add: &mut impl FnMut(&str, Value) -> Option<Value>) {
    let hit = closed(json!({ "kind": text(), "id": text(), "title": text(), "excerpt": text() }));
    add("Hits", closed(json!({ "count": count(), "hits": list(hit) })));
    let ends = || maybe(pair(maybe(number())));
    let symbol = || {
        closed(
            json!({ "name": text(), "meaning": text(), "takes": text(), "trusted_si": ends(), "answers_si": ends() }),
        )
    };
    add(
        "Formula",
        closed(json!({
            "id": text(), "title": text(), "area": maybe(text()), "says": list(text()), "equations": list(text()), "arguments": list(symbol()),
            "result": symbol(), "constants": list(closed(json!({ "symbol": text(), "value": number() }))), "sources": list(text()),
            "checks": list(closed(json!({ "given": text(), "expected": text(), "found": text(), "evidence": text(), "holds": flag() }))),
        })),
    );
}
