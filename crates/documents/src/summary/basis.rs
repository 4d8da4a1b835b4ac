//! The cases and what was interpreted.

use super::section;
use crate::render::text::{Table, item};
use stillrise_design::basis::cases::{Brings, Case, Cycle, Kind, largest_place};
use stillrise_design::basis::{Basis, FLOW_UNITS};
use stillrise_search::Settled;
use stillrise_units::catalog::{DEG_C, DEG_F, MG_L, MIN, PERCENT, UM};
use stillrise_units::{System, Typed, print};

/// Which case governs what, as pairs of what and the case's place.
#[must_use]
pub fn governs(settled: &Settled) -> Vec<(&'static str, usize)> {
    let mut out = Vec::new();
    let Some(basis) = &settled.job.design.basis else { return out };
    out.extend(basis.largest_steady_place().map(|k| ("plates", k)));
    out.extend(largest_place(&basis.cases).map(|k| ("hydraulics", k)));
    let worst = settled.job.design.performance.as_ref().and_then(|p| p.worst());
    out.extend(worst.map(|worst| ("effluent", worst.case_index)));
    let held = basis.spill.as_ref().is_some_and(|s| s.is_held_ahead());
    let spill = basis.cases.iter().position(|c| c.kind == Kind::Spill).filter(|_| !held);
    out.extend(spill.map(|k| ("oil store", k)));
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
    for (k, case) in basis.cases.iter().enumerate() {
        let mg = |pick: fn(&stillrise_design::basis::waters::Content) -> stillrise_units::Concentration| {
            case.content.as_ref().map_or_else(|| "-".to_owned(), |c| print::digits(MG_L.from_si(pick(c).si()), 3))
        };
        let roles: Vec<&str> = governed.iter().filter(|(_, place)| *place == k).map(|(what, _)| *what).collect();
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
    let cold = print::told(basis.fluids.cold.temperature.q.si(), system.pick((&DEG_F, &DEG_C)));
    let warm = print::told(basis.fluids.warm.temperature.q.si(), system.pick((&DEG_F, &DEG_C)));
    out.push_str(&format!("Each case in the coldest water, {cold}, and the warmest, {warm}; clean, and at the end of the interval between pump-outs.\n"));
    for case in basis.cases.iter() {
        if let Some(cycle) = &case.cycle {
            out.push_str(&format!("{}: {}.\n", case.name, runs(cycle)));
        }
    }
    for line in differs(basis, system) {
        out.push_str(&item("-", &line, width));
    }
}

/// How the pumps run in a case, in words.
#[must_use]
pub fn runs(cycle: &Cycle) -> String {
    format!(
        "the pumps run {} at a time, from start to start {}",
        print::told(cycle.runs.q.si(), &MIN),
        print::told(cycle.period.q.si(), &MIN)
    )
}

/// What cases bring that differs from the others: droplets, temperature, oil that does not rise, peaks of dumps.
#[must_use]
pub fn differs(basis: &Basis, system: System) -> Vec<String> {
    let mut lines = Vec::new();
    if basis.arrivals.len() > 1 {
        // Those that print alike stand in one line.
        let mut medians: Vec<(String, Vec<&str>)> = Vec::new();
        for arrival in &basis.arrivals {
            let alone = |k: &&usize| basis.cases[**k].brings.len() == 1;
            let names: Vec<&str> = arrival.cases.iter().filter(alone).map(|k| basis.cases[*k].name.as_str()).collect();
            if names.is_empty() {
                continue;
            }
            let median = print::told(arrival.droplets.d50.q.si(), &UM);
            match medians.iter_mut().find(|(known, _)| *known == median) {
                Some((_, all)) => all.extend(names),
                None => medians.push((median, names)),
            }
        }
        for (median, names) in medians {
            lines.push(format!("droplets with a median of {median}: {}", names.join("; ")));
        }
        for case in basis.cases.iter().filter(|case| case.brings.len() > 1) {
            let one = |b: &Brings| {
                let (share, arrival) = (b.share?, basis.arrivals.get(b.arrival)?);
                let share = print::in_prose(share.q.si(), &PERCENT);
                Some(format!("{share} in droplets of {}", print::in_prose(arrival.droplets.d50.q.si(), &UM)))
            };
            let medians = case.brings.iter().filter_map(|b| basis.arrivals.get(b.arrival)).map(|a| a.droplets.d50.q);
            let medians: Vec<String> = medians.map(|d50| print::in_prose(d50.si(), &UM)).collect();
            if let [first, others @ ..] = &medians[..]
                && others.iter().all(|other| other == first)
            {
                lines.push(format!("{}: droplets with a median of {first} from each of its waters", case.name));
                continue;
            }
            let each: Vec<String> = case.brings.iter().filter_map(one).collect();
            lines.push(format!(
                "{}: of the oil that rises {}, each water its own, side by side",
                case.name,
                each.join(", ")
            ));
        }
    }
    let show = |t: stillrise_units::Temperature| print::told(t.si(), system.pick((&DEG_F, &DEG_C)));
    for case in &basis.cases {
        if let Some(own) = &case.own {
            let ends = own.arrives.each_ref().map(|water| show(water.temperature.q));
            let comes = match &ends {
                [cold, warm] if cold == warm => cold.clone(),
                [cold, warm] => format!("{cold} to {warm}"),
            };
            let plates = show(own.water[0].temperature.q);
            let cools = if plates == ends[0] {
                String::new()
            } else {
                format!(
                    ", and is worked at {plates} in the cold, to which it cools in the unit between the times it comes, and as it comes in the warm"
                )
            };
            lines.push(format!("{}: its water comes at {comes}{cools}", case.name));
        }
        if let Some(heavy) = case.content.as_ref().and_then(|c| c.heavy) {
            let heavy = print::told(heavy.q.si(), &MG_L);
            lines.push(format!("{}: of the free oil {heavy} are as heavy as the water and do not rise", case.name));
        }
    }
    for water in &basis.waters {
        if let Some(peaks) = &water.peaks {
            lines.push(format!(
                "{}: with what is dumped into it, its oil stands at {} times the mean on the day of a dump, and at up to {} times in a sample",
                water.name,
                print::digits(peaks.day.q.si(), 3),
                print::digits(peaks.sample.q.si(), 3)
            ));
        }
    }
    lines
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
