//! Rule: a limit gravity cannot touch

use crate::ask::LIMIT;
use crate::rule::{Subject, Verdict, rule};
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_units::catalog::MG_L;

rule! {
    "limit-it-cannot-touch" "A limit gravity cannot touch", Effluent;
    client "One limit is on something that a separator lets pass unchanged."
    looks "Limits on a pollutant of which gravity removes nothing: what is dissolved, or a property of the water. Where no limit is stated it cannot judge."
    matters "The separator leaves it as it came; only the inlet decides whether the limit is kept."
    remedy "Show from data that the water keeps the limit as it arrives, or give the limit to a stage that acts on it."
    source "Handbook, list of pollutants, each row with its own source"
    limits "Some goes with oil and grit (metals, oxygen demand); how much is not known, so none is counted."
}

fn look(s: &Subject<'_>) -> Verdict {
    let limits = &s.enquiry.limits;
    if limits.is_empty() {
        return Verdict::cannot_judge("no limit is stated that could be looked at", [LIMIT], None);
    }
    let named = |l: &stillrise_design::enquiry::blocks::Limit| {
        let row = l.of().filter(|row| row.gravity == Gravity::Cannot)?;
        let what = match l.value.ph.0 {
            Some(ph) => ph.to_string(),
            None => match l.value.q() {
                Some(q) => format!("{} {}", row.title, s.show(q, (&MG_L, &MG_L))),
                None => format!("{}, whose number nobody said", row.title),
            },
        };
        Some(format!("{what} ({})", row.what_could.trim_end_matches('.').to_lowercase()))
    };
    let beyond: Vec<String> = limits.iter().filter_map(named).collect();
    if beyond.is_empty() {
        return Verdict::passes(format!(
            "gravity acts on {} of {} pollutants that are limited",
            limits.len(),
            limits.len()
        ));
    }
    let basis = s.design.basis.as_ref();
    let first =
        basis.and_then(|b| b.limits.iter().find(|l| l.pollutant.gravity == Gravity::Cannot)).map(|l| l.value.at);
    let first = first.or_else(|| basis.and_then(|b| b.ph_limits.first()).map(|l| l.low.at));
    Verdict::fails(format!("gravity removes nothing of: {}", beyond.join("; ")), first)
}
