//! What any water carries: oil by fraction, and solids.

use super::chemicals::{Dosed, Which, emulsified, seen};
use super::fluids::{Fluids, OilState};
use super::stated::{assumed, declared, spread, stand_in, stated, stated_or};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Containment, OilContent, WaterKind};
use crate::enquiry::keys::{Key, Quantity};
use crate::provenance::{Node, Stop, Trail, Val, WhatIf};
use crate::{reckon, say};
use stillrise_handbook::fluids::facilities::{Facility, facility};
use stillrise_handbook::fluids::oils::Oil;
use stillrise_units::catalog::{MG_L, PERCENT};
use stillrise_units::{Concentration, Ratio, Temperature, Typed, ratio};

/// What a water carries.
#[derive(Debug, Clone)]
pub struct Content {
    /// Total oil and grease.
    pub total: Val<Concentration>,
    /// Free oil, which can rise where it is lighter than the water.
    pub free: Val<Concentration>,
    /// Of it, what is as heavy as the water and does not rise, where other oils that may come do.
    pub heavy: Option<Val<Concentration>>,
    /// Emulsified oil, which does not.
    pub emulsified: Val<Concentration>,
    /// Dissolved oil, which does not either.
    pub dissolved: Val<Concentration>,
    /// Suspended solids.
    pub solids: Val<Concentration>,
}

impl Content {
    /// Field names and their places in the trail, in order.
    #[must_use]
    pub fn fields(&self) -> Vec<(&'static str, Node)> {
        let mut fields = vec![("total", self.total.at), ("free", self.free.at)];
        fields.extend(self.heavy.map(|heavy| ("heavy", heavy.at)));
        fields.extend([
            ("emulsified", self.emulsified.at),
            ("dissolved", self.dissolved.at),
            ("solids", self.solids.at),
        ]);
        fields
    }
}

/// What the content of a water is found from.
pub(super) struct Asked<'a> {
    /// Which water.
    pub which: Which,
    /// What is said of its oil.
    pub oil: Key<'a, Option<OilContent>>,
    /// What is said of its solids.
    pub solids: Key<'a, Quantity<Concentration>>,
    /// The kind of place it comes from.
    pub site: Option<&'static Facility>,
    /// The coldest it ever is where it stands in the unit, where somebody said so.
    pub coldest: Option<Temperature>,
    /// What it is, as far as it matters to what stands by for what nobody said.
    pub of: Kind,
}

/// What kind of water is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// One of the site's: its kind of place says what it carries.
    Site,
    /// One of which nothing is known.
    Unknown,
    /// A bath that is dumped.
    Bath,
    /// A wash or process water at a place of which only the rain is known.
    Process,
}

/// Most of an oil that can dissolve, %; from memory, about what of a light oil is aromatic.
const SOLUBLE: f64 = 35.0;

/// What a water is called: behind a comma, and in a sentence.
struct Called {
    short: String,
    water: String,
}

/// What a water is called, by its block: `stream "wash bay"`, `stream 2`, `rain`, `stated`; nothing where nobody reads it.
fn called<T: Trail>(head: &str) -> Called {
    if !T::RECORDS {
        return Called { short: String::new(), water: String::new() };
    }
    let (block, name) = match (head.split_once(" \""), head.split_once(' ')) {
        (Some((block, name)), _) => (block, name.trim_end_matches('"')),
        (None, Some((block, _))) => (block, head),
        (None, None) => (head, ""),
    };
    let of_name = |name: &str| {
        // "The process water", not "the process water water".
        if name.to_lowercase().ends_with("water") { format!("the {name}") } else { format!("the {name} water") }
    };
    let (short, water) = match block {
        "stated" => ("the stated flow".to_owned(), "the water of the stated flow".to_owned()),
        "case" => (format!("case {name}"), format!("the water of the case {name}")),
        _ if name.is_empty() => (block.to_owned(), of_name(block)),
        _ => (name.to_owned(), of_name(name)),
    };
    Called { short, water }
}

/// Why the general figures stand by.
fn of_no_place(kind: Kind) -> &'static str {
    if kind == Kind::Process {
        "engineering judgement: a wash or process water; the figures of the kind of place are those of its rain, and are not lent to it"
    } else {
        "engineering judgement; no kind of place was named"
    }
}

/// Finds what a water carries.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn content<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    fluids: &Fluids,
    dosed: &[Dosed],
    asked: &Asked<'_>,
) -> Result<Content, Stop> {
    let mg_l = |x: f64| Concentration::of(x, &MG_L);
    let Asked { which, site, coldest, of: kind, .. } = *asked;
    let known = kind != Kind::Unknown;
    let oil = &*asked.oil.or_unsaid();
    let Called { short, water } = &called::<T>(asked.oil.head());
    let of = |quantity: &str| say!(T, "{quantity}, {short}");
    let label = of("total oil and grease");
    let total = stated_or(t, w, oil.mean().word("water", water), &label, || match site {
        _ if kind == Kind::Bath => stand_in(
            (mg_l(1000.0), mg_l(10_000.0), mg_l(100_000.0)),
            "engineering judgement: spent baths hold a tenth of a per cent to some per cent of oil",
        ),
        _ if !known => stand_in(
            (mg_l(5.0), mg_l(100.0), mg_l(1000.0)),
            "engineering judgement, wide: nothing is known of this water, and no other water's figure is lent to it",
        ),
        Some(site) => spread(&site.oil),
        None => stand_in((mg_l(20.0), mg_l(100.0), mg_l(500.0)), of_no_place(kind)),
    });
    let label = of("emulsified share of the oil");
    let key = oil.emulsified().word("water", water);
    // A wash or process water is none of a dry yard, unless the figures of its kind of place are its own.
    let is_yard = known && kind != Kind::Process && (site.is_some() || !matches!(which, Which::Stream(_)));
    let share = stated_or(t, w, key, &label, || seen(oil.jar.0, oil.looks.0, emulsified::<T>(dosed, which, is_yard)));
    // Of several oils that may come, the one of which most dissolves and is counted, whatever their order.
    let counted = |oil: &Oil| oil.dissolved_in_test().typical;
    let named = oil.kind.as_deref().and_then(stillrise_handbook::fluids::oils::oil);
    let most = fluids.oils.iter().map(|o| o.oil).max_by(|a, b| counted(a).total_cmp(&counted(b)));
    let row = named.or(most).unwrap_or(fluids.oils[0].oil);
    let label = of("dissolved oil at saturation");
    let saturation = stated_or(t, w, oil.dissolved().word("water", water), &label, || {
        let film = row.dissolved_in_test();
        // Water does not take up a little oil whole: only its light part dissolves.
        let most = total.q.si() * SOLUBLE / 100.0;
        if film.typical_si() <= most && film.high_si() <= most {
            return spread(film);
        }
        let ends = [film.low_si(), film.typical_si(), film.high_si()];
        let [low, typical, high] = ends.map(|end| Concentration::from_si(end.min(most)));
        let why = "what a film of the oil leaves in water, but no more than 35 % of the oil there is (from memory: about what of a light oil is aromatic)";
        stand_in((low, typical, high), why)
    });
    let emulsified = reckon!(t, "emulsified oil", [MG_L, MG_L], (total = total, share = share) total * share);
    // A stated emulsion leaves no more than the rest for solution.
    let dissolved = reckon!(t, "dissolved oil", [MG_L, MG_L], (saturation = saturation, total = total, emulsified = emulsified) saturation.min(total - emulsified));
    let free = reckon!(t, "free oil", [MG_L, MG_L], (total = total, emulsified = emulsified, dissolved = dissolved) total - emulsified - dissolved);
    let heavy = heavy(t, w, (fluids, coldest), oil, asked.oil.head()).map(
        |share| reckon!(t, "free oil as heavy as the water", [MG_L, MG_L], (free = free, share = share) free * share),
    );
    let label = of("suspended solids");
    let solids = stated_or(t, w, asked.solids.word("water", water), &label, || match site {
        Some(site) if kind == Kind::Site => spread(&site.solids),
        _ => stand_in(
            (mg_l(30.0), mg_l(150.0), mg_l(1000.0)),
            if known { of_no_place(kind) } else { "engineering judgement: nothing is known of this water" },
        ),
    });
    Ok(Content { total, free, heavy, emulsified, dissolved, solids })
}

/// The share of a water's free oil that is as heavy as the water, where other oils that may come rise; `None` where all
/// of it rises, or where no oil does and the whole duty is in question.
fn heavy<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    (fluids, coldest): (&Fluids, Option<Temperature>),
    oil: &OilContent,
    head: &str,
) -> Option<Val<Ratio>> {
    let rises = |oil: &OilState| fluids.rises_in(oil, coldest);
    let Called { short, water } = &called::<T>(head);
    let label = say!(T, "share of the free oil that does not rise, {short}");
    if let Some(share) = stated(t, w, &label, &oil.heavy) {
        return Some(share);
    }
    let heavy: Vec<&str> = fluids.oils.iter().filter(|o| !rises(o)).map(|o| o.name.as_str()).collect();
    if heavy.is_empty() || heavy.len() == fluids.oils.len() {
        return None;
    }
    let percent = Some((&PERCENT, &PERCENT) as crate::provenance::Pair);
    if let Some(named) = oil.kind.as_deref().and_then(|kind| fluids.oils.iter().find(|o| o.oil.word == kind)) {
        return (!rises(named)).then(|| {
            crate::provenance::choose(
                t,
                &label,
                percent,
                ratio(1.0),
                "oils that rise, and oils that do not",
                "the oil that this water is said to carry does not rise",
                &[named.cold.at, fluids.cold.density.at],
            )
        });
    }
    let names = heavy.join(" and ");
    let key = oil.heavy().word("water", water).word("names", &names);
    Some(assumed(t, w, &key, &label, declared(key.spec)))
}

/// The content of a case of the enquiry's own: what it states; where it states nothing it is not known, and no other
/// water's oil is lent to it. `None` for fire-fighting water whose oil nobody states: it is held, not treated.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn of_case<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    dosed: &[Dosed],
    i: usize,
) -> Result<Option<Content>, Stop> {
    let block = &e.cases[i];
    if block.oil.is_none() && block.water.0 == Some(WaterKind::Fire) {
        return Ok(None);
    }
    let site = e.head.facility.as_deref().and_then(facility);
    let asked = Asked {
        which: Which::Case(i),
        oil: block.oil(),
        solids: block.solids(),
        site,
        coldest: None,
        of: if block.oil.is_some() { Kind::Site } else { Kind::Unknown },
    };
    content(t, w, fluids, dosed, &asked).map(Some)
}

/// The content of the water drained from a containment: its own, never that of another water.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn of_drain<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    dosed: &[Dosed],
    (i, block): (usize, &Containment),
) -> Result<Content, Stop> {
    let site = e.head.facility.as_deref().and_then(facility);
    let (oil, solids) = (block.oil(), block.solids());
    content(t, w, fluids, dosed, &Asked { which: Which::Drain(i), oil, solids, site, coldest: None, of: Kind::Site })
}

/// The content of a flow of which nothing but its size is known.
pub fn unknown<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    dosed: &[Dosed],
) -> Result<Content, Stop> {
    let site = e.head.facility.as_deref().and_then(facility);
    let (oil, solids) = (e.stated.oil(), e.stated.solids());
    content(t, w, fluids, dosed, &Asked { which: Which::Stated, oil, solids, site, coldest: None, of: Kind::Site })
}
