//! What collects: sludge and oil, days to fill, and the spill against what stays in.

use super::grains::Grains;
use super::levels::OilLevels;
use super::of_water;
use super::passage::Fixed;
use super::removal::Removal;
use crate::basis::chemicals::Which;
use crate::basis::fluids::Season;
use crate::basis::{Basis, SpillState};
use crate::provenance::{Stop, Trail, Val, Whence, given};
use crate::stages::Place;
use crate::train::Train;
use crate::train::unit::Unit;
use crate::{by, reckon, say};
use stillrise_handbook::separation::{lognormal_finer, mixture};
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_handbook::vessel::triggers::{Room, TRIGGERS, Trigger, applying, strictest_sludge};
use stillrise_handbook::vessel::{days_to_fill, displaced_water, dry_solids, oil_rate, sludge_rate};
use stillrise_units::catalog::MG_L;
use stillrise_units::catalog::{D, GAL, GPD, M3, M3_D};
use stillrise_units::{Concentration, Flow, Mass, MassRate, Ratio, Time, Typed, Volume, ratio};

/// Sludge and oil on an average day, for all units together unless said otherwise.
#[derive(Debug, Clone)]
pub struct Storage {
    /// Water on an average day, as a flow.
    pub average: Val<Flow>,
    /// Share of the solids that settles.
    pub settled: Val<Ratio>,
    /// Sludge in one unit.
    pub sludge_rate: Val<Flow>,
    /// Sludge volume that calls for pumping out, one unit.
    pub sludge_trigger: Option<Val<Volume>>,
    /// Solids that leave, mean over the waters of an average day.
    pub solids_out: Val<Concentration>,
    /// Oil that leaves on them, where it is stated that oil clings to them; in no other line.
    pub oil_on_solids: Option<Val<Concentration>>,
    /// Dry solids that reach one unit.
    pub dry: Val<MassRate>,
    /// Days until then.
    pub sludge_days: Option<Val<Time>>,
    /// Days until then behind the grit trap that is asked for; `None` without one, or where the grains are sieved or too fine.
    pub behind_trap: Option<Val<Time>>,
    /// Days until the sand compartment of the unit is half full; `None` without one.
    pub sand_days: Option<Val<Time>>,
    /// Oil in one unit.
    pub oil_rate: Val<Flow>,
    /// Days to the routine pump-out of the oil.
    pub oil_routine: Option<Val<Time>>,
    /// The same if all free oil that arrives were held: the soonest.
    pub oil_soonest: Option<Val<Time>>,
    /// Days to the oil alarm.
    pub oil_days: Option<Val<Time>>,
    /// The rule that called for it.
    pub trigger: &'static Trigger,
    /// Spill against what stays in.
    pub spill: Option<SpillRoom>,
}

/// Spill against what stays in.
#[derive(Debug, Clone)]
pub struct SpillRoom {
    /// Oil that the units still take between alarm and limit.
    pub room: Val<Volume>,
    /// Room less what of the spill comes to it.
    pub spare: Val<Volume>,
    /// The oil whose levels these are, by its place: the one that is spilled, else the one that leaves least room.
    pub oil: usize,
    /// Water that it pushes out through the outlet before any oil follows; none for an oil that sinks.
    pub displaced: Option<Val<Volume>>,
}

/// Finds what collects. `usual` is the removal of the case that runs most.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn storage<T: Trail>(
    t: &mut T,
    basis: &Basis,
    train: &Train,
    levels: &[OilLevels],
    fixed: &Fixed,
    (usual, removals): (&Removal, &[Removal]),
) -> Result<Storage, Stop> {
    t.section("storage");
    let unit = &train.unit;
    let day = given(t, "one day", Some((&D, &D)), Time::of(1.0, &D), Whence::Definition, "1 d");
    let average = match crate::basis::average_day(t, basis) {
        Some(volume) => {
            reckon!(t, "water on an average day, as a flow", [GPD, M3_D], (volume = volume, day = day) volume / day)
        }
        None => given(
            t,
            "water on an average day, as a flow",
            Some((&GPD, &M3_D)),
            Flow::from_si(usual.flow.q.si() / 24.0),
            "our proposal",
            "one hour a day, as nothing is known of the running time",
        ),
    };
    let each = reckon!(t, "of it through one unit", [GPD, M3_D], (average = average, n = train.count) average / n);
    let s = &basis.solids;
    let (c_in, c_oil) = average_content(t, basis, day, usual)?;
    let (left, left_out) = left_of_all(t, basis, fixed, (usual, removals))?;
    let settled = reckon!(t, "share of the solids that settles", [PERCENT, PERCENT], (left = left) ratio(1.0) - left);
    let c_out =
        reckon!(t, "solids out", [MG_L, MG_L], (solids = c_in, settled = settled) solids * (ratio(1.0) - settled));
    let leaves = reckon!(t, "solids that leave, by the calculation", [MG_L, MG_L], (solids = c_in, left = left_out) solids * left);
    let oil_on_solids = basis.oil_on_solids.map(
        |oil| reckon!(t, "oil that leaves on the solids", [MG_L, MG_L], (solids = leaves, oil = oil) solids * oil),
    );
    let none =
        given(t, "solids out, if all stayed", Some((&MG_L, &MG_L)), Concentration::from_si(0.0), "bound", "0 mg/L");
    let arriving = by!(t, "dry solids that reach one unit", dry_solids::rate(each, c_in, none))?;
    let dry = by!(t, "dry solids in one unit", dry_solids::rate(each, c_in, c_out))?;
    let sludge = by!(t, "sludge in one unit", sludge_rate::rate(dry, s.in_sludge, s.sludge_density))?;
    let room = Room {
        store: unit.hopper.as_ref().map_or(unit.layout.water_volume.q * 0.1, |hopper| hopper.volume.q),
        separator: unit.layout.water_volume.q,
        area: unit.layout.tank_area.q,
        depth: unit.outlet.crest.q,
    };
    let strictest = strictest_sludge(applying(None), &room).map_or(&TRIGGERS[0], |(rule, _)| rule);
    let trigger = basis.methods.trigger.unwrap_or(strictest);
    let sludge_trigger = trigger.sludge.volume(&room).map(|v| {
        given(
            t,
            "sludge that calls for pumping out",
            Some((&GAL, &M3)),
            v,
            &say!(T, "{}", trigger.source),
            trigger.title,
        )
    });
    // What its own sand compartment holds does not come into the unit.
    let (sludge, sand) = match unit.sand_trap.as_ref().zip(share_held(t, basis, train)?) {
        Some((_, coarse)) if coarse.q < settled.q => {
            let held = reckon!(t, "sludge in the sand compartment", [GPD, M3_D], (all = sludge, coarse = coarse, settled = settled) all * (coarse / settled));
            let rest = reckon!(t, "sludge in the unit behind it", [GPD, M3_D], (all = sludge, held = held) all - held);
            (rest, sand(t, unit, held)?)
        }
        _ => (sludge, None),
    };
    let sludge_days = match sludge_trigger {
        Some(volume) if sludge.q.si() > 0.0 => {
            Some(by!(t, "days until sludge is pumped", days_to_fill::time(volume, sludge))?)
        }
        _ => None,
    };
    let behind_trap = match sludge_days {
        Some(days) if unit.sand_trap.is_none() => behind_trap(t, basis, train, settled, days)?,
        _ => None,
    };
    let heaviest = levels.iter().min_by(|a, b| a.limit.q.si().total_cmp(&b.limit.q.si()));
    let oil_density = basis.fluids.heaviest(Season::Cold).cold;
    let oil_out =
        reckon!(t, "free oil out, mean over all water", [MG_L, MG_L], (mean = c_oil, left = usual.left) mean * left);
    let oil = by!(t, "oil collected in one unit", oil_rate::rate(each, c_oil, oil_out, oil_density))?;
    let alarm = heaviest.and_then(|l| l.level(Mark::Alarm));
    let routine = heaviest.and_then(|l| l.level(Mark::PumpOut));
    let oil_routine = match routine {
        Some(level) if oil.q.si() > 0.0 => {
            Some(by!(t, "days to the routine pump-out of the oil", days_to_fill::time(level.volume, oil))?)
        }
        _ => None,
    };
    // Droplets coarser than those reckoned with are cautious for what leaves and fill the room sooner: all may be held.
    let kept = given(
        t,
        "free oil out, if all were held",
        Some((&MG_L, &MG_L)),
        Concentration::from_si(0.0),
        "bound",
        "0 mg/L",
    );
    let most = by!(t, "oil collected in one unit, if all were held", oil_rate::rate(each, c_oil, kept, oil_density))?;
    let oil_soonest = match routine {
        Some(level) if most.q.si() > 0.0 => {
            let label = "days to the routine pump-out of the oil, if all were held";
            Some(by!(t, label, days_to_fill::time(level.volume, most))?)
        }
        _ => None,
    };
    let oil_days = match alarm {
        Some(alarm) if oil.q.si() > 0.0 => {
            Some(by!(t, "days to the oil alarm", days_to_fill::time(alarm.volume, oil))?)
        }
        _ => None,
    };
    let spill = match &basis.spill {
        Some(spill) => spill_room(t, basis, train, levels, spill)?,
        None => None,
    };
    Ok(Storage {
        average,
        settled,
        sludge_rate: sludge,
        sludge_trigger,
        solids_out: leaves,
        oil_on_solids,
        dry: arriving,
        sludge_days,
        behind_trap,
        sand_days: sand,
        oil_rate: oil,
        oil_routine,
        oil_soonest,
        oil_days,
        trigger,
        spill,
    })
}

/// The room for a spill: between the levels of its own oil, where somebody said which it is, else where it is least.
fn spill_room<T: Trail>(
    t: &mut T,
    basis: &Basis,
    train: &Train,
    levels: &[OilLevels],
    spill: &SpillState,
) -> Result<Option<SpillRoom>, Stop> {
    let ends = |l: &OilLevels| Some((l.place, l.level(Mark::Alarm)?.volume, l.level(Mark::Limit)?.volume));
    let own = levels.iter().filter(|l| spill.oil.is_none_or(|oil| l.place == oil)).filter_map(ends);
    let least = own.min_by(|(_, a, b), (_, c, d)| (b.q - a.q).si().total_cmp(&(d.q - c.q).si()));
    let Some((oil, alarm, limit)) = least else { return Ok(None) };
    let room = reckon!(
        t,
        "room between alarm and limit, all units",
        [GAL, M3],
        (limit = limit, alarm = alarm, n = train.count)(limit - alarm) * n
    );
    let spare = reckon!(t, "room less spill", [GAL, M3], (room = room, spill = spill.at_unit()) room - spill);
    let water = basis.fluids.water(Season::Cold).density;
    let heaviest = basis.fluids.heaviest(Season::Cold);
    let spilled = spill.oil.and_then(|oil| basis.fluids.oils.get(oil)).unwrap_or(heaviest).cold;
    let displaced = if spilled.q < water.q {
        by!(t, "water that the spill pushes out ahead of it", displaced_water::volume(spill.at_unit(), spilled, water))
            .ok()
    } else {
        None
    };
    Ok(Some(SpillRoom { room, spare, oil, displaced }))
}

/// Shares of the solids of an average day that are left, clean: what no sieve parted counts first as of the finest sieve, for
/// the sludge, then as passing whole, for what leaves. Each water settles at the flow at which it comes, and counts by the
/// solids that it brings.
fn left_of_all<T: Trail>(
    t: &mut T,
    basis: &Basis,
    fixed: &Fixed,
    (usual, removals): (&Removal, &[Removal]),
) -> Result<(Val<Ratio>, Val<Ratio>), Stop> {
    let label = "solids left behind the plates";
    let drained = basis.containment.iter().flat_map(|ahead| ahead.all.iter().enumerate());
    let drained = drained.filter_map(|(i, c)| c.drained.as_ref().map(|d| (Which::Drain(i), d.per_day, &d.content)));
    let waters = basis.waters.iter().map(|water| (water.which, water.per_day, &water.content));
    // Those that come in one case settle together.
    let mut parts: Vec<(&Removal, Val<Mass>)> = Vec::new();
    for (which, per_day, content) in waters.chain(drained) {
        let removal = of_water(basis, removals, which).filter(|r| r.case_index != usual.case_index).unwrap_or(usual);
        let brings = reckon!(t, "dry solids of a water on an average day", [LB, KG], (volume = per_day, solids = content.solids) volume * solids);
        match parts.iter_mut().find(|(r, _)| r.case_index == removal.case_index) {
            Some((_, sum)) => {
                *sum = reckon!(t, "dry solids of waters that come together", [LB, KG], (sum = *sum, next = brings) sum + next);
            }
            None => parts.push((removal, brings)),
        }
    }
    parts.retain(|(_, brings)| brings.q.si() > 0.0);
    let one = |t: &mut T, removal: &Removal| {
        let grains = Grains::new(t, basis, fixed, removal);
        let left = grains.left(t, label)?;
        Ok::<_, Stop>((left, grains.left_at_most(t, left)?))
    };
    let [(first, all), rest @ ..] = &parts[..] else { return one(t, usual) };
    let (mut left, mut left_out) = one(t, first)?;
    let mut all = *all;
    for (removal, brings) in rest {
        let (own, own_out) = one(t, removal)?;
        let sum = reckon!(t, "dry solids so far", [LB, KG], (all = all, brings = *brings) all + brings);
        left = reckon!(
            t,
            "solids left behind the plates, by what each water brings",
            [PERCENT, PERCENT],
            (left = left, all = all, own = own, brings = *brings, sum = sum)(left * all + own * brings) / sum
        );
        left_out = reckon!(
            t,
            "solids left, at most, by what each water brings",
            [PERCENT, PERCENT],
            (left = left_out, all = all, own = own_out, brings = *brings, sum = sum)(left * all + own * brings) / sum
        );
        all = sum;
    }
    Ok((left, left_out))
}

/// Solids and free oil, mean over the water of an average day, each water with its own content.
fn average_content<T: Trail>(
    t: &mut T,
    basis: &Basis,
    day: Val<Time>,
    usual: &Removal,
) -> Result<(Val<Concentration>, Val<Concentration>), Stop> {
    let mut sum: Option<(Val<Flow>, Val<Concentration>, Val<Concentration>)> = None;
    let waters = basis.waters.iter().map(|water| (&water.name, water.per_day, &water.content));
    let drained = basis.containment.iter().flat_map(|ahead| &ahead.all);
    let drained = drained.filter_map(|c| c.drained.as_ref().map(|d| (&c.name, d.per_day, &d.content)));
    for (name, per_day, content) in waters.chain(drained) {
        let flow = reckon!(t, &say!(T, "{name} on an average day, as a flow"), [GPD, M3_D], (volume = per_day, day = day) volume / day);
        sum = Some(match sum {
            None => (flow, content.solids, content.free),
            Some((so_far, solids, free)) => (
                reckon!(t, "waters so far, as a flow", [GPD, M3_D], (sum = so_far, next = flow) sum + next),
                by!(t, "solids, mean over the waters", mixture::concentration(so_far, solids, flow, content.solids))?,
                by!(t, "free oil, mean over the waters", mixture::concentration(so_far, free, flow, content.free))?,
            ),
        });
    }
    Ok(sum.map_or((usual.content.solids, usual.content.free), |(_, solids, free)| (solids, free)))
}

/// Share of the solids as coarse as what a trap ahead holds; nothing without one, or where the grains are sieved.
fn share_held<T: Trail>(t: &mut T, basis: &Basis, train: &Train) -> Result<Option<Val<Ratio>>, Stop> {
    let s = &basis.solids;
    let Some(grain) = train.trapped.filter(|_| s.table.q.0.is_empty()) else { return Ok(None) };
    let finer = by!(t, "share of the solids that passes the trap", lognormal_finer::share(grain, s.d50, s.spread))?;
    let label = "share of the solids that the trap holds";
    Ok(Some(reckon!(t, label, [PERCENT, PERCENT], (finer = finer) ratio(1.0) - finer)))
}

/// Days until the sand compartment of a unit is half full: what EN 858-2 empties a sludge trap at.
fn sand<T: Trail>(t: &mut T, unit: &Unit, held: Val<Flow>) -> Result<Option<Val<Time>>, Stop> {
    let Some(zone) = unit.compartment(Place::SandTrap).filter(|_| held.q.si() > 0.0) else { return Ok(None) };
    let half = reckon!(t, "half of the sand compartment", [GAL, M3], (volume = zone.volume) volume * 0.5);
    by!(t, "days until the sand compartment is half full", days_to_fill::time(half, held)).map(Some)
}

/// How long the sludge takes behind a grit trap that holds all grains of its size and coarser: those would have settled in
/// the unit.
fn behind_trap<T: Trail>(
    t: &mut T,
    basis: &Basis,
    train: &Train,
    settled: Val<Ratio>,
    days: Val<Time>,
) -> Result<Option<Val<Time>>, Stop> {
    let Some(coarse) = share_held(t, basis, train)? else { return Ok(None) };
    if coarse.q >= settled.q {
        return Ok(None);
    }
    Ok(Some(reckon!(
        t,
        "days until sludge is pumped, behind the trap",
        [D, D],
        (days = days, settled = settled, coarse = coarse) days * (settled / (settled - coarse))
    )))
}
