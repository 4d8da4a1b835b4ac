//! Rule: limit read without its statistic

use crate::ask::{Ask, LIMIT};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_design::performance::promise::Promise;
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_units::catalog::MG_L;

rule! {
    "statistic-against-mean" "Limit against the scatter of results", Effluent;
    client "Single results scatter: to keep the limit nearly always, what leaves has to lie well below it on average."
    looks "A limit whose number the expected mean keeps while it lies above the long-term mean that the statistic asks for; it warns. A limit that states no statistic, or none at all, cannot be judged."
    matters "Samples scatter. An effluent that runs at the number of its limit misses it in many months."
    remedy "Hold the unit against the long-term mean; ask for the statistic, and for effluent data that show the scatter."
    source "US EPA, Technical Support Document for Water Quality-based Toxics Control, 1991: log-normal scatter, 95th percentile for averages, 99th for single samples"
    limits "Coefficient of variation and number of samples are often assumed, and the mean is that of the worst case, which not all days are. The verdict on a single sample's limit goes by the worst case at a peak of the influent, not by this percentile."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    if basis.limits.is_empty() {
        return Verdict::cannot_judge("no limit is stated that could be looked at", [LIMIT], None);
    }
    let show = |q| s.show(q, (&MG_L, &MG_L));
    let mut at = None;
    let mut says = Vec::new();
    let silent = s.enquiry.limits.iter().filter(|l| l.value.is_given() && l.statistic.0.is_none()).map(|block| {
        let value = block.value.q().map(show).unwrap_or_default();
        format!("{} {value}: no statistic is stated", block.pollutant.as_deref().unwrap_or("a limit"))
    });
    let silent: Vec<String> = silent.collect();
    let mut kept = Vec::new();
    if let Some((performance, worst)) = s.design.performance.as_ref().and_then(|p| Some((p, p.worst()?))) {
        for verdict in &performance.limits {
            let Some(limit) = basis.limits.get(verdict.limit) else { continue };
            let Some(scatter) = &limit.scatter else { continue };
            let mean = scatter.mean;
            if limit.pollutant.gravity != Gravity::Touches || s.assumed(limit.statistic.at).is_some() {
                continue;
            }
            let what = match limit.statistic.q {
                Statistic::MonthlyAverage => "the average",
                _ => "a limit on single samples",
            };
            // What may be promised, as in the report: nothing below the published floor.
            let promised = verdict.keeps.map_or(verdict.mean.q, |k| k.mean.q);
            let expected = Promise::of(verdict.mean.q, worst.content.total.q).sentence();
            let text = format!(
                "{}: on the mean {expected}; {what} of {} asks for a long-term mean of {}, if results scatter with a coefficient of variation of {}",
                limit.title(),
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
    if !silent.is_empty() {
        let asks: Vec<Ask> = basis.limits.iter().flat_map(|l| s.asked(l.statistic.at)).collect();
        return Verdict::cannot_judge(silent.join("; "), asks, None);
    }
    if s.design.performance.is_none() {
        return s.stopped();
    }
    kept.insert(0, format!("{} of {} limits name their statistic", basis.limits.len(), basis.limits.len()));
    Verdict::passes(kept.join("; "))
}
