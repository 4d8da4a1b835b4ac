//! Rule: limit not shown to be kept

use crate::ask::LIMIT;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_design::performance::limit::{LimitVerdict, Word};
use stillrise_handbook::fluids::pollutants::Gravity;

rule! {
    "limit-not-shown" "Limit not shown to be kept", Effluent;
    client "The calculation does not show that every limit is kept."
    looks "The word the prediction finds for each limit: not shown and not by gravity fail, likely warns, kept passes. Where no limit is stated it cannot judge."
    matters "A limit is the customer's promise to his authority. The words say how much of it the separator can carry."
    remedy "What the finding names; no shear ahead, less detergent, a polisher behind; more plates where it is free oil that they let through."
    source "Handbook formulas of rise, tank and plates; the four words and the bounds behind them are our proposal"
    limits "Limits that gravity cannot touch and rig tests stand under their own rules. The prediction rests on the droplets, which are seldom measured."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let mut worst: Option<&LimitVerdict> = None;
    let mut says = Vec::new();
    for verdict in &performance.limits {
        let Some(limit) = basis.limits.get(verdict.limit) else { continue };
        if limit.pollutant.gravity == Gravity::Cannot || limit.statistic.q == Statistic::RigTest {
            continue;
        }
        if worst.is_none_or(|w| verdict.word > w.word) {
            worst = Some(verdict);
        }
        says.push((verdict.word, format!("{}, {}: {}", limit.title(), verdict.says(), verdict.reason())));
    }
    let Some(worst) = worst else {
        return if basis.limits.is_empty() {
            Verdict::cannot_judge("no limit is stated to hold the prediction against", [LIMIT], None)
        } else {
            Verdict::skips("no limit is one that a prediction can be held against")
        };
    };
    // What is not kept comes first.
    says.sort_by_key(|(word, _)| core::cmp::Reverse(*word));
    let says = says.into_iter().map(|(_, text)| text).collect::<Vec<_>>().join("; ");
    match worst.word {
        Word::Kept => Verdict::passes(says),
        Word::Likely => Verdict::warns(says, worst.expected.at),
        Word::NotShown | Word::NotByGravity => Verdict::fails(says, worst.expected.at),
    }
}
