//! Where nothing fits: what speaks against the largest, how many of which would do, or which dimensions.

use crate::pick::{Ask, Condition, How, MOST_IN_PARALLEL, Pick, by_size, try_unit};
use stillrise_checks::{Subject, bars_pick};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::Design;
use stillrise_design::performance::Depth;
use stillrise_design::train::Source;
use stillrise_design::{Stop, WhatIf};
use stillrise_units::Length;

/// Most units that are tried where nothing fits, to say how many would do.
const MOST_TRIED: u32 = 80;

/// That nothing fits: what speaks against the largest, and what would do.
#[derive(Debug, Clone, PartialEq)]
pub struct Shortfall {
    /// The largest that was tried.
    pub largest: String,
    /// What speaks against it.
    pub against: Vec<String>,
    /// What would do.
    pub would: Vec<Would>,
}

/// Something that would do where nothing fits.
#[derive(Debug, Clone, PartialEq)]
pub struct Would {
    /// How many.
    pub count: u32,
    /// Of what; `None` for one made to measure.
    pub model: Option<String>,
    /// Inside length, width and height of each.
    pub size: [Length; 3],
}

impl Ask<'_> {
    /// How many of a unit would do, the fewest; `None` where so many as were tried will not.
    ///
    /// Where the enquiry says how many or that they are made to measure, the search for a unit looked at those alone,
    /// so that a few may do.
    fn fewest(&self, source: &Source<'_>) -> Option<u32> {
        let will =
            |n: u32| self.shortcoming(source, n).is_none_or(|short| matches!(short.on, Some(Condition::Ahead(_))));
        let unit = &self.enquiry.unit;
        if (unit.count.is_some() || *unit.custom == Some(true))
            && let Some(few) = (1..=MOST_IN_PARALLEL).find(|n| will(*n))
        {
            return Some(few);
        }
        let mut high = MOST_IN_PARALLEL + 1;
        while !will(high) {
            high *= 2;
            if high > MOST_TRIED {
                return None;
            }
        }
        let mut low = if high == MOST_IN_PARALLEL + 1 { MOST_IN_PARALLEL } else { high / 2 };
        while high - low > 1 {
            let middle = low + (high - low) / 2;
            if will(middle) {
                high = middle;
            } else {
                low = middle;
            }
        }
        Some(high)
    }
}

/// Why nothing fits, and what would do instead.
#[must_use]
pub fn shortfall(enquiry: &Enquiry, range: &Range, begun: &Design) -> Option<Shortfall> {
    begun.basis.as_ref()?;
    let nothing = WhatIf::default();
    let ask = Ask { enquiry, range, what_if: &nothing, begun, near: None };
    let rows = by_size(range);
    let mut would = Vec::new();
    let size = |source: &Source<'_>, count: u32| -> Option<[Length; 3]> {
        let design = try_unit(enquiry, &nothing, begun, source, count, Depth::Screen);
        let frame = &design.train?.unit.frame;
        Some([frame.length.q, frame.width.q, frame.height.q])
    };
    for row in rows.iter().rev().take(2) {
        let source = Source::Row(range, &range.models[*row]);
        if let Some((count, size)) = ask.fewest(&source).and_then(|count| Some((count, size(&source, count)?))) {
            would.push(Would { count, model: range.models[*row].model.0.clone(), size });
        }
    }
    let source = Source::Custom(1.0);
    if let Some((count, size)) = ask.fewest(&source).and_then(|count| Some((count, size(&source, count)?))) {
        would.push(Would { count, model: None, size });
    }
    let last = *rows.last()?;
    let how = if *enquiry.unit.custom == Some(true) { How::Custom(1.0) } else { How::Row(last) };
    let largest = Pick {
        how,
        count: enquiry.unit.count.unwrap_or(MOST_IN_PARALLEL),
        because: String::new(),
        fits: false,
        condition: None,
    };
    let source = largest.source(enquiry, range);
    let design = try_unit(enquiry, &nothing, begun, &source, largest.count, Depth::Limits);
    let barring = bars_pick(&Subject { enquiry, design: &design, ledger: None, read: true });
    let mut against: Vec<String> = barring
        .into_iter()
        .filter(|(rule, _)| rule.id != "chain-stopped")
        .map(|(rule, says)| format!("{}: {says}", rule.title))
        .collect();
    // Why it stopped, where that is a sentence; a formula's words are for whoever checks the calculation.
    if let Some(stop) = design.stops.first() {
        against.push(if stop.formula {
            "at its share of the flow it lies outside what the methods cover".to_owned()
        } else {
            stop.reason.clone()
        });
    }
    if against.is_empty() {
        against.extend(ask.judged(&design).map(|short| short.what));
    }
    Some(Shortfall { largest: largest.name(range), against, would })
}

/// That no unit was taken.
#[must_use]
pub fn stop() -> Stop {
    Stop::said("picking a unit", "none of the units that may be taken will do")
}
