//! Rule: stated pump rate off its curve

use super::pump_above_rating::{pumped, rate_unknown};
use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::lift::{Lift, Point};
use stillrise_design::basis::pump_shear::has_impeller;
use stillrise_units::catalog::{FT, GPM, M, M3_H};
use stillrise_units::{Flow, Typed, print};

rule! {
    "pump-off-its-curve" "Stated rate of a pump contradicts its curve", Inlet;
    client "The flow stated for a pump does not agree with its curve."
    looks "The stated rate of a pump, and of all that run together, against the flow at which its curve meets static lift and losses of its rising main: more than a fifth apart, or no meeting, warns. Where curve or static lift were not said, or where the main's assumed length, bore, roughness or fittings could put the rate a fifth off, it cannot judge."
    matters "The separator gets what the pump delivers on its main, not what was ordered: more than stated overloads it, less leaves water standing in the sump."
    remedy "Settle which of rate, curve, lift and main is right; throttle by speed, not by a valve, which breaks the oil; or size for the flow at which the curve meets the main."
    source "Pump and system curve; that a fifth is a contradiction is our proposal"
    limits "A pump with an impeller alone: one that displaces delivers its flow at nearly any head. All pumps are taken to have the one curve, and water in the sump at its lowest."
}

/// A rate further from the one found is a contradiction: our proposal.
const APART: f64 = 0.2;

/// What the curve needs, as questions.
const CURVE: Ask =
    Ask::fixed("lift.curve", "May we have the curve of the feed pump: its head at three flows or more?");
const STATIC_LIFT: Ask = Ask::fixed(
    "lift.static_lift",
    "How high does the feed pump lift the water, from the sump at its lowest to where the rising main ends?",
);

/// Whether a rate is further from what was found than a fifth of it.
fn apart(stated: Flow, found: Flow) -> bool {
    (stated.si() - found.si()).abs() > APART * found.si() * (1.0 + 1e-9)
}

fn look(s: &Subject<'_>) -> Verdict {
    let feed = match pumped(s) {
        Ok(feed) => feed,
        Err(verdict) => return verdict,
    };
    if !has_impeller(feed.class) {
        return Verdict::skips("a pump that displaces delivers its flow at nearly any head");
    }
    if feed.off_the_curve {
        return Verdict::skips("no rate is stated; it is read off the curve");
    }
    if feed.one_pump.is_none() {
        return rate_unknown(s);
    }
    let lift = feed.lift.as_ref();
    let mut asks = Vec::new();
    if lift.is_none_or(|lift| lift.curve.is_none()) {
        asks.push(CURVE);
    }
    if lift.is_none_or(|lift| lift.main.is_none()) {
        asks.push(STATIC_LIFT);
    }
    let Some(lift) = lift.filter(|_| asks.is_empty()) else {
        let says = "whether the pump delivers its rate hangs on its curve and on what it lifts, which were not both said";
        return Verdict::cannot_judge(says, asks, None);
    };
    let points = || lift.points.iter().filter(|p| p.stated.is_some() && (feed.together || p.pumps.q.si() < 1.5));
    if let Some(says) = points().find_map(|p| wrong(s, p)) {
        return Verdict::warns(says, points().find_map(|p| p.stated).map(|v| v.at));
    }
    let all: Vec<String> = points().filter_map(|p| says(s, p)).collect();
    let says = all.join("; ");
    let doubt = points().any(|p| match (p.stated, p.within) {
        (Some(stated), Some(ends)) => ends.iter().any(|end| end.is_none_or(|end| apart(stated.q, end.q))),
        _ => false,
    });
    if doubt {
        let says = format!("{says}; within what the main that was not stated may be, the two are more than a fifth apart");
        return Verdict::cannot_judge(says, assumed(s, lift), None);
    }
    Verdict::passes(says)
}

/// Who runs, in words.
fn runs(point: &Point) -> String {
    let n = point.pumps.q.si();
    if n > 1.5 { format!("{} pumps together", print::digits(n, 2)) } else { "one pump".to_owned() }
}

/// Stated rate and operating point, in words.
fn says(s: &Subject<'_>, point: &Point) -> Option<String> {
    let (flow, head) = point.at.ok()?;
    let show = |q| s.show(q, (&GPM, &M3_H));
    Some(format!(
        "{} said to deliver {} meet the main at {} and a head of {}",
        runs(point),
        show(point.stated?.q),
        show(flow.q),
        s.show(head.q, (&FT, &M))
    ))
}

/// What is wrong with a point, in words; nothing where it agrees.
fn wrong(s: &Subject<'_>, point: &Point) -> Option<String> {
    let stated = point.stated?;
    let show = |q| s.show(q, (&GPM, &M3_H));
    match point.at {
        Err(missed) => {
            Some(format!("{} said to deliver {}: {}", runs(point), show(stated.q), missed.text()))
        }
        Ok((flow, _)) if apart(stated.q, flow.q) => {
            let off = s.percent(stated.q / flow.q);
            Some(format!("{}: what was said is {off} of it", says(s, point)?))
        }
        Ok(_) => None,
    }
}

/// The questions of what is assumed of the main.
fn assumed(s: &Subject<'_>, lift: &Lift) -> Vec<Ask> {
    let Some(main) = &lift.main else { return Vec::new() };
    [main.length.at, main.bore.at, main.roughness.at, main.fittings.at].into_iter().flat_map(|at| s.asked(at)).collect()
}
