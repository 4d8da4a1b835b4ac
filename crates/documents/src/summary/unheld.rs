//! A water that brings little of a day: no limit is held against it while it runs alone, and more may leave then than one
//! allows.

use stillrise_design::basis::cases::Kind;
use stillrise_design::enquiry::blocks::Statistic;
use stillrise_search::Settled;
use stillrise_units::catalog::{MG_L, PERCENT};
use stillrise_units::{Typed, print};

/// Each such water whose effluent, were it to last, lies above a limit on total oil: `vat rinse: brings 12 % of ...`.
pub(crate) fn unheld(settled: &Settled) -> Vec<String> {
    let (Some(basis), Some(performance)) = (&settled.job.design.basis, &settled.job.design.performance) else {
        return Vec::new();
    };
    let mut out: Vec<String> = Vec::new();
    for (place, case) in basis.cases.iter().enumerate().filter(|(_, case)| case.kind == Kind::Alone) {
        let Some(share) = case.of_day else { continue };
        let of_total = basis.limits.iter().filter(|limit| limit.pollutant.is_total_oil());
        let unheld = of_total
            .filter(|limit| limit.statistic.q != Statistic::MonthlyAverage && !case.is_held_against(limit))
            .map(|limit| limit.value.q)
            .reduce(|a, b| if b < a { b } else { a });
        let ends = performance.removals.iter().filter(|r| r.state.is_end() && r.case_index == place);
        let most = ends.map(|r| r.total.expected.q).reduce(|a, b| if b > a { b } else { a });
        let Some((limit, most)) = unheld.zip(most).filter(|(limit, most)| most > limit) else { continue };
        let line = format!(
            "{}: brings {} of the water of a day and mixes in the unit with the rest, so that no limit is held against it alone; were it to last, {} would leave, more than {}",
            case.parts.first().unwrap_or(&case.event),
            print::in_prose(share.q.si(), &PERCENT),
            print::in_prose(most.si(), &MG_L),
            print::in_prose(limit.si(), &MG_L)
        );
        if !out.contains(&line) {
            out.push(line);
        }
    }
    out
}
