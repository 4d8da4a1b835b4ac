//! Rule: shut-off comes late while water flows

use crate::ask::{CLOSURE, SPILL};
use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::Typed;
use stillrise_units::catalog::{IN, MM};

rule! {
    "shut-off-late" "Shut-off comes late while water flows", OilZone;
    client "While much water flows, the float of the alarm responds late: something else must shut the outlet in a spill."
    looks "The oil layer at which a float that is set at rest shuts off at the largest flow, against the thickest permitted layer, where a closure is declared. Where nobody spoke of one it cannot judge."
    matters "Flow lifts the interface over a float that hangs at one height: the layer it was set for has then long been passed, and oil is under way."
    remedy "A closure that floats with the interface itself, a set point that allows for the flow, or a larger outlet and a cleaner mesh."
    source "Balance of levels; common practice sets floats in still water"
    limits "The largest flow lasts; a closure of another kind, such as one on the outlet that sinks in oil, is judged by its maker."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(performance), Some(basis)) = (&s.design.performance, &s.design.basis) else {
        return s.stopped();
    };
    match s.enquiry.spill.as_ref().map(|block| block.closure.0) {
        None => {
            return Verdict::cannot_judge(
                "nobody said whether a spill must stay in, nor what shuts the outlet then",
                [SPILL, CLOSURE],
                None,
            );
        }
        Some(None) => {
            let at = basis.spill.as_ref().map(|spill| spill.volume.at);
            return Verdict::cannot_judge("whether anything shuts the outlet in a spill was not said", [CLOSURE], at);
        }
        Some(Some(false)) => return Verdict::skips("there is no closure"),
        Some(Some(true)) => {}
    }
    let show = |mm: f64| s.show(stillrise_units::Length::from_si(mm), (&IN, &MM));
    // The floats are mounted for the oil with the thinnest permitted layer.
    let mounted = performance.levels.iter().min_by(|a, b| a.limit.q.si().total_cmp(&b.limit.q.si()));
    let found = mounted.and_then(|l| Some((l, l.level(Mark::ShutOff)?, l.level(Mark::Alarm)?, l.trip_at_flow?)));
    let Some((l, shut, alarm, flow)) = found else { return Verdict::skips("no oil has a permitted layer") };
    // What delays the alarm delays the shut-off alike.
    let late = shut.thickness.q.si() + flow.q.si() - alarm.thickness.q.si();
    let says = format!(
        "set at {} of {} at rest, the float shuts off at {} at the largest flow; {} are permitted",
        show(shut.thickness.q.si()),
        l.oil,
        show(late),
        show(l.limit.q.si())
    );
    if late > l.limit.q.si() { Verdict::warns(says, shut.thickness.at) } else { Verdict::passes(says) }
}
