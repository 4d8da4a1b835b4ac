//! Which keys a find could answer, the likeliest first.

use crate::cues::{CUES, Cue};
use crate::keys::{PLACES, Place, place};
use crate::text::Sentence;
use crate::{Find, Thing, What};
use core::ops::Range;
use stillrise_units::parse::Extent;
use stillrise_units::{Dim, Unit, catalog};

/// A key that a find could answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// Its path without names: `stream.flow`.
    pub path: String,
    /// What the key would hold, as it is typed in a file.
    pub value: String,
    /// How strongly the words beside it point to the key; nothing where only its dimension does.
    pub weight: u32,
}

/// Offers of one find.
const MOST: usize = 4;
/// Bytes to either side within which a word points most strongly.
const NEAR: usize = 24;
/// Bytes to either side within which it still points more than from afar.
const BESIDE: usize = 60;

/// The keys that a find could answer.
pub(crate) fn offers(text: &str, sentences: &[Sentence], find: &Find) -> Vec<Offer> {
    let sentence = sentences.get(find.sentence).map_or(0..text.len(), |s| s.at.clone());
    match &find.what {
        What::Ph(range) => {
            let offer = |path: &str, value: String| Offer { path: path.to_owned(), value, weight: 2 };
            vec![offer("limit.value", format!("pH {range}")), offer("limit.pollutant", "ph".to_owned())]
        }
        What::Gravity(said) => vec![Offer { path: "oil.density".to_owned(), value: said.clone(), weight: 2 }],
        What::Count(path, count) => of_count(path, *count),
        What::Word(thing, word) => of_word(*thing, word),
        What::Quantity(span, dim) => {
            let typed = span.text.clone();
            let si = match &span.extent {
                Extent::One(one) => one.si(),
                Extent::Around { value, .. } => value.si(),
                Extent::Between { high, .. } => high.si(),
            };
            let unit = match &span.extent {
                Extent::One(one) | Extent::Around { value: one, .. } | Extent::Between { high: one, .. } => one.unit,
            };
            // A sentence before may name what is spoken of.
            let before = heading(text, sentences, find.sentence);
            of_quantity(text, (&sentence, before.as_ref()), &find.at, (*dim, si, unit), &typed)
        }
    }
}

/// What stands above a sentence and may name what it speaks of: the sentence before, or of a line of a table or a list what
/// leads it.
fn heading(text: &str, sentences: &[Sentence], own: usize) -> Option<Range<usize>> {
    let is_row = |s: &Sentence| {
        let said = &text[s.at.clone()];
        said.starts_with(['-', '*', '•', '–']) || said.contains('\t') || said.contains("  ")
    };
    let here = sentences.get(own)?;
    if !is_row(here) {
        return own.checked_sub(1).and_then(|k| sentences.get(k)).map(|s| s.at.clone());
    }
    // Rows stand one under another; what leads them is the first line that is none, and the row above that holds no digit.
    let lead = (0..own).rev().find(|k| !is_row(&sentences[*k]))?;
    Some(
        sentences[lead].at.start
            ..sentences
                .get(lead + 1)
                .filter(|s| is_row(s) && !text[s.at.clone()].contains(|c: char| c.is_ascii_digit()))
                .map_or(sentences[lead].at.end, |s| s.at.end),
    )
}

fn of_word(thing: Thing, word: &str) -> Vec<Offer> {
    let path = match thing {
        Thing::Oil => "oil.kind",
        Thing::Chemical => "chemical.kind",
        Thing::Surface => "surface.kind",
        Thing::Pollutant => "limit.pollutant",
        Thing::Statistic => "limit.statistic",
        Thing::Pump => "inlet.pump",
        Thing::Facility => "enquiry.facility",
        Thing::Receiver => "outlet.to",
        Thing::Feed => "inlet.feed",
    };
    vec![Offer { path: path.to_owned(), value: word.to_owned(), weight: 2 }]
}

/// A count, and the other keys that the same words may answer.
fn of_count(path: &str, count: f64) -> Vec<Offer> {
    let others: &[&str] = match path {
        "stream.days_per_week" => &["dump.per_week"],
        "dump.per_week" => &["stream.days_per_week"],
        "rain.return_period" => &["asked.interval"],
        "asked.interval" => &["rain.return_period"],
        "rain.duration" => &["stream.hours_per_day", "rain.concentration_time"],
        _ => &[],
    };
    let value = match path {
        "rain.return_period" => format!("{count} yr"),
        "asked.interval" => format!("{count} mo"),
        "rain.duration" => format!("{count} min"),
        "outlet.pipe" => format!("DN {count}"),
        _ => format!("{count}"),
    };
    let offer = |path: &str, weight: u32| Offer { path: path.to_owned(), value: value.clone(), weight };
    core::iter::once(offer(path, 2)).chain(others.iter().map(|other| offer(other, 0))).collect()
}

fn of_quantity(
    text: &str,
    (sentence, before): (&Range<usize>, Option<&Range<usize>>),
    at: &Range<usize>,
    (dim, si, unit): (Dim, f64, &'static Unit),
    typed: &str,
) -> Vec<Offer> {
    let mut all: Vec<Offer> = Vec::new();
    let mut offer = |place: &Place, value: String, si: f64, extra: u32| {
        let cues = CUES.iter().find(|cue| cue.path == place.path);
        let weight = cues.map_or(0, |cue| points(text, (sentence, before), at, cue)) + extra;
        if weight > 0 && place.takes(si) {
            all.push(Offer { path: place.path.clone(), value, weight });
        }
    };
    let under = dim == Dim::Length && is_single(typed);
    let said_under = under && below_ground(text, sentence, at);
    for place in PLACES.iter().filter(|place| place.dim() == Some(dim)) {
        // A depth below the ground is an elevation where the ground stands at nothing.
        if said_under && ELEVATIONS.contains(&place.path.as_str()) {
            offer(place, format!("-{}", bare_depth(typed)), -si, 0);
        } else {
            offer(place, typed.to_owned(), si, affinity(&place.path, unit));
            // Without a datum beside it, where the groundwater stands may be told from the ground down as well.
            if under && place.path == GROUNDWATER {
                offer(place, format!("-{}", bare_depth(typed)), -si, 0);
            }
        }
    }
    // The sides of a place are its length and its width.
    if dim == Dim::Area && typed != text[at.clone()].trim() {
        let sides = &text[at.clone()];
        for (path, side) in ["site.max_length", "site.max_width"].into_iter().zip(parted(sides)) {
            if let Some(own) = place(path) {
                offer(own, side, si.max(0.0).sqrt(), 0);
            }
        }
    }
    // "3 hours a day", "5 days a week": numbers without a unit.
    let number = typed.trim_end_matches(|c: char| c.is_alphabetic() || c == '.').trim().to_owned();
    if let (Dim::Time, Some(own)) = (dim, place("stream.hours_per_day"))
        && *unit == catalog::H
    {
        offer(own, number.clone(), catalog::H.from_si(si), 0);
    }
    if let (Dim::Time, Some(own)) = (dim, place("stream.days_per_week"))
        && *unit == catalog::D
    {
        offer(own, number, catalog::D.from_si(si), 0);
    }
    // "500 gallons per day" is a volume of a day.
    let per_day =
        [(&catalog::GPD, "gal"), (&catalog::M3_D, "m3"), (&catalog::L_D, "L"), (&catalog::IMP_GPD, "imp gal")];
    if let Some((_, volume)) = per_day.iter().find(|(of, _)| **of == *unit)
        && let Some(own) = place("stream.volume_per_day")
    {
        let digits = typed.find(|c: char| c.is_alphabetic()).unwrap_or(typed.len());
        offer(own, format!("{} {volume}", typed[..digits].trim()), si * 86400.0, 3);
    }
    all.sort_by(|a, b| b.weight.cmp(&a.weight).then_with(|| rank(&a.path).cmp(&rank(&b.path))));
    // What enquiries say most of that kind stands behind what words point to.
    for path in usual(dim, unit) {
        let is_depth = said_under && ELEVATIONS.contains(path);
        let (value, si) = if is_depth { (format!("-{}", bare_depth(typed)), -si) } else { (typed.to_owned(), si) };
        let is_new = |own: &&Place| own.takes(si) && all.iter().all(|offer| offer.path != own.path);
        if let Some(own) = place(path).filter(is_new) {
            all.push(Offer { path: own.path.clone(), value, weight: 0 });
        }
    }
    let bare = |unit: &Unit| stillrise_units::print::digits(unit.from_si(si), 4);
    for (unit_of, path) in [(&catalog::H, "stream.hours_per_day"), (&catalog::D, "stream.days_per_week")] {
        let known = all.iter().any(|offer| offer.path == path);
        let fits = *unit == *unit_of && place(path).is_some_and(|own| own.takes(unit_of.from_si(si)));
        if fits && !known && !all.is_empty() {
            all.insert(all.len().min(1), Offer { path: path.to_owned(), value: bare(unit_of), weight: 0 });
        }
    }
    all.truncate(MOST);
    all
}

/// Where the groundwater stands.
const GROUNDWATER: &str = "site.groundwater";

/// Keys that hold an elevation, which a customer may tell as a depth below the ground.
const ELEVATIONS: [&str; 4] = ["inlet.invert", "outlet.invert", "outlet.tailwater", GROUNDWATER];

/// Words behind a depth that count it from the ground by themselves.
const DOWN: [&str; 6] = ["bgl", "below ground", "unter gelände", "unter gok", "under ground", "underground"];

/// Words that lead from a depth to what it is counted from.
const UNDER: [&str; 3] = ["below ", "under ", "beneath "];

/// What a depth is counted from.
const TOPS: [&str; 20] = [
    "ground",
    "grade",
    "surface",
    "yard",
    "slab",
    "apron",
    "paving",
    "pavement",
    "hardstanding",
    "concrete",
    "asphalt",
    "quay",
    "rail",
    "road",
    "street",
    "kerb",
    "curb",
    "floor",
    "lid",
    "forecourt",
];

/// Words that may stand between.
const BETWEEN: [&str; 10] =
    ["the", "our", "existing", "finished", "adjacent", "present", "concrete", "paved", "top of", "level of"];

/// Whether a depth is counted from the ground: by the words right behind it.
fn below_ground(text: &str, sentence: &Range<usize>, at: &Range<usize>) -> bool {
    let rest = text.get(at.end..sentence.end).unwrap_or_default().to_lowercase();
    let mut rest = rest.trim_start_matches([' ', '\n', '\u{a0}', '(', ',']);
    let begins = |rest: &str, word: &str| {
        rest.strip_prefix(word).is_some_and(|behind| !behind.starts_with(char::is_alphanumeric))
    };
    let down = begins(rest, "down") && !begins(rest, "down to");
    if down || DOWN.iter().any(|word| rest.starts_with(word)) {
        return true;
    }
    let Some(word) = UNDER.iter().find(|word| rest.starts_with(**word)) else { return false };
    rest = &rest[word.len()..];
    while let Some(word) = BETWEEN.iter().find(|word| begins(rest, word)) {
        // "The concrete" may be what it is counted from, or tell of what.
        let behind = rest[word.len()..].trim_start();
        if TOPS.contains(word) && !TOPS.iter().any(|top| begins(behind, top)) {
            break;
        }
        rest = &rest[word.len()..];
        rest = rest.trim_start();
    }
    TOPS.iter().any(|top| begins(rest, top))
}

/// Words that leave a number open.
const ROUGHLY: [&str; 9] =
    ["about ", "approx. ", "approximately ", "ca. ", "circa ", "roughly ", "around ", "some ", "~"];

/// A depth without the word that leaves it open, which takes no sign.
fn bare_depth(typed: &str) -> &str {
    ROUGHLY.iter().find_map(|word| typed.strip_prefix(word)).unwrap_or(typed).trim_start()
}

/// Whether a value is one number with its unit, which can take a sign.
fn is_single(typed: &str) -> bool {
    let typed = bare_depth(typed);
    let parts: Vec<&str> = typed.split_whitespace().collect();
    // "4 ft 9 in" is one number too.
    let in_feet = matches!(parts[..], [_, feet, _, inches] if feet.starts_with('f') && inches.starts_with("in"));
    typed.starts_with(|c: char| c.is_ascii_digit()) && (parts.len() <= 2 || in_feet)
}

/// The two sides of a place: "6.0 m by 2.4 m", "18 x 46 m". The first has the unit of the second where it has none.
fn parted(sides: &str) -> Vec<String> {
    let words = [" by ", " mal ", "x", "×", "X", "*"];
    let sides = sides.trim_start_matches(|c: char| !c.is_ascii_digit());
    let is_bare = |side: &str| !side.contains(|c: char| c.is_alphabetic() || matches!(c, '"' | '\''));
    let Some((one, two)) = words.iter().find_map(|word| sides.split_once(word)) else { return vec![sides.to_owned()] };
    let (one, two) = (one.trim(), two.trim());
    let unit = two.trim_start_matches(|c: char| c.is_ascii_digit() || matches!(c, '.' | ',')).trim();
    vec![if is_bare(one) { format!("{one} {unit}") } else { one.to_owned() }, two.to_owned()]
}

/// The keys that a quantity of a kind answers most often.
fn usual(dim: Dim, unit: &Unit) -> &'static [&'static str] {
    match dim {
        Dim::Area => &["surface.area", "containment.area"],
        Dim::Volume => &["spill.volume", "stream.volume_per_day", "containment.volume"],
        Dim::Flow => &["stream.flow", "inlet.rate", "asked.flow", "outlet.flow_cap"],
        Dim::Density if *unit == catalog::MG_L || *unit == catalog::UG_L => {
            &["limit.value", "stream.oil.mean", "stream.solids"]
        }
        Dim::Density => &["oil.density"],
        Dim::Temperature => &["water.coldest", "stream.temperature", "site.coldest_air", "water.warmest"],
        Dim::Length if *unit == catalog::UM => &["droplets.d50", "asked.droplet"],
        Dim::Length => &["inlet.invert", "site.ground", "site.max_length", "site.headroom"],
        Dim::Velocity => &["rain.intensity"],
        Dim::Time if [&catalog::YR].contains(&unit) => &["rain.return_period", "asked.interval"],
        Dim::Time if [&catalog::MONTH].contains(&unit) => &["asked.interval"],
        Dim::Time => &["rain.duration", "rain.concentration_time"],
        Dim::Ratio => &["stream.oil.emulsified", "rain.slope"],
        _ => &[],
    }
}

/// The place of a path among the cues: what enquiries speak of most stands first.
fn rank(path: &str) -> usize {
    CUES.iter().position(|cue| cue.path == path).unwrap_or(usize::MAX)
}

/// What the unit itself says: an intensity in mm/h is rain, a length in micrometres a droplet.
fn affinity(path: &str, unit: &Unit) -> u32 {
    let among = |units: &[&Unit]| units.iter().any(|other| **other == *unit);
    match path {
        "rain.intensity" if among(&[&catalog::IN_H, &catalog::MM_H, &catalog::L_S_HA]) => 4,
        "asked.droplet" if among(&[&catalog::UM]) => 2,
        "inlet.pump_power" if among(&[&catalog::HP, &catalog::KW]) => 2,
        "inlet.pump_speed" if among(&[&catalog::RPM]) => 2,
        "oil.density" if among(&[&catalog::KG_M3, &catalog::G_CM3]) => 2,
        "surface.area" if among(&[&catalog::ACRES, &catalog::HA]) => 2,
        _ => 0,
    }
}

/// How strongly the words around a find point to a key: strong ones thrice a weak one, near ones more than far ones.
fn points(text: &str, (sentence, before): (&Range<usize>, Option<&Range<usize>>), at: &Range<usize>, cue: &Cue) -> u32 {
    let low = text[sentence.clone()].to_lowercase();
    // Small letters may take other room: places are then near enough for what is near.
    let (from, to) = (at.start.saturating_sub(sentence.start), at.end.saturating_sub(sentence.start));
    let gap = |word: &str| {
        let places = low.match_indices(word).filter(|(k, _)| apart(&low, *k, word));
        places.map(|(k, _)| if k >= to { k - to } else { from.saturating_sub(k + word.len()) }).min()
    };
    let worth = |gap: usize| match gap {
        g if g <= NEAR => 3,
        g if g <= BESIDE => 2,
        _ => 1,
    };
    let near = |words: &[&str]| words.iter().filter_map(|word| gap(word)).map(worth).max().unwrap_or(0);
    let (strong, weak) = (near(cue.strong), near(cue.weak));
    let barred = cue.not.iter().filter_map(|word| gap(word)).map(worth).max().unwrap_or(0);
    // "2.5 m wide": the word right behind a number says which of several it is.
    let behind = low.get(to..).unwrap_or_default().trim_start();
    let own = cue.weak.iter().any(|word| behind.starts_with(word) && apart(behind, 0, word));
    // What stands above it counts where it names nothing itself.
    let told = before.filter(|_| strong == 0).map(|b| text[b.clone()].to_lowercase());
    let told = told
        .is_some_and(|told| cue.strong.iter().any(|word| told.match_indices(word).any(|(k, _)| apart(&told, k, word))));
    let sum = 3 * strong + weak + 2 * u32::from(told) + 3 * u32::from(own);
    sum.saturating_sub(2 * barred)
}

/// Whether a word stands for itself there, a plural included.
fn apart(text: &str, at: usize, word: &str) -> bool {
    let before = text[..at].chars().next_back();
    let behind = text[at + word.len()..].trim_start_matches('s');
    let starts = !word.starts_with(char::is_alphanumeric) || !before.is_some_and(char::is_alphanumeric);
    let ends = !word.ends_with(char::is_alphanumeric) || !behind.starts_with(char::is_alphanumeric);
    starts && ends
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_cue_points_to_a_key_that_holds_a_quantity() {
        for cue in CUES {
            let found = place(cue.path);
            let known = found.is_some_and(|found| found.dim().is_some() || cue.path == "samples.results");
            assert!(known || cue.path == "limit.value", "{}: {:?}", cue.path, found.map(|f| f.key.kind));
        }
    }
}
