//! Rule: salt in the water

use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::fluids::chemicals::{Effect, chemical};
use stillrise_units::catalog::{KG_M3, LB_FT3, PERCENT};
use stillrise_units::{Ratio, Typed};

rule! {
    "salt-in-water" "Salt in the water", Chamber;
    client "The water is salt: levels and float must be set for it, and bare steel corrodes."
    looks "Dissolved salt above 0.5 % by mass, or in a stream of its own too, or brine declared without saying how much salt comes with it. Where nobody spoke of salt it cannot judge."
    matters "Salt makes the water heavier: oil stands higher on it, a float rides higher, and levels set in fresh water are wrong. It corrodes steel."
    remedy "Set levels and float for both waters; choose materials for chloride."
    source "Hydrostatics; 0.5 %, some {0.25 lb/ft3|4 kg/m3}, is our proposal"
    limits "One salt content in all cases; a layer of brine below fresh melt water is not seen."
}

/// Salt, by mass, above which levels and floats are looked at again.
const SALTY: f64 = 0.5;

fn look(s: &Subject<'_>) -> Verdict {
    let salty = Ratio::of(SALTY, &PERCENT);
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let Some(salt) = s.enquiry.water.salinity.q() else {
        // A water with a salt content of its own is no water of which nothing was said.
        let own = s.enquiry.streams.iter().filter_map(|b| Some((b.name.as_deref()?, b.salinity.q()?)));
        if let Some((name, own)) = own.filter(|(_, own)| *own > salty).max_by(|a, b| a.1.si().total_cmp(&b.1.si())) {
            let says = format!(
                "{name} carries {} salt as stated; of the other water nothing was said, and {} were taken",
                s.show(own, (&PERCENT, &PERCENT)),
                s.show(basis.fluids.salinity.q, (&PERCENT, &PERCENT))
            );
            return Verdict::warns(says, basis.fluids.salinity.at);
        }
        let kinds = s.enquiry.chemicals.iter().filter_map(|c| c.kind.as_deref().and_then(chemical));
        let taken = basis.fluids.salinity;
        return match kinds.into_iter().find(|c| c.effect == Effect::ShiftsDensity) {
            Some(row) => {
                Verdict::warns(format!("{} declared, and the salt content of the water is not stated", row.title), None)
            }
            None => {
                let says = format!(
                    "no salt is stated; {} were taken, and {} are looked for",
                    s.show(taken.q, (&PERCENT, &PERCENT)),
                    s.show(salty, (&PERCENT, &PERCENT))
                );
                Verdict::cannot_judge(says, s.asked(taken.at), taken.at)
            }
        };
    };
    let show = |q| s.show(q, (&LB_FT3, &KG_M3));
    let float =
        s.design.train.as_ref().map(|t| format!(", float {}", show(t.unit.retention.float_density.q))).unwrap_or_default();
    let water = basis.fluids.cold.density;
    let says = format!(
        "{} salt: water of {} cold, {} warm{float}",
        s.show(salt, (&PERCENT, &PERCENT)),
        show(water.q),
        show(basis.fluids.warm.density.q)
    );
    if salt > salty { Verdict::warns(says, water.at) } else { Verdict::passes(says) }
}
