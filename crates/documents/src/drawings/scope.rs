//! Who brings what, as proposed: what a drawing of the unit leaves open otherwise.

use crate::render::text::Table;
use crate::scope;
use crate::section::place::Section;

/// Columns: the thing, and who brings it; `None` where nothing is offered.
pub fn table(s: &Section) -> Option<Table> {
    let rows = scope::rows(s.settled);
    let mut table = Table::new(["Item", "By"]);
    for row in rows {
        table.row([row.item, row.by.word().to_owned()]);
    }
    (!table.rows.is_empty()).then_some(table)
}
