//! Chemicals by water: which product goes into which water, and what it does to the oil there.

use super::stated::{StandIn, assumed, spread, stand_in, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{ChemicalBlock, Jar, Look, WaterKind};
use crate::enquiry::named::{ALL, RAIN, STREAMS, is_called, same};
use crate::provenance::{Trail, Val, WhatIf};
use crate::say;
use stillrise_handbook::fluids::chemicals::{Chemical, chemical};
use stillrise_units::catalog::PERCENT;
use stillrise_units::{Ratio, SurfaceTension, Typed};

/// Which water of an enquiry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Which {
    /// Rain off the surfaces.
    Rain,
    /// A stream, by its place.
    Stream(usize),
    /// A bath that is dumped, by its place.
    Bath(usize),
    /// A case of the enquiry's own, by its place.
    Case(usize),
    /// Water drained from a containment, by its place: no product goes into it.
    Drain(usize),
    /// The flow that was only stated.
    Stated,
}

stillrise_handbook::choice! {
    /// Where a product goes that no water is named for.
    Into {
        /// every water but rain, fire-fighting water and dewatering
        Streams "streams",
        /// every water
        All "all",
        /// no water that reaches the unit
        None "none",
    }
}

/// One product, and the waters it goes into.
#[derive(Debug, Clone)]
pub struct Dosed {
    /// Its name.
    pub name: String,
    /// What it is, where that was said.
    pub row: Option<&'static Chemical>,
    /// Tension between oil and water where it is, if it lowers it.
    pub tension: Option<Val<SurfaceTension>>,
    /// Share of the oil there that it is, of one that is an oil itself.
    pub share: Option<Val<Ratio>>,
    waters: Vec<Which>,
}

impl Dosed {
    /// Whether it goes into a water.
    #[must_use]
    pub fn reaches(&self, which: Which) -> bool {
        self.waters.contains(&which)
    }
}

/// All waters of an enquiry, and whether a product goes into them that names none.
fn waters(e: &Enquiry) -> Vec<(Which, bool)> {
    let takes = |kind: Option<WaterKind>| kind.is_none_or(|k| k == WaterKind::Treated);
    let rain = (!e.surfaces.is_empty()).then_some((Which::Rain, false));
    let streams = e.streams.iter().enumerate().map(|(i, s)| (Which::Stream(i), takes(s.water.0)));
    let cases = e.cases.iter().enumerate().map(|(i, c)| (Which::Case(i), takes(c.water.0)));
    rain.into_iter().chain(streams).chain(cases).chain([(Which::Stated, true)]).collect()
}

/// Finds which product goes into which water.
pub fn chemicals<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Vec<Dosed> {
    t.section("chemicals");
    let all = waters(e);
    let mut found = Vec::new();
    for block in &e.chemicals {
        let name = block.product.0.clone().or_else(|| block.kind.0.clone()).unwrap_or_else(|| "a product".to_owned());
        let row = block.kind.as_deref().and_then(chemical);
        let listed = |which: Which| match which {
            Which::Stream(k) => e.streams[k].chemicals.iter().any(|name| is_called(block, name)),
            _ => false,
        };
        let named = |which: Which, plain: bool| {
            let own = match which {
                Which::Rain => Some(RAIN),
                Which::Stream(k) => e.streams[k].name.as_deref(),
                Which::Case(k) => e.cases[k].name.as_deref(),
                Which::Bath(_) | Which::Drain(_) | Which::Stated => None,
            };
            let numbered = |word: &str| match which {
                Which::Stream(k) => same(word, &format!("stream {}", k + 1)),
                _ => same(word, ""),
            };
            block.stream.iter().any(|word| {
                same(word, ALL)
                    || same(word, STREAMS) && plain
                    || own.is_some_and(|own| same(own, word))
                    || numbered(word)
            })
        };
        let said = !block.stream.is_empty() || all.iter().any(|(which, _)| listed(*which));
        let waters: Vec<Which> = if said {
            all.iter()
                .filter(|(which, plain)| named(*which, *plain) || listed(*which))
                .map(|(which, _)| *which)
                .collect()
        } else {
            let into = into(t, w, e, &all, &name, block, row);
            let goes = |plain: bool| into == Into::All || into == Into::Streams && plain;
            all.iter().filter(|(_, plain)| goes(*plain)).map(|(which, _)| *which).collect()
        };
        let tension = (row.is_some_and(|c| c.surfactant) || block.tension.is_given()).then(|| {
            let label = say!(T, "interfacial tension with {name}");
            stated_or_usual(t, w, block.tension(), &label)
        });
        let share = row.filter(|c| c.is_oil).map(|_| {
            let label = say!(T, "share of {name} in the oil there");
            stated_or_usual(t, w, block.share().of(&name), &label)
        });
        found.push(Dosed { name, row, tension, share, waters });
    }
    found
}

/// Where a product goes that no water is named for: a question, unless there is one water only that it may go into, or it
/// leaves the oil as it is.
fn into<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    all: &[(Which, bool)],
    name: &str,
    block: &ChemicalBlock,
    row: Option<&'static Chemical>,
) -> Into {
    let rain = all.iter().any(|(which, _)| *which == Which::Rain);
    let others = e.streams.len() + e.cases.len();
    let value = if rain && others == 0 { Into::All } else { Into::Streams };
    let matters = row.is_none_or(|c| acts(c) || c.surfactant);
    if !matters || !rain && others <= 1 {
        return value;
    }
    let source = match value {
        Into::All => "rain is the only water that is known",
        _ => {
            "a product is used in washing or process; rain, fire-fighting water and dewatering take none unless it is said"
        }
    };
    let label = say!(T, "waters that {name} goes into");
    assumed(t, w, &block.stream().of(name), &label, stand_in((Into::None, value, Into::All), source)).q
}

/// Emulsified share of a dry yard without detergents, %: least, likely, most.
const DRY_YARD: [f64; 3] = [0.0, 2.0, 10.0];
/// The same of a water of which nothing is known, and of one that takes a product of unknown kind.
const UNKNOWN_WATER: [f64; 3] = [0.0, 5.0, 50.0];
const UNKNOWN_PRODUCT: [f64; 3] = [0.0, 20.0, 100.0];

/// Whether a chemical takes more oil out of gravity's reach than a dry yard has there.
fn acts(row: &Chemical) -> bool {
    row.emulsified.typical > DRY_YARD[1]
}

/// What stands by for the emulsified share of a water: of the products that go into it the one that takes most oil out of
/// gravity's reach, else a dry yard's. `known` is whether anything was said of what the water carries.
pub fn emulsified<'a, T: Trail>(dosed: &[Dosed], which: Which, known: bool) -> StandIn<'a, Ratio> {
    let judged = |[low, likely, high]: [f64; 3], why: &str| {
        let range = (Ratio::of(low, &PERCENT), Ratio::of(likely, &PERCENT), Ratio::of(high, &PERCENT));
        stand_in(range, why.to_owned())
    };
    let here = || dosed.iter().filter(|d| d.reaches(which));
    let worst = here()
        .filter_map(|d| Some((d, d.row.filter(|row| acts(row))?)))
        .max_by(|(_, a), (_, b)| a.emulsified.typical.total_cmp(&b.emulsified.typical));
    // Of one that is an oil itself only its own share of the oil is held; the rest is as it would be without it.
    if let Some((own, row)) = worst
        && let Some(share) = own.share.map(|share| share.q.si()).filter(|share| *share < 1.0)
    {
        let others: Vec<Dosed> = here().filter(|d| !core::ptr::eq(*d, own)).cloned().collect();
        let rest = emulsified::<T>(&others, which, known);
        let held = spread::<Ratio>(&row.emulsified);
        let name = &own.name;
        let why = say!(T, "engineering judgement: {name} holds its own share of the oil, the rest is as without it");
        return held.blended(&rest, share, why);
    }
    let worst = worst.map(|(_, row)| row);
    let unknown = here().find(|d| d.row.is_none());
    match (worst, unknown) {
        (Some(row), None) => spread(&row.emulsified),
        (Some(row), Some(_)) if row.emulsified.typical >= UNKNOWN_PRODUCT[1] => spread(&row.emulsified),
        (_, Some(d)) => {
            judged(UNKNOWN_PRODUCT, &say!(T, "engineering judgement: {} goes into it, whose kind is not known", d.name))
        }
        (None, None) if known => judged(DRY_YARD, "engineering judgement: dry yard without detergents"),
        (None, None) => judged(UNKNOWN_WATER, "engineering judgement: nobody said what goes into this water"),
    }
}

/// Emulsified share by what a jar of the water does when it stands, %: least, likely, most. Our proposal, as the next.
fn by_jar(jar: Jar) -> [f64; 3] {
    match jar {
        Jar::Soon => [0.0, 3.0, 10.0],
        Jar::Overnight => [2.0, 20.0, 60.0],
        Jar::Stays => [30.0, 70.0, 100.0],
    }
}

/// The same by how the water looks as it comes; nothing where that says nothing.
fn by_look(look: Look) -> Option<[f64; 3]> {
    match look {
        Look::Clear | Look::Film => None,
        Look::Hazy => Some([1.0, 10.0, 50.0]),
        Look::Milky => Some([5.0, 40.0, 95.0]),
    }
}

/// What stands by for the emulsified share where somebody saw the water: what a jar of it does says more than its
/// products; how it looks counts where it asks for more than they do.
pub fn seen<'a>(jar: Option<Jar>, look: Option<Look>, by_products: StandIn<'a, Ratio>) -> StandIn<'a, Ratio> {
    let of = |[low, likely, high]: [f64; 3], why: String| {
        let range = (Ratio::of(low, &PERCENT), Ratio::of(likely, &PERCENT), Ratio::of(high, &PERCENT));
        stand_in(range, why)
    };
    if let Some(jar) = jar {
        return of(
            by_jar(jar),
            format!(
                "engineering judgement: a jar of it {}",
                if jar == Jar::Stays { "stays as it is" } else { jar.word() }
            ),
        );
    }
    let seen = look.and_then(|look| Some((look, by_look(look)?)));
    match seen.filter(|(_, range)| Ratio::of(range[1], &PERCENT) > by_products.likely()) {
        Some((look, range)) => of(range, format!("engineering judgement: it comes {}", look.word())),
        None => by_products,
    }
}

/// The lowest tension that a product gives the oil in these waters; `None` where none lowers it.
#[must_use]
pub fn tension(dosed: &[Dosed], waters: &[Which]) -> Option<Val<SurfaceTension>> {
    let here = dosed.iter().filter(|d| waters.iter().any(|which| d.reaches(*which)));
    here.filter_map(|d| d.tension).min_by(|a, b| a.q.si().total_cmp(&b.q.si()))
}
