//! When to pump out: the published rules, which contradict each other by a factor of ten.
//!
//! None is *the* rule. A county's or city's rule binds there; a site elsewhere starts from the
//! general ones and takes the most stringent. Show all of them, converted for the vessel at hand.

use crate::page::Source;
use crate::sources::{CHARLOTTE_NC, DALLAS_TRAPS, EN_858_2_UPKEEP, MIL_HDBK_1138, MOUNT_VERNON_TRAPS, THURSTON_COUNTY};
use stillrise_units::catalog::IN;
use stillrise_units::{Area, Length, Typed, Unit, Volume};

/// How much may collect before it must be pumped out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Amount {
    /// Any that can be seen.
    Any,
    /// A depth, in this unit.
    Depth(f64, &'static Unit),
    /// A share of the store meant for it: the oil store, the sludge trap or hopper.
    ShareOfStore(f64),
    /// A share of the separator's whole volume.
    ShareOfSeparator(f64),
    /// A share of the liquid depth, oil and sludge counted together.
    ShareOfDepthTogether(f64),
    /// The rule gives no number.
    NotStated,
}

/// What the shares are shares of, for oil or for sludge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// The store meant for it.
    pub store: Volume,
    /// The whole separator, to the operating level.
    pub separator: Volume,
    /// The area over which it spreads.
    pub area: Area,
    /// The liquid depth, floor to outlet invert.
    pub depth: Length,
}

impl Amount {
    /// The amount as a volume; `None` when the rule gives no number. A depth is spread over the
    /// room's area: with a hopper take the vessel's volume at the level instead. Where oil and
    /// sludge are counted together, it is the volume of both.
    #[must_use]
    pub fn volume(&self, room: &Room) -> Option<Volume> {
        match *self {
            Amount::Any => Some(Volume::from_si(0.0)),
            Amount::Depth(value, unit) => Some(Length::of(value, unit) * room.area),
            Amount::ShareOfStore(share) => Some(share * room.store),
            Amount::ShareOfSeparator(share) => Some(share * room.separator),
            Amount::ShareOfDepthTogether(share) => Some(share * room.depth * room.area),
            Amount::NotStated => None,
        }
    }

    /// The depth, where the rule is one.
    #[must_use]
    pub fn depth(&self) -> Option<Length> {
        match *self {
            Amount::Any => Some(Length::from_si(0.0)),
            Amount::Depth(value, unit) => Some(Length::of(value, unit)),
            _ => None,
        }
    }
}

/// Where a rule binds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reach {
    /// Written for oil separators anywhere; may be the default.
    General,
    /// Binds in one place only; applies when the site lies there or the engineer chooses it.
    Local(&'static str),
    /// Written for another kind of trap; may be chosen, is never the default.
    OtherTrade,
}

/// One rule.
#[derive(Debug, PartialEq)]
pub struct Trigger {
    /// The word in files.
    pub word: &'static str,
    /// Title.
    pub title: &'static str,
    /// When the oil must go.
    pub oil: Amount,
    /// When the sludge must go.
    pub sludge: Amount,
    /// What else calls for it, and what to know.
    pub note: &'static str,
    /// Where it binds.
    pub reach: Reach,
    /// Where it is written.
    pub source: &'static Source,
}

/// All rules.
pub static TRIGGERS: &[Trigger] = &[
    Trigger {
        word: "en 858-2",
        title: "European standard for light-liquid separators",
        oil: Amount::ShareOfStore(0.80),
        sludge: Amount::ShareOfStore(0.50),
        note: "A recommendation in a note; service at least every six months, emptied general inspection at \
            most every five years.",
        reach: Reach::General,
        source: &EN_858_2_UPKEEP,
    },
    Trigger {
        word: "mil-hdbk-1138",
        title: "US military handbook on operation and maintenance",
        oil: Amount::NotStated,
        sludge: Amount::ShareOfSeparator(0.10),
        note: "Oil as often as needed so that no surge flushes it out; the layer is checked daily to several \
            times a month.",
        reach: Reach::General,
        source: &MIL_HDBK_1138,
    },
    Trigger {
        word: "thurston county",
        title: "County leaflet on stormwater facilities",
        oil: Amount::Depth(1.0, &IN),
        sludge: Amount::Depth(6.0, &IN),
        note: "Also any sheen in the outflow, sediment on the plates, trash, damage, overflow, a cover missing, \
            cracks above 1/2 in.",
        reach: Reach::Local("Thurston County, Washington"),
        source: &THURSTON_COUNTY,
    },
    Trigger {
        word: "charlotte",
        title: "City guidance on inspection and maintenance",
        oil: Amount::Any,
        sludge: Amount::Depth(10.0, &IN),
        note: "Inspection every six months, cleaning at least once a year and at once after a spill, records \
            for three years.",
        reach: Reach::Local("Charlotte, North Carolina"),
        source: &CHARLOTTE_NC,
    },
    Trigger {
        word: "quarter rule",
        title: "A quarter of the liquid depth, oil and solids together",
        oil: Amount::ShareOfDepthTogether(0.25),
        sludge: Amount::ShareOfDepthTogether(0.25),
        note: "Written for food-service grease traps, whose store is about a quarter of their volume; or 90 \
            days if earlier.",
        reach: Reach::OtherTrade,
        source: &DALLAS_TRAPS,
    },
    Trigger {
        word: "thirty per cent",
        title: "Cleaning of grease traps at 30 %, limit 50 %",
        oil: Amount::ShareOfDepthTogether(0.30),
        sludge: Amount::ShareOfDepthTogether(0.30),
        note: "Written for grease traps; shows that the quarter is no law of nature.",
        reach: Reach::OtherTrade,
        source: &MOUNT_VERNON_TRAPS,
    },
];

/// The rule of this word.
#[must_use]
pub fn trigger(word: &str) -> Option<&'static Trigger> {
    TRIGGERS.iter().find(|t| t.word == word)
}

/// The rules that apply without being chosen: the general ones, and the local ones of `place`
/// (as in [`Reach::Local`]).
pub fn applying(place: Option<&str>) -> impl Iterator<Item = &'static Trigger> + use<'_> {
    TRIGGERS.iter().filter(move |t| match t.reach {
        Reach::General => true,
        Reach::Local(there) => place.is_some_and(|here| here == there),
        Reach::OtherTrade => false,
    })
}

/// The default: of these rules the most stringent for oil, with the volume at which it acts.
#[must_use]
pub fn strictest_oil(rules: impl Iterator<Item = &'static Trigger>, room: &Room) -> Option<(&'static Trigger, Volume)> {
    strictest(rules.filter_map(|t| t.oil.volume(room).map(|v| (t, v))))
}

/// The default: of these rules the most stringent for sludge, with the volume at which it acts.
#[must_use]
pub fn strictest_sludge(
    rules: impl Iterator<Item = &'static Trigger>,
    room: &Room,
) -> Option<(&'static Trigger, Volume)> {
    strictest(rules.filter_map(|t| t.sludge.volume(room).map(|v| (t, v))))
}

fn strictest(all: impl Iterator<Item = (&'static Trigger, Volume)>) -> Option<(&'static Trigger, Volume)> {
    all.min_by(|a, b| a.1.si().total_cmp(&b.1.si()))
}
