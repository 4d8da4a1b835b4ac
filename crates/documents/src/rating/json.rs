//! The rating as JSON.

use super::words::change;
use super::{larger, together, words};
use serde_json::{Value, json};
use stillrise_search::Settled;
use stillrise_search::diagnosis::{Diagnosis, Explanation, Step};
use stillrise_units::catalog::{DEG_C, H, M3, M3_H, MG_L};
use stillrise_units::{Concentration, Typed};

/// The rating as a JSON value: mg/L, m3/h and °C; sizes of causes in SI.
#[must_use]
pub fn rating_json(settled: &Settled, d: &Diagnosis) -> Value {
    let mg_l = |c: Concentration| MG_L.from_si(c.si());
    let explanation = |e: &Explanation| {
        json!({
            "weight": e.weight,
            "says": together(settled, e),
            "causes": e.causes.iter().map(|s| json!({ "cause": s.cause.id.word(), "change": s.change, "size_si": s.size })).collect::<Vec<_>>(),
            "oil_out": e.effluent.iter().map(|c| c.map(mg_l)).collect::<Vec<_>>(),
            "oil_out_with_twice_the_area": e.larger.iter().map(|c| c.map(mg_l)).collect::<Vec<_>>(),
        })
    };
    let range = |r: Option<(Concentration, Concentration)>| r.map(|(low, high)| [mg_l(low), mg_l(high)]);
    let tells = |r: Option<(Concentration, Concentration)>| {
        let results = r.and_then(|r| d.telling(r)).map(|t| t.results);
        results.map(|r| json!({ "results": r.map(|r| r.0), "geometric_mean_below": r.map(|r| mg_l(r.1)) }))
    };
    let step = |s: &Step| {
        json!({
            "cause": s.cause.id.word(), "change": s.change, "weight": s.weight, "cost": s.cause.cost,
            "cost_says": words::cost(s.cause.cost), "test": super::test(d, s.cause, settled.job.enquiry.system()), "remedy": s.cause.remedy,
            "sample_again": {
                "water_m3": M3.from_si(s.again.water.si()),
                "running_h": s.again.running.map(|(_, time)| H.from_si(time.si())),
                "days": s.again.days,
            },
            "expect": range(s.expect), "tells": tells(s.expect),
            "says": words::step(settled, d, s),
        })
    };
    let enquiry = &settled.job.enquiry;
    let weight = |k: usize| d.changes.iter().find(|(at, _)| *at == k).map(|(_, w)| *w);
    json!({
        "headline": crate::summary::headline(settled),
        "fails": settled.verdicts.iter().filter(|j| j.stands_failed()).map(|j| json!({ "rule": j.rule.id, "says": j.verdict.says() })).collect::<Vec<_>>(),
        "observed": d.seen.iter().map(|s| (s, &s.observed)).map(|(s, o)| json!({
            "occasion": s.name,
            "date": o.date.0.map(|day| day.to_string()),
            "time": o.time.0.map(|_| o.time.to_string()),
            "regime": o.regime.0,
            "good": s.good,
            "flow_m3_h": M3_H.from_si(s.flow.0.si()), "flow_measured": s.flow.1, "flow_by_change": s.flow_by,
            "besides": words::seen_besides(o),
            "oil_in": mg_l(s.influent.0), "oil_in_measured": s.influent.1,
            "temperature_c": DEG_C.from_si(s.temperature.0.si()), "temperature_measured": s.temperature.1,
            "oil_out": s.measured.map(mg_l), "oil_out_detected": s.detected, "oil_out_expected": mg_l(s.expected),
            "oil_out_expected_within_basis": s.within.map(mg_l),
        })).collect::<Vec<_>>(),
        "step": d.jump.map(|j| json!({
            "last_before": j.last.to_string(), "first_after": j.first.to_string(),
            "ended": j.ended.map(|(last, low)| json!({ "last_high": last.to_string(), "first_low": low.to_string() })),
            "before": { "results": j.before.0, "geometric_mean": mg_l(j.before.1) },
            "after": { "results": j.after.0, "geometric_mean": mg_l(j.after.1) },
        })),
        "good_period": d.calibration.map(|c| json!({
            "samples": c.samples, "mean": mg_l(c.mean), "expected_before": mg_l(c.before), "expected_after": mg_l(c.after),
            "influent_over_basis": c.factors.influent, "median_droplet_over_basis": c.factors.median,
            "oil_out_over_chain": c.factors.rest, "scatter": c.scatter,
        })),
        "changes": enquiry.changes.iter().enumerate().map(|(k, c)| json!({
            "change": k, "date": c.date.0.map(|day| day.to_string()), "says": change(settled, k), "weight": weight(k),
        })).collect::<Vec<_>>(),
        "beyond_basis": super::beyond(d),
        "explanations": d.explanations.iter().map(explanation).collect::<Vec<_>>(),
        "causes": d.causes.iter().map(|(c, w)| json!({ "cause": c.id.word(), "title": c.title, "weight": w, "test": c.test, "cost": c.cost, "remedy": c.remedy })).collect::<Vec<_>>(),
        "steps": d.steps.iter().map(step).collect::<Vec<_>>(),
        "all_put_right": range(d.as_it_ran), "all_put_right_tells": tells(d.as_it_ran),
        "next_test": d.next.map(|c| json!({ "cause": c.id.word(), "test": c.test })),
        "larger_unit": { "helps": d.leading().and_then(|lead| d.larger_helps(lead)), "says": larger(settled, d).join(" ") },
        "sets": d.sets,
        "worked_in_trail": d.worked.iter().map(|at| at.and_then(stillrise_design::Node::index)).collect::<Vec<_>>(),
        "caution": crate::summary::CAUTION,
    })
}
