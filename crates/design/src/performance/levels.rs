//! Oil levels: how thick a layer each oil may make, what governs, and the set points.

use super::caps::{Cap, Margins, caps};
use super::hydraulics::Profile;
use crate::basis::Basis;
use crate::basis::fluids::OilState;
use crate::provenance::{Node, Off, Pair, Stop, Trail, Val, choose, given};
use crate::train::Train;
use crate::train::unit::Unit;
use crate::vessel::Layer;
use crate::{by, reckon, say};
use stillrise_handbook::vessel::alarms::{DEFAULTS, LOWEST_ALARM, Mark, SetPoint};
use stillrise_handbook::vessel::{
    float_force_in_oil, float_force_in_water, float_submergence, interface_drop, oil_draw_residue, oil_surface_rise,
    set_point, skim_start,
};
use stillrise_units::catalog::{IN, L as LITRE, MM, PERCENT};
use stillrise_units::{Density, Force, Length, Ratio, Typed, Volume, math, ratio};

const LEVEL: Pair = (&IN, &MM);

/// One set point.
#[derive(Debug, Clone)]
pub struct Level {
    /// The set point as proposed.
    pub point: &'static SetPoint,
    /// Oil layer.
    pub thickness: Val<Length>,
    /// Interface without flow, above the floor.
    pub interface: Val<Length>,
    /// Oil surface without flow, above the floor.
    pub surface: Val<Length>,
    /// Oil held in one unit.
    pub volume: Val<Volume>,
}

/// The level float in one oil.
#[derive(Debug, Clone)]
pub struct Float {
    /// Share of it that is in the water when it rides the interface; below zero it floats on the oil.
    pub submerged: Val<Ratio>,
    /// Net force down when it is in oil.
    pub down: Val<Force>,
    /// Net force up when it is in water.
    pub up: Val<Force>,
}

/// The levels of one oil.
#[derive(Debug, Clone)]
pub struct OilLevels {
    /// The oil.
    pub oil: String,
    /// Its place among those of the basis.
    pub place: usize,
    /// The caps.
    pub caps: Vec<Cap>,
    /// The governing one.
    pub governing: usize,
    /// Thickest permitted layer.
    pub limit: Val<Length>,
    /// Set points, in the order in which a growing layer meets them.
    pub levels: Vec<Level>,
    /// The float.
    pub float: Float,
    /// Layer of this oil at which the alarm trips, with the one float set for the governing oil.
    pub trip: Option<Val<Length>>,
    /// The same at the largest flow, which lifts the interface over the float.
    pub trip_at_flow: Option<Val<Length>>,
    /// Layer that a draw-off leaves.
    pub residue: Val<Length>,
    /// Layer at which a fixed skim lip above the design level would begin to draw, for information.
    pub skim: Option<Val<Length>>,
}

impl OilLevels {
    /// The set point of a kind.
    #[must_use]
    pub fn level(&self, mark: Mark) -> Option<&Level> {
        self.levels.iter().find(|l| l.point.mark == mark)
    }
}

/// The levels of one oil. `highest` is the profile at the largest flow, fouled.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn oil_levels<T: Trail>(
    t: &mut T,
    basis: &Basis,
    train: &Train,
    m: &Margins,
    highest: &Profile,
    (place, oil): (usize, &OilState),
) -> Result<OilLevels, Stop> {
    t.section(format_args!("oil levels: {}", oil.name));
    let unit = &train.unit;
    let crest = unit.outlet.crest;
    let (cold, warm) = (&basis.fluids.cold, &basis.fluids.warm);
    if oil.cold.q >= cold.density.q {
        return Err(Stop {
            doing: format!("oil levels of {}", oil.name),
            reason: "the oil is as heavy as the water and makes no layer".to_owned(),
            formula: false,
        });
    }
    let caps = caps(t, train, m, highest, oil, &basis.fluids)?;
    let mut governing = 0;
    for (i, cap) in caps.iter().enumerate() {
        if cap.thickness.q < caps[governing].thickness.q {
            governing = i;
        }
    }
    let nodes: Vec<_> = caps.iter().map(|c| c.thickness.at).collect();
    let zero = Length::from_si(0.0);
    let smallest = caps[governing].thickness.q;
    let limit = choose(
        t,
        "thickest permitted oil layer",
        Some(LEVEL),
        if smallest > zero { smallest } else { zero },
        "the caps",
        caps[governing].of.word(),
        &nodes,
    );
    let share_of = |t: &mut T, point: &'static SetPoint| -> Result<Val<Length>, Stop> {
        let share = match basis.methods.alarm.filter(|_| point.mark == Mark::Alarm) {
            Some(share) => share,
            None => given(
                t,
                &say!(T, "share at {}", point.title.to_lowercase()),
                Some((&PERCENT, &PERCENT)),
                ratio(point.share),
                &say!(T, "{}", point.source),
                point.word,
            ),
        };
        by!(t, &say!(T, "oil layer at {}", point.title.to_lowercase()), set_point::thickness(limit, share))
    };
    let mut alarm = None;
    for point in DEFAULTS.iter().filter(|p| p.mark == Mark::Alarm) {
        let wanted = share_of(t, point)?;
        let wanted = ahead_of_spill(t, basis, train, (oil, cold.density), limit, wanted)?;
        alarm = Some(in_time(t, unit, highest, oil, cold.density, limit, wanted)?);
    }
    let mut levels = Vec::new();
    for point in DEFAULTS {
        let thickness = match (alarm, point.mark) {
            (Some(alarm), Mark::Alarm) => alarm,
            // What is pumped out as a routine is pumped before the alarm says so.
            (Some(alarm), Mark::PumpOut) => {
                let share = share_of(t, point)?;
                if share.q <= alarm.q {
                    share
                } else {
                    choose(
                        t,
                        "oil layer at routine pump-out",
                        Some(LEVEL),
                        alarm.q,
                        "the share of the limit, and the alarm",
                        "not later than the alarm",
                        &[share.at, alarm.at],
                    )
                }
            }
            _ => share_of(t, point)?,
        };
        let drop =
            by!(t, "interface below the clear-well level", interface_drop::drop(thickness, oil.cold, cold.density))?;
        let rise =
            by!(t, "surface above the clear-well level", oil_surface_rise::rise(thickness, oil.cold, cold.density))?;
        let interface = reckon!(t, "interface", [IN, MM], (crest = crest, drop = drop) crest - drop);
        let surface = reckon!(t, "oil surface", [IN, MM], (crest = crest, rise = rise) crest + rise);
        let volume = unit.body.layer(t, "oil held", unit.oil, &Layer { thickness, interface, surface })?;
        levels.push(Level { point, thickness, interface, surface, volume });
    }
    let body = given(
        t,
        "volume of the float",
        Some((&LITRE, &LITRE)),
        Volume::of(0.3, &LITRE),
        "common practice",
        "{0.0793 gal|0.3 L}",
    );
    let float = Float {
        submerged: by!(
            t,
            "share of the float in the water",
            float_submergence::share(unit.retention.float_density, oil.cold, warm.density)
        )?,
        down: by!(
            t,
            "force down on the float in oil",
            float_force_in_oil::force(unit.retention.float_density, oil.cold, body)
        )?,
        up: by!(
            t,
            "force up on the float in water",
            float_force_in_water::force(unit.retention.float_density, warm.density, body)
        )?,
    };
    let residue = by!(
        t,
        "layer the draw-off leaves",
        oil_draw_residue::thickness(crest, unit.retention.oil_draw, oil.warm, warm.density)
    )?;
    let skim = by!(
        t,
        "layer at which a lip at the inlet invert would skim",
        skim_start::thickness(unit.inlet.invert, highest.well, oil.warm, warm.density)
    )
    .ok();
    Ok(OilLevels {
        oil: oil.name.clone(),
        place,
        caps,
        governing,
        limit,
        levels,
        float,
        trip: None,
        trip_at_flow: None,
        residue,
        skim,
    })
}

/// Oil that a layer of a thickness holds, without flow; for a search among many, and so without a trail.
fn held(unit: &Unit, oil: &OilState, water: Val<Density>, thickness: Length) -> Option<Volume> {
    let crest = unit.outlet.crest.q;
    let drop = interface_drop::drop(thickness, oil.cold.q, water.q).ok()?;
    let rise = oil_surface_rise::rise(thickness, oil.cold.q, water.q).ok()?;
    let [thickness, interface, surface] = [thickness, crest - drop, crest + rise].map(|q| Val { q, at: Node::NONE });
    let layer = Layer { thickness, interface, surface };
    unit.body.layer(&mut Off, "", unit.oil, &layer).ok().map(|volume| volume.q)
}

/// The alarm's layer, so that what is declared as a spill still finds room over it: where nobody stated its level it moves
/// down, where that leaves the room and it stays clear of the routine pump-out.
fn ahead_of_spill<T: Trail>(
    t: &mut T,
    basis: &Basis,
    train: &Train,
    (oil, water): (&OilState, Val<Density>),
    limit: Val<Length>,
    wanted: Val<Length>,
) -> Result<Val<Length>, Stop> {
    let spill = basis.spill.as_ref().filter(|_| basis.methods.alarm.is_none()).map(|s| s.at_unit());
    let Some(spill) = spill.filter(|spill| spill.q.si() > 0.0) else { return Ok(wanted) };
    let unit = &train.unit;
    let each = reckon!(t, "spill that comes to one unit", [GAL, M3], (spill = spill, n = train.count) spill / n);
    let held = |thickness: Length| held(unit, oil, water, thickness);
    let label = "thickest layer over which the spill finds room";
    let latest = unit.body.layer_under(t, label, unit.oil, (limit, each), held)?;
    if latest.q >= wanted.q {
        return Ok(wanted);
    }
    let share = given(
        t,
        "lowest share of the limit at which an alarm is put",
        Some((&PERCENT, &PERCENT)),
        ratio(LOWEST_ALARM),
        "our proposal",
        "clear of the routine pump-out",
    );
    let lowest = by!(t, "lowest oil layer at the alarm", set_point::thickness(limit, share))?;
    let whole = Length::of(math::floor(latest.q.in_unit(&MM)), &MM);
    // An alarm that calls early and still leaves no room for the spill would only be a nuisance.
    if whole < lowest.q {
        return Ok(wanted);
    }
    Ok(choose(
        t,
        "oil layer at the alarm, for the spill",
        Some(LEVEL),
        whole,
        "the share of the limit, and the room that the spill needs",
        "the thinner, down to a whole millimetre, so that the spill still finds room over it",
        &[wanted.at, latest.at, lowest.at],
    ))
}

/// The alarm's layer without flow, so that at the largest flow it still trips before the limit: the
/// float hangs at one height, and flow lifts the interface over it.
fn in_time<T: Trail>(
    t: &mut T,
    unit: &Unit,
    highest: &Profile,
    oil: &OilState,
    water: Val<Density>,
    limit: Val<Length>,
    wanted: Val<Length>,
) -> Result<Val<Length>, Stop> {
    let delay = by!(
        t,
        "layer by which the largest flow delays the alarm",
        oil_draw_residue::thickness(highest.chamber, unit.outlet.crest, oil.cold, water)
    )?;
    let latest = reckon!(t, "thickest layer without flow at which the alarm is in time", [IN, MM], (limit = limit, delay = delay) limit - delay);
    if latest.q >= wanted.q || latest.q.si() <= 0.0 {
        return Ok(wanted);
    }
    Ok(choose(
        t,
        "oil layer at the alarm",
        Some(LEVEL),
        latest.q,
        "the share of the limit, and the layer that is in time at the largest flow",
        "the thinner, so that the alarm is in time at every flow",
        &[wanted.at, latest.at],
    ))
}

/// Where the one alarm float makes each oil trip: it is mounted for the oil with the thinnest
/// permitted layer, and a lighter oil pushes the interface down less.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn trips<T: Trail>(
    t: &mut T,
    basis: &Basis,
    unit: &Unit,
    highest: &Profile,
    all: &mut [OilLevels],
) -> Result<(), Stop> {
    t.section("alarm float");
    let governing = all.iter().min_by(|a, b| a.limit.q.si().total_cmp(&b.limit.q.si()));
    let Some((place, mounted)) = governing.and_then(|l| Some((l.place, l.level(Mark::Alarm)?.interface))) else {
        return Ok(());
    };
    for levels in all.iter_mut() {
        let Some(oil) = basis.fluids.oils.get(levels.place) else { continue };
        levels.trip = Some(by!(
            t,
            &say!(T, "layer of {} at which the alarm trips", levels.oil),
            oil_draw_residue::thickness(unit.outlet.crest, mounted, oil.warm, basis.fluids.warm.density)
        )?);
        levels.trip_at_flow = Some(by!(
            t,
            &say!(T, "layer of {} at which it trips at the largest flow", levels.oil),
            oil_draw_residue::thickness(highest.chamber, mounted, oil.cold, basis.fluids.cold.density)
        )?);
        if levels.place != place {
            alarm_as_mounted(t, basis, unit, (levels, oil), mounted)?;
        }
    }
    Ok(())
}

/// The alarm's level in another oil than the one it is mounted for: where the float meets the interface, however thick the
/// layer is then.
fn alarm_as_mounted<T: Trail>(
    t: &mut T,
    basis: &Basis,
    unit: &Unit,
    (levels, oil): (&mut OilLevels, &OilState),
    interface: Val<Length>,
) -> Result<(), Stop> {
    let (crest, water) = (unit.outlet.crest, basis.fluids.cold.density);
    let Some(level) = levels.levels.iter_mut().find(|l| l.point.mark == Mark::Alarm) else { return Ok(()) };
    let label = "layer at the alarm, without flow, as the float is mounted";
    let thickness = by!(t, label, oil_draw_residue::thickness(crest, interface, oil.cold, water))?;
    let rise = by!(t, "surface above the clear-well level", oil_surface_rise::rise(thickness, oil.cold, water))?;
    let surface = reckon!(t, "oil surface", [IN, MM], (crest = crest, rise = rise) crest + rise);
    let volume = unit.body.layer(t, "oil held", unit.oil, &Layer { thickness, interface, surface })?;
    *level = Level { point: level.point, thickness, interface, surface, volume };
    // What a layer holds grows with it: set points stand in the order in which a growing layer meets them.
    levels.levels.sort_by(|a, b| a.thickness.q.si().total_cmp(&b.thickness.q.si()));
    Ok(())
}
