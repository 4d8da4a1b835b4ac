//! What stands around the separator in `result.json`: lift pump, screen, polisher, one unit shut, oil tank, bypass.

use super::{fields, val};
use serde_json::{Value, json};
use stillrise_design::Node;
use stillrise_design::train::Train;
use stillrise_search::Settled;

/// Static lift, rising main, duties and operating points of the feed pump; null where nobody spoke of them.
pub(super) fn lift(settled: &Settled) -> Value {
    let v = |at: Node| val(&settled.job.ledger, at, settled.job.enquiry.system());
    let Some(lift) = settled.job.design.basis.as_ref().and_then(|b| b.feed.lift.as_ref()) else { return Value::Null };
    json!({
        "static_lift": lift.main.as_ref().map(|m| v(m.lift.at)), "length": lift.main.as_ref().map(|m| v(m.length.at)),
        "bore": lift.main.as_ref().map(|m| v(m.bore.at)), "roughness": lift.main.as_ref().map(|m| v(m.roughness.at)),
        "fittings": lift.main.as_ref().map(|m| v(m.fittings.at)), "curve": lift.curve.as_ref().map(|c| v(c.at)),
        "duties": lift.duties.iter().map(|d| json!({ "pumps": v(d.pumps.at), "flow": v(d.flow.at), "head": v(d.head.at) })).collect::<Vec<_>>(),
        "operating_points": lift.points.iter().map(|p| json!({
            "pumps": v(p.pumps.at), "flow": p.at.ok().map(|(flow, _)| v(flow.at)), "head": p.at.ok().map(|(_, head)| v(head.at)),
            "missed": p.at.err().map(|missed| missed.text()), "stated": p.stated.map(|x| v(x.at)), "off": p.off.map(|x| v(x.at)),
            "least": p.within.and_then(|[low, _]| low).map(|x| v(x.at)), "most": p.within.and_then(|[_, high]| high).map(|x| v(x.at)),
        })).collect::<Vec<_>>(),
    })
}

/// The screen ahead; null where none is asked for and none stands.
pub(super) fn screen(settled: &Settled, train: &Train) -> Value {
    let (ledger, system) = (&settled.job.ledger, settled.job.enquiry.system());
    let Some(screen) = &train.screen else { return Value::Null };
    json!({
        "reasons": screen.reasons, "exists": screen.exists,
        "narrowest": screen.narrowest.map(|(x, of)| json!({ "of": of, "passage": val(ledger, x.at, system) })),
        "bars": screen.bars.as_ref().map(|bars| fields(ledger, &bars.fields(), system)),
    })
}

/// Polisher, one unit shut, oil holding tank and bypass, each null where there is none.
pub(super) fn around(settled: &Settled, train: &Train) -> [Value; 4] {
    let v = |at: Node| val(&settled.job.ledger, at, settled.job.enquiry.system());
    let limits = settled.job.design.basis.as_ref().map_or(&[][..], |basis| &basis.limits);
    let word = |k: usize| limits.get(k).map(|limit| limit.pollutant.word);
    let a = &train.around;
    let polisher = a.polisher.as_ref().map(|d| {
        json!({
            "flow": v(d.flow.at), "pumped": d.pumped, "solids": v(d.solids.at), "sized_for_spill": false, "spill_can_come": d.spill,
            "reaches": d.reaches.iter().map(|r| json!({ "case": r.case, "flow": v(r.flow.at), "free": v(r.free.at), "emulsified": v(r.emulsified.at), "dissolved": v(r.dissolved.at), "total": v(r.total.at) })).collect::<Vec<_>>(),
            "takes_out": d.takes.iter().map(|x| json!({ "pollutant": word(x.limit), "case": x.case, "reaches": v(x.reaches.at), "allows": v(x.allows.at), "takes": v(x.takes.at), "share": v(x.share.at) })).collect::<Vec<_>>(),
            "to_be_sampled": d.unpredicted.iter().filter_map(|k| word(*k)).collect::<Vec<_>>(),
        })
    });
    let shut = a.shut.map(|s| json!({ "running": v(s.running.at), "each": v(s.each.at), "over": v(s.over.at), "total_oil_out": s.out.map(|out| v(out.at)) }));
    let tank = a.oil_tank.as_ref().map(|x| {
        json!({
            "volume": v(x.volume.at), "room": v(x.room.at), "days": x.days.map(|d| v(d.at)), "soonest_days": x.soonest.map(|d| v(d.at)),
            "routine_draw_offs": x.draws.map(|d| v(d.at)), "spill_spare": x.spare.map(|d| v(d.at)),
        })
    });
    let bypass = a.bypass.as_ref().map(|b| {
        json!({ "case": b.case, "largest": v(b.largest.at), "through": v(b.through.at), "past": v(b.past.at), "share": v(b.share.at), "barred": b.barred })
    });
    [json!(polisher), json!(shut), json!(tank), json!(bypass)]
}
