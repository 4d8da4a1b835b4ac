//! Rule: gap too narrow

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, Typed};

rule! {
    "gap-too-narrow" "Gap between plates too narrow", Pack;
    client "The gaps between the plates are narrow and may clog with solids."
    looks "The clear gap between plates: below {0.75 in|19 mm} it warns."
    matters "Narrow gaps give much plate area in little room, and clog with solids, hair and wax."
    remedy "A pack with wider gaps, or screening ahead and a pack that is lifted out often."
    source "UFGS 44 42 53: {0.75 in|19 mm} and more; MIL-HDBK-1005/16, 1997, and API 421, 1990, at second hand: {0.75 to 1.5 in|19 to 38 mm}"
    limits "Clean water with few solids may do with less."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(train) = &s.design.train else { return s.stopped() };
    let Some(pack) = &train.unit.pack else { return Verdict::skips("the unit has no plates") };
    let gap = pack.laid.gap;
    let says = format!("the clear gap is {}", s.show(gap.q, (&IN, &MM)));
    // Three quarters of an inch, which the guides round to 19 mm.
    let least = s.spoken("{0.75 in|19 mm}");
    if gap.q < Length::of(19.0, &MM) {
        Verdict::warns(format!("{says}, below the {least} of published guides"), gap.at)
    } else {
        Verdict::passes(format!("{says}, published guides ask for {least} and more"))
    }
}
