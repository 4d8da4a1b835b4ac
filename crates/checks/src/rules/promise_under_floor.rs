//! Rule: promise under the published floor

use crate::ask::LIMIT;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::limits::LimitState;
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_design::performance::promise::floor;
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed};

rule! {
    "promise-under-floor" "Promise under the published floor", Effluent;
    client "The limit is lower than what published experience lets anyone promise of a separator."
    looks "What a limit on oil demands (its number, or the long-term mean behind an average) against the published practical floor of plate units, where the water arrives with more than is demanded. Where no limit is stated, or the water's oil is assumed in a range that reaches there, it cannot judge."
    matters "No publication lets a plate unit be promised below the floor. A lower number that a formula prints is no evidence."
    remedy "A polisher behind the separator, or measured results of this unit on this water."
    source "UFGS 44 42 53: 10 mg/L, practical floor of a parallel-plate unit under ideal conditions"
    limits "The floor is for ideal conditions; real ones lie above it. Limits by rig test are left to the test."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let demanded = |l: &LimitState| l.mean.unwrap_or(l.value);
    let oily =
        basis.limits.iter().filter(|l| l.pollutant.gravity == Gravity::Touches && l.statistic.q != Statistic::RigTest);
    let Some(limit) = oily.min_by(|a, b| demanded(a).q.si().total_cmp(&demanded(b).q.si())) else {
        return if basis.limits.is_empty() {
            Verdict::cannot_judge("no limit is stated to hold against the published floor", [LIMIT], None)
        } else {
            Verdict::skips("no limit is one on oil that a calculation could keep")
        };
    };
    let contents = basis.cases.iter().filter_map(|c| c.content.as_ref());
    let Some(most) = contents.max_by(|a, b| a.total.q.si().total_cmp(&b.total.q.si())) else {
        return s.stopped();
    };
    let (floor, demand) = (floor(), demanded(limit));
    let show = |q| s.show(q, (&MG_L, &MG_L));
    let what = match limit.mean {
        Some(_) => format!("{}, {} of {}, demands a long-term mean of", limit.title(), limit.statistic.q.word(), show(limit.value.q)),
        None => format!("{}, {}, demands", limit.title(), limit.statistic.q.word()),
    };
    let says = format!(
        "{what} {}; the published floor is {}, and {} arrive",
        show(demand.q),
        show(floor),
        show(most.total.q)
    );
    let keeps = |arrives: Concentration| demand.q >= floor || arrives <= demand.q;
    if keeps(most.total.q) {
        s.rests_on(&says, most.total, (&MG_L, &MG_L), keeps).unwrap_or_else(|| Verdict::passes(says))
    } else {
        Verdict::fails(says, demand.at)
    }
}
