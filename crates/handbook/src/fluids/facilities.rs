//! Facilities: what oil, solids and droplets a kind of site sends, where nobody has measured.
//! Long because it is one list.
//!
//! Few of these figures are published; the rest is judgement and says so. They are defaults to
//! be asked about, never findings. Where a site's own data exist, they replace all of it.
//!
//! Runoff of a whole land use has measured percentiles, [`super::land_uses`]: housing, highways, shops, industrial
//! estates and open land take them. A car park is a part of a commercial land use and dirtier than its roofs. A
//! forecourt, a vehicle yard, a workshop, a wash, a loading rack or a transformer yard is none of them, however
//! much housing or industry lies around it: there the judgement stands.

use super::land_uses::{
    COMMERCIAL, COMMERCIAL_SOLIDS, FREEWAY, FREEWAY_SOLIDS, INDUSTRIAL, INDUSTRIAL_SOLIDS, OPEN_SPACE, RESIDENTIAL,
    RESIDENTIAL_SOLIDS,
};
use crate::page::Source;
use crate::sources::{BILGE_GUIDE, FUEL_STORAGE_DROPS, JUDGEMENT, STORMWATER_OIL, TEXTBOOK_OILS, TM_5_814_9};
use crate::spread::Spread;
use stillrise_units::catalog::{MG_L, ONE, UM};

/// One kind of facility.
#[derive(Debug)]
pub struct Facility {
    /// Its word in files.
    pub word: &'static str,
    /// Other words for it.
    pub also: &'static [&'static str],
    /// Its name in print.
    pub title: &'static str,
    /// Oil in the water that arrives, mean of an event or a shift.
    pub oil: Spread,
    /// Suspended solids in the water that arrives.
    pub solids: Spread,
    /// Droplet diameter below which half of the oil's volume lies.
    pub droplet_d50: Spread,
    /// Geometric standard deviation of the droplet diameters.
    pub spread: Spread,
    /// What a reader should know.
    pub note: &'static str,
}

/// Kinds of place whose figures are those of rain off a land use, and of no other water there.
const LAND_USES: [&str; 6] = ["open-space", "residential", "highway", "industrial", "commercial", "parking-lot"];

/// Yards whose figures are those of what rain and drips wash off them.
const YARDS: [&str; 4] = ["bus-depot", "fuel-station", "fuel-terminal", "transformer-yard"];
/// Places whose figures are those of the water that vehicles are washed with.
const WASHES: [&str; 2] = ["wash-bay", "washrack"];

impl Facility {
    /// The row whose oil and solids a water takes in which something is washed there: on a yard that of a wash bay.
    #[must_use]
    pub fn wash(&'static self) -> &'static Facility {
        if YARDS.contains(&self.word) { facility(WASHES[0]).unwrap_or(self) } else { self }
    }

    /// The row whose oil and solids the rain takes there: beside a wash that of a vehicle yard.
    #[must_use]
    pub fn rain(&'static self) -> &'static Facility {
        if WASHES.contains(&self.word) { facility(YARDS[0]).unwrap_or(self) } else { self }
    }

    /// Whether its oil and solids are those of rain off a land use: they say nothing of a process or wash water there.
    #[must_use]
    pub fn is_land_use(&self) -> bool {
        LAND_USES.contains(&self.word)
    }

    /// All sources of this facility, each once.
    #[must_use]
    pub fn sources(&self) -> Vec<&'static Source> {
        let mut sources: Vec<&'static Source> = Vec::new();
        for source in [&self.oil, &self.solids, &self.droplet_d50, &self.spread].map(|s| s.source) {
            if !sources.contains(&source) {
                sources.push(source);
            }
        }
        sources
    }
}

const fn judged(low: f64, typical: f64, high: f64) -> Spread {
    Spread::new(low, typical, high, &MG_L, &JUDGEMENT)
}

/// A median diameter that is uncertain by a factor of two either way, as long as none is measured.
const fn drops(typical: f64) -> Spread {
    Spread::new(0.5 * typical, typical, 2.0 * typical, &UM, &JUDGEMENT)
        .noted("not measured; uncertain by a factor of two either way")
}

/// Widths of measured oil-in-water distributions lie between 1.5 and 3.
const WIDTH: Spread = Spread::new(1.5, 2.0, 3.0, &ONE, &JUDGEMENT).noted("not measured");

/// All facilities, the cleanest first.
pub static FACILITIES: &[Facility] = &[
    Facility {
        word: "open-space",
        also: &["park"],
        title: "Park and open land",
        oil: OPEN_SPACE.oil(),
        solids: judged(5.0, 20.0, 100.0),
        droplet_d50: drops(100.0),
        spread: WIDTH,
        note: "Next to no oil: two thirds of the samples held none that could be measured. Ask why a separator is wanted.",
    },
    Facility {
        word: "transformer-yard",
        also: &["substation"],
        title: "Transformer yard",
        oil: judged(0.5, 2.0, 15.0)
            .noted("rain on pits is nearly clean; a leak sets the high end and the spill the design"),
        solids: judged(5.0, 20.0, 100.0),
        droplet_d50: drops(120.0),
        spread: WIDTH,
        note: "The spill and the fire water govern, not the daily load. A pump that empties the pit sets flow and droplets.",
    },
    Facility {
        word: "residential",
        also: &["housing"],
        title: "Residential street and parking",
        oil: Spread::new(RESIDENTIAL.oil[0], 4.1, RESIDENTIAL.oil[4], &MG_L, &STORMWATER_OIL).noted(
            "4.1 mg/L is the published mean of seven storms; ends: lower quartile and 95th percentile of 834 samples of \
            housing in the National Stormwater Quality Database, whose log-normal has a mean of 4.0 and a median of 2.1",
        ),
        solids: RESIDENTIAL_SOLIDS,
        droplet_d50: drops(100.0),
        spread: WIDTH,
        note: "Already below common limits: a separator here catches spills, it does not reduce the load.",
    },
    Facility {
        word: "highway",
        also: &["road"],
        title: "Highway",
        oil: FREEWAY.oil(),
        solids: FREEWAY_SOLIDS,
        droplet_d50: drops(100.0),
        spread: WIDTH,
        note: "Much of the oil sits on fine solids. The largest of 164 events held 30 mg/L; a spill is not among them.",
    },
    Facility {
        word: "industrial",
        also: &["industrial-estate"],
        title: "Industrial estate, roofs and roads together",
        oil: INDUSTRIAL.oil(),
        solids: INDUSTRIAL_SOLIDS,
        droplet_d50: drops(100.0),
        spread: WIDTH,
        note: "Rain from the whole estate. A yard on it where vehicles are fuelled, kept or washed is a facility of its own.",
    },
    Facility {
        word: "commercial",
        also: &["shopping-centre"],
        title: "Shops and offices, roofs and lots together",
        oil: COMMERCIAL.oil(),
        solids: COMMERCIAL_SOLIDS,
        droplet_d50: drops(100.0),
        spread: WIDTH,
        note: "Most events are far below 15 mg/L, one in thirteen above. The lot alone is dirtier than the whole: `parking-lot`.",
    },
    Facility {
        word: "parking-lot",
        also: &["car-park"],
        title: "Parking lot",
        oil: Spread::new(COMMERCIAL.oil[1], 15.3, 50.0, &MG_L, &STORMWATER_OIL).noted(
            "15.3 mg/L is the published mean of seven storms; low end: median of 467 samples of commercial land use in the \
            National Stormwater Quality Database, where roofs dilute the lots; high end by judgement",
        ),
        solids: COMMERCIAL_SOLIDS,
        droplet_d50: drops(100.0),
        spread: WIDTH,
        note: "The influent stands near the usual limit of 15 mg/L already; what arrives resembles used crankcase oil.",
    },
    Facility {
        word: "fuel-station",
        also: &["forecourt", "fuelling-apron"],
        title: "Fuel station forecourt",
        oil: judged(5.0, 20.0, 100.0).noted("a study of retail outlets exists (1994); its numbers were not read"),
        solids: judged(20.0, 80.0, 300.0),
        droplet_d50: drops(100.0),
        spread: WIDTH,
        note: "A spill at the dispenser or the tanker governs. Gasoline leaves dissolved aromatics that pass.",
    },
    Facility {
        word: "bus-depot",
        also: &["vehicle-yard", "maintenance-yard"],
        title: "Bus depot, vehicle yard",
        oil: Spread::new(20.0, 50.0, 100.0, &MG_L, &TEXTBOOK_OILS).noted("20 to 100 mg/L and more, as recalled"),
        solids: judged(50.0, 200.0, 1000.0),
        droplet_d50: drops(80.0),
        spread: WIDTH,
        note: "Ask for washing on the yard: detergent changes everything.",
    },
    Facility {
        word: "fuel-terminal",
        also: &["fuel-rack", "tank-farm"],
        title: "Fuel terminal and loading rack",
        oil: judged(10.0, 50.0, 150.0).noted("150 mg/L of diesel is one published design assumption"),
        solids: judged(20.0, 60.0, 300.0),
        droplet_d50: Spread::new(60.0, 123.0, 250.0, &UM, &FUEL_STORAGE_DROPS)
            .noted("fitted to two recalled points of one site; never a silent default"),
        spread: Spread::new(1.45, 2.0, 3.0, &ONE, &FUEL_STORAGE_DROPS)
            .noted("1.45 fits the two recalled points, which is narrow; the rest by judgement"),
        note: "The largest compartment at the rack sets the spill. Keep tank bottoms out of the rain system.",
    },
    Facility {
        word: "workshop",
        also: &["garage"],
        title: "Workshop floor",
        oil: judged(50.0, 150.0, 500.0),
        solids: judged(50.0, 300.0, 2000.0),
        droplet_d50: drops(50.0),
        spread: WIDTH,
        note: "Floor cleaner, antifreeze and solvent come with it as a rule: ask for each.",
    },
    Facility {
        word: "wash-bay",
        also: &["truck-wash", "bus-wash"],
        title: "Vehicle wash bay",
        oil: Spread::new(50.0, 200.0, 1000.0, &MG_L, &TEXTBOOK_OILS).noted("fifty to thousands of mg/L, as recalled"),
        solids: Spread::new(100.0, 1000.0, 20000.0, &MG_L, &TM_5_814_9)
            .noted("100 to more than 20 000 mg/L at vehicle washes"),
        droplet_d50: Spread::new(5.0, 20.0, 50.0, &UM, &JUDGEMENT)
            .noted("with detergent, often two humps and a stable tail below 15 µm; not measured"),
        spread: WIDTH,
        note: "Solids first: a grit trap ahead. With detergent much of the oil does not rise at all.",
    },
    Facility {
        word: "washrack",
        also: &["tactical-washrack"],
        title: "Washrack for tactical and earth-moving vehicles",
        oil: judged(20.0, 100.0, 500.0),
        solids: Spread::new(500.0, 5000.0, 20000.0, &MG_L, &TM_5_814_9)
            .noted("up to more than 20 000 mg/L; low and typical by judgement"),
        droplet_d50: drops(40.0),
        spread: WIDTH,
        note: "Soil governs: settling basins ahead, or the separator fills within days.",
    },
    Facility {
        word: "tank-bottom-draw",
        also: &["water-draw"],
        title: "Water drawn from tank bottoms",
        oil: judged(100.0, 1000.0, 10000.0),
        solids: judged(20.0, 100.0, 1000.0),
        droplet_d50: drops(30.0),
        spread: WIDTH,
        note: "Long contact: the water is saturated with what dissolves, salty, and often holds an interface emulsion. \
            Draw slowly; do not mix it with rain.",
    },
    Facility {
        word: "bilge",
        also: &["bilge-water"],
        title: "Bilge water brought ashore",
        oil: Spread::new(1000.0, 10000.0, 50000.0, &MG_L, &BILGE_GUIDE)
            .noted("about 1 % by a military handbook; ends by judgement"),
        solids: judged(50.0, 200.0, 1000.0),
        droplet_d50: Spread::new(5.0, 15.0, 60.0, &UM, &BILGE_GUIDE)
            .noted("sheared emulsions have a mean below 15 µm and do not separate; high end by judgement"),
        spread: WIDTH,
        note: "Detergents and pumps have emulsified it: gravity is the first step only.",
    },
];

/// The facility of this word.
#[must_use]
pub fn facility(word: &str) -> Option<&'static Facility> {
    FACILITIES.iter().find(|f| super::same(f.word, word) || f.also.iter().any(|also| super::same(also, word)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn words_are_used_once() {
        let words: Vec<_> =
            FACILITIES.iter().flat_map(|f| core::iter::once(f.word).chain(f.also.iter().copied())).collect();
        assert_eq!(words.iter().collect::<BTreeSet<_>>().len(), words.len());
        assert_eq!(facility("vehicle-yard").map(|f| f.word), Some("bus-depot"));
        assert!(facility("moon").is_none());
    }

    #[test]
    fn land_uses_are_places_of_the_list() {
        assert!(LAND_USES.iter().all(|word| facility(word).is_some_and(Facility::is_land_use)));
        assert_eq!(facility("wash-bay").map(Facility::is_land_use), Some(false));
    }

    #[test]
    fn spreads_are_ordered_and_of_the_right_size() {
        for f in FACILITIES {
            for spread in [&f.oil, &f.solids, &f.droplet_d50, &f.spread] {
                assert!(spread.is_ordered() && spread.low > 0.0, "{}: {spread}", f.word);
            }
            assert!(f.oil.high_si() <= 50.0 && f.solids.high_si() <= 20.0, "{}", f.word);
            assert!(f.droplet_d50.low_si() >= 4.9e-6 && f.droplet_d50.high_si() <= 5e-4, "{}", f.word);
            assert!(f.spread.low > 1.0 && f.spread.high <= 4.0, "{}", f.word);
            assert!(!f.sources().is_empty());
        }
    }

    /// Stormwater means of Richmond, California: 4.1 and 15.3 mg/L.
    #[test]
    fn published_means_are_kept() {
        let oil = |word| facility(word).map_or(f64::NAN, |f| f.oil.typical);
        assert_eq!((oil("residential"), oil("parking-lot")), (4.1, 15.3));
    }
}
