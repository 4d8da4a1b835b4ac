//! What somebody named or asked beforehand, looked at: a model, a tank ahead, an interval.

use crate::arrangement::by_size;
use crate::pick::{bars, try_unit};
use stillrise_design::WhatIf;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::Design;
use stillrise_design::performance::Depth;
use stillrise_design::train::Source;
use stillrise_units::{Flow, Time, Volume};

/// What became of the things that were named.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Named {
    /// The model that was named.
    pub model: Option<NamedModel>,
}

/// A model that was named.
#[derive(Debug, Clone, PartialEq)]
pub struct NamedModel {
    /// Its name, as typed.
    pub name: String,
    /// What the range knows of it.
    pub found: Found,
}

/// What the range knows of a named model.
#[derive(Debug, Clone, PartialEq)]
pub enum Found {
    /// It is not in the range.
    Unknown,
    /// Nothing speaks against it.
    WillDo,
    /// What speaks against it: the rule and what it says.
    Barred(String, String),
}

/// A tank that stands and that somebody would keep ahead of the unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TankAhead {
    /// Its volume, as stated.
    pub volume: Volume,
    /// The largest flow to the separator.
    pub flow: Flow,
    /// In what time that passes it.
    pub passes: Time,
    /// The sludge trap that the European standard asks for ahead of the separator, where it was asked for.
    pub trap: Option<Volume>,
}

/// What a tank ahead is to the largest flow; `None` where none was named, or no flow is known.
#[must_use]
pub fn tank_ahead(enquiry: &Enquiry, design: &Design) -> Option<TankAhead> {
    let volume = enquiry.asked.tank_ahead.q()?;
    let basis = design.basis.as_ref()?;
    let flow = basis.design_flow()?.q;
    let sizes = basis.european.as_ref().and_then(|asked| asked.sizes.as_ref().ok());
    let trap = sizes.and_then(|sizes| sizes.sludge_trap).map(|trap| trap.q);
    Some(TankAhead { volume, flow, passes: volume / flow, trap })
}

/// How long the unit goes without being emptied, against how long it is to go.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// Days to the first pump-out, of oil or sludge, by the figures that are planned with; `None` where nothing collects.
    pub first: Option<Time>,
    /// Whether it is sludge that calls for it.
    pub is_sludge: bool,
    /// Whether that is no sooner than was asked for.
    pub is_kept: bool,
}

/// Whether the unit goes as long without being emptied as was asked for; `None` where nobody asked, or no unit was worked.
#[must_use]
pub fn interval(enquiry: &Enquiry, design: &Design) -> Option<Interval> {
    let wanted = enquiry.asked.interval.q()?;
    let storage = &design.performance.as_ref()?.storage;
    let oil = storage.oil_soonest.or(storage.oil_routine).map(|days| days.q);
    let settles = [storage.sludge_days, storage.sand_days].into_iter().flatten().map(|days| days.q);
    let sludge = settles.reduce(|a, b| if b < a { b } else { a });
    let is_sludge = sludge.is_some_and(|sludge| oil.is_none_or(|oil| sludge < oil));
    let first = if is_sludge { sludge } else { oil };
    Some(Interval { first, is_sludge, is_kept: first.is_none_or(|first| first >= wanted) })
}

/// Looks at what was named. `begun` is the design up to its basis.
#[must_use]
pub fn named(enquiry: &Enquiry, range: &Range, begun: &Design) -> Named {
    let nothing = WhatIf::default();
    let model = enquiry.asked.model.as_ref().map(|name| NamedModel {
        name: name.clone(),
        found: match by_size(range).into_iter().find(|row| range.models[*row].model.as_ref() == Some(name)) {
            None => Found::Unknown,
            Some(row) => {
                let source = Source::Row(range, &range.models[row]);
                let design = try_unit(enquiry, &nothing, begun, &source, 1, Depth::Limits);
                match bars(enquiry, &design, true).into_iter().find(|(title, _)| !title.is_empty()) {
                    Some((title, says)) => Found::Barred(title, says),
                    None => Found::WillDo,
                }
            }
        },
    });
    Named { model }
}
