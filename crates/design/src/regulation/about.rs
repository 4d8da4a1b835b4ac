//! What each method is called, where it comes from, and what it leaves out.

use crate::enquiry::blocks::Regulator;
use stillrise_handbook::page::Source;
use stillrise_handbook::sources::{
    API_421, API_421_FACTOR, API_421_PLATES, DIESEL_EXAMPLE, EN_858_NOMINAL, EN_858_SIZES, EN_858_SLUDGE,
    EN_858_TABLES, FAA_DRAINAGE, HDS_2, NEH_10, NEH_15, NH_1504, NZ_PETROLEUM, NZ_TP10, ONE_EQUATION, PPG3, SCHUELER,
    SWMMWW, TR_55, UFGS_PLATES,
};

/// Its title in print.
#[must_use]
pub fn title(method: Regulator) -> &'static str {
    match method {
        Regulator::Api421 => "Basin of parallel channels, API Publication 421",
        Regulator::En858 => "Nominal size, EN 858-2",
        Regulator::Ppg3 => "Nominal size, PPG3 (withdrawn)",
        Regulator::Washington => "Basin or plates for 60 µm, Washington State",
        Regulator::NewZealand => "Basin for 60 µm, New Zealand petroleum sites",
        Regulator::GuideSpecification => "Plates for 20 µm and detention, US guide specifications",
        Regulator::ResidenceTime => "Volume for a residence time",
        Regulator::OverflowRate => "Surface for an overflow rate",
        Regulator::Rational => "Peak flow, rational method",
        Regulator::Faa => "Peak flow, rational method with the airfield time of concentration",
        Regulator::Tr55 => "Peak flow, curve number and graphical method, TR-55",
        Regulator::WaterQuality => "Water-quality volume and flow, with a bypass",
    }
}

/// Where it comes from.
#[must_use]
pub fn sources(method: Regulator) -> Vec<&'static Source> {
    match method {
        Regulator::Api421 => vec![&API_421, &API_421_FACTOR, &API_421_PLATES],
        Regulator::En858 => vec![&EN_858_NOMINAL, &EN_858_TABLES, &EN_858_SIZES, &EN_858_SLUDGE],
        Regulator::Ppg3 => vec![&PPG3],
        Regulator::Washington => vec![&SWMMWW],
        Regulator::NewZealand => vec![&NZ_PETROLEUM, &NZ_TP10, &API_421_FACTOR],
        Regulator::GuideSpecification => vec![&UFGS_PLATES],
        Regulator::ResidenceTime => vec![&DIESEL_EXAMPLE],
        Regulator::OverflowRate => vec![&ONE_EQUATION, &API_421_PLATES],
        Regulator::Rational => vec![&HDS_2],
        Regulator::Faa => vec![&FAA_DRAINAGE, &HDS_2],
        Regulator::Tr55 => vec![&TR_55, &NEH_10, &NEH_15, &HDS_2],
        Regulator::WaterQuality => vec![&NH_1504, &SCHUELER, &TR_55],
    }
}

const DISTRIBUTION: &str =
    "The droplets that really come: it takes all as of one size, and says nothing of what passes of the finer ones.";
const CONTENT: &str = "What leaves: no content in the effluent follows from it, so that it shows no limit as kept; emulsified and dissolved oil are not in it.";
const SOLIDS: &str = "Room for sludge, and what it takes of the depth before it is pumped out.";
const LEVELS: &str = "Levels: what head the unit loses, how thick oil may stand, where alarm and closure act.";
const TURBULENCE: &str = "Turbulence, short-circuiting and how the flow is spread: there is no factor for them.";
const FEED: &str = "Pumps and valves ahead that break the oil.";
const STORES: &str = "How much oil comes between pump-outs, and a spill.";
const YEAR: &str = "All rain but one design event: how often the unit is overrun in a year is not in it.";

/// What it leaves out, in sentences.
#[must_use]
pub fn leaves_out(method: Regulator) -> &'static [&'static str] {
    match method {
        Regulator::Api421 => &[DISTRIBUTION, CONTENT, SOLIDS, LEVELS, FEED],
        Regulator::En858 => &[
            "A calculation of separation: the size rests on a type test at that flow, with light oil and clean water.",
            "What leaves in service; detergents are one factor of 2, emulsions that last are outside its scope.",
            LEVELS,
            FEED,
            YEAR,
        ],
        Regulator::Ppg3 => &[
            "Oil's density, temperature and droplets: the size goes by the paved area alone.",
            "Wash and process water.",
            "The site's own rain: one intensity, 65 mm/h, stands for all.",
            LEVELS,
            FEED,
        ],
        Regulator::Washington => &[
            DISTRIBUTION,
            "How the content of 15 mg/L in any sample, 10 mg/L on average, that it states as its goal follows from the size.",
            SOLIDS,
            LEVELS,
            FEED,
        ],
        Regulator::NewZealand => &[
            DISTRIBUTION,
            "How the content of 15 mg/L that it states as its goal follows from the size.",
            SOLIDS,
            FEED,
            YEAR,
        ],
        Regulator::GuideSpecification => &[
            "An equation: droplet, detention and proof by test are asked for, not how they are worked.",
            "Fouling of the plates between cleanings, and unequal flow between them.",
            LEVELS,
        ],
        Regulator::ResidenceTime => &[
            "Rise and surface: the same volume deep and narrow lets pass what shallow and wide catches, and a time alone does not tell them apart.",
            TURBULENCE,
            DISTRIBUTION,
            CONTENT,
            SOLIDS,
            LEVELS,
            STORES,
        ],
        Regulator::OverflowRate => &[TURBULENCE, DISTRIBUTION, CONTENT, SOLIDS, LEVELS, STORES],
        Regulator::Rational => &[
            "Storage on the surfaces and in the pipes, and the run of the flow with time: it gives a peak alone.",
            "Rain that is not even over the area.",
            "Water other than rain.",
            YEAR,
        ],
        Regulator::Faa => &[
            "Gutters and pipes: all of the path counts as flow over a surface.",
            "Storage on the surfaces and in the pipes.",
            "Water other than rain.",
            YEAR,
        ],
        Regulator::Tr55 => &[
            "Small rains: the curve number was made for rains of an inch and more.",
            "More than one path, and times below 0.1 h.",
            "Water other than rain.",
            YEAR,
        ],
        Regulator::WaterQuality => &[
            "What the rain past the unit carries: all oil that comes with it goes on.",
            "Droplets and content: a flow to treat, not how far.",
            "Water other than rain, and a spill while it rains.",
        ],
    }
}

/// How far the coefficients were read, in one sentence, where they were not.
#[must_use]
pub fn standing(method: Regulator) -> Option<&'static str> {
    match method {
        Regulator::Api421 => {
            Some("The rows of the turbulence factor are recalled; two published examples agree with them.")
        }
        Regulator::Washington => {
            Some("Of the manual the frame alone was read; factor, proportions, forebay and viscosity are recalled.")
        }
        Regulator::OverflowRate => Some("Of such sheets the title pages alone were read; their formulas are recalled."),
        Regulator::NewZealand => {
            Some("The worked retail example was read; the factor's table behind its graph is recalled.")
        }
        Regulator::En858 => Some("The standard itself was not read: clauses and tables are as other texts quote them."),
        Regulator::Ppg3 => Some("Withdrawn; formulas as a trade text quotes them."),
        Regulator::Faa => Some("The law as drainage manuals quote it."),
        Regulator::GuideSpecification
        | Regulator::ResidenceTime
        | Regulator::Rational
        | Regulator::Tr55
        | Regulator::WaterQuality => None,
    }
}
