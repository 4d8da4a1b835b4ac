//! How the unit stands and the room that it needs.

use super::val;
use serde_json::{Value, json};
use stillrise_design::performance::Performance;
use stillrise_design::provenance::{Ledger, Node};
use stillrise_units::System;

pub(super) fn site(p: &Performance, ledger: &Ledger, system: System) -> Value {
    let v = |at: Node| val(ledger, at, system);
    let s = &p.site;
    json!({
        "floor": s.floor.map(|x| v(x.at)), "spare_fall": s.spare_fall.map(|x| v(x.at)),
        "floor_over_ground": s.floor_over_ground.map(|x| v(x.at)), "tailwater": s.tailwater.map(|x| v(x.at)),
        "stands": s.installation.stands.q.word(), "because": s.installation.because.word(),
        "water_over_crest": s.installation.water_over_crest.map(|x| v(x.at)),
        "floor_ahead_of_pump": s.installation.floor_ahead_of_pump.map(|x| v(x.at)),
        "over_ground_ahead_of_pump": s.installation.over_ground_ahead_of_pump.map(|x| v(x.at)),
        "highest_outfall": s.installation.highest_outfall.map(|x| v(x.at)),
        "cover": s.installation.cover.map(|x| v(x.at)), "least_cover": s.installation.least_cover.map(|x| v(x.at)),
        "pump_behind": s.installation.pump_behind, "lifted_to": s.lifted_to.map(|x| v(x.at)),
    })
}

/// Flotation of the empty unit; null where it is not known to stand in the ground.
pub(super) fn flotation(p: &Performance, ledger: &Ledger, system: System) -> Value {
    let v = |at: Node| val(ledger, at, system);
    let Some(f) = &p.flotation else { return Value::Null };
    json!({
        "groundwater": f.groundwater.map(|x| v(x.at)), "floats_above": f.floats_above.map(|x| v(x.at)),
        "uplift": f.uplift.map(|x| v(x.at)), "factor_of": f.asked.title, "soil_counts": f.counts.title, "planes_left_out": f.leaves_planes_out(), "wanted": v(f.wanted.at),
        "held": f.held.as_ref().map(|h| json!({
            "weight": v(h.weight.at), "soil": h.soil.map(|x| v(x.at)), "wedge": h.wedge.map(|x| v(x.at)), "anchors": h.anchors.map(|x| v(x.at)),
            "factor": v(h.factor.at), "needed": v(h.needed.at), "concrete": v(h.concrete.at),
        })),
    })
}

/// How its effluent pumps run; null without them.
pub(super) fn pump_out(p: &Performance, ledger: &Ledger, system: System) -> Value {
    let v = |at: Node| val(ledger, at, system);
    let Some(r) = &p.pump_out else { return Value::Null };
    json!({
        "between": v(r.between.at), "cycle": v(r.cycle.at), "run": r.run.map(|x| v(x.at)),
        "reserve": v(r.reserve.at), "lasts": v(r.lasts.at), "lift": r.lift.map(|x| v(x.at)),
    })
}

pub(super) fn room(p: &Performance, ledger: &Ledger, system: System) -> Value {
    let v = |at: Node| val(ledger, at, system);
    let fit = &p.fit;
    json!({
        "walkway": v(fit.access.at), "top": v(fit.top.at), "above": v(fit.above.at), "headroom": v(fit.headroom.at),
        "taken": fit.taken,
        "arrangements": fit.ways.iter().map(|way| json!({
            "arrangement": fit.choice.map(|_| way.arrangement.word()),
            "row_length": v(way.row_length.at), "row_width": v(way.row_width.at),
            "length": v(way.length.at), "width": v(way.width.at),
        })).collect::<Vec<_>>(),
    })
}
