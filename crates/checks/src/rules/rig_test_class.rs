//! Rule: class by rig test

use crate::ask::{Ask, LIMIT};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_units::catalog::MG_L;

rule! {
    "rig-test-class" "Class by rig test", Effluent;
    client "The class that is asked for is the result of a test; no calculation shows it."
    looks "Limits that are met by a type test of the unit on a rig, as the classes of EN 858-1. Where no limit is stated, or one without its statistic, it cannot judge."
    matters "Such a class is the result of a full-scale test. No calculation shows it, and no calculated unit is called by it."
    remedy "A test report of this unit by the standard named, or a unit that has one."
    source "EN 858-1, 2002: classes I and II by a full-scale test, as quoted by other texts"
    limits "Reads the statistic of the limit only; a class that is named in a text elsewhere is not seen."
}

fn look(s: &Subject<'_>) -> Verdict {
    let limits = &s.enquiry.limits;
    if limits.is_empty() {
        return Verdict::cannot_judge("no limit is stated that could be looked at", [LIMIT], None);
    }
    let tested = |l: &&stillrise_design::enquiry::blocks::Limit| l.statistic.0 == Some(Statistic::RigTest);
    let named: Vec<String> = limits
        .iter()
        .filter(tested)
        .map(|l| {
            let value = l.value.q().map(|q| s.show(q, (&MG_L, &MG_L))).unwrap_or_default();
            format!("{} {value}", l.pollutant.as_deref().unwrap_or("a limit"))
        })
        .collect();
    let basis = s.design.basis.as_ref();
    if named.is_empty() {
        let open = basis.iter().flat_map(|b| &b.limits).filter(|l| s.assumed(l.statistic.at).is_some());
        let asks: Vec<Ask> = open.flat_map(|l| s.asked(l.statistic.at)).collect();
        let silent = limits.iter().filter(|l| l.statistic.0.is_none()).count();
        return if silent == 0 {
            Verdict::skips("no limit is one by rig test")
        } else {
            Verdict::cannot_judge(
                format!("{silent} of {} limits do not say by which statistic, a rig test or another", limits.len()),
                asks,
                None,
            )
        };
    }
    let at = basis.and_then(|b| b.limits.iter().find(|l| l.statistic.q == Statistic::RigTest)).map(|l| l.value.at);
    Verdict::warns(format!("no calculation can show: {} by rig test", named.join(", ")), at)
}
