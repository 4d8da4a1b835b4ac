//! Which water a product goes into, and what shears which: names that must be names of the file.

use super::Enquiry;
use super::blocks::ChemicalBlock;
use stillrise_units::{Fault, nearest};

/// The word of a chemical's `stream` for every water but rain, fire-fighting water and dewatering.
pub const STREAMS: &str = "streams";
/// The word for every water.
pub const ALL: &str = "all";
/// The word for no water that reaches the unit.
pub const NONE: &str = "none";
/// Rain, as named by a chemical.
pub const RAIN: &str = "rain";

/// The same name, whatever its case.
#[must_use]
pub fn same(a: &str, b: &str) -> bool {
    a.trim().to_lowercase() == b.trim().to_lowercase()
}

/// Whether a name is the one of this product.
#[must_use]
pub fn is_called(block: &ChemicalBlock, name: &str) -> bool {
    [&block.product.0, &block.kind.0].into_iter().flatten().any(|own| same(own, name))
}

/// Names that no block bears.
pub(super) fn faults(e: &Enquiry, faults: &mut Vec<Fault>) {
    let stream =
        |(i, s): (usize, &super::blocks::Stream)| s.name.0.clone().unwrap_or_else(|| format!("stream {}", i + 1));
    let waters: Vec<String> = (e.streams.iter().enumerate().map(stream))
        .chain(e.cases.iter().filter_map(|c| c.name.0.clone()))
        .chain([RAIN, STREAMS, ALL, NONE].map(str::to_owned))
        .collect();
    let products: Vec<&str> =
        e.chemicals.iter().flat_map(|c| [c.product.as_deref(), c.kind.as_deref()]).flatten().collect();
    let mut unknown = |place: String, name: &str, known: &[&str], block: &str| {
        let remedy = match nearest(name, known.iter().copied()) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None if known.is_empty() => format!("add a [[{block}]] block of that name"),
            None => format!("use one of {}", known.join(", ")),
        };
        let reason = if name.is_empty() {
            format!("does not say which {block}")
        } else {
            format!("no {block} is called \"{name}\"")
        };
        faults.push(Fault::new(place, reason, remedy));
    };
    let known: Vec<&str> = waters.iter().map(String::as_str).collect();
    for (i, block) in e.chemicals.iter().enumerate() {
        let place = match &block.product.0 {
            Some(product) => format!("chemical \"{product}\": stream"),
            None => format!("chemical {}: stream", i + 1),
        };
        for name in block.stream.iter().filter(|name| !known.iter().any(|k| same(k, name))) {
            unknown(place.clone(), name, &known, "stream");
        }
    }
    let streams: Vec<&str> = waters.iter().take(e.streams.len()).map(String::as_str).collect();
    for (i, block) in e.dumps.iter().enumerate() {
        let name = block.name.as_ref().map_or_else(|| format!("{}", i + 1), |name| format!("\"{name}\""));
        let place = format!("dump {name}: stream");
        match &block.stream.0 {
            Some(name) if !streams.iter().any(|k| same(k, name)) => unknown(place, name, &streams, "stream"),
            None if streams.len() != 1 => unknown(place, "", &streams, "stream"),
            _ => {}
        }
    }
    let shears: Vec<&str> = e.shear.iter().filter_map(|s| s.name.as_deref()).collect();
    for block in &e.containments {
        for name in block.shear.iter().filter(|name| !shears.iter().any(|own| same(own, name))) {
            unknown(format!("containment \"{}\": shear", block.name.as_deref().unwrap_or("")), name, &shears, "shear");
        }
    }
    for (i, block) in e.streams.iter().enumerate() {
        for name in block.shear.iter().filter(|name| !shears.iter().any(|own| same(own, name))) {
            unknown(format!("stream \"{}\": shear", stream((i, block))), name, &shears, "shear");
        }
        for name in block.chemicals.iter().filter(|name| !e.chemicals.iter().any(|c| is_called(c, name))) {
            unknown(format!("stream \"{}\": chemicals", stream((i, block))), name, &products, "chemical");
        }
    }
}
