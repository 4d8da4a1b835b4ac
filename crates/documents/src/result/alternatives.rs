//! Other trains than the one asked for.

use super::plain;
use crate::Edition;
use serde_json::{Value, json};
use stillrise_search::Settled;
use stillrise_search::alternatives::Alternative;
use stillrise_units::Typed;
use stillrise_units::catalog::{GAL, GPM, M3, M3_H, MG_L};

/// What was worked beside the train asked for; null where nothing was.
pub(super) fn alternatives(settled: &Settled, edition: Edition) -> Value {
    if settled.alternatives.is_empty() {
        return Value::Null;
    }
    settled.alternatives.iter().map(|a| one(settled, edition, a)).collect()
}

fn one(settled: &Settled, edition: Edition, a: &Alternative) -> Value {
    let system = settled.job.enquiry.system();
    let train = a.design.train.as_ref();
    let flow = a.design.basis.as_ref().and_then(|b| b.design_flow());
    let held = train.and_then(|t| t.equalisation.as_ref());
    let price = train.and_then(|t| t.unit.particulars.price.as_ref()).filter(|_| edition.is_internal());
    json!({
        "change": a.change.text(),
        "also": a.also.map(|also| also.text()),
        "unit": a.unit,
        "one_pump_at_a_time": a.one_pump,
        "design_flow": flow.map(|v| plain(v.q.si(), system.pick((&GPM, &M3_H)))),
        "held_back": held.map(|e| plain(e.volume().q.si(), system.pick((&GAL, &M3)))),
        "total_oil_out": a.effluent.map(|e| plain(e.si(), &MG_L)),
        "words": a.words.iter().map(|word| word.text()).collect::<Vec<_>>(),
        "price_of_one": price.map(|(price, currency)| json!({ "value": price, "currency": currency })),
    })
}
