//! Rule: kind of pump not said

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::UM;

rule! {
    "kind-of-pump-unknown" "Kind of pump not said", Inlet;
    looks "Water that is pumped by a pump whose kind the enquiry does not say."
    matters "Classes of pumps differ more than a hundredfold in the power they dissipate, and so in how fine they break the oil. A fine emulsion made ahead of the unit is not undone in it."
    remedy "Ask which pump lifts the water; offer a slow positive-displacement pump if it is not chosen yet."
    source "Published rankings of pumps by shear: IMO MEPC.1/Circ.677 and the SPE's encyclopaedia; the figures behind them are judgement"
    limits "While the kind is not known, no shear is counted: the prediction is on the hopeful side."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return Verdict::skips("there is no basis") };
    if !basis.feed.pumped {
        return Verdict::skips("the water runs by gravity");
    }
    let droplets = s.show(basis.droplets.d50.q, (&UM, &UM));
    match basis.feed.class {
        // The list of pumps has a row for no pump at all.
        Some(class) if class.word == "gravity" => {
            Verdict::warns("the water is said to be pumped, and the pump to be none: free flow", basis.droplets.d50.at)
        }
        Some(class) => Verdict::passes(format!("{}: {}", class.word, class.meaning)),
        None if s.enquiry.droplets.d50.is_given() => Verdict::warns(
            format!(
                "the pump is not known; its pulsation is not counted, its shear stands in the stated median of {droplets}"
            ),
            basis.droplets.d50.at,
        ),
        None => Verdict::warns(
            format!("the pump is not known; the median droplet of {droplets} is taken as if no pump broke it"),
            basis.droplets.d50.at,
        ),
    }
}
