//! Rule: rain stands in a containment

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::containment::Containment;
use stillrise_design::basis::containment::drain::Shut;
use stillrise_units::catalog::{D, GAL, GPM, H, M3, M3_H};
use stillrise_units::{Time, Typed};

rule! {
    "containment-rain-not-drained" "Rain stands in a containment", Inlet;
    client "Rain that stands in the containment takes the room that a spill needs."
    looks "The time in which the metered drain of a containment without a roof, whose drain does not stand open, empties the design rain: more than three days warn; without a rate it cannot be judged."
    matters "Rain that stands there takes the room of the oil. A containment full of rain holds no oil at all: it floats up and goes over the rim."
    remedy "A drain or pump that empties the design rain within days, a person who sees to it after each rain, or a roof."
    source "40 CFR 112.8(c)(3) on the drainage of rain; the three days are our proposal"
    limits "A steady rate. Evaporation is not counted, nor the days until somebody comes."
}

/// After so long the next rain may find no room.
const DAYS: f64 = 3.0;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let Some(ahead) = &basis.containment else { return Verdict::skips("no containment is declared") };
    let stands: Vec<&Containment> =
        ahead.all.iter().filter(|c| c.catch.is_some() && c.valve.shut() != Shut::Open).collect();
    if stands.is_empty() {
        return Verdict::skips("rain falls into none, or runs through");
    }
    let longest = Time::of(DAYS, &D);
    let says = |c: &Containment| {
        let rain = s.show(c.rain.val.q, (&GAL, &M3));
        match c.drain.as_ref().and_then(|drain| Some((drain.rate, drain.time?))) {
            Some((rate, time)) => {
                let short = time.q < Time::of(2.0, &D);
                let time = s.show(time.q, if short { (&H, &H) } else { (&D, &D) });
                format!("{}: {rain} of rain drain in {time} at {}", c.name, s.show(rate.q, (&GPM, &M3_H)))
            }
            None => format!("{}: {rain} of rain, and nobody said how fast it is drained, or by whom", c.name),
        }
    };
    let slow = |c: &&Containment| c.drain.as_ref().and_then(|d| d.time).is_some_and(|time| time.q > longest);
    if let Some(first) = stands.iter().copied().find(slow) {
        let all: Vec<String> = stands.iter().copied().filter(slow).map(says).collect();
        return Verdict::warns(format!("{}; more than {DAYS} days", all.join("; ")), first.rain.val.at);
    }
    let unknown = |c: &&Containment| c.drain.as_ref().and_then(|d| d.time).is_none();
    if let Some(first) = stands.iter().copied().find(unknown) {
        let all: Vec<String> = stands.iter().copied().filter(unknown).map(says).collect();
        let asks: Vec<Ask> = stands
            .iter()
            .copied()
            .filter(unknown)
            .map(|c| {
                let counted = if c.drained.is_some() {
                    "in the water of an average day, but in no flow"
                } else {
                    "in no flow and in no day's water here, so that sludge and oil may collect sooner than is said"
                };
                let question = format!("The rain that falls into the {} is counted {counted}: at what rate is it let out?", c.name);
                Ask::new(format!("containment \"{}\".drain_rate", c.name), question)
            })
            .collect();
        return Verdict::cannot_judge(all.join("; "), asks, first.rain.val.at);
    }
    Verdict::passes(stands.iter().copied().map(says).collect::<Vec<_>>().join("; "))
}
