//! Whose droplets come to the unit: each water of a case brings its own, side by side, and counts by the oil in it.

use super::cases::{Amount, Brings, Case, FeedState};
use super::chemicals::{Dosed, Which, tension};
use super::droplets::{Droplets, Way, droplets};
use super::fluids::Fluids;
use super::shear::{Shear, Sheared};
use super::waters::place_of;
use super::ways::weight;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Droplets as Said, Rain, Stream};
use crate::enquiry::keys::Place;
use crate::provenance::{Part, Stop, Trail, Val, WhatIf, Whence, given};
use crate::reckon;
use std::borrow::Cow;
use stillrise_handbook::fluids::facilities::{Facility, facility};
use stillrise_units::catalog::PERCENT;
use stillrise_units::{MassRate, SurfaceTension, Typed, ratio};

/// Droplets as one or more waters bring them, and what shears them.
#[derive(Debug, Clone)]
pub struct Arrival {
    /// The droplets at the unit.
    pub droplets: Droplets,
    /// What shears them.
    pub shear: Option<Shear>,
    /// The waters that bring them.
    pub waters: Vec<Which>,
    /// The cases that they come in, by place.
    pub cases: Vec<usize>,
}

/// Finds the droplets of every case with a known content: each water that comes brings its own, which stay side by side, and
/// counts by the oil that rises in it.
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
    // What is let go into a stream goes its way.
    let way = |case: &Case, k: usize| match case.which[k] {
        Which::Bath(_) => case.which[..k].iter().rev().find(|which| !matches!(which, Which::Bath(_))).copied(),
        which => Some(which),
    };
    let mut keys: Vec<Came> = Vec::new();
    let mut found: Vec<Arrival> = Vec::new();
    for (place, case) in cases.iter_mut().enumerate().filter(|(_, c)| c.content.is_some()) {
        let shared = shared_tension(dosed, case);
        // The places of the waters in the case, by the droplets that they bring.
        let mut brought: Vec<(usize, Vec<usize>)> = Vec::new();
        for k in 0..case.which.len().max(1) {
            let which = if case.which.is_empty() { None } else { way(case, k) };
            let alone = which.and_then(|which| tension(dosed, &[which]));
            let tension = alone.into_iter().chain(shared).min_by(|a, b| a.q.si().total_cmp(&b.q.si()));
            let owner = which.as_ref().map_or(Own::None, own);
            let key = (owner, tension.map(|v| v.q.value.to_bits()));
            let arrival = match keys.iter().position(|known| *known == key) {
                Some(arrival) => arrival,
                None => {
                    let name = case.parts.get(k).unwrap_or(&case.name);
                    if keys.is_empty() {
                        t.part(Part::Droplets, "droplets");
                    } else {
                        t.section(format_args!("droplets: {name}"));
                    }
                    let (own, of, kind) = match owner {
                        Own::None => (None, Sheared::All, places.general),
                        Own::Rain => {
                            (e.rain.as_ref().and_then(|rain| rain.droplets.as_ref()), Sheared::All, places.general)
                        }
                        Own::Stream(k) => (e.streams[k].droplets.as_ref(), Sheared::Stream(k), places.streams[k]),
                        Own::Drain(k) => (None, Sheared::Drain(k), places.general),
                    };
                    let apart = if places.differ { places.apart(e, owner) } else { None };
                    let said = said(&e.droplets, own);
                    let way = Way { said, of, tension, feed, place: kind, apart };
                    let (droplets, shear) = droplets(t, w, e, fluids, &way)?;
                    keys.push(key);
                    found.push(Arrival { droplets, shear, waters: Vec::new(), cases: Vec::new() });
                    found.len() - 1
                }
            };
            let arrives = &mut found[arrival];
            if let Some(which) = which.filter(|which| !arrives.waters.contains(which)) {
                arrives.waters.push(which);
            }
            match brought.iter_mut().find(|(of, _)| *of == arrival) {
                Some((_, waters)) => waters.push(k),
                None => brought.push((arrival, vec![k])),
            }
        }
        for (arrival, _) in &brought {
            found[*arrival].cases.push(place);
        }
        case.brings = shares(t, case, &brought);
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
        found.push(Arrival { droplets, shear, waters: Vec::new(), cases: Vec::new() });
    }
    Ok(found)
}

/// From which share of the water on, one that carries a product carries it into what comes with it too: with less it is
/// diluted ten times and more, and no longer counts there. Judgement.
const DILUTED: f64 = 0.1;

/// The lowest tension that a product of one water leaves in all that comes together; `None` where none is strong enough.
fn shared_tension(dosed: &[Dosed], case: &Case) -> Option<Val<SurfaceTension>> {
    let amount = |k: usize| match case.loads.get(k).map(|load| load.amount) {
        Some(Amount::Flow(flow)) => flow.q.si(),
        Some(Amount::Volume(volume)) => volume.q.si(),
        None => 1.0,
    };
    let all: f64 = (0..case.which.len()).map(amount).sum();
    let strong = dosed.iter().filter(|product| {
        let carried = (0..case.which.len()).filter(|k| product.reaches(case.which[*k]));
        carried.map(amount).sum::<f64>() >= DILUTED * all
    });
    let tensions = strong.filter(|product| case.which.iter().any(|which| product.reaches(*which)));
    tensions.filter_map(|product| product.tension).min_by(|a, b| a.q.si().total_cmp(&b.q.si()))
}

/// By what droplets are told apart: whose they are, and the tension that what goes into their water leaves.
type Came = (Own, Option<u64>);

/// Which share of the oil that rises comes in which droplets.
fn shares<T: Trail>(t: &mut T, case: &Case, brought: &[(usize, Vec<usize>)]) -> Vec<Brings> {
    if let [(arrival, _)] = brought {
        return vec![Brings { arrival: *arrival, share: None }];
    }
    t.section(format_args!("{}: whose droplets come", case.name));
    let mut all: Option<Val<MassRate>> = None;
    let mut each: Vec<(usize, Val<MassRate>)> = Vec::new();
    for (arrival, waters) in brought {
        let mut own: Option<Val<MassRate>> = None;
        for load in waters.iter().filter_map(|k| case.loads.get(*k)) {
            let flow = match load.amount {
                Amount::Flow(flow) => flow,
                Amount::Volume(volume) => weight(t, "volume of an average day, as a flow", volume),
            };
            let oil = match load.heavy {
                None => {
                    reckon!(t, "free oil that comes in it", [LB_D, KG_D], (flow = flow, free = load.free) flow * free)
                }
                Some(heavy) => {
                    reckon!(t, "free oil that rises and comes in it", [LB_D, KG_D], (flow = flow, free = load.free, heavy = heavy) flow * (free - heavy))
                }
            };
            own = Some(match own {
                None => oil,
                Some(sum) => {
                    reckon!(t, "with another of the same droplets", [LB_D, KG_D], (sum = sum, oil = oil) sum + oil)
                }
            });
        }
        let Some(own) = own else { continue };
        all = Some(match all {
            None => own,
            Some(sum) => reckon!(t, "free oil of the waters so far", [LB_D, KG_D], (sum = sum, own = own) sum + own),
        });
        each.push((*arrival, own));
    }
    // Where no oil rises, whose droplets come makes no difference: each as much as the others.
    let Some(all) = all.filter(|all| all.q.si() > 0.0) else {
        let n = brought.len() as f64;
        let even = |(arrival, _): &(usize, Vec<usize>)| {
            let share = given(
                t,
                "share of each",
                Some((&PERCENT, &PERCENT)),
                ratio(1.0 / n),
                Whence::Definition,
                "no oil rises",
            );
            Brings { arrival: *arrival, share: Some(share) }
        };
        return brought.iter().map(even).collect();
    };
    let mut brings: Vec<Brings> = Vec::new();
    for (arrival, own) in each {
        let share = reckon!(t, "share of the oil that comes in these droplets", [PERCENT, PERCENT], (own = own, all = all) own / all);
        brings.push(Brings { arrival, share: Some(share) });
    }
    let of = |one: &Brings| one.share.map_or(1.0, |share| share.q.si());
    brings.sort_by(|a, b| of(b).total_cmp(&of(a)));
    brings
}

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
