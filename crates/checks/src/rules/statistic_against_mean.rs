//! Rule: limit read without its statistic

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_design::performance::limit;
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_units::catalog::MG_L;

rule! {
    "statistic-against-mean" "Limit read without its statistic", Effluent;
    looks "A monthly average whose number the expected effluent keeps while it is above the long-term mean that the average demands; and limits that state no statistic at all."
    matters "Samples scatter. An effluent that runs at the number of its limit misses it in many months."
    remedy "Hold the unit against the long-term mean; ask for the statistic, and for effluent data that show the scatter."
    source "US EPA, Technical Support Document for Water Quality-based Toxics Control, 1991: log-normal scatter, 95th percentile for averages"
    limits "Coefficient of variation and number of samples are often assumed. A daily maximum is held against the worst case, not against a percentile."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return Verdict::skips("there is no basis") };
    if basis.limits.is_empty() {
        return Verdict::skips("no limit is stated");
    }
    let show = |q| s.show(q, (&MG_L, &MG_L));
    let mut at = None;
    let mut says = Vec::new();
    for block in s.enquiry.limits.iter().filter(|l| l.statistic.0.is_none()) {
        let value = block.value.q().map(show).unwrap_or_default();
        says.push(format!("{} {value}: no statistic is stated", block.pollutant.as_deref().unwrap_or("a limit")));
    }
    let mut kept = Vec::new();
    if let Some((performance, worst)) = s.design.performance.as_ref().and_then(|p| Some((p, p.worst()?))) {
        for verdict in &performance.limits {
            let Some(limit) = basis.limits.get(verdict.limit) else { continue };
            let Some(mean) = limit.mean.filter(|_| limit.statistic.q == Statistic::MonthlyAverage) else { continue };
            if limit.pollutant.gravity != Gravity::Touches {
                continue;
            }
            let expected = limit::shown(verdict.expected.q, worst.content.total.q);
            let text = format!(
                "{}: {expected} expected; the average of {} demands a long-term mean of {}",
                limit.pollutant.title,
                show(limit.value.q),
                show(mean.q)
            );
            if verdict.expected.q > mean.q && verdict.expected.q <= limit.value.q {
                at = at.or(Some(mean.at));
                says.push(text);
            } else {
                kept.push(text);
            }
        }
    }
    if !says.is_empty() {
        return Verdict::warns(says.join("; "), at);
    }
    kept.insert(0, format!("{} of {} limits name their statistic", basis.limits.len(), basis.limits.len()));
    Verdict::passes(kept.join("; "))
}
