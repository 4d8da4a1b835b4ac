//! The waters of a case on their way to the unit: whose droplets it brings, how warm and how salty it is.

use super::cases::{Case, FeedState};
use super::chemicals::{Dosed, Which, tension};
use super::droplets::{Droplets, Way, droplets};
use super::fluids::{Fluids, WaterState, water};
use super::shear::Shear;
use super::stated::stated;
use super::waters::Water;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Droplets as Said, Stream};
use crate::enquiry::keys::Quantity;
use crate::provenance::{Node, Stop, Trail, Val, WhatIf, choose};
use crate::{by, say};
use std::borrow::Cow;
use stillrise_handbook::fluids::{mixed_salinity, mixed_temperature, oil_density};
use stillrise_units::catalog::UM;
use stillrise_units::{Density, Flow, Ratio, Temperature};

/// Droplets of one or more cases, and what shears them.
#[derive(Debug, Clone)]
pub struct Arrival {
    /// The droplets at the unit.
    pub droplets: Droplets,
    /// What shears them.
    pub shear: Option<Shear>,
    /// The cases that bring them, by place.
    pub cases: Vec<usize>,
}

/// Water and oil of a case whose waters are warmer, colder or saltier than the water of the season.
#[derive(Debug, Clone)]
pub struct OwnFluids {
    /// The water, cold and warm.
    pub water: [WaterState; 2],
    /// The oil that is slowest to rise in it.
    pub oil: [Val<Density>; 2],
}

/// Finds the droplets of every case with a known content: of waters that coincide the finest, which is cautious.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn arrivals<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    dosed: &[Dosed],
    feed: &FeedState,
    cases: &mut [Case],
) -> Result<Vec<Arrival>, Stop> {
    let own = |which: &Which| match which {
        Which::Stream(k) => Some(*k).filter(|k| e.streams[*k].droplets.is_some() || !e.streams[*k].shear.is_empty()),
        _ => None,
    };
    let mut keys: Vec<(Vec<Option<usize>>, Option<u64>)> = Vec::new();
    let mut found: Vec<Arrival> = Vec::new();
    for (place, case) in cases.iter_mut().enumerate().filter(|(_, c)| c.content.is_some()) {
        let tension = tension(dosed, &case.which);
        // A bath goes the way of its stream.
        let ways = case.which.iter().filter(|which| !matches!(which, Which::Bath(_)));
        let mut streams: Vec<Option<usize>> = ways.map(own).collect();
        streams.sort_unstable();
        streams.dedup();
        if streams.is_empty() {
            streams.push(None);
        }
        let key = (streams.clone(), tension.map(|v| v.q.value.to_bits()));
        if let Some(k) = keys.iter().position(|known| *known == key) {
            found[k].cases.push(place);
            case.arrival = k;
            continue;
        }
        if keys.is_empty() {
            t.section("droplets");
        } else {
            t.section(format_args!("droplets: {}", case.name));
        }
        let mut several = Vec::new();
        for stream in streams {
            let said = said(&e.droplets, stream.and_then(|k| e.streams[k].droplets.as_ref()));
            several.push(droplets(t, w, e, fluids, &Way { said, stream, tension, feed })?);
        }
        let (droplets, shear) = finest(t, several)?;
        case.arrival = found.len();
        keys.push(key);
        found.push(Arrival { droplets, shear, cases: vec![place] });
    }
    if found.is_empty() {
        t.section("droplets");
        let way = Way { said: Cow::Borrowed(&e.droplets), stream: None, tension: None, feed };
        let (droplets, shear) = droplets(t, w, e, fluids, &way)?;
        found.push(Arrival { droplets, shear, cases: Vec::new() });
    }
    Ok(found)
}

/// What is said of the droplets of a stream: its own words first.
fn said<'a>(general: &'a Said, own: Option<&Said>) -> Cow<'a, Said> {
    let Some(own) = own else { return Cow::Borrowed(general) };
    let sized = own.d50.is_given() || own.arriving.is_given() || own.table.is_given();
    let mut said = if sized { own.clone() } else { general.clone() };
    if own.spread.is_given() {
        said.spread = own.spread.clone();
    } else if !said.spread.is_given() {
        said.spread = general.spread.clone();
    }
    said.after_pump = if own.after_pump.0.is_some() { own.after_pump.clone() } else { general.after_pump.clone() };
    Cow::Owned(said)
}

/// The set with the smallest median.
fn finest<T: Trail>(t: &mut T, several: Vec<(Droplets, Option<Shear>)>) -> Result<(Droplets, Option<Shear>), Stop> {
    let medians: Vec<Node> = several.iter().map(|(d, _)| d.d50.at).collect();
    let finest = several.into_iter().min_by(|a, b| a.0.d50.q.value.total_cmp(&b.0.d50.q.value));
    let (mut droplets, shear) = finest.ok_or_else(|| Stop {
        doing: "droplets".to_owned(),
        reason: "no water brings any".to_owned(),
        formula: false,
    })?;
    if medians.len() > 1 {
        let because = "the finest of those that coincide, which is cautious";
        let (label, units) = ("volume median diameter at the unit", Some((&UM, &UM) as crate::provenance::Pair));
        droplets.d50 = choose(t, label, units, droplets.d50.q, "the droplets of each water", because, &medians);
    }
    Ok((droplets, shear))
}

/// Waters so far: their flow, temperature cold and warm, and salinity.
type Mixed = (Val<Flow>, [Val<Temperature>; 2], Val<Ratio>);

/// Water and oil of a case of these waters, where one of them states a temperature or a salinity of its own.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn own_fluids<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    waters: &[&Water],
) -> Result<Option<OwnFluids>, Stop> {
    let stream = |water: &Water| match water.which {
        Which::Stream(k) => Some(&e.streams[k]),
        _ => None,
    };
    let differs =
        |s: &Stream| s.temperature.is_given() || s.coldest.is_given() || s.warmest.is_given() || s.salinity.is_given();
    let bath = |water: &Water| match water.which {
        Which::Bath(k) => Some(&e.dumps[k].temperature),
        _ => None,
    };
    let warmed = waters.iter().filter_map(|water| bath(water)).any(Quantity::is_given);
    if !warmed && !waters.iter().filter_map(|water| stream(water)).any(differs) {
        return Ok(None);
    }
    let mut mixed: Option<Mixed> = None;
    for one in waters {
        let own = stream(one);
        let bath = bath(one);
        let name = &one.name;
        let mut first = |label: &str, keys: [Option<&Quantity<Temperature>>; 2], general: Val<Temperature>| {
            let label = say!(T, "{label} {name}");
            keys.into_iter().flatten().find_map(|key| stated(t, w, &label, key)).unwrap_or(general)
        };
        let at = own.map(|s| &s.temperature).or(bath);
        let cold = first("coldest", [own.map(|s| &s.coldest), at], fluids.cold.temperature);
        let warm = first("warmest", [own.map(|s| &s.warmest), at], fluids.warm.temperature);
        let salt = own.and_then(|s| stated(t, w, &say!(T, "dissolved salt, {name}"), &s.salinity));
        let salt = salt.unwrap_or(fluids.salinity);
        mixed = Some(match mixed {
            None => (one.flow, [cold, warm], salt),
            Some((q, [c, h], s)) => (
                crate::reckon!(t, "flow so far", [GPM, M3_H], (sum = q, next = one.flow) sum + next),
                [
                    by!(t, "coldest, mixed", mixed_temperature::temperature(q, c, one.flow, cold))?,
                    by!(t, "warmest, mixed", mixed_temperature::temperature(q, h, one.flow, warm))?,
                ],
                by!(t, "dissolved salt, mixed", mixed_salinity::salinity(q, s, one.flow, salt))?,
            ),
        });
    }
    let Some((_, [cold, warm], salt)) = mixed else { return Ok(None) };
    // Whatever comes colder than the other end of the year is the cold corner.
    let (cold, warm) = if cold.q <= warm.q { (cold, warm) } else { (warm, cold) };
    let oil = fluids.heaviest(super::fluids::Season::Cold);
    let mut state = |label: &str, at: Val<Temperature>| -> Result<(WaterState, Val<Density>), Stop> {
        let density = by!(t, label, oil_density::density(oil.density_15, at, oil.group))?;
        Ok((water(t, at, salt)?, density))
    };
    let (cold, oil_cold) = state("density of the oil in it, cold", cold)?;
    let (warm, oil_warm) = state("density of the oil in it, warm", warm)?;
    Ok(Some(OwnFluids { water: [cold, warm], oil: [oil_cold, oil_warm] }))
}
