//! Rule: hopper missing

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::Val;
use stillrise_design::basis::Basis;
use stillrise_units::catalog::{GAL, M3, MG_L};
use stillrise_units::{Concentration, Typed};

rule! {
    "hopper-missing" "No hopper for sludge", Hopper;
    client "The unit has no hopper: sludge spreads over its floor, and it must be emptied whole."
    looks "Whether the unit has a hopper, where the water carries more than 50 mg/L of suspended solids: without one it warns. Without one, and with solids that are assumed, it cannot judge."
    matters "On a flat floor sludge spreads under the pack and is drawn off only by emptying the unit."
    remedy "A unit with a hopper, or a grit trap ahead and emptying by a vacuum truck."
    source "US military handbook MIL-HDBK-1005/16, 1997: flat bottoms are emptied by vacuum truck, sloped ones by pump; 50 mg/L is our proposal"
    limits "The solids are often assumed."
}

/// The most solids that any case carries.
pub(super) fn most_solids(basis: &Basis) -> Option<Val<Concentration>> {
    let solids = basis.cases.iter().filter_map(|c| c.content.as_ref()).map(|c| c.solids);
    solids.max_by(|a, b| a.q.si().total_cmp(&b.q.si()))
}

/// Solids above which plates and floor need a way for them.
pub(super) fn few_solids() -> Concentration {
    Concentration::of(50.0, &MG_L)
}

/// Cannot judge, where the solids are an assumption that may be few and may be many.
pub(super) fn unsure(s: &Subject<'_>, says: &str, solids: Val<Concentration>) -> Option<Verdict> {
    s.rests_on(says, solids, (&MG_L, &MG_L), |solids| solids <= few_solids())
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(train), Some(basis)) = (&s.design.train, &s.design.basis) else {
        return s.stopped();
    };
    let Some(solids) = most_solids(basis) else { return s.stopped() };
    let (carried, few) = (s.show(solids.q, (&MG_L, &MG_L)), s.show(few_solids(), (&MG_L, &MG_L)));
    let says = format!("the unit has no hopper; the water carries up to {carried} of solids");
    if let Some(hopper) = &train.unit.hopper {
        let volume = s.show(hopper.volume.q, (&GAL, &M3));
        Verdict::passes(format!("the hopper holds {volume}; the water carries up to {carried} of solids"))
    } else if let Some(doubt) = unsure(s, &says, solids) {
        doubt
    } else if solids.q > few_solids() {
        Verdict::warns(format!("{says}, more than {few}"), solids.at)
    } else {
        Verdict::passes(format!("{says}, at most {few}"))
    }
}
