//! Why a unit that stands and runs falls short: the causes that explain all that was observed, alone and in
//! pairs, each with the size it would have to have.
//!
//! Every set of causes is given the sizes at which it explains the measurements best; a set is worth the more
//! the closer it comes, the better the signs fit, the more usual its sizes and the more frequent its causes.
//! Weights are shares among the sets looked at, by Bayes' rule; the frequencies in them are judgement.

pub mod causes;
mod gauges;
mod seen;
pub mod situation;

pub use seen::{Beyond, Seen};

use causes::{CAUSES, Cause, Gauge, Measured};
use gauges::Gauges;
use seen::seen;
use situation::{Occasion, Situation};
use stillrise_design::enquiry::blocks::Observed;
use stillrise_design::{Job, Ledger, Node, Off, Stop, Trail};
use stillrise_handbook::page::{Arg, Argument};
use stillrise_units::math::{Z_95, exp, ln};
use stillrise_units::{Concentration, Typed};

/// Scatter of a measured over the true oil content, as the standard deviation of its logarithm: sampling and
/// laboratory together. Engineering judgement.
const SCATTER: f64 = 0.4;
/// Chance that a sign shows without any of the causes.
const STRAY: f64 = 0.05;
/// How water looks, what a jar does and what the alarm does when nothing is the matter.
const LOOKS: [f64; 4] = [0.75, 0.17, 0.03, 0.05];
const JARS: [f64; 3] = [0.75, 0.15, 0.10];
const ALARMS: [f64; 4] = [0.75, 0.05, 0.15, 0.05];
/// Share of what it must not reach below which a depth says nothing is the matter; in between, the more the worse.
const CLEAR: f64 = 0.5;
/// Chance that a depth was gauged wrong.
const MISREAD: f64 = 0.03;
/// Steps in which a size is searched, over its logarithm, and how far beyond its usual ends.
const SIZES: u32 = 24;
const BEYOND: f64 = 1.5;
/// How much larger a unit is tried.
const LARGER: f64 = 2.0;

/// One cause with its size, as part of an explanation.
#[derive(Debug, Clone, Copy)]
pub struct Sized {
    /// The cause.
    pub cause: &'static Cause,
    /// Its size, SI; `None` for a cause that moves no oil.
    pub size: Option<f64>,
}

/// A set of causes that explains what was observed.
#[derive(Debug, Clone)]
pub struct Explanation {
    /// The causes; none for "nothing is the matter".
    pub causes: Vec<Sized>,
    /// Its weight among all sets looked at.
    pub weight: f64,
    /// Oil that should then have been measured, by occasion; `None` where none was.
    pub effluent: Vec<Option<Concentration>>,
    /// What a unit with twice the area would have let through, worst occasion first to last.
    pub larger: Vec<Option<Concentration>>,
}

/// The diagnosis.
#[derive(Debug, Clone)]
pub struct Diagnosis {
    /// The occasions.
    pub seen: Vec<Seen>,
    /// Explanations, the weightiest first; those with a weight below one in two hundred are left out.
    pub explanations: Vec<Explanation>,
    /// Causes by the weight of all sets they stand in, the weightiest first.
    pub causes: Vec<(&'static Cause, f64)>,
    /// The cheapest test that would tell the leading explanations apart.
    pub next: Option<&'static Cause>,
    /// Sets of causes looked at.
    pub sets: usize,
    /// Causes whose test was made: what it would show stands among the observations.
    pub tested: Vec<&'static str>,
    /// Where the trail works the leading explanation, by occasion; empty until it does.
    pub worked: Vec<Option<Node>>,
}

impl Diagnosis {
    /// Whether the leading explanation, or what was measured, asks more of the unit than its basis did.
    #[must_use]
    pub fn asks_too_much(&self) -> bool {
        let by_cause = self.explanations.first().is_some_and(|lead| lead.causes.iter().any(|s| s.cause.capacity));
        by_cause || self.seen.iter().any(|s| !s.beyond.is_empty())
    }

    /// Whether a cause's test stands among what was observed already.
    #[must_use]
    pub fn is_tested(&self, cause: &Cause) -> bool {
        self.tested.contains(&cause.id)
    }

    /// Whether a unit of twice the area would take at least a third off the effluent on every occasion under the leading
    /// explanation, which asks more of the unit than its basis; `None` when no effluent was measured.
    #[must_use]
    pub fn larger_helps(&self) -> Option<bool> {
        let lead = self.explanations.first()?;
        let pairs: Vec<_> = lead.effluent.iter().zip(&lead.larger).filter_map(|(a, b)| Some(((*a)?, (*b)?))).collect();
        let less = |(now, larger): &(Concentration, Concentration)| larger.si() < now.si() * 2.0 / 3.0;
        (!pairs.is_empty()).then(|| self.asks_too_much() && pairs.iter().all(less))
    }
}

/// Finds what explains the observations of a job around its unit.
///
/// # Errors
/// [`Stop`] when nothing was observed, or the chain has no performance.
pub fn diagnose(job: &Job) -> Result<Diagnosis, Stop> {
    let stop = |reason: &str| Stop { doing: "diagnosis".to_owned(), reason: reason.to_owned() };
    let observed = &job.enquiry.observed;
    if observed.is_empty() {
        return Err(stop("nothing was observed: add [[observed]] with what was measured or seen"));
    }
    let (Some(basis), Some(train)) = (&job.design.basis, &job.design.train) else {
        let why: Vec<String> = job.design.stops.iter().map(|s| s.reason.clone()).collect();
        return Err(stop(&format!("no unit was laid out: {}", why.join("; "))));
    };
    let performance = job.design.performance.as_ref().ok_or_else(|| stop("the unit's performance was not found"))?;
    let worst = performance.worst().ok_or_else(|| stop("no case has a known content"))?;
    let gauges = Gauges::new(performance, &train.unit);
    let absurd = gauges.absurd(observed);
    if !absurd.is_empty() {
        return Err(stop(&absurd.join("; ")));
    }
    let occasions = observed
        .iter()
        .map(|o| Occasion::new(&mut Off, o, basis, &train.unit, (&worst.content, worst.flow)))
        .collect::<Result<Vec<_>, _>>()?;
    let open: Vec<&'static Cause> =
        CAUSES.iter().copied().filter(|c| !settled(c, observed, basis.feed.pumped)).collect();
    let mut sets: Vec<Vec<&'static Cause>> = vec![Vec::new()];
    for (i, a) in open.iter().enumerate() {
        sets.push(vec![a]);
        sets.extend(open.iter().skip(i + 1).map(|b| vec![*a, *b]));
    }
    let found = crate::side_by_side::side_by_side(sets.len(), 1, || (), |k, ()| explain(&sets[k], &occasions, &gauges));
    let best = found.iter().map(|(_, score)| *score).fold(f64::INFINITY, f64::min);
    let whole: f64 = found.iter().map(|(_, score)| exp(-0.5 * (score - best))).sum();
    let mut explanations: Vec<Explanation> = found
        .into_iter()
        .map(|(sized, score)| Explanation {
            weight: exp(-0.5 * (score - best)) / whole,
            effluent: outcomes(&sized, &occasions, 1.0),
            larger: outcomes(&sized, &occasions, LARGER),
            causes: sized,
        })
        .collect();
    explanations.sort_by(|a, b| b.weight.total_cmp(&a.weight));
    let mut causes: Vec<(&'static Cause, f64)> = open
        .iter()
        .map(|cause| {
            let holds = |e: &&Explanation| e.causes.iter().any(|s| s.cause.id == cause.id);
            (*cause, explanations.iter().filter(holds).map(|e| e.weight).sum())
        })
        .collect();
    causes.sort_by(|a, b| b.1.total_cmp(&a.1));
    let sets = explanations.len();
    explanations.retain(|e| e.weight > 0.005);
    let seen = occasions.iter().map(|o| seen(o, &performance.removals)).collect();
    let tested: Vec<&'static str> = CAUSES.iter().filter(|c| is_tested(c, observed)).map(|c| c.id).collect();
    let next = next(&causes, &tested);
    Ok(Diagnosis { seen, next, explanations, causes, sets, tested, worked: Vec::new() })
}

/// Works the leading explanation once more, step by step, into a trail; the effluent's place by occasion.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn work(t: &mut Ledger, job: &Job, lead: &Explanation) -> Result<Vec<Option<Node>>, Stop> {
    let stop = || Stop { doing: "rating".to_owned(), reason: "no unit was laid out".to_owned() };
    let (Some(basis), Some(train)) = (&job.design.basis, &job.design.train) else { return Err(stop()) };
    let worst = job.design.performance.as_ref().and_then(|p| p.worst()).ok_or_else(stop)?;
    let mut places = Vec::new();
    for observed in &job.enquiry.observed {
        t.section(situation::section(observed));
        let occasion = Occasion::new(t, observed, basis, &train.unit, (&worst.content, worst.flow))?;
        let out = occasion.worked(t, &under(&occasion, &lead.causes, 1.0))?;
        places.push(observed.oil_out.is_given().then_some(out.at));
    }
    Ok(places)
}

fn settled(cause: &Cause, observed: &[Observed], pumped: bool) -> bool {
    let all = |given: fn(&Observed) -> bool| observed.iter().filter(|o| o.oil_out.is_given()).all(given);
    cause.settled_by.iter().any(|what| match what {
        Measured::Flow => all(|o| o.flow.is_given()),
        Measured::Temperature => all(|o| o.temperature.is_given()),
        Measured::OilIn => all(|o| o.oil_in.is_given()),
        Measured::NoPump => !pumped,
    })
}

/// Whether what a cause's test would show was observed.
fn is_tested(cause: &Cause, observed: &[Observed]) -> bool {
    let gauged = match cause.gauge {
        Some(Gauge::OilLayer) => observed.iter().any(|o| o.oil_layer.is_given()),
        Some(Gauge::Sludge) => observed.iter().any(|o| o.sludge.is_given()),
        None => false,
    };
    gauged || cause.id == causes::FOULED_MESH && observed.iter().any(|o| o.backed_up.is_given())
}

/// The test that is worth its price: among causes that are neither sure nor out of the question, the
/// cheapest; of equally cheap ones the one nearest to even odds.
fn next(causes: &[(&'static Cause, f64)], tested: &[&'static str]) -> Option<&'static Cause> {
    let open = causes.iter().filter(|(c, weight)| (0.1..0.97).contains(weight) && !tested.contains(&c.id));
    let even = |weight: f64| (weight - 0.5).abs();
    open.min_by(|a, b| a.0.cost.cmp(&b.0.cost).then(even(a.1).total_cmp(&even(b.1)))).map(|(cause, _)| *cause)
}

/// The situation of an occasion under causes of these sizes.
fn under(o: &Occasion<'_>, sized: &[Sized], area: f64) -> Situation {
    let mut s = o.usual();
    s.area = area;
    for Sized { cause, size } in sized {
        (cause.act)(&mut s, size.unwrap_or(0.0));
    }
    s
}

fn outcomes(sized: &[Sized], occasions: &[Occasion<'_>], area: f64) -> Vec<Option<Concentration>> {
    let one = |o: &Occasion<'_>| {
        let effluent = o.effluent(&under(o, sized, area));
        (o.observed.oil_out.is_given() && effluent.is_finite()).then(|| Concentration::from_si(effluent))
    };
    occasions.iter().map(one).collect()
}

/// The sizes at which a set explains the measurements best, and its score: minus twice the logarithm of
/// its weight, up to a constant.
fn explain(set: &[&'static Cause], occasions: &[Occasion<'_>], gauges: &Gauges) -> (Vec<Sized>, f64) {
    let mut sized: Vec<Sized> =
        set.iter().map(|cause| Sized { cause, size: cause.size.map(|size| size.likely) }).collect();
    // One size after the other, twice round: the misfit has one valley along each.
    let mut best = misfit(&sized, occasions);
    for _ in 0..if set.len() > 1 { 3 } else { 1 } {
        for k in 0..sized.len() {
            let Some(size) = sized[k].cause.size else { continue };
            let (low, high) = (ln(size.low), ln(size.high));
            let middle = 0.5 * (low + high);
            for step in 0..=SIZES {
                let share = f64::from(step) / f64::from(SIZES) * 2.0 - 1.0;
                let tried = exp(middle + share * 0.5 * (high - low) * BEYOND);
                let before = sized[k].size;
                sized[k].size = Some(tried);
                let there = misfit(&sized, occasions);
                if there < best {
                    best = there;
                } else {
                    sized[k].size = before;
                }
            }
        }
    }
    let frequency: f64 =
        CAUSES.iter().map(|c| -2.0 * ln(if set.iter().any(|s| s.id == c.id) { c.often } else { 1.0 - c.often })).sum();
    let signs: f64 = occasions.iter().map(|o| signs(set, o.observed, gauges)).sum();
    (sized, best + frequency + signs)
}

/// How far the measurements lie from what the sizes make of them, and the sizes from the usual ones.
fn misfit(sized: &[Sized], occasions: &[Occasion<'_>]) -> f64 {
    let mut sum = 0.0;
    for o in occasions {
        let Some(measured) = o.observed.oil_out.q() else { continue };
        let effluent = o.effluent(&under(o, sized, 1.0));
        if !effluent.is_finite() {
            return f64::INFINITY;
        }
        let off = (ln(effluent.max(1e-6)) - ln(measured.si().max(1e-6))) / SCATTER;
        sum += off * off;
    }
    for s in sized {
        if let (Some(size), Some(value)) = (s.cause.size, s.size) {
            let end = if value > size.likely { ln(size.high / size.likely) } else { ln(size.likely / size.low) };
            let off = ln(value / size.likely) / (end / Z_95);
            sum += off * off;
        }
    }
    sum
}

/// Minus twice the logarithm of the chance of the signs under a set of causes.
fn signs(set: &[&'static Cause], observed: &Observed, gauges: &Gauges) -> f64 {
    let mut chance = 1.0;
    chance *= word(observed.looks.0, &LOOKS, set.iter().filter_map(|c| c.looks));
    chance *= word(observed.jar.0, &JARS, set.iter().filter_map(|c| c.jar));
    chance *= word(observed.alarm.0, &ALARMS, set.iter().filter_map(|c| c.alarm));
    if let Some(rise) = observed.backed_up.q() {
        let not = set.iter().fold(1.0 - STRAY, |not, cause| not * (1.0 - cause.backed_up));
        chance *= if rise.si() > 0.01 { 1.0 - not } else { not };
    }
    for (gauge, share) in gauges.shares(observed) {
        let over = ((share - CLEAR) / (1.0 - CLEAR)).clamp(0.0, 1.0);
        let there = set.iter().any(|c| c.gauge == Some(gauge));
        let shows = if there { over } else { 1.0 - over };
        chance *= MISREAD + (1.0 - 2.0 * MISREAD) * shows;
    }
    -2.0 * ln(chance)
}

/// Chance of a word: the mean over the causes that speak to it, else that of a sound unit.
fn word<C: Argument + Copy, const N: usize>(
    seen: Option<C>,
    sound: &[f64; N],
    causes: impl Iterator<Item = [f64; N]>,
) -> f64 {
    let Some(seen) = seen else { return 1.0 };
    let stillrise_handbook::page::Kind::Choice(words) = C::KIND else { return 1.0 };
    let place = words.iter().position(|(word, _)| Arg::Choice(word) == seen.arg()).unwrap_or(0);
    let all: Vec<[f64; N]> = causes.collect();
    let table = |t: &[f64; N]| t.get(place).copied().unwrap_or(STRAY);
    if all.is_empty() { table(sound) } else { all.iter().map(table).sum::<f64>() / all.len() as f64 }
}
