//! Rule: the inlet jet breaks the droplets

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::UM;

rule! {
    "jet-breaks-droplets" "Inlet jet breaks the droplets", Chamber;
    client "The jet at the inlet may break oil droplets finer than the plates catch."
    looks "The largest droplet that the inlet jet leaves whole, from its mean dissipation in the inlet chamber, against the median droplet the design counts on."
    matters "What the jet breaks below the median, the plates were not sized for."
    remedy "A wider inlet nozzle, a larger inlet chamber, or a deflector that spreads the jet."
    source "Hinze 1955; dissipation of a jet by definition"
    limits "The mean over the chamber; at the jet itself it is higher, for a short time. Detergents lower the tension and are not in it."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(basis), Some(performance)) = (&s.design.basis, &s.design.performance) else {
        return s.stopped();
    };
    let Some(zones) = &performance.zones else { return s.stopped() };
    let Some(survives) = zones.jet.survives else {
        return Verdict::passes("the jet is too gentle to break any droplet");
    };
    let (whole, median) = (survives.q, basis.droplets.d50.q);
    let says = format!(
        "droplets up to {} come through the jet whole, the median is {}",
        s.show(whole, (&UM, &UM)),
        s.show(median, (&UM, &UM))
    );
    if whole < median { Verdict::warns(says, survives.at) } else { Verdict::passes(says) }
}
