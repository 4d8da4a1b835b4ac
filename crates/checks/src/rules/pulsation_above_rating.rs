//! Rule: pulsation above the unit's rating

use super::pump_above_rating::{above, pumped_and_rated, rate_unknown, running};
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{GPM, M3_H, ONE};
use stillrise_units::{Ratio, Typed, print};

rule! {
    "pulsation-above-rating" "Pulsation above the unit's rating", Inlet;
    client "The pump pulses, and its peaks are above the flow the unit is made for."
    looks "Pumps whose mean flow fits the rated flow of the units and whose peak flow within the stroke does not: it warns. Where the kind of pump was not said, nor its pulsation, it cannot judge."
    matters "A pulsating pump pushes its peak through the inlet at every stroke; the gaps and the diffusion baffle see it, the flow meter does not."
    remedy "A pulsation damper, a pump with more chambers, or a unit rated for the peak."
    source "Geometry of the strokes for diaphragm pumps (pi/2 for two chambers in turn); other kinds from memory; that the peak must fit is our proposal"
    limits "The free surface of the inlet chamber evens out a part of the strokes; this is not counted."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (feed, rated) = match pumped_and_rated(s) {
        Ok(found) => found,
        Err(verdict) => return verdict,
    };
    let (Some(mean), Some(peak), Some(pulsation)) = (running(feed), feed.pump_flow, feed.pulsation) else {
        return rate_unknown(s);
    };
    if above(mean.q, rated) {
        return Verdict::skips("the mean flow of the pumps is above the rating already");
    }
    let show = |q| s.show(q, (&GPM, &M3_H));
    let fits = |pulsation: Ratio| !above(mean.q * pulsation, rated);
    let taken = format!("the pumps are taken to peak at {}, against the rated {}", show(peak.q), show(rated));
    if feed.class.is_none()
        && fits(pulsation.q)
        && let Some(doubt) = s.rests_on(&taken, pulsation, (&ONE, &ONE), fits)
    {
        return doubt;
    }
    let times = print::digits(pulsation.q.si(), 3);
    if pulsation.q.si() <= 1.0 {
        return Verdict::passes(format!(
            "the pumps deliver a steady {}, against the rated {}",
            show(mean.q),
            show(rated)
        ));
    }
    let says = format!(
        "the pumps peak at {}, {times} times their mean of {}, against the rated {}",
        show(peak.q),
        show(mean.q),
        show(rated)
    );
    if above(peak.q, rated) { Verdict::warns(says, peak.at) } else { Verdict::passes(says) }
}
