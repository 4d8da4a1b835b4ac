//! Rule: emulsion above the limit

use crate::ask::LIMIT;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::limits::LimitState;
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_design::basis::passing::{Passing, passing};
use stillrise_handbook::fluids::pollutants::{Counts, Gravity};
use stillrise_units::Typed;
use stillrise_units::catalog::MG_L;

rule! {
    "emulsion-above-limit" "Emulsified and dissolved oil above the limit", Effluent;
    client "The oil that cannot rise, finely emulsified or dissolved, is by itself above the limit."
    looks "Emulsified and dissolved oil of each case, oil as heavy as the water among it, against each limit on oil: at the peak of the influent for a single sample, on the mean for an average. Where no limit is stated it cannot judge."
    matters "Both pass any separator. If they alone are above the limit, no plate area keeps it."
    remedy "Less detergent, a quick-break cleaner and time to break, no shear; or a stage behind the separator that takes emulsions."
    source "Gravity removes free oil only: MIL-HDBK-1005/9A, 1997; the comparison is arithmetic"
    limits "Shares of emulsified oil are often assumed. Methods of analysis see dissolved oil in part only; all of it is counted. Limits on free oil, on sheen and by rig test are left out."
}

/// A limit whose number counts emulsified and dissolved oil.
fn counts(l: &&LimitState) -> bool {
    l.pollutant.gravity == Gravity::Touches
        && l.pollutant.counts == Counts::AllOil
        && l.statistic.q != Statistic::RigTest
}

/// What passes over what is allowed.
fn over_of(p: &Passing) -> f64 {
    p.total.si() / p.against.si()
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let limits: Vec<&LimitState> = basis.limits.iter().filter(counts).collect();
    if limits.is_empty() {
        return if basis.limits.is_empty() {
            Verdict::cannot_judge("no limit is stated to hold the prediction against", [LIMIT], None)
        } else {
            Verdict::skips("no limit counts emulsified oil")
        };
    }
    let contents = basis.cases.iter().filter_map(|c| c.content.as_ref().map(|content| (c, content)));
    let pairs = contents.flat_map(|(case, content)| {
        let held = limits.iter().filter(|limit| case.is_held_against(limit));
        held.map(move |limit| (case, content, limit, passing(limit, case, content)))
    });
    // Of several alike the first.
    let worst = pairs.reduce(|a, b| if over_of(&b.3) > over_of(&a.3) * (1.0 + 1e-9) { b } else { a });
    let Some((case, content, limit, found)) = worst else { return s.stopped() };
    let show = |q| s.show(q, (&MG_L, &MG_L));
    let average = limit.statistic.q == Statistic::MonthlyAverage;
    // Oil as heavy as the water is no emulsion, and no cleaner or pump makes it one.
    let fixed = if content.heavy.is_some_and(|heavy| heavy.q > content.emulsified.q * 1e-3) {
        format!("{} emulsified or as heavy as the water, of which no cleaner makes the heavy part rise,", show(found.fixed))
    } else {
        format!("{} emulsified", show(found.fixed))
    };
    let says = format!(
        "{}{}: {fixed} and {} dissolved, {} together, against {} {}",
        case.event,
        if found.at_peak { ", the influent at its peak" } else { "" },
        show(found.dissolved),
        show(found.total),
        show(found.against),
        if average && limit.mean.is_some() { "of long-term mean demanded" } else { "of the limit" }
    );
    if found.total > found.against {
        // The client has to hear of each limit that it breaks.
        let others: Vec<String> = limits
            .iter()
            .filter(|other| !core::ptr::eq(**other, *limit))
            .filter_map(|other| {
                let most = basis.cases.iter().filter(|c| c.is_held_against(other));
                let found = most.filter_map(|c| Some(passing(other, c, c.content.as_ref()?)));
                let most = found.reduce(|a, b| if over_of(&b) > over_of(&a) { b } else { a })?;
                (most.total > most.against).then(|| format!("{} against {}", show(most.total), show(most.against)))
            })
            .collect();
        let says = if others.is_empty() { says } else { format!("{says}; of other limits {}", others.join(", ")) };
        Verdict::fails(says, content.emulsified.at)
    } else {
        Verdict::passes(says)
    }
}
