//! Rule: droplet table starts late

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{PERCENT, UM};
use stillrise_units::{Length, Typed, print};

rule! {
    "droplet-table-starts-late" "Droplet table starts late", Inlet;
    client "The droplet sizes that were measured do not reach down to the fine ones, which are taken to pass."
    looks "How much of the oil a measured table leaves undivided below its finest size: more than a tenth warns."
    matters "What was not divided is taken to pass whole, so that the table's first row, not the separator, sets the effluent."
    remedy "Measure finer droplets, or state a law with its median and spread."
    source "Definition of the integral behind `remaining-oil`; a tenth is our proposal"
    limits "Looks at the first row only, not at how far the rows lie apart."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let table = &basis.droplets.table;
    let Some((size, share)) = table.q.0.first() else { return Verdict::skips("the droplets were not measured") };
    let percent = format!("{} %", print::digits(PERCENT.from_si(*share), 3));
    let says =
        format!("{percent} of the oil is finer than the finest row, {}", s.show(Length::from_si(*size), (&UM, &UM)));
    if *share > 0.1 { Verdict::warns(format!("{says}, and is taken to pass"), table.at) } else { Verdict::passes(says) }
}
