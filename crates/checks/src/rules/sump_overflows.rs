//! Rule: more arrives than the pumps lift

use super::pump_above_rating::{above, pumped, rate_unknown, running};
use crate::ask::{SPILL_RATE, WATERS};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::cases::{Case, Kind};
use stillrise_units::Typed;
use stillrise_units::catalog::{GPM, M3_H};

rule! {
    "sump-overflows" "More arrives than the pumps lift", Inlet;
    client "More water can arrive than the pumps lift; the rest backs up ahead of them."
    looks "What arrives in each case against the mean flow of the pumps that run together: a steady water above it fails, the rate of a spill above it warns. Where feed, rate of the pumps, waters or the rate of a declared spill were not said, it cannot judge."
    matters "The sump fills, and oily water leaves by a way that nobody designed."
    remedy "Equalisation ahead of the pumps, less water to them, or larger pumps and a unit to match where there is room."
    source "Continuity; needs no authority"
    limits "The sump's own volume is not known and not counted; a short peak may fit into it."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    if let Err(verdict) = pumped(s) {
        return verdict;
    }
    let Some(pumps) = running(&basis.feed) else { return rate_unknown(s) };
    // A case made from the pumps' own flow says nothing of what arrives.
    let stated = s.enquiry.stated.flow.is_given();
    let arrives = |c: &&Case| c.kind != Kind::Stated || stated;
    let most = |spill: bool| {
        let cases = basis.cases.iter().filter(arrives).filter(|c| (c.kind == Kind::Spill) == spill);
        cases.max_by(|a, b| a.inflow.q.si().total_cmp(&b.inflow.q.si()))
    };
    let says = |c: &Case| {
        let show = |q| s.show(q, (&GPM, &M3_H));
        format!("{}: {} arrive, and the pumps lift {}", c.event, show(c.inflow.q), show(pumps.q))
    };
    let (water, spill) = (most(false), most(true));
    if let Some(case) = water.filter(|c| above(c.inflow.q, pumps.q)) {
        return Verdict::fails(says(case), case.inflow.at);
    }
    if let Some(case) = spill.filter(|c| above(c.inflow.q, pumps.q)) {
        return Verdict::warns(format!("{}, unless the sump holds the rest of the spill", says(case)), case.inflow.at);
    }
    let lift = s.show(pumps.q, (&GPM, &M3_H));
    let Some(water) = water else {
        return Verdict::cannot_judge(
            format!("the pumps lift {lift}; what arrives at them was not said"),
            [WATERS],
            pumps.at,
        );
    };
    if let Some(declared) = basis.spill.as_ref().filter(|spill| spill.rate.is_none()) {
        let says = format!("{}; at which rate a spill arrives was not said", says(water));
        return Verdict::cannot_judge(says, [SPILL_RATE], declared.volume.at);
    }
    Verdict::passes(says(water))
}
