//! The schema of `risk --json`.

use super::kit::{closed, count, flag, list, maybe, number, pair, text, titled};
use serde_json::{Value, json};

/// The schema of a study of how sure a prediction is.
#[must_use]
pub fn risk_schema() -> Value {
    let spread = || closed(json!({ "p05": number(), "median": number(), "p95": number(), "mean": number() }));
    let argument = || json!({ "description": "A number in SI, a word, or of several fields an object" });
    let range = || {
        let numbers = closed(json!({ "low": number(), "likely": number(), "high": number(), "distribution": text() }));
        json!({ "anyOf": [numbers, closed(json!({ "words": list(argument()) }))] })
    };
    let input = || json!({ "key": text(), "label": text(), "si_unit": maybe(text()), "now": argument(), "range": range(), "assumed": flag() });
    let carrier = {
        let mut carrier = input();
        carrier["first"] = number();
        carrier["total"] = number();
        closed(carrier)
    };
    let limit = closed(json!({
        "pollutant": maybe(text()), "held": spread(), "against": maybe(number()), "kept": maybe(number()), "kept_if_mixed": maybe(number()),
    }));
    titled(
        "How sure a prediction is: mg/L, and SI where no unit stands beside a number",
        closed(json!({
            "samples": count(), "stopped": count(), "rows_for_shares": count(), "says": list(text()),
            "shares_of": { "anyOf": [closed(json!({ "limit": count(), "pollutant": maybe(text()) })), text()] },
            "total_oil_out": closed(json!({
                "unit": text(), "ideal": spread(), "expected": spread(), "mixed": spread(), "mesh_counted": maybe(spread()),
            })),
            "free_oil_out": spread(),
            "cases": list(closed(json!({ "case": text(), "total_oil_out": spread() }))),
            "limits": list(limit),
            "carriers": list(carrier),
            "swings": list(closed(json!({ "input": closed(input()), "ends": pair(argument()), "total_oil_out": pair(maybe(number())) }))),
            "idle": list(closed(input())),
            "caution": text(),
        })),
    )
}
