//! The bill of materials: the parts by the numbers that the drawing gives them, the nozzles by its marks, and what is needed
//! beside them. The paper, the workbook and the drawing's list say the same, for all take it from here and from
//! `section::schedules`.

use crate::drawings::tables::all_nozzles;
use crate::reply;
use crate::scope::{self, By};
use crate::section::place::Section;
use crate::section::schedules;
use crate::summary::shop::Says;
use stillrise_units::{Mass, print};

/// One line.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Line {
    /// Its number or mark on the drawing; empty of what the drawing does not number.
    pub(crate) mark: String,
    pub(crate) item: String,
    pub(crate) data: String,
    /// How many are in one unit; `None` where nobody said.
    pub(crate) in_a_unit: Option<f64>,
    /// How many in all; `None` where nobody said.
    pub(crate) in_all: Option<f64>,
    /// What one weighs, where it is stated or was found.
    pub(crate) weight: Option<Mass>,
    /// What one costs, where somebody stated it for this job.
    pub(crate) price: Option<f64>,
    pub(crate) by: By,
}

/// The bill.
#[derive(Debug, Clone, Default, PartialEq)]
pub(crate) struct Bill {
    /// The unit as a whole, its numbered parts, its nozzles.
    pub(crate) unit: Vec<Line>,
    /// What is needed beside it.
    pub(crate) beside: Vec<Line>,
    /// Currency of the prices; `None` where nobody stated one.
    pub(crate) currency: Option<String>,
}

/// The bill of one drawing.
pub(crate) fn bill(s: &Section) -> Bill {
    let unit = s.unit();
    let known = &unit.particulars;
    // A unit that stands is not bought, and its parts are its owner's.
    let offered = !s.settled.job.enquiry.unit_stands();
    let units = s.train.bought();
    let price = known.price.as_ref().filter(|_| offered && reply::prices_are_told(s.settled));
    let built_in = unit.arrangement.is_built_in();
    let found = Says::of(s.settled).and_then(|says| says.shop.weights.as_ref());
    let empty = found.and_then(|w| w.empty).map(|w| w.q).or(known.empty_weight.as_ref().map(|w| w.q));
    let whole = Line {
        mark: String::new(),
        item: if built_in { "Internals and nozzles, complete".to_owned() } else { "Unit, complete".to_owned() },
        data: known.model.clone(),
        in_a_unit: Some(1.0),
        in_all: Some(units),
        weight: empty.filter(|_| !built_in),
        price: price.map(|(price, _)| *price),
        by: By::Maker,
    };
    let part = |mark: String, item: String, data: String, by: By| Line {
        mark,
        item,
        data,
        in_a_unit: Some(1.0),
        in_all: Some(units),
        weight: None,
        price: None,
        by,
    };
    let items = schedules::items(s);
    let parts = items.iter().enumerate().map(|(row, item)| {
        // Where the vessel is built in its place, its walls are the first part.
        let by = if built_in && row == 0 { By::Others } else { By::Maker };
        let line = part((row + 1).to_string(), item.name.clone(), item.data.clone(), by);
        Line { in_a_unit: Some(item.count), in_all: Some(item.count * units), ..line }
    });
    // Manways are numbered among the parts.
    let nozzles = all_nozzles(s).into_iter().filter(|nozzle| nozzle.mark != "M").map(|nozzle| {
        let count: Option<f64> = nozzle.count.parse().ok();
        let data = match count {
            Some(_) => nozzle.size,
            None => format!("{}, {}", nozzle.size, nozzle.count),
        };
        let line = part(nozzle.mark.to_owned(), format!("Nozzle: {}", nozzle.service.to_lowercase()), data, By::Maker);
        Line { in_a_unit: count, in_all: count.map(|n| n * units), ..line }
    });
    let numbered = |name: &str| items.iter().any(|item| item.name.starts_with(name));
    let rows = scope::rows(s.settled).into_iter();
    let vents = s.vents().is_empty();
    let listed = |name: &str| if name == "Vent" { !vents } else { numbered(name) };
    let others = rows.filter(|row| row.by != By::Nobody && !row.part.is_some_and(listed));
    let beside = others.map(|row| Line {
        mark: String::new(),
        item: row.item,
        data: row.note,
        in_a_unit: None,
        in_all: None,
        weight: None,
        price: None,
        by: row.by,
    });
    Bill {
        unit: core::iter::once(whole).chain(parts).chain(nozzles).collect(),
        beside: beside.collect(),
        currency: price.map(|(_, currency)| currency.clone()),
    }
}

impl Line {
    /// How many, in print.
    pub(crate) fn count(&self) -> String {
        self.in_all.map_or_else(String::new, |n| print::digits(n, 3))
    }
}
