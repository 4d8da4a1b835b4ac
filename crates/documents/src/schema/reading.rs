//! The schema of `read --json`.

use super::kit::{closed, count, list, maybe, number, text, text_of, titled};
use serde_json::{Value, json};

/// The schema of what is found in a customer's text.
#[must_use]
pub fn read_schema() -> Value {
    let what = json!({ "anyOf": [
        closed(json!({ "quantity": text() })), closed(json!({ "word": text(), "thing": text() })), closed(json!({ "ph": text() })),
        closed(json!({ "count": number() })), closed(json!({ "gravity": text() })),
    ] });
    let offer = closed(
        json!({ "key": text_of("A key of the enquiry, without the names of blocks"), "value": text(), "weight": count() }),
    );
    let find = closed(json!({
        "from": { "type": "integer", "minimum": 0, "description": "Its first byte in the text" }, "to": count(), "said": text(),
        "what": what, "sentence": maybe(text()), "offers": list(offer),
    }));
    titled(
        "What is found in a customer's text, the likeliest key of each find first",
        closed(json!({ "finds": list(find) })),
    )
}
