//! Published data: pipe sizes of ASME B36.10M, roughness and Manning's n of pipe materials.

use crate::page::Source;
use crate::sources::{B36_10M, MANNING_N, ROUGHNESS};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, Typed};

/// One nominal size of steel pipe, inches as published.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PipeSize {
    /// Nominal size as written in the trade: `"4 in"`.
    pub word: &'static str,
    /// Metric nominal size, DN.
    pub dn: u16,
    /// Outside diameter, in.
    pub outside_in: f64,
    /// Inside diameter of schedule 40, in.
    pub inside_in: f64,
    /// Inside diameter of standard weight (STD), in: the same up to 10 in, thinner walls above.
    pub inside_std_in: f64,
}

impl PipeSize {
    /// Outside diameter.
    #[must_use]
    pub fn outside(&self) -> Length {
        Length::of(self.outside_in, &IN)
    }
    /// Inside diameter of schedule 40.
    #[must_use]
    pub fn inside(&self) -> Length {
        Length::of(self.inside_in, &IN)
    }
    /// Nominal size in metric words: `"DN 100"`.
    #[must_use]
    pub fn metric_word(&self) -> String {
        format!("DN {}", self.dn)
    }
    /// Where the sizes come from.
    #[must_use]
    pub fn source(&self) -> &'static Source {
        &B36_10M
    }
}

const fn size(word: &'static str, dn: u16, outside_in: f64, inside_in: f64, inside_std_in: f64) -> PipeSize {
    PipeSize { word, dn, outside_in, inside_in, inside_std_in }
}

/// Sizes in rising order. Some printings give 18.814 and 22.626 in for 20 and 24 in, from walls of
/// 0.593 and 0.687 in.
pub static PIPE_SIZES: &[PipeSize] = &[
    size("2 in", 50, 2.375, 2.067, 2.067),
    size("2-1/2 in", 65, 2.875, 2.469, 2.469),
    size("3 in", 80, 3.5, 3.068, 3.068),
    size("4 in", 100, 4.5, 4.026, 4.026),
    size("5 in", 125, 5.563, 5.047, 5.047),
    size("6 in", 150, 6.625, 6.065, 6.065),
    size("8 in", 200, 8.625, 7.981, 7.981),
    size("10 in", 250, 10.75, 10.020, 10.020),
    size("12 in", 300, 12.75, 11.938, 12.000),
    size("14 in", 350, 14.0, 13.124, 13.250),
    size("16 in", 400, 16.0, 15.000, 15.250),
    size("18 in", 450, 18.0, 16.876, 17.250),
    size("20 in", 500, 20.0, 18.812, 19.250),
    size("24 in", 600, 24.0, 22.624, 23.250),
];

/// The size written as `"4 in"`, `"4in"`, `"4\""`, `"DN 100"` or `"dn100"`.
#[must_use]
pub fn pipe_size(word: &str) -> Option<&'static PipeSize> {
    let plain: String = word.to_lowercase().replace('"', "in").chars().filter(|c| !c.is_whitespace()).collect();
    // A number as it is written: no sign, no zero ahead.
    let number = plain.strip_prefix("dn").filter(|n| n.starts_with(|c: char| matches!(c, '1'..='9')));
    let dn: Option<u16> = number.and_then(|n| n.parse().ok());
    PIPE_SIZES.iter().find(|s| s.word.chars().filter(|c| *c != ' ').eq(plain.chars()) || dn == Some(s.dn))
}

/// The smallest size whose schedule 40 bore is at least `inside`; none above 24 in.
#[must_use]
pub fn at_least(inside: Length) -> Option<&'static PipeSize> {
    PIPE_SIZES.iter().find(|s| s.inside().si() >= inside.si())
}

/// What a pipe is made of, for its friction: low, typical and high values.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PipeMaterial {
    /// The word in files.
    pub word: &'static str,
    /// What a person calls it.
    pub title: &'static str,
    /// Equivalent sand roughness, mm.
    pub roughness_mm: (f64, f64, f64),
    /// Manning's n.
    pub manning_n: (f64, f64, f64),
    /// Where the roughness comes from.
    pub source: &'static Source,
    /// Where Manning's n comes from.
    pub n_source: &'static Source,
}

impl PipeMaterial {
    /// Typical equivalent sand roughness.
    #[must_use]
    pub fn roughness(&self) -> Length {
        Length::of(self.roughness_mm.1, &MM)
    }
}

const fn material(
    word: &'static str,
    title: &'static str,
    roughness_mm: (f64, f64, f64),
    manning_n: (f64, f64, f64),
) -> PipeMaterial {
    PipeMaterial { word, title, roughness_mm, manning_n, source: &ROUGHNESS, n_source: &MANNING_N }
}

/// Materials. Smooth plastic: drainage codes give n 0.009 to 0.011 and design with 0.010, a federal
/// table 0.011 to 0.015. Commercial steel is 0.00015 ft. Corrugated metal in annular corrugations;
/// helical ones are smoother.
pub static MATERIALS: &[PipeMaterial] = &[
    material("steel", "welded steel", (0.02, 0.045_72, 0.15), (0.010, 0.012, 0.014)),
    material("pvc", "PVC, smooth", (0.0015, 0.0015, 0.007), (0.009, 0.010, 0.011)),
    material("hdpe", "polyethylene, smooth inside", (0.0015, 0.0015, 0.007), (0.009, 0.011, 0.015)),
    material("concrete", "concrete", (0.305, 0.305, 3.05), (0.011, 0.013, 0.015)),
    material("cast-iron", "cast or ductile iron", (0.12, 0.259, 1.5), (0.010, 0.013, 0.014)),
    material("corrugated", "corrugated metal", (30.0, 45.0, 60.0), (0.021, 0.024, 0.030)),
];

/// The material of this word.
#[must_use]
pub fn pipe_material(word: &str) -> Option<&'static PipeMaterial> {
    MATERIALS.iter().find(|m| m.word == word)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// fluids 1.3.1, nearest_pipe, schedule 40: outside and inside in mm, rounded to the metric walls.
    #[test]
    fn sizes_stand_within_the_rounding_of_the_metric_table() {
        let metric = [
            (60.3, 52.48),
            (73.0, 62.68),
            (88.9, 77.92),
            (114.3, 102.26),
            (141.3, 128.2),
            (168.3, 154.08),
            (219.1, 202.74),
            (273.0, 254.46),
            (323.8, 303.18),
            (355.6, 333.34),
            (406.4, 381.0),
            (457.0, 428.46),
            (508.0, 477.82),
            (610.0, 575.04),
        ];
        assert_eq!(PIPE_SIZES.len(), metric.len());
        for (s, (outside, inside)) in PIPE_SIZES.iter().zip(metric) {
            assert!((s.outside().in_unit(&MM) - outside).abs() < 0.41, "{}", s.word);
            assert!((s.inside().in_unit(&MM) - inside).abs() < 0.41, "{}", s.word);
            assert!(s.inside_std_in >= s.inside_in && s.inside_std_in < s.outside_in, "{}", s.word);
        }
        assert!(PIPE_SIZES.windows(2).all(|w| w[0].outside_in < w[1].outside_in && w[0].dn < w[1].dn));
    }

    #[test]
    fn sizes_are_found_by_their_words() {
        for word in ["4 in", "4in", "4\"", "DN 100", "dn100"] {
            assert_eq!(pipe_size(word).map(|s| s.dn), Some(100), "{word}");
        }
        assert_eq!(pipe_size("7 in"), None);
        assert_eq!(at_least(Length::of(6.066, &IN)).map(|s| s.word), Some("8 in"));
        assert_eq!(at_least(Length::of(23.0, &IN)), None);
    }

    #[test]
    fn materials_are_ordered() {
        for m in MATERIALS {
            assert!(m.roughness_mm.0 <= m.roughness_mm.1 && m.roughness_mm.1 <= m.roughness_mm.2, "{}", m.word);
            assert!(m.manning_n.0 <= m.manning_n.1 && m.manning_n.1 <= m.manning_n.2, "{}", m.word);
        }
        assert_eq!(pipe_material("concrete").map(|m| m.manning_n.1), Some(0.013));
    }
}
