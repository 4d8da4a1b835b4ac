//! What to do, in order: the cheapest test first, what confirms it, when to sample again and what to expect then.

use super::causes::{Cause, Id};
use super::fit::outcomes;
use super::situation::Occasion;
use super::{Calibration, Explanation, Seen, Sized};
use stillrise_design::Job;
use stillrise_units::math::{Z_95, ceil, exp, ln, sqrt};
use stillrise_units::{Concentration, Flow, Time, Typed, Volume};

/// So many times the unit's water has to be exchanged before a sample speaks of the new state: in a stirred tank e^-3,
/// one part in twenty, of the old water is then left (washout of a stirred tank, any text on reactors).
pub const EXCHANGES: f64 = 3.0;
/// Causes below this weight ask for no step.
pub const WORTH: f64 = 0.05;
const DAY: f64 = 86_400.0;

/// One step.
#[derive(Debug, Clone)]
pub struct Step {
    /// The cause it tests for.
    pub cause: &'static Cause,
    /// The change that would have brought it about, by its place in the enquiry.
    pub change: Option<usize>,
    /// Its weight.
    pub weight: f64,
    /// What nine in ten results would lie between, with this cause alone removed from the heaviest explanation that
    /// holds it; `None` where nothing was measured or the cause moves no oil.
    pub expect: Option<(Concentration, Concentration)>,
    /// When to sample again.
    pub again: Again,
}

/// When to sample again.
#[derive(Debug, Clone, Copy)]
pub struct Again {
    /// Water that has to run first.
    pub water: Volume,
    /// The flow of today, and how long that takes at it.
    pub running: Option<(Flow, Time)>,
    /// Not before so many days of normal operation; the water takes no longer, where it is known.
    pub days: u32,
}

/// The steps, the cheapest first; among equally cheap ones the test to be made next, then the heavier.
pub(super) fn steps(
    job: &Job,
    causes: &[(&'static Cause, f64)],
    (next, looked_at): (Option<&'static Cause>, &[Id]),
    explanations: &[Explanation],
    occasions: &[Occasion<'_>],
    scatter: f64,
) -> Vec<Step> {
    let mut out: Vec<Step> = causes
        .iter()
        .filter(|(_, weight)| *weight >= WORTH)
        .map(|(cause, weight)| {
            let holds = |e: &&Explanation| e.causes.iter().any(|s| s.cause.id == cause.id);
            let heaviest = explanations.iter().find(holds);
            let member = heaviest.and_then(|e| e.causes.iter().find(|s| s.cause.id == cause.id));
            Step {
                cause,
                change: member.and_then(|s| s.change),
                weight: *weight,
                expect: heaviest
                    .filter(|_| cause.size.is_some())
                    .and_then(|e| without(&e.causes, cause, occasions, scatter)),
                again: again(job, cause.settles),
            }
        })
        .collect();
    let later = |s: &Step| next.is_none_or(|next| s.cause.id != next.id);
    // What was looked at already comes after what was not.
    let again = |s: &Step| looked_at.contains(&s.cause.id);
    let key = |s: &Step| (s.cause.cost, again(s), later(s));
    out.sort_by(|a, b| key(a).cmp(&key(b)).then(b.weight.total_cmp(&a.weight)));
    out
}

/// Where nine in ten results lie once all of an explanation is removed. The good period was measured: a further result
/// lies about the mean of its n results with the scatter times the root of 1 + 1/n (prediction interval, any text on
/// statistics). Without one the chain says what leaves, with flow, oil and cold that lie beyond the basis back in it.
pub(super) fn as_it_ran(
    seen: &[Seen],
    good: Option<&Calibration>,
    scatter: f64,
) -> Option<(Concentration, Concentration)> {
    if let Some(good) = good {
        return Some(ends(ln(good.mean.si()), scatter * sqrt(1.0 + 1.0 / good.samples as f64)));
    }
    let bad = seen.iter().filter(|s| !s.good && s.measured.is_some());
    let logs: Vec<f64> = bad.map(|s| s.within.unwrap_or(s.expected).si()).filter(|x| *x > 0.0).map(ln).collect();
    (!logs.is_empty()).then(|| ends(logs.iter().sum::<f64>() / logs.len() as f64, scatter))
}

/// Nine in ten of what scatters log-normally lie between.
fn ends(mean: f64, scatter: f64) -> (Concentration, Concentration) {
    let at = |side: f64| Concentration::from_si(exp(mean + side * Z_95 * scatter));
    (at(-1.0), at(1.0))
}

fn without(
    sized: &[Sized],
    cause: &Cause,
    occasions: &[Occasion<'_>],
    scatter: f64,
) -> Option<(Concentration, Concentration)> {
    let left: Vec<Sized> = sized.iter().filter(|s| s.cause.id != cause.id).copied().collect();
    range(&left, occasions, scatter)
}

/// About the geometric mean of what would be measured outside the good period.
fn range(sized: &[Sized], occasions: &[Occasion<'_>], scatter: f64) -> Option<(Concentration, Concentration)> {
    let all = outcomes(sized, occasions, 1.0);
    let logs: Vec<f64> = all
        .iter()
        .zip(occasions)
        .filter(|(_, o)| !o.good)
        .filter_map(|(c, _)| c.map(Typed::si).filter(|x| *x > 0.0).map(ln))
        .collect();
    if logs.is_empty() {
        return None;
    }
    let mean = logs.iter().sum::<f64>() / logs.len() as f64;
    Some(ends(mean, scatter))
}

/// When to sample again after a remedy that settles in so many days.
fn again(job: &Job, settles: u32) -> Again {
    let none = Again { water: Volume::from_si(0.0), running: None, days: settles };
    let (Some(train), Some(performance)) = (&job.design.train, &job.design.performance) else { return none };
    let water = EXCHANGES * (train.unit.layout.water_volume.q.si() + train.unit.hopper_volume().si());
    let count = train.count.q.si().max(1.0);
    // What flows since the last change that says so; else as the worst case has it, without the strokes of its pump.
    let since =
        job.enquiry.changes.iter().filter_map(|c| Some((c.date.0?, c.rate.q()?))).max_by_key(|(day, _)| day.number());
    let strokes = job.design.basis.as_ref().filter(|b| b.feed.pump_flow.is_some()).and_then(|b| b.feed.pulsation);
    let strokes = strokes.map_or(1.0, |p| p.q.si().max(1.0));
    let flow = since
        .map(|(_, rate)| rate / count)
        .or_else(|| performance.worst().map(|r| r.flow.q / strokes))
        .filter(|flow| flow.si() > 0.0);
    let daily = performance.storage.average.q.si() * DAY / count;
    let takes = if daily > 0.0 { ceil(water / daily) } else { 0.0 };
    // A unit that sees so little water is sampled after a month at the latest, and that is said by the volume.
    let days = settles.max(takes.clamp(0.0, 30.0) as u32);
    Again { water: Volume::from_si(water), running: flow.map(|flow| (flow, Time::from_si(water / flow.si()))), days }
}
