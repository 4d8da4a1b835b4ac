//! Rule: the water under the downcomer draws the oil layer with it, or a dip pipe does

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::stages::underflow::Pull;
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Typed, print};

rule! {
    "layer-drawn-under" "Oil layer drawn off with the water", Downcomer;
    client "Fast water may pull oil from the collected layer out of the unit."
    looks "The largest flow, with the oil layer at its alarm. Under a downcomer: the Froude number of the water in the slot against the layer; above 0.5 it warns. Into a dip pipe: the height of the oil over its mouth against that from which a layer is drawn in; below it fails, below one and a half times it warns."
    matters "Fast water under a layer of light oil pulls waves and drops off it, and takes them out of the unit."
    remedy "A wider slot under the downcomer or a lower mouth of the dip pipe, a retention zone that keeps the layer away from it, or less flow."
    source "Froude number of a layer, critical withdrawal of Craya, Gariel, Lubin and Springer, recalled; the bounds of 0.5 and one and a half are engineering judgement"
    limits "Steady flow; a surge through a full layer is not in it."
}

const BOUND: f64 = 0.5;
/// The interface over the mouth, over the height from which it is drawn in, at least.
const CLEAR: f64 = 1.5;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let Some(zones) = &performance.zones else { return s.stopped() };
    match zones.pull {
        None => Verdict::skips("no oil layer"),
        Some(Pull::UnderBaffle(layer)) => {
            let says = format!("Froude number {} at the alarm", print::digits(layer.q.value, 2));
            if layer.q.value > BOUND {
                Verdict::warns(says, layer.at)
            } else {
                Verdict::passes(format!("{says}, at most {BOUND}"))
            }
        }
        Some(Pull::IntoMouth { over, least }) => {
            let show = |q| s.show(q, (&IN, &MM));
            let says = format!(
                "at the alarm the oil stands {} over the mouth of the dip pipe; below {} it is drawn in",
                show(over.q),
                show(least.q)
            );
            if over.q < least.q {
                Verdict::fails(says, over.at)
            } else if over.q.si() < CLEAR * least.q.si() {
                Verdict::warns(format!("{says}, and one and a half times that is asked for"), over.at)
            } else {
                Verdict::passes(says)
            }
        }
    }
}
