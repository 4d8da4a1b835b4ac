//! The methods that an authority asks for, each in its source's own notation; our own prediction beside it.

use super::blocks::{Table, number, slim, wide};
use super::{Report, capital};
use crate::regulation::{Sheet, authority, sheets};

/// A section of its own; nothing where no method is asked for.
pub(super) fn regulation(r: &mut Report<'_>) {
    let sheets = sheets(r.settled);
    if sheets.is_empty() {
        return;
    }
    r.out.section("Methods that the authority asks for");
    let whom = authority(r.settled).map_or_else(String::new, |name| format!(" Asked for by {name}."));
    r.out.para(&format!(
        "Each method is worked for this job by its published steps, in the symbols of its source, with its numbers in the units in which it works.{whom} The units are not sized by it: they are held against it here, and our own calculation, in the calculation report, is the annex to it. The last column points to the trail, a paper of its own.",
    ));
    for sheet in &sheets {
        one(r, sheet);
    }
}

fn one(r: &mut Report<'_>, sheet: &Sheet) {
    r.out.heading(sheet.title);
    r.out.lead("Source. ", &format!("{}.", sheet.sources.join("; ")));
    if let Some(standing) = sheet.standing {
        r.out.remark(standing);
    }
    let mut table =
        Table::new([slim("Symbol"), wide("Meaning", 1.6), slim("Value"), wide("Origin", 1.8), number("No.", "")]);
    for row in &sheet.notation {
        let cells = [row.symbol.clone(), capital(&row.meaning), row.value.clone(), capital(&row.origin), r.no(row.at)];
        table.row(cells);
    }
    r.out.table(&table);
    let mut table = Table::new([wide("Step", 1.1), wide("Worked", 3.0), number("No.", "")]);
    for step in &sheet.steps {
        let last = step.lines.len().saturating_sub(1);
        for (k, line) in step.lines.iter().enumerate() {
            let what = if k == 0 { capital(&step.what) } else { String::new() };
            let no = if k == last { r.no(step.at) } else { String::new() };
            table.row([what, line.text(), no]);
        }
        for note in &step.notes {
            table.row([String::new(), format!("Note: {note}"), String::new()]);
        }
    }
    r.out.table(&table);
    r.out.lead("Result. ", &sheet.result);
    let mut table = Table::new([wide("Asked for", 1.6), slim("By the method"), wide("Units", 1.4), slim("")]);
    for row in &sheet.beside {
        table.row([capital(row.what), row.asked.clone(), capital(&row.has), row.word().to_owned()]);
    }
    r.out.table(&table);
    for remark in &sheet.remarks {
        r.out.para(remark);
    }
    r.out.lead("What it leaves out.", "");
    r.out.list(false, sheet.leaves_out.iter().map(|text| ((*text).to_owned(), String::new())));
    r.out.lead("Beside it. ", &sheet.ours.join(" "));
    r.out.para(&sheet.confirm);
}
