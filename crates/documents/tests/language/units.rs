//! Units of the other system. Micrometres, mg/L, degrees of arc, cSt and cP, mN/m, W and kW, volts and amperes are the trade's
//! in both.

use crate::texts::{Text, Texts};
use regex::Regex;
use std::error::Error;
use stillrise_units::System;

const US: &str = "gpm/ft2|gpm|gph|gpd|MGD|gallons?|gal|ft2|ft3|ft/s2|ft/s|ft/min|ft|feet|foot|inches|inch|in/h|in2|lb/ft3|lb/d|lb|pounds?|lbf|psi|psf|°F|hp|mil|acres?|cfs|ft3/min|bbl|yd3";
const SI: &str = "m3/h|m3/d|m3/s|m3|m2|m/h|m/s2|m/s|mm/s|mm/h|mm2|mm|cm|km|m|L/s|L/h|L/d|L/min|L|litres?|liters?|metres?|meters?|millimetres?|kg/m3|kg/d|kg|kN|N|kPa|Pa|bar|°C|K|kelvin|ha|t";
/// An inch is written like a word: what may stand behind it where it is one.
const INCH: &str =
    r"|in(?:[,.;:)]|$| x | × | to \d| of [a-z]| and \d| wide| thick| deep| high| or | below| above| at )";

/// Methods whose notation stands in its own units, and says so: what such a sentence names.
const NOTATION: [&str; 4] = ["EN 858", "NS ", "PPG3", "L/s"];
const OF_METHODS: [&str; 4] = ["L/s", "L", "m2", "litres"];

/// Every unit of the other system that our own words use.
pub fn of_the_other_system(all: &Texts) -> Result<Vec<String>, Box<dyn Error>> {
    let number = r"(?:^|[^\w.,/-])(?:\d[\d.,]*(?:e-?\d+)?|\d+/\d+|one|two|three|half an?|square|cubic) ";
    let of_us = Regex::new(&format!(r"{number}(?:(?:{US})(?:$|[^\w/]){INCH})"))?;
    let of_si = Regex::new(&format!(r"{number}(?P<unit>{SI})(?:$|[^\w/'])"))?;
    let head_us = Regex::new(&format!(r"(?:^|, |\| )(?P<unit>{US}|in)(?:$|  )"))?;
    let head_si = Regex::new(&format!(r"(?:^|, |\| )(?P<unit>{SI})(?:$|  )"))?;
    let mut found = Vec::new();
    for text in &all.0 {
        let (sentence, head) = if text.system == System::Us { (&of_si, &head_si) } else { (&of_us, &head_us) };
        for ours in &text.ours {
            // One letter alone is a mark or a symbol.
            let hit = sentence.captures(ours).or_else(|| head.captures(ours).filter(|_| ours.chars().count() > 1));
            let Some(hit) = hit else { continue };
            let unit = hit.name("unit").map_or("", |unit| unit.as_str());
            let by_method = text.system == System::Us && OF_METHODS.contains(&unit) && tells_its_method(text, ours);
            if !by_method && !is_notation(text, ours) {
                let at = hit.get(0).map_or(0, |whole| whole.start());
                found.push(format!("other unit: {}: {}", text.name, around(ours, at)));
            }
        }
    }
    Ok(found)
}

/// What stands in units of its own and tells why: a current that its source counts for a square foot, a flow told also in the
/// unit in which it was asked for, an equation with its numbers.
fn is_notation(text: &Text, ours: &str) -> bool {
    ours.contains("mA for each square foot")
        || (ours.contains("We find ") && ours.contains(" to the separator"))
        || (text.name.ends_with("regulation-sheet") && ours.contains(" = "))
        || ours == "in"
}

fn tells_its_method(text: &Text, ours: &str) -> bool {
    // The trail names the method in the heading of its section.
    if text.is_trail {
        return true;
    }
    let is_told = |line: &str| NOTATION.iter().any(|word| line.contains(word));
    // A cell stands under a heading or beside a sentence that names the method.
    is_told(ours)
        || (ours.len() < 80 && text.said.iter().any(|line| line.contains("EN 858") && line.contains("own units")))
}

/// What stands around a place, for a message.
pub fn around(text: &str, at: usize) -> String {
    let from = text.char_indices().map(|(k, _)| k).rfind(|k| *k <= at.saturating_sub(60)).unwrap_or(0);
    text.get(from..).unwrap_or(text).chars().take(140).collect()
}
