//! Cautions that documents carry where they could be acted on; the wording is our own.

use crate::page::Source;
use crate::sources::{
    EN_858_2_UPKEEP, JUDGEMENT, LIFTING_MEMORY, OSHA_1910_146, OSHA_1910_252, OSHA_SUBPART_D, PART_279_261,
    THURSTON_COUNTY, ZONE_TEXTBOOK,
};

/// One caution.
#[derive(Debug, PartialEq)]
pub struct Caution {
    /// The word in files.
    pub word: &'static str,
    /// Short title.
    pub title: &'static str,
    /// The text.
    pub text: &'static str,
    /// Where the hazard or the duty is written, if it is.
    pub source: Option<&'static Source>,
}

/// All cautions, those of every document first.
pub static CAUTIONS: &[Caution] = &[
    Caution {
        word: "preliminary",
        title: "Preliminary",
        text: "This document is preliminary. It is not to be built from until it is issued for that purpose.",
        source: None,
    },
    Caution {
        word: "review",
        title: "Review by a licensed engineer",
        text: "To be reviewed by an engineer licensed where the unit is installed, who takes responsibility for \
            structure, foundation, anchorage and performance.",
        source: None,
    },
    Caution {
        word: "local",
        title: "Local code and permit govern",
        text: "Local code, the discharge permit and the authority having jurisdiction govern wherever they \
            differ from this document.",
        source: None,
    },
    Caution {
        word: "not treated",
        title: "What gravity does not treat",
        text: "Gravity does not remove emulsified or dissolved oil, glycol, solvents, detergents or metals. The \
            figures hold only for the waters declared.",
        source: None,
    },
    Caution {
        word: "confined space",
        title: "Confined space",
        text: "The inside is a confined space. Nobody enters without a permit: isolated, drained, ventilated, \
            its air tested before and during entry, with an attendant and a means of rescue.",
        source: Some(&OSHA_1910_146),
    },
    Caution {
        word: "drain and ventilate",
        title: "Drained and ventilated before entry",
        text: "Work that can be done from outside is done from outside. If someone must enter, the unit is \
            first emptied altogether and thoroughly ventilated.",
        source: Some(&EN_858_2_UPKEEP),
    },
    Caution {
        word: "vapour",
        title: "Flammable vapour",
        text: "Vapour above the liquid can burn or explode. Keep ignition sources away, use equipment certified \
            for the area, bond the suction hose, open covers gently.",
        source: Some(&ZONE_TEXTBOOK),
    },
    Caution {
        word: "hot work",
        title: "Hot work",
        text: "No welding, cutting or grinding on or near the unit until it is emptied, cleaned, ventilated and \
            tested free of vapour, and a hot-work permit is given.",
        source: Some(&OSHA_1910_252),
    },
    Caution {
        word: "lifting",
        title: "Lifting",
        text: "Lift empty and dry, by all lifting points at once, with a spreader where the drawing shows one. \
            Never lift with liquid or sludge inside. Nobody stands below.",
        source: Some(&LIFTING_MEMORY),
    },
    Caution {
        word: "open covers",
        title: "Open covers and falls",
        text: "An open cover is a fall hazard: guard it, and close and secure it when left. Covers on traffic \
            areas carry the traffic for which they are marked only.",
        source: Some(&OSHA_SUBPART_D),
    },
    Caution {
        word: "fill first",
        title: "Fill with clean water before the first flow",
        text: "Fill with clean water to the outlet before any oily water is let in, at start-up and after \
            each cleaning. An empty unit passes oil straight to the outlet.",
        source: Some(&THURSTON_COUNTY),
    },
    Caution {
        word: "flotation",
        title: "Flotation when empty",
        text: "An empty buried unit can float in wet ground. Before it is emptied the groundwater is checked, \
            and it is refilled at once after cleaning.",
        source: Some(&JUDGEMENT),
    },
    Caution {
        word: "waste",
        title: "Oil and sludge are regulated wastes",
        text: "Oil, sludge and rinse water taken out are characterised and given to a licensed carrier with the \
            papers that the law asks for. They are not put back into a drain.",
        source: Some(&PART_279_261),
    },
];

/// The caution of this word.
#[must_use]
pub fn caution(word: &str) -> Option<&'static Caution> {
    CAUTIONS.iter().find(|c| c.word == word)
}
