//! What shop and site have to agree on: closure, frost, cover, anchors, slings, the screen ahead.

use super::ours::YES;
use super::{Around, Family, Offer};
use stillrise_units::catalog::{FT3, IN, M3, MM};
use stillrise_units::{System, print};

/// Concrete that is tried against flotation, one after the other: ft3, m3.
const ANCHORS: ([f64; 7], [f64; 7]) =
    ([35.0, 70.0, 140.0, 280.0, 560.0, 1120.0, 2240.0], [1.0, 2.0, 4.0, 8.0, 16.0, 32.0, 64.0]);
/// Angles of the slings that are tried, degrees.
const SLINGS: [&str; 3] = ["60 deg", "75 deg", "90 deg"];

/// The changes that make sense.
pub(super) fn offers(a: &Around<'_>) -> Vec<Offer> {
    let mut all = closure(a);
    all.extend(frost(a));
    all.extend(anchors(a));
    all.extend(lifting(a));
    all.extend(screen(a));
    all
}

/// A closure of the outlet, where a spill may come and none is there.
fn closure(a: &Around<'_>) -> Vec<Offer> {
    let Some(spill) = a.enquiry.spill.as_ref().filter(|spill| *spill.closure != Some(true)) else { return Vec::new() };
    let keys = [(spill.closure().path().into_owned(), YES.to_owned())];
    vec![Offer::new(Family::Closure, "Have a closure shut the outlet when oil comes near it", keys)]
}

fn frost(a: &Around<'_>) -> Vec<Offer> {
    let site = &a.enquiry.site;
    let mut all = Vec::new();
    // More ground over it is what the place says first.
    let cover = site.frost_depth.claim().filter(|_| site.cover.q() < site.frost_depth.q());
    all.extend(cover.map(|depth| {
        let text = &depth.written.text;
        let keys = [(site.cover().path().into_owned(), text.clone())];
        let says = format!("Lay the unit so deep that {text} of ground lie over it, as deep as it freezes");
        Offer::new(Family::Cover, says, keys)
    }));
    if *site.frost_protected != Some(true) {
        let keys = [(site.frost_protected().path().into_owned(), YES.to_owned())];
        let says = "Insulate the unit and heat or trace what may freeze";
        all.push(Offer::new(Family::FrostProtected, says, keys));
    }
    if site.indoors.is_none() && *site.buried != Some(true) {
        let keys = [(site.indoors().path().into_owned(), YES.to_owned())];
        let says = "Put the unit into a heated room; the client must agree";
        all.push(Offer::new(Family::Indoors, says, keys));
    }
    all
}

/// Concrete that holds the unit down where groundwater lifts it.
fn anchors(a: &Around<'_>) -> Vec<Offer> {
    let lifted = a.design.performance.as_ref().and_then(|p| p.flotation.as_ref()).and_then(|f| f.uplift);
    let (Some(_), site) = (lifted, &a.enquiry.site) else { return Vec::new() };
    let (steps, unit) = if a.enquiry.system() == System::Us { (ANCHORS.0, &FT3) } else { (ANCHORS.1, &M3) };
    let least = site.anchors.claim().map_or(0.0, |claim| unit.from_si(claim.written.si()));
    let one = |step: f64| {
        let text = format!("{step} {}", unit.symbol);
        let keys = [(site.anchors().path().into_owned(), text.clone())];
        Offer::new(Family::Anchors, format!("Anchor {text} of concrete to the unit, as a slab or beside it"), keys)
    };
    steps.into_iter().filter(|step| *step > least).map(one).collect()
}

/// Longer slings, more lifting points.
fn lifting(a: &Around<'_>) -> Vec<Offer> {
    let own = &a.enquiry.installation;
    let sling = |angle: &str| {
        let keys = [(own.sling_angle().path().into_owned(), angle.to_owned())];
        let says = format!("Lift it by slings of {angle} from the level, longer ones or with a spreader");
        Offer::new(Family::Slings, says, keys)
    };
    let mut all: Vec<Offer> = SLINGS.into_iter().map(sling).collect();
    if !own.lifting_points.is_given() {
        let keys = [(own.lifting_points().path().into_owned(), "4".to_owned())];
        all.push(Offer::new(Family::LiftingPoints, "Give the unit four lifting points", keys));
    }
    all
}

/// A screen whose openings are no wider than what lies behind it.
fn screen(a: &Around<'_>) -> Vec<Offer> {
    let found = a.design.train.as_ref().and_then(|train| train.screen.as_ref()).and_then(|screen| screen.narrowest);
    let (Some((passage, of)), own) = (found, &a.enquiry.screen) else { return Vec::new() };
    let unit = if a.enquiry.system() == System::Us { &IN } else { &MM };
    // Rounded down, but for what counting leaves, so that what passes it passes what lies behind.
    let opening = (unit.from_si(stillrise_units::Typed::si(passage.q)) * 100.0 + 1e-6).floor() / 100.0;
    let text = format!("{} {}", print::digits(opening, 4), unit.symbol);
    let keys = [(own.spacing().path().into_owned(), text.clone())];
    vec![Offer::new(Family::Screen, format!("Have the screen open no wider than {text}, the {of}"), keys)]
}
