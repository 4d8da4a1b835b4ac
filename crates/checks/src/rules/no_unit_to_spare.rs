//! Rule: no unit to spare

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{GPM, M3_H};
use stillrise_units::{Typed, print};

rule! {
    "no-unit-to-spare" "No unit to spare while one is shut", Unit;
    client "While one unit is shut for cleaning, the others do not carry all the water as they should."
    looks "Of several units that run in parallel, the largest flow over those that are left while one is shut for cleaning, against the rated flow of one: above it warns. Where none of them is rated, more than its share warns. Where the rating of a described unit was not said, it cannot judge."
    matters "Plates are washed and sludge is pumped with the unit shut. Meanwhile its share runs through the others, which then leave more oil, and may hold less of it."
    remedy "A unit that stands by (unit.standby), cleaning while little or no water comes, or units so large that the others do without one."
    source "Needs no authority: the same water through fewer units"
    limits "Takes the largest flow to come while one is shut; where washing can be stopped, it need not. One unit alone has nothing to share with."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(_), Some(train)) = (&s.design.performance, &s.design.train) else { return s.stopped() };
    if train.count.q.si() < 1.5 && train.standby.is_none() {
        return Verdict::skips("there is one unit");
    }
    let Some(shut) = train.around.shut else { return s.stopped() };
    let flow = |q| s.show(q, (&GPM, &M3_H));
    let says = format!(
        "while one is shut {} comes to each of {}, {} more than its share when all run",
        flow(shut.each.q),
        print::digits(shut.running.q.si(), 2),
        s.percent(shut.over.q)
    );
    if shut.over.q.si() <= 1e-9 {
        return Verdict::passes(format!("while one is shut {} comes to each, as when all run", flow(shut.each.q)));
    }
    let p = &train.unit.particulars;
    match &p.rated {
        Some((rated, _)) if shut.each.q > rated.q => {
            Verdict::warns(format!("{says}, above the rated {}", flow(rated.q)), shut.each.at)
        }
        Some((rated, _)) => Verdict::passes(format!("{says}, within the rated {}", flow(rated.q))),
        None if p.left_out.contains(&"rated_flow") => {
            let ask = Ask::unit(s, "rated_flow", "What flow is the unit rated for, and on what basis?");
            Verdict::cannot_judge(format!("{says}; what one is rated for is not stated"), [ask], shut.each.at)
        }
        None => Verdict::warns(format!("{says}, for which it was made"), shut.each.at),
    }
}
