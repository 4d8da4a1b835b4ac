//! Why a unit that stands and runs falls short: the causes that explain all that was observed, alone and together,
//! each with the size it would have to have. Long because it holds what is asked and what is answered.
//!
//! A period in which the unit ran well, if there is one, calibrates it: its results correct influent and droplets within
//! their plausible ranges, and their scatter is the scatter of the rest. What was recorded as changed afterwards competes
//! with the generic causes, up to three together.
//!
//! Every set of causes is given the sizes at which it explains the measurements best; a set is worth the more
//! the closer it comes, the better the signs fit, the more usual its sizes and the more frequent its causes.
//! Weights are shares among the sets looked at, by Bayes' rule; the frequencies in them are judgement.

mod calibration;
pub mod causes;
mod fit;
mod gauges;
mod jump;
mod seen;
mod sets;
mod signs;
pub mod situation;
mod steps;
mod suspects;
mod telling;

pub use calibration::{Calibration, ENOUGH, Factors, SCATTER};
pub use fit::tried;
pub use gauges::Layers;
pub use jump::{Jump, jump};
pub use seen::{Beyond, Seen};
pub use steps::{Again, EXCHANGES, Step};
pub use telling::Telling;

use causes::{CAUSES, Cause, Gauge, Id, Size};
use fit::{Evidence, explanation, under};
use gauges::Gauges;
use seen::seen;
use situation::Occasion;
use stillrise_design::enquiry::date::Date;
use stillrise_design::enquiry::observations::Observation;
use stillrise_design::provenance::Part;
use stillrise_design::{Job, Ledger, Node, Off, Stop, Trail};
use stillrise_units::math::exp;
use stillrise_units::{Concentration, Length, Typed};

/// How much larger a unit is tried.
const LARGER: f64 = 2.0;

/// One cause with its size, as part of an explanation.
#[derive(Debug, Clone, Copy)]
pub struct Sized {
    /// The cause.
    pub cause: &'static Cause,
    /// The change that would have brought it about, by its place in the enquiry.
    pub change: Option<usize>,
    /// The day from which it acts; `None` for all that was observed outside the good period.
    pub since: Option<Date>,
    /// Its size, SI; `None` for a cause that moves no oil.
    pub size: Option<f64>,
    /// How that size was spread before anything was observed.
    pub spread: Option<Size>,
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
    /// What the good period says; `None` without one.
    pub calibration: Option<Calibration>,
    /// The step in the results that ends the good period, where nobody recorded a change or marked a period.
    pub jump: Option<Jump>,
    /// The day of the last change since which something was measured.
    pub last_change: Option<Date>,
    /// Changes by the weight of all sets that hold a cause which they brought about, by their place in the enquiry.
    pub changes: Vec<(usize, f64)>,
    /// Changes after which nothing was observed: they can explain nothing.
    pub too_late: Vec<usize>,
    /// What to do, the cheapest first; of equally cheap ones the test to be made next.
    pub steps: Vec<Step>,
    /// Where nine in ten results lie once all that is the matter is removed: about those of the good period, else about what
    /// leaves with no more flow and oil than the basis has.
    pub as_it_ran: Option<(Concentration, Concentration)>,
    /// The cheapest test that would tell the leading explanations apart.
    pub next: Option<&'static Cause>,
    /// Sets of causes looked at.
    pub sets: usize,
    /// Causes whose test was made: what it would show stands among the observations.
    pub tested: Vec<Id>,
    /// Depth of sludge from which it stands in the plates, where nobody said where their underside is.
    pub plates_assumed: Option<Length>,
    /// What a layer of oil that was gauged is held against; `None` where no level is known.
    pub layers: Option<Layers>,
    /// Where the trail works the leading explanation, by occasion; empty until it does.
    pub worked: Vec<Option<Node>>,
}

/// So many times the weight of the next one an explanation must have to stand out. Judgement.
const AHEAD: f64 = 2.0;

impl Diagnosis {
    /// The explanation that stands out: twice the weight of the next; `None` where none does.
    #[must_use]
    pub fn leading(&self) -> Option<&Explanation> {
        let (first, next) = (self.explanations.first()?, self.explanations.get(1));
        next.is_none_or(|next| first.weight >= AHEAD * next.weight).then_some(first)
    }

    /// Whether an explanation, or what was measured, asks more of the unit than its basis did.
    #[must_use]
    pub fn asks_too_much(&self, e: &Explanation) -> bool {
        e.causes.iter().any(|s| s.cause.capacity) || self.seen.iter().any(|s| !s.beyond.is_empty())
    }

    /// Whether a cause's test stands among what was observed already.
    #[must_use]
    pub fn is_tested(&self, cause: &Cause) -> bool {
        self.tested.contains(&cause.id)
    }

    /// Effluent under an explanation, and with a unit of twice the area, on the occasions that are to be explained.
    pub fn with_larger<'a>(&'a self, e: &'a Explanation) -> impl Iterator<Item = (Concentration, Concentration)> + 'a {
        let bad = e.effluent.iter().zip(&e.larger).zip(&self.seen).filter(|(_, seen)| !seen.good);
        bad.filter_map(|((now, larger), _)| Some(((*now)?, (*larger)?)))
    }

    /// Whether a unit of twice the area would take at least a third off the effluent on every occasion under an
    /// explanation that asks more of the unit than its basis; `None` when no effluent was measured.
    #[must_use]
    pub fn larger_helps(&self, e: &Explanation) -> Option<bool> {
        let pairs: Vec<_> = self.with_larger(e).collect();
        let less = |(now, larger): &(Concentration, Concentration)| larger.si() < now.si() * 2.0 / 3.0;
        (!pairs.is_empty()).then(|| self.asks_too_much(e) && pairs.iter().all(less))
    }

    /// Share of the weight of the explanations kept under which a larger unit would help; `None` when no effluent was
    /// measured.
    #[must_use]
    pub fn larger_helps_in(&self) -> Option<f64> {
        let all: f64 = self.explanations.iter().map(|e| e.weight).sum();
        let mut helps = 0.0;
        for e in &self.explanations {
            helps += if self.larger_helps(e)? { e.weight } else { 0.0 };
        }
        (all > 0.0).then(|| helps / all)
    }
}

/// Finds what explains the observations of a job around its unit.
///
/// # Errors
/// [`Stop`] when nothing was observed, or the chain has no performance.
pub fn diagnose(job: &Job) -> Result<Diagnosis, Stop> {
    let stop = |reason: &str| Stop { doing: "diagnosis".to_owned(), reason: reason.to_owned(), formula: false };
    let observations = job.enquiry.observations();
    let observed = || observations.iter().map(|o| &o.observed);
    if observations.is_empty() {
        return Err(stop(
            "nothing was observed: add [[observed]] with what was measured or seen, or [[samples]] of the water that leaves, each result with its day",
        ));
    }
    if !job.enquiry.unit.is_described() {
        return Err(stop(
            "the unit that stands must be described first: [unit] dimensions with its length, width and height would do, and the flow through it; what was observed belongs to that unit, not to one that we would offer",
        ));
    }
    let (Some(basis), Some(train)) = (&job.design.basis, &job.design.train) else {
        let why: Vec<String> = job.design.stops.iter().map(|s| s.reason.clone()).collect();
        return Err(stop(&format!("no unit was laid out: {}", why.join("; "))));
    };
    let performance = job.design.performance.as_ref().ok_or_else(|| stop("the unit's performance was not found"))?;
    let worst = performance.worst().ok_or_else(|| stop("no case has a known content"))?;
    let gauges = Gauges::new(performance, &train.unit, !plates_assumed(job));
    let absurd = gauges.absurd(observed());
    if !absurd.is_empty() {
        return Err(stop(&absurd.join("; ")));
    }
    let mut occasions = observations
        .iter()
        .map(|o| Occasion::new(&mut Off, &o.observed, basis, &train.unit, worst))
        .collect::<Result<Vec<_>, _>>()?;
    let changes = &job.enquiry.changes;
    for (o, observation) in occasions.iter_mut().zip(&observations) {
        o.detected = observation.detected;
        o.good = calibration::is_good(o.observed, changes);
    }
    if occasions.iter().all(|o| o.good) {
        return Err(stop(
            "all that was observed belongs to the good period: there is nothing to explain. Add what was measured or seen since, with its day",
        ));
    }
    let jump = jump(&job.enquiry, &observations);
    mark_before(&mut occasions, jump);
    let calibration = calibration::calibrate(&job.ledger, &mut occasions);
    let scatter = calibration.map_or(SCATTER, |c| c.spread());
    let suspects = suspects::suspects(
        &occasions,
        changes,
        basis.feed.pumped,
        (train.unit.outlet.crest.q.si(), train.count.q.si().max(1.0)),
    );
    let evidence = Evidence { occasions: &occasions, gauges: &gauges, suspects: &suspects, scatter };
    let found = sets::all(&evidence);
    let best = found.iter().map(|(_, score)| *score).fold(f64::INFINITY, f64::min);
    let whole: f64 = found.iter().map(|(_, score)| exp(-0.5 * (score - best))).sum();
    if !whole.is_finite() || whole <= 0.0 {
        return Err(stop("the chain has no answer for what was observed"));
    }
    let mut explanations: Vec<Explanation> = found
        .into_iter()
        .map(|(sized, score)| (sized, exp(-0.5 * (score - best)) / whole))
        .map(|(sized, weight)| explanation(sized, weight, LARGER, &occasions))
        .collect();
    explanations.sort_by(|a, b| b.weight.total_cmp(&a.weight));
    let weight = |holds: &dyn Fn(&Sized) -> bool| -> f64 {
        explanations.iter().filter(|e| e.causes.iter().any(holds)).map(|e| e.weight).sum()
    };
    let suspected = CAUSES.iter().copied().filter(|c| suspects.iter().any(|s| s.cause.id == c.id));
    let mut causes: Vec<(&'static Cause, f64)> = suspected.map(|c| (c, weight(&|s| s.cause.id == c.id))).collect();
    causes.sort_by(|a, b| b.1.total_cmp(&a.1));
    let (timely, too_late): (Vec<usize>, Vec<usize>) =
        (0..changes.len()).partition(|k| suspects::explains(&changes[*k], &occasions));
    let mut by_change: Vec<(usize, f64)> = timely.into_iter().map(|k| (k, weight(&|s| s.change == Some(k)))).collect();
    by_change.sort_by(|a, b| b.1.total_cmp(&a.1));
    let sets = explanations.len();
    let tested: Vec<Id> = CAUSES.iter().filter(|c| is_tested(c, &observations)).map(|c| c.id).collect();
    let next = next(&causes, &tested);
    let steps =
        steps::steps(job, &causes, (next, &looked_at(&tested, &observations)), &explanations, &occasions, scatter);
    explanations.retain(|e| e.weight > 0.005);
    let count = train.count.q.si().max(1.0);
    let changed = |o: &Occasion<'_>| suspects::flow_then(o.observed, changes).map(|(k, rate)| (k, rate / count));
    let seen: Vec<Seen> = occasions.iter().map(|o| seen(o, changed(o), &performance.removals)).collect();
    let measured_since = |day: &Date| {
        seen.iter().any(|s| !s.good && s.measured.is_some() && s.observed.date.0.is_some_and(|of| of >= *day))
    };
    let last_change = changes.iter().filter_map(|c| c.date.0).filter(measured_since).max();
    let as_it_ran = steps::as_it_ran(&seen, calibration.as_ref(), scatter);
    Ok(Diagnosis {
        seen,
        next,
        explanations,
        causes,
        calibration,
        jump,
        last_change,
        changes: by_change,
        too_late,
        steps,
        as_it_ran,
        sets,
        tested,
        plates_assumed: gauges::under_plates(&train.unit).filter(|_| plates_assumed(job)),
        layers: gauges.layers(),
        worked: Vec::new(),
    })
}

/// What lies outside a step in the results is the good period.
fn mark_before(occasions: &mut [Occasion<'_>], jump: Option<Jump>) {
    let Some(jump) = jump else { return };
    for o in occasions.iter_mut().filter(|o| o.observed.date.0.is_some_and(|day| jump.is_outside(day))) {
        o.good = true;
    }
}

/// Whether the unit is described by dimensions that do not say where the underside of its plates is.
fn plates_assumed(job: &Job) -> bool {
    job.enquiry.unit.dimensions.as_ref().is_some_and(|m| !m.stages.pack.bottom.is_given())
}

/// Works the leading explanation once more, step by step, into a trail; the effluent's place by occasion.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn work(t: &mut Ledger, job: &Job, found: &Diagnosis) -> Result<Vec<Option<Node>>, Stop> {
    let stop = || Stop { doing: "rating".to_owned(), reason: "no unit was laid out".to_owned(), formula: false };
    let (Some(basis), Some(train)) = (&job.design.basis, &job.design.train) else { return Err(stop()) };
    let worst = job.design.performance.as_ref().and_then(|p| p.worst()).ok_or_else(stop)?;
    let Some(lead) = found.explanations.first() else { return Ok(Vec::new()) };
    let mut places = Vec::new();
    let observations = job.enquiry.observations();
    let jump = jump(&job.enquiry, &observations);
    for observation in &observations {
        let observed = &observation.observed;
        t.part(Part::Study, situation::section(observed));
        let mut occasion = Occasion::new(t, observed, basis, &train.unit, worst)?;
        occasion.good = calibration::is_good(observed, &job.enquiry.changes);
        mark_before(std::slice::from_mut(&mut occasion), jump);
        if let Some(c) = &found.calibration {
            occasion.calibrate(c.factors);
        }
        let out = occasion.worked(t, &under(&occasion, &lead.causes, 1.0))?;
        places.push(observed.oil_out.is_given().then_some(out.at));
    }
    Ok(places)
}

/// Whether what a cause's test would show was observed.
fn is_tested(cause: &Cause, all: &[Observation]) -> bool {
    let gauged = match cause.gauge {
        Some(Gauge::OilLayer) => all.iter().any(|o| o.observed.oil_layer.is_given()),
        Some(Gauge::Level) => all.iter().any(|o| o.observed.level_drop.is_given()),
        Some(Gauge::Sludge | Gauge::Trigger) => all.iter().any(|o| o.observed.sludge.is_given()),
        None => false,
    };
    gauged || cause.id == causes::FOULED_MESH && all.iter().any(|o| o.observed.backed_up.is_given())
}

/// Causes whose test was made, and the one that a jar which has stood speaks of.
fn looked_at(tested: &[Id], all: &[Observation]) -> Vec<Id> {
    let stood = all.iter().any(|o| o.observed.jar.0.is_some());
    tested.iter().copied().chain(stood.then_some(causes::SEEN_IN_A_JAR)).collect()
}

/// The test that is worth its price: among causes that are neither sure nor out of the question, the
/// cheapest; of equally cheap ones the one nearest to even odds.
fn next(causes: &[(&'static Cause, f64)], tested: &[Id]) -> Option<&'static Cause> {
    let open = causes.iter().filter(|(c, weight)| (0.1..0.97).contains(weight) && !tested.contains(&c.id));
    let even = |weight: f64| (weight - 0.5).abs();
    open.min_by(|a, b| a.0.cost.cmp(&b.0.cost).then(even(a.1).total_cmp(&even(b.1)))).map(|(cause, _)| *cause)
}
