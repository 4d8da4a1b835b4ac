//! The containments in `result.json`.

use super::val;
use crate::summary::containment::{drain, overflows_to, verdict};
use serde_json::{Value, json};
use stillrise_design::basis::containment::balance::Balance;
use stillrise_design::basis::containment::reach::{Open, Reach};
use stillrise_design::basis::containment::{Containment, Containments};
use stillrise_design::{Node, Val};
use stillrise_search::Settled;
use stillrise_units::Typed;

/// What stands ahead of the separator; null when nothing does.
pub(super) fn containment(settled: &Settled) -> Value {
    let Some(ahead) = settled.job.design.basis.as_ref().and_then(|b| b.containment.as_ref()) else {
        return Value::Null;
    };
    let v = |at: Node| val(&settled.job.ledger, at, settled.job.enquiry.system());
    json!({
        "rain_depth": ahead.rain_depth.map(|d| reach(&v, &d)),
        "fire_water": reach(&v, &ahead.fire),
        "fire_water_unknown": unknown(&ahead.fire_open),
        "containments": ahead.all.iter().map(|c| one(&v, ahead, c)).collect::<Vec<_>>(),
        "balances": ahead.balances.iter().map(|b| balance(&v, ahead, b)).collect::<Vec<_>>(),
    })
}

fn one(v: &impl Fn(Node) -> Value, ahead: &Containments, c: &Containment) -> Value {
    json!({
        "name": c.name, "kind": c.kind.map(|k| k.word()), "holds": reach(v, &c.holds), "catch": c.catch.map(|a| reach(v, &a)),
        "design_rain": reach(v, &c.rain), "drain": drain(c), "overflows_to": overflows_to(ahead, c),
        "drain_rate": c.drain.as_ref().map(|d| v(d.rate.at)), "drains_in": c.drain.as_ref().and_then(|d| d.time).map(|t| v(t.at)),
        "unknown": unknown(&c.open),
    })
}

fn balance(v: &impl Fn(Node) -> Value, ahead: &Containments, b: &Balance) -> Value {
    let at = |x: Option<Node>| x.map(v);
    json!({
        "in": ahead.all[b.place].name, "chain": b.chain.iter().map(|i| ahead.all[*i].name.clone()).collect::<Vec<_>>(),
        "declared_spill": b.declared, "oil": reach(v, &b.oil), "rain": v(b.rain.at), "to_hold": v(b.need.at), "held": v(b.held.at),
        "left": v(b.spare.val.at), "left_at_least_si": b.spare.least.si(), "left_at_most_si": b.spare.most.si(),
        "left_without_fire_water": v(b.dry.val.at), "verdict": verdict(b), "largest": b.largest.word(),
        "allowance": at(b.allowance.map(|x| x.at)), "rule_of_thumb": v(b.thumb.at),
        "depth_to_hold": at(b.further.and_then(|f| f.depth).map(|x| x.at)), "area_to_hold": at(b.further.and_then(|f| f.area).map(|x| x.at)),
        "more_to_hold": at(b.further.and_then(|f| f.count).map(|x| x.at)),
        "water_pushed_out": at(b.displaced.map(|d| d.water.at)), "surface_rise": at(b.displaced.and_then(|d| d.rise).map(|x| x.at)),
        "unknown": unknown(&b.open),
    })
}

/// A value, with its ends in SI where nobody said it.
fn reach<Q: Typed>(v: &impl Fn(Node) -> Value, reach: &Reach<Q>) -> Value {
    let Reach { val: Val { at, .. }, low, high } = reach;
    let mut value = v(*at);
    if let (Value::Object(map), true) = (&mut value, low != high) {
        map.insert("low_si".to_owned(), json!(low.si()));
        map.insert("high_si".to_owned(), json!(high.si()));
    }
    value
}

fn unknown(open: &[Open]) -> Value {
    json!(open.iter().map(|o| json!({ "key": o.key, "what": o.what })).collect::<Vec<_>>())
}
