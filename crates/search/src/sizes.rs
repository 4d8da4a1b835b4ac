//! Units of the range side by side: those of the arrangement taken, one or more sizes below it and above it, each worked
//! through, with all that speaks against it.

use crate::Settled;
use crate::arrangement::by_size;
use crate::offered::Offered;
use crate::pick::{How, bars, try_unit};
use crate::side_by_side::side_by_side;
use stillrise_design::WhatIf;
use stillrise_design::arrangements::Arrangement;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::{Design, begin};
use stillrise_design::performance::Depth;
use stillrise_design::provenance::Off;
use stillrise_design::train::Source;

/// A unit of the range, worked through.
#[derive(Debug, Clone)]
pub struct Size {
    /// Which it is, and how many.
    pub unit: Offered,
    /// Whether it is the one taken.
    pub taken: bool,
    /// What follows from it.
    pub design: Design,
    /// What bars it: each rule's title and what it says.
    pub barred: Vec<(String, String)>,
}

/// The unit taken with so many sizes below it and above it; nothing where it is of no row of the range. `demo` is the range to
/// pick from when the enquiry names none.
#[must_use]
pub fn sizes(settled: &Settled, demo: &Range, each_way: usize) -> Vec<Size> {
    let enquiry = &settled.job.enquiry;
    let range = enquiry.range.as_ref().unwrap_or(demo);
    let Some((pick, row)) = settled.pick.as_ref().and_then(|pick| match pick.how {
        How::Row(row) => Some((pick, row)),
        How::Stated | How::Custom(_) => None,
    }) else {
        return Vec::new();
    };
    let Some(taken) = range.models.get(row) else { return Vec::new() };
    let mut rows = by_size(range);
    rows.retain(|other| Arrangement::of(&range.models[*other]) == Arrangement::of(taken));
    let Some(place) = rows.iter().position(|other| *other == row) else { return Vec::new() };
    let last = (place + each_way).min(rows.len() - 1);
    let shown = &rows[place.saturating_sub(each_way)..=last];
    let nothing = WhatIf::default();
    let begun = begin(&mut Off, &nothing, enquiry);
    let one = |k: usize| {
        let model = &range.models[shown[k]];
        let design = try_unit(enquiry, &nothing, &begun, &Source::Row(range, model), pick.count, Depth::Limits);
        let barred = bars(enquiry, &design, true);
        let unit = Offered::Row { row: shown[k], model: model.model.0.clone().unwrap_or_default(), count: pick.count };
        Size { unit, taken: shown[k] == row, design, barred }
    };
    side_by_side(shown.len(), 1, || (), |k, ()| one(k))
}
