//! The worksheets as plain text: in short for a glance, or whole.

use super::{Sheet, authority, sheets};
use crate::render::text::{Table, hang, heading};
use stillrise_search::Settled;

/// What heads them: who asks.
fn head(settled: &Settled) -> String {
    authority(settled).map_or_else(
        || "Methods that the authority asks for".to_owned(),
        |name| format!("Methods that the authority asks for ({name})"),
    )
}

/// Each method with what it asks and what the units have; nothing where none is asked for.
#[must_use]
pub fn short(settled: &Settled, width: usize) -> String {
    let sheets = sheets(settled);
    let Some(first) = sheets.first() else { return String::new() };
    let mut out = heading(&head(settled));
    let mut table = Table::new(["method", "asks for", "", "units", ""]);
    for sheet in &sheets {
        let rows: Vec<_> = sheet.beside.iter().filter(|row| row.matters).collect();
        if rows.is_empty() {
            table.row([sheet.method.word(), "nothing that follows yet", "", "", ""]);
        }
        for (k, row) in rows.into_iter().enumerate() {
            let name = if k == 0 { sheet.method.word() } else { "" };
            let has = if row.holds.is_some() { row.has.as_str() } else { "" };
            table.row([name, row.what, &row.asked, has, row.word()]);
        }
    }
    out.push_str(&table.render(width));
    for sheet in &sheets {
        for remark in &sheet.remarks {
            out.push_str(&hang(&format!("{}: {remark}", sheet.method.word()), width, 0, 2));
        }
    }
    out.push_str(&hang(
        "Each leaves something out, and none says what leaves the unit: the worksheets with symbols, numbers and what is left out stand in the report.",
        width,
        0,
        2,
    ));
    out.push_str(&hang(&first.confirm, width, 0, 2));
    out
}

/// The worksheets, whole.
#[must_use]
pub fn text(settled: &Settled, width: usize) -> String {
    sheets(settled).iter().map(|sheet| whole(sheet, width)).collect()
}

fn whole(sheet: &Sheet, width: usize) -> String {
    let mut out = heading(sheet.title);
    for source in &sheet.sources {
        out.push_str(&hang(&format!("Source: {source}."), width, 0, 2));
    }
    if let Some(standing) = sheet.standing {
        out.push_str(&hang(standing, width, 0, 2));
    }
    let mut table = Table::new(["symbol", "meaning", "value", "origin"]);
    for row in &sheet.notation {
        table.row([&row.symbol, &row.meaning, &row.value, &row.origin]);
    }
    out.push_str(&table.render(width));
    for (k, step) in sheet.steps.iter().enumerate() {
        out.push_str(&hang(&format!("{}. {}", k + 1, step.what), width, 0, 3));
        for line in &step.lines {
            out.push_str(&hang(&line.text(), width, 3, 5));
        }
        for note in &step.notes {
            out.push_str(&hang(&format!("note: {note}"), width, 3, 5));
        }
    }
    out.push_str(&hang(&sheet.result, width, 0, 2));
    let mut table = Table::new(["asked", "", "units", ""]);
    for row in &sheet.beside {
        table.row([row.what, &row.asked, &row.has, row.word()]);
    }
    out.push_str(&table.render(width));
    let list = |out: &mut String, lead: &str, items: &mut dyn Iterator<Item = &str>| {
        for item in items {
            out.push_str(&hang(&format!("{lead}{item}"), width, 0, 2));
        }
    };
    list(&mut out, "", &mut sheet.remarks.iter().map(String::as_str));
    list(&mut out, "Left out: ", &mut sheet.leaves_out.iter().copied());
    list(&mut out, "Beside it: ", &mut sheet.ours.iter().map(String::as_str));
    out.push_str(&hang(&sheet.confirm, width, 0, 2));
    out
}
