//! Chemicals that come with the water, and what they do to separation by gravity. Long because
//! it is one list.
//!
//! The shares of emulsified oil are engineering judgement: no measured figures were found. They
//! are there to be replaced by a jar test, and to show how much of a limit a detergent eats up.

use crate::choice;
use crate::page::Source;
use crate::sources::{
    API_4531, BILGE_GUIDE, COMMON_PRACTICE, JUDGEMENT, PRETREATMENT_NOTE, SEPARATOR_FAILURES, TEXTBOOK_CHEMISTRY,
};
use crate::spread::Spread;
use stillrise_units::catalog::PERCENT;

choice! {
    /// What a chemical does.
    Effect {
        /// leaves the oil as it is
        Harmless "harmless",
        /// makes drops too small to rise, and keeps them so
        Emulsifies "emulsifies",
        /// is itself mixed with water and passes
        NotSeparable "not-separable",
        /// takes oil, or parts of it, into solution
        Dissolves "dissolves",
        /// changes the density of the water
        ShiftsDensity "shifts-density",
    }
}

/// A way out that is not open everywhere.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// No pump ahead of the unit; where there is none, it is no remedy.
    GravityFeed,
    /// The owner of a sewer takes more; nobody else can consent.
    OwnersConsent,
}

impl Way {
    /// In words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Way::GravityFeed => "gravity feed, which brings all that arrives to the unit",
            Way::OwnersConsent => "or the consent of the sewer's owner to a higher limit",
        }
    }
}

/// One chemical.
#[derive(Debug)]
pub struct Chemical {
    /// Its word in files.
    pub word: &'static str,
    /// Its name in print.
    pub title: &'static str,
    /// What it does.
    pub effect: Effect,
    /// Whether it lowers the tension between oil and water.
    pub surfactant: bool,
    /// Whether it is an oil itself, made to mix with water: of other oils beside it that share is not.
    pub is_oil: bool,
    /// Share of the oil that gravity no longer reaches while it is present.
    pub emulsified: Spread,
    /// Why.
    pub explains: &'static str,
    /// What to do instead of, before or behind a separator.
    pub what_could: &'static str,
    /// What could too, where it is open.
    pub also: Option<Way>,
    /// Where the effect is stated; the share has its own source.
    pub source: &'static Source,
}

const fn share(low: f64, typical: f64, high: f64) -> Spread {
    Spread::new(low, typical, high, &PERCENT, &JUDGEMENT).noted("no measured share was found; replace it by a jar test")
}

/// All chemicals, the harmless ones first.
pub static CHEMICALS: &[Chemical] = &[
    Chemical {
        word: "none",
        title: "No chemicals",
        effect: Effect::Harmless,
        surfactant: false,
        is_oil: false,
        emulsified: share(0.0, 0.0, 5.0),
        explains: "Rain from a dry yard, or plain water, leaves oil in drops that gravity can reach.",
        what_could: "Nothing is needed; keep it so.",
        also: None,
        source: &SEPARATOR_FAILURES,
    },
    Chemical {
        word: "hot-water",
        title: "Hot water or high pressure without detergent",
        effect: Effect::Emulsifies,
        surfactant: false,
        is_oil: false,
        emulsified: share(0.0, 5.0, 20.0),
        explains: "Jets break oil into fine drops, but without a surfactant these join again in still water; hot water or \
            pressure is the lesser evil beside detergent.",
        what_could: "Where no surfactant is in the water, quiet volume ahead of the separator, half an hour or more; lower pressure.",
        also: Some(Way::GravityFeed),
        source: &SEPARATOR_FAILURES,
    },
    Chemical {
        word: "quick-break-detergent",
        title: "Quick-break (splitting) detergent",
        effect: Effect::Emulsifies,
        surfactant: true,
        is_oil: false,
        emulsified: share(5.0, 10.0, 20.0),
        explains: "Made to let oil go within minutes, but only at its dose and not mixed with other cleaners; part of the \
            oil stays as fine drops.",
        what_could: "Hold the water quiet for the splitting time of its data sheet ahead of the separator; meter the dose; keep other cleaners out.",
        also: None,
        source: &COMMON_PRACTICE,
    },
    Chemical {
        word: "soap",
        title: "Soap and hand cleaner",
        effect: Effect::Emulsifies,
        surfactant: true,
        is_oil: false,
        emulsified: share(10.0, 30.0, 80.0),
        explains: "A surfactant; hard water takes part of it out as curd, which blocks plates and mesh.",
        what_could: "A soap that lets the oil go, at its dose; spills cleaned dry. Whether water that carries soap alone may pass the separator by is for the authority to say.",
        also: None,
        source: &SEPARATOR_FAILURES,
    },
    Chemical {
        word: "alkaline-degreaser",
        title: "Alkaline degreaser",
        effect: Effect::Emulsifies,
        surfactant: true,
        is_oil: false,
        emulsified: share(20.0, 50.0, 100.0),
        explains: "Takes up oil as a fine emulsion that holds for days, and frees oil already caught.",
        what_could: "Change to a quick-break cleaner or to dry cleaning; otherwise split with acid or coagulant, then \
            flotation.",
        also: Some(Way::OwnersConsent),
        source: &PRETREATMENT_NOTE,
    },
    Chemical {
        word: "surfactant-heavy-detergent",
        title: "Detergent rich in surfactant",
        effect: Effect::Emulsifies,
        surfactant: true,
        is_oil: false,
        emulsified: share(50.0, 80.0, 100.0),
        explains: "Takes the interfacial tension to a few mN/m or below; drops under some 15 µm are held apart and do not rise.",
        what_could: "Chemical splitting and flotation, membranes or evaporation; another cleaner; recycling of the wash water.",
        also: None,
        source: &BILGE_GUIDE,
    },
    Chemical {
        word: "foam-agent",
        title: "Fire-fighting foam",
        effect: Effect::Emulsifies,
        surfactant: true,
        is_oil: false,
        emulsified: share(50.0, 90.0, 100.0),
        explains: "Surfactants by design, many fluorinated: the oil is emulsified, the vessel foams, and fluorinated matter \
            (PFAS) leaves in part and stays behind in the vessel in part.",
        what_could: "Close the outlet and hold the water; have it removed as waste; adsorption for fluorinated matter. Rinse \
            the vessel before it serves again.",
        also: None,
        source: &TEXTBOOK_CHEMISTRY,
    },
    Chemical {
        word: "soluble-coolant",
        title: "Soluble (emulsifiable) cutting coolant",
        effect: Effect::NotSeparable,
        surfactant: true,
        is_oil: true,
        emulsified: share(80.0, 95.0, 100.0),
        explains: "An emulsion made to last: the oil in it never rises. Only tramp oil floating on it does.",
        what_could: "Keep it out; skim the tramp oil at the machine; split with acid or salt, ultrafilter or evaporate; or \
            collect it for a licensed handler.",
        also: None,
        source: &TEXTBOOK_CHEMISTRY,
    },
    Chemical {
        word: "glycol",
        title: "Glycol: antifreeze and de-icing fluid",
        effect: Effect::NotSeparable,
        surfactant: false,
        is_oil: false,
        emulsified: share(0.0, 5.0, 20.0),
        explains: "Mixes with water in any ratio and passes; a great oxygen demand; its inhibitors help to release trapped oil.",
        what_could: "Collect it apart for recycling or disposal; what is left is for biological treatment, and asks for the consent of whoever takes the water.",
        also: None,
        source: &PRETREATMENT_NOTE,
    },
    Chemical {
        word: "brake-fluid",
        title: "Brake fluid of glycol ether",
        effect: Effect::NotSeparable,
        surfactant: false,
        is_oil: false,
        emulsified: share(0.0, 5.0, 20.0),
        explains: "Mixes with water and passes, and releases trapped oil.",
        what_could: "Collect it apart in the workshop.",
        also: None,
        source: &PRETREATMENT_NOTE,
    },
    Chemical {
        word: "urea-solution",
        title: "Urea solution for diesel exhaust",
        effect: Effect::NotSeparable,
        surfactant: false,
        is_oil: false,
        emulsified: share(0.0, 0.0, 5.0),
        explains: "Dissolved in water; passes, and becomes ammonia.",
        what_could: "Separate containment at its dispenser; biological treatment.",
        also: None,
        source: &TEXTBOOK_CHEMISTRY,
    },
    Chemical {
        word: "alcohol-fuel",
        title: "Alcohol fuel: E85, methanol, ethanol blends",
        effect: Effect::Dissolves,
        surfactant: false,
        is_oil: false,
        emulsified: share(0.0, 10.0, 30.0),
        explains: "The alcohol leaves the fuel for the water, passes, and as a cosolvent can carry more benzene and its kin into solution.",
        what_could: "Hold spills in a closed containment and remove them; stripping or biological treatment of what is \
            dissolved; alcohol-resistant foam and seals.",
        also: None,
        source: &API_4531,
    },
    Chemical {
        word: "solvent",
        title: "Solvent: mineral spirits, parts washer, thinner",
        effect: Effect::Dissolves,
        surfactant: false,
        is_oil: false,
        emulsified: share(5.0, 20.0, 50.0),
        explains: "A few per cent of solvent helps oil to emulsify; aromatics in it dissolve; chlorinated solvents are \
            heavier than water and sink.",
        what_could: "Keep it out and collect it as waste; stripping or activated carbon for what is dissolved.",
        also: None,
        source: &BILGE_GUIDE,
    },
    Chemical {
        word: "brine",
        title: "Brine and road salt",
        effect: Effect::ShiftsDensity,
        surfactant: false,
        is_oil: false,
        emulsified: share(0.0, 0.0, 5.0),
        explains: "Salt makes water heavier, so oil rises faster, but the oil level, weirs and floats stand otherwise than \
            in fresh water; a layer of brine may lie below the melt water. It corrodes steel.",
        what_could: "Set levels for both waters; choose materials for chloride.",
        also: None,
        source: &TEXTBOOK_CHEMISTRY,
    },
];

/// The chemical of this word.
#[must_use]
pub fn chemical(word: &str) -> Option<&'static Chemical> {
    CHEMICALS.iter().find(|c| super::same(c.word, word))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn words_are_used_once_and_shares_are_shares() {
        let words: BTreeSet<_> = CHEMICALS.iter().map(|c| c.word).collect();
        assert_eq!(words.len(), CHEMICALS.len());
        for c in CHEMICALS {
            assert!(c.emulsified.is_ordered() && c.emulsified.low >= 0.0 && c.emulsified.high <= 100.0, "{}", c.word);
            assert!(c.emulsified.rests_on_memory(), "{} has a measured share: say so in the head of this file", c.word);
            assert!(chemical(c.word).is_some_and(|found| found.title == c.title));
        }
        assert!(chemical("water").is_none());
    }

    #[test]
    fn the_stronger_the_cleaner_the_less_is_left_for_gravity() {
        let typical = |word| chemical(word).map_or(f64::NAN, |c| c.emulsified.typical_si());
        let order =
            ["none", "hot-water", "quick-break-detergent", "soap", "alkaline-degreaser", "surfactant-heavy-detergent"];
        assert!(order.windows(2).all(|pair| typical(pair[0]) < typical(pair[1])));
    }
}
