//! The schemas of what is short: a job at a glance, and jobs side by side.

use super::kit::{closed, count, flag, list, maybe, text, titled};
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
