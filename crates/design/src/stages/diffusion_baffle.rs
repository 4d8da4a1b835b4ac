//! Stage: a perforated or slotted wall that spreads the water over the section. Where it ends over an open hopper, or above
//! the floor, most of the water passes underneath and is spread by nothing.

use super::hopper::Hopper;
use super::in_water::InWater;
use super::inlet_chamber::InletChamber;
use super::stage::{Datum, Drawn, Line, Stage, over_water};
use super::{Crossing, Place};
use crate::basis::stated::{assumed, declared, stand_in, stated_or};
use crate::enquiry::keys::{Quantity, keys};
use crate::provenance::{Pair, Stop, Trail, Val, choose, given};
use crate::train::row::{DIMENSION, Row};
use crate::train::unit::Unit;
use crate::{by, reckon, record};
use stillrise_handbook::hydraulics::{baffle_coefficient, fitting_loss, under_baffle_share};
use stillrise_handbook::separation::loss_dissipation;
use stillrise_units::catalog::{IN, MM, ONE, PERCENT};
use stillrise_units::{Dissipation, Flow, Length, Ratio, Typed, ratio};

keys! {
    /// Keys of the diffusion baffle.
    DiffusionBaffleKeys "model" {
        /// Open share of the diffusion baffle
        open as "baffle_open": Quantity<Ratio> = spec.units(&PERCENT, &PERCENT).between("0.5 %", "60 %").like("\"6 %\"")
            .usual("3 %", "5 %", "10 %", "from memory: 3 to 7 % of the section for slotted baffles");
        /// Opening left under the diffusion baffle; none where it reaches down to the hopper's floor
        gap as "baffle_gap": Quantity<Length> = spec.units(&IN, &MM).between("0 in", "120 in").like("\"0 in\"")
            .asks("Does the first baffle reach down into the hopper, or can water pass under it: how high is the opening?")
            .found("none; as high as the hopper is deep at most, where that reaches beyond the inlet chamber");
    }
}

record! {
    /// The baffle.
    DiffusionBaffle {
        /// open share of its section
        open: Ratio;
        /// opening left under it
        under: Length;
    }
}

/// What it does to the jet.
#[derive(Debug, Clone)]
pub struct Spreads {
    /// Its loss coefficient on the velocity along the unit.
    pub zeta: Val<Ratio>,
    /// Share of the flow that passes underneath; `None` where it is closed.
    pub under: Option<Val<Ratio>>,
    /// Power that it leaves in the primary zone.
    pub power: Option<Val<Dissipation>>,
}

/// The most that gaps are taken to be fed unequally, whatever passes under the baffle. Our proposal.
const MOST_UNEQUAL: f64 = 0.9;

impl DiffusionBaffle {
    /// As a row or a described unit lays it out; a hopper that reaches beyond the inlet chamber is open under it unless the
    /// baffle reaches down into it.
    pub fn laid<T: Trail>(row: &mut Row<'_, T>, chamber: &InletChamber, hopper: Option<&Hopper>) -> Self {
        const SHARE: Pair = (&PERCENT, &PERCENT);
        let m = row.m;
        let open = match row.laid("open share of the diffusion baffle", SHARE, &m.stages.baffle.open) {
            Some(value) => value,
            None => {
                let key = m.stages.baffle.open();
                assumed(row.t, row.w, &key, "open share of the diffusion baffle", declared(key.spec))
            }
        };
        let label = "opening left under the diffusion baffle";
        let none = Length::from_si(0.0);
        let over = hopper.filter(|hopper| hopper.length.q > chamber.length.q);
        // Of a row its maker knows it; a customer looks into the unit that he has.
        let key = m.stages.baffle.gap().asked_if(row.described);
        let under = match (row.laid(label, DIMENSION, &m.stages.baffle.gap), over) {
            (Some(stated), _) => stated,
            (None, Some(hopper)) => stated_or(row.t, row.w, key, label, || {
                let why =
                    "our proposal: closed down to the hopper's floor; many end at the floor, over the open hopper";
                stand_in((none, none, hopper.depth.q), why)
            }),
            (None, None) => given(row.t, label, Some(DIMENSION), none, row.source, "it stands on the floor"),
        };
        Self { open, under }
    }

    fn zeta<T: Trail>(&self, t: &mut T) -> Result<Val<Ratio>, Stop> {
        by!(t, "loss coefficient of the diffusion baffle", baffle_coefficient::coefficient(self.open))
    }

    /// Share of the flow that passes underneath; `None` where it is closed.
    fn below<T: Trail>(&self, t: &mut T, unit: &Unit, zeta: Val<Ratio>) -> Result<Option<Val<Ratio>>, Stop> {
        if self.under.q.si() <= 0.0 {
            return Ok(None);
        }
        let crest = unit.outlet.crest;
        let section = unit.body.section(t, "wetted cross-section", crest)?;
        let width = unit.body.mean_width(t, "mean width under the baffle", crest)?;
        let opening = reckon!(t, "area of the opening under the baffle", [FT2, M2], (height = self.under, width = width) height * width);
        let c =
            given(t, "discharge coefficient of the opening", Some((&ONE, &ONE)), ratio(0.6), "FHWA HDS-2, 8.10", "0.6");
        by!(t, "share of the flow that passes under the baffle", under_baffle_share::share(opening, section, zeta, c))
            .map(Some)
    }

    /// How unequally it lets the gaps behind it be fed: as stated or assumed, or as much as passes under it unspread.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn feeds<T: Trail>(&self, t: &mut T, unit: &Unit, usual: Val<Ratio>) -> Result<Val<Ratio>, Stop> {
        if self.under.q.si() <= 0.0 {
            return Ok(usual);
        }
        let zeta = self.zeta(t)?;
        let Some(under) = self.below(t, unit, zeta)? else { return Ok(usual) };
        let most = ratio(MOST_UNEQUAL);
        let share = if under.q < most { under.q } else { most };
        let taken = if share > usual.q { share } else { usual.q };
        Ok(choose(
            t,
            "unequal flow between the gaps, behind that baffle",
            Some((&PERCENT, &PERCENT)),
            taken,
            "the usual, and the share that passes under the baffle, at most 90 %",
            "the larger: what passes underneath is spread by nothing (engineering judgement)",
            &[usual.at, under.at],
        ))
    }

    /// What it does to the jet at a flow.
    ///
    /// # Errors
    /// [`Stop`] when a formula has no answer.
    pub fn spreads<T: Trail>(&self, t: &mut T, unit: &Unit, flow: Val<Flow>) -> Result<Spreads, Stop> {
        let zeta = self.zeta(t)?;
        let under = self.below(t, unit, zeta)?;
        let section = unit.body.section(t, "wetted cross-section", unit.outlet.crest)?;
        let approach =
            reckon!(t, "velocity ahead of the baffle", [FT_MIN, MM_S], (flow = flow, section = section) flow / section);
        let through = match under {
            Some(under) => {
                reckon!(t, "velocity ahead of the holes, without what passes underneath", [FT_MIN, MM_S],
                    (v = approach, under = under) v * (ratio(1.0) - under))
            }
            None => approach,
        };
        let loss = by!(t, "head that the baffle takes", fitting_loss::loss(zeta, through))?;
        let power = match unit.compartment(Place::GravityZone) {
            Some(zone) => Some(by!(
                t,
                "power of the baffle's jets in the primary zone",
                loss_dissipation::dissipation(loss, flow, zone.volume)
            )?),
            None => None,
        };
        Ok(Spreads { zeta, under, power })
    }
}

impl Stage for DiffusionBaffle {
    fn name(&self) -> &'static str {
        "diffusion baffle"
    }
    fn loses(&self) -> bool {
        true
    }
    /// Through its openings, or under it.
    fn loss<T: Trail>(&self, t: &mut T, way: &Crossing<'_>) -> Result<Option<Val<Length>>, Stop> {
        let zeta = self.zeta(t)?;
        let through = match self.below(t, way.unit, zeta)? {
            Some(under) => {
                reckon!(t, "velocity ahead of the holes, without what passes underneath", [FT_MIN, MM_S],
                    (v = way.approach, under = under) v * (ratio(1.0) - under))
            }
            None => way.approach,
        };
        by!(t, "loss of the diffusion baffle", fitting_loss::loss(zeta, through)).map(Some)
    }
    fn inner_wall(&self, unit: &Unit) -> Option<Length> {
        unit.compartment(Place::InletChamber).map(|c| c.to)
    }
    fn in_water(&self, unit: &Unit) -> Vec<InWater> {
        let Some(at) = self.inner_wall(unit) else { return Vec::new() };
        let (low, high) = (unit.floor_at(at) + self.under.q, unit.shape.height());
        vec![InWater::Openings { at, low, high, open: self.open.q }]
    }
    fn drawn(&self, unit: &Unit) -> Option<Drawn> {
        let at = self.inner_wall(unit)?;
        let mut data = vec![Datum::Words("perforated, "), Datum::Share(self.open.q)];
        if self.under.q.si() > 0.0 {
            data.extend([Datum::Words(" open, "), Datum::Length(self.under.q), Datum::Words(" left under it")]);
        } else if unit.floor_at(at).si() < 0.0 {
            data.extend([
                Datum::Words(" open, down to the hopper's wall "),
                Datum::Length(unit.floor_at(at) * -1.0),
                Datum::Words(" under the floor; at its foot a notch for solids, by maker"),
            ]);
        } else {
            data.push(Datum::Words(" open, closed to the floor below it"));
        }
        let lines = vec![Line::Perforated { at, low: unit.floor_at(at) + self.under.q, high: unit.shape.height() }];
        Some(Drawn::new("baffle", "Diffusion baffle", data, (at, over_water(unit)), lines))
    }
}
