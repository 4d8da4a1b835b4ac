//! The bill of materials: the parts by the drawing's numbers, with what is known of each, who brings it, and room for what nobody
//! said.

use super::common::{self, MASS, ON_SITE};
use super::{EVERYBODY, Head, Paper, lacks};
use crate::bill::{Bill, Line, bill};
use crate::report::Report;
use crate::report::blocks::{Table, blank, slim, wide};
use crate::section::place::Section;
use stillrise_units::print;

/// The paper.
pub static PAPER: Paper = Paper {
    name: "bill-of-materials",
    title: "Bill of materials",
    about: "For whoever makes, buys or prices the unit: its parts by the numbers of the drawing, nozzles, what is needed beside it, with weights and prices as far as somebody stated them.",
    editions: EVERYBODY,
    head: Head::Band,
    refers: &[],
    lacks: lacks::offer,
    make: |r, _| make(r),
};

fn make(r: &mut Report<'_>) {
    let Some(section) = Section::new(r.settled, r.edition) else { return };
    let bill = bill(&section);
    r.out.section("The unit");
    r.out.intro(
        "Numbers and marks are those of the general arrangement; the workbook has the same lines to reckon on with.",
    );
    let mut table = columns(r, &bill, true);
    bill.unit.iter().for_each(|line| table.row(row(r, line)));
    r.out.form(&table, 4.0);
    r.out.section("Beside it");
    let mut table = columns(r, &bill, false);
    // Nothing of it has a number on the drawing.
    bill.beside.iter().for_each(|line| table.row(row(r, line).into_iter().skip(1)));
    r.out.form(&table, 4.0);
    r.out.remark(&said(&bill));
    r.out.remark("Brought by: the unit's maker; others, the client or whoever builds for him; open, nobody yet, and in no price. The scope split tells what each has to know for it.");
    common::invented(r);
    common::cautions(r, ON_SITE);
}

/// What stands in the columns of weights and prices, and what is left to be written in.
fn said(bill: &Bill) -> String {
    let price = bill.unit.first().and_then(|whole| Some((whole.price?, whole.in_all?))).zip(bill.currency.as_ref());
    let prices = match price {
        Some(((price, units), currency)) => {
            let all = if units > 1.5 {
                format!(", for {} units {} {currency}", print::digits(units, 2), print::digits(price * units, 3))
            } else {
                String::new()
            };
            format!(
                "The price is the budget price of the range for one unit with all that its maker brings{all}; no quotation. Prices of single parts were not stated: their cells are left to be filled in."
            )
        }
        None => "Prices were not stated: their cells are left to be filled in.".to_owned(),
    };
    let weights = match bill.unit.first().and_then(|whole| whole.weight) {
        Some(_) => "The weight is that of the empty unit; single parts were not weighed.",
        None => "Weights were not stated.",
    };
    format!("{weights} {prices}")
}

fn columns(r: &Report<'_>, bill: &Bill, numbered: bool) -> Table {
    let currency = bill.currency.as_ref().map_or_else(String::new, |currency| format!("|{currency}"));
    let own = [
        wide("Item", 1.3),
        wide("Data", 2.4),
        slim("Number"),
        blank(&format!("Weight of one|{}", r.symbol(MASS)), 17.0),
        blank(&format!("Price of one{currency}"), 17.0),
        blank(&format!("Price{currency}"), 17.0),
        slim("Brought by"),
    ];
    Table::new(numbered.then(|| slim("No.")).into_iter().chain(own))
}

fn row(r: &Report<'_>, line: &Line) -> [String; 8] {
    let weight = line.weight.map_or_else(String::new, |weight| r.digits(weight, MASS, 3));
    let one = line.price.map_or_else(String::new, |price| print::digits(price, 3));
    let all = line.price.zip(line.in_all).map_or_else(String::new, |(price, n)| print::digits(price * n, 3));
    [line.mark.clone(), line.item.clone(), line.data.clone(), line.count(), weight, one, all, line.by.word().to_owned()]
}
