//! The schemas of what is short: a job at a glance, and jobs side by side.

use super::kit::{closed, count, flag, list, maybe, text, text_of, titled};
use serde_json::{Value, json};

/// The schema of a job at a glance.
#[must_use]
pub fn glance_schema() -> Value {
    let limit = closed(json!({ "limit": text(), "statistic": text(), "word": text(), "clean": maybe(text()) }));
    titled(
        "A job at a glance",
        closed(json!({
            "duty": text(), "why": list(text()), "unit": maybe(text()), "flow": maybe(text()),
            "limits": list(limit),
            "leaves_clean": maybe(text()), "leaves_at_end": maybe(text()),
            "governs": list(closed(json!({ "what": text(), "case": text() }))),
            "rules": closed(json!({ "fail": count(), "warn": count(), "cannot_judge": count() })),
        })),
    )
}

/// The schema of `compare --json`.
#[must_use]
pub fn compare_schema() -> Value {
    let line = || closed(json!({ "what": text(), "values": list(maybe(text())), "differs": flag() }));
    titled(
        "Jobs side by side",
        closed(json!({
            "caution": text(), "jobs": list(text()), "results": list(line()), "said": list(line()), "rules": list(line()),
        })),
    )
}

/// The schema of `compare --with-range --json`.
#[must_use]
pub fn with_range_schema() -> Value {
    let unit = closed(json!({
        "unit": text(), "model": text(), "arrangement": text(), "taken": flag(),
        "leaves_mg_l": maybe(text_of("Total oil, the largest mean of all cases at the end of the interval")),
        "limits": list(closed(json!({ "limit": text(), "word": text() }))),
        "barred": list(closed(json!({ "id": text(), "rule": text(), "says": text() }))),
        "rules_fail": count(), "rules_cannot_judge": count(), "weight_empty": maybe(text()), "price": maybe(text()),
    }));
    titled("Every unit of the range for one duty", closed(json!({ "caution": text(), "units": list(unit) })))
}
