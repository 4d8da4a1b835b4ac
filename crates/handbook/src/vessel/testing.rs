//! Start-up, acceptance test, cleaning and measuring, as steps with their sources.

use crate::page::Source;
use crate::sources::{
    CHARLOTTE_NC, COMMON_PRACTICE, EN_858_2_UPKEEP, JUDGEMENT, MEASURING_AID, MIL_HDBK_1138, THURSTON_COUNTY,
    UFGS_46_25_14,
};

/// One step, in order within its list.
#[derive(Debug, PartialEq)]
pub struct Step {
    /// The word in files.
    pub word: &'static str,
    /// What to do, one sentence.
    pub text: &'static str,
    /// Where it comes from.
    pub source: &'static Source,
}

macro_rules! steps {
    ($($word:literal $text:literal $source:ident;)*) => {
        &[$(Step { word: $word, text: $text, source: &$source }),*]
    };
}

/// Least number of changes of the separator's volume before samples are taken (UFGS 46 25 14).
pub const VOLUME_CHANGES: f64 = 10.0;
/// Least number of pairs of influent and effluent samples (UFGS 46 25 14).
pub const SAMPLE_PAIRS: u32 = 10;
/// Hours within which they are taken, at regular intervals (UFGS 46 25 14).
pub const SAMPLING_HOURS: f64 = 8.0;
/// Working days allowed to settle the unit in before the test (UFGS 46 25 14).
pub const SETTLING_IN_DAYS: f64 = 5.0;

/// Putting the unit into service.
pub static START_UP: &[Step] = steps! {
    "clean" "Remove debris, packing and tools from every compartment." COMMON_PRACTICE;
    "float" "Lift and drop each float dry and see its contact change." COMMON_PRACTICE;
    "fill" "Fill with clean water until it runs out at the outlet; nothing oily before that." THURSTON_COUNTY;
    "level" "Level the weirs, where there are any, under water, and adjust oil weirs so that they skim oil and little water." UFGS_46_25_14;
    "leak" "Let the full unit stand and look for leaks; compare with the hydrostatic test." UFGS_46_25_14;
    "alarm" "Energise the alarm and prove it: an interface float must trip when the water is drawn down too." JUDGEMENT;
    "low flow" "Begin with a small flow and watch levels, inlet and outlet." COMMON_PRACTICE;
    "settle in" "Bring the unit to its best running within five working days." UFGS_46_25_14;
    "sign" "Record levels, alarm test, flow and date; both parties sign." COMMON_PRACTICE;
};

/// The acceptance test in service.
pub static ACCEPTANCE: &[Step] = steps! {
    "steady" "Run on the real influent for at least ten volumes of the separator before sampling." UFGS_46_25_14;
    "pairs" "Within eight hours and at regular intervals take at least ten samples of influent and ten of \
        effluent." UFGS_46_25_14;
    "purge" "Purge each port of built-up matter, then draw at the velocity of the stream (isokinetically)." UFGS_46_25_14;
    "bottle" "Use clean glass whose cap is lined with PTFE." UFGS_46_25_14;
    "whole" "Fill to the shoulder from the falling stream, not from the surface; the whole bottle is \
        extracted, never a part of it." COMMON_PRACTICE;
    "laboratory" "An independent certified laboratory analyses them by the method that the limit names." UFGS_46_25_14;
    "fails" "If the effluent is not acceptable, compare droplet sizes in and out on site." UFGS_46_25_14;
    "blank" "Add a duplicate and a blank." JUDGEMENT;
};

/// Cleaning.
pub static CLEANING: &[Step] = steps! {
    "stop" "Stop and lock out the inlet." COMMON_PRACTICE;
    "skim" "Take the oil first, then the water, then the sludge." COMMON_PRACTICE;
    "packs" "Lift the packs over the inlet side; rinse with cold water at low pressure, below {60 psi|414 kPa}, without \
        detergent." JUDGEMENT;
    "rinsate" "Let rinse water run to the inlet compartment, not to the outlet." JUDGEMENT;
    "inspect" "Inspect walls, coating, plates, mesh, floats and closure." EN_858_2_UPKEEP;
    "refill" "Refill with clean water before the inlet is opened." EN_858_2_UPKEEP;
    "alarm" "Test the alarm again." COMMON_PRACTICE;
    "record" "Record quantities, carrier, manifest and findings; keep them three years, longer if the permit \
        says so." CHARLOTTE_NC;
};

/// Measuring what has collected.
pub static MEASURING: &[Step] = steps! {
    "sludge" "Lower a stick to the top of the sludge, then to the floor; the difference is the sludge. A \
        sludge judge is better." MEASURING_AID;
    "oil" "Coat the lowest {24 in|600 mm} of a stick with water-finding paste and dip it through the oil; the length \
        that has not changed colour is oil." MEASURING_AID;
    "interface" "Measure the interface, not the surface: a heavy oil hardly lifts the surface." JUDGEMENT;
    "head" "Compare the levels before and behind the coalescer; a difference means fouling." EN_858_2_UPKEEP;
    "samples" "Sample influent and effluent on the same dates, at least twice a month, and plot the trend." MIL_HDBK_1138;
};
