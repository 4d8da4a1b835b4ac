//! The comparison with EN 858-2 in `result.json`.

use super::val;
use serde_json::{Value, json};
use stillrise_design::Node;
use stillrise_search::Settled;

/// What the standard would ask for; null where nobody asks by it.
pub(super) fn european(settled: &Settled) -> Value {
    let Some(of) = settled.job.design.basis.as_ref().and_then(|b| b.european.as_ref()) else { return Value::Null };
    let v = |at: Node| val(&settled.job.ledger, at, settled.job.enquiry.system());
    let block = settled.job.enquiry.european.as_ref();
    let sizes = of.sizes.as_ref().ok();
    json!({
        "class": block.and_then(|b| b.class.0).map(|c| c.word()), "type_test": block.and_then(|b| b.type_test.0.as_ref()),
        "bypass": block.and_then(|b| b.bypass.0), "load_class": block.and_then(|b| b.load_class.0).map(|c| c.word()),
        "named": of.named.map(|x| v(x.at)), "named_covers_need": of.covers(),
        "rain": v(of.rain.at), "waste_water": v(of.waste.at), "category": of.category.map(|x| v(x.at)),
        "impediment_factor": v(of.impediment.at), "system": v(of.system.at), "oil": of.oil, "density": v(of.density.at),
        "sludge_load": v(of.load.at), "none_because": of.sizes.as_ref().err(),
        "density_factor": sizes.map(|s| v(s.factor.at)), "needed": sizes.map(|s| v(s.need.at)),
        "needed_apart": sizes.and_then(|s| s.apart).map(|x| v(x.at)),
        "standard_size": sizes.and_then(|s| s.standard).map(|x| v(x.at)),
        "sludge_trap": sizes.and_then(|s| s.sludge_trap).map(|x| v(x.at)),
        "oil_store_ppg3": sizes.and_then(|s| s.oil_store).map(|x| v(x.at)),
    })
}
