//! Rule: water of another temperature runs through as a current

use crate::ask::INFLOW;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{FT_MIN, MM_S};

rule! {
    "density-current" "Warmer or colder water runs through as a current", Unit;
    client "Much warmer or colder water may run through the unit as a current of its own, so that it works less well than calculated."
    looks "The speed of the current that the inflow makes in water of the coldest temperature, against the velocity along the unit: the inflow as stated, else the water whose own stated temperature is farthest from it. Where nobody stated any, it cannot judge."
    matters "Warm water runs along the top through the oil, cold water along the floor to the downcomer; either takes a short way, and the time in the unit is not what it seems."
    remedy "A diffusion baffle of some loss, the inflow spread over the depth, or cooling ahead; count on the mixed bound."
    source "Speed of a gravity current, half the root of reduced gravity times depth (Benjamin 1968)"
    limits "A stated temperature only; a difference of some tenths of a kelvin is enough and is always there. Baffles break such currents, which no formula here follows."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let Some(zones) = &performance.zones else { return s.stopped() };
    let current = &zones.current;
    if !current.stated {
        let along = s.show(performance.velocities.along.q, (&FT_MIN, &MM_S));
        let says = format!(
            "nobody said whether the inflow is warmer or colder than the water in the unit; a current of more than {along} would outrun the flow"
        );
        return Verdict::cannot_judge(says, [INFLOW], performance.velocities.along.at);
    }
    let along = performance.velocities.along;
    let unit = (&FT_MIN, &MM_S);
    match current.speed {
        Some(speed) if speed.q > along.q => Verdict::warns(
            format!(
                "a current of up to {}, whatever the flow of that water; the flow along the unit at its largest is {}",
                s.show(speed.q, unit),
                s.show(along.q, unit)
            ),
            speed.at,
        ),
        Some(speed) => Verdict::passes(format!("a current of {} at most", s.show(speed.q, unit))),
        None => Verdict::passes("inflow and unit have one temperature"),
    }
}
