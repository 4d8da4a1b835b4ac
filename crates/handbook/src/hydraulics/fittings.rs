//! Published data: loss coefficients of entries, exits, bends, tees and valves.

use crate::page::Source;
use crate::sources::{CRANE, FITTING_TABLES, RENNELS};

/// One fitting, K on the velocity head of its pipe.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fitting {
    /// The word in files.
    pub word: &'static str,
    /// What a person calls it.
    pub title: &'static str,
    /// K to calculate with.
    pub k: f64,
    /// Lowest and highest K that sources print for it.
    pub range: (f64, f64),
    /// Where `k` comes from.
    pub source: &'static Source,
    /// Who says otherwise, and what to mind; empty when nobody does.
    pub note: &'static str,
}

const fn fitting(
    word: &'static str,
    title: &'static str,
    k: f64,
    range: (f64, f64),
    source: &'static Source,
    note: &'static str,
) -> Fitting {
    Fitting { word, title, k, range, source, note }
}

/// Fittings. Rows that Crane gives as a multiple of the friction factor f_T of full turbulence are
/// for 6 in schedule 40 (f_T 0.01485): 27 % more in 2 in, 13 % less in 12 in.
pub static FITTINGS: &[Fitting] = &[
    fitting(
        "entry-flush",
        "entry flush with the wall, sharp",
        0.5,
        (0.5, 0.57),
        &CRANE,
        "Crane, Swamee and Blevins 0.5, Miller 0.51, Rennels 0.57: for a cautious head take 0.57",
    ),
    fitting(
        "entry-projecting",
        "entry projecting into the tank",
        0.78,
        (0.57, 1.0),
        &CRANE,
        "up to 1.0 for a thin wall after Rennels and Idelchik, 0.57 for a thick one",
    ),
    fitting("entry-rounded-0.02", "entry rounded, r/D 0.02", 0.28, (0.28, 0.396_488), &CRANE, "Rennels 0.396"),
    fitting("entry-rounded-0.04", "entry rounded, r/D 0.04", 0.24, (0.24, 0.24), &CRANE, ""),
    fitting("entry-rounded-0.06", "entry rounded, r/D 0.06", 0.15, (0.15, 0.15), &CRANE, "Rennels 0.297 at r/D 0.05"),
    fitting("entry-rounded-0.10", "entry rounded, r/D 0.10", 0.09, (0.09, 0.09), &CRANE, ""),
    fitting("entry-rounded", "entry well rounded, r/D 0.15 and more", 0.04, (0.04, 0.148_492), &CRANE, "Rennels 0.148"),
    fitting(
        "exit",
        "exit into a tank or into the air",
        1.0,
        (1.0, 1.10),
        &CRANE,
        "1.04 to 1.10 measured; 2.0 in laminar flow",
    ),
    fitting(
        "elbow-90",
        "elbow 90 degrees, standard",
        0.445_607,
        (0.3, 0.9),
        &CRANE,
        "30 f_T; recalled tables 0.3 for a long one, 0.9 for a screwed one",
    ),
    fitting("elbow-45", "elbow 45 degrees, standard", 0.237_657, (0.224_611, 0.301_559), &CRANE, "16 f_T"),
    fitting("bend-90", "bend 90 degrees, r/D 1.5", 0.237_905, (0.208, 0.237_905), &RENNELS, "Crane 14 f_T, 0.208"),
    fitting("bend-90-short", "bend 90 degrees, r/D 1", 0.333_050, (0.297, 0.333_050), &RENNELS, "Crane 20 f_T, 0.297"),
    fitting("mitre-90", "mitre bend 90 degrees, one joint", 1.202_082, (1.1, 1.3), &RENNELS, "the range is recalled"),
    fitting("mitre-45", "mitre bend 45 degrees", 0.304_196, (0.2, 0.35), &RENNELS, "the range is recalled"),
    fitting("tee-run", "tee, straight through", 0.297_071, (0.259_170, 0.6), &CRANE, "20 f_T; recalled tables 0.6"),
    fitting(
        "tee-branch",
        "tee, through the branch",
        0.891_215,
        (0.777_510, 1.8),
        &CRANE,
        "60 f_T; recalled tables 1.8",
    ),
    fitting("gate-valve", "gate valve, open", 0.118_829, (0.112_305, 0.2), &CRANE, "8 f_T; recalled tables 0.2"),
    fitting("ball-valve", "ball valve, open, full bore", 0.044_561, (0.038_876, 0.048_628), &CRANE, "3 f_T"),
    fitting(
        "butterfly-valve",
        "butterfly valve, open",
        0.75,
        (0.5, 1.0),
        &FITTING_TABLES,
        "recalled; take the maker's figure",
    ),
    fitting(
        "swing-check",
        "swing check valve, inclined seat",
        1.485_357,
        (1.295_851, 2.5),
        &CRANE,
        "100 f_T; recalled tables 2 to 2.5",
    ),
];

/// The fitting of this word.
#[must_use]
pub fn fitting_of(word: &str) -> Option<&'static Fitting> {
    FITTINGS.iter().find(|f| f.word == word)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_used_once_and_k_lies_in_its_range() {
        for (at, f) in FITTINGS.iter().enumerate() {
            assert!(FITTINGS[..at].iter().all(|other| other.word != f.word), "{} twice", f.word);
            assert!(f.range.0 <= f.k && f.k <= f.range.1, "{}", f.word);
        }
        assert_eq!(fitting_of("exit").map(|f| f.k), Some(1.0));
    }

    /// Rows of the library's table, fluids 1.3.1; the multiples of f_T from its rows for 6 in.
    #[test]
    fn k_is_that_of_the_library() {
        let text = include_str!("../../check/fittings_K.csv");
        let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
        let rows: Vec<csv::StringRecord> = reader.records().flatten().collect();
        for (word, item, method, times) in [
            ("entry-flush", "entrance flush sharp", "Crane", 1.0),
            ("elbow-90", "K 90 std elbow = 30 fT, NPS 6", "Crane TP-410 L/D x fT", 1.0),
            ("elbow-45", "K 45 std elbow = 16 fT, NPS 6", "Crane TP-410 L/D x fT", 1.0),
            ("tee-run", "K 90 std elbow = 30 fT, NPS 6", "Crane TP-410 L/D x fT", 20.0 / 30.0),
            ("tee-branch", "K tee branch = 60 fT, NPS 6", "Crane TP-410 L/D x fT", 1.0),
            ("gate-valve", "K gate valve = 8 fT, NPS 6", "Crane TP-410 L/D x fT", 1.0),
            ("ball-valve", "K ball valve = 3 fT, NPS 6", "Crane TP-410 L/D x fT", 1.0),
            ("swing-check", "K ball valve = 3 fT, NPS 6", "Crane TP-410 L/D x fT", 100.0 / 3.0),
            ("bend-90", "bend round 90 deg r/D=1.5 Re=1e5 D=0.1541 m eps=0.0457 mm", "bend_rounded Rennels", 1.0),
            ("bend-90-short", "bend round 90 deg r/D=1 Re=1e5 D=0.1541 m eps=0.0457 mm", "bend_rounded Rennels", 1.0),
            ("mitre-90", "bend mitre 90 deg", "bend_miter Rennels", 1.0),
            ("mitre-45", "bend mitre 45 deg", "bend_miter Rennels", 1.0),
        ] {
            let row = rows.iter().find(|r| r.get(0) == Some(item) && r.get(1) == Some(method));
            let k: f64 = row.and_then(|r| r.get(2)).and_then(|k| k.parse().ok()).unwrap_or(f64::NAN);
            let ours = fitting_of(word).map_or(f64::NAN, |f| f.k);
            assert!((ours - k * times).abs() < 2e-5, "{word}: {ours} and {}", k * times);
        }
    }
}
