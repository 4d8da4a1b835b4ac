//! The waters of a case on their way to the unit: whose droplets it brings, how warm and how salty it is.

use super::cases::{Case, FeedState, Kind};
use super::chemicals::{Dosed, Which, tension};
use super::droplets::{Droplets, Way, droplets};
use super::dumps::Parts;
use super::fluids::{Fluids, WaterState, water};
use super::shear::{Shear, Sheared};
use super::stated::stated;
use super::waters::{Water, place_of};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Droplets as Said, Rain, Stream};
use crate::enquiry::keys::{Place, Quantity};
use crate::provenance::{Node, Part, Stop, Trail, Val, WhatIf, Whence, choose, given};
use crate::{by, reckon, say};
use std::borrow::Cow;
use stillrise_handbook::fluids::facilities::{Facility, facility};
use stillrise_handbook::fluids::{mixed_salinity, mixed_temperature, oil_density};
use stillrise_units::catalog::{D, DEG_C, DEG_F, UM};
use stillrise_units::{Density, Flow, Ratio, Temperature, Time, Typed, Volume};

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
    /// The water at the plates, cold and warm: what comes warm may have cooled.
    pub water: [WaterState; 2],
    /// The water as it arrives, cold and warm.
    pub arrives: [WaterState; 2],
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
    let places = Places::of(e, dosed);
    let own = |which: &Which| match which {
        Which::Stream(k) if places.differ || e.streams[*k].droplets.is_some() || !e.streams[*k].shear.is_empty() => {
            Own::Stream(*k)
        }
        Which::Drain(k) if !e.containments[*k].shear.is_empty() => Own::Drain(*k),
        Which::Rain if places.differ || e.rain.as_ref().is_some_and(|rain| rain.droplets.is_some()) => Own::Rain,
        _ => Own::None,
    };
    let mut keys: Vec<(Vec<Own>, Option<u64>)> = Vec::new();
    let mut found: Vec<Arrival> = Vec::new();
    let mut worked: Vec<(Own, Option<u64>, Brought)> = Vec::new();
    for (place, case) in cases.iter_mut().enumerate().filter(|(_, c)| c.content.is_some()) {
        let tension = tension(dosed, &case.which);
        // A bath goes the way of its stream.
        let ways = case.which.iter().filter(|which| !matches!(which, Which::Bath(_)));
        let mut owners: Vec<Own> = ways.map(own).collect();
        owners.sort_unstable();
        owners.dedup();
        if owners.is_empty() {
            owners.push(Own::None);
        }
        let bits = tension.map(|v| v.q.value.to_bits());
        let key = (owners.clone(), bits);
        if let Some(k) = keys.iter().position(|known| *known == key) {
            found[k].cases.push(place);
            case.arrival = k;
            continue;
        }
        if keys.is_empty() {
            t.part(Part::Droplets, "droplets");
        } else {
            t.section(format_args!("droplets: {}", case.name));
        }
        let mut several = Vec::new();
        for owner in owners {
            // What a water brings alone it brings with others, too: it is worked once.
            if let Some((.., known)) = worked.iter().find(|(of, at, _)| (*of, *at) == (owner, bits)) {
                several.push(known.clone());
                continue;
            }
            let (own, of, place) = match owner {
                Own::None => (None, Sheared::All, places.general),
                Own::Rain => (e.rain.as_ref().and_then(|rain| rain.droplets.as_ref()), Sheared::All, places.general),
                Own::Stream(k) => (e.streams[k].droplets.as_ref(), Sheared::Stream(k), places.streams[k]),
                Own::Drain(k) => (None, Sheared::Drain(k), places.general),
            };
            let apart = if places.differ { places.apart(e, owner) } else { None };
            let said = said(&e.droplets, own);
            let one = droplets(t, w, e, fluids, &Way { said, of, tension, feed, place, apart })?;
            worked.push((owner, bits, one.clone()));
            several.push(one);
        }
        let (droplets, shear) = finest(t, several)?;
        case.arrival = found.len();
        keys.push(key);
        found.push(Arrival { droplets, shear, cases: vec![place] });
    }
    if found.is_empty() {
        t.part(Part::Droplets, "droplets");
        let way = Way {
            said: Cow::Borrowed(&e.droplets),
            of: Sheared::All,
            tension: None,
            feed,
            place: places.general,
            apart: None,
        };
        let (droplets, shear) = droplets(t, w, e, fluids, &way)?;
        found.push(Arrival { droplets, shear, cases: Vec::new() });
    }
    Ok(found)
}

/// Droplets that a water brings, and what shears them.
type Brought = (Droplets, Option<Shear>);

/// Of which water droplets are found apart from those of all.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Own {
    None,
    Rain,
    Stream(usize),
    Drain(usize),
}

/// The kinds of place whose droplets stand by, by water.
struct Places {
    /// That of all water but the streams: beside a wash the rain comes off a yard.
    general: Option<&'static Facility>,
    /// That of each stream.
    streams: Vec<Option<&'static Facility>>,
    /// The names of the streams.
    names: Vec<String>,
    /// Whether they differ from each other and no size is stated of all: each water has its own then.
    differ: bool,
}

impl Places {
    fn of(e: &Enquiry, dosed: &[Dosed]) -> Self {
        let site = e.head.facility.as_deref().and_then(facility);
        let rains = e.rain.is_some() || !e.surfaces.is_empty();
        let general = if rains { site.map(Facility::rain) } else { site };
        let streams: Vec<_> = (0..e.streams.len()).map(|i| place_of(e, dosed, i).0).collect();
        let typical = |place: &Option<&'static Facility>| place.map(|f| f.droplet_d50.typical_si().to_bits());
        let differ = !is_sized(&e.droplets) && streams.iter().any(|place| typical(place) != typical(&general));
        let name = |(i, s): (usize, &Stream)| s.name.0.clone().unwrap_or_else(|| format!("stream {}", i + 1));
        Self { general, streams, names: e.streams.iter().enumerate().map(name).collect(), differ }
    }

    /// Under which keys a water is asked for its droplets, and what it is called.
    fn apart(&self, e: &Enquiry, owner: Own) -> Option<(Place, &str)> {
        match owner {
            Own::None | Own::Drain(_) => None,
            Own::Rain => Some((e.rain.as_ref().unwrap_or(&Rain::default()).droplets().inside(), "rain")),
            Own::Stream(k) => Some((e.streams.get(k)?.droplets().inside(), &self.names[k])),
        }
    }
}

/// Whether a size is stated.
fn is_sized(said: &Said) -> bool {
    said.d50.is_given() || said.arriving.is_given() || said.table.is_given()
}

/// What is said of the droplets of a stream: its own words first.
fn said<'a>(general: &'a Said, own: Option<&Said>) -> Cow<'a, Said> {
    let Some(own) = own else { return Cow::Borrowed(general) };
    let mut said = if is_sized(own) { own.clone() } else { general.clone() };
    if own.spread.is_given() {
        said.spread = own.spread.clone();
    } else if !said.spread.is_given() {
        said.spread = general.spread.clone();
    }
    said.after_pump = if own.after_pump.0.is_some() { own.after_pump.clone() } else { general.after_pump.clone() };
    Cow::Owned(said)
}

/// The set with the smallest median.
fn finest<T: Trail>(t: &mut T, several: Vec<Brought>) -> Result<Brought, Stop> {
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

/// A water as cold as it may be when it comes to the plates: its warmth is lost between the times that it comes.
fn cooled<T: Trail>(t: &mut T, name: &str, arrives: Val<Temperature>, fluids: &Fluids) -> Val<Temperature> {
    let season = fluids.cold.temperature;
    if arrives.q <= season.q {
        return arrives;
    }
    let label = say!(T, "coldest {name} at the plates");
    let among = "the temperature at which it arrives, and the coldest water";
    let because = "what stands in the unit cools between the times that warm water comes; one that never stops is stated by its `coldest`";
    choose(t, &label, Some((&DEG_F, &DEG_C)), season.q, among, because, &[season.at, arrives.at])
}

/// What a volume of an average day weighs where heat is mixed: that volume as a flow.
fn weight<T: Trail>(t: &mut T, label: &str, volume: Val<Volume>) -> Val<Flow> {
    let day = given(t, "a day", Some((&D, &D)), Time::of(1.0, &D), Whence::Definition, "24 h");
    reckon!(t, label, [GPD, M3_D], (volume = volume, day = day) volume / day)
}

/// The temperature of a water with what baths of a temperature of their own bring of its average day: its content is the
/// mean with them too.
fn with_dumps<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    one: &Water,
    [mut cold, mut warm]: [Val<Temperature>; 2],
) -> Result<[Val<Temperature>; 2], Stop> {
    let Some(Parts { bare, baths }) = &one.dumped else { return Ok([cold, warm]) };
    if !baths.iter().any(|(k, _)| e.dumps[*k].temperature.is_given()) {
        return Ok([cold, warm]);
    }
    let mut so_far = weight(t, &say!(T, "{} on an average day without its baths, as a flow", one.name), *bare);
    for (k, volume) in baths {
        let next = weight(t, "bath on an average day, as a flow", *volume);
        if let Some(own) = stated(t, w, "temperature of the bath", &e.dumps[*k].temperature) {
            cold = by!(t, "coldest, mean with the bath", mixed_temperature::temperature(so_far, cold, next, own))?;
            warm = by!(t, "warmest, mean with the bath", mixed_temperature::temperature(so_far, warm, next, own))?;
        }
        so_far = reckon!(t, "so far, as a flow", [GPD, M3_D], (sum = so_far, next = next) sum + next);
    }
    Ok([cold, warm])
}

/// Waters so far: their flow, temperature cold at the plates, cold as they arrive and warm, and salinity.
type Mixed = (Val<Flow>, [Val<Temperature>; 3], Val<Ratio>);

/// Water and oil of a case of these waters, where one of them states a temperature or a salinity of its own: what comes at
/// a time mixes by flow, a mean of days by volume, as what they carry does.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn own_fluids<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    (kind, waters): (Kind, &[&Water]),
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
    // While a bath is let go its stream is what it is without one.
    let hot = |dump: &(usize, Val<Volume>)| e.dumps[dump.0].temperature.is_given();
    let by_mean = |water: &&Water| kind != Kind::Bath && water.dumped.iter().flat_map(|parts| &parts.baths).any(hot);
    let warmed = waters.iter().filter_map(|water| bath(water)).any(Quantity::is_given);
    let warmed = warmed || waters.iter().any(by_mean);
    if !warmed && !waters.iter().filter_map(|water| stream(water)).any(differs) {
        return Ok(None);
    }
    let mut mixed: Option<Mixed> = None;
    for one in waters {
        let own = stream(one);
        let bath = bath(one);
        let name = &one.name;
        let mut first = |label: &str, keys: [Option<&Quantity<Temperature>>; 2], general: Val<Temperature>| {
            let label = say!(T, "{label} water of {name}");
            keys.into_iter().flatten().find_map(|key| stated(t, w, &label, key)).unwrap_or(general)
        };
        let at = own.map(|s| &s.temperature).or(bath);
        let cold = first("coldest", [own.map(|s| &s.coldest), at], fluids.cold.temperature);
        let warm = first("warmest", [own.map(|s| &s.warmest), at], fluids.warm.temperature);
        let [cold, warm] = if kind == Kind::Bath { [cold, warm] } else { with_dumps(t, w, e, one, [cold, warm])? };
        let cools = own.is_none_or(|s| !s.coldest.is_given());
        let plates = if cools { cooled(t, name, cold, fluids) } else { cold };
        let salt = own.and_then(|s| stated(t, w, &say!(T, "dissolved salt, {name}"), &s.salinity));
        let salt = salt.unwrap_or(fluids.salinity);
        let next = match kind {
            Kind::Days => weight(t, &say!(T, "{name} on an average day, as a flow"), one.per_day),
            _ => one.flow,
        };
        mixed = Some(match mixed {
            None => (next, [plates, cold, warm], salt),
            Some((q, [p, c, h], s)) => (
                reckon!(t, "flow so far", [GPM, M3_H], (sum = q, next = next) sum + next),
                [
                    by!(t, "coldest at the plates, mixed", mixed_temperature::temperature(q, p, next, plates))?,
                    by!(t, "coldest, mixed", mixed_temperature::temperature(q, c, next, cold))?,
                    by!(t, "warmest, mixed", mixed_temperature::temperature(q, h, next, warm))?,
                ],
                by!(t, "dissolved salt, mixed", mixed_salinity::salinity(q, s, next, salt))?,
            ),
        });
    }
    let Some((_, [plates, cold, warm], salt)) = mixed else { return Ok(None) };
    // Whatever comes colder than the other end of the year is the cold corner.
    let (cold, warm) = if cold.q <= warm.q { (cold, warm) } else { (warm, cold) };
    let plates = if cold.q <= plates.q { cold } else { plates };
    let oil = fluids.heaviest_in(plates.q);
    let mut state = |label: &str, at: Val<Temperature>| -> Result<(WaterState, Val<Density>), Stop> {
        let density = by!(t, label, oil_density::density(oil.density_15, at, oil.group))?;
        Ok((water(t, at, salt)?, density))
    };
    let (at_plates, oil_cold) = state("density of the oil in it, cold", plates)?;
    let (warm, oil_warm) = state("density of the oil in it, warm", warm)?;
    let arrives = if cold.q == plates.q { at_plates.clone() } else { water(t, cold, salt)? };
    Ok(Some(OwnFluids { arrives: [arrives, warm.clone()], water: [at_plates, warm], oil: [oil_cold, oil_warm] }))
}
