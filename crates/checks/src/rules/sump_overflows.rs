//! Rule: more arrives than the pumps lift

use super::pump_above_rating::{above, running};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::cases::{Case, Kind};
use stillrise_units::Typed;
use stillrise_units::catalog::{GPM, M3_H};

rule! {
    "sump-overflows" "More arrives than the pumps lift", Inlet;
    looks "What arrives in each case against the mean flow of the pumps that run together: a steady water above it fails, the rate of a spill above it warns."
    matters "The sump fills, and oily water leaves by a way that nobody designed."
    remedy "Larger pumps and a unit to match, equalisation ahead of the pumps, or less water to them; see the first size under the stages asked for."
    source "Continuity; needs no authority"
    limits "The sump's own volume is not known and not counted; a short peak may fit into it."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return Verdict::skips("there is no basis") };
    if !basis.feed.pumped {
        return Verdict::skips("the water runs by gravity");
    }
    let Some(pumps) = running(&basis.feed) else { return Verdict::skips("no pump's rate is stated") };
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
    match water.or(spill) {
        Some(case) => Verdict::passes(says(case)),
        None => Verdict::skips("what arrives at the pumps is not stated"),
    }
}
