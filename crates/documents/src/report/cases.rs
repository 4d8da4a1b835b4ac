//! The cases, and which of them governs what.

use super::blocks::{Table, number, wide};
use super::{Report, capital, sentence};
use stillrise_design::Val;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::{Case, largest};
use stillrise_design::basis::waters::Content;
use stillrise_design::provenance::Pair;
use stillrise_units::Concentration;
use stillrise_units::catalog::{GAL, M3, MG_L, PERCENT};

const MG: Pair = (&MG_L, &MG_L);

/// Section 3.
pub(super) fn cases(r: &mut Report<'_>) {
    r.out.section("Cases");
    let settled = r.settled;
    let Some(basis) = &settled.job.design.basis else {
        r.out.para("None: there is no basis.");
        return;
    };
    let flow = r.symbol(FLOW_UNITS);
    let mut table = Table::new([
        wide("Case", 1.1),
        wide("Waters in it", 1.3),
        number("Arrives", flow),
        number("To the|unit", flow),
        number("Free|oil", "mg/L"),
        number("Emulsified", "mg/L"),
        number("Dissolved", "mg/L"),
        number("Total", "mg/L"),
        number("Solids", "mg/L"),
        number("No.", ""),
    ]);
    for case in &basis.cases {
        let mg = |pick: fn(&Content) -> Val<Concentration>| {
            case.content.as_ref().map_or_else(|| "–".to_owned(), |c| r.digits(pick(c).q, MG, 3))
        };
        table.row([
            capital(&case.name),
            case.parts.join(", "),
            r.digits(case.inflow.q, FLOW_UNITS, 3),
            r.digits(case.feed.q, FLOW_UNITS, 3),
            mg(|c| c.free),
            mg(|c| c.emulsified),
            mg(|c| c.dissolved),
            mg(|c| c.total),
            mg(|c| c.solids),
            r.no(case.feed.at),
        ]);
    }
    r.out.table(&table);
    r.out.para(
        "Each case with a steady content is looked at in the coldest and in the warmest water, clean and at the end of the interval between \
         pump-outs (oil at the alarm, mesh and plates fouled). A spill is a matter of storage, not of steady removal.",
    );
    let mut own: Vec<(String, String)> = Vec::new();
    for case in &basis.cases {
        if let Some(cycle) = &case.cycle {
            let numbers = format!("{}, {}", r.no(cycle.runs.at), r.no(cycle.period.at));
            own.push((format!("{}: {}.", capital(&case.name), crate::summary::runs(cycle)), format!("No. {numbers}")));
        }
    }
    own.extend(crate::summary::differs(basis, r.system).into_iter().map(|line| (sentence(&line), String::new())));
    if !own.is_empty() {
        r.out.lead("Where cases differ.", "Besides flow and content:");
        r.out.list(false, own);
    }
    let mut table = Table::new([wide("What is governed", 1.0), wide("By which case", 1.0), wide("Because", 2.0)]);
    let name = |case: Option<&Case>| case.map_or_else(|| "none".to_owned(), |c| c.name.clone());
    table.row([
        "Plate area".to_owned(),
        name(basis.largest_steady()),
        "the largest flow to the unit with a steady content, in the coldest water".to_owned(),
    ]);
    table.row([
        "Hydraulics".to_owned(),
        name(largest(&basis.cases)),
        "the largest flow to the unit of all cases, at the end of the interval".to_owned(),
    ]);
    if let Some(p) = &settled.job.design.performance {
        let behind = r.behind([p.storage.oil_rate.at]);
        if let Some(usual) = p.removals.iter().find(|x| x.left.at.index().is_some_and(|k| behind.contains(&k))) {
            table.row([
                "What collects".to_owned(),
                usual.case.clone(),
                "all waters of an average day, separated as in this case".to_owned(),
            ]);
        }
        if let Some(worst) = p.worst() {
            table.row([
                "Effluent".to_owned(),
                worst.case.clone(),
                "most total oil expected at the end of the interval".to_owned(),
            ]);
        }
    }
    if let Some(spill) = &basis.spill {
        table.row([
            "Oil store".to_owned(),
            "spill".to_owned(),
            if spill.is_held_ahead() {
                "none: the spill is held ahead".to_owned()
            } else {
                let volume = r.show(spill.at_unit().q, (&GAL, &M3));
                // A volume that nobody told is asked for, and decides nothing.
                let taken = if !spill.is_told { " (taken from its rate; asked for)" } else { "" };
                format!("{volume}{taken} must find room above the alarm")
            },
        ]);
    }
    r.out.table(&table);
    if let Some(fouling) = r.row(basis.methods.fouling.at) {
        let loss = r.show(basis.methods.fouling.q, (&PERCENT, &PERCENT));
        r.out.remark(&format!(
            "At the end of the interval {loss} of the plate area are taken as lost (No. {}).",
            fouling[3]
        ));
    }
}
