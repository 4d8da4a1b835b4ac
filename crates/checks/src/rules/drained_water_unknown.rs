//! Rule: nobody knows what is drained

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::cases::Kind;
use stillrise_units::catalog::MG_L;

rule! {
    "drained-water-unknown" "Nobody knows what is drained from a containment", Inlet;
    client "Nobody has said how much oil is in the water that is drained from the containment."
    looks "Whether the oil content of the water that is drained from a containment to the separator was stated for that water itself."
    matters "Rain on clean stone carries next to nothing, the water under a spill may carry hundreds of milligrams of fine droplets. What another water on site carries says nothing of either."
    remedy "A sample from the containment after rain; after a spill, one from under the oil before anything is drained."
    source "Our proposal"
    limits "One content for every drain-down, after rain and after a spill alike."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let Some(ahead) = &basis.containment else { return Verdict::skips("no containment is declared") };
    let drained = ahead.all.iter().zip(&s.enquiry.containments).filter(|(c, _)| c.drain.is_some() && c.to.is_none());
    let (known, unknown): (Vec<_>, Vec<_>) =
        drained.partition(|(_, block)| block.oil.as_ref().is_some_and(|oil| oil.mean.is_given()));
    if let Some((first, _)) = unknown.first() {
        let names: Vec<&str> = unknown.iter().map(|(c, _)| c.name.as_str()).collect();
        let case = basis.cases.iter().find(|c| c.kind == Kind::DrainDown && c.parts.first() == Some(&first.name));
        let content = case.and_then(|c| Some((c, c.content.as_ref()?)));
        let stands = content.map_or_else(String::new, |(case, content)| {
            format!("; {} stand in for it in \"{}\"", s.show(content.total.q, (&MG_L, &MG_L)), case.name)
        });
        let says = format!("what the water drained from {} carries was not said{stands}", names.join(", "));
        let asks: Vec<Ask> = unknown
            .iter()
            .map(|(c, _)| s.ask_for(&format!("containment \"{}\".oil.mean", c.name), "oil content of what is drained"))
            .collect();
        return Verdict::cannot_judge(says, asks, content.map(|(_, content)| content.total.at));
    }
    if known.is_empty() {
        return Verdict::skips("no metered drain leads to the separator");
    }
    let names: Vec<&str> = known.iter().map(|(c, _)| c.name.as_str()).collect();
    Verdict::passes(format!("the oil content is stated of {} of them: {}", known.len(), names.join(", ")))
}
