//! Rule: an effluent pump does not keep up, or starts too often

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{GPM, M3_H, MIN};
use stillrise_units::{Time, Typed};

rule! {
    "effluent-pump-too-small" "Effluent pump too small, or starting too often", Outlet;
    client "The pumps in the unit do not keep up with what arrives, or start more often than their motors bear."
    looks "The flow of one effluent pump against the largest flow through the unit: no more fails. The shortest time from one of its starts to the next against 10 minutes: less warns."
    matters "Pumps that do not keep up drown the weir ahead, and the oil levels with it; motors that start too often burn out."
    remedy "Larger pumps, or more room between start and stop; both pumps running are no reserve."
    source "UFC 3-240-04A: 10 to 15 minutes from start to start for motors below {20 hp|15 kW}; the standby is not counted on"
    limits "A soft start, or two pumps that take turns, let a motor rest longer."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(performance), Some(train)) = (&s.design.performance, &s.design.train) else { return s.stopped() };
    let (Some(runs), Some(pumps)) = (&performance.pump_out, &train.unit.pump_out) else {
        return Verdict::skips("no effluent pumps");
    };
    let (pump, largest) = (pumps.pump, performance.highest().flow);
    let flow = |q| s.show(q, (&GPM, &M3_H));
    let says = format!("one pump lifts {}, the largest flow through the unit is {}", flow(pump.q), flow(largest.q));
    if runs.run.is_none() {
        return Verdict::fails(says, pump.at);
    }
    let least = Time::of(10.0, &MIN);
    let says = format!("{says}; at the worst it starts every {}", s.show(runs.cycle.q, (&MIN, &MIN)));
    if runs.cycle.q < least {
        Verdict::warns(format!("{says}, more often than every {}", s.show(least, (&MIN, &MIN))), runs.cycle.at)
    } else {
        Verdict::passes(says)
    }
}
