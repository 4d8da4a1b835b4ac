//! Stage: the outlet, which holds the level of the whole unit.

use super::Place;
use super::stage::{Datum, Drawn, Line, Stage};
use crate::basis::Basis;
use crate::enquiry::fields::{Text, Word};
use crate::enquiry::keys::{Quantity, keys};
use crate::enquiry::range::pipe_names;
use crate::performance::site::SiteLevels;
use crate::provenance::{Pair, Stop, Trail, Val, choose, given};
use crate::train::row::{DIMENSION, Row};
use crate::train::unit::{Parts, Unit};
use crate::vessel::Body;
use crate::{by, reckon, record, say};
use stillrise_handbook::choice;
use stillrise_handbook::hydraulics::fittings;
use stillrise_handbook::hydraulics::{
    circle_area, colebrook, critical_depth, entry_head, fitting_loss, full_pipe_head, laminar_friction,
    manning_capacity, manning_depth, mean_velocity, pipe_reynolds, rectangular_weir_head, wetted_segment,
};
use stillrise_units::catalog::{IN, MM, ONE};
use stillrise_units::{Flow, Length, Ratio, Typed, ratio};

choice! {
    /// What holds the water level of the clear well.
    OutletControl {
        /// the outlet pipe itself
        Pipe "pipe",
        /// a weir ahead of the outlet pipe
        Weir "weir",
    }
}

keys! {
    /// Keys of the outlet.
    OutletKeys "model" {
        /// What holds the water level
        control: Word<OutletControl> = spec.like("\"pipe\"");
        /// Invert of the outlet pipe, above the floor
        invert as "outlet_invert": Quantity<Length> = spec.units(&IN, &MM).between("3 in", "200 in").like("\"46 in\"")
            .asks("What is the height of the outlet pipe's invert above the floor of the unit?")
            .found("75 % of the height of the walls; 95 % of the crest of a weir");
        /// Nominal size of the outlet pipe
        pipe as "outlet_pipe": Text = spec.named(pipe_names).like("\"6 in\"")
            .asks("How wide is the outlet pipe of the unit, inside or by its nominal size?")
            .found("the nominal pipe, {3 in|DN 80} or larger, in which the flow stays below {2 ft/s|0.61 m/s}");
        /// Crest of the outlet weir, above the floor
        weir_crest: Quantity<Length> = spec.units(&IN, &MM).between("3 in", "200 in").like("\"47 in\"");
        /// Length of the outlet weir
        weir_length: Quantity<Length> = spec.units(&IN, &MM).between("3 in", "480 in").like("\"36 in\"");
    }
}

const LEVEL: Pair = (&IN, &MM);
const PURE: Pair = (&ONE, &ONE);
/// Reynolds number below which flow in a pipe is laminar.
const LAMINAR_PIPE: f64 = 2300.0;

record! {
    /// The outlet.
    Outlet {
        /// what holds the water level
        control: OutletControl;
        /// level that stands in it without flow
        crest: Length;
        /// length of the outlet weir; the width of the unit without one
        weir_length: Length;
        /// invert of the outlet pipe
        invert: Length;
        /// bore of the outlet pipe
        bore: Length;
    }
}

/// How the water stands ahead of it at a flow.
#[derive(Debug, Clone, Copy)]
pub struct Stands {
    /// Its level.
    pub level: Val<Length>,
    /// Whether the tailwater drowns the outlet.
    pub drowned: bool,
    /// Whether the outlet pipe runs full.
    pub runs_full: bool,
}

impl Outlet {
    /// As a row or a described unit lays it out.
    ///
    /// # Errors
    /// [`Stop`] naming the dimension that is missing.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>, body: &Body) -> Result<Self, Stop> {
        let m = row.m;
        let invert = row.need("invert of the outlet pipe", m.stages.outlet.invert())?;
        let weir_crest = row.laid("crest of the weir", DIMENSION, &m.stages.outlet.weir_crest);
        let control = m.stages.outlet.control.0.unwrap_or(if weir_crest.is_some() {
            OutletControl::Weir
        } else {
            OutletControl::Pipe
        });
        let source = m.stages.outlet.control.1.source(row.source);
        let control = given(row.t, "what holds the water level", None, control, &source, control.word());
        let crest = match (control.q, weir_crest) {
            (OutletControl::Weir, Some(crest)) => crest,
            _ => invert,
        };
        let bore = row.bore("bore of the outlet pipe", m.stages.outlet.pipe())?;
        let weir_length = match row.laid("length of the outlet weir", DIMENSION, &m.stages.outlet.weir_length) {
            Some(length) => length,
            None => body.clear_width(row.t, "length of the outlet weir: the width of the unit", crest, crest)?,
        };
        Ok(Self { control, crest, weir_length, invert, bore })
    }

    /// Level ahead of it: what the outlet pipe needs, the weir over it if there is one, and the
    /// tailwater if it stands higher. `width` is that of the unit.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn level<T: Trail>(
        &self,
        t: &mut T,
        basis: &Basis,
        site: &SiteLevels,
        (width, pumped_out): (Val<Length>, bool),
        flow: Val<Flow>,
    ) -> Result<Stands, Stop> {
        if pumped_out {
            // Over its weir into the pump-out compartment, whatever the outfall.
            let head =
                by!(t, "head over the weir", rectangular_weir_head::head(flow, self.weir_length, width, self.crest))?;
            let level = reckon!(t, "level over the weir", [IN, MM], (crest = self.crest, head = head) crest + head);
            return Ok(Stands { level, drowned: false, runs_full: false });
        }
        let entrance =
            given(t, "entrance loss coefficient", Some(PURE), ratio(0.5), "Crane TP-410", "flush entrance 0.5");
        let mut candidates: Vec<(Val<Length>, Holds)> = Vec::new();
        let capacity =
            by!(t, "capacity of the outlet pipe, just full", manning_capacity::flow(site.bore, site.slope, site.n))?;
        let runs_full = flow.q >= capacity.q;
        if !runs_full {
            let head = by!(t, "head over the outlet invert, free entry", entry_head::head(flow, site.bore, entrance))?;
            candidates.push((
                reckon!(t, "level for a free entry", [IN, MM], (invert = self.invert, head = head) invert + head),
                Holds::FreeEntry,
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
                candidates.push((reckon!(t, "level for normal depth", [IN, MM], (invert = self.invert, depth = depth, loss = loss) invert + depth + loss), Holds::NormalDepth));
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
            let factor = if re.q.si() < LAMINAR_PIPE {
                by!(t, "friction factor, laminar", laminar_friction::factor(re))?
            } else {
                let rough = reckon!(t, "relative roughness", [ONE, ONE], (roughness = site.roughness, bore = site.bore) roughness / bore);
                by!(t, "friction factor", colebrook::factor(re, rough))?
            };
            let k = reckon!(t, "entrance and exit", [ONE, ONE], (k = entrance) ratio(1.0) + k);
            let head = by!(t, "head of the full pipe", full_pipe_head::head(k, factor, site.length, site.bore, v))?;
            if runs_full {
                candidates.push((reckon!(t, "level for the full pipe", [IN, MM], (outfall = site.outfall, bore = site.bore, head = head) outfall + bore + head), Holds::FullPipe));
            }
            if let Some(tw) = drowned_by {
                candidates.push((
                    reckon!(t, "level against the tailwater", [IN, MM], (tailwater = tw, head = head) tailwater + head),
                    Holds::Tailwater,
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
        let among = candidates.iter().map(|(_, what)| what.words()).collect::<Vec<_>>().join(", ");
        let at_pipe =
            choose(t, "level ahead of the outlet pipe", Some(LEVEL), best.0.q, &among, best.1.words(), &nodes);
        let drowned = best.1 == Holds::Tailwater;
        if self.control.q == OutletControl::Pipe {
            return Ok(Stands { level: at_pipe, drowned, runs_full });
        }
        let head =
            by!(t, "head over the weir", rectangular_weir_head::head(flow, self.weir_length, width, self.crest))?;
        if at_pipe.q <= self.crest.q {
            let level = reckon!(t, "level over the weir", [IN, MM], (crest = self.crest, head = head) crest + head);
            return Ok(Stands { level, drowned: false, runs_full });
        }
        // A submerged weir needs no more than its free head on top of the level behind it.
        let level = reckon!(t, "level over the submerged weir, safe side", [IN, MM], (behind = at_pipe, head = head) behind + head);
        Ok(Stands { level, drowned: true, runs_full })
    }
}

/// What holds the level ahead of the outlet pipe.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Holds {
    FreeEntry,
    NormalDepth,
    FullPipe,
    Tailwater,
}

impl Holds {
    fn words(self) -> &'static str {
        match self {
            Holds::FreeEntry => "free entry into the pipe",
            Holds::NormalDepth => "normal depth in the pipe",
            Holds::FullPipe => "the pipe runs full",
            Holds::Tailwater => "the tailwater drowns the pipe",
        }
    }
}

/// Where a weir stands in the clear well, as a share of its length; nominal.
const WEIR_AT: f64 = 0.4;

impl Outlet {
    /// Station of the weir in the clear well; `None` where the pipe holds the level, or the well runs over into a pump-out
    /// compartment.
    #[must_use]
    pub fn weir_at(&self, unit: &Unit) -> Option<Length> {
        if self.control.q != OutletControl::Weir || unit.pump_out.is_some() {
            return None;
        }
        let well = unit.compartment(Place::ClearWell)?;
        Some(well.from + (well.to - well.from) * WEIR_AT)
    }
}

impl Stage for Outlet {
    fn name(&self) -> &'static str {
        "outlet"
    }
    fn stands(&self, parts: &Parts, _: Length) -> Result<(), String> {
        if self.crest.q < parts.body.height().q {
            return Ok(());
        }
        Err(if parts.body.is_open() {
            "the water would stand above the walls".to_owned()
        } else {
            "the water would stand above the top of the vessel".to_owned()
        })
    }
    /// Its weir.
    fn drawn(&self, unit: &Unit) -> Option<Drawn> {
        let at = self.weir_at(unit)?;
        let data = vec![
            Datum::Words("crest "),
            Datum::Length(self.crest.q),
            Datum::Words(", "),
            Datum::Length(self.weir_length.q),
            Datum::Words(" long"),
        ];
        let lines = vec![Line::Plate { at, low: Length::from_si(0.0), high: self.crest.q }];
        Some(Drawn::new("weir", "Outlet weir", data, (at, self.crest.q * 0.8), lines))
    }
}

/// The loss coefficient of a fitting.
///
/// # Errors
/// [`Stop`] where the handbook has none of that name.
pub(super) fn fitting_of<T: Trail>(t: &mut T, label: &str, word: &str) -> Result<Val<Ratio>, Stop> {
    let fitting = fittings::fitting_of(word).ok_or_else(|| Stop::said(label, "the handbook has no such fitting"))?;
    let (source, title) = (say!(T, "{}", fitting.source), fitting.title);
    Ok(given(t, label, Some(PURE), ratio(fitting.k), &source, title))
}
