//! Rule: float off best

use super::float_never_trips::usual_float;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::Typed;
use stillrise_units::catalog::{LBF, NEWTON};

rule! {
    "float-off-best" "Level float far from its best density", OilZone;
    client "The float of the alarm has little force in reserve and may stick when it is dirty."
    looks "The weaker of the float's two forces, down in the heaviest oil and up in the warmest water, against half their sum, which the best density gives both ways: less than half of that warns. A unit that does not say what its float weighs cannot be judged."
    matters "The weaker force decides whether the float moves when its stem is fouled; a float midway between oil and water has the most in reserve."
    remedy "A float whose density lies midway between the heaviest oil in the cold and the lightest water."
    source "Hydrostatics; half of the best force is our proposal"
    limits "Where the densities are far apart, even a float off the best has force enough."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let heaviest = performance.levels.iter().min_by(|a, b| a.float.down.q.si().total_cmp(&b.float.down.q.si()));
    let Some(oil) = heaviest else { return Verdict::skips("no oil is lighter than the water") };
    let (down, up) = (oil.float.down, oil.float.up);
    let weaker = if down.q < up.q { down } else { up };
    let best = (down.q + up.q) / 2.0;
    if weaker.q.si() <= 0.0 {
        return Verdict::skips("the float does not ride the interface at all");
    }
    let (has, could) = (s.show(weaker.q, (&LBF, &NEWTON)), s.show(best, (&LBF, &NEWTON)));
    let says = format!("the float's weaker force is {has}; the best density for {} gives {could}", oil.oil);
    if weaker.q < best / 2.0 {
        Verdict::warns(says, weaker.at)
    } else {
        usual_float(s, &says).unwrap_or_else(|| Verdict::passes(says))
    }
}
