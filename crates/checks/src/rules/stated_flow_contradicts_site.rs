//! Rule: stated flow contradicts the site

use crate::ask::WATERS;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::cases::Kind;
use stillrise_units::catalog::{GPM, M3_H, PERCENT};
use stillrise_units::{Typed, print};

rule! {
    "stated-flow-contradicts-site" "Stated flow contradicts the site", Enquiry;
    client "The flow that was stated does not agree with the areas, rain and waters of the site."
    looks "The design flow that somebody stated against the largest steady flow that surfaces, streams and cases give: more than a tenth above it fails, more than a tenth below it warns. Where nothing else is known of the site it cannot judge."
    matters "A unit for the stated flow is too small for the site, or the customer pays for more than he needs; either way one of the two statements is wrong."
    remedy "To be found out: where the stated flow comes from. Then it is to be corrected, or the areas, rain and streams are."
    source "Our proposal; a tenth is about what rounding and method of the storm flow explain"
    limits "Compares what arrives, ahead of pump, flow cap and bypass. A bypass that is meant to carry the rest is not known here."
}

/// Share by which the two may differ.
const TENTH: f64 = 0.1;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let Some(stated) = basis.stated else { return Verdict::skips("no flow was stated as that of the whole site") };
    let site = basis.cases.iter().filter(|c| c.content.is_some() && !matches!(c.kind, Kind::Stated | Kind::DrainDown));
    let Some(case) = site.max_by(|a, b| a.inflow.q.si().total_cmp(&b.inflow.q.si())) else {
        let says = format!(
            "{} are stated, and nothing is known of the site to hold them against",
            s.show(stated.q, (&GPM, &M3_H))
        );
        return Verdict::cannot_judge(says, [WATERS], stated.at);
    };
    let off = ((case.inflow.q - stated.q) / stated.q).si();
    let show = |q| s.show(q, (&GPM, &M3_H));
    let percent = || print::in_prose(off.abs(), &PERCENT);
    let against = match off {
        off if off >= 1.0 => format!("{} times", print::digits(off + 1.0, 2)),
        off if off >= 0.0 => format!("{} more than", percent()),
        _ => format!("{} less than", percent()),
    };
    let says =
        format!("the site gives {} ({}), {against} the stated {}", show(case.inflow.q), case.event, show(stated.q));
    if off > TENTH {
        Verdict::fails(says, stated.at)
    } else if off < -TENTH {
        Verdict::warns(says, stated.at)
    } else {
        Verdict::passes(says)
    }
}
