//! What the client has to agree to: pumps, cleaners, drains of containments.

use super::ours::YES;
use super::{Around, Family, Offer};
use crate::alternatives::altered::{GENTLE, HOLDS, QUICK_BREAK, drains_open, gentle};
use stillrise_design::enquiry::blocks::{Containment, DrainValve};
use stillrise_design::enquiry::keys::Quantity;
use stillrise_units::Typed;

/// The changes that make sense.
pub(super) fn offers(a: &Around<'_>) -> Vec<Offer> {
    let mut all: Vec<Offer> = [interlock(a), damper(a), evened(a)].into_iter().flatten().collect();
    let (pump, cleaner) = (slow_pump(a), cleaner(a));
    let both = pump.clone().zip(cleaner.clone()).map(|((_, pump), (_, cleaner))| {
        let says = format!(
            "Use a quick-break cleaner in place of what holds the oil, and a slow positive-displacement pump ({GENTLE}); the client must agree to both"
        );
        Offer::new(Family::CleanerAndPump, says, pump.into_iter().chain(cleaner))
    });
    all.extend(pump.map(|(says, keys)| Offer::new(Family::GentlePump, says, keys)));
    all.extend(cleaner.map(|(says, keys)| Offer::new(Family::Cleaner, says, keys)));
    all.extend(both);
    all.extend(drains(a));
    all.extend(roofs(a));
    all
}

type Change = (String, Vec<(String, String)>);

/// One pump at a time, where several may run.
fn interlock(a: &Around<'_>) -> Option<Offer> {
    let inlet = &a.enquiry.inlet;
    let pumps = inlet.rate.0.len() > 1 || a.enquiry.lift.as_ref().is_some_and(|lift| lift.pumps.unwrap_or(1) > 1);
    if !pumps || *inlet.interlocked == Some(true) {
        return None;
    }
    let mut keys = vec![(inlet.interlocked().path().into_owned(), YES.to_owned())];
    // What was said of pumps that run together does not hold once an interlock keeps them from it.
    if inlet.together.is_some() {
        keys.push((inlet.together().path().into_owned(), "no".to_owned()));
    }
    Some(Offer::new(Family::Interlock, "Let one pump run at a time, interlocked; the client must agree", keys))
}

/// A slow pump in place of one that breaks the oil.
fn slow_pump(a: &Around<'_>) -> Option<Change> {
    let inlet = &a.enquiry.inlet;
    // Figures of the pump that is named would stand beside the other one.
    let own = [
        inlet.pump_power.is_given(),
        inlet.pump_head.is_given(),
        inlet.pump_speed.is_given(),
        inlet.impeller.is_given(),
        inlet.dissipation.is_given(),
    ];
    let pumped = a.design.basis.as_ref().is_some_and(|basis| basis.feed.pumped);
    if !pumped || own.contains(&true) || gentle(a.enquiry).is_none() {
        return None;
    }
    let mut keys = vec![(inlet.pump().path().into_owned(), GENTLE.to_owned())];
    // It runs so much slower that its strokes lift no more than the pump that was named.
    if inlet.rate.0.iter().any(Quantity::is_given) {
        keys.push((inlet.pulsation().path().into_owned(), "1".to_owned()));
    }
    let says = format!(
        "Use a slow positive-displacement pump ({GENTLE}) that lifts no more at its peak; the client must agree"
    );
    Some((says, keys))
}

/// A damper behind a pump that pulsates.
fn damper(a: &Around<'_>) -> Option<Offer> {
    let inlet = &a.enquiry.inlet;
    let pulsates = a.design.basis.as_ref()?.feed.pulsation.is_some_and(|p| p.q.si() > 1.0);
    let keys = [(inlet.pulsation().path().into_owned(), "1".to_owned())];
    let says = "Put a damper behind the pump that evens its flow out; the client must agree";
    (pulsates && !inlet.pulsation.is_given()).then(|| Offer::new(Family::Damper, says, keys))
}

/// Pumps of no more than the flow cap, the rest held back ahead of them.
fn evened(a: &Around<'_>) -> Option<Offer> {
    let (inlet, cap) = (&a.enquiry.inlet, a.enquiry.outlet.flow_cap.q()?);
    let text = &a.enquiry.outlet.flow_cap.claim()?.written.text;
    if !inlet.rate.0.iter().filter_map(Quantity::q).any(|rate| rate > cap) {
        return None;
    }
    let mut keys = vec![(inlet.rate().path().into_owned(), text.clone())];
    keys.push((inlet.pulsation().path().into_owned(), "1".to_owned()));
    let says =
        format!("Pump no more than the cap of {text}, evened out by an equalisation ahead; the client must agree");
    Some(Offer::new(Family::Evened, says, keys))
}

/// A cleaner that lets the oil go again, in place of each that holds it.
fn cleaner(a: &Around<'_>) -> Option<Change> {
    let holds = |kind: &Option<String>| kind.as_deref().is_some_and(|kind| HOLDS.contains(&kind));
    let products: Vec<_> = a.enquiry.chemicals.iter().filter(|product| holds(&product.kind.0)).collect();
    // A tension that was measured is that of the product as it is.
    if products.is_empty() || products.iter().any(|product| product.tension.is_given()) {
        return None;
    }
    let keys = products.iter().map(|product| (product.kind().path().into_owned(), QUICK_BREAK.to_owned())).collect();
    Some(("Use a quick-break cleaner in place of what holds the oil; the client must agree".to_owned(), keys))
}

/// Drains of containments kept closed, which stand open or of which nobody said how they stand.
fn drains(a: &Around<'_>) -> Option<Offer> {
    let all = &a.enquiry.containments;
    let open: Vec<usize> = drains_open(a.enquiry).collect();
    let unsaid = |c: &Containment| c.drain.claims.is_empty();
    let of: Vec<&Containment> =
        all.iter().enumerate().filter(|(k, c)| open.contains(k) || unsaid(c)).map(|(_, c)| c).collect();
    if of.is_empty() {
        return None;
    }
    let names = of.iter().filter_map(|c| c.name.as_deref()).collect::<Vec<_>>().join(" and ");
    let keys = of.iter().map(|c| (c.drain().path().into_owned(), DrainValve::Closed.word().to_owned()));
    let says = format!(
        "Keep the drain of {names} closed, so that a spill is held there, and let its water down by hand after a look; the client must agree"
    );
    Some(Offer::new(Family::Drains, says, keys))
}

/// Roofs over the containments that have none.
fn roofs(a: &Around<'_>) -> Option<Offer> {
    let open: Vec<&Containment> = a.enquiry.containments.iter().filter(|c| c.roof.is_none()).collect();
    if open.is_empty() {
        return None;
    }
    let names = open.iter().filter_map(|c| c.name.as_deref()).collect::<Vec<_>>().join(" and ");
    let keys = open.iter().map(|c| (c.roof().path().into_owned(), YES.to_owned()));
    let says = format!("Put a roof over {names} that keeps the rain out; the client must agree");
    Some(Offer::new(Family::Roof, says, keys))
}
