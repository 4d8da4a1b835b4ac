//! Rule: float never trips

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{LBF, NEWTON, PERCENT};
use stillrise_units::{Force, Typed, print};

rule! {
    "float-never-trips" "Level float does not follow the interface", OilZone;
    looks "For every oil the share of the float that hangs in the water, which must be above zero, and its net forces down in oil and up in water, which must be 0.05 N or more."
    matters "A float as light as the oil stays on top of it and never sinks with the interface; one with hardly any force sticks on its stem. The alarm stays silent."
    remedy "A float whose density lies midway between the heaviest oil in the cold and the lightest water, or a probe that tells oil from water."
    source "Hydrostatics; 0.05 N for switch and cable is our proposal"
    limits "A float of 0.3 L is assumed; fouled stems need more force. Salt or glycol makes the water heavier."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return Verdict::skips("no unit was laid out") };
    let weaker = |l: &stillrise_design::performance::levels::OilLevels| {
        if l.float.down.q < l.float.up.q { l.float.down } else { l.float.up }
    };
    let worst = performance.levels.iter().min_by(|a, b| weaker(a).q.si().total_cmp(&weaker(b).q.si()));
    let Some(oil) = worst else { return Verdict::skips("no oil is lighter than the water") };
    let (name, float) = (&oil.oil, &oil.float);
    let force = weaker(oil);
    let (shown, least) = (s.show(force.q, (&LBF, &NEWTON)), Force::of(0.05, &NEWTON));
    if float.submerged.q.si() <= 0.0 {
        return Verdict::fails(
            format!("the float is no heavier than {name}: it stays on the oil and never trips"),
            float.submerged.at,
        );
    }
    if float.up.q.si() <= 0.0 {
        return Verdict::fails(
            "the float is no lighter than the warmest water: it sinks and always trips",
            float.up.at,
        );
    }
    let wanted = s.show(least, (&LBF, &NEWTON));
    let way = if float.down.q < float.up.q { format!("down in {name}") } else { "up in the warmest water".to_owned() };
    if force.q < least {
        return Verdict::fails(format!("the float is moved {way} by {shown} only, {wanted} are wanted"), force.at);
    }
    let share = print::digits(PERCENT.from_si(float.submerged.q.si()), 3);
    Verdict::passes(format!(
        "the float is moved {way} by {shown}, {wanted} are wanted; {share} % of it hang in the water"
    ))
}
