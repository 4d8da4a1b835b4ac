//! The cases and what was interpreted.

use super::section;
use crate::render::text::{Table, item};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::{Case, Kind};
use stillrise_search::Settled;
use stillrise_units::catalog::MG_L;
use stillrise_units::{Typed, print};

/// What a case governs.
#[must_use]
pub fn governs(settled: &Settled, case: &Case) -> Vec<&'static str> {
    let mut out = Vec::new();
    let Some(basis) = &settled.job.design.basis else { return out };
    let is = |other: Option<&Case>| other.is_some_and(|other| core::ptr::eq(other, case));
    if is(basis.largest_steady()) {
        out.push("plates");
    }
    if is(stillrise_design::basis::cases::largest(&basis.cases)) {
        out.push("hydraulics");
    }
    let worst = settled.job.design.performance.as_ref().and_then(|p| p.worst());
    if is(worst.and_then(|w| basis.cases.get(w.case_index))) {
        out.push("effluent");
    }
    if basis.spill.is_some() && case.kind == Kind::Spill {
        out.push("oil store");
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
    for case in &basis.cases {
        let mg = |pick: fn(&stillrise_design::basis::waters::Content) -> stillrise_units::Concentration| {
            case.content.as_ref().map_or_else(|| "-".to_owned(), |c| print::digits(MG_L.from_si(pick(c).si()), 3))
        };
        let roles = governs(settled, case);
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
