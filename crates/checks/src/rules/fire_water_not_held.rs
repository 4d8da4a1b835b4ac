//! Rule: fire water not held

use super::containment_too_small::{asks, sentence, unsaid};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::containment::balance::Balance;
use stillrise_units::Typed;

rule! {
    "fire-water-not-held" "Containment does not hold the fire water", Inlet;
    client "The containment does not hold the water of a fire, which would carry burning oil over its rim."
    looks "What each chain of containments that holds oil and rain still has for the water of deluge, hydrants and hoses."
    matters "Where oil burns, water runs for an hour and lifts the oil over the rim, burning."
    remedy "A larger containment, a basin further on that takes the overflow, or less water by agreement with the fire authority."
    source "NFPA 850 counts ten minutes of fixed spray and hoses (from memory); IEEE 980, Annex B, adds rain or deluge, the greater of the two"
    limits "Rain and fire water are added, though IEEE 980 takes the greater. Foam and what boils away are not counted."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let Some(ahead) = &basis.containment else { return Verdict::skips("no containment is declared") };
    if ahead.fire_open.is_empty() && ahead.fire.val.q.si() <= 0.0 {
        return Verdict::skips("no fire water must be held");
    }
    // One that is too small without fire water has its finding already.
    let judged: Vec<&Balance> = ahead.balances.iter().filter(|b| b.dry.holds() != Some(false)).collect();
    if judged.is_empty() {
        return Verdict::skips("no containment holds oil and rain");
    }
    let say = |b: &Balance| {
        let open: Vec<_> = b.open.iter().collect();
        sentence(s, ahead, b, &b.spare, true) + &unsaid(s, &b.spare, &open)
    };
    let short: Vec<&Balance> = judged.iter().copied().filter(|b| b.spare.holds() == Some(false)).collect();
    if let Some(first) = short.first() {
        let says: Vec<String> = short.iter().map(|b| say(b)).collect();
        return Verdict::fails(says.join("; "), first.spare.val.at);
    }
    let open: Vec<&Balance> = judged.iter().copied().filter(|b| b.spare.holds().is_none()).collect();
    if let Some(first) = open.first() {
        let says: Vec<String> = open.iter().map(|b| say(b)).collect();
        return Verdict::cannot_judge(says.join("; "), asks(s, &open), first.spare.val.at);
    }
    let says: Vec<String> = judged.iter().map(|b| say(b)).collect();
    Verdict::passes(says.join("; "))
}
