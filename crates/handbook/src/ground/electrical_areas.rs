//! Where vapour that may ignite is to be reckoned with around a separator, and how far.
//!
//! The authority decides, on a drawing of the areas. A liquid of class II or III that is not heated often leaves the
//! area unclassified; gasoline from a spill is the case to design for where cars are.

use crate::page::Source;
use crate::sources::{AREA_DIVISION_MEMORY, CCR_AREAS, WAC_PITS, ZONE_TEXTBOOK};
use stillrise_units::catalog::{FT, IN};
use stillrise_units::{Length, Typed};

/// One area.
#[derive(Debug, PartialEq)]
pub struct Area {
    /// The word in files.
    pub word: &'static str,
    /// Where it is.
    pub place: &'static str,
    /// How it is classified.
    pub class: &'static str,
    /// How far it reaches upward, in inches; none where it fills a space.
    pub up_in: Option<f64>,
    /// How far it reaches sideways, in feet; none where it fills a space.
    pub out_ft: Option<f64>,
    /// Where its extent is written.
    pub source: &'static Source,
    /// Where its class is written, if elsewhere.
    pub class_source: Option<&'static Source>,
}

impl Area {
    /// How far it reaches upward.
    #[must_use]
    pub fn up(&self) -> Option<Length> {
        self.up_in.map(|inches| Length::of(inches, &IN))
    }
    /// How far it reaches sideways.
    #[must_use]
    pub fn out(&self) -> Option<Length> {
        self.out_ft.map(|feet| Length::of(feet, &FT))
    }
}

/// Areas of a separator for liquids that give off vapour.
pub static AREAS: &[Area] = &[
    Area {
        word: "inside",
        place: "inside the separator, above the liquid",
        class: "Zone 0",
        up_in: None,
        out_ft: None,
        source: &ZONE_TEXTBOOK,
        class_source: None,
    },
    Area {
        word: "pit",
        place: "any pit, box or space below grade, part of which lies within a classified area",
        class: "Class I, Division 1",
        up_in: None,
        out_ft: None,
        source: &WAC_PITS,
        class_source: None,
    },
    Area {
        word: "above",
        place: "outdoors, up to this height above the separator, ditch or basin",
        class: "Class I, Division 2",
        up_in: Some(18.0),
        out_ft: Some(0.0),
        source: &CCR_AREAS,
        class_source: Some(&AREA_DIVISION_MEMORY),
    },
    Area {
        word: "around",
        place: "outdoors, up to this height above grade and this far from any edge of the separator, ditch or basin",
        class: "Class I, Division 2",
        up_in: Some(18.0),
        out_ft: Some(15.0),
        source: &CCR_AREAS,
        class_source: Some(&AREA_DIVISION_MEMORY),
    },
];

/// The area of this word.
#[must_use]
pub fn area(word: &str) -> Option<&'static Area> {
    AREAS.iter().find(|a| a.word == word)
}
