//! The schema of `rate --json`, which is also the rating within the result.

use serde_json::{Value, json};

/// The schema of a rating.
#[must_use]
pub fn rating_schema() -> Value {
    let text = json!({ "type": "string" });
    let number = json!({ "type": "number" });
    let flag = json!({ "type": "boolean" });
    let maybe = |of: &str| json!({ "type": [of, "null"] });
    let list = |items: Value| json!({ "type": "array", "items": items });
    let shape = |properties: Value| {
        let required: Vec<String> = properties.as_object().map_or_else(Vec::new, |p| p.keys().cloned().collect());
        json!({ "type": "object", "additionalProperties": false, "required": required, "properties": properties })
    };
    let range = json!({ "type": ["array", "null"], "description": "Nine in ten results lie between, mg/L", "items": number, "minItems": 2, "maxItems": 2 });
    let telling = shape(json!({ "results": maybe("integer"), "geometric_mean_below": maybe("number") }));
    let telling = json!({ "description": "Where results before the remedy lie in that range: so many after it tell whether it helped, and by which mean, mg/L", "anyOf": [telling, { "type": "null" }] });
    let observed = shape(json!({
        "occasion": text, "date": maybe("string"), "time": maybe("string"), "regime": maybe("string"), "good": flag,
        "flow_m3_h": number, "flow_measured": flag, "flow_by_change": maybe("integer"), "besides": list(text.clone()), "oil_in": number, "oil_in_measured": flag,
        "temperature_c": number, "temperature_measured": flag, "oil_out": maybe("number"), "oil_out_detected": flag,
        "oil_out_expected": number, "oil_out_expected_within_basis": maybe("number"),
    }));
    let member = shape(json!({ "cause": text, "change": maybe("integer"), "size_si": maybe("number") }));
    let explanation = shape(json!({
        "weight": number, "says": text, "causes": list(member),
        "oil_out": list(maybe("number")), "oil_out_with_twice_the_area": list(maybe("number")),
    }));
    let again = shape(json!({ "water_m3": number, "running_h": maybe("number"), "days": { "type": "integer" } }));
    let step = shape(json!({
        "cause": text, "change": maybe("integer"), "weight": number, "cost": { "type": "integer" }, "cost_says": text,
        "test": text, "remedy": text, "sample_again": again, "expect": range, "tells": telling, "says": text,
    }));
    let calibration = shape(json!({
        "samples": { "type": "integer" }, "mean": number, "expected_before": number, "expected_after": number,
        "influent_over_basis": number, "median_droplet_over_basis": number, "oil_out_over_chain": number,
        "scatter": maybe("number"),
    }));
    let side = || shape(json!({ "results": { "type": "integer" }, "geometric_mean": number }));
    let ended = json!({ "anyOf": [shape(json!({ "last_high": text, "first_low": text })), { "type": "null" }] });
    let jump =
        shape(json!({ "last_before": text, "first_after": text, "ended": ended, "before": side(), "after": side() }));
    let properties = json!({
        "headline": list(text.clone()),
        "fails": list(shape(json!({ "rule": text, "says": text }))),
        "observed": list(observed),
        "step": { "anyOf": [jump, { "type": "null" }], "description": "A step in the results where no change was recorded" },
        "good_period": { "anyOf": [calibration, { "type": "null" }] },
        "changes": list(shape(json!({ "change": { "type": "integer", "description": "Its place in the enquiry, from 0" }, "date": maybe("string"), "says": text, "weight": maybe("number") }))),
        "beyond_basis": list(text.clone()),
        "explanations": list(explanation),
        "causes": list(shape(json!({ "cause": text, "title": text, "weight": number, "test": text, "cost": { "type": "integer" }, "remedy": text }))),
        "steps": list(step),
        "all_put_right": range, "all_put_right_tells": telling,
        "next_test": { "anyOf": [shape(json!({ "cause": text, "test": text })), { "type": "null" }] },
        "larger_unit": shape(json!({ "helps": maybe("boolean"), "says": text })),
        "sets": { "type": "integer", "description": "Sets of up to three causes looked at" },
        "worked_in_trail": list(maybe("integer")),
        "caution": text,
    });
    let mut schema = shape(properties);
    if let Value::Object(map) = &mut schema {
        map.insert("$schema".to_owned(), json!(super::DIALECT));
        map.insert("title".to_owned(), json!("A rating: mg/L, m3/h and °C; sizes of causes in SI"));
    }
    schema
}
