//! The study as JSON.

use super::sentences;
use crate::result::arg;
use serde_json::{Value, json};
use stillrise_search::Settled;
use stillrise_search::risk::inputs::{Input, Range};
use stillrise_search::risk::{Governs, Risk, Spread};
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed};

/// The study as a JSON value; numbers in SI where no unit stands beside them.
#[must_use]
pub fn risk_json(settled: &Settled, risk: &Risk) -> Value {
    let (basis, performance) = (settled.job.design.basis.as_ref(), settled.job.design.performance.as_ref());
    json!({
        "samples": risk.samples,
        "stopped": risk.stopped,
        "rows_for_shares": risk.rows,
        "says": sentences(settled, risk),
        "shares_of": match risk.governs {
            Governs::Limit(k) => json!({ "limit": k, "pollutant": basis.map(|b| b.limits[k].pollutant.word) }),
            Governs::Effluent => json!("total oil out in the worst case"),
        },
        "total_oil_out": {
            "unit": "mg/L",
            "ideal": spread(&risk.rungs[0]), "expected": spread(&risk.rungs[1]), "mixed": spread(&risk.rungs[2]),
            "mesh_counted": risk.with_mesh.as_ref().map(spread),
        },
        "free_oil_out": spread(&risk.free),
        "cases": risk.cases.iter().map(|(case, s)| json!({ "case": case, "total_oil_out": spread(s) })).collect::<Vec<_>>(),
        "limits": risk.limits.iter().map(|l| json!({
            "pollutant": basis.map(|b| b.limits[l.limit].pollutant.word),
            "held": spread(&l.held), "against": performance.and_then(|p| p.limits.iter().find(|v| v.limit == l.limit)).map(|v| mg_l(v.against.q)),
            "kept": l.kept, "kept_if_mixed": l.kept_mixed,
        })).collect::<Vec<_>>(),
        "carriers": risk.carriers.iter().map(|c| {
            let mut value = input(&c.input);
            value["first"] = json!(c.share.first);
            value["total"] = json!(c.share.total);
            value
        }).collect::<Vec<_>>(),
        "swings": risk.swings.iter().map(|s| json!({
            "input": input(&s.input), "ends": s.ends.each_ref().map(arg), "total_oil_out": s.effluent.map(|c| c.map(mg_l)),
        })).collect::<Vec<_>>(),
        "idle": risk.idle.iter().map(input).collect::<Vec<_>>(),
        "caution": crate::summary::CAUTION,
    })
}

fn mg_l(c: Concentration) -> f64 {
    MG_L.from_si(c.si())
}

fn spread(s: &Spread) -> Value {
    json!({ "p05": mg_l(s.low), "median": mg_l(s.median), "p95": mg_l(s.high), "mean": mg_l(s.mean) })
}

fn input(i: &Input) -> Value {
    let range = match &i.range {
        Range::Number { low, likely, high, distribution } => {
            json!({ "low": low, "likely": likely, "high": high, "distribution": distribution.word() })
        }
        Range::Words(words) => json!({ "words": words.iter().map(arg).collect::<Vec<_>>() }),
    };
    json!({ "key": i.key, "label": i.label, "si_unit": i.units.map(|(_, si)| si.dim.coherent().symbol), "now": arg(&i.now), "range": range, "assumed": i.assumed })
}
