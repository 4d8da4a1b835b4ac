//! Pollutants that limits name, and whether gravity acts on them (long because it is one list).

use crate::choice;
use crate::page::Source;
use crate::sources::{
    API_4531, BENZENE_WASTE, GASOLINE_IN_WATER, HEXANE_EXTRACT, SEPARATOR_FAILURES, SEPARATOR_SCOPE, TEXTBOOK_CHEMISTRY,
};

choice! {
    /// What gravity does to a pollutant.
    Gravity {
        /// removes the free part of it
        Touches "touches",
        /// removes some of it, with the solids or with the oil
        Partly "partly",
        /// removes none of it
        Cannot "cannot",
    }
}

choice! {
    /// Which oil a pollutant counts.
    Counts {
        /// all of it: free, emulsified and dissolved
        AllOil "all oil",
        /// free oil alone
        FreeOil "free oil alone",
    }
}

/// Which pollutant, where somebody asks for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "each is told by its title")]
pub enum Which {
    OilAndGrease,
    PetroleumHydrocarbons,
    HydrocarbonIndex,
    Sheen,
    SuspendedSolids,
    SettleableSolids,
    GasolineRange,
    Benzene,
    Btex,
    /// One that nobody asks for.
    Another,
}

/// One pollutant.
#[derive(Debug)]
pub struct Pollutant {
    /// Which it is, where somebody asks for it.
    pub which: Which,
    /// Its word in files.
    pub word: &'static str,
    /// Its name in print.
    pub title: &'static str,
    /// What gravity does to it.
    pub gravity: Gravity,
    /// Which oil it counts, where it counts oil.
    pub counts: Counts,
    /// Why.
    pub explains: &'static str,
    /// What could remove what gravity leaves.
    pub what_could: &'static str,
    /// Where this is stated.
    pub source: &'static Source,
}

impl PartialEq for Pollutant {
    /// A pollutant stands once, in the list.
    fn eq(&self, other: &Self) -> bool {
        core::ptr::eq(self, other)
    }
}

impl Pollutant {
    /// Whether results of it are total oil; free oil and solids are other numbers.
    #[must_use]
    pub fn is_total_oil(&self) -> bool {
        TOTAL_OIL.contains(&self.which)
    }
    /// Whether it is what of fuels dissolves.
    #[must_use]
    pub fn is_of_dissolved_fuel(&self) -> bool {
        matches!(self.which, Which::Benzene | Which::Btex | Which::GasolineRange)
    }
    /// Whether it is what the suspended solids of a water are stated as.
    #[must_use]
    pub fn is_suspended_solids(&self) -> bool {
        self.which == Which::SuspendedSolids
    }
}

/// Pollutants whose results are total oil, in the order in which they are preferred.
const TOTAL_OIL: [Which; 3] = [Which::OilAndGrease, Which::PetroleumHydrocarbons, Which::HydrocarbonIndex];

/// The total oils, in the order in which they are preferred.
pub fn total_oils() -> impl Iterator<Item = &'static Pollutant> {
    TOTAL_OIL.into_iter().filter_map(|which| POLLUTANTS.iter().find(|p| p.which == which))
}

/// What settles in a cone, in files.
pub const SETTLEABLE: &str = "settleable solids";
/// The word for oil that is seen on the water.
pub const SHEEN: &str = "sheen";

const SUSPENDED_SOLIDS: &str = "suspended solids";

const fn row(
    word: &'static str,
    title: &'static str,
    gravity: Gravity,
    explains: &'static str,
    what_could: &'static str,
    source: &'static Source,
) -> Pollutant {
    Pollutant { which: Which::Another, word, title, gravity, counts: Counts::AllOil, explains, what_could, source }
}

const FINE_OIL: &str =
    "For what stays as fine drops: oleophilic media, flotation, filtration or carbon behind the separator.";
const CARBON: &str = "Air stripping, activated carbon or biological treatment.";
const BIOLOGICAL: &str = "Biological treatment, or the sanitary sewer with consent.";

/// All pollutants: what gravity touches first.
pub static POLLUTANTS: &[Pollutant] = &[
    Pollutant {
        which: Which::OilAndGrease,
        ..row(
            "oil and grease",
            "Oil and grease",
            Gravity::Touches,
            "What n-hexane extracts, by weight: free oil, but also emulsified oil, soaps, waxes and animal and \
            vegetable fat; gasoline is mostly lost in the test. Gravity takes the free part only.",
            FINE_OIL,
            &HEXANE_EXTRACT,
        )
    },
    Pollutant {
        which: Which::PetroleumHydrocarbons,
        ..row(
            "petroleum hydrocarbons",
            "Total petroleum hydrocarbons",
            Gravity::Touches,
            "Hydrocarbons left after silica gel has taken out fats, or a range by gas chromatography: methods give \
            different numbers. Free oil is removed, what is dissolved or emulsified is not.",
            FINE_OIL,
            &HEXANE_EXTRACT,
        )
    },
    Pollutant {
        which: Which::HydrocarbonIndex,
        ..row(
            "hydrocarbon index",
            "Hydrocarbon oil index, C10 to C40",
            Gravity::Touches,
            "Gas chromatography from decane to tetracontane: free and emulsified mineral oil; gasoline and what is \
            dissolved lie mostly outside.",
            FINE_OIL,
            &TEXTBOOK_CHEMISTRY,
        )
    },
    Pollutant {
        counts: Counts::FreeOil,
        ..row(
            "free oil",
            "Free oil",
            Gravity::Touches,
            "Drops that rise: what separators and their type tests are about.",
            "Nothing more is needed, if the drops are large enough.",
            &SEPARATOR_SCOPE,
        )
    },
    Pollutant {
        which: Which::Sheen,
        counts: Counts::FreeOil,
        ..row(
            SHEEN,
            "Visible oil or sheen",
            Gravity::Touches,
            "A film of free oil; no figure in mg/L belongs to it. Re-entrained oil or a spill through the unit makes one.",
            "Closure at the outlet, a boom or sorbent as a second line.",
            &SEPARATOR_FAILURES,
        )
    },
    Pollutant {
        which: Which::SuspendedSolids,
        ..row(
            SUSPENDED_SOLIDS,
            "Total suspended solids",
            Gravity::Partly,
            "Sand and grit settle, silt and clay pass; oil-coated grains may float or hang. Oil that sits on solids goes with them.",
            "A grit trap or settling basin ahead; filtration behind.",
            &TEXTBOOK_CHEMISTRY,
        )
    },
    Pollutant {
        which: Which::SettleableSolids,
        ..row(
            SETTLEABLE,
            "Settleable solids",
            Gravity::Partly,
            "What settles in a cone in half an hour or an hour, as the method says: mostly kept while there is room for sludge.",
            "A grit trap ahead, and timely removal of sludge.",
            &TEXTBOOK_CHEMISTRY,
        )
    },
    row(
        "pah",
        "Polycyclic aromatic hydrocarbons",
        Gravity::Partly,
        "Heavy ones sit in oil droplets and on fine solids and go with them; naphthalene dissolves and passes.",
        "Filtration and activated carbon.",
        &GASOLINE_IN_WATER,
    ),
    Pollutant {
        which: Which::GasolineRange,
        ..row(
            "gasoline range",
            "Gasoline range organics",
            Gravity::Partly,
            "Drops of gasoline rise fast, but some tens of mg/L of aromatics stay dissolved.",
            CARBON,
            &GASOLINE_IN_WATER,
        )
    },
    Pollutant {
        which: Which::Benzene,
        ..row(
            "benzene",
            "Benzene",
            Gravity::Cannot,
            "Dissolved: pure benzene to some 1800 mg/L, from gasoline up to tens of mg/L. It leaves with the water.",
            CARBON,
            &API_4531,
        )
    },
    Pollutant {
        which: Which::Btex,
        ..row(
            "btex",
            "Benzene, toluene, ethylbenzene, xylenes",
            Gravity::Cannot,
            "The bulk of what gasoline leaves in solution. It goes with the water.",
            CARBON,
            &GASOLINE_IN_WATER,
        )
    },
    row(
        "mtbe",
        "MTBE and other ethers",
        Gravity::Cannot,
        "Dissolve far better than benzene and pass.",
        "Stripping with much air, carbon for ethers, or oxidation.",
        &TEXTBOOK_CHEMISTRY,
    ),
    row(
        "alcohols",
        "Ethanol and methanol",
        Gravity::Cannot,
        "Mix with water in any ratio and pass.",
        BIOLOGICAL,
        &API_4531,
    ),
    row(
        "phenols",
        "Phenols",
        Gravity::Cannot,
        "Dissolved; they pass.",
        "Biological treatment, carbon or oxidation.",
        &TEXTBOOK_CHEMISTRY,
    ),
    row(
        "solvents",
        "Chlorinated solvents",
        Gravity::Cannot,
        "Partly dissolved, and heavier than water: what does not dissolve sinks into the sludge.",
        "Keep them out; stripping or carbon.",
        &TEXTBOOK_CHEMISTRY,
    ),
    row(
        "metals",
        "Metals",
        Gravity::Cannot,
        "Dissolved metals pass; what sits on settled grit goes with it, and makes the sludge a matter of waste law.",
        "Precipitation and filtration, ion exchange or media.",
        &BENZENE_WASTE,
    ),
    row(
        "cod",
        "Chemical oxygen demand",
        Gravity::Cannot,
        "Mostly what is dissolved; free oil and solids are a small part as a rule. No removal may be promised.",
        BIOLOGICAL,
        &TEXTBOOK_CHEMISTRY,
    ),
    row(
        "bod",
        "Biochemical oxygen demand",
        Gravity::Cannot,
        "Mostly what is dissolved. No removal may be promised.",
        BIOLOGICAL,
        &TEXTBOOK_CHEMISTRY,
    ),
    row(
        "toc",
        "Total organic carbon",
        Gravity::Cannot,
        "Mostly what is dissolved or fine. No removal may be promised.",
        BIOLOGICAL,
        &TEXTBOOK_CHEMISTRY,
    ),
    row(
        "glycol",
        "Glycol",
        Gravity::Cannot,
        "Mixes with water in any ratio and passes.",
        "Collection apart; biological treatment.",
        &TEXTBOOK_CHEMISTRY,
    ),
    row(
        "surfactants",
        "Surfactants",
        Gravity::Cannot,
        "Dissolved; they pass, and keep oil from rising on the way.",
        BIOLOGICAL,
        &SEPARATOR_FAILURES,
    ),
    row(
        "animal fats",
        "Animal and vegetable fats",
        Gravity::Cannot,
        "Often emulsified, partly turned to soap, set in cold water: the duty of a grease interceptor, outside \
            standards for light liquids of mineral origin.",
        "A grease interceptor; flotation; biological treatment.",
        &SEPARATOR_SCOPE,
    ),
    row(
        "pfas",
        "Fluorinated foam chemicals, PFAS",
        Gravity::Cannot,
        "Dissolved surfactants that do not decay; they pass, and cling to the vessel.",
        "Hold and remove; carbon or ion exchange made for them.",
        &TEXTBOOK_CHEMISTRY,
    ),
    row(
        "ph",
        "pH",
        Gravity::Cannot,
        "A property of the water; a separator does not touch it.",
        "Neutralisation, where the water lies outside the limit.",
        &TEXTBOOK_CHEMISTRY,
    ),
    row("ammonia", "Ammonia and nitrogen", Gravity::Cannot, "Dissolved; it passes.", BIOLOGICAL, &TEXTBOOK_CHEMISTRY),
    row(
        "phosphorus",
        "Phosphorus",
        Gravity::Cannot,
        "Dissolved or on fine solids; no removal may be promised.",
        "Precipitation; biological treatment.",
        &TEXTBOOK_CHEMISTRY,
    ),
    row(
        "chloride",
        "Chloride and dissolved solids",
        Gravity::Cannot,
        "Dissolved; it passes.",
        "Dilution is not treatment; control at the source.",
        &TEXTBOOK_CHEMISTRY,
    ),
];

/// The pollutant of this word.
#[must_use]
pub fn pollutant(word: &str) -> Option<&'static Pollutant> {
    POLLUTANTS.iter().find(|p| super::same(p.word, word))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn words_are_used_once_and_all_is_said() {
        let words: BTreeSet<_> = POLLUTANTS.iter().map(|p| p.word).collect();
        assert_eq!(words.len(), POLLUTANTS.len());
        for p in POLLUTANTS {
            assert!(p.explains.ends_with('.') && p.what_could.ends_with('.'), "{}", p.word);
            assert!(pollutant(p.word).is_some_and(|found| found.title == p.title));
        }
        assert!(pollutant("noise").is_none());
    }

    #[test]
    fn dissolved_matter_is_never_promised() {
        for word in
            ["benzene", "btex", "mtbe", "metals", "cod", "bod", "glycol", "surfactants", "ph", "pfas", "animal fats"]
        {
            assert_eq!(pollutant(word).map(|p| p.gravity), Some(Gravity::Cannot), "{word}");
        }
        for word in ["oil and grease", "petroleum hydrocarbons", "hydrocarbon index", "free oil"] {
            assert_eq!(pollutant(word).map(|p| p.gravity), Some(Gravity::Touches), "{word}");
        }
    }
}
