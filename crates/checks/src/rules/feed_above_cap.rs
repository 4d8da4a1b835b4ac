//! Rule: pumps above the flow cap

use super::pump_above_rating::{above, running};
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{GPM, M3_H};

rule! {
    "feed-above-cap" "Pumps above the flow cap", Inlet;
    looks "The flow of the pumps that run together against the most that may leave: the mean above it fails, only the peak of the strokes above it warns."
    matters "What is pumped in leaves at the other end; a separator holds no flow back."
    remedy "Pumps of no more than the cap, an interlock, or a flow control and a tank behind the separator."
    source "Continuity; needs no authority"
    limits "Takes the cap as one on the flow at any time, not on a daily volume."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return Verdict::skips("there is no basis") };
    let feed = &basis.feed;
    let Some(cap) = feed.cap else { return Verdict::skips("no flow cap is stated") };
    if !feed.pumped {
        return Verdict::skips("the water runs by gravity; equalisation ahead keeps the cap");
    }
    let (Some(mean), Some(peak)) = (running(feed), feed.pump_flow) else {
        return Verdict::skips("no pump's rate is stated");
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
        Verdict::passes(says)
    }
}
