//! Rule: no measured results

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::train::UnitOrigin;

rule! {
    "no-measured-results" "No measured results of the unit", Unit;
    client "No results measured on a unit of this type are known: what is told of it is calculated."
    looks "Whether the row of the range states measured results."
    matters "The prediction stands on theory alone; results of the very unit, with their conditions, weigh more than any formula."
    remedy "Measure one unit of the range on a known oil and droplet, and state the result with its conditions."
    source "Our proposal"
    limits "Reads whether results are stated, not whether their conditions are the duty's."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(train) = &s.design.train else { return s.stopped() };
    // Only a row of a range has a type behind it that could have been measured.
    if !matches!(train.origin, UnitOrigin::Row { .. }) {
        return Verdict::skips(format!("the unit is no type of a range: {}", train.origin));
    }
    let particulars = &train.unit.particulars;
    // A row may say in words that there are none.
    let measured = particulars
        .measured
        .as_deref()
        .map(str::trim)
        .filter(|m| !m.is_empty() && !m.to_lowercase().starts_with("none"));
    match measured {
        Some(results) => Verdict::passes(format!("{}: {results}", particulars.model)),
        None => Verdict::warns(format!("the range states no measured results for {}", particulars.model), None),
    }
}
