//! Words of the trade in a text (long because it is one list of what people call things).

use crate::{Thing, What};
use core::ops::Range;

/// What people write, and the word of an enquiry for it. Longer names stand for themselves where they hold a shorter one.
/// Common usage; the words on the right are those of the handbook and of the keys.
const NAMES: &[(Thing, &str, &[&str])] = &[
    (
        Thing::Oil,
        "diesel",
        &["diesel", "diesel fuel", "gas oil", "gasoil", "dieselkraftstoff", "derv", "hsd", "hsd diesel"],
    ),
    (Thing::Oil, "gasoline", &["gasoline", "petrol", "benzin", "motor spirit"]),
    (Thing::Oil, "jet-fuel", &["jet fuel", "jet a", "jet a-1", "jet-a", "kerosene", "kerosin", "avtur"]),
    (Thing::Oil, "heating-oil", &["heating oil", "fuel oil no. 2", "heizöl"]),
    (Thing::Oil, "heavy-fuel-oil", &["heavy fuel oil", "hfo", "bunker", "fuel oil no. 6", "no. 6 oil", "schweröl"]),
    (Thing::Oil, "engine-oil", &["engine oil", "motor oil", "lube oil", "lubricating oil", "motoröl", "engine oils"]),
    (Thing::Oil, "used-engine-oil", &["used oil", "waste oil", "used engine oil", "altöl"]),
    (Thing::Oil, "hydraulic-oil-46", &["hydraulic oil", "hydraulic fluid", "hydrauliköl"]),
    (Thing::Oil, "gear-oil", &["gear oil", "transmission oil", "getriebeöl"]),
    (
        Thing::Oil,
        "insulating-oil",
        &["transformer oil", "insulating oil", "mineral insulating oil", "trafoöl", "transformatorenöl"],
    ),
    (Thing::Oil, "natural-ester", &["natural ester", "ester fluid"]),
    (
        Thing::Oil,
        "vegetable-oil",
        &["vegetable oil", "soybean oil", "rapeseed oil", "palm oil", "sunflower oil", "edible oil"],
    ),
    (Thing::Oil, "biodiesel", &["biodiesel", "b100", "fame"]),
    (Thing::Oil, "crude-medium", &["crude", "crude oil"]),
    (Thing::Oil, "spindle-oil", &["spindle oil", "neat cutting oil"]),
    (
        Thing::Chemical,
        "hot-water",
        &["hot water", "high-pressure wash", "pressure washer", "steam cleaner", "hochdruckreiniger"],
    ),
    (Thing::Chemical, "quick-break-detergent", &["quick-break", "quick break", "splitting detergent"]),
    (Thing::Chemical, "soap", &["soap", "hand cleaner"]),
    (
        Thing::Chemical,
        "alkaline-degreaser",
        &[
            "degreaser",
            "alkaline cleaner",
            "alkaline degreaser",
            "kaltreiniger",
            "caustic",
            "caustic soda",
            "lye",
            "alkalischer reiniger",
            "alkaline wash",
        ],
    ),
    (
        Thing::Chemical,
        "surfactant-heavy-detergent",
        &["detergent", "shampoo", "surfactant", "tenside", "traffic film remover", "non-ionic", "drying agent"],
    ),
    (Thing::Chemical, "foam-agent", &["foam", "afff", "fire-fighting foam", "fluorine-free foam"]),
    (Thing::Chemical, "soluble-coolant", &["coolant", "cutting fluid", "soluble oil", "emulsion", "kühlschmierstoff"]),
    (Thing::Chemical, "glycol", &["glycol", "antifreeze", "de-icer", "deicer", "de-icing fluid"]),
    (Thing::Chemical, "brake-fluid", &["brake fluid"]),
    (Thing::Chemical, "urea-solution", &["urea", "def fluid", "exhaust fluid"]),
    (Thing::Chemical, "alcohol-fuel", &["e85", "ethanol", "methanol"]),
    (Thing::Chemical, "solvent", &["solvent", "parts washer", "thinner", "mineral spirits"]),
    (Thing::Chemical, "brine", &["brine", "road salt", "de-icing salt"]),
    (Thing::Surface, "concrete", &["concrete", "concrete pad", "concrete slab", "beton", "rcc", "concreted"]),
    (Thing::Surface, "asphalt", &["asphalt", "tarmac", "blacktop", "asphaltiert"]),
    (Thing::Surface, "roof", &["roof", "roofs", "dach"]),
    (Thing::Surface, "gravel-yard", &["gravel", "crushed stone", "schotter"]),
    (Thing::Surface, "brick", &["brick paving", "block paving", "pavers"]),
    (Thing::Surface, "railroad-yard", &["ballast"]),
    (
        Thing::Pollutant,
        "oil and grease",
        &[
            "oil and grease",
            "oil & grease",
            "o&g",
            "fog",
            "hem",
            "oils and greases",
            "oils and fats",
            "oil and fat",
            "oils, fats and grease",
            "fats, oils and grease",
            "lipophilic substances",
            "oils & fats",
        ],
    ),
    (
        Thing::Pollutant,
        "petroleum hydrocarbons",
        &["tph", "petroleum hydrocarbons", "total petroleum hydrocarbons", "sgt-hem"],
    ),
    (
        Thing::Pollutant,
        "hydrocarbon index",
        &[
            "hydrocarbon index",
            "hydrocarbon oil index",
            "c10-c40",
            "c10 to c40",
            "kohlenwasserstoffindex",
            "mineral oil",
            "hydrocarbons",
            "kohlenwasserstoffe",
            "kohlenwasserstoff-index",
        ],
    ),
    (Thing::Pollutant, "free oil", &["free oil"]),
    (Thing::Pollutant, "sheen", &["sheen", "visible film", "no visible oil", "film"]),
    (
        Thing::Pollutant,
        "suspended solids",
        &["tss", "suspended solids", "total suspended solids", "abfiltrierbare stoffe"],
    ),
    (Thing::Pollutant, "settleable solids", &["settleable solids", "imhoff", "absetzbare stoffe"]),
    (Thing::Pollutant, "btex", &["btex", "toluene"]),
    (Thing::Pollutant, "benzene", &["benzene"]),
    (Thing::Pollutant, "cod", &["cod", "chemical oxygen demand", "csb"]),
    (Thing::Pollutant, "bod", &["bod", "bod5", "bsb5"]),
    (Thing::Pollutant, "metals", &["metals", "zinc", "copper", "chromium", "lead", "nickel", "heavy metals"]),
    (Thing::Pollutant, "pah", &["pah", "pahs"]),
    (Thing::Pollutant, "pfas", &["pfas", "pfos"]),
    (Thing::Pollutant, "surfactants", &["mbas"]),
    (Thing::Pollutant, "ammonia", &["ammonia", "ammonium"]),
    (Thing::Pollutant, "chloride", &["chloride"]),
    (Thing::Pollutant, "phenols", &["phenol", "phenols"]),
    (
        Thing::Statistic,
        "daily maximum",
        &[
            "daily maximum",
            "daily max",
            "maximum daily",
            "tageshöchstwert",
            "daily composite",
            "24 h composite",
            "average of the day",
        ],
    ),
    (
        Thing::Statistic,
        "monthly average",
        &["monthly average", "monthly mean", "30-day average", "monatsmittel", "monthly avg", "average of the month"],
    ),
    (
        Thing::Statistic,
        "any sample",
        &[
            "any sample",
            "grab sample",
            "at any time",
            "any grab",
            "stichprobe",
            "any single sample",
            "random sample",
            "spot sample",
            "at all times",
            "jederzeit",
            "single samples",
        ],
    ),
    (Thing::Statistic, "rig test", &["class i", "class 1", "type test", "en 858 test"]),
    (
        Thing::Pump,
        "progressive-cavity",
        &["progressive cavity", "progressing cavity", "eccentric screw", "exzenterschneckenpumpe"],
    ),
    (Thing::Pump, "diaphragm", &["diaphragm pump", "membrane pump", "double diaphragm"]),
    (Thing::Pump, "submersible", &["submersible", "submersible pump", "sump pump", "tauchpumpe"]),
    (Thing::Pump, "centrifugal", &["centrifugal", "centrifugal pump", "kreiselpumpe"]),
    (Thing::Pump, "lobe", &["lobe pump", "rotary lobe"]),
    (Thing::Pump, "vane", &["vane pump"]),
    (
        Thing::Facility,
        "bus-depot",
        &["bus depot", "bus garage", "vehicle yard", "motor pool", "fleet yard", "tram depot", "betriebshof", "depot"],
    ),
    (Thing::Facility, "truck-wash", &["truck wash"]),
    (Thing::Facility, "wash-bay", &["wash bay", "car wash", "vehicle wash", "wash place", "waschplatz"]),
    (Thing::Facility, "washrack", &["washrack", "wash rack", "tank wash"]),
    (
        Thing::Facility,
        "fuel-station",
        &["fuel station", "petrol station", "gas station", "filling station", "forecourt", "tankstelle"],
    ),
    (
        Thing::Facility,
        "fuel-terminal",
        &["fuel terminal", "loading rack", "tank farm", "fuel farm", "fuel depot", "tank terminal", "fuel rack"],
    ),
    (
        Thing::Facility,
        "transformer-yard",
        &["transformer yard", "substation", "transformers", "switchyard", "umspannwerk"],
    ),
    (
        Thing::Facility,
        "workshop",
        &["workshop", "maintenance hangar", "garage", "werkstatt", "maintenance shop", "machine shop", "repair shop"],
    ),
    (Thing::Facility, "parking-lot", &["parking lot", "car park", "parkplatz"]),
    (Thing::Facility, "tank-bottom-draw", &["tank bottoms", "water draw"]),
    (Thing::Facility, "bilge", &["bilge"]),
    (
        Thing::Receiver,
        "storm water",
        &[
            "storm drain",
            "storm sewer",
            "river",
            "creek",
            "stream nearby",
            "ditch",
            "harbour",
            "harbor",
            "soakaway",
            "vorfluter",
            "surface water",
            "canal",
            "lake",
            "dock",
            "graben",
            "brook",
            "nallah",
            "nala",
            "roadside drain",
        ],
    ),
    (
        Thing::Receiver,
        "sanitary sewer",
        &[
            "sanitary sewer",
            "city sewer",
            "foul sewer",
            "public sewer",
            "sewer",
            "potw",
            "schmutzwasserkanal",
            "kanalisation",
        ],
    ),
    (Thing::Feed, "gravity", &["by gravity", "gravity fed", "gravity feed", "freispiegel"]),
    (Thing::Feed, "pump", &["pumped", "pump feeds", "is pumped", "gepumpt"]),
];

/// Words of the trade in a text, the longest first where one holds another.
pub(crate) fn words(text: &str, low: &str) -> Vec<(Range<usize>, What)> {
    let mut found: Vec<(Range<usize>, What)> = Vec::new();
    let mut names: Vec<(Thing, &str, &str)> =
        NAMES.iter().flat_map(|(thing, word, names)| names.iter().map(move |name| (*thing, *word, *name))).collect();
    names.sort_by(|a, b| b.2.len().cmp(&a.2.len()).then(a.2.cmp(b.2)));
    for (thing, word, name) in names {
        for at in memchr::memmem::find_iter(low.as_bytes(), name) {
            let end = at + name.len();
            let before = low[..at].chars().next_back();
            let behind = &low[end..];
            // A plural belongs to it.
            let plural = if behind.starts_with("es") { 2 } else { usize::from(behind.starts_with('s')) };
            let closed = |rest: &str| !rest.starts_with(char::is_alphanumeric);
            let whole = closed(behind) || plural > 0 && closed(&behind[plural..]);
            let apart = !before.is_some_and(|c| c.is_alphanumeric() || c == '-');
            let taken = found.iter().any(|(other, _)| other.start < end && at < other.end);
            if whole && apart && !taken {
                found.push((at..end, What::Word(thing, word.to_owned())));
            }
        }
    }
    found.extend(ph(text, low));
    found.sort_by_key(|(at, _)| at.start);
    found
}

/// The same text in small letters, byte for byte: a letter whose small form has another length stays as it is.
pub(crate) fn lower(text: &str) -> String {
    let small = |c: char| {
        let mut low = c.to_lowercase();
        match (low.next(), low.next()) {
            (Some(one), None) if one.len_utf8() == c.len_utf8() => one,
            _ => c,
        }
    };
    text.chars().map(small).collect()
}

/// Ranges of pH: "pH 6 to 9", "pH between 6.5 and 8.5", "pH 6-9".
fn ph(text: &str, low: &str) -> Vec<(Range<usize>, What)> {
    let mut found = Vec::new();
    for (at, _) in low.match_indices("ph") {
        let before = low[..at].chars().next_back();
        if before.is_some_and(char::is_alphanumeric) {
            continue;
        }
        let mut rest = &text[at + 2..];
        let blank = |t: &str| t.len() - t.trim_start_matches([' ', ':', '=', '\u{a0}']).len();
        rest = &rest[blank(rest)..];
        for word in ["between", "range", "of", "from", "zwischen", "von"] {
            if rest.get(..word.len()).is_some_and(|head| head.eq_ignore_ascii_case(word)) {
                rest = &rest[word.len()..];
                rest = &rest[blank(rest)..];
            }
        }
        let number = |t: &str| {
            let len = t.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ','))).unwrap_or(t.len());
            let value: Option<f64> = t[..len].trim_end_matches(['.', ',']).replace(',', ".").parse().ok();
            value.filter(|v| (0.0..=14.0).contains(v)).map(|v| (v, t[..len].trim_end_matches(['.', ',']).len()))
        };
        let Some((first, len)) = number(rest) else { continue };
        let mut behind = &rest[len..];
        behind = &behind[blank(behind)..];
        let mark = ["to", "and", "bis", "und", "–", "-", "—", "..."].iter().find(|mark| behind.starts_with(**mark));
        let Some(mark) = mark else { continue };
        behind = &behind[mark.len()..];
        behind = &behind[blank(behind)..];
        let Some((second, len)) = number(behind) else { continue };
        let end = text.len() - behind.len() + len;
        if first < second {
            found.push((at..end, What::Ph(format!("{first}-{second}"))));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillrise_handbook::fluids::{chemicals, facilities, oils, pollutants};
    use stillrise_handbook::rain::surfaces;
    use stillrise_handbook::separation::pumps;

    /// What stands on the right is a word that the handbook knows.
    #[test]
    fn every_name_leads_to_a_word_of_the_handbook() {
        for (thing, word, names) in NAMES {
            let known = match thing {
                Thing::Oil => oils::oil(word).is_some(),
                Thing::Chemical => chemicals::chemical(word).is_some(),
                Thing::Surface => surfaces::surface(word).is_some(),
                Thing::Pollutant => pollutants::pollutant(word).is_some(),
                Thing::Pump => pumps::pump(word).is_some(),
                Thing::Facility => facilities::facility(word).is_some() || *word == "truck-wash",
                Thing::Statistic | Thing::Receiver | Thing::Feed => true,
            };
            assert!(known, "{word}");
            assert!(names.iter().all(|name| name.to_lowercase() == *name), "{word}");
        }
    }

    #[test]
    fn the_longer_name_stands_for_itself() {
        let text = "Used engine oil and diesel; oil & grease (HEM) below 10, pH between 6.5 and 9, sewers.";
        let found = words(text, &lower(text));
        let said: Vec<String> = found
            .into_iter()
            .map(|(_, what)| match what {
                What::Word(_, word) | What::Ph(word) => word,
                _ => String::new(),
            })
            .collect();
        assert_eq!(said, ["used-engine-oil", "diesel", "oil and grease", "oil and grease", "6.5-9", "sanitary sewer"]);
    }
}
