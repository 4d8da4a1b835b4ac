//! Rule: gap too narrow

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, Typed};

rule! {
    "gap-too-narrow" "Gap between plates too narrow", Pack;
    looks "The clear gap between plates: below 19 mm (3/4 in) it warns."
    matters "Narrow gaps give much plate area in little room, and clog with solids, hair and wax."
    remedy "A pack with wider gaps, or screening ahead and a pack that is lifted out often."
    source "UFGS 44 42 53: 19 mm and more; MIL-HDBK-1005/16, 1997, and API 421, 1990, at second hand: 0.75 to 1.5 in"
    limits "Clean water with few solids may do with less."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(train) = &s.design.train else { return s.stopped() };
    let Some(pack) = &train.unit.pack else { return Verdict::skips("the unit has no plates") };
    let gap = pack.laid.gap;
    let says = format!("the clear gap is {}", s.show(gap.q, (&IN, &MM)));
    if gap.q < Length::of(19.0, &MM) {
        Verdict::warns(format!("{says}, below the 19 mm (3/4 in) of published guides"), gap.at)
    } else {
        Verdict::passes(format!("{says}, published guides ask for 19 mm (3/4 in) and more"))
    }
}
