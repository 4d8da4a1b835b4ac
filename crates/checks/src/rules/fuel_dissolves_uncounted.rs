//! Rule: what dissolves of a light fuel is counted by no limit

use crate::ask::{OILS, oil_is_named};
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed};

rule! {
    "fuel-dissolves-uncounted" "What dissolves of a light fuel", Effluent;
    client "Benzene and its like dissolve out of a light fuel and pass any separator; the permit may limit them by name."
    looks "Whether an oil may come whose dissolved part a test of oil and grease hardly counts, and no limit counts it either. Where no oil was named it cannot judge."
    matters "Benzene, toluene and xylenes pass every gravity separator. A limit on oil and grease can be kept while they leave, and many permits for fuel sites limit them by name."
    remedy "Read the permit for benzene, for benzene with toluene, ethylbenzene and xylenes, and for gasoline range organics; where it limits them, air stripping, activated carbon or biological treatment behind the unit."
    source "EPA method 1664 on what is lost with the solvent; API publication 4531 and measured gasolines for what dissolves"
    limits "Sees named oils only. How much dissolves differs tenfold between gasolines."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let Some(fuel) = basis.fluids.oils.iter().find(|oil| oil.oil.extracted.is_some()) else {
        return if oil_is_named(s) {
            Verdict::passes("no oil is named whose dissolved part a test of oil and grease leaves out")
        } else {
            let says = "no oil was named; whether one comes whose dissolved part no test of oil and grease counts is open";
            Verdict::cannot_judge(says, [OILS], None)
        };
    };
    if let Some(limit) = basis.limits.iter().find(|l| l.pollutant.is_of_dissolved_fuel()) {
        return Verdict::passes(format!("{} may come, and a limit on {} counts it", fuel.name, limit.title()));
    }
    let show = |si: f64| s.show(Concentration::from_si(si), (&MG_L, &MG_L));
    let dissolved = &fuel.oil.dissolved;
    Verdict::warns(
        format!(
            "{} leaves {} to {} dissolved in water that has stood with it; it passes, a test of oil and grease hardly \
             counts it, and no limit on benzene or related aromatics was named",
            fuel.name,
            show(dissolved.low_si()),
            show(dissolved.high_si())
        ),
        fuel.density_15.at,
    )
}
