//! The schema of `flow --json`.

use super::kit::{closed, count, flag, list, maybe, number, pair, text, titled};
use serde_json::{Value, json};

/// The schema of the water in the long section.
#[must_use]
pub fn flow_schema() -> Value {
    let reading = || {
        closed(json!({
            "cells": pair(count()), "met": flag(), "residual": number(), "head": maybe(number()), "fastest": number(),
            "runs_back": number(), "stands": number(), "gap_most_over": maybe(number()), "gap_least": maybe(number()),
            "gaps": list(closed(json!({ "level": number(), "share": number() }))),
        }))
    };
    titled(
        "The water in the long section, resolved: SI, shares as parts of one",
        closed(json!({
            "flow": maybe(number()),
            "grids": list(reading()),
            "swirls": list(closed(json!({ "of": text(), "share": number(), "reading": reading() }))),
            "says": list(text()), "stopped": flag(), "limits": list(text()), "caution": text(),
        })),
    )
}
