//! The inspection sheet: one page to copy.

use super::tasks::Task;
use crate::report::Report;
use crate::report::blocks::{Table, blank, slim, wide};

/// A page of its own at the end.
pub(super) fn sheet(r: &mut Report<'_>, tasks: &[Task]) {
    r.out.page_to_copy("Inspection sheet, to copy");
    let mut head = Table::new([
        blank("Date, time", 32.0),
        wide("By", 1.0),
        wide("Flow, weather, last rain", 1.4),
        wide("Last pump-out", 1.0),
    ]);
    head.row(["", "", "", ""]);
    r.out.form(&head, 5.5);
    let mut table = Table::new([
        slim(""),
        wide("Task", 2.0),
        wide("Limit", 1.7),
        blank("Reading", 24.0),
        blank("Done", 11.0),
        wide("Remark", 1.0),
    ]);
    for task in tasks {
        table.row([
            task.letter.to_string(),
            task.what.clone(),
            task.limit.clone(),
            String::new(),
            String::new(),
            String::new(),
        ]);
    }
    r.out.form(&table, 5.5);
    let mut out = Table::new([
        wide("Taken out: oil", 1.0),
        wide("Water", 1.0),
        wide("Sludge", 1.0),
        wide("Carrier", 1.2),
        wide("Waste paper no.", 1.2),
        wide("Signed", 1.0),
    ]);
    out.row(["", "", "", "", "", ""]);
    r.out.form(&out, 6.5);
}
