//! Rule: containment too small

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::containment::Containments;
use stillrise_design::basis::containment::balance::{Balance, Part, Spare};
use stillrise_design::basis::containment::drain::Shut;
use stillrise_design::basis::containment::reach::Open;
use stillrise_units::catalog::{FT2, GAL, IN, M2, M3, MM};
use stillrise_units::{Typed, Volume, print};

rule! {
    "containment-too-small" "Containment too small for oil and rain", Inlet;
    client "The containment is too small for the oil and the rain together: it overflows, oil first."
    looks "What each chain of containments holds up to its overflow against the oil of the largest vessel and the design rain, or the oil with a prescribed allowance where that is more; fire water is judged by a rule of its own. It fails where it is short whatever is not known, and cannot be judged where that decides."
    matters "What overflows first is what floats: the oil."
    remedy "A deeper or wider containment, one more of its kind, a chain into the next, or a roof that keeps the rain out."
    source "40 CFR 112.8(c)(2): the largest single container and sufficient freeboard for precipitation; US EPA names the 24-hour rain of 25 years; voids of stone, IEEE 980, Annex B. The 110 % in use is a rule of thumb and not judged by"
    limits "Upright walls. One design rain falls on a drained containment; what an earlier rain left in it is not counted. The largest vessel is taken to lose all of its oil."
}

/// More of the same than these are no remedy: a wider one takes less room.
const MORE: f64 = 3.0;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let Some(ahead) = &basis.containment else { return Verdict::skips("no containment is declared") };
    if ahead.balances.is_empty() {
        return Verdict::skips("no spill is counted on a containment");
    }
    let of = |holds: Option<bool>| ahead.balances.iter().filter(move |b| b.dry.holds() == holds);
    let say = |b: &Balance| {
        let open: Vec<&Open> = b.open.iter().filter(|open| !ahead.fire_open.contains(open)).collect();
        sentence(s, ahead, b, &b.dry, false) + &unsaid(s, &b.dry, &open)
    };
    let short: Vec<String> = of(Some(false)).map(say).collect();
    if let Some(first) = of(Some(false)).next() {
        return Verdict::fails(short.join("; "), first.dry.val.at);
    }
    if let Some(first) = of(None).next() {
        let unknown: Vec<String> = of(None).map(say).collect();
        return Verdict::cannot_judge(unknown.join("; "), asks(s, &of(None).collect::<Vec<_>>()), first.dry.val.at);
    }
    let drained = |b: &Balance| if b.shut == Shut::Open { " with the drain closed, which stands open" } else { "" };
    let spare: Vec<String> = ahead.balances.iter().map(|b| say(b) + drained(b)).collect();
    Verdict::passes(spare.join("; "))
}

/// What one chain holds against what it must, `fire` water too, with what would hold what is short.
pub(super) fn sentence(s: &Subject<'_>, ahead: &Containments, b: &Balance, spare: &Spare, fire: bool) -> String {
    let volume = |q| s.show(q, (&GAL, &M3));
    let at_least = |si: f64, pair| print::at_least(si, s.enquiry.system().pick(pair));
    let need = b.held.q - spare.val.q;
    let left = if spare.val.q.si() < 0.0 {
        format!("{} short", volume(-spare.val.q))
    } else {
        format!("{} to spare", volume(spare.val.q))
    };
    let together = if b.chain.len() > 1 { "together hold" } else { "holds" };
    let allowance = b.allowance.filter(|allowance| allowance.q > b.oil.val.q + b.rain.q);
    let rain = if allowance.is_some() { "its allowance" } else { "rain" };
    let of = if fire { format!("oil, {rain} and fire water") } else { format!("oil and {rain}") };
    let mut says = format!(
        "{} {together} {} and must hold {} of {of}, most of it {}: {left}",
        ahead.names(&b.chain),
        volume(b.held.q),
        volume(need),
        b.largest.word()
    );
    let Some(further) = b.further.filter(|_| spare.val.q.si() < 0.0) else { return says };
    let mut ways = Vec::new();
    // Where the rain is what it is short of, keeping it out is the least that would do.
    let roof = b.largest == Part::Rain && spare.val.q + b.rain.q >= Volume::from_si(0.0);
    ways.extend(roof.then(|| "a roof that keeps the rain out".to_owned()));
    ways.extend(further.depth.map(|d| format!("a depth of {} (filled as it is now)", at_least(d.q.si(), (&IN, &MM)))));
    ways.extend(further.area.map(|a| format!("an area of {}", at_least(a.q.si(), (&FT2, &M2)))));
    ways.extend(further.count.filter(|n| n.q.si() <= MORE).map(|n| match n.q.si() {
        n if n <= 1.0 => "one more of its size".to_owned(),
        n => format!("{} more of its size", print::digits(n, 3)),
    }));
    if !ways.is_empty() {
        says.push_str(&format!(
            "; {} would hold all{} with {}",
            ahead.all[b.place].name,
            if b.spare.val.q < b.dry.val.q { ", fire water included," } else { "" },
            match ways.split_last() {
                Some((last, others)) if !others.is_empty() => format!("{}, or {last}", others.join(", ")),
                _ => ways.join(""),
            }
        ));
    }
    says
}

/// What nobody said of a balance, with what was taken for it; nothing where it holds all the same.
pub(super) fn unsaid(s: &Subject<'_>, spare: &Spare, open: &[&Open]) -> String {
    if open.is_empty() || spare.holds() == Some(true) {
        return String::new();
    }
    format!("; nobody said: {}", open.iter().map(|open| s.taken(&open.key, &open.what, true)).collect::<Vec<_>>().join(", "))
}

/// Questions for what nobody said, each once.
pub(super) fn asks(s: &Subject<'_>, balances: &[&Balance]) -> Vec<Ask> {
    let mut asks: Vec<Ask> = Vec::new();
    for open in balances.iter().flat_map(|b| &b.open) {
        let ask = s.ask_for(&open.key, &open.what);
        if asks.iter().all(|a| a.same() != ask.same()) {
            asks.push(ask);
        }
    }
    asks
}
