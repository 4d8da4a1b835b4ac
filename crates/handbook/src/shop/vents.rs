//! What codes ask of the vents of buried tanks for flammable liquids; taken over for separators as common practice.

use crate::page::Source;
use crate::sources::{CCR_5598, CHICAGO_TANKS, JUDGEMENT, OAC_165_26};
use stillrise_units::catalog::{FT, IN};
use stillrise_units::{Length, Typed, Unit};

/// One requirement.
#[derive(Debug, PartialEq)]
pub struct VentRule {
    /// The word in files.
    pub word: &'static str,
    /// What it asks for, one sentence.
    pub text: &'static str,
    /// The least length that it names, if it names one, and its unit.
    pub least: Option<(f64, &'static Unit)>,
    /// Whether it is for liquids with a flash point below 100 °F only.
    pub volatile_only: bool,
    /// Where it is written.
    pub source: &'static Source,
}

impl VentRule {
    /// The least length that it names.
    #[must_use]
    pub fn least(&self) -> Option<Length> {
        self.least.map(|(value, unit)| Length::of(value, unit))
    }
}

macro_rules! vents {
    ($($word:literal $text:literal $least:expr, $volatile:literal $source:ident;)*) => {
        &[$(VentRule { word: $word, text: $text, least: $least, volatile_only: $volatile, source: &$source }),*]
    };
}

/// Requirements; where two give different lengths for one thing, the larger is the safe one.
pub static VENTS: &[VentRule] = vents! {
    "bore" "The bore is never below {1-1/4 in|32 mm}, and fits the larger of filling and withdrawal." Some((1.25, &IN)), false CCR_5598;
    "bore proposed" "A bore of {2 in|51 mm} is proposed by this handbook: smaller ones clog." Some((2.0, &IN)), false JUDGEMENT;
    "height" "The outlet stands outdoors, above the filling opening and at least {12 ft|3.7 m} above the ground beside it."
        Some((12.0, &FT)), true CCR_5598;
    "openings" "The outlet is at least {5 ft|1.5 m} from openings of buildings." Some((5.0, &FT)), true OAC_165_26;
    "openings city" "One city asks for {3 ft|0.91 m} from openings of buildings." Some((3.0, &FT)), true CHICAGO_TANKS;
    "upward" "The outlet discharges upward, not down." None, true OAC_165_26;
    "gooseneck" "A screened outlet turned down is for liquids that give off no vapour to speak of." None, false JUDGEMENT;
    "compartments" "Each compartment that is closed above the water has its vent; none is trapped or shared with a sewer."
        None, false JUDGEMENT;
    "flame arrester" "A pressure and vacuum valve or a flame arrester is fitted; gasoline is exempt up to a vent of {3 in|76 mm}."
        None, true CCR_5598;
};

/// The requirements for a liquid, volatile or not.
pub fn applying(volatile: bool) -> impl Iterator<Item = &'static VentRule> {
    VENTS.iter().filter(move |v| volatile || !v.volatile_only)
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillrise_units::spoken::{agree, pairs};

    #[test]
    fn what_is_asked_for_is_the_same_in_both_systems() {
        let all: Vec<_> = VENTS.iter().flat_map(|rule| pairs(rule.text)).collect();
        assert!(all.len() >= 5);
        // A quarter of an inch is read with a decimal point.
        for (us, si) in all {
            assert!(agree(&us.replace("1-1/4", "1.25"), si), "{us}, {si}");
        }
    }
}
