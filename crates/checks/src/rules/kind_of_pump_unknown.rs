//! Rule: kind of pump not said

use super::pump_above_rating::pumped;
use crate::ask::PUMP;
use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::separation::pumps::Class;
use stillrise_units::catalog::UM;

rule! {
    "kind-of-pump-unknown" "Kind of pump not said", Inlet;
    client "Nobody has said which kind of pump lifts the water; some break oil so fine that it no longer rises."
    looks "The class of the pump that lifts the water. Where its kind was not said it cannot judge; a pump that is said to be none warns."
    matters "Classes of pumps differ more than a hundredfold in the power they dissipate, and so in how fine they break the oil. A fine emulsion made ahead of the unit is not undone in it."
    remedy "Ask which pump lifts the water; offer a slow positive-displacement pump if it is not chosen yet."
    source "Published rankings of pumps by shear: IMO MEPC.1/Circ.677 and the SPE's encyclopaedia; the figures behind them are judgement"
    limits "While the kind is not known, the centrifugal pump of most sumps is taken, or no shear beyond that in a stated median."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    if let Err(verdict) = pumped(s) {
        return verdict;
    }
    let droplets = s.show(basis.droplets.d50.q, (&UM, &UM));
    match basis.feed.class {
        // The list of pumps has a row for no pump at all.
        Some(pump) if pump.class == Class::FreeFlow => {
            Verdict::warns("the water is said to be pumped, and the pump to be none: free flow", basis.droplets.d50.at)
        }
        Some(class) => Verdict::passes(format!("{}: {}", class.word, class.meaning)),
        None if s.enquiry.droplets.d50.is_given() => Verdict::cannot_judge(
            format!(
                "the pump is not known; its pulsation is not counted, its shear stands in the stated median of {droplets}"
            ),
            [PUMP],
            basis.droplets.d50.at,
        ),
        None => Verdict::cannot_judge(
            format!("the pump is not known; a median droplet of {droplets} is taken behind it"),
            [PUMP],
            basis.droplets.d50.at,
        ),
    }
}
