//! Rule: oil holding tank too small

use crate::ask::SPILL;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{D, GAL, M3};
use stillrise_units::{Typed, print};

rule! {
    "oil-tank-too-small" "Oil holding tank too small", Unit;
    client "The tank for the oil is too small for what the unit sends it, or for a spill."
    looks "The room of the oil holding tank, when it is empty, against one routine draw-off of all units and against what of the spill reaches them: less than either warns. Where nobody spoke of a spill it cannot judge."
    matters "Oil that the tank does not take stays in the separator, up to the alarm and beyond; after a spill the unit has no room again until it is drawn off."
    remedy "A larger tank, a tanker that is called for a spill, or a draw-off at a thinner layer."
    source "Volumes of tank and layers; needs no authority"
    limits "The tank is taken to be empty before: what stands in it is room that a spill does not find."
}

fn look(s: &Subject<'_>) -> Verdict {
    if s.enquiry.oil_tank.is_none() {
        return Verdict::skips("no oil holding tank is stated");
    }
    let (Some(basis), Some(train)) = (&s.design.basis, &s.design.train) else { return s.stopped() };
    let Some(tank) = &train.around.oil_tank else { return s.stopped() };
    let room = s.show(tank.room.q, (&GAL, &M3));
    let lasts = tank.days.map_or_else(String::new, |days| {
        format!(", full after {} by the oil that is reckoned", s.show(days.q, (&D, &D)))
    });
    if let Some(draws) = tank.draws.filter(|draws| draws.q.si() < 1.0) {
        let share = print::digits(100.0 * draws.q.si(), 3);
        let says = format!("the tank takes {room}, {share} % of one routine draw-off of all units");
        return Verdict::warns(says, draws.at);
    }
    match (&basis.spill, tank.spare) {
        (Some(spill), Some(spare)) if spare.q.si() < 0.0 => {
            let spill = s.show(spill.at_unit().q, (&GAL, &M3));
            Verdict::warns(format!("the tank takes {room} when it is empty, less than the {spill} of the spill"), spare.at)
        }
        (Some(_), Some(spare)) => {
            let left = s.show(spare.q, (&GAL, &M3));
            Verdict::passes(format!("the tank takes {room}{lasts}; with the spill in it there is room for {left} more"))
        }
        _ => {
            let says = format!("the tank takes {room}{lasts}; whether a spill must go into it was not said");
            Verdict::cannot_judge(says, [SPILL], tank.room.at)
        }
    }
}
