//! The cases and what was interpreted.

use super::section;
use crate::render::text::{Table, item};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::{Case, Kind};
use stillrise_search::Settled;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Typed, print};

/// Which case governs what, as pairs of what and case.
#[must_use]
pub fn governs(settled: &Settled) -> Vec<(&'static str, String)> {
    let mut out = Vec::new();
    let Some(basis) = &settled.job.design.basis else { return out };
    if let Some(case) = basis.largest_steady() {
        out.push(("plates", case.name.clone()));
    }
    if let Some(case) = stillrise_design::basis::cases::largest(&basis.cases) {
        out.push(("hydraulics", case.name.clone()));
    }
    if let Some(worst) = settled.job.design.performance.as_ref().and_then(|p| p.worst()) {
        out.push(("effluent", worst.case.clone()));
    }
    if basis.spill.as_ref().is_some_and(|s| !s.is_held_ahead()) {
        out.push(("oil store", "spill".to_owned()));
    }
    out
}

pub(super) fn cases(out: &mut String, settled: &Settled, width: usize) {
    let Some(basis) = &settled.job.design.basis else { return };
    let system = settled.job.enquiry.system();
    let unit = system.pick(FLOW_UNITS);
    out.push_str(&section("Cases"));
    let flow = |q: stillrise_units::Flow| print::digits(unit.from_si(q.si()), 4);
    let mut table = Table::new([
        "case",
        &format!("arrives {}", unit.symbol),
        &format!("to unit {}", unit.symbol),
        "free mg/L",
        "emulsified",
        "dissolved",
        "solids",
        "governs",
    ]);
    let governed = governs(settled);
    for case in &basis.cases {
        let mg = |pick: fn(&stillrise_design::basis::waters::Content) -> stillrise_units::Concentration| {
            case.content.as_ref().map_or_else(|| "-".to_owned(), |c| print::digits(MG_L.from_si(pick(c).si()), 3))
        };
        let roles: Vec<&str> = governed
            .iter()
            .filter(|(what, name)| name == &case.name || (*what == "oil store" && case.kind == Kind::Spill))
            .map(|(what, _)| *what)
            .collect();
        table.row([
            name(case),
            flow(case.inflow.q),
            flow(case.feed.q),
            mg(|c| c.free.q),
            mg(|c| c.emulsified.q),
            mg(|c| c.dissolved.q),
            mg(|c| c.solids.q),
            roles.join(", "),
        ]);
    }
    out.push_str(&table.render(width));
    let cold = print::with_unit(
        basis.fluids.cold.temperature.q.si(),
        system.pick((&stillrise_units::catalog::DEG_F, &stillrise_units::catalog::DEG_C)),
    );
    let warm = print::with_unit(
        basis.fluids.warm.temperature.q.si(),
        system.pick((&stillrise_units::catalog::DEG_F, &stillrise_units::catalog::DEG_C)),
    );
    out.push_str(&format!("Each case in the coldest water, {cold}, and the warmest, {warm}; clean, and at the end of the interval between pump-outs.\n"));
}

fn name(case: &Case) -> String {
    if case.parts.len() > 1 { format!("{} ({})", case.name, case.parts.join(" + ")) } else { case.name.clone() }
}

pub(super) fn read_notes(out: &mut String, settled: &Settled, width: usize) {
    let notes = &settled.job.enquiry.notes;
    if notes.is_empty() {
        return;
    }
    out.push_str(&section("How the enquiry was read"));
    for (place, note) in notes {
        out.push_str(&item("-", &format!("{place}: {note}"), width));
    }
}
