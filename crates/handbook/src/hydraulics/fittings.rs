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
/// for 6 in schedule 40 (f_T 0.01485): 27 % more in 2 in, 13 % less in 12 in, 23 % less in 24 in. Their
/// ranges run from 24 in to 2 in. Rounded and projecting entries range over Rennels, Idelchik, Miller, Swamee
/// and Harris as fluids 1.3.1 carries them.
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
        (0.43, 1.03),
        &CRANE,
        "Miller 1.03 and Rennels 1.02 for a thin wall; for a thick one Rennels 0.57, Idelchik 0.50, Harris 0.43",
    ),
    fitting(
        "entry-rounded-0.02",
        "entry rounded, r/D 0.02",
        0.28,
        (0.28, 0.396_488),
        &CRANE,
        "Harris 0.28, Miller 0.36, Idelchik 0.37, Rennels 0.396",
    ),
    fitting(
        "entry-rounded-0.04",
        "entry rounded, r/D 0.04",
        0.24,
        (0.17, 0.324_300),
        &CRANE,
        "Harris 0.17, Idelchik 0.26, Rennels 0.324; 0.297 at r/D 0.05",
    ),
    fitting(
        "entry-rounded-0.06",
        "entry rounded, r/D 0.06",
        0.15,
        (0.10, 0.273_108),
        &CRANE,
        "Harris 0.10, Idelchik 0.20, Rennels 0.273",
    ),
    fitting(
        "entry-rounded-0.10",
        "entry rounded, r/D 0.10",
        0.09,
        (0.048, 0.202_910),
        &CRANE,
        "Harris 0.049, Miller 0.082, Idelchik 0.113, Rennels 0.203",
    ),
    fitting(
        "entry-rounded",
        "entry well rounded, r/D 0.15 and more",
        0.04,
        (0.0, 0.148_492),
        &CRANE,
        "Harris 0.007 and less, Idelchik 0.03 to 0.07, Miller 0.06, Rennels 0.148 at 0.15 and 0.115 at 0.20",
    ),
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
    fitting(
        "elbow-45",
        "elbow 45 degrees, standard",
        0.237_657,
        (0.144_831, 0.301_560),
        &CRANE,
        "16 f_T, 0.184 in 24 in to 0.302 in 2 in; smooth bends of r/D 1 and 3 after Rennels 0.200 and 0.145",
    ),
    fitting(
        "bend-90",
        "bend 90 degrees, r/D 1.5",
        0.237_905,
        (0.160, 0.264),
        &RENNELS,
        "Crane 14 f_T, 0.208 in 6 in, 0.264 in 2 in",
    ),
    fitting(
        "bend-90-short",
        "bend 90 degrees, r/D 1",
        0.333_050,
        (0.229, 0.377),
        &RENNELS,
        "Crane 20 f_T, 0.297 in 6 in, 0.377 in 2 in",
    ),
    fitting("mitre-90", "mitre bend 90 degrees, one joint", 1.202_082, (1.1, 1.3), &RENNELS, "the range is recalled"),
    fitting("mitre-45", "mitre bend 45 degrees", 0.304_196, (0.2, 0.35), &RENNELS, "the range is recalled"),
    fitting("tee-run", "tee, straight through", 0.297_071, (0.229_672, 0.6), &CRANE, "20 f_T; recalled tables 0.6"),
    fitting(
        "tee-branch",
        "tee, through the branch",
        0.891_215,
        (0.689_015, 1.8),
        &CRANE,
        "60 f_T; recalled tables 1.8",
    ),
    fitting("gate-valve", "gate valve, open", 0.118_829, (0.091_869, 0.2), &CRANE, "8 f_T; recalled tables 0.2"),
    fitting("ball-valve", "ball valve, open, full bore", 0.044_561, (0.034_451, 0.056_542), &CRANE, "3 f_T"),
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
        (1.148_358, 2.5),
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
    #![allow(clippy::panic, reason = "a test fails by panicking")]
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

    /// Every row that the library prints for one of these fittings, in any pipe, lies in the range; rows of other
    /// fittings are named, so that a new row is not passed over.
    #[test]
    fn ranges_hold_what_the_library_prints() {
        let text = include_str!("../../check/fittings_K.csv");
        let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
        let mut held = 0;
        for row in reader.records().flatten() {
            let (item, k) = (row.get(0).unwrap_or(""), row.get(2).and_then(|k| k.parse::<f64>().ok()));
            let k = k.unwrap_or(f64::NAN);
            let word = match item {
                i if i.starts_with("entrance_sharp") || i.starts_with("entrance flush sharp") => "entry-flush",
                i if i.starts_with("entrance projecting") => "entry-projecting",
                i if i.ends_with("r/D=0.02") => "entry-rounded-0.02",
                i if i.ends_with("r/D=0.15") || i.ends_with("r/D=0.20") => "entry-rounded",
                // Between two of our rows; this one holds it.
                i if i.ends_with("r/D=0.05") => "entry-rounded-0.04",
                i if i.starts_with("bend round 45") || i.starts_with("K 45") => "elbow-45",
                i if i.starts_with("bend round 90 deg r/D=1 ") => "bend-90-short",
                i if i.starts_with("bend round 90 deg r/D=1.5") => "bend-90",
                i if i.starts_with("bend mitre 45") => "mitre-45",
                i if i.starts_with("bend mitre 90") => "mitre-90",
                i if i.starts_with("K 90") => "elbow-90",
                i if i.starts_with("K tee run") => "tee-run",
                i if i.starts_with("K tee branch") => "tee-branch",
                i if i.starts_with("K gate") => "gate-valve",
                i if i.starts_with("K ball") => "ball-valve",
                i if i.starts_with("K swing") => "swing-check",
                // Fittings that the list does not have: bevelled entries, sudden changes of width, bends of 30 and
                // 60 degrees and of r/D 3; and the friction factors behind the multiples.
                i if ["entrance bevelled", "sudden", "bend round 30", "bend round 60", "bend mitre", "Crane fT"]
                    .iter()
                    .any(|other| i.starts_with(other)) =>
                {
                    continue;
                }
                other => panic!("{other} belongs to no fitting"),
            };
            let range = fitting_of(word).map_or((f64::NAN, f64::NAN), |f| f.range);
            assert!(range.0 <= k && k <= range.1, "{item}: {k} outside {range:?} of {word}");
            held += 1;
        }
        assert!(held >= 30, "{held} rows");
    }
}
