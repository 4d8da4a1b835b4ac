//! Rule: routine pump-out stands at the alarm

use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::Typed;
use stillrise_units::catalog::{IN, MM};

rule! {
    "routine-at-alarm" "Routine pump-out stands at the alarm", OilZone;
    client "The alarm may sound before a routine pump-out is due: act on every alarm, and pump out by the calendar without waiting for one."
    looks "The oil layer of the routine pump-out against that of the alarm, which the largest flow may force down."
    matters "A routine that is only due when the alarm sounds is no routine: every pump-out then begins with an alarm."
    remedy "A larger outlet, a cleaner mesh or a larger unit, so that flow lifts the interface less; or pump out by the calendar, and on every alarm."
    source "Set points of the handbook; common practice pumps out before the alarm"
    limits "Compares two set points; how often oil comes is not looked at."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let mounted = performance.levels.iter().min_by(|a, b| a.limit.q.si().total_cmp(&b.limit.q.si()));
    let found = mounted.and_then(|l| Some((l, l.level(Mark::PumpOut)?, l.level(Mark::Alarm)?)));
    let Some((l, routine, alarm)) = found.filter(|(l, ..)| l.limit.q.si() > 0.0) else {
        return Verdict::skips("no oil has a permitted layer");
    };
    let show = |q| s.show(q, (&IN, &MM));
    let (at, sounds) = (show(routine.thickness.q), show(alarm.thickness.q));
    let says = format!("routine pump-out at {at} of {}, alarm at {sounds}", l.oil);
    if routine.thickness.q >= alarm.thickness.q {
        Verdict::warns(says, routine.thickness.at)
    } else {
        Verdict::passes(says)
    }
}
