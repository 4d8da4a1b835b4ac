//! The schemas of what is kept of an issued revision, and of what has changed since.

use super::kit::{closed, count, list, maybe, text, text_of, titled};
use crate::issue::Kind;
use serde_json::{Value, json};

/// The schema of the manifest of an issued revision.
#[must_use]
pub fn issued_schema() -> Value {
    let kinds: Vec<&str> = Kind::ALL.iter().map(|kind| kind.word()).collect();
    let hash = || json!({ "type": "string", "pattern": "^[0-9a-f]{64}$" });
    let input = closed(json!({
        "kind": { "enum": kinds }, "name": text_of("As the enquiry names it"), "file": text_of("Its place in the set"),
        "bytes": count(), "sha256": hash(),
    }));
    let decision = closed(json!({
        "rule": text(), "verdict": text(), "decision": text(), "because": maybe(text()), "who": maybe(text()), "date": maybe(text()),
    }));
    titled(
        "An issued revision",
        closed(json!({
            "is": { "const": "stillrise issued revision" }, "tool": closed(json!({ "name": text(), "version": text() })),
            "title": maybe(text()), "project": maybe(text()), "revision": text(), "date": text(), "status": text(),
            "inputs": list(input),
            "results": closed(json!({ "file": text(), "bytes": count(), "sha256": hash(), "numbers": count() })),
            "decisions": list(decision), "caution": text(),
        })),
    )
}

/// The schema of what `compare --with-issued --json` prints.
#[must_use]
pub fn changes_schema() -> Value {
    let differs = || {
        list(closed(json!({
            "what": text(), "issued": maybe(text()), "again": maybe(text_of("What this tool finds on the inputs as issued")),
            "now": maybe(text()), "by": { "enum": ["inputs", "tool", "both"] },
        })))
    };
    let both = |what: &str| list(closed(json!({ what: text(), "issued": maybe(text()), "now": maybe(text()) })));
    titled(
        "What has changed since a revision was issued",
        closed(json!({
            "caution": text(), "revision": text(), "date": maybe(text()),
            "tool": closed(json!({ "issued": maybe(text()), "now": text() })),
            "because": { "enum": ["nothing", "inputs", "tool", "both", "text alone", "refused"] }, "says": text(),
            "held": count(), "inputs": both("name"),
            "refused": list(closed(json!({ "place": text(), "reason": text(), "remedy": text() }))),
            "said": both("what"), "results": differs(), "rules": differs(), "numbers": differs(),
        })),
    )
}
