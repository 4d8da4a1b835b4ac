//! Rule: the water under the downcomer draws the oil layer with it

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::print;

rule! {
    "layer-drawn-under" "Oil layer drawn under the downcomer", Downcomer;
    looks "The Froude number of the water in the slot under the downcomer against the oil layer at its alarm, at the largest flow: above 0.5 it warns."
    matters "Fast water under a layer of light oil pulls waves and drops off it, and takes them under the lip."
    remedy "A wider slot under the downcomer, a retention zone that keeps the layer away from it, or less flow."
    source "Froude number of a layer; the bound of 0.5 is engineering judgement"
    limits "Steady flow; a surge through a full layer is not in it."
}

const BOUND: f64 = 0.5;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let Some(zones) = &performance.zones else { return s.stopped() };
    let Some(layer) = zones.layer else { return Verdict::skips("no oil layer") };
    let says = format!("Froude number {} at the alarm", print::digits(layer.q.value, 2));
    if layer.q.value > BOUND {
        Verdict::warns(says, layer.at)
    } else {
        Verdict::passes(format!("{says}, at most {BOUND}"))
    }
}
