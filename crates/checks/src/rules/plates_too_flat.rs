//! Rule: plates too flat

use super::hopper_missing::{few_solids, most_solids, unsure};
use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::enquiry::Enquiry;
use stillrise_units::catalog::{DEG, MG_L};
use stillrise_units::{Angle, Typed};

rule! {
    "plates-too-flat" "Plates too flat for solids", Pack;
    client "The plates are so flat that sludge may stay on them and close the gaps."
    looks "The angle of the plates where solids above 50 mg/L are declared: below 40 degrees it warns, and cannot judge where the solids had to be assumed. Below 45 degrees it passes with a note."
    matters "Sludge slides off steep plates; on flat ones it stays and closes the gaps."
    remedy "Plates of 45 to 60 degrees, or a grit trap ahead and a pack that is lifted out often."
    source "UFGS 44 42 53: 40 to 60 degrees; MIL-HDBK-1005/9A, 1997: 45 to 55; API 421, 1990, at second hand: 45 to 60. Shallow packs of some 25 degrees are common practice without a source"
    limits "What slides depends on the solids and the plates' surface; published angles and practice differ."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(train), Some(basis)) = (&s.design.train, &s.design.basis) else {
        return s.stopped();
    };
    let Some(pack) = &train.unit.pack else { return Verdict::skips("the unit has no plates") };
    let Some(solids) = most_solids(basis) else { return s.stopped() };
    let angle = pack.laid.angle;
    let shown = s.show(angle.q, (&DEG, &DEG));
    let carried = s.show(solids.q, (&MG_L, &MG_L));
    let assumed = !all_declared(s.enquiry);
    let word = if assumed { "assumed" } else { "declared" };
    let says = format!("the plates stand at {shown}, solids of up to {carried} are {word}");
    if angle.q >= Angle::of(45.0, &DEG) {
        Verdict::passes(says)
    } else if angle.q >= Angle::of(40.0, &DEG) {
        Verdict::passes(format!("{says}; some published guides ask for 45 degrees, UFGS for 40"))
    } else if assumed {
        unsure(s, &says, solids).unwrap_or_else(|| {
            let question = "How much suspended solids does each water carry?";
            Verdict::cannot_judge(
                format!("{says}; published guides ask for 40 to 60 degrees"),
                [Ask::new("stream.solids", question)],
                solids.at,
            )
        })
    } else if solids.q > few_solids() {
        Verdict::warns(format!("{says}; published guides ask for 40 to 60 degrees"), angle.at)
    } else {
        Verdict::passes(format!(
            "{says}; published guides ask for 40 to 60 degrees, which matters little with so few solids"
        ))
    }
}

/// Whether the solids of every water were declared.
fn all_declared(e: &Enquiry) -> bool {
    let rain = e.rain.iter().map(|r| r.solids.is_given());
    let mut each = rain.chain(e.streams.iter().map(|s| s.solids.is_given())).peekable();
    each.peek().is_some() && each.all(|given| given)
}
