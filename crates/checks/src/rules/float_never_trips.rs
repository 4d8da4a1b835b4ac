//! Rule: float never trips

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{KG_M3, LB_FT3, LBF, NEWTON, PERCENT};
use stillrise_units::{Force, Typed, print};

rule! {
    "float-never-trips" "Level float does not follow the interface", OilZone;
    client "The float of the alarm does not follow the oil, so the alarm would stay silent."
    looks "For every oil the share of the float that hangs in the water, which must be above zero, and its net forces down in oil and up in water, which must be {0.0112 lbf|0.05 N} or more. A unit that does not say what its float weighs cannot be judged."
    matters "A float as light as the oil stays on top of it and never sinks with the interface; one with hardly any force sticks on its stem. The alarm stays silent."
    remedy "A float whose density lies midway between the heaviest oil in the cold and the lightest water, or a probe that tells oil from water."
    source "Hydrostatics; {0.0112 lbf|0.05 N} for switch and cable is our proposal"
    limits "A float of {0.079 gal|0.3 L} is assumed; fouled stems need more force. Salt or glycol makes the water heavier."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
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
    let says = format!("the float is moved {way} by {shown}, {wanted} are wanted; {share} % of it hang in the water");
    usual_float(s, &says).unwrap_or_else(|| Verdict::passes(says))
}

/// Cannot judge, where the unit's row does not say how dense its float is and a usual one stands in.
pub(super) fn usual_float(s: &Subject<'_>, says: &str) -> Option<Verdict> {
    let unit = &s.design.train.as_ref()?.unit;
    if !unit.particulars.left_out.contains(&"float_density") {
        return None;
    }
    let density = unit.retention.float_density;
    let says =
        format!("the float's density is not stated; with a usual {}, {says}", s.show(density.q, (&LB_FT3, &KG_M3)));
    Some(Verdict::cannot_judge(
        says,
        [Ask::unit(s, "float_density", "What is the density of the level float?")],
        density.at,
    ))
}
