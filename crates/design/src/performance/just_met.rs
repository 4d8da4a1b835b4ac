//! The flow, the temperature and the median droplet at which a limit is just met: what still tells sizes apart where
//! the published floor hides every number of the effluent.

use super::keeps;
use super::ladder::effluent;
use super::limit::LimitVerdict;
use super::passage::{Fixed, Fluids, Passage};
use super::removal::Removal;
use crate::basis::Basis;
use crate::basis::fluids::{self, Season};
use crate::provenance::{Node, Off, Pair, Stop, Trail, Val, choose};
use crate::train::unit::Unit;
use crate::{reckon, say};
use stillrise_handbook::fluids::oil_density;
use stillrise_handbook::fluids::pollutants::Counts;
use stillrise_handbook::page::Argument;
use stillrise_units::catalog::{DEG_C, DEG_F, PERCENT, UM};
use stillrise_units::math::sqrt;
use stillrise_units::{Concentration, Length, Ratio, Temperature, Typed, ratio};

/// Where a limit is just met, all else as in the case.
#[derive(Debug, Clone, Copy)]
pub enum Margin<Q> {
    /// There.
    At(Val<Q>),
    /// It is met at all values that were tried.
    Always,
    /// It is met at none of them.
    Never,
    /// Not asked: a measured distribution has no median to move.
    Untried,
}

impl<Q> Margin<Q> {
    /// The value, if there is one.
    #[must_use]
    pub fn at(&self) -> Option<&Val<Q>> {
        match self {
            Margin::At(value) => Some(value),
            _ => None,
        }
    }
}

/// What just meets a limit.
#[derive(Debug, Clone)]
pub struct JustMet {
    /// Which limit, by its place in the basis.
    pub limit: usize,
    /// The flow, as a share of the case's.
    pub flow: Margin<Ratio>,
    /// The temperature of the water.
    pub temperature: Margin<Temperature>,
    /// The median droplet.
    pub d50: Margin<Length>,
}

/// Values that are tried: shares of the flow, °C, multiples of the median.
const FLOWS: (f64, f64) = (0.05, 20.0);
const CELSIUS: (f64, f64) = (1.0, 60.0);
const MEDIANS: (f64, f64) = (0.1, 10.0);
/// Halvings: to some part in a million of the range.
const STEPS: u32 = 40;

/// What a search found between two ends, of which the first meets the limit if any does.
enum Found {
    At(f64),
    Always,
    Never,
}

/// Halves from the end that meets the goal towards the one that misses it.
fn between(
    (good, bad): (f64, f64),
    goal: f64,
    halve: fn(f64, f64) -> f64,
    effluent: impl Fn(f64) -> Option<f64>,
) -> Found {
    // An end that the formulas have no answer for is no answer either.
    let (Some(at_good), Some(at_bad)) = (effluent(good), effluent(bad)) else { return Found::Never };
    if at_bad <= goal {
        return Found::Always;
    }
    if at_good > goal {
        return Found::Never;
    }
    let (mut good, mut bad) = (good, bad);
    for _ in 0..STEPS {
        let middle = halve(good, bad);
        match effluent(middle) {
            Some(c) if c <= goal => good = middle,
            Some(_) => bad = middle,
            None => break,
        }
    }
    Found::At(good)
}

fn geometric(a: f64, b: f64) -> f64 {
    sqrt(a * b)
}

fn arithmetic(a: f64, b: f64) -> f64 {
    0.5 * (a + b)
}

/// What is looked at: the removal at the end of the interval and, where an average is held against the limit, the clean
/// one before it, whose mean the limit is then held against.
struct Around<'a> {
    basis: &'a Basis,
    unit: &'a Unit,
    fixed: &'a Fixed,
    removals: Vec<&'a Removal>,
    counts: Counts,
}

impl Around<'_> {
    /// A removal's passage at another flow.
    fn at_flow<T: Trail>(&self, t: &mut T, like: &Removal, share: Val<Ratio>) -> Result<Passage, Stop> {
        let flow = reckon!(t, "flow at which the limit is just met", [GPM, M3_H], (flow = like.flow, share = share) flow * share);
        let case = &self.basis.cases[like.case_index];
        Passage::new(t, self.basis, self.unit, self.fixed, case, flow, (like.season, like.state))
    }

    /// The same at another temperature.
    fn at_temperature<T: Trail>(&self, t: &mut T, like: &Removal, at: Val<Temperature>) -> Result<Passage, Stop> {
        let oil = self.basis.fluids.heaviest(Season::Cold);
        let water = fluids::water(t, at, self.basis.fluids.salinity)?;
        let density = crate::by!(t, "density of the oil", oil_density::density(oil.density_15, at, oil.group))?;
        let fluids = Fluids {
            water: water.density,
            oil: density,
            viscosity: water.viscosity,
            temperature: at,
            ..like.passage.fluids
        };
        Ok(like.passage.within(t, fluids))
    }

    /// Total oil that leaves when each removal's passage is changed: the mean of them.
    fn out(&self, change: impl Fn(&Removal) -> Option<Passage>) -> Option<f64> {
        let mut sum = 0.0;
        let mut n = 0.0;
        for like in &self.removals {
            let left = change(like)?.left(&mut Off, "").ok()?.q.si();
            let c = &like.content;
            sum += c.free.q.si() * left;
            if self.counts == Counts::AllOil {
                sum += c.emulsified.q.si() + c.dissolved.q.si();
            }
            n += 1.0;
        }
        Some(sum / n)
    }

    /// The same with its trail.
    fn work<T: Trail>(
        &self,
        t: &mut T,
        what: &str,
        change: impl Fn(&mut T, &Removal) -> Result<Passage, Stop>,
    ) -> Result<(), Stop> {
        let mut outs = Vec::new();
        for like in &self.removals {
            let p = change(t, like)?;
            outs.push(effluent(t, &say!(T, "{what}, {}", like.state.name()), &p, like)?);
        }
        if let [clean, end] = outs[..] {
            reckon!(t, "mean over the interval", [MG_L, MG_L], (clean = clean, end = end)(clean + end) / 2.0);
        }
        Ok(())
    }
}

/// Finds what just meets a limit, one thing at a time. `worst` is the removal at the end of the interval, `clean` the one
/// at its beginning.
///
/// # Errors
/// [`Stop`] when a formula has no answer at what was found.
pub fn just_met<T: Trail>(
    t: &mut T,
    (basis, unit, fixed): (&Basis, &Unit, &Fixed),
    (clean, worst): (&Removal, &Removal),
    limit: &LimitVerdict,
) -> Result<JustMet, Stop> {
    // An average is held against the mean of clean and end, a single sample against the end.
    let removals = if limit.peak.is_none() { vec![clean, worst] } else { vec![worst] };
    let counts = basis.limits[limit.limit].pollutant.counts;
    let around = Around { basis, unit, fixed, removals, counts };
    let goal = mean_that_meets(t, basis, worst, limit);
    let at_goal = goal.at;
    let goal = goal.q.si();
    let none = Node::NONE;
    let flow = between(FLOWS, goal, geometric, |x| {
        around.out(|like| around.at_flow(&mut Off, like, Val { q: ratio(x), at: none }).ok())
    });
    let warm = (CELSIUS.1, CELSIUS.0);
    let temperature = between(warm, goal, arithmetic, |c| {
        let at = Val { q: Temperature::of(c, &DEG_C), at: none };
        around.out(|like| around.at_temperature(&mut Off, like, at).ok())
    });
    let base = worst.passage.droplets().d50;
    let measured = worst.passage.are_measured();
    let median = (!measured).then(|| {
        between((MEDIANS.1, MEDIANS.0), goal, geometric, |x| {
            around.out(|like| Some(with_median(&mut Off, like, Val { q: base.q * x, at: none })))
        })
    });
    let goal = at_goal;
    let flow = settle(t, "share of the flow at which the limit is just met", SHARE, flow, ratio, goal);
    if let Margin::At(share) = flow {
        around.work(t, "at the flow that just meets the limit", |t, like| around.at_flow(t, like, share))?;
    }
    let celsius = |c: f64| Temperature::of(c, &DEG_C);
    let label = "temperature at which the limit is just met";
    let temperature = settle(t, label, (&DEG_F, &DEG_C), temperature, celsius, goal);
    if let Margin::At(at) = temperature {
        around.work(t, "at the temperature that just meets the limit", |t, like| around.at_temperature(t, like, at))?;
    }
    let d50 = match median {
        None => Margin::Untried,
        Some(found) => settle(t, "median at which the limit is just met", (&UM, &UM), found, |x| base.q * x, goal),
    };
    if let Margin::At(d50) = d50 {
        around.work(t, "at the median that just meets the limit", |t, like| Ok(with_median(t, like, d50)))?;
    }
    Ok(JustMet { limit: limit.limit, flow, temperature, d50 })
}

/// A removal's passage with droplets of another median.
fn with_median<T: Trail>(t: &mut T, like: &Removal, d50: Val<Length>) -> Passage {
    like.passage.of_median(t, d50)
}

/// The mean of this case that just meets the limit; the verdict may be of another case, with another peak.
fn mean_that_meets<T: Trail>(t: &mut T, basis: &Basis, worst: &Removal, limit: &LimitVerdict) -> Val<Concentration> {
    if limit.case == worst.case || limit.peak.is_none() {
        return limit.mean_that_meets;
    }
    let state = &basis.limits[limit.limit];
    let peak = basis.cases[worst.case_index].peak_for(state);
    keeps::mean_that_meets(t, limit.against, worst, state.pollutant.counts, (peak, false))
}

const SHARE: Pair = (&PERCENT, &PERCENT);

fn settle<T: Trail, Q: Argument>(
    t: &mut T,
    label: &str,
    units: Pair,
    found: Found,
    of: impl Fn(f64) -> Q,
    goal: Node,
) -> Margin<Q> {
    match found {
        Found::Always => Margin::Always,
        Found::Never => Margin::Never,
        Found::At(x) => Margin::At(choose(
            t,
            label,
            Some(units),
            of(x),
            "values tried between two ends",
            "halved until the effluent meets the limit, all else as in the case; the lines below work it",
            &[goal],
        )),
    }
}
