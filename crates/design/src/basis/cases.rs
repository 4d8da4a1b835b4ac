//! The cases: which waters coincide, what they come to, and how they are fed. (long because every kind of case is composed here)

use super::SpillState;
use super::chemicals::{Dosed, Which};
use super::containment::{Containments, in_rain};
use super::dumps::Peaks;
use super::feed::fed;
pub use super::feed::{Cycle, FeedState, Pumps};
use super::fluids::Fluids;
use super::stated::stated;
use super::waters::{Content, Water};
use super::ways::{OwnFluids, own_fluids};
use crate::enquiry::Enquiry;
use crate::provenance::{Stop, Trail, Val, WhatIf, Whence, choose, given};
use crate::{by, reckon, say};
use stillrise_handbook::separation::{batch_mixture, mixture};
use stillrise_units::catalog::{GPM, M3_H, MG_L};
use stillrise_units::{Concentration, Flow, Ratio, Time, Typed, Volume};

/// What kind of event a case is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// The design storm alone.
    Storm,
    /// Storm and the waters that may run with it.
    StormAndWash,
    /// The dry-weather waters together.
    Dry,
    /// One of several dry-weather waters while the others do not run.
    Alone,
    /// What several dry-weather waters bring as a mean of all days, at their flow together.
    Days,
    /// Dry-weather waters while a bath is let go into one of them.
    Bath,
    /// Water drained from a containment ahead.
    DrainDown,
    /// Oil arriving as a spill: a matter of storage, not of steady removal.
    Spill,
    /// A flow that was only stated.
    Stated,
    /// A case of the enquiry's own.
    Extra,
}

/// Droplets that a case brings.
#[derive(Debug, Clone, Copy)]
pub struct Brings {
    /// Their place among the arrivals of the basis.
    pub arrival: usize,
    /// Share of the oil that rises that comes in them; `None` where all of it does.
    pub share: Option<Val<Ratio>>,
}

/// How much of a water counts.
#[derive(Debug, Clone, Copy)]
pub enum Amount {
    /// What comes at a time.
    Flow(Val<Flow>),
    /// What comes on an average day.
    Volume(Val<Volume>),
}

/// What one water puts into a case.
#[derive(Debug, Clone, Copy)]
pub struct Load {
    /// How much of it counts.
    pub amount: Amount,
    /// Its free oil.
    pub free: Val<Concentration>,
    /// Of it, what does not rise.
    pub heavy: Option<Val<Concentration>>,
}

/// One case.
#[derive(Debug, Clone)]
pub struct Case {
    /// Its name.
    pub name: String,
    /// What happens in it, whichever pumps run.
    pub event: String,
    /// Its kind.
    pub kind: Kind,
    /// The waters in it.
    pub parts: Vec<String>,
    /// The same, as they stand in the enquiry.
    pub which: Vec<Which>,
    /// Flow that arrives.
    pub inflow: Val<Flow>,
    /// How long it lasts, where a bath that is let go makes it up.
    pub lasts: Option<Val<Time>>,
    /// The bath that is let go: the place of its stream among the waters, and its own among the baths of that.
    pub bath: Option<[usize; 2]>,
    /// Of one water alone: its share of the volume of all dry-weather waters on days that they run.
    pub of_day: Option<Val<Ratio>>,
    /// How far its oil rises above its mean; nothing where nothing is known of what it carries.
    pub peaks: Option<Peaks>,
    /// Which of several pumps run.
    pub pumps: Option<Pumps>,
    /// How they run, where the sump is known and they lift more than arrives.
    pub cycle: Option<Cycle>,
    /// Flow that reaches the unit or units, after pump and flow cap.
    pub feed: Val<Flow>,
    /// What it carries; nothing for a spill, nor for fire-fighting water of which nobody said it.
    pub content: Option<Content>,
    /// What each of its waters puts into it, where several come.
    pub loads: Vec<Load>,
    /// The droplets it brings, those first that bring most of the oil that rises; nothing where its oil is not known.
    pub brings: Vec<Brings>,
    /// Water and oil, where they differ from those of the season.
    pub own: Option<OwnFluids>,
}

impl Case {
    /// Whether it is the same as a case of another basis: the same waters, lifted by the same pumps.
    #[must_use]
    pub fn is_that_of(&self, other: &Self) -> bool {
        let key = |c: &Self| (c.kind, c.pumps, c.bath);
        key(self) == key(other) && self.which == other.which
    }

    /// What its waters bring on a day that they run; `None` where that is not known of each.
    #[must_use]
    pub fn brought_in_a_day(&self, waters: &[Water]) -> Option<Volume> {
        let of_water = |which: &Which| waters.iter().find(|w| w.which == *which)?.day.map(|day| day.q);
        let all: Option<Vec<Volume>> = self.which.iter().map(of_water).collect();
        let all = all.filter(|all| all.len() == self.parts.len())?;
        Some(all.into_iter().fold(Volume::from_si(0.0), |sum, day| sum + day))
    }

    /// A case of which nothing but its flow is known.
    fn of_a_flow(name: String, kind: Kind, inflow: Val<Flow>) -> Self {
        Case {
            event: name.clone(),
            name,
            kind,
            parts: Vec::new(),
            which: Vec::new(),
            inflow,
            lasts: None,
            bath: None,
            of_day: None,
            peaks: None,
            pumps: None,
            cycle: None,
            feed: inflow,
            content: None,
            loads: Vec::new(),
            brings: Vec::new(),
            own: None,
        }
    }
}

/// Takes a case up in every state that the pumps can be in while it lasts, each under a name of its own.
fn take<T: Trail>(t: &mut T, cases: &mut Vec<Case>, (feed, dry): (&FeedState, bool), base: Case) -> Result<(), Stop> {
    let states = if base.kind == Kind::Spill { Vec::new() } else { feed.states(dry, base.inflow) };
    let each = if states.is_empty() { vec![None] } else { states.into_iter().map(Some).collect() };
    for pumps in each {
        let wanted = pumps.map_or_else(|| base.name.clone(), |p| [&*base.name, ", ", p.text()].concat());
        let mut name = wanted.clone();
        let mut k = 1;
        while cases.iter().any(|c| c.name == name) {
            k += 1;
            name = format!("{wanted} ({k})");
        }
        let to_unit = fed(t, base.inflow, feed, pumps);
        let cycle = if feed.pumped { feed.cycle(t, pumps, base.inflow)? } else { None };
        cases.push(Case { name, pumps, cycle, feed: to_unit, ..base.clone() });
    }
    Ok(())
}

/// Builds the table of cases.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
#[allow(clippy::too_many_arguments)]
pub fn cases<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    dosed: &[Dosed],
    waters: &[Water],
    feed: &FeedState,
    (spill, ahead): (Option<&SpillState>, Option<&Containments>),
) -> Result<Vec<Case>, Stop> {
    let mut cases = Vec::new();
    let about = (w, e, fluids);
    let rain: Vec<&Water> = waters.iter().filter(|w| w.is_rain).collect();
    let pits = in_rain::waters(t, w, e, (fluids, dosed), ahead)?;
    let wet: Vec<&Water> = waters.iter().filter(|w| !w.is_rain && w.with_rain).chain(&pits).collect();
    let dry: Vec<&Water> = waters.iter().filter(|w| !w.is_rain).collect();
    if !rain.is_empty() {
        let base = case(t, about, ("storm", Kind::Storm), &rain)?;
        take(t, &mut cases, (feed, false), base)?;
        if !wet.is_empty() {
            let all: Vec<&Water> = rain.iter().chain(&wet).copied().collect();
            let base = case(t, about, ("storm and other waters", Kind::StormAndWash), &all)?;
            take(t, &mut cases, (feed, false), base)?;
        }
    }
    if !dry.is_empty() {
        dry_weather(t, about, (waters, &dry), (feed, !rain.is_empty()), &mut cases)?;
    }
    for (i, block) in e.cases.iter().enumerate() {
        let name = block.name.0.clone().unwrap_or_else(|| "extra case".to_owned());
        t.section(&name);
        let Some(flow) = stated(t, w, &say!(T, "flow of {name}"), &block.flow) else { continue };
        let content = super::contents::of_case(t, w, e, fluids, dosed, i)?;
        let base = Case { which: vec![Which::Case(i)], content, ..Case::of_a_flow(name, Kind::Extra, flow) };
        take(t, &mut cases, (feed, false), base)?;
    }
    let steady = cases.iter().any(|c| c.content.is_some());
    if !steady && let Some(flow) = stated(t, w, "stated design flow", &e.stated.flow).or(feed.pump_flow) {
        t.section("stated flow");
        let content = Some(super::contents::unknown(t, w, e, fluids, dosed)?);
        let base = Case::of_a_flow("stated flow".to_owned(), Kind::Stated, flow);
        take(t, &mut cases, (feed, false), Case { which: vec![Which::Stated], content, ..base })?;
    }
    drain_downs(t, w, e, (fluids, dosed), feed, ahead, &mut cases)?;
    if rain.is_empty() && pits.len() > 1 {
        let all: Vec<&Water> = pits.iter().collect();
        let base = case(t, about, ("drain-downs together", Kind::DrainDown), &all)?;
        take(t, &mut cases, (feed, false), base)?;
    }
    if let Some((rate, part)) = spill.and_then(|spill| spill_rate(t, spill, ahead)) {
        t.section("spill");
        let base = Case::of_a_flow("spill".to_owned(), Kind::Spill, rate);
        take(t, &mut cases, (feed, false), Case { parts: vec![part], ..base })?;
    }
    Ok(cases)
}

/// The cases of dry weather: all its waters together, what they bring as a mean of all days, each alone, and baths that
/// are let go into them.
fn dry_weather<T: Trail>(
    t: &mut T,
    about: (&WhatIf, &Enquiry, &Fluids),
    (waters, dry): (&[Water], &[&Water]),
    feed: (&FeedState, bool),
    cases: &mut Vec<Case>,
) -> Result<(), Stop> {
    let several = dry.len() > 1;
    let name = if several { "dry-weather waters together" } else { &dry[0].name };
    let base = case(t, about, (name, Kind::Dry), dry)?;
    // Where no storm shows what all pumps do, they are taken to run in dry weather too.
    take(t, cases, feed, base)?;
    if several {
        let base = case(t, about, ("dry-weather waters, mean of all days", Kind::Days), dry)?;
        take(t, cases, feed, base)?;
        // A sample may be of one of them, which no weaker, warmer or coarser one helps; with a bath, below.
        for alone in dry.iter().filter(|water| water.baths.is_empty()) {
            let base = case(t, about, (&[&*alone.name, " alone"].concat(), Kind::Alone), &[alone])?;
            let of_day = of_day(t, dry, alone);
            take(t, cases, feed, Case { of_day, ..base })?;
        }
    }
    for (stream, bath) in waters.iter().enumerate().flat_map(|(i, water)| (0..water.baths.len()).map(move |k| (i, k))) {
        let base = while_let_go(t, about, (waters, dry), name, [stream, bath])?;
        take(t, cases, feed, base)?;
        if several {
            let own = [&waters[stream]];
            let base = while_let_go(t, about, (waters, &own), &waters[stream].name, [stream, bath])?;
            take(t, cases, feed, base)?;
        }
    }
    Ok(())
}

/// What share of the volume of a day on which all run one of several waters brings.
fn of_day<T: Trail>(t: &mut T, dry: &[&Water], alone: &Water) -> Option<Val<Ratio>> {
    let mut all: Option<Val<Volume>> = None;
    for water in dry {
        let day = water.day?;
        all = Some(match all {
            Some(sum) => {
                reckon!(t, "volume of the dry-weather waters in a day", [GAL, M3], (sum = sum, next = day) sum + next)
            }
            None => day,
        });
    }
    let (all, own) = (all?, alone.day?);
    let label = say!(T, "share of it that the {} brings", alone.name);
    Some(reckon!(t, &label, [PERCENT, PERCENT], (own = own, all = all) own / all))
}

/// Dry-weather waters with a bath that is let go into one of them: its flow, what it carries and how warm it is.
fn while_let_go<T: Trail>(
    t: &mut T,
    about: (&WhatIf, &Enquiry, &Fluids),
    (waters, dry): (&[Water], &[&Water]),
    name: &str,
    at: [usize; 2],
) -> Result<Case, Stop> {
    let stream = &waters[at[0]];
    let bath = &stream.baths[at[1]];
    let name = format!("{name} while the {} is let go", bath.name);
    // Beside the bath its stream is what it is without one.
    let own = Water { content: bath.without.clone(), ..stream.clone() };
    let let_go = Water {
        name: bath.name.clone(),
        which: Which::Bath(bath.dump),
        flow: bath.flow,
        content: bath.content.clone(),
        ..stream.clone()
    };
    let mut all = vec![&own, &let_go];
    all.extend(dry.iter().filter(|water| water.which != stream.which));
    let found = case(t, about, (&name, Kind::Bath), &all)?;
    Ok(Case { lasts: Some(bath.lasts), bath: Some(at), ..found })
}

/// What each metered drain that leads to the separator sends there, with a content of its own.
fn drain_downs<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    (fluids, dosed): (&Fluids, &[Dosed]),
    feed: &FeedState,
    ahead: Option<&Containments>,
    cases: &mut Vec<Case>,
) -> Result<(), Stop> {
    for (i, (c, block)) in ahead.iter().flat_map(|a| &a.all).zip(&e.containments).enumerate() {
        let Some(drain) = c.drain.as_ref().filter(|_| c.to.is_none()) else { continue };
        let name = format!("drain-down of {}", c.name);
        t.section(&name);
        let content = Some(match &c.drained {
            Some(drained) => drained.content.clone(),
            None => super::contents::of_drain(t, w, e, fluids, dosed, (i, block))?,
        });
        let base = Case::of_a_flow(name, Kind::DrainDown, drain.rate);
        let (parts, which) = (vec![c.name.clone()], vec![Which::Drain(i)]);
        take(t, cases, (feed, false), Case { parts, which, content, ..base })?;
    }
    Ok(())
}

/// The rate at which a spill comes to the unit, and what comes: where containments hold it, only what drains.
fn spill_rate<T: Trail>(t: &mut T, spill: &SpillState, ahead: Option<&Containments>) -> Option<(Val<Flow>, String)> {
    if !spill.is_held_ahead() {
        return spill.rate.map(|rate| (rate, "oil".to_owned()));
    }
    let ahead = ahead?;
    let ends = ahead.balances.iter().filter(|b| b.declared).filter_map(|b| b.chain.last());
    let drains = ends.filter_map(|i| Some((&ahead.all[*i].name, ahead.all[*i].drain.as_ref()?.rate)));
    let (name, drain) = drains.max_by(|a, b| a.1.q.si().total_cmp(&b.1.q.si()))?;
    t.section("spill");
    let mut inputs = vec![drain.at];
    inputs.extend(spill.rate.map(|rate| rate.at));
    let rate = choose(
        t,
        "rate of the spill at the separator",
        Some((&GPM, &M3_H)),
        drain.q,
        "the rate of the spill, and that of the metered drain",
        "the spill is held ahead; only what drains from there comes",
        &inputs,
    );
    Some((rate, format!("water drained from {name}")))
}

fn case<T: Trail>(
    t: &mut T,
    (w, e, fluids): (&WhatIf, &Enquiry, &Fluids),
    (name, kind): (&str, Kind),
    waters: &[&Water],
) -> Result<Case, Stop> {
    t.section(name);
    let first = waters[0];
    let (mut flow, mut content) = (first.flow, first.content.clone());
    let mut volume = first.per_day;
    for next in &waters[1..] {
        // What comes at a time mixes by flow; a mean of days is one of volumes.
        let mix = |t: &mut T, label: &str, a: Val<Concentration>, b: Val<Concentration>| match kind {
            Kind::Days => by!(t, label, batch_mixture::concentration(volume, a, next.per_day, b)),
            _ => by!(t, label, mixture::concentration(flow, a, next.flow, b)),
        };
        let heavy = match (content.heavy, next.content.heavy) {
            (None, None) => None,
            (a, b) => {
                let a = a.unwrap_or_else(|| none_heavy(t));
                let b = b.unwrap_or_else(|| none_heavy(t));
                Some(mix(t, "free oil as heavy as the water, mixed", a, b)?)
            }
        };
        content = Content {
            total: mix(t, "total oil, mixed", content.total, next.content.total)?,
            free: mix(t, "free oil, mixed", content.free, next.content.free)?,
            heavy,
            emulsified: mix(t, "emulsified oil, mixed", content.emulsified, next.content.emulsified)?,
            dissolved: mix(t, "dissolved oil, mixed", content.dissolved, next.content.dissolved)?,
            solids: mix(t, "suspended solids, mixed", content.solids, next.content.solids)?,
        };
        flow = reckon!(t, "flow together", [GPM, M3_H], (sum = flow, next = next.flow) sum + next);
        if kind == Kind::Days {
            volume =
                reckon!(t, "volume together, average day", [GAL, M3], (sum = volume, next = next.per_day) sum + next);
        }
    }
    let load = |water: &&Water| Load {
        amount: if kind == Kind::Days { Amount::Volume(water.per_day) } else { Amount::Flow(water.flow) },
        free: water.content.free,
        heavy: water.content.heavy,
    };
    let several = waters.len() > 1;
    Ok(Case {
        parts: waters.iter().map(|w| w.name.clone()).collect(),
        which: waters.iter().map(|w| w.which).collect(),
        loads: if several { waters.iter().map(load).collect() } else { Vec::new() },
        content: Some(content),
        own: own_fluids(t, w, e, fluids, (kind, waters))?,
        ..Case::of_a_flow(name.to_owned(), kind, flow)
    })
}

/// Of a free oil that all rises, what does not.
pub(super) fn none_heavy<T: Trail>(t: &mut T) -> Val<Concentration> {
    let (label, units) = ("free oil as heavy as the water", Some((&MG_L, &MG_L) as crate::provenance::Pair));
    given(t, label, units, Concentration::from_si(0.0), Whence::Definition, "all of it rises")
}

/// The largest flow to the units over all cases.
#[must_use]
pub fn largest(cases: &[Case]) -> Option<&Case> {
    largest_place(cases).map(|k| &cases[k])
}

/// The place of that case.
#[must_use]
pub fn largest_place(cases: &[Case]) -> Option<usize> {
    let mut best: Option<usize> = None;
    for (k, case) in cases.iter().enumerate() {
        if best.is_none_or(|b| case.feed.q.si() > cases[b].feed.q.si()) {
            best = Some(k);
        }
    }
    best
}
