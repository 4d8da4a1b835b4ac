//! Droplets at the inlet of the unit: as stated, or as assumed and then sheared on the way.

use super::cases::FeedState;
use super::fluids::Fluids;
use super::shear::{self, Shear, Sheared};
use super::stated::{assumed, declared, spread, stand_in, stated, stated_or, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{AfterPump, DropletBase, Droplets as Said};
use crate::enquiry::keys::{Block, Place};
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, Whence, choose, given};
use crate::{by, record, say};
use std::borrow::Cow;
use stillrise_handbook::droplets::{hatch_choate, measured_median, volume_finer};
use stillrise_handbook::fluids::facilities::{Facility, facility};
use stillrise_handbook::page::Series;
use stillrise_handbook::separation::remaining_oil::DropletLaw;
use stillrise_handbook::separation::sheared_median;
use stillrise_units::catalog::{ONE, UM};
use stillrise_units::{Length, Ratio, SurfaceTension, Typed, ratio};

record! {
    /// Droplets of the free oil, by volume.
    Droplets {
        /// how the volume spreads over size
        law: DropletLaw;
        /// volume median diameter at the unit
        d50: Length;
        /// shape of the distribution: geometric standard deviation, exponent or delta
        shape: Ratio;
        /// largest droplet
        largest: Length;
        /// measured: size, and share of the volume that is finer
        table: Series;
    }
}

/// Droplets as one water brings them, and what shears them on its way.
pub(super) struct Way<'a> {
    /// What is said of them.
    pub said: Cow<'a, Said>,
    /// Whose way to the unit it is.
    pub of: Sheared,
    /// Tension between oil and water with what goes into it; `None` without anything that lowers it.
    pub tension: Option<Val<SurfaceTension>>,
    /// What pumps it.
    pub feed: &'a FeedState,
    /// The kind of place whose figures stand by for a size that nobody stated.
    pub place: Option<&'static Facility>,
    /// Where the droplets of the water stand and its name, where waters come from places of different kinds: each is asked
    /// for under a key of its own.
    pub apart: Option<(Place, &'a str)>,
}

/// Finds the droplets at the unit.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn droplets<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    way: &Way<'_>,
) -> Result<(Droplets, Option<Shear>), Stop> {
    let said = &*way.said;
    let law = law(t, said);
    let shape = shape(t, w, e, said, law.q);
    let largest = match stated(t, w, "largest droplet", &said.largest) {
        Some(largest) => largest,
        None => given(t, "largest droplet", Some(SIZE), Length::of(NO_LARGEST, &UM), Whence::Definition, "no largest"),
    };
    if let Some(table) = table(t, said)? {
        let d50 = by!(t, "volume median diameter at the unit", measured_median::diameter(table))?;
        let shear = overruled(t, w, e, fluids, way)?;
        return Ok((Droplets { law, d50, shape, largest, table }, shear));
    }
    let table = given(t, "measured droplets", Some(SIZE), Series::default(), Whence::Definition, "none measured");
    let number = said.base.0 == Some(DropletBase::Number);
    if let Some(d50) = stated(t, w, "volume median diameter at the unit", &said.d50) {
        let d50 = if number { by_volume(t, d50, shape)? } else { d50 };
        let shear = overruled(t, w, e, fluids, way)?;
        return Ok((Droplets { law, d50, shape, largest, table }, shear));
    }
    let sheared = way.feed.pumped || shear::blocks(e, way.of).next().is_some();
    let arriving = arriving(t, w, way, sheared, number.then_some(shape))?;
    let mut droplets = Droplets { law, d50: arriving, shape, largest, table };
    let Some(mut shear) = shear::shear(t, w, e, fluids, way)? else { return Ok((droplets, None)) };
    let hardest = shear.hardest();
    let survives = hardest.survives;
    let after = said.after_pump.0.unwrap_or(AfterPump::Replaced);
    if after == AfterPump::Capped {
        shear.governs = survives.q < arriving.q;
        if survives.q < largest.q {
            droplets.largest = choose(
                t,
                "largest droplet",
                Some(SIZE),
                survives.q,
                "what arrives, and what survives the hardest shear",
                "larger ones are broken down to what survives",
                &[largest.at, survives.at],
            );
        }
        return Ok((droplets, Some(shear)));
    }
    let spread = if law.q == DropletLaw::LogNormal { shape } else { shape_of(t, w, e, said) };
    let median = by!(t, "median the shear leaves", sheared_median::diameter(survives, spread))?;
    shear.median = Some(median);
    shear.governs = median.q < arriving.q;
    if shear.governs {
        droplets.law = choose(
            t,
            "distribution of the droplets",
            None,
            DropletLaw::LogNormal,
            "the distribution that arrives, and a log-normal one",
            "droplets off a pump are log-normal, the more so the more they are sheared",
            &[law.at],
        );
        droplets.shape = spread;
        droplets.d50 = choose(
            t,
            "volume median diameter at the unit",
            Some(SIZE),
            median.q,
            "what arrives, and what the hardest shear leaves",
            "the shear breaks the droplets",
            &[arriving.at, median.at],
        );
    }
    Ok((droplets, Some(shear)))
}

/// What the shears that the enquiry names would leave, where the droplets at the unit are stated all the same.
fn overruled<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    way: &Way<'_>,
) -> Result<Option<Shear>, Stop> {
    if shear::blocks(e, way.of).next().is_none() {
        return Ok(None);
    }
    let Some(mut shear) = shear::shear(t, w, e, fluids, way)? else { return Ok(None) };
    let spread = shape_of(t, w, e, &way.said);
    let survives = shear.hardest().survives;
    shear.median = Some(by!(t, "median the shear would leave", sheared_median::diameter(survives, spread))?);
    shear.overruled = true;
    Ok(Some(shear))
}

const SIZE: Pair = (&UM, &UM);
/// In µm: larger than any droplet, where a law has no largest one.
const NO_LARGEST: f64 = 1e9;

fn law<T: Trail>(t: &mut T, said: &Said) -> Val<DropletLaw> {
    match said.law.0 {
        Some(law) => given(
            t,
            "distribution of the droplets",
            None,
            law,
            T::RECORDS.then(|| said.law().at(&of_all()).source_by_path().kept()),
            "stated",
        ),
        None if said.table.is_given() => {
            let source = said.table().at(&of_all()).path();
            given(t, "distribution of the droplets", None, DropletLaw::Measured, &source, "stated")
        }
        None => choose(
            t,
            "distribution of the droplets",
            None,
            DropletLaw::LogNormal,
            "the laws listed by the schema",
            "the usual description of oil in water, with the longest fine tail of them",
            &[],
        ),
    }
}

fn shape<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, said: &Said, law: DropletLaw) -> Val<Ratio> {
    let number = (&ONE, &ONE);
    match law {
        DropletLaw::LogNormal => shape_of(t, w, e, said),
        DropletLaw::RosinRammler => {
            stated_or_usual(t, w, said.exponent().at(&of_all()), "exponent of the distribution")
        }
        DropletLaw::UpperLimit => stated_or_usual(t, w, said.delta().at(&of_all()), "delta of the distribution"),
        DropletLaw::Measured => {
            given(t, "shape of the distribution", Some(number), ratio(1.0), Whence::Definition, "not used")
        }
    }
}

fn shape_of<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, said: &Said) -> Val<Ratio> {
    let general = of_all();
    let key = said.spread().at(&general);
    let spec = key.spec;
    stated_or(t, w, key, "geometric standard deviation of the droplets", || {
        e.head.facility.as_deref().and_then(facility).map_or_else(|| declared(spec), |site| spread(&site.spread))
    })
}

/// Where the droplets of all waters are asked for, whichever water said something of its own.
fn of_all() -> Place {
    Place::plain(Said::spec().name)
}

/// The measured distribution, by volume.
fn table<T: Trail>(t: &mut T, said: &Said) -> Result<Option<Val<Series>>, Stop> {
    let table = &said.table;
    if !table.is_given() {
        return Ok(None);
    }
    let measured = given(
        t,
        "measured droplets",
        Some(SIZE),
        table.rows.clone(),
        table.claims.source(&table.claims.place),
        &table.text,
    );
    if said.base.0 != Some(DropletBase::Number) {
        return Ok(Some(measured));
    }
    by!(t, "measured droplets, by volume", volume_finer::finer(measured)).map(Some)
}

/// The volume median of a number median.
fn by_volume<T: Trail>(t: &mut T, number: Val<Length>, sg: Val<Ratio>) -> Result<Val<Length>, Stop> {
    by!(t, "volume median of the number median", hatch_choate::diameter(number, sg))
}

/// The median that arrives; a stated number median is turned with its spread.
fn arriving<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    way: &Way<'_>,
    sheared: bool,
    number: Option<Val<Ratio>>,
) -> Result<Val<Length>, Stop> {
    let um = |x: f64| Length::of(x, &UM);
    let apart = way.apart.as_ref();
    let of = apart.map_or_else(String::new, |(_, name)| say!(T, ", {name}"));
    let label = &["volume median diameter arriving", &*of].concat();
    if let Some(arriving) = stated(t, w, label, &way.said.arriving) {
        return number.map_or(Ok(arriving), |sg| by_volume(t, arriving, sg));
    }
    // Ahead of a shear the answer stands for what arrives; else for what reaches the unit.
    let general = of_all();
    let key = if sheared { way.said.arriving() } else { way.said.d50() };
    let key = match apart {
        Some((place, name)) => key.at(place).of(name),
        None => key.at(&general),
    };
    let stand_in = way.place.map_or_else(
        || {
            let range = (um(30.0), um(75.0), um(150.0));
            stand_in(range, "engineering judgement; no kind of place was named")
        },
        |site| spread(&site.droplet_d50),
    );
    Ok(assumed(t, w, &key, label, stand_in))
}
