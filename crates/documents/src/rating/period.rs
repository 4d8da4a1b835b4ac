//! What the good period says, and what ends it where nobody recorded a change.

use super::words::mg;
use stillrise_search::diagnosis::{Calibration, Diagnosis, Jump, SCATTER};
use stillrise_units::{Typed, print};

/// What the good period says, in sentences; nothing without one.
#[must_use]
pub fn good_period(d: &Diagnosis) -> Vec<String> {
    let Some(c) = &d.calibration else { return Vec::new() };
    let mut out: Vec<String> = d.jump.map(|j| stepped(&j)).into_iter().collect();
    out.push(format!(
        "{} of the good period, {}{} mg/L in the geometric mean, are the baseline: with {} the oil and {} the median droplet of the basis{} the chain gives {} mg/L there, {} without. What should leave is reckoned so on every occasion.",
        results(c.samples),
        most(c),
        mg(c.mean, 3),
        times(c.factors.influent),
        times(c.factors.median),
        rest(c),
        mg(c.after, 3),
        mg(c.before, 3),
    ));
    // Where oil and droplets end before the chain gives what was measured, the rest stands for something unknown.
    let (after, mean) = (c.after.si(), c.mean.si());
    let off = after > MISSES * mean || c.undetected == 0 && mean > MISSES * after;
    let rest = c.factors.rest;
    out.extend((off || !(1.0 / MISSES..=MISSES).contains(&rest)).then(|| {
        let still = if off {
            format!(
                ", and the bands below may be off by as much as {} times",
                print::digits((after / mean).max(mean / after), 2)
            )
        } else {
            String::new()
        };
        format!(
            "Plausible oil and droplets alone do not bring the chain to what was measured in the good period: why it leaves a factor is not known{still}. Have the water that comes sampled first."
        )
    }));
    out.push(scatter(c));
    let own = d.own_spread().filter(|own| *own > WIDER * c.spread());
    out.extend(own.map(|own| {
        format!(
            "The later results scatter by {} about their own mean, more than that: no one state of the plant gives them all, and the shares below are surer than they should be.",
            print::digits(own, 2)
        )
    }));
    out
}

/// That the results step up where no change was recorded.
fn stepped(j: &Jump) -> String {
    if let Some((last, _)) = j.ended {
        return format!(
            "No change was recorded, but the {} results from {} to {last} lie above all others, {} mg/L in the geometric mean, and before and after it was {} mg/L of {}. What was measured outside that time is taken as the good period; what was different in that time, in season, water, habits or sampling, is the first question. What only wears or silts up does not mend by itself.",
            j.after.0,
            j.first,
            mg(j.after.1, 3),
            mg(j.before.1, 3),
            j.before.0
        );
    }
    format!(
        "No change was recorded, but the results step up between {} and {}: from {} mg/L in the geometric mean of {} to {} mg/L of {}. What was measured before is taken as the good period; what was changed at the plant, at the unit or at the sampling between those days is the first question.",
        j.last,
        j.first,
        mg(j.before.1, 3),
        j.before.0,
        mg(j.after.1, 3),
        j.after.0
    )
}

/// From so many times between what was measured in the good period and what the calibrated chain gives there it is said.
/// Judgement.
const MISSES: f64 = 1.25;

fn results(n: usize) -> String {
    if n == 1 { "One result".to_owned() } else { format!("{n} results") }
}

/// From so many times the scatter of the good period that of the later results is said. Judgement.
const WIDER: f64 = 2.0;

/// A mean in which reporting limits stand for what was not detected is one at most.
fn most(c: &Calibration) -> &'static str {
    if c.undetected > 0 { "at most " } else { "" }
}

/// What oil and droplets leave unexplained.
fn rest(c: &Calibration) -> String {
    let worth = !(1.0 / WORTH..=WORTH).contains(&c.factors.rest);
    if worth { format!(", and with {} what then leaves,", times(c.factors.rest)) } else { String::new() }
}

/// From so much a factor is worth its words: less does not show in two digits.
const WORTH: f64 = 1.005;

fn times(factor: f64) -> String {
    format!("{} times", print::digits(factor, 2))
}

fn scatter(c: &Calibration) -> String {
    match c.scatter {
        Some(s) => format!(
            "Single results scatter about it by {} (standard deviation of their logarithm); the later ones are taken to scatter as much.",
            print::digits(s, 2)
        ),
        None => format!(
            "Too few results to know their scatter: {} is judged (standard deviation of their logarithm).",
            print::digits(SCATTER, 2)
        ),
    }
}
