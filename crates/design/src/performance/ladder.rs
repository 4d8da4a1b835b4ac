//! The ladder of prediction around the case that is held against the limits: oil by droplet size behind
//! each stage, what each stage catches of a size, with and without mesh, and how the effluent moves with
//! flow, temperature and droplet size.

use super::State;
use super::grades::{Grade, grades};
use super::just_met::{JustMet, just_met};
use super::passage::{Fixed, Fluids, Passage};
use super::removal::{Removal, out, total};
use super::smooth::{Smooth, smooth};
use crate::basis::Basis;
use crate::basis::cases::Case;
use crate::basis::fluids::{self, Season};
use crate::provenance::{Pair, Part, Stop, Trail, Val, choose, given};
use crate::stages::Place;
use crate::stages::gravity_zone::TankPass;
use crate::stages::{Pass, Through};
use crate::train::Train;
use crate::{by, reckon, say};
use stillrise_handbook::fluids::oil_density;
use stillrise_handbook::separation::tank_removal::TankModel;
use stillrise_units::catalog::{DEG_C, DEG_F, ONE, PERCENT, UM};
use stillrise_units::{Concentration, Flow, Length, Ratio, Temperature, Typed, ratio};

/// How the sections of the trail begin that are studies beside the design.
pub const STUDY: &str = "study";
/// Ends of the size bands, µm; the last band is open.
pub const BANDS: [f64; 6] = [0.0, 20.0, 40.0, 60.0, 90.0, 150.0];
/// Shares of the flow at which the effluent is shown.
pub const FLOWS: [f64; 8] = [0.1, 0.25, 0.5, 0.75, 1.0, 1.1, 1.25, 1.5];
/// Multiples of the median at which it is shown.
pub const MEDIANS: [f64; 7] = [0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0];
/// Steps from the coldest to the warmest water.
const STEPS: u32 = 4;

/// The free oil of one band of sizes behind each stage, as a share of all free oil that arrives and rises.
#[derive(Debug, Clone)]
pub struct Band {
    /// From this size.
    pub from: Val<Length>,
    /// Up to this size.
    pub to: Val<Length>,
    /// What arrives, then what is left behind each of [`Ladder::stages`].
    pub left: Vec<Val<Ratio>>,
}

/// The effluent at another flow, temperature or median.
#[derive(Debug, Clone, Copy)]
pub struct Point<Q> {
    /// What was changed.
    pub at: Val<Q>,
    /// Share of the free oil left.
    pub left: Val<Ratio>,
    /// Total oil out, as expected.
    pub expected: Val<Concentration>,
}

impl<Q: Copy> Point<Q> {
    fn at<T: Trail>(t: &mut T, what: &str, at: Val<Q>, p: &Passage, like: &Removal) -> Result<Self, Stop> {
        let left = p.left(t, &format!("free oil left, {what}"))?;
        let free = out(t, &format!("free oil out, {what}"), &like.content, left);
        let expected = total(t, &format!("total oil out, {what}"), &like.content, free);
        Ok(Self { at, left, expected })
    }
}

/// The ladder.
#[derive(Debug, Clone)]
pub struct Ladder {
    /// The stages by name, in the direction of flow.
    pub stages: Vec<&'static str>,
    /// Oil by size behind each stage, clean and at the end of the interval.
    pub bands: [Vec<Band>; 2],
    /// What each stage catches, at the end of the interval.
    pub grades: Vec<Grade>,
    /// Total oil out with the mesh counted; `None` without one.
    pub with_mesh: Option<Val<Concentration>>,
    /// Total oil out without it, whatever the headline counts.
    pub without_mesh: Val<Concentration>,
    /// Total oil out with the retention zone counted as a second mixed tank; `None` where the tank is not taken
    /// as mixed.
    pub with_retention: Option<Val<Concentration>>,
    /// Free oil left behind the tank alone, by each model of it.
    pub tanks: Vec<(TankModel, Val<Ratio>)>,
    /// Against flow, as a share of the case's flow.
    pub by_flow: Vec<Point<Ratio>>,
    /// Against the temperature of the water.
    pub by_temperature: Vec<Point<Temperature>>,
    /// Against the median droplet.
    pub by_median: Vec<Point<Length>>,
    /// Flow, temperature and median at which each limit is just met.
    pub just_met: Vec<JustMet>,
    /// The studies at more places, for curves.
    pub smooth: Smooth,
}

impl Ladder {
    /// What the shares of a band stand for: what arrives, then the stages.
    pub fn names(&self) -> impl Iterator<Item = &'static str> {
        core::iter::once("inlet").chain(self.stages.iter().copied())
    }
}

const SIZE: Pair = (&UM, &UM);
const SHARE: Pair = (&PERCENT, &PERCENT);

/// Climbs the ladder around the removal that is held against the limits.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn ladder<T: Trail>(
    t: &mut T,
    basis: &Basis,
    train: &Train,
    fixed: &Fixed,
    (worst, case): (&Removal, &Case),
    limits: &[super::limit::LimitVerdict],
) -> Result<Ladder, Stop> {
    let unit = &train.unit;
    let place = format!("{}, {}", worst.case, worst.season.name());
    t.part(Part::Study, format_args!("{STUDY}, oil by size: {place}, clean"));
    let passage = Passage::new(t, basis, unit, fixed, case, worst.flow, (worst.season, State::Clean))?;
    let clean = bands(t, fixed, &passage)?;
    let before = Removal { passage, state: State::Clean, ..worst.clone() };
    t.part(Part::Study, format_args!("{STUDY}, oil by size: {place}, end of interval"));
    let end = bands(t, fixed, &worst.passage)?;
    t.part(Part::Study, format_args!("{STUDY}, catch by size: {place}, end of interval"));
    let grades = grades(t, basis, &worst.passage)?;
    t.part(Part::Study, format_args!("{STUDY}, mesh: {place}, end of interval"));
    let without_mesh = effluent(t, "without the mesh", &worst.passage.without_credit(), worst)?;
    let all = worst.passage.with_all();
    let with_mesh = if all.mesh().is_some() { Some(effluent(t, "with the mesh", &all, worst)?) } else { None };
    t.part(Part::Study, format_args!("{STUDY}, retention zone: {place}, end of interval"));
    let with_retention = with_retention(t, unit, worst)?;
    let stages = all.stages.iter().map(Pass::name).collect();
    t.part(Part::TankAlone, format_args!("{STUDY}, tank alone: {place}"));
    let tanks = tanks(t, basis, unit, fixed, (worst, case))?;
    t.part(Part::Study, format_args!("{STUDY}, flow: {place}, end of interval"));
    let by_flow = by_flow(t, basis, train, fixed, (worst, case), FLOWS)?;
    t.part(Part::Study, format_args!("{STUDY}, temperature: {}, end of interval", worst.case));
    let by_temperature = by_temperature(t, basis, worst, STEPS)?;
    t.part(Part::Study, format_args!("{STUDY}, droplet size: {place}, end of interval"));
    let by_median = by_median(t, worst, MEDIANS)?;
    let just_met = limits
        .iter()
        // What arrives within the limit is met whatever the unit does, and has no margin.
        .filter(|l| l.predicted && l.influent.q > l.against.q)
        .map(|l| just_met(t, (basis, unit, fixed), (&before, worst), l))
        .collect::<Result<_, _>>()?;
    Ok(Ladder {
        stages,
        bands: [clean, end],
        grades,
        with_mesh,
        without_mesh,
        with_retention,
        tanks,
        by_flow,
        by_temperature,
        by_median,
        just_met,
        smooth: smooth(basis, train, fixed, worst, case),
    })
}

pub(super) fn effluent<T: Trail>(
    t: &mut T,
    what: &str,
    p: &Passage,
    like: &Removal,
) -> Result<Val<Concentration>, Stop> {
    let left = p.left(t, &format!("free oil left, {what}"))?;
    let free = out(t, &format!("free oil out, {what}"), &like.content, left);
    Ok(total(t, &format!("total oil out, {what}"), &like.content, free))
}

/// What droplets make of two mixed tanks in series is what they make of one with the sum of both surfaces.
fn with_retention<T: Trail>(
    t: &mut T,
    unit: &crate::train::unit::Unit,
    worst: &Removal,
) -> Result<Option<Val<Concentration>>, Stop> {
    let Some(tank) = worst.passage.tank().filter(|tank| tank.model.q == TankModel::Mixed) else { return Ok(None) };
    let Some(zone) = unit.compartment(Place::Retention) else { return Ok(None) };
    let zone = unit.body.surface(t, "surface of the oil retention zone", zone.stretch(), unit.outlet.crest)?;
    let v_tank = reckon!(t, "overflow rate of tank and retention zone together", [GPM_FT2, M_H],
        (flow = worst.flow, tank = unit.layout.tank_area, zone = zone) flow / (tank + zone));
    let tank = TankPass::new(t, v_tank, tank.model, tank.index);
    effluent(t, "with the retention zone", &worst.passage.with_tank(tank), worst).map(Some)
}

fn bands<T: Trail>(t: &mut T, fixed: &Fixed, p: &Passage) -> Result<Vec<Band>, Stop> {
    let ends: Vec<Val<Length>> = BANDS
        .iter()
        .skip(1)
        .map(|um| given(t, "end of a band", Some(SIZE), Length::of(*um, &UM), "bands", &format!("{um} µm")))
        .chain([fixed.sizes[1]])
        .collect();
    // Bands of sizes are of the oil that rises.
    let all = p.with_all().of_what_rises();
    let mut from = fixed.sizes[0];
    let mut bands = Vec::new();
    for to in ends {
        let mut left = Vec::new();
        for count in 0..=all.stages.len() {
            let part = all.first(count).counted_over(from, to);
            let name = count.checked_sub(1).and_then(|k| all.stages.get(k)).map(Pass::name);
            let label = name.map_or_else(
                || "arrives, of all free oil".to_owned(),
                |name| format!("left behind the {name}, of all free oil"),
            );
            left.push(part.left(t, &label)?);
        }
        bands.push(Band { from, to, left });
        from = to;
    }
    Ok(bands)
}

/// The tank alone by each of its models; what its own index asks for is taken from the basis.
fn tanks<T: Trail>(
    t: &mut T,
    basis: &Basis,
    unit: &crate::train::unit::Unit,
    fixed: &Fixed,
    (worst, case): (&Removal, &Case),
) -> Result<Vec<(TankModel, Val<Ratio>)>, Stop> {
    let mut rows = Vec::new();
    let m = &basis.methods;
    let own = case.own.as_ref().map(|own| &own.water[usize::from(worst.season == Season::Warm)]);
    let water = own.unwrap_or_else(|| basis.fluids.water(worst.season));
    let way = Through { basis, fixed, flow: worst.flow, water, state: State::End };
    if worst.passage.tank().is_none() {
        return Ok(rows);
    }
    for model in TankModel::ALL {
        let tank = given(t, "model of the tank", None, *model, "list of models", model.word());
        let index = if *model == TankModel::Dispersed && m.tank.q != TankModel::Dispersed {
            let number = ratio(0.5);
            given(t, "dispersion number", Some((&ONE, &ONE)), number, "our proposal, strongly dispersed", "0.5")
        } else {
            m.tank_index
        };
        let tank = TankPass::moved_by(t, unit, &way, tank, index)?;
        let alone = worst.passage.alone(Pass::Tank(tank));
        rows.push((*model, alone.left(t, &format!("free oil left behind the tank, {}", model.word()))?));
    }
    Ok(rows)
}

pub(super) fn by_flow<T: Trail>(
    t: &mut T,
    basis: &Basis,
    train: &Train,
    fixed: &Fixed,
    (worst, case): (&Removal, &Case),
    shares: impl IntoIterator<Item = f64>,
) -> Result<Vec<Point<Ratio>>, Stop> {
    let mut points = Vec::new();
    for share in shares {
        let text = format!("{} %", share * 100.0);
        let at = given(t, "share of the flow", Some(SHARE), ratio(share), "table of flows", &text);
        let flow: Val<Flow> = reckon!(t, &say!(T, "flow, {text} of {}", case.name), [GPM, M3_H], (flow = worst.flow, share = at) flow * share);
        let p = Passage::new(t, basis, &train.unit, fixed, case, flow, (worst.season, State::End))?;
        points.push(Point::at(t, &format!("at {text} of the flow"), at, &p, worst)?);
    }
    Ok(points)
}

pub(super) fn by_temperature<T: Trail>(
    t: &mut T,
    basis: &Basis,
    worst: &Removal,
    steps: u32,
) -> Result<Vec<Point<Temperature>>, Stop> {
    let f = &basis.fluids;
    let (cold, warm) = (DEG_C.from_si(f.cold.temperature.q.si()), DEG_C.from_si(f.warm.temperature.q.si()));
    let oil = f.heaviest(Season::Cold);
    let mut points = Vec::new();
    for k in 0..=steps {
        let c = cold + (warm - cold) * f64::from(k) / f64::from(steps);
        let at = choose(
            t,
            "temperature of the water",
            Some((&DEG_F, &DEG_C)),
            Temperature::of(c, &DEG_C),
            "equal steps from the coldest to the warmest water",
            "a point of the curve",
            &[f.cold.temperature.at, f.warm.temperature.at],
        );
        let water = fluids::water(t, at, f.salinity)?;
        let density = by!(t, "density of the oil", oil_density::density(oil.density_15, at, oil.group))?;
        // The regime of the gaps is the one of the case: warmer water is nearer to turning turbulent.
        let fluids = Fluids {
            water: water.density,
            oil: density,
            viscosity: water.viscosity,
            temperature: at,
            ..worst.passage.fluids
        };
        let p = worst.passage.within(t, fluids);
        points.push(Point::at(t, "at this temperature", at, &p, worst)?);
    }
    Ok(points)
}

pub(super) fn by_median<T: Trail>(
    t: &mut T,
    worst: &Removal,
    multiples: impl IntoIterator<Item = f64>,
) -> Result<Vec<Point<Length>>, Stop> {
    let mut points = Vec::new();
    let base = worst.passage.droplets().d50;
    if worst.passage.are_measured() {
        return Ok(points);
    }
    for multiple in multiples {
        let text = format!("{multiple}");
        let share = given(t, "multiple of the median", Some((&ONE, &ONE)), ratio(multiple), "table of medians", &text);
        let at = reckon!(t, "volume median diameter", [UM, UM], (d50 = base, share = share) d50 * share);
        let p = worst.passage.of_median(t, at);
        points.push(Point::at(t, &format!("at {text} of the median"), at, &p, worst)?);
    }
    Ok(points)
}
