//! Units of the range side by side, each worked through with all that speaks against it: those of the arrangement taken, one or
//! more sizes below it and above it; or every row there is, with what all rules say and the words that would stand.

use crate::arrangement::by_size;
use crate::offered::Offered;
use crate::pick::{How, bars, try_unit};
use crate::side_by_side::side_by_side;
use crate::{Settled, risk, words};
use stillrise_checks::{Grade, Judged, Subject, judge};
use stillrise_design::arrangements::Arrangement;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::{Design, begin, complete};
use stillrise_design::performance::Depth;
use stillrise_design::provenance::Off;
use stillrise_design::train::Source;
use stillrise_design::{Job, Ledger, WhatIf};

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

/// A row of the range as if it were the one taken.
pub struct Entrant {
    /// Which it is, and how many.
    pub unit: Offered,
    /// Its arrangement.
    pub arrangement: Arrangement,
    /// Whether it is the one taken.
    pub taken: bool,
    /// The job around it, with its trail.
    pub job: Job,
    /// What every rule says.
    pub verdicts: Vec<Judged>,
}

impl Entrant {
    /// What keeps it from being picked: rules that fail, whatever was decided on them.
    pub fn barred(&self) -> impl Iterator<Item = &Judged> {
        self.verdicts.iter().filter(|judged| judged.rule.bars_pick && judged.grade() == Grade::Fails)
    }
}

/// Every row of the range, from small to large, each worked to its end as the one taken is: with a trail, all rules and
/// the words that stand once all that speaks to them was heard. As many in parallel as are taken, else as the enquiry asks for, else one.
/// `demo` is the range to pick from when the enquiry names none. Nothing where the basis was not found.
#[must_use]
pub fn every(settled: &Settled, demo: &Range) -> Vec<Entrant> {
    let enquiry = &settled.job.enquiry;
    let range = enquiry.range.as_ref().unwrap_or(demo);
    let count = settled.pick.as_ref().map(|pick| pick.count).or(enquiry.unit.count.0).unwrap_or(1);
    let taken = settled.pick.as_ref().and_then(|pick| match pick.how {
        How::Row(row) => Some(row),
        How::Stated | How::Custom(_) => None,
    });
    let rows = by_size(range);
    let nothing = WhatIf::default();
    let mut trail = Ledger::default();
    let begun = begin(&mut trail, &nothing, enquiry);
    if begun.basis.is_none() {
        return Vec::new();
    }
    let ready = risk::ready(enquiry);
    let one = |k: usize| {
        let model = &range.models[rows[k]];
        let (mut ledger, source) = (trail.clone(), Source::Row(range, model));
        let mut design = complete(&mut ledger, &nothing, enquiry, begun.clone(), &source, count, Depth::Full);
        if let Some(heard) = words::hear(enquiry, ready.clone(), &design, &ledger) {
            words::settle(enquiry, &mut design, &mut ledger, &heard);
        }
        let job = Job { enquiry: enquiry.clone(), design, ledger };
        let verdicts = judge(&Subject { enquiry, design: &job.design, ledger: Some(&job.ledger), read: true });
        let unit = Offered::Row { row: rows[k], model: model.model.0.clone().unwrap_or_default(), count };
        Entrant { unit, arrangement: Arrangement::of(model), taken: taken == Some(rows[k]), job, verdicts }
    };
    side_by_side(rows.len(), 1, || (), |k, ()| one(k))
}
