//! Equalisation: what has to be held back ahead of the unit, as a balance over the event.
//!
//! The event is the design storm, a day of washing by its hours or by its meter, or an extra case over its duration. What
//! leaves is the smaller of what the pumps pass and of the flow cap. Two conventions are in use: a pump that passes its
//! full flow from the first moment, and an outflow that rises and falls with the inflow, as behind a throttle. Behind a pump
//! the first holds; by gravity both are shown, the larger counts.

use super::{Stage, StageKind};
use crate::basis::Basis;
use crate::basis::cases::{Case, Kind};
use crate::basis::chemicals::Which;
use crate::basis::stated::stated_or_usual;
use crate::basis::storm::Storm;
use crate::basis::waters::Water;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::CaseBlock;
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, Whence, choose, given};
use crate::{by, reckon, say};
use stillrise_handbook::page::Arg;
use stillrise_handbook::rain::{constant_outflow_storage, modified_rational, rain_depth, rain_intensity};
use stillrise_units::catalog::{GAL, GPM, M3, M3_H, MIN};
use stillrise_units::{Flow, Time, Typed, Volume};

/// What has to be held back ahead of the unit.
#[derive(Debug, Clone)]
pub struct Equalisation {
    /// The case that asks for most, by its place in the basis.
    pub case: usize,
    /// What arrives in it at its highest.
    pub inflow: Val<Flow>,
    /// What leaves: the smaller of the pumps' flow and the cap.
    pub outflow: Val<Flow>,
    /// How long the event lasts.
    pub duration: Val<Time>,
    /// Volume behind a constant outflow.
    pub constant: Val<Volume>,
    /// Volume if the outflow rises and falls with the inflow; `None` behind a pump, and for what is turned on and off.
    pub rising: Option<Val<Volume>>,
    /// Time in which the full volume runs out again.
    pub empties: Val<Time>,
}

impl Equalisation {
    /// The volume that counts: the larger.
    #[must_use]
    pub fn volume(&self) -> Val<Volume> {
        match self.rising {
            Some(rising) if rising.q > self.constant.q => rising,
            _ => self.constant,
        }
    }
}

/// The stage.
pub(super) fn stage(basis: &Basis, held: &Equalisation) -> Stage {
    let why = format!("{}: more arrives than pump or flow cap passes", basis.cases[held.case].event);
    let mut stage = Stage::new(StageKind::Equalisation, "equalisation", why, true);
    stage.size = Some(("volume, first size".to_owned(), Arg::Number(held.volume().q.si()), (&GAL, &M3)));
    stage
}

/// What the pumps and the cap let through.
fn outflow<T: Trail>(t: &mut T, basis: &Basis) -> Option<Val<Flow>> {
    let feed = &basis.feed;
    match (feed.mean_flow, feed.cap) {
        (Some(pumps), Some(cap)) => {
            let least = if cap.q < pumps.q { cap } else { pumps };
            let among = "what the pumps pass, and the flow cap";
            Some(choose(
                t,
                "flow out of the equalisation",
                Some(FLOW),
                least.q,
                among,
                "the smaller",
                &[pumps.at, cap.at],
            ))
        }
        (one, other) => one.or(other),
    }
}

const FLOW: Pair = (&GPM, &M3_H);

/// Finds what has to be held back; `None` where pump and cap pass whatever arrives.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn equalisation<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, basis: &Basis) -> Result<Option<Equalisation>, Stop> {
    t.section("equalisation");
    let Some(out) = outflow(t, basis) else { return Ok(None) };
    let mut most: Option<Equalisation> = None;
    for (i, case) in basis.cases.iter().enumerate() {
        // What is spilled is held as oil, not evened out as water.
        if case.kind == Kind::Spill || case.inflow.q.si() <= out.q.si() * (1.0 + 1e-9) {
            continue;
        }
        let Some(found) = of_case(t, w, e, basis, (i, case), out)? else { continue };
        if most.as_ref().is_none_or(|most| found.volume().q > most.volume().q) {
            most = Some(found);
        }
    }
    Ok(most)
}

fn of_case<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    basis: &Basis,
    (i, case): (usize, &Case),
    out: Val<Flow>,
) -> Result<Option<Equalisation>, Stop> {
    match (case.kind, &basis.storm) {
        (Kind::Storm | Kind::StormAndWash, Some(storm)) => {
            rain(t, storm, (i, case), out, basis.feed.mean_flow.is_some()).map(Some)
        }
        (Kind::Dry, _) => {
            let running: Vec<&Water> = basis.waters.iter().filter(|w| !w.is_rain && w.runs.is_some()).collect();
            washing(t, &running, (i, case), out)
        }
        // What a metered drain would send too fast stays where it stands.
        (Kind::DrainDown, _) => Ok(None),
        // No more at a time than the dry-weather waters together.
        (Kind::Alone | Kind::Days, _) => Ok(None),
        _ => {
            let duration = match case.lasts {
                Some(lasts) => lasts,
                None => extra(t, w, e, case),
            };
            block(t, (i, case), out, duration).map(Some)
        }
    }
}

/// How long a flow lasts that no rain and no stream makes up.
fn extra<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, case: &Case) -> Val<Time> {
    // By its place in the enquiry: the name of a case may tell which pumps run in it.
    let place = case.which.iter().find_map(|which| match which {
        Which::Case(k) => e.cases.get(*k),
        _ => None,
    });
    let key = place.map_or_else(|| e.stated.duration(), CaseBlock::duration);
    stated_or_usual(t, w, key.of(&case.event), "how long that flow lasts")
}

/// A flow that is turned on and off.
fn block<T: Trail>(
    t: &mut T,
    (i, case): (usize, &Case),
    out: Val<Flow>,
    duration: Val<Time>,
) -> Result<Equalisation, Stop> {
    let at_once =
        given(t, "time over which it rises", Some((&MIN, &MIN)), Time::from_si(0.0), Whence::Definition, "at once");
    let constant = by!(
        t,
        "held back behind a constant outflow",
        constant_outflow_storage::volume(case.inflow, duration, out, at_once)
    )?;
    let empties = reckon!(t, "time in which it runs out again", [H, H], (volume = constant, out = out) volume / out);
    Ok(Equalisation { case: i, inflow: case.inflow, outflow: out, duration, constant, rising: None, empties })
}

/// Streams that all begin together, each for its own time: most is held when one of them ends.
fn washing<T: Trail>(
    t: &mut T,
    streams: &[&Water],
    (i, case): (usize, &Case),
    out: Val<Flow>,
) -> Result<Option<Equalisation>, Stop> {
    let ends: Vec<Val<Time>> = streams.iter().filter_map(|s| s.runs).collect();
    let arrived = |until: Time| -> f64 {
        let each = streams.iter().filter_map(|s| Some(s.flow.q.si() * s.runs?.q.si().min(until.si())));
        each.sum::<f64>() - out.q.si() * until.si()
    };
    let Some(worst) = ends.iter().max_by(|a, b| arrived(a.q).total_cmp(&arrived(b.q))).copied() else {
        return Ok(None);
    };
    let mut sum: Option<Val<Volume>> = None;
    for stream in streams {
        let Some(runs) = stream.runs else { continue };
        let label = say!(T, "arrived from {} by then", stream.name);
        let one =
            reckon!(t, &label, [GAL, M3], (flow = stream.flow, runs = runs, until = worst) flow * runs.min(until));
        sum = Some(match sum {
            None => one,
            Some(sum) => reckon!(t, "arrived from all streams by then", [GAL, M3], (sum = sum, next = one) sum + next),
        });
    }
    let Some(sum) = sum else { return Ok(None) };
    let constant = reckon!(
        t,
        "held back behind a constant outflow",
        [GAL, M3],
        (sum = sum, out = out, until = worst) sum - out * until
    );
    if constant.q.si() <= 0.0 {
        return Ok(None);
    }
    let empties = reckon!(t, "time in which it runs out again", [H, H], (volume = constant, out = out) volume / out);
    Ok(Some(Equalisation {
        case: i,
        inflow: case.inflow,
        outflow: out,
        duration: worst,
        constant,
        rising: None,
        empties,
    }))
}

/// The design storm: of a table the duration that asks for most, else as long as it is said to last.
fn rain<T: Trail>(
    t: &mut T,
    storm: &Storm,
    (i, case): (usize, &Case),
    out: Val<Flow>,
    pumped: bool,
) -> Result<Equalisation, Stop> {
    let rises = storm.concentration_time;
    let (duration, flow) = match (&storm.table, storm.duration) {
        (Some(table), _) => worst_duration(t, storm, table, case, out, pumped)?,
        (None, Some(duration)) if duration.q >= rises.q => (duration, case.inflow),
        // The full flow is there only once the concentration time is over.
        _ => (rises, case.inflow),
    };
    let constant =
        by!(t, "held back behind a constant outflow", constant_outflow_storage::volume(flow, duration, out, rises))?;
    let rising = if pumped {
        None
    } else {
        let label = "held back if the outflow rises with the inflow";
        Some(by!(t, label, modified_rational::volume(flow, duration, out, rises))?)
    };
    let most = rising.filter(|rising| rising.q > constant.q).unwrap_or(constant);
    let empties = reckon!(t, "time in which it runs out again", [H, H], (volume = most, out = out) volume / out);
    Ok(Equalisation { case: i, inflow: case.inflow, outflow: out, duration, constant, rising, empties })
}

/// The duration of the table that asks for most, and the flow at its intensity; waters beside the rain run on.
fn worst_duration<T: Trail>(
    t: &mut T,
    storm: &Storm,
    table: &Val<stillrise_handbook::page::Series>,
    case: &Case,
    out: Val<Flow>,
    pumped: bool,
) -> Result<(Val<Time>, Val<Flow>), Stop> {
    let rises = storm.concentration_time;
    let held = |d: Time| -> Option<f64> {
        let i = rain_intensity::intensity(rain_depth::depth(table.q.clone(), d).ok()?, d).ok()?;
        let q = case.inflow.q - storm.flow.q + storm.flow.q * (i / storm.intensity.q);
        let volume = if pumped {
            constant_outflow_storage::volume(q, d, out.q, rises.q)
        } else {
            modified_rational::volume(q, d, out.q, rises.q)
        };
        volume.ok().map(Typed::si)
    };
    let mut best = (rises.q, f64::NEG_INFINITY);
    let mut d = rises.q;
    for _ in 0..120 {
        match held(d) {
            Some(volume) if volume > best.1 => best = (d, volume),
            Some(_) => {}
            None => break,
        }
        d *= 1.05;
    }
    let worst = choose(
        t,
        "worst duration for the equalisation",
        Some((&MIN, &MIN)),
        best.0,
        "durations from the concentration time up, in steps of 5 %",
        "it asks for most storage",
        &[table.at, out.at],
    );
    let depth = by!(t, "rain depth of that duration", rain_depth::depth(table, worst))?;
    let i = by!(t, "rain intensity of that duration", rain_intensity::intensity(depth, worst))?;
    let q = reckon!(t, "flow at that intensity", [GPM, M3_H],
        (peak = case.inflow, rain = storm.flow, i = i, design = storm.intensity) peak - rain + rain * (i / design));
    // Where a longer, weaker rain runs through, nothing but the peak is held.
    let q = if q.q < out.q { out } else { q };
    Ok((worst, q))
}
