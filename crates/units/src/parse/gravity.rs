//! Densities of oil as its trade writes them: degrees API and specific gravity, both against water at 60 °F.

use super::Written;
use super::number::{Number, leading};
use crate::catalog::KG_M3;

/// Density of water at 60 °F, kg/m3: the reference of both (API MPMS chapter 11.1, 2004).
pub const WATER_60F: f64 = 999.016;

/// Degrees API.
const API: [&str; 9] =
    ["api gravity", "deg. api", "deg api", "degrees api", "degree api", "°api", "° api", "api°", "api"];
/// Specific gravity.
const SPECIFIC: [&str; 8] =
    ["specific gravity", "rel. density", "relative density", "sp. gr.", "sp.gr.", "sp gr", "s.g.", "sg"];

/// A density in one of them, held in kg/m3; `None` when the text is of neither.
pub(super) fn gravity(text: &str) -> Option<Written> {
    let (number, of) = named(text, &API).map(|n| (n, true)).or_else(|| named(text, &SPECIFIC).map(|n| (n, false)))?;
    // Specific gravity is the ratio of densities; API's degrees are defined by it.
    let ratio = if of { 141.5 / (number.value + 131.5) } else { number.value };
    let value = ratio * WATER_60F;
    if !(value.is_finite() && value > 0.0) {
        return None;
    }
    let mut notes = number.notes;
    let what = if of { "degrees API" } else { "specific gravity" };
    notes.push(format!("\"{text}\" was read as {what}, against water of {WATER_60F} kg/m3 at 60 °F"));
    Some(Written { text: text.to_owned(), value, unit: &KG_M3, notes, gallon_open: false })
}

/// The number that one of the words stands beside, ahead of it or behind, and nothing else.
fn named(text: &str, words: &[&str]) -> Option<Number> {
    let lower = text.to_lowercase();
    // A letter that lowers to more than one byte would shift what is cut.
    let plain = lower.len() == text.len();
    words.iter().filter(|_| plain).find_map(|word| {
        let ahead = lower.strip_prefix(word).map(|rest| &text[text.len() - rest.len()..]);
        let behind = lower.strip_suffix(word).map(|head| &text[..head.len()]);
        [ahead, behind].into_iter().flatten().find_map(|rest| {
            let rest = rest.trim().trim_start_matches(['=', ':']).trim();
            leading(rest).filter(|number| rest[number.end..].trim().is_empty())
        })
    })
}

#[cfg(test)]
mod tests {
    use super::gravity;

    /// 141.5 / 166.5 and 141.5 / 143.5 times 999.016; water has 10 by definition.
    #[test]
    fn api_and_specific_gravity_are_densities() {
        let read = |text: &str| gravity(text).map(|w| w.si());
        for (text, expected) in [
            ("35 API", 849.013_6),
            ("35 °API", 849.013_6),
            ("API 35", 849.013_6),
            ("API gravity: 35", 849.013_6),
            ("12 deg API", 985.092_4),
            ("10 API", 999.016),
            ("SG 0.985", 984.030_8),
            ("0.985 sg", 984.030_8),
            ("specific gravity 0.985", 984.030_8),
            ("sp. gr. 0,985", 984.030_8),
        ] {
            let found = read(text);
            assert!(found.is_some_and(|x| (x - expected).abs() < 5e-4), "{text}: {found:?}");
        }
        for text in ["API", "sg", "35", "35 kg/m3", "about 12 API", "-140 API", "12 API 3", "0.9 rapi"] {
            assert!(read(text).is_none(), "{text}");
        }
    }
}
