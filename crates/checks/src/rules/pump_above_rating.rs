//! Rule: one pump above the unit's rating

use crate::ask::{Ask, FEED, pump_rate};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::Val;
use stillrise_design::basis::cases::FeedState;
use stillrise_design::performance::installation::Stands;
use stillrise_units::catalog::{GPM, M3_H};
use stillrise_units::{Flow, Typed};

rule! {
    "pump-above-rating" "One pump above the unit's rating", Inlet, bars_pick;
    client "One pump brings more than the unit is made for."
    looks "The mean flow of the largest single pump against the rated flow of all units together. Where it was not said whether the water is pumped, at which rate, or what the unit is rated for, it cannot judge."
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

/// How the water is fed, if it is pumped.
///
/// # Errors
/// What to say where it is not, or nobody said.
pub(super) fn pumped<'a>(s: &Subject<'a>) -> Result<&'a FeedState, Verdict> {
    let Some(basis) = &s.design.basis else { return Err(s.stopped()) };
    // A pump of the kind "gravity" is one of the words for no pump.
    let said = s.enquiry.inlet.feed.0.is_some() || s.enquiry.inlet.pump.is_some();
    match (basis.feed.pumped, said) {
        (true, _) => Ok(&basis.feed),
        // The levels may ask for one that nobody has chosen yet.
        (false, true) if lifted(s) => Err(Verdict::skips("no pump is named yet; the levels ask for one")),
        (false, true) => Err(Verdict::skips("the water runs by gravity")),
        (false, false) => Err(Verdict::cannot_judge(
            "nobody said whether the water is pumped; it is taken to run by gravity",
            [FEED],
            None,
        )),
    }
}

fn lifted(s: &Subject<'_>) -> bool {
    s.design.performance.as_ref().is_some_and(|p| p.site.installation.stands.q == Stands::LiftPump)
}

/// What a rule says when the water is pumped and nobody said at which rate.
pub(super) fn rate_unknown(s: &Subject<'_>) -> Verdict {
    let says = "the water is pumped, and what the pumps deliver while they run was not said; the unit is worked for the flow that comes";
    Verdict::cannot_judge(says, [pump_rate(s)], None)
}

/// How the water is fed, and the rated flow of all units, if the water is pumped and the unit has a rating.
///
/// # Errors
/// What to say where one of them does not exist, or nobody said.
pub(super) fn pumped_and_rated<'a>(s: &Subject<'a>) -> Result<(&'a FeedState, Flow), Verdict> {
    let feed = pumped(s)?;
    let Some(train) = &s.design.train else { return Err(s.stopped()) };
    match &train.unit.particulars.rated {
        Some((rated, _)) => Ok((feed, rated.q * train.count.q)),
        None if train.unit.particulars.left_out.contains(&"rated_flow") => {
            let ask = Ask::unit(s, "rated_flow", "What flow is the unit rated for, and on what basis?");
            Err(Verdict::cannot_judge(
                "the unit's rated flow, against which the pumps would be held, is not stated",
                [ask],
                None,
            ))
        }
        None => Err(Verdict::skips("a unit made to measure carries no rating; see the prediction at the pump's flow")),
    }
}

/// Mean flow of the pumps that run at the same time.
pub(super) fn running(feed: &FeedState) -> Option<Val<Flow>> {
    if feed.together { feed.all_pumps } else { feed.one_pump }
}

fn look(s: &Subject<'_>) -> Verdict {
    let (feed, rated) = match pumped_and_rated(s) {
        Ok(found) => found,
        Err(verdict) => return verdict,
    };
    let Some(pump) = feed.one_pump else { return rate_unknown(s) };
    let share = s.percent(pump.q / rated);
    let show = |q| s.show(q, (&GPM, &M3_H));
    let says = format!("the largest pump delivers {} on average, {share} of the rated {}", show(pump.q), show(rated));
    if above(pump.q, rated) { Verdict::fails(says, pump.at) } else { Verdict::passes(says) }
}
