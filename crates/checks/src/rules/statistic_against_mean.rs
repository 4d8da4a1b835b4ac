//! Rule: limit read without its statistic

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_design::performance::limit;
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_units::catalog::MG_L;

rule! {
    "statistic-against-mean" "Limit against the scatter of results", Effluent;
    looks "A limit whose number the expected mean keeps while it lies above the long-term mean that the statistic asks for; and limits that state no statistic at all."
    matters "Samples scatter. An effluent that runs at the number of its limit misses it in many months."
    remedy "Hold the unit against the long-term mean; ask for the statistic, and for effluent data that show the scatter."
    source "US EPA, Technical Support Document for Water Quality-based Toxics Control, 1991: log-normal scatter, 95th percentile for averages, 99th for single samples"
    limits "Coefficient of variation and number of samples are often assumed, and the mean is that of the worst case, which not all days are. The verdict on a single sample's limit goes by the worst case at a peak of the influent, not by this percentile."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return Verdict::skips("there is no basis") };
    if basis.limits.is_empty() {
        return Verdict::skips("no limit is stated");
    }
    let show = |q| s.show(q, (&MG_L, &MG_L));
    let mut at = None;
    let mut says = Vec::new();
    for block in s.enquiry.limits.iter().filter(|l| l.value.is_given() && l.statistic.0.is_none()) {
        let value = block.value.q().map(show).unwrap_or_default();
        says.push(format!("{} {value}: no statistic is stated", block.pollutant.as_deref().unwrap_or("a limit")));
    }
    let mut kept = Vec::new();
    if let Some((performance, worst)) = s.design.performance.as_ref().and_then(|p| Some((p, p.worst()?))) {
        for verdict in &performance.limits {
            let Some(limit) = basis.limits.get(verdict.limit) else { continue };
            let Some(scatter) = &limit.scatter else { continue };
            let mean = scatter.mean;
            if limit.pollutant.gravity != Gravity::Touches {
                continue;
            }
            let what = match limit.statistic.q {
                Statistic::MonthlyAverage => "the average",
                _ => "a limit on single samples",
            };
            // What may be promised, as in the report: nothing below the published floor.
            let promised = verdict.keeps.map_or(verdict.mean.q, |k| k.mean.q);
            let expected = limit::shown(verdict.mean.q, worst.content.total.q);
            let text = format!(
                "{}: on the mean {expected}; {what} of {} asks for a long-term mean of {}, if results scatter with a coefficient of variation of {}",
                limit.pollutant.title,
                show(limit.value.q),
                show(mean.q),
                stillrise_units::print::digits(stillrise_units::Typed::si(scatter.variation.q), 3)
            );
            if promised > mean.q && promised <= limit.value.q {
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
