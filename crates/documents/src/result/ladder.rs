//! The ladder of prediction as JSON.

use super::val;
use serde_json::{Value, json};
use stillrise_design::Node;
use stillrise_design::performance::ladder::{Band, Ladder};
use stillrise_design::provenance::Ledger;
use stillrise_units::System;

/// The ladder as a JSON value.
pub(super) fn ladder(ledger: &Ledger, l: &Ladder, system: System) -> Value {
    let v = |at: Node| val(ledger, at, system);
    let bands = |bands: &[Band]| -> Vec<Value> {
        bands
            .iter()
            .map(|b| {
                let left: serde_json::Map<String, Value> =
                    b.left.iter().zip(l.names()).map(|(left, stage)| (stage.to_owned(), v(left.at))).collect();
                json!({ "from": v(b.from.at), "to": v(b.to.at), "left_of_all_free_oil": left })
            })
            .collect()
    };
    json!({
        "bands": { "clean": bands(&l.bands[0]), "end of interval": bands(&l.bands[1]) },
        "grades": l.grades.iter().map(|g| json!({
            "d": v(g.d.at), "rise": v(g.rise.at), "left": v(g.left.at),
            "caught": g.caught.iter().zip(&l.stages).map(|(caught, stage)| ((*stage).to_owned(), v(caught.at))).collect::<serde_json::Map<String, Value>>(),
        })).collect::<Vec<_>>(),
        "total_oil_out": { "without_mesh": v(l.without_mesh.at), "with_mesh": l.with_mesh.map(|m| v(m.at)), "with_retention_zone": l.with_retention.map(|m| v(m.at)) },
        "free_left_behind_tank": l.tanks.iter().map(|(model, left)| json!({ "model": model.word(), "left": v(left.at) })).collect::<Vec<_>>(),
        "against_flow": l.by_flow.iter().map(|p| json!({ "flow": v(p.at.at), "free_oil_left": v(p.left.at), "total_oil_out": v(p.expected.at) })).collect::<Vec<_>>(),
        "against_temperature": l.by_temperature.iter().map(|p| json!({ "temperature": v(p.at.at), "free_oil_left": v(p.left.at), "total_oil_out": v(p.expected.at) })).collect::<Vec<_>>(),
        "against_median": l.by_median.iter().map(|p| json!({ "d50": v(p.at.at), "free_oil_left": v(p.left.at), "total_oil_out": v(p.expected.at) })).collect::<Vec<_>>(),
        "just_met": l.just_met.iter().map(|j| json!({ "limit": j.limit, "flow": j.flow.at().map(|x| v(x.at)), "temperature": j.temperature.at().map(|x| v(x.at)), "d50": j.d50.at().map(|x| v(x.at)) })).collect::<Vec<_>>(),
    })
}
