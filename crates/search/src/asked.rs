//! What somebody named beforehand, looked at: a model.

use crate::arrangement::by_size;
use crate::pick::{bars, try_unit};
use stillrise_design::WhatIf;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::Design;
use stillrise_design::performance::Depth;
use stillrise_design::train::Source;

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
