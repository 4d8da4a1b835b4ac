//! The hydraulic profile, from the outlet upstream.

use super::State;
use super::site::SiteLevels;
use crate::basis::Basis;
use crate::basis::stated::standby;
use crate::enquiry::range::OutletControl;
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, assume, choose, given};
use crate::train::unit::Unit;
use crate::{by, reckon, record, say};
use stillrise_handbook::hydraulics::{
    baffle_coefficient, circle_area, colebrook, critical_depth, entry_head, fitting_loss, full_pipe_head,
    laminar_friction, manning_capacity, manning_depth, mean_velocity, mesh_loss, pack_loss, pipe_reynolds,
    rectangular_weir_head, slot_loss, wetted_segment,
};
use stillrise_units::catalog::{IN, MM, ONE};
use stillrise_units::{Flow, Length, Typed, Velocity, ratio};

const LEVEL: Pair = (&IN, &MM);
const PURE: Pair = (&ONE, &ONE);

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

/// The profile at one flow.
#[derive(Debug, Clone)]
pub struct Profile {
    /// At which flow: "design flow, clean".
    pub name: String,
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
        /// under the downcomer
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
    let f = &unit.frame;
    let section = reckon!(t, "wetted cross-section", [FT2, M2], (width = f.width, depth = f.crest) width * depth);
    let slot = reckon!(t, "slot under the downcomer", [FT2, M2], (width = f.width, height = f.lip) width * height);
    let inlet = by!(t, "area of the inlet nozzle", circle_area::area(f.inlet_bore))?;
    let outlet = by!(t, "area of the outlet pipe", circle_area::area(site.bore))?;
    Ok(Velocities {
        along: by!(t, "velocity along the unit", mean_velocity::velocity(flow, section))?,
        slot: by!(t, "velocity under the downcomer", mean_velocity::velocity(flow, slot))?,
        inlet: by!(t, "velocity in the inlet nozzle", mean_velocity::velocity(flow, inlet))?,
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
    basis: &Basis,
    unit: &Unit,
    site: &SiteLevels,
    flow: Val<Flow>,
    state: State,
    name: &str,
) -> Result<Profile, Stop> {
    t.section(format_args!("hydraulic profile, {name}"));
    let f = &unit.frame;
    let water = &basis.fluids.cold;
    if flow.q.si() <= 0.0 {
        let none = given(t, "loss without flow", Some(LEVEL), Length::from_si(0.0), "definition", "nothing flows");
        let drowned_by = site.tailwater.filter(|tw| tw.q > f.crest.q);
        let level = match drowned_by {
            Some(tw) => choose(
                t,
                "level without flow",
                Some(LEVEL),
                tw.q,
                "crest and tailwater",
                "the tailwater stands higher",
                &[f.crest.at, tw.at],
            ),
            None => f.crest,
        };
        let steps = STEPS.iter().map(|name| Step { name, loss: none, level }).collect();
        return Ok(Profile {
            name: name.to_owned(),
            flow,
            steps,
            well: level,
            chamber: level,
            inlet: level,
            drowned: drowned_by.is_some(),
            runs_full: false,
        });
    }
    let (well, drowned, runs_full) = well(t, basis, unit, site, flow)?;
    let mut steps = Vec::new();
    let outlet = reckon!(t, "head of the outlet over the level without flow", [IN, MM], (well = well, crest = f.crest) well - crest);
    steps.push(Step { name: STEPS[0], loss: outlet, level: well });
    let mut level = well;
    let mut add = |t: &mut T, name: &'static str, loss: Val<Length>| {
        level = reckon!(t, &say!(T, "level ahead of the {name}"), [IN, MM], (level = level, loss = loss) level + loss);
        steps.push(Step { name, loss, level });
        level
    };
    let c = given(t, "discharge coefficient of the underflow slot", Some(PURE), ratio(0.6), "FHWA HDS-2, 8.10", "0.6");
    let slot = by!(t, "loss of the downcomer", slot_loss::loss(flow, f.width, f.lip, c))?;
    add(t, STEPS[1], slot);
    let section = reckon!(t, "wetted cross-section", [FT2, M2], (width = f.width, depth = f.crest) width * depth);
    let approach = by!(t, "velocity along the unit", mean_velocity::velocity(flow, section))?;
    let clean = if f.mesh.q.si() > 0.0 {
        by!(
            t,
            "loss of the clean mesh",
            mesh_loss::loss(water.viscosity, approach, f.mesh, f.mesh_fibre, f.mesh_solidity, water.density)
        )?
    } else {
        given(t, "loss of the mesh", Some(LEVEL), Length::from_si(0.0), "unit", "no mesh")
    };
    let fouled = state.is_end();
    let mesh = if fouled && f.mesh.q.si() > 0.0 {
        let multiple = assume(
            t,
            w,
            standby(
                "loss of the fouled over the clean mesh",
                PURE,
                "unit.mesh_fouling",
                "",
                (ratio(5.0), ratio(10.0), ratio(50.0)),
                "engineering judgement: cleaned at 5 to 10 times the clean loss",
            ),
        );
        let least = assume(
            t,
            w,
            standby(
                "least loss of a fouled mesh",
                LEVEL,
                "unit.mesh_fouled_loss",
                "",
                (Length::of(0.5, &IN), Length::of(2.0, &IN), Length::of(4.0, &IN)),
                "our proposal, 2 to 4 in; multiples of a clean loss near zero stay near zero",
            ),
        );
        reckon!(
            t,
            "loss of the fouled mesh",
            [IN, MM],
            (clean = clean, multiple = multiple, least = least)(clean * multiple).max(least)
        )
    } else {
        clean
    };
    add(t, STEPS[2], mesh);
    let mut gap_velocity = by!(t, "velocity in the gaps", mean_velocity::velocity(flow, unit.layout.open_area))?;
    if fouled {
        gap_velocity = reckon!(t, "velocity in the gaps, fouled", [FT_MIN, MM_S], (u = gap_velocity, fouling = basis.methods.fouling) u / (ratio(1.0) - fouling));
    }
    let pack = by!(
        t,
        "loss of the pack",
        pack_loss::loss(water.viscosity, gap_velocity, f.pack_length, f.gap, water.density)
    )?;
    let chamber = add(t, STEPS[3], pack);
    let zeta = by!(t, "loss coefficient of the diffusion baffle", baffle_coefficient::coefficient(f.baffle_open))?;
    let baffle = by!(t, "loss of the diffusion baffle", fitting_loss::loss(zeta, approach))?;
    add(t, STEPS[4], baffle);
    let nozzle = by!(t, "area of the inlet nozzle", circle_area::area(f.inlet_bore))?;
    let v = by!(t, "velocity in the inlet nozzle", mean_velocity::velocity(flow, nozzle))?;
    let exit = given(t, "exit loss coefficient", Some(PURE), ratio(1.0), "Crane TP-410", "1.0");
    let entering = by!(t, "loss at the inlet nozzle", fitting_loss::loss(exit, v))?;
    let inlet = add(t, STEPS[5], entering);
    Ok(Profile { name: name.to_owned(), flow, steps, well, chamber, inlet, drowned, runs_full })
}

/// The steps, from the outlet upstream.
pub const STEPS: [&str; 6] = ["outlet", "downcomer", "mesh", "plate pack", "diffusion baffle", "inlet nozzle"];

/// Level of the clear well: what the outlet pipe needs, the weir over it if there is one, and the
/// tailwater if it stands higher.
fn well<T: Trail>(
    t: &mut T,
    basis: &Basis,
    unit: &Unit,
    site: &SiteLevels,
    flow: Val<Flow>,
) -> Result<(Val<Length>, bool, bool), Stop> {
    let f = &unit.frame;
    let entrance = given(t, "entrance loss coefficient", Some(PURE), ratio(0.5), "Crane TP-410", "flush entrance 0.5");
    let mut candidates: Vec<(Val<Length>, &str)> = Vec::new();
    let capacity =
        by!(t, "capacity of the outlet pipe, just full", manning_capacity::flow(site.bore, site.slope, site.n))?;
    let runs_full = flow.q >= capacity.q;
    if !runs_full {
        let head = by!(t, "head over the outlet invert, free entry", entry_head::head(flow, site.bore, entrance))?;
        candidates.push((
            reckon!(t, "level for a free entry", [IN, MM], (invert = f.outlet_invert, head = head) invert + head),
            "free entry into the pipe",
        ));
        let depth =
            by!(t, "normal depth in the outlet pipe", manning_depth::depth(flow, site.bore, site.slope, site.n))?;
        let critical = by!(t, "critical depth at the entry", critical_depth::depth(flow, site.bore))?;
        // On a steep pipe the entry controls; only a mild one backs the water up to its normal depth.
        if depth.q > critical.q {
            let area = by!(t, "wetted section at that depth", wetted_segment::area(site.bore, depth))?;
            let v = by!(t, "velocity at that depth", mean_velocity::velocity(flow, area))?;
            let k = reckon!(t, "velocity head and entrance", [ONE, ONE], (k = entrance) ratio(1.0) + k);
            let loss = by!(t, "head to reach that velocity", fitting_loss::loss(k, v))?;
            candidates.push((reckon!(t, "level for normal depth", [IN, MM], (invert = f.outlet_invert, depth = depth, loss = loss) invert + depth + loss), "normal depth in the pipe"));
        }
    }
    let drowned_by = site.tailwater.filter(|tw| tw.q > site.outfall.q);
    if runs_full || drowned_by.is_some() {
        let area = by!(t, "area of the outlet pipe", circle_area::area(site.bore))?;
        let v = by!(t, "velocity in the full pipe", mean_velocity::velocity(flow, area))?;
        let re = by!(
            t,
            "Reynolds number of the outlet pipe",
            pipe_reynolds::reynolds(v, site.bore, basis.fluids.cold.kinematic)
        )?;
        let factor = if re.q.si() < 2300.0 {
            by!(t, "friction factor, laminar", laminar_friction::factor(re))?
        } else {
            let rough = reckon!(t, "relative roughness", [ONE, ONE], (roughness = site.roughness, bore = site.bore) roughness / bore);
            by!(t, "friction factor", colebrook::factor(re, rough))?
        };
        let k = reckon!(t, "entrance and exit", [ONE, ONE], (k = entrance) ratio(1.0) + k);
        let head = by!(t, "head of the full pipe", full_pipe_head::head(k, factor, site.length, site.bore, v))?;
        if runs_full {
            candidates.push((reckon!(t, "level for the full pipe", [IN, MM], (outfall = site.outfall, bore = site.bore, head = head) outfall + bore + head), "the pipe runs full"));
        }
        if let Some(tw) = drowned_by {
            candidates.push((
                reckon!(t, "level against the tailwater", [IN, MM], (tailwater = tw, head = head) tailwater + head),
                "the tailwater drowns the pipe",
            ));
        }
    }
    let mut best = candidates.first().copied().ok_or_else(|| Stop {
        doing: "outlet".to_owned(),
        reason: "no flow regime fits the outlet pipe".to_owned(),
        formula: false,
    })?;
    for candidate in &candidates {
        if candidate.0.q > best.0.q {
            best = *candidate;
        }
    }
    let nodes: Vec<_> = candidates.iter().map(|(v, _)| v.at).collect();
    let among = candidates.iter().map(|(_, what)| *what).collect::<Vec<_>>().join(", ");
    let at_pipe = choose(t, "level ahead of the outlet pipe", Some(LEVEL), best.0.q, &among, best.1, &nodes);
    let drowned = best.1 == "the tailwater drowns the pipe";
    if f.control.q == OutletControl::Pipe {
        return Ok((at_pipe, drowned, runs_full));
    }
    let head = by!(t, "head over the weir", rectangular_weir_head::head(flow, f.weir_length, f.width, f.crest))?;
    if at_pipe.q <= f.crest.q {
        return Ok((
            reckon!(t, "level over the weir", [IN, MM], (crest = f.crest, head = head) crest + head),
            false,
            runs_full,
        ));
    }
    // A submerged weir needs no more than its free head on top of the level behind it.
    let level =
        reckon!(t, "level over the submerged weir, safe side", [IN, MM], (behind = at_pipe, head = head) behind + head);
    Ok((level, true, runs_full))
}
