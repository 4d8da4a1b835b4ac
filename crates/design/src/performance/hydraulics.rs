//! The hydraulic profile, from the outlet upstream.

use super::State;
use super::site::SiteLevels;
use crate::basis::Basis;
use crate::enquiry::Enquiry;
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, Whence, choose, given};
use crate::stages::outlet::Stands;
use crate::stages::{AnyStage, Crossing, Stage};
use crate::train::unit::Unit;
use crate::{by, reckon, record, say};
use stillrise_handbook::hydraulics::{circle_area, mean_velocity};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Flow, Length, Typed, Velocity};

const LEVEL: Pair = (&IN, &MM);

/// One step of the profile.
#[derive(Debug, Clone)]
pub struct Step {
    /// Through what.
    pub name: &'static str,
    /// Loss.
    pub loss: Val<Length>,
    /// Level ahead of it.
    pub level: Val<Length>,
}

/// At which flow a profile is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum At {
    /// Nothing flows.
    Rest,
    /// The flow it is designed for.
    Design(State),
    /// The largest that ever comes.
    Largest(State),
}

impl At {
    /// In what state; `None` where nothing flows.
    #[must_use]
    pub fn state(self) -> Option<State> {
        match self {
            At::Rest => None,
            At::Design(state) | At::Largest(state) => Some(state),
        }
    }
    /// Flow and state in words: "design, clean".
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            At::Rest => "no flow",
            At::Design(State::Clean) => "design, clean",
            At::Design(State::End) => "design, end of interval",
            At::Largest(State::Clean) => "largest, clean",
            At::Largest(State::End) => "largest, end of interval",
        }
    }
}

/// The profile at one flow.
#[derive(Debug, Clone)]
pub struct Profile {
    /// At which flow.
    pub at: At,
    /// Flow through one unit.
    pub flow: Val<Flow>,
    /// Steps from the outlet upstream.
    pub steps: Vec<Step>,
    /// Level in the clear well.
    pub well: Val<Length>,
    /// Level ahead of the downcomer, mesh and pack: where oil is held.
    pub chamber: Val<Length>,
    /// Level in the inlet chamber.
    pub inlet: Val<Length>,
    /// Whether the outlet is drowned by the tailwater.
    pub drowned: bool,
    /// Whether the outlet pipe runs full.
    pub runs_full: bool,
}

record! {
    /// Velocities at the largest flow through one unit.
    Velocities {
        /// along the unit, over the whole wetted section
        along: Velocity;
        /// under the downcomer, or in the dip pipe
        slot: Velocity;
        /// in the inlet nozzle
        inlet: Velocity;
        /// in the outlet pipe, full bore
        outlet: Velocity;
    }
}

/// The velocities at a flow through one unit.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn velocities<T: Trail>(t: &mut T, unit: &Unit, site: &SiteLevels, flow: Val<Flow>) -> Result<Velocities, Stop> {
    t.section("velocities at the largest flow");
    let section = unit.body.section(t, "wetted cross-section", unit.outlet.crest)?;
    let outlet = by!(t, "area of the outlet pipe", circle_area::area(site.bore))?;
    Ok(Velocities {
        along: by!(t, "velocity along the unit", mean_velocity::velocity(flow, section))?,
        slot: unit.underflow.velocity(t, &unit.body, flow)?,
        inlet: unit.inlet.velocity(t, flow)?,
        outlet: by!(t, "velocity in the outlet pipe, full bore", mean_velocity::velocity(flow, outlet))?,
    })
}

/// The profile at a flow through one unit.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
#[allow(clippy::too_many_arguments)]
pub fn profile<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    basis: &Basis,
    unit: &Unit,
    site: &SiteLevels,
    flow: Val<Flow>,
    at: At,
) -> Result<Profile, Stop> {
    t.section(format_args!("hydraulic profile, {}", at.name()));
    let crest = unit.outlet.crest;
    let stages = unit.stages.all();
    if flow.q.si() <= 0.0 {
        let none =
            given(t, "loss without flow", Some(LEVEL), Length::from_si(0.0), Whence::Definition, "nothing flows");
        let drowned_by = site.tailwater.filter(|tw| tw.q > crest.q);
        let level = match drowned_by {
            Some(tw) => choose(
                t,
                "level without flow",
                Some(LEVEL),
                tw.q,
                "crest and tailwater",
                "the tailwater stands higher",
                &[crest.at, tw.at],
            ),
            None => crest,
        };
        let takes = stages.iter().rev().filter(|stage| stage.loses()).map(|stage| stage.name());
        let steps = core::iter::once(OUTLET).chain(takes).map(|name| Step { name, loss: none, level }).collect();
        return Ok(Profile {
            at,
            flow,
            steps,
            well: level,
            chamber: level,
            inlet: level,
            drowned: drowned_by.is_some(),
            runs_full: false,
        });
    }
    let width = unit.body.clear_width(t, "width of the clear well at the crest", crest, crest)?;
    let outlet = unit.outlet.level(t, basis, site, (width, unit.pump_out.is_some()), flow)?;
    let well = outlet.level;
    let head = reckon!(t, "head of the outlet over the level without flow", [IN, MM], (well = well, crest = crest) well - crest);
    let mut steps = vec![Step { name: OUTLET, loss: head, level: well }];
    let section = unit.body.section(t, "wetted cross-section", crest)?;
    let approach = by!(t, "velocity along the unit", mean_velocity::velocity(flow, section))?;
    let way = Crossing { e, basis, w, unit, flow, approach, fouled: at.state().is_some_and(State::is_end) };
    let (mut level, mut chamber) = (well, well);
    for stage in stages.into_iter().rev() {
        if matches!(stage, AnyStage::GravityZone(_)) {
            // Oil is held from here to the downcomer.
            chamber = level;
        }
        let Some(loss) = stage.loss(t, &way)? else { continue };
        let name = stage.name();
        level = reckon!(t, &say!(T, "level ahead of the {name}"), [IN, MM], (level = level, loss = loss) level + loss);
        steps.push(Step { name, loss, level });
    }
    let Stands { drowned, runs_full, .. } = outlet;
    Ok(Profile { at, flow, steps, well, chamber, inlet: level, drowned, runs_full })
}

/// The first step from the outlet upstream.
const OUTLET: &str = "outlet";
