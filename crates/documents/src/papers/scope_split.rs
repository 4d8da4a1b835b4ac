//! The scope split: each thing that the separator needs, and who brings it.

use super::common::{self, ON_SITE};
use super::{EVERYBODY, Head, Paper, lacks};
use crate::reply;
use crate::report::blocks::{Table, slim, wide};
use crate::report::{Report, sentence};
use crate::scope::{self, By, Group};
use stillrise_units::print;

/// The paper.
pub static PAPER: Paper = Paper {
    name: "scope-split",
    title: "Scope split",
    about: "For whoever orders, and for everybody whose work meets the unit: who brings what, and what is to be known for it.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::offer,
    make: |r, _| make(r),
};

fn make(r: &mut Report<'_>) {
    let settled = r.settled;
    let rows = scope::rows(settled);
    let open = rows.iter().filter(|row| row.by == By::Open).count();
    r.out.section("Who brings what");
    r.out.para(&match open {
        0 => "As proposed; the order decides.".to_owned(),
        1 => "As proposed; the order decides. One item is open: nobody brings it yet.".to_owned(),
        n => format!("As proposed; the order decides. {n} items are open: nobody brings them yet."),
    });
    let mut table =
        Table::new([wide("Item", 1.5), slim("Unit's maker"), slim("Others"), slim("Open"), wide("To know", 2.2)]);
    for group in Group::ALL {
        table.strong_row([group.title(), "", "", "", ""]);
        for row in rows.iter().filter(|row| row.group == group) {
            let mark = |by: By| if row.by == by { "X" } else { "" }.to_owned();
            let note = if row.by == By::Nobody { "Not needed.".to_owned() } else { sentence(&row.note) };
            table.row([row.item.clone(), mark(By::Maker), mark(By::Others), mark(By::Open), note]);
        }
    }
    r.out.table(&table);
    money(r);
    r.out.heading("Besides");
    r.out.list(false, [
        "Structure, foundation, anchorage, wind and earthquake: designed by a licensed engineer on the loads told here.",
        "Classification of areas and explosion protection: by the authority and whoever designs the wiring.",
        "Permits, sampling contracts, disposal contracts: by the operator.",
    ].map(|text| (text.to_owned(), String::new())));
    common::invented(r);
    common::cautions(r, ON_SITE);
}

/// Budget and delivery, where they are somebody's own.
fn money(r: &mut Report<'_>) {
    let Some(train) = &r.settled.job.design.train else { return };
    let p = &train.unit.particulars;
    let told = reply::prices_are_told(r.settled);
    let all = train.bought();
    let budget = match p.price.as_ref().filter(|_| told) {
        Some((price, currency)) if all > 1.0 => format!(
            "{} {currency} for all units, {} {currency} each, without freight, setting and what is marked as others' or open; no quotation.",
            print::digits(price * all, 3),
            print::digits(*price, 3)
        ),
        Some((price, currency)) => format!(
            "{} {currency}, without freight, setting and what is marked as others' or open; no quotation.",
            print::digits(*price, 3)
        ),
        None => "to follow with the quotation.".to_owned(),
    };
    let delivery = match p.lead_time.as_ref().filter(|_| told) {
        Some(time) => format!("{time}, from an order and a drawing that is approved."),
        None => "to follow with the quotation.".to_owned(),
    };
    r.out.lead("Budget:", &budget);
    r.out.lead("Delivery:", &delivery);
}
