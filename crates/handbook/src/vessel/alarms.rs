//! Set points of the oil layer, as shares of the thickest permitted layer, and what is published.

use crate::page::Source;
use crate::sources::{EN_858_2_UPKEEP, JUDGEMENT, PPG3_ALARM};

/// Which set point it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mark {
    /// Oil is collected as a routine.
    PumpOut,
    /// The high-oil alarm.
    Alarm,
    /// What flows in is stopped.
    ShutOff,
    /// The thickest permitted layer.
    Limit,
    /// Emptying advised, as published.
    EmptyingAdvised,
    /// The alarm of an oil store, as published.
    StoreAlarm,
}

/// One set point.
#[derive(Debug, PartialEq)]
pub struct SetPoint {
    /// Which it is.
    pub mark: Mark,
    /// The word in files, for print.
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
        mark: Mark::PumpOut,
        word: "pump-out",
        title: "Routine pump-out",
        share: 0.25,
        action: "arrange for the oil to be collected",
        source: &JUDGEMENT,
    },
    SetPoint {
        mark: Mark::Alarm,
        word: "alarm",
        title: "High-oil alarm",
        share: 0.60,
        action: "light and horn, call the person on duty",
        source: &JUDGEMENT,
    },
    SetPoint {
        mark: Mark::ShutOff,
        word: "shut-off",
        title: "Shut-off",
        share: 0.90,
        action: "stop what flows in, by the feed pump or a valve ahead",
        source: &JUDGEMENT,
    },
    SetPoint {
        mark: Mark::Limit,
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
        mark: Mark::EmptyingAdvised,
        word: "en 858-2 emptying",
        title: "Emptying advised",
        share: 0.80,
        action: "empty the oil store",
        source: &EN_858_2_UPKEEP,
    },
    SetPoint {
        mark: Mark::StoreAlarm,
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
