//! Set points of the oil layer, as shares of the thickest permitted layer, and what is published.

use crate::page::Source;
use crate::sources::{EN_858_2_UPKEEP, JUDGEMENT, PPG3_ALARM};

/// One set point.
#[derive(Debug, PartialEq)]
pub struct SetPoint {
    /// The word in files.
    pub word: &'static str,
    /// Title.
    pub title: &'static str,
    /// Share of the thickest permitted layer, see the page `set-point`.
    pub share: f64,
    /// What happens there.
    pub action: &'static str,
    /// Where the share comes from.
    pub source: &'static Source,
}

/// The defaults, a proposal of this handbook, in the order in which a growing layer meets them.
pub static DEFAULTS: &[SetPoint] = &[
    SetPoint {
        word: "pump-out",
        title: "Routine pump-out",
        share: 0.25,
        action: "arrange for the oil to be collected",
        source: &JUDGEMENT,
    },
    SetPoint {
        word: "alarm",
        title: "High-oil alarm",
        share: 0.60,
        action: "light and horn, call the person on duty",
        source: &JUDGEMENT,
    },
    SetPoint {
        word: "shut-off",
        title: "Shut-off",
        share: 0.90,
        action: "stop what flows in, by the feed pump or a valve ahead",
        source: &JUDGEMENT,
    },
    SetPoint {
        word: "limit",
        title: "Limit",
        share: 1.00,
        action: "oil reaches the pack, the lip, the rim or the inlet, whichever comes first",
        source: &JUDGEMENT,
    },
];

/// Lowest share to which the alarm is moved down to leave room for a spill: clear of the routine pump-out, so that it does
/// not sound as a routine. A proposal of this handbook.
pub const LOWEST_ALARM: f64 = 0.35;

/// Published shares. They are shares of the oil store, and the alarm of one comes after the
/// emptying advice of the other: offer 80 % as a warning and 90 % as the alarm, or the defaults.
pub static PUBLISHED: &[SetPoint] = &[
    SetPoint {
        word: "en 858-2 emptying",
        title: "Emptying advised",
        share: 0.80,
        action: "empty the oil store",
        source: &EN_858_2_UPKEEP,
    },
    SetPoint {
        word: "ppg3 alarm",
        title: "Oil alarm at the level at rest",
        share: 0.90,
        action: "alarm",
        source: &PPG3_ALARM,
    },
];

/// What an alarm float may be telling besides a thick layer; print it beside the alarm.
pub static FLOAT_NOTES: &[&str] = &[
    "An interface float also trips on low water (leak, evaporation, a vessel not filled): label it \
        \"high oil or low water\".",
    "An oil as heavy as the float, or a film on its stem, keeps it from tripping.",
    "The interface rises with the flow by the head at the outlet and by the loss through fouled plates.",
    "After the alarm there must still be room for the credible spill.",
];

/// The default set point of this word.
#[must_use]
pub fn default(word: &str) -> Option<&'static SetPoint> {
    DEFAULTS.iter().find(|s| s.word == word)
}
