//! The worksheets as data.

use super::{Beside, Line, Notation, Sheet, Step, authority, sheets};
use serde_json::{Value, json};
use stillrise_search::Settled;

/// Who asks, and each method; null where none is asked for.
#[must_use]
pub fn regulation_json(settled: &Settled) -> Value {
    let all = sheets(settled);
    if all.is_empty() {
        return Value::Null;
    }
    json!({ "authority": authority(settled), "methods": all.iter().map(sheet).collect::<Vec<_>>() })
}

fn sheet(sheet: &Sheet) -> Value {
    json!({
        "method": sheet.method.word(), "title": sheet.title, "sources": sheet.sources, "standing": sheet.standing,
        "notation": sheet.notation.iter().map(notation).collect::<Vec<_>>(),
        "steps": sheet.steps.iter().map(step).collect::<Vec<_>>(),
        "result": sheet.result,
        "asked": sheet.beside.iter().map(beside).collect::<Vec<_>>(),
        "remarks": sheet.remarks, "leaves_out": sheet.leaves_out, "ours": sheet.ours, "confirm": sheet.confirm,
    })
}

fn notation(row: &Notation) -> Value {
    json!({ "symbol": row.symbol, "meaning": row.meaning, "value": row.value, "origin": row.origin, "entry": row.at.index() })
}

fn step(step: &Step) -> Value {
    json!({
        "what": step.what, "lines": step.lines.iter().map(Line::text).collect::<Vec<_>>(), "value": step.value,
        "notes": step.notes, "entry": step.at.index(),
    })
}

fn beside(row: &Beside) -> Value {
    json!({ "what": row.what, "asked": row.asked, "units": row.has, "holds": row.holds })
}
