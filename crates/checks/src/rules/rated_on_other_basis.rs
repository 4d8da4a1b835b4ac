//! Rule: rated flow without its basis

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{GPM, M3_H};

rule! {
    "rated-on-other-basis" "Rated flow without its basis", Unit;
    client "The rated flow was stated without the droplet and the oil that it holds for."
    looks "A rated flow that does not say for which droplet, oil, temperature and state it holds."
    matters "The same unit can carry a rating several times as large on a coarser droplet or a lighter oil; two ratings compare only on one basis."
    remedy "State rated_basis in the range, and compare units by their plate area and prediction."
    source "Common practice of the trade"
    limits "Reads whether a basis is stated, not whether it is the duty's."
}

/// What the design puts in the place of a basis that the row leaves out.
const LEFT_OUT: &str = "basis not stated";

fn look(s: &Subject<'_>) -> Verdict {
    let Some(train) = &s.design.train else { return s.stopped() };
    let Some((flow, basis)) = &train.unit.particulars.rated else {
        return Verdict::skips("the unit carries no rated flow");
    };
    let shown = s.show(flow.q, (&GPM, &M3_H));
    if basis.trim().is_empty() || basis == LEFT_OUT {
        Verdict::warns(format!("rated {shown}, without saying for which droplet, oil and temperature"), flow.at)
    } else {
        Verdict::passes(format!("rated {shown} on the basis \"{basis}\""))
    }
}
