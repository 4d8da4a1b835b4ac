//! Rule: pumps above the flow cap

use super::pump_above_rating::{above, pumped, rate_unknown, running};
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::Ratio;
use stillrise_units::catalog::{GPM, M3_H, ONE};

rule! {
    "feed-above-cap" "Pumps above the flow cap", Inlet;
    client "The pumps bring more than may be let go; a separator holds no flow back."
    looks "The flow of the pumps that run together against the most that may leave: the mean above it fails, only the peak of the strokes above it warns. Where feed, rate, or kind and pulsation of the pump were not said, it cannot judge."
    matters "What is pumped in leaves at the other end; a separator holds no flow back."
    remedy "Pumps of no more than the cap, an interlock, or a flow control and a tank behind the separator."
    source "Continuity; needs no authority"
    limits "Takes the cap as one on the flow at any time, not on a daily volume."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let feed = &basis.feed;
    let Some(cap) = feed.cap else { return Verdict::skips("no flow cap is stated") };
    if let Err(verdict) = pumped(s) {
        return verdict;
    }
    let (Some(mean), Some(peak), Some(pulsation)) = (running(feed), feed.pump_flow, feed.pulsation) else {
        return rate_unknown(s);
    };
    let show = |q| s.show(q, (&GPM, &M3_H));
    let says = format!(
        "the pumps deliver {} on average and {} at the peak, against a cap of {}",
        show(mean.q),
        show(peak.q),
        show(cap.q)
    );
    if above(mean.q, cap.q) {
        Verdict::fails(says, mean.at)
    } else if above(peak.q, cap.q) {
        Verdict::warns(says, peak.at)
    } else {
        let fits = |pulsation: Ratio| !above(mean.q * pulsation, cap.q);
        let doubt = s.rests_on(&says, pulsation, (&ONE, &ONE), fits).filter(|_| feed.class.is_none());
        doubt.unwrap_or_else(|| Verdict::passes(says))
    }
}
