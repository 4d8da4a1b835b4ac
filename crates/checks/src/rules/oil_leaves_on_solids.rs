//! Rule: oil leaves on the solids

use super::hopper_missing::most_solids;
use crate::ask::{LIMIT, OIL_ON_SOLIDS};
use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_design::performance::promise::solids;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed};

rule! {
    "oil-leaves-on-solids" "Oil leaves on the solids", Effluent;
    client "Oil that sticks to fine solids leaves with them, and a sample counts it."
    looks "The oil on the solids that leave against the tightest limit on oil: more than a twentieth of it warns, more than all of it fails. Where nobody said whether oil clings to them, or no limit is stated, it cannot judge."
    matters "An extraction counts that oil too; it stands in none of the other lines, and plates do not catch it."
    remedy "Keep oily grit out, or a filter behind the separator; have the sample's solids analysed apart."
    source "Mass balance; that extraction counts it, EPA method 1664; a twentieth is our proposal"
    limits "Grains of the declared sizes that do not flock; silt and clay pass, and units in service keep far less of all suspended solids. Solids as stated are grain and oil together; clean unit, mean over the waters; one share of oil for all grains."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(basis), Some(performance)) = (&s.design.basis, &s.design.performance) else {
        return s.stopped();
    };
    if most_solids(basis).is_some_and(|solids| solids.q.si() <= 0.0) {
        return Verdict::skips("the water carries no solids");
    }
    let show = |c| s.show(c, (&MG_L, &MG_L));
    let out = performance.storage.solids_out;
    let Some(oil) = performance.storage.oil_on_solids else {
        let says = format!("{} of solids leave by the calculation; whether oil clings to them was not said", solids(out.q));
        return Verdict::cannot_judge(says, [OIL_ON_SOLIDS], out.at);
    };
    let limits = basis.limits.iter().filter(|l| l.pollutant.gravity == Gravity::Touches);
    let tightest = limits.map(|l| l.value.q).reduce(|a: Concentration, b| if b < a { b } else { a });
    let says = format!("by the calculation {} of solids leave with {} of oil on them", solids(out.q), show(oil.q));
    match tightest {
        Some(limit) if oil.q > limit => {
            Verdict::fails(format!("{says}, more than the limit of {} by itself", show(limit)), oil.at)
        }
        Some(limit) if oil.q.si() > 0.05 * limit.si() => {
            Verdict::warns(format!("{says}, on top of all other oil, against a limit of {}", show(limit)), oil.at)
        }
        Some(limit) => Verdict::passes(format!("{says}, against a limit of {}", show(limit))),
        None if basis.limits.is_empty() => {
            Verdict::cannot_judge(format!("{says}; no limit is stated to hold it against"), [LIMIT], oil.at)
        }
        None => Verdict::skips("no limit is one on oil"),
    }
}
