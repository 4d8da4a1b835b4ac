//! What EN 858-2 would ask for, beside our basis.

use super::blocks::{Table, number, slim, wide};
use super::{Report, capital};
use crate::summary::european::{beside, notes, rows};
use stillrise_design::basis::Basis;

/// A part of the basis; nothing where nobody asks by the standard.
pub(super) fn european(r: &mut Report<'_>, basis: &Basis) {
    let Some(european) = &basis.european else { return };
    r.out.heading("By EN 858-2, a comparison");
    let mut table = Table::new([wide("Quantity", 1.5), slim("Value"), wide("Origin", 2.0), number("No.", "")]);
    for (what, at) in rows(european) {
        if let Some([_, value, origin, no]) = r.row(at) {
            table.row([capital(&what), value, origin, no]);
        }
    }
    r.out.table(&table);
    let mut table = Table::new([wide("Beside each other", 1.5), slim("EN 858-2"), slim("Ours")]);
    for [what, theirs, ours] in beside(r.settled, european) {
        table.row([capital(&what), theirs, ours]);
    }
    r.out.table(&table);
    for text in notes(r.settled, european) {
        r.out.para(&text);
    }
    r.out.remark(
        "The oil store is by the withdrawn British guideline PPG3, 10 litres for each unit of nominal size, behind a bypass 15. \
         Taps of several bores count each in a series of their own, which is the safe side.",
    );
}
