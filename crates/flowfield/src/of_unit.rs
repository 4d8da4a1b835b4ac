//! The section of a unit: what its stages say that they are to the water.

use crate::problem::Drag;
use crate::section::{Section, Unfit, Zone};
use stillrise_design::stages::Stage;
use stillrise_design::stages::in_water::InWater;
use stillrise_design::train::unit::Unit;
use stillrise_handbook::hydraulics::baffle_coefficient;
use stillrise_handbook::separation::mesh_permeability::{self, BedModel};
use stillrise_units::{KinematicViscosity, Length, Typed, math};

/// How much harder water passes across plates than along them; so much that it does not matter how much (a trial with 100 to 10000
/// gave the same flow).
const ACROSS: f64 = 1000.0;
/// Share of a dished end's depth that is taken off each end, which stands flat in the section: what it holds is then about the same.
const OFF_HEAD: f64 = 0.33;
/// From this share of the depth on a wall is a weir.
const WEIR: f64 = 0.97;
/// Share of the depth through which water leaves over a weir, at most.
const OVER_WEIR: f64 = 0.15;
/// Places at which a width is read off over the depth.
const WIDTHS: usize = 32;

/// The section of a unit full to the crest of its outlet.
///
/// # Errors
/// [`Unfit`] where a part has numbers that a formula of the handbook does not take.
pub fn section(unit: &Unit, viscosity: KinematicViscosity) -> Result<Section, Unfit> {
    let off = OFF_HEAD * unit.body.head().si();
    let length = unit.shape.length().si() - 2.0 * off;
    let top = unit.outlet.crest.q.si();
    let x = |station: Length| (station.si() - off).clamp(0.0, length);
    let mut out = Section { length, top, ..Section::default() };
    // The floor lies level but for a hopper.
    let mut stations: Vec<f64> =
        unit.shape.outline().iter().filter(|(_, z)| z.si() < 1e-9).map(|(x, _)| x.si()).collect();
    stations.sort_by(f64::total_cmp);
    out.floor.push((0.0, 0.0));
    if unit.below_floor().si() > 0.0 {
        for station in stations {
            let at = (station - off).clamp(0.0, length);
            let level = unit.floor_at(Length::from_si(station)).si().min(0.0);
            if out.floor.last().is_none_or(|last| *last != (at, level)) {
                out.floor.push((at, level));
            }
        }
    }
    out.floor.push((length, 0.0));
    out.floor.sort_by(|a, b| a.0.total_cmp(&b.0));
    out.floor.dedup();
    let middle = unit.shape.length() * 0.5;
    out.width = (0..=WIDTHS)
        .map(|k| {
            let z = top * k as f64 / WIDTHS as f64;
            (z, unit.shape.width_at(middle, Length::from_si(z)).si())
        })
        .collect();
    out.inlet = slot(unit.inlet.invert.q.si(), unit.inlet.bore.q.si(), top);
    out.outlet = slot(unit.outlet.invert.q.si(), unit.outlet.bore.q.si(), top);
    for stage in unit.stages.all() {
        for part in stage.in_water(unit) {
            put(&mut out, stage.name(), &part, viscosity, &x)?;
        }
    }
    end_at_weir(&mut out, unit.outlet.bore.q.si());
    Ok(out)
}

/// A wall from the floor up to the surface is one over which the water falls: the section ends at it, and the water leaves through the
/// upper part of the depth there.
fn end_at_weir(out: &mut Section, bore: f64) {
    let reaches = |(_, _, low, high): &(&str, f64, f64, f64)| *low <= 1e-9 && *high > out.top * WEIR;
    let Some(at) = out.walls.iter().filter(|wall| reaches(wall)).map(|wall| wall.1).reduce(f64::min) else { return };
    out.length = at;
    out.walls.retain(|wall| wall.1 < at - 1e-9);
    out.screens.retain(|screen| screen.1 < at - 1e-9);
    out.floor.retain(|(x, _)| *x < at - 1e-9);
    let last = out.floor.last().map_or(0.0, |(_, z)| *z);
    out.floor.push((at, last));
    out.outlet = (out.top - bore.min(OVER_WEIR * out.top), out.top);
}

/// An opening of a pipe's height over its invert, within the water: what would lie above stands at the surface.
fn slot(invert: f64, bore: f64, top: f64) -> (f64, f64) {
    let least = 0.3 * bore;
    if invert > top - least { (top - bore, top) } else { (invert, (invert + bore).min(top)) }
}

fn put(
    out: &mut Section,
    name: &'static str,
    part: &InWater,
    viscosity: KinematicViscosity,
    x: &dyn Fn(Length) -> f64,
) -> Result<(), Unfit> {
    let outside = |why: String| Unfit {
        place: name.to_owned(),
        why,
        remedy: "state dimensions within the formula's range".to_owned(),
    };
    match part {
        InWater::Wall { at, low, high } => {
            if high.si() > low.si() && low.si() < out.top {
                out.walls.push((name, x(*at), low.si(), high.si()));
            }
        }
        InWater::Shelf { at, between } => out.shelves.push((name, at.si(), x(between.0), x(between.1))),
        InWater::Inclined(from, to) => {
            // What of it stands over the surface is no obstacle.
            let (mut from, mut to) = ((x(from.0), from.1.si()), (x(to.0), to.1.si()));
            if from.1 > to.1 {
                (from, to) = (to, from);
            }
            if from.1 < out.top {
                if to.1 > out.top {
                    let share = (out.top - from.1) / (to.1 - from.1);
                    to = (from.0 + share * (to.0 - from.0), out.top);
                }
                out.askew.push((name, from, to));
            }
        }
        InWater::Openings { at, low, high, open } => {
            let zeta = baffle_coefficient::coefficient(*open).map_err(|o| outside(o.to_string()))?;
            out.screens.push((name, x(*at), low.si(), high.si(), zeta.si()));
        }
        InWater::Plates { between, low, high, gap, plate, angle } => {
            let (gap, plate) = (gap.si(), plate.si());
            let open = gap / (gap + plate);
            let along = 12.0 * viscosity.si() / (gap * gap * open);
            let drag = Drag::turned(along, ACROSS * along, (math::cos(angle.si()), math::sin(angle.si())));
            let (between, levels) = ((x(between.0), x(between.1)), (low.si(), high.si()));
            out.zones.push(Zone { name, between, levels, drag, is_pack: true });
        }
        InWater::Fibres { between, low, high, fibre, solidity } => {
            let k = mesh_permeability::permeability(*fibre, *solidity, BedModel::Davies)
                .map_err(|o| outside(o.to_string()))?;
            let each = viscosity.si() / k.si();
            let drag = Drag { xx: each, yy: each, ..Drag::default() };
            let (between, levels) = ((x(between.0), x(between.1)), (low.si(), high.si()));
            out.zones.push(Zone { name, between, levels, drag, is_pack: false });
        }
    }
    Ok(())
}
