//! Names that must differ: what prints alike cannot be told apart by a reader.

use super::Enquiry;
use stillrise_units::Fault;

/// Names are the same whatever their case and outer blanks.
fn plain(name: &str) -> String {
    name.trim().to_lowercase()
}

/// The name of one of many: its own, or its place.
fn named(kind: &str, name: Option<&String>, i: usize) -> String {
    name.cloned().unwrap_or_else(|| format!("{kind} {}", i + 1))
}

/// Faults of blocks that would print alike: surfaces; oils; shears; streams and cases together, for each becomes a
/// row of one table; limits of one pollutant and one statistic by one authority.
pub(super) fn faults(e: &Enquiry, faults: &mut Vec<Fault>) {
    let surfaces = e.surfaces.iter().enumerate().map(|(i, s)| named("surface", s.name.as_ref(), i));
    twice("surface", surfaces.collect(), faults);
    let oils = e.oils.iter().filter_map(|o| o.name.0.clone());
    twice("oil", oils.collect(), faults);
    let shears = e.shear.iter().enumerate().map(|(i, s)| named("shear", s.name.as_ref(), i));
    twice("shear", shears.collect(), faults);
    let observed = e.observed.iter().enumerate().map(|(i, o)| named("observed", o.name.as_ref(), i));
    twice("observed", observed.collect(), faults);
    let streams = e.streams.iter().enumerate().map(|(i, s)| named("stream", s.name.as_ref(), i));
    let cases = e.cases.iter().enumerate().map(|(i, c)| named("case", c.name.as_ref(), i));
    let all: Vec<String> = streams.chain(cases).collect();
    for name in &all {
        if let Some(own) = own(e, name) {
            faults.push(Fault::new(
                format!("stream or case \"{name}\""),
                format!("the tool's own case for {own} has that name"),
                format!("give it another, such as \"{name} water\""),
            ));
        }
    }
    twice("stream or case", all, faults);
    let limit = |l: &super::blocks::Limit| {
        let statistic = l.statistic.0.map_or("no statistic", |s| s.word());
        let by = l.authority.as_ref().map_or_else(String::new, |a| format!(", {a}"));
        l.name.as_ref().or(l.pollutant.as_ref()).map(|p| format!("{p}, {statistic}{by}"))
    };
    twice("limit", e.limits.iter().filter_map(limit).collect(), faults);
}

/// What the tool's own case of that name stands for, where there will be one.
fn own(e: &Enquiry, name: &str) -> Option<&'static str> {
    let rain = !e.surfaces.is_empty();
    match plain(name).as_str() {
        "storm" if rain => Some("the design storm"),
        "storm and other waters" if rain && !e.streams.is_empty() => Some("the storm and the streams that run in it"),
        "dry-weather waters together" if e.streams.len() > 1 => Some("all streams together"),
        "spill" if e.spill.is_some() => Some("[spill]"),
        _ => None,
    }
}

fn twice(kind: &str, names: Vec<String>, faults: &mut Vec<Fault>) {
    let mut seen: Vec<String> = Vec::new();
    for name in names {
        let key = plain(&name);
        if seen.contains(&key) {
            faults.push(Fault::new(
                format!("{kind} \"{name}\""),
                "there are two of that name, and nobody could tell them apart",
                if kind == "limit" {
                    "state what differs: name, statistic or authority; or leave one out"
                } else {
                    "give each its own name"
                },
            ));
        } else {
            seen.push(key);
        }
    }
}
