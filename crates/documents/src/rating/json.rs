//! The rating as JSON.

use super::{larger, together};
use serde_json::{Value, json};
use stillrise_search::Settled;
use stillrise_search::diagnosis::{Diagnosis, Explanation};
use stillrise_units::catalog::{DEG_C, M3_H, MG_L};
use stillrise_units::{Concentration, Typed};

/// The rating as a JSON value: mg/L, m3/h and °C; sizes of causes in SI.
#[must_use]
pub fn rating_json(settled: &Settled, d: &Diagnosis) -> Value {
    let system = settled.job.enquiry.system();
    let mg_l = |c: Concentration| MG_L.from_si(c.si());
    let explanation = |e: &Explanation| {
        json!({
            "weight": e.weight,
            "says": together(e, system),
            "causes": e.causes.iter().map(|s| json!({ "cause": s.cause.id, "size_si": s.size })).collect::<Vec<_>>(),
            "oil_out": e.effluent.iter().map(|c| c.map(mg_l)).collect::<Vec<_>>(),
            "oil_out_with_twice_the_area": e.larger.iter().map(|c| c.map(mg_l)).collect::<Vec<_>>(),
        })
    };
    json!({
        "headline": crate::summary::headline(settled),
        "fails": settled.verdicts.iter().filter(|j| j.stands_failed()).map(|j| json!({ "rule": j.rule.id, "says": j.verdict.says() })).collect::<Vec<_>>(),
        "observed": d.seen.iter().map(|s| json!({
            "occasion": s.name,
            "flow_m3_h": M3_H.from_si(s.flow.0.si()), "flow_measured": s.flow.1,
            "oil_in": mg_l(s.influent.0), "oil_in_measured": s.influent.1,
            "temperature_c": DEG_C.from_si(s.temperature.0.si()), "temperature_measured": s.temperature.1,
            "oil_out": s.measured.map(mg_l), "oil_out_expected": mg_l(s.expected),
            "oil_out_expected_within_basis": s.within.map(mg_l),
        })).collect::<Vec<_>>(),
        "beyond_basis": super::beyond(d),
        "explanations": d.explanations.iter().map(explanation).collect::<Vec<_>>(),
        "causes": d.causes.iter().map(|(c, w)| json!({ "cause": c.id, "title": c.title, "weight": w, "test": c.test, "cost": c.cost, "remedy": c.remedy })).collect::<Vec<_>>(),
        "next_test": d.next.map(|c| json!({ "cause": c.id, "test": c.test })),
        "larger_unit": { "helps": d.larger_helps(), "says": larger(d) },
        "sets": d.sets,
        "worked_in_trail": d.worked.iter().map(|at| at.and_then(stillrise_design::Node::index)).collect::<Vec<_>>(),
        "caution": crate::summary::CAUTION,
    })
}
