//! Pits, bunds and basins ahead of the separator: what they hold, and what they would have to.

pub mod balance;
pub mod drain;
pub mod further;
pub mod in_rain;
pub mod passes;
pub mod reach;
pub mod volume;
pub mod water;
pub mod year;

use super::SpillState;
use super::fluids::Fluids;
use super::storm::Storm;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{ContainmentKind, DrainValve};
use crate::enquiry::containments::{covered, find, holds_back};
use crate::provenance::{Stop, Trail, Val, WhatIf, Whence, given};
use balance::Balance;
use drain::{Drain, Valve};
use reach::{Open, Reach};
use stillrise_units::catalog::{GAL, M3};
use stillrise_units::{Area, Length, Typed, Volume};
use volume::Shape;
use year::Drained;

/// One containment.
#[derive(Debug, Clone)]
pub struct Containment {
    /// Its name.
    pub name: String,
    /// What it is, if said.
    pub kind: Option<ContainmentKind>,
    /// What it holds up to its overflow.
    pub holds: Reach<Volume>,
    /// Its sizes; none where its volume was stated.
    pub shape: Option<Shape>,
    /// Area whose rain it takes; none under a roof.
    pub catch: Option<Reach<Area>>,
    /// Whether that is its own area, which grows when it is made larger.
    pub own_catch: bool,
    /// Whether its rain is held back until it is drained, so that no storm counts it.
    pub holds_back: bool,
    /// The design rain that falls or runs into it.
    pub rain: Reach<Volume>,
    /// How its drain stands.
    pub valve: Valve,
    /// Its metered drain.
    pub drain: Option<Drain>,
    /// The rain in it that is drained to the separator; none where surfaces bring it in a storm, where a roof keeps it out,
    /// and where nothing is drained.
    pub drained: Option<Drained>,
    /// The one that it overflows to; none: the separator.
    pub to: Option<usize>,
    /// Whether somebody said where it overflows to.
    pub to_said: bool,
    /// What nobody said of its sizes and rain.
    pub open: Vec<Open>,
}

/// All of them, and each spill against what holds it.
#[derive(Debug, Clone)]
pub struct Containments {
    /// In the order of the enquiry.
    pub all: Vec<Containment>,
    /// Depth of the design rain; none where roofs keep it out everywhere.
    pub rain_depth: Option<Reach<Length>>,
    /// Fire water that must be held too.
    pub fire: Reach<Volume>,
    /// What nobody said of it.
    pub fire_open: Vec<Open>,
    /// Each spill against what holds it.
    pub balances: Vec<Balance>,
}

impl Containments {
    /// Whether what is drained from one comes to the separator: none on the way there keeps it.
    #[must_use]
    pub fn comes_to_separator(&self, at: usize) -> bool {
        let mut next = Some(at);
        // A chain is no longer than there are containments.
        for _ in &self.all {
            let Some(c) = next.map(|i| &self.all[i]) else { break };
            let drained = c.valve.is.q == DrainValve::Open || c.drain.is_some() || c.to_said;
            if c.valve.is.q == DrainValve::None || !drained {
                return false;
            }
            next = c.to;
        }
        next.is_none()
    }
    /// Those whose own rain the storm does not count, though their drain lets it run to the separator as it falls.
    pub fn unthrottled(&self) -> impl Iterator<Item = (&Containment, Reach<Area>)> {
        let open = |c: &&Containment| c.valve.is.q == DrainValve::Open && c.drain.is_none() && c.to.is_none();
        self.all.iter().filter(open).filter_map(|c| Some((c, c.catch.filter(|_| c.own_catch)?)))
    }
    /// Names along a chain.
    #[must_use]
    pub fn names(&self, chain: &[usize]) -> String {
        chain.iter().map(|i| self.all[*i].name.as_str()).collect::<Vec<_>>().join(" and ")
    }
    /// Keys whose answers decide what cannot be judged without them.
    #[must_use]
    pub fn undecided(&self) -> Vec<&str> {
        let balances = self.balances.iter().filter(|b| b.spare.holds().is_none()).flat_map(|b| &b.open);
        let valves = self.all.iter().filter_map(|c| c.valve.open.as_ref());
        balances.chain(valves).map(|open| open.key.as_str()).collect()
    }
}

/// No volume at all, to compare with.
fn nothing<T: Trail>(t: &mut T) -> Val<Volume> {
    given(t, "no volume", Some((&GAL, &M3)), Volume::from_si(0.0), Whence::Definition, "none")
}

/// Finds what the containments hold and must hold; `None` when there are none.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn containments<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    storm: Option<&Storm>,
    spill: Option<&SpillState>,
) -> Result<Option<Containments>, Stop> {
    if e.containments.is_empty() {
        return Ok(None);
    }
    t.section("containment ahead");
    let zero = nothing(t);
    let mut rain_open = Vec::new();
    let roofed = e.containments.iter().all(|c| *c.roof == Some(true));
    let rain_depth = if roofed { None } else { Some(water::rain_depth(t, w, e, storm, &mut rain_open)?) };
    let mut fire_open = Vec::new();
    let fire = water::fire(t, w, e, &mut fire_open)?;
    let mut all = Vec::new();
    for block in &e.containments {
        let name = block.name.0.clone().unwrap_or_default();
        t.section(format_args!("containment {name}"));
        let mut open = Vec::new();
        let (holds, shape) = volume::holds(t, w, e, block, &name, &mut open)?;
        let catch = match rain_depth {
            Some(_) if *block.roof != Some(true) => {
                Some(water::catch(t, w, e, block, &name, shape.as_ref(), holds.val, &mut open)?)
            }
            _ => None,
        };
        let rain = match (&catch, &rain_depth) {
            (Some(catch), Some(depth)) => {
                open.extend(rain_open.iter().cloned());
                water::rain(t, catch, depth)?
            }
            _ => Reach::known(zero),
        };
        let to = block.drains_to.as_deref().and_then(|to| find(&e.containments, to));
        let valve = drain::valve(t, w, block, &name);
        let (kind, to_said) = (block.kind.0, block.drains_to.is_some());
        let own_catch = covered(e, block).next().is_none();
        let holds_back = holds_back(block, drain::told(w, block));
        all.push(Containment {
            name,
            kind,
            holds,
            shape,
            catch,
            own_catch,
            holds_back,
            rain,
            valve,
            drain: None,
            drained: None,
            to,
            to_said,
            open,
        });
    }
    for (i, block) in e.containments.iter().enumerate() {
        t.section(format_args!("containment {}", all[i].name));
        let drain = drain::drain(t, w, block, &all, i, zero);
        all[i].drain = drain;
    }
    let mut found = Containments { all, rain_depth, fire, fire_open, balances: Vec::new() };
    found.balances = balance::balances(t, w, e, fluids, spill, &found, zero)?;
    Ok(Some(found))
}
