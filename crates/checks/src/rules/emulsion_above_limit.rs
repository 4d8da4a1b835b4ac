//! Rule: emulsion above the limit

use crate::ask::LIMIT;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::limits::LimitState;
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_units::Typed;
use stillrise_units::catalog::MG_L;

rule! {
    "emulsion-above-limit" "Emulsified and dissolved oil above the limit", Effluent;
    looks "Emulsified and dissolved oil of the case that carries most of them, against what the lowest limit on oil demands. Where no limit is stated it cannot judge."
    matters "Both pass any separator. If they alone are above the limit, no plate area keeps it."
    remedy "Less detergent, a quick-break cleaner and time to break, no shear; or a stage behind the separator that takes emulsions."
    source "Gravity removes free oil only: MIL-HDBK-1005/9A, 1997; the comparison is arithmetic"
    limits "Shares of emulsified oil are often assumed. Methods of analysis see dissolved oil in part only; all of it is counted. Limits on free oil, on sheen and by rig test are left out."
}

/// A limit whose number counts emulsified and dissolved oil.
fn counts(l: &&LimitState) -> bool {
    let free_only = matches!(l.pollutant.word, "free oil" | "sheen");
    l.pollutant.gravity == Gravity::Touches && !free_only && l.statistic.q != Statistic::RigTest
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let demanded = |l: &LimitState| l.mean.unwrap_or(l.value).q;
    let lowest = basis.limits.iter().filter(counts).min_by(|a, b| demanded(a).si().total_cmp(&demanded(b).si()));
    let Some(limit) = lowest else {
        return if basis.limits.is_empty() {
            Verdict::cannot_judge("no limit is stated to hold the prediction against", [LIMIT], None)
        } else {
            Verdict::skips("no limit counts emulsified oil")
        };
    };
    let contents = basis.cases.iter().filter_map(|c| c.content.as_ref().map(|content| (c, content)));
    let worst = contents.max_by(|(_, a), (_, b)| {
        (a.emulsified.q + a.dissolved.q).si().total_cmp(&(b.emulsified.q + b.dissolved.q).si())
    });
    let Some((case, content)) = worst else { return s.stopped() };
    let stays = content.emulsified.q + content.dissolved.q;
    let show = |q| s.show(q, (&MG_L, &MG_L));
    let says = format!(
        "{}: {} emulsified and {} dissolved, {} together, against {} {}",
        case.event,
        show(content.emulsified.q),
        show(content.dissolved.q),
        show(stays),
        show(demanded(limit)),
        if limit.mean.is_some() { "of long-term mean demanded" } else { "of the limit" }
    );
    if stays > demanded(limit) { Verdict::fails(says, content.emulsified.at) } else { Verdict::passes(says) }
}
