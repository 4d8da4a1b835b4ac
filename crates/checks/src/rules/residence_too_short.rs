//! Rule: residence too short

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::S;
use stillrise_units::{Time, Typed};

rule! {
    "residence-too-short" "Too little time in the unit", Unit;
    client "The water stays in the unit for a shorter time than trade experience asks for."
    looks "The water up to the crest over the largest steady flow through one unit: below 90 s it warns."
    matters "Trade experience finds oil carried out again from units with less water in them; surges pass through at once."
    remedy "A unit that holds more water, units in parallel, or equalisation ahead."
    source "French trade advice, {24 gal for each 16 gpm|90 L for each L/s} of nominal size; not a standard. API 421 and EN 858 give no time"
    limits "Time alone does not separate; rise and plate area do. Oil and sludge in the unit shorten it."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let worst = performance.removals.iter().min_by(|a, b| a.residence.q.si().total_cmp(&b.residence.q.si()));
    let Some(worst) = worst else { return s.stopped() };
    let least = Time::of(90.0, &S);
    let show = |t| s.show(t, (&S, &S));
    let says = format!("the water stays {} in the unit, {}", show(worst.residence.q), worst.case);
    if worst.residence.q < least {
        Verdict::warns(format!("{says}: below {}", show(least)), worst.residence.at)
    } else {
        Verdict::passes(format!("{says}, at least {}", show(least)))
    }
}
