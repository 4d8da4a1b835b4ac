//! Rule: one pump above the unit's rating

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::Val;
use stillrise_design::basis::cases::FeedState;
use stillrise_units::catalog::{GPM, M3_H, PERCENT};
use stillrise_units::{Flow, Typed, print};

rule! {
    "pump-above-rating" "One pump above the unit's rating", Inlet, bars_pick;
    looks "The mean flow of the largest single pump against the rated flow of all units together."
    matters "A pump delivers its flow whatever was designed for; the unit sees it every time the pump starts."
    remedy "A smaller or throttled-by-speed pump, a larger unit, or more units."
    source "Common practice of the trade; IMO MEPC.107(49) lets the supply pump of a tested unit exceed its rating by 10 %, which is not taken here"
    limits "Holds the flow against a rating, not against droplets: what the unit does at the pump's flow stands in the prediction. Without a rated flow there is nothing to hold against."
}

/// Rounding between units of the same flow.
const SLACK: f64 = 1e-9;

/// Whether a flow is above a bound by more than rounding.
pub(super) fn above(flow: Flow, bound: Flow) -> bool {
    flow.si() > bound.si() * (1.0 + SLACK)
}

/// How the water is fed, and the rated flow of all units, if the water is pumped and a rating is stated.
pub(super) fn pumped_and_rated<'a>(s: &Subject<'a>) -> Result<(&'a FeedState, Flow), &'static str> {
    let feed = &s.design.basis.as_ref().ok_or("there is no basis")?.feed;
    if !feed.pumped {
        return Err("the water runs by gravity");
    }
    let train = s.design.train.as_ref().ok_or("no unit was laid out")?;
    let rated = train
        .unit
        .particulars
        .rated
        .as_ref()
        .ok_or("no rated flow is stated for the unit; see the prediction at the pump's flow")?;
    Ok((feed, rated.0.q * train.count.q))
}

/// Mean flow of the pumps that run at the same time.
pub(super) fn running(feed: &FeedState) -> Option<Val<Flow>> {
    if feed.together { feed.all_pumps } else { feed.one_pump }
}

fn look(s: &Subject<'_>) -> Verdict {
    let (feed, rated) = match pumped_and_rated(s) {
        Ok(found) => found,
        Err(why) => return Verdict::skips(why),
    };
    let Some(pump) = feed.one_pump else { return Verdict::skips("no pump's rate is stated") };
    let share = print::with_unit((pump.q / rated).si(), &PERCENT);
    let show = |q| s.show(q, (&GPM, &M3_H));
    let says = format!("the largest pump delivers {} on average, {share} of the rated {}", show(pump.q), show(rated));
    if above(pump.q, rated) { Verdict::fails(says, pump.at) } else { Verdict::passes(says) }
}
