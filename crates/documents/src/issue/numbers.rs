//! The results of a revision as they are kept: every number by what it is, so that a later run can be held against it.

use crate::compare::compare;
use crate::decisions;
use crate::edition::Edition;
use crate::result::arg;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use stillrise_design::provenance::Origin;
use stillrise_search::Settled;

/// Everything that came out: what it comes to, what rules say, and each value of the trail by section and label. A label that
/// stands in its section more than once is counted. Values are SI, or words.
#[must_use]
pub fn results(settled: &Settled) -> Value {
    let system = settled.job.enquiry.system();
    let mut met: BTreeMap<String, usize> = BTreeMap::new();
    let numbers = settled.job.ledger.entries.iter().map(|entry| {
        let name = format!("{}: {}", entry.section, entry.label);
        let count = met.entry(name.clone()).or_insert(0);
        *count += 1;
        let id = if *count == 1 { name } else { format!("{name} #{count}") };
        json!({ "id": id, "value": arg(&entry.value), "shown": entry.shown(system), "origin": kind(&entry.origin) })
    });
    let numbers: Vec<Value> = numbers.collect();
    let alone = compare(&[(String::new(), settled)]);
    let results: Vec<Value> =
        alone.results.iter().map(|line| json!({ "what": line.what, "value": line.values.first() })).collect();
    let rules: Vec<Value> = settled
        .verdicts
        .iter()
        .map(|judged| {
            let decision = decisions::told(judged, Edition::Us);
            json!({ "rule": judged.rule.id, "verdict": judged.verdict.word(), "says": judged.verdict.says(), "decision": decision })
        })
        .collect();
    json!({
        "is": "stillrise issued results",
        "tool": { "name": "stillrise", "version": env!("CARGO_PKG_VERSION") },
        "results": results, "rules": rules, "numbers": numbers,
    })
}

fn kind(origin: &Origin) -> &'static str {
    match origin {
        Origin::Given { source, .. } if source.is_settings() => "given by the settings",
        Origin::Given { .. } => "given",
        Origin::Assumed(_) => "assumed",
        Origin::Chosen { .. } => "chosen",
        Origin::Derived { .. } => "derived",
        Origin::Reckoned { .. } => "reckoned",
        Origin::Gathered { .. } => "gathered",
    }
}

/// The same as it is written: one line for each thing, so that two of them can be compared by any tool.
#[must_use]
pub fn results_bytes(results: &Value) -> Vec<u8> {
    let mut out = String::from("{");
    let parts = results.as_object().into_iter().flatten();
    for (k, (key, value)) in parts.enumerate() {
        out.push_str(if k == 0 { "\n" } else { ",\n" });
        out.push_str(&format!("  {}: ", Value::from(key.as_str())));
        match value {
            Value::Array(list) if !list.is_empty() => {
                let lines: Vec<String> = list.iter().map(|one| format!("    {one}")).collect();
                out.push_str(&format!("[\n{}\n  ]", lines.join(",\n")));
            }
            other => out.push_str(&other.to_string()),
        }
    }
    out.push_str("\n}\n");
    out.into_bytes()
}
