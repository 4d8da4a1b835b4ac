//! What no containment can be: two of one name, a chain in a circle, a volume stated twice.

use super::Enquiry;
use super::blocks::{Containment, DrainValve, Surface};
use std::collections::BTreeSet;
use stillrise_handbook::fluids::oils;
use stillrise_units::{Fault, nearest};

/// The word for the end of a chain.
pub const SEPARATOR: &str = "separator";

/// Names are the same whatever their case.
#[must_use]
pub fn same_name(a: &str, b: &str) -> bool {
    a.trim().to_lowercase() == b.trim().to_lowercase()
}

/// The containment of this name, by its place in the enquiry.
#[must_use]
pub fn find(containments: &[Containment], name: &str) -> Option<usize> {
    containments.iter().position(|c| c.name.as_deref().is_some_and(|own| same_name(own, name)))
}

/// The surfaces whose rain falls or runs into a containment: those it names, else the one that bears its name.
pub fn covered<'a>(e: &'a Enquiry, c: &'a Containment) -> impl Iterator<Item = &'a Surface> {
    e.surfaces.iter().filter(move |surface| {
        let Some(name) = surface.name.as_deref() else { return false };
        if c.covers.is_empty() {
            c.name.as_deref().is_some_and(|own| same_name(own, name))
        } else {
            c.covers.iter().any(|covered| same_name(covered, name))
        }
    })
}

/// Whether a containment keeps the rain of the surfaces that run into it from running on as it falls: its drain is said to
/// be closed, or is metered, or there is none. `told` is the word that a what-if gives of its drain.
#[must_use]
pub fn holds_back(c: &Containment, told: Option<DrainValve>) -> bool {
    let word = told.or_else(|| c.drain.settled().map(|claim| claim.word));
    c.drain_rate.is_given() || matches!(word, Some(DrainValve::Closed | DrainValve::None))
}

/// Whether nobody said where a declared spill happens, and it could be in a containment or where water runs to the separator
/// past all of them.
#[must_use]
pub fn spill_place_is_open(e: &Enquiry) -> bool {
    let declared = e.spill.as_ref().is_some_and(|s| s.into.is_none() && (s.volume.is_given() || s.rate.is_given()));
    let into_one = |s: &Surface| e.containments.iter().any(|c| covered(e, c).any(|of| core::ptr::eq(of, s)));
    declared && !e.containments.is_empty() && e.surfaces.iter().any(|s| !into_one(s))
}

/// All faults of containments, and of what the spill says of them.
pub fn faults(e: &Enquiry, faults: &mut Vec<Fault>) {
    let mut seen: BTreeSet<String> = BTreeSet::new();
    for (i, c) in e.containments.iter().enumerate() {
        let name = c.name.0.clone().unwrap_or_default();
        let place = format!("containment \"{name}\"");
        let mut fault = |key: &str, reason: String, remedy: String| {
            faults.push(Fault::new(format!("{place}: {key}"), reason, remedy));
        };
        if c.name.is_some() && !seen.insert(name.trim().to_lowercase()) {
            fault("name", "another containment has the same name".to_owned(), "give each its own".to_owned());
        }
        if same_name(&name, SEPARATOR) {
            let remedy = "that word means the end of a chain; call it otherwise".to_owned();
            fault("name", "is called like the separator".to_owned(), remedy);
        }
        if let Some(to) = c.drains_to.as_deref().filter(|to| !same_name(to, SEPARATOR)) {
            match find(&e.containments, to) {
                None => fault("drains_to", format!("no containment is called \"{to}\""), known(&e.containments, to)),
                Some(_) if circles(&e.containments, i) => {
                    let remedy = format!("let the last of the chain drain to \"{SEPARATOR}\"");
                    fault("drains_to", "the chain comes back to itself".to_owned(), remedy);
                }
                Some(_) => {}
            }
        }
        for surface in &c.covers {
            let is = |s: &Surface| s.name.as_deref().is_some_and(|own| same_name(own, surface));
            if !e.surfaces.iter().any(is) {
                let names = e.surfaces.iter().filter_map(|s| s.name.as_deref());
                let remedy = nearest(surface, names).map_or_else(
                    || "name a [[surface]] of this file".to_owned(),
                    |near| format!("did you mean \"{near}\"?"),
                );
                fault("covers", format!("no surface is called \"{surface}\""), remedy);
            }
        }
        sizes(c, &mut fault);
    }
    spill(e, faults);
}

/// What contradicts itself in the sizes of one.
fn sizes(c: &Containment, fault: &mut impl FnMut(&str, String, String)) {
    let beside: Vec<&str> = [
        ("depth", c.depth.is_given()),
        ("stone_depth", c.stone_depth.is_given()),
        ("voids", c.voids.is_given()),
        ("deducted_area", c.deducted_area.is_given()),
        ("deducted_volume", c.deducted_volume.is_given()),
    ]
    .into_iter()
    .filter_map(|(key, given)| given.then_some(key))
    .collect();
    if c.volume.is_given() && !beside.is_empty() {
        let remedy = "give the volume with all deducted, or the sizes".to_owned();
        fault("volume", format!("stands beside {}", beside.join(", ")), remedy);
    }
    if c.drained_in_rain.0.is_some() && !c.drain_rate.is_given() {
        let remedy =
            "give the `drain_rate` of the pump or flow control; without one, `drain` says how the drain stands"
                .to_owned();
        fault("drained_in_rain", "no rate is known at which it is drained".to_owned(), remedy);
    }
    if c.vessel_oil.is_given() && c.vessel_oil_mass.is_given() {
        let reason = "the oil is stated by volume and by mass".to_owned();
        fault("vessel_oil", reason, "give one of the two".to_owned());
    }
    if let (Some(stone), Some(depth)) = (c.stone_depth.q(), c.depth.q())
        && stone > depth
    {
        let remedy = "count the stone up to the overflow only, or check both".to_owned();
        fault("stone_depth", "the stone reaches above the usable depth".to_owned(), remedy);
    }
    if let (Some(taken), Some(area)) = (c.deducted_area.q(), c.area.q())
        && taken >= area
    {
        let reason = "foundations and equipment take the whole area".to_owned();
        fault("deducted_area", reason, "check both areas".to_owned());
    }
}

/// What the spill says of containments and of fire water.
fn spill(e: &Enquiry, faults: &mut Vec<Fault>) {
    let Some(spill) = &e.spill else { return };
    // One that was written and refused has its fault already.
    let refused = faults.iter().any(|f| f.place.contains("spill: volume"));
    let own = e.containments.iter().any(|c| c.vessel_oil.is_given() || c.vessel_oil_mass.is_given());
    // Its rate leaves the volume to be asked for; a closure may be there where nobody spoke of a spill.
    let told = spill.volume.is_given() || spill.rate.is_given() || spill.closure.is_some();
    if !told && !refused && !own {
        let remedy = "write volume = \"300 gal\", or rate = \"100 gpm\" where the volume is not known";
        faults.push(Fault::new("spill", "has no \"volume\": Volume of oil", remedy));
    }
    if let Some(into) = spill.into.as_deref()
        && !same_name(into, SEPARATOR)
        && find(&e.containments, into).is_none()
    {
        let remedy = known(&e.containments, into);
        faults.push(Fault::new("spill: into", format!("no containment is called \"{into}\""), remedy));
    }
    if let Some(name) = spill.oil.as_deref()
        && oils::oil(name).is_none()
        && !e.oils.iter().any(|oil| oil.name.as_deref().is_some_and(|own| same_name(own, name)))
    {
        let reason = format!("\"{name}\" is neither a kind of oil that the handbook knows nor the name of an [[oil]]");
        let known = oils::OILS.iter().map(|row| row.word).collect::<Vec<_>>().join(", ");
        faults.push(Fault::new("spill: oil", reason, format!("name an [[oil]], or one of {known}")));
    }
    if spill.fire_volume.is_given() && (spill.fire_flow.is_given() || spill.fire_duration.is_given()) {
        let reason = "a volume of fire water stands beside its flow or duration";
        faults.push(Fault::new("spill: fire_volume", reason, "give the volume, or flow and duration"));
    }
    if spill.fire_duration.is_given() && !spill.fire_flow.is_given() {
        faults.push(Fault::new("spill: fire_duration", "there is no flow that lasts so long", "give fire_flow"));
    }
}

/// What to write in place of a name that is not known.
fn known(containments: &[Containment], name: &str) -> String {
    let names: Vec<&str> = containments.iter().filter_map(|c| c.name.as_deref()).collect();
    match nearest(name, names.iter().copied().chain([SEPARATOR])) {
        Some(near) => format!("did you mean \"{near}\"?"),
        None if names.is_empty() => "add [[containment]] with that name".to_owned(),
        None => format!("the containments are {}", names.join(", ")),
    }
}

/// Whether the chain from here comes back to a containment that it passed.
fn circles(containments: &[Containment], from: usize) -> bool {
    let mut passed = BTreeSet::from([from]);
    let mut at = from;
    while let Some(next) = containments[at].drains_to.as_deref().and_then(|to| find(containments, to)) {
        if !passed.insert(next) {
            return true;
        }
        at = next;
    }
    false
}
