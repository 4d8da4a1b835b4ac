//! Droplets and solids at the inlet of the unit: as stated, or as assumed and then sheared by the
//! pump ahead.

use super::cases::FeedState;
use super::fluids::Fluids;
use super::stated::{standby, standby_spread, stated, stated_or};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{AfterPump, DropletBase};
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, assume, choose, given};
use crate::{by, record};
use stillrise_handbook::droplets::{hatch_choate, measured_median, volume_finer};
use stillrise_handbook::fluids::chemicals::{Effect, chemical};
use stillrise_handbook::fluids::facilities::facility;
use stillrise_handbook::page::Series;
use stillrise_handbook::separation::remaining_oil::DropletLaw;
use stillrise_handbook::separation::{hinze_droplet, sheared_median};
use stillrise_units::catalog::{KG_M3, LB_FT3, MN_M, ONE, PERCENT, UM, W_KG};
use stillrise_units::{Density, Dissipation, Length, Ratio, SurfaceTension, Typed, ratio};

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

record! {
    /// Solids and the sludge they make.
    Solids {
        /// median grain size
        d50: Length;
        /// density of the grains
        density: Density;
        /// dry solids in settled sludge, by mass
        in_sludge: Ratio;
        /// density of settled sludge
        sludge_density: Density;
    }
}

/// What the pump does to the droplets.
#[derive(Debug, Clone)]
pub struct Shear {
    /// Largest droplet that survives the pump.
    pub survives: Val<Length>,
    /// Volume median it leaves.
    pub median: Val<Length>,
    /// Whether it is below what would have come without the pump.
    pub governs: bool,
}

/// Finds the droplets at the unit.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn droplets<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    feed: &FeedState,
) -> Result<(Droplets, Option<Shear>), Stop> {
    t.section("droplets");
    let law = law(t, e);
    let shape = shape(t, w, e, law.q);
    let largest = match stated(t, w, "largest droplet", &e.droplets.largest) {
        Some(largest) => largest,
        None => given(t, "largest droplet", Some(SIZE), Length::of(NO_LARGEST, &UM), "definition", "no largest"),
    };
    if let Some(table) = table(t, e)? {
        let d50 = by!(t, "volume median diameter at the unit", measured_median::diameter(table))?;
        return Ok((Droplets { law, d50, shape, largest, table }, None));
    }
    let table = given(t, "measured droplets", Some(SIZE), Series::default(), "definition", "none measured");
    let number = e.droplets.base.0 == Some(DropletBase::Number);
    if let Some(d50) = stated(t, w, "volume median diameter at the unit", &e.droplets.d50) {
        let d50 = if number { by_volume(t, d50, shape)? } else { d50 };
        return Ok((Droplets { law, d50, shape, largest, table }, None));
    }
    let arriving = arriving(t, w, e, feed, number.then_some(shape))?;
    let mut droplets = Droplets { law, d50: arriving, shape, largest, table };
    if !feed.pumped {
        return Ok((droplets, None));
    }
    let survives = survives(t, w, e, fluids, feed)?;
    let spread = if law.q == DropletLaw::LogNormal { shape } else { spread(t, w, e) };
    let median = by!(t, "median the pump leaves", sheared_median::diameter(survives, spread))?;
    if e.droplets.after_pump.0 == Some(AfterPump::Capped) {
        let governs = survives.q < largest.q;
        if governs {
            droplets.largest = choose(
                t,
                "largest droplet",
                Some(SIZE),
                survives.q,
                "what arrives, and what survives the pump",
                "larger ones are broken down to what survives",
                &[largest.at, survives.at],
            );
        }
        return Ok((droplets, Some(Shear { survives, median, governs })));
    }
    let governs = median.q < arriving.q;
    if governs {
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
            "what arrives, and what the pump leaves",
            "the pump breaks the droplets",
            &[arriving.at, median.at],
        );
    }
    Ok((droplets, Some(Shear { survives, median, governs })))
}

const SIZE: Pair = (&UM, &UM);
/// In µm: larger than any droplet, where a law has no largest one.
const NO_LARGEST: f64 = 1e9;

fn law<T: Trail>(t: &mut T, e: &Enquiry) -> Val<DropletLaw> {
    match e.droplets.law.0 {
        Some(law) => given(t, "distribution of the droplets", None, law, "droplets.law", "stated"),
        None if e.droplets.table.is_given() => {
            given(t, "distribution of the droplets", None, DropletLaw::Measured, "droplets.table", "stated")
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

fn shape<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, law: DropletLaw) -> Val<Ratio> {
    let number = (&ONE, &ONE);
    match law {
        DropletLaw::LogNormal => spread(t, w, e),
        DropletLaw::RosinRammler => stated_or(
            t,
            w,
            &e.droplets.exponent,
            standby(
                "exponent of the distribution",
                number,
                "droplets.exponent",
                "How far do the droplet sizes spread: one source, or several mixed?",
                (ratio(1.5), ratio(2.6), ratio(3.5)),
                "from memory: 2.1 to 2.8 for oil sheared in pipes",
            ),
        ),
        DropletLaw::UpperLimit => stated_or(
            t,
            w,
            &e.droplets.delta,
            standby(
                "delta of the distribution",
                number,
                "droplets.delta",
                "How far do the droplet sizes spread: one source, or several mixed?",
                (ratio(0.5), ratio(0.72), ratio(1.2)),
                "Schwarz and Bezemer 1956, from memory",
            ),
        ),
        DropletLaw::Measured => {
            given(t, "shape of the distribution", Some(number), ratio(1.0), "definition", "not used")
        }
    }
}

fn spread<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Val<Ratio> {
    let site = e.head.facility.as_deref().and_then(facility);
    let width = "How far do the droplet sizes spread: one source, or several mixed?";
    let (label, units, key) = ("geometric standard deviation", (&ONE, &ONE), "droplets.spread");
    let standby = match site {
        Some(site) => standby_spread(label, units, key, width, &site.spread),
        None => {
            let range = (ratio(1.5), ratio(2.0), ratio(3.0));
            standby(label, units, key, width, range, "engineering judgement")
        }
    };
    stated_or(t, w, &e.droplets.spread, standby)
}

/// The measured distribution, by volume.
fn table<T: Trail>(t: &mut T, e: &Enquiry) -> Result<Option<Val<Series>>, Stop> {
    let table = &e.droplets.table;
    if !table.is_given() {
        return Ok(None);
    }
    let measured = given(t, "measured droplets", Some(SIZE), table.rows.clone(), &table.place, &table.text);
    if e.droplets.base.0 != Some(DropletBase::Number) {
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
    e: &Enquiry,
    feed: &FeedState,
    number: Option<Val<Ratio>>,
) -> Result<Val<Length>, Stop> {
    let um = |x: f64| Length::of(x, &UM);
    let label = "volume median diameter arriving";
    if let Some(arriving) = stated(t, w, label, &e.droplets.arriving) {
        return number.map_or(Ok(arriving), |sg| by_volume(t, arriving, sg));
    }
    // Ahead of a pump the answer stands for what arrives; else for what reaches the unit.
    let key = if feed.pumped { "droplets.arriving" } else { "droplets.d50" };
    let question = "Has the droplet size at the separator been measured, or what shears the oil ahead of it?";
    let standby = match e.head.facility.as_deref().and_then(facility) {
        Some(site) => standby_spread(label, SIZE, key, question, &site.droplet_d50),
        None => {
            let range = (um(30.0), um(75.0), um(150.0));
            standby(label, SIZE, key, question, range, "engineering judgement; no kind of place was named")
        }
    };
    Ok(assume(t, w, standby))
}

/// The largest droplet that survives the pump ahead.
fn survives<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    feed: &FeedState,
) -> Result<Val<Length>, Stop> {
    // The oil with the lowest tension breaks into the finest droplets.
    let mut clean = fluids.oils[0].tension;
    for oil in &fluids.oils {
        if oil.tension.q < clean.q {
            clean = oil.tension;
        }
    }
    let detergent =
        e.chemicals.iter().filter_map(|c| c.kind.as_deref().and_then(chemical)).any(|c| c.effect == Effect::Emulsifies);
    let tension = if detergent {
        assume(
            t,
            w,
            standby(
                "interfacial tension with detergent",
                (&MN_M, &MN_M),
                "chemical.tension",
                "",
                (SurfaceTension::of(1.0, &MN_M), SurfaceTension::of(4.0, &MN_M), SurfaceTension::of(15.0, &MN_M)),
                "from memory: 3 to 5 mN/m with surfactant, less with strong detergent",
            ),
        )
    } else {
        clean
    };
    let at = |x: f64| Dissipation::of(x, &W_KG);
    let (range, question, source) = match feed.class {
        Some(class) => {
            let [low, likely, high] = class.dissipation();
            ((low, likely, high), "", class.shear_mark.text())
        }
        None => (
            (at(1.0), at(1000.0), at(10_000.0)),
            "Which pump lifts the water to the separator?",
            "kind of pump not said; taken as the centrifugal pump of most sumps, engineering judgement".to_owned(),
        ),
    };
    let epsilon =
        assume(t, w, standby("power dissipated in the pump", (&W_KG, &W_KG), "inlet.pump", question, range, source));
    by!(t, "largest droplet that survives the pump", hinze_droplet::diameter(tension, fluids.cold.density, epsilon))
}

/// Finds the solids.
pub fn solids<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Solids {
    t.section("solids");
    let um = |x: f64| Length::of(x, &UM);
    let rho = |x: f64| Density::of(x, &KG_M3);
    Solids {
        d50: stated_or(
            t,
            w,
            &e.solids.d50,
            standby(
                "median grain size",
                (&UM, &UM),
                "solids.d50",
                "How fine are the solids?",
                (um(20.0), um(60.0), um(200.0)),
                "engineering judgement: silt to fine sand off paved yards",
            ),
        ),
        density: stated_or(
            t,
            w,
            &e.solids.density,
            standby(
                "density of the grains",
                (&LB_FT3, &KG_M3),
                "solids.density",
                "What are the solids made of?",
                (rho(1200.0), rho(2650.0), rho(2650.0)),
                "quartz; the low end for organic or oil-coated solids",
            ),
        ),
        in_sludge: stated_or(
            t,
            w,
            &e.solids.in_sludge,
            standby(
                "dry solids in settled sludge",
                (&PERCENT, &PERCENT),
                "solids.in_sludge",
                "How thick does the sludge settle?",
                (ratio(0.10), ratio(0.20), ratio(0.40)),
                "engineering judgement",
            ),
        ),
        sludge_density: stated_or(
            t,
            w,
            &e.solids.sludge_density,
            standby(
                "density of settled sludge",
                (&LB_FT3, &KG_M3),
                "solids.sludge_density",
                "How heavy is the settled sludge?",
                (rho(1041.0), rho(1121.0), rho(1201.0)),
                "from memory: 65 to 75 lb/ft3 wet",
            ),
        ),
    }
}
