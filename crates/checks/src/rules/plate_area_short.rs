//! Rule: plate area short

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::fluids::Season;
use stillrise_design::performance::removal::Removal;
use stillrise_units::catalog::{GPM_FT2, M_H, PERCENT, UM};
use stillrise_units::Typed;

rule! {
    "plate-area-short" "Plates too small for the design droplet, or with too little reserve", Pack, bars_pick;
    client "The plates have too little area for the droplet they are to catch, or too little in reserve."
    looks "The rise of the design droplet against the overflow rate of the plates, at the largest steady flow, coldest water, end of the interval: slower fails, a reserve of area below the one asked for warns."
    matters "Plates are sold by the droplet they catch. With less area than flow and rise ask for, droplets of that size pass."
    remedy "More or longer plates, units in parallel, less flow, or a coarser design droplet if the limit allows it."
    source "Surface loading, flow over projected area; the share lost to fouling follows UFGS 44 42 53; the reserve is our proposal"
    limits "Equal flow in all gaps; what unequal flow costs stands in the removal."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(basis), Some(performance)) = (&s.design.basis, &s.design.performance) else {
        return s.stopped();
    };
    let end = performance.removals.iter().filter(|r| r.season == Season::Cold && r.state.is_end());
    // Behind a pump all come alike: then the one that brings most.
    let comes = |r: &Removal| basis.cases.get(r.case_index).map_or(0.0, |case| case.inflow.q.si());
    let most = |a: &&Removal, b: &&Removal| {
        a.flow.q.si().total_cmp(&b.flow.q.si()).then(comes(a).total_cmp(&comes(b))).then(b.case_index.cmp(&a.case_index))
    };
    let Some(worst) = end.max_by(most) else {
        return s.stopped();
    };
    let Some(plates) = worst.passage.plates() else { return Verdict::skips("there are no plates") };
    let rise = performance.design_rise;
    if rise.q.si() <= 0.0 {
        return Verdict::skips("the heaviest oil does not rise in the coldest water");
    }
    let (rises, asked) = (s.show(rise.q, (&GPM_FT2, &M_H)), s.show(basis.methods.droplet.q, (&UM, &UM)));
    let says = format!(
        "droplets of {asked} rise {rises}, the plates are loaded {}; {}, coldest water, end of the interval",
        s.show(plates.v_0.q, (&GPM_FT2, &M_H)),
        worst.case
    );
    let reserve = rise.q.si() / plates.v_0.q.si() - 1.0;
    if reserve < 0.0 {
        return Verdict::fails(says, plates.v_0.at);
    }
    let wanted = basis.methods.reserve;
    let percent = |share: f64| format!("{} %", s.digits(PERCENT.from_si(share), 3));
    let has = format!("{says}; reserve of area {}, asked for {}", percent(reserve), percent(wanted.q.si()));
    if reserve < wanted.q.si() {
        Verdict::warns(format!("the area is enough, its reserve is not: {has}"), plates.v_0.at)
    } else {
        Verdict::passes(has)
    }
}
