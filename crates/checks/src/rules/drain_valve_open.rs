//! Rule: drain valve open

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::containment::Containment;
use stillrise_design::basis::containment::drain::Shut;
use stillrise_units::catalog::{GPM, M3_H};

rule! {
    "drain-valve-open" "Drain of a containment stands open", Inlet;
    client "With its drain open the containment holds no spill."
    looks "How the drain of each containment stands as a rule. Open, it fails, or warns where a closure shuts the outlet behind the separator; shut by a device, it warns; where nobody said, or people say different things, it cannot be judged."
    matters "With its drain open a containment holds nothing: the spill is gone before anybody comes, unless a closure shuts in time."
    remedy "Keep it locked closed, drain by hand after a look for sheen, and keep a record; or a pump that somebody starts."
    source "40 CFR 112.8(c)(3): bypass valves normally sealed closed, opened and closed again under supervision, with records; no flapper valves on drains of diked areas, by the parallel text of 112.12(b)"
    limits "A claim on paper: how the valve stands today is seen on site."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let Some(ahead) = &basis.containment else { return Verdict::skips("no containment is declared") };
    let of = |shut: Shut| ahead.all.iter().filter(move |c| c.valve.shut() == shut);
    let names = |shut: Shut| of(shut).map(|c| c.name.as_str()).collect::<Vec<_>>().join(", ");
    let closure = basis.closure == Some(true);
    if let Some(first) = of(Shut::Open).next() {
        let rate = |c: &Containment| match &c.drain {
            Some(drain) => format!("{} at {}", c.name, s.show(drain.rate.q, (&GPM, &M3_H))),
            None => c.name.clone(),
        };
        let names: Vec<String> = of(Shut::Open).map(rate).collect();
        let says = format!("the drain stands open ({}), and nothing of a spill is held there", names.join(", "));
        if closure {
            let says = format!("{says} unless the closure behind the separator shuts in time");
            return Verdict::warns(says, first.valve.is.at);
        }
        return Verdict::fails(format!("{says}; nothing shuts the outlet either"), first.valve.is.at);
    }
    if let Some(first) = of(Shut::Unknown).next() {
        let names = names(Shut::Unknown);
        let says = format!("nobody said for sure how the drain stands ({names}); open, nothing is held");
        let asks: Vec<Ask> = of(Shut::Unknown)
            .map(|c| s.ask_for(&format!("containment \"{}\".drain", c.name), "usual position of the drain valve"))
            .collect();
        return Verdict::cannot_judge(says, asks, first.valve.is.at);
    }
    if let Some(first) = of(Shut::Device).next() {
        let names = names(Shut::Device);
        let says =
            format!("what is held relies on a device that shuts the drain ({names}); ask when it was last tested");
        return Verdict::warns(says, first.valve.is.at);
    }
    Verdict::passes(format!("closed, or no drain at all: {}", names(Shut::Closed)))
}
