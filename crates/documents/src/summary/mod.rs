//! What `size` prints: the job at a glance.

mod basis;
pub(crate) mod ladder;
mod performance;
mod verdicts;
pub(crate) mod zones;

pub use basis::governs;
pub use verdicts::{moves, that_matter};

use crate::render::text::{WIDTH, hang, heading};
use stillrise_design::performance::limit::{Word, shown};
use stillrise_search::Settled;
use stillrise_units::Typed;

/// The summary as plain text, `width` characters wide.
#[must_use]
pub fn summary(settled: &Settled, width: usize) -> String {
    let width = width.clamp(60, 160);
    let head = &settled.job.enquiry.head;
    let mut out = String::new();
    let title = head.title.as_deref().unwrap_or("untitled");
    out.push_str(&format!("{title}\n"));
    let line: Vec<&str> =
        [head.client.as_deref(), head.project.as_deref(), head.date.as_deref()].into_iter().flatten().collect();
    if !line.is_empty() {
        out.push_str(&format!("{}\n", line.join(", ")));
    }
    out.push('\n');
    for text in headline(settled) {
        out.push_str(&hang(&text, width, 0, 2));
    }
    verdicts::triage(&mut out, settled, width);
    basis::cases(&mut out, settled, width);
    basis::read_notes(&mut out, settled, width);
    performance::unit(&mut out, settled, width);
    performance::effluent(&mut out, settled, width);
    ladder::ladder(&mut out, settled, width);
    zones::zones(&mut out, settled, width);
    performance::hydraulics(&mut out, settled, width);
    performance::levels(&mut out, settled, width);
    performance::storage(&mut out, settled, width);
    verdicts::rules(&mut out, settled, width);
    verdicts::questions(&mut out, settled, width);
    out.push_str(&section("Cautions"));
    out.push_str(&hang(CAUTION, width, 0, 0));
    out
}

/// The caution that goes with every text a person could act on.
pub const CAUTION: &str = "Preliminary: for review by a licensed engineer; local codes and the permit govern. \
A separator is a confined space with flammable vapour; lifting, entry and hot work need their own permits.";

/// A heading with a blank line before it.
pub(crate) fn section(title: &str) -> String {
    format!("\n{}", heading(title))
}

/// The headline: what was found, in at most a few sentences.
#[must_use]
pub fn headline(settled: &Settled) -> Vec<String> {
    let mut out = Vec::new();
    let design = &settled.job.design;
    if let Some(line) = design.triage.first().filter(|l| l.weight == stillrise_design::triage::Weight::Blocks) {
        out.push(format!("Not a gravity duty as it stands. {}: {}", capital(&line.subject), line.says));
    }
    for stop in &design.stops {
        out.push(format!("Stopped: {stop}."));
    }
    let (Some(basis), Some(performance)) = (&design.basis, &design.performance) else { return out };
    for verdict in &performance.limits {
        let limit = &basis.limits[verdict.limit];
        let number = mg_l(limit.value.q);
        out.push(format!(
            "Limit on {} of {number}, {}: {}. {}.",
            limit.pollutant.title,
            limit.statistic.q.word(),
            verdict.word.text(),
            capital(verdict.because.trim_end_matches('.'))
        ));
    }
    for limit in &basis.ph_limits {
        out.push(format!(
            "Limit of {}, {}: {}. {}.",
            limit.shown(),
            limit.statistic(),
            Word::NotByGravity.text(),
            limit.pollutant.explains.trim_end_matches('.')
        ));
    }
    out.extend(doubts(settled));
    out.extend(measured(settled));
    if performance.limits.is_empty()
        && basis.ph_limits.is_empty()
        && let Some(worst) = performance.worst()
    {
        out.push(format!(
            "No limit is stated. Expected at the outlet: {} of total oil, {}.",
            shown(worst.total.expected.q, worst.content.total.q),
            worst.case
        ));
    }
    out
}

/// What was measured at a unit that stands, against each limit on oil.
pub(crate) fn measured(settled: &Settled) -> Vec<String> {
    let Some(basis) = &settled.job.design.basis else { return Vec::new() };
    let outs: Vec<_> = settled.job.enquiry.observed.iter().filter_map(|o| o.oil_out.q()).collect();
    if outs.is_empty() {
        return Vec::new();
    }
    let touched = |l: &&stillrise_design::basis::limits::LimitState| {
        l.pollutant.gravity == stillrise_handbook::fluids::pollutants::Gravity::Touches
    };
    let says = |l: &stillrise_design::basis::limits::LimitState| {
        let over = outs.iter().filter(|c| **c > l.value.q).count();
        let list = outs.iter().map(|c| mg_l(*c)).collect::<Vec<_>>().join(", ");
        if over > 0 {
            format!(
                "Measured at the unit that stands: {list}; {over} of {} above the limit on {} of {}. What was measured goes before what was predicted; the rating says what explains it.",
                outs.len(),
                l.pollutant.title,
                mg_l(l.value.q)
            )
        } else {
            format!("Measured at the unit that stands: {list}, within the limit on {}.", l.pollutant.title)
        }
    };
    basis.limits.iter().filter(touched).map(says).collect()
}

/// Where the basis as stated keeps a limit and its uncertain inputs together more often do not, once that was studied.
pub(crate) fn doubts(settled: &Settled) -> Vec<String> {
    let (Some(risk), Some(basis), Some(p)) =
        (&settled.risk, &settled.job.design.basis, &settled.job.design.performance)
    else {
        return Vec::new();
    };
    let says = |l: &stillrise_search::risk::LimitRisk| {
        let verdict = p.limits.iter().find(|v| v.limit == l.limit)?;
        let doubtful = verdict.word <= Word::Likely && l.kept < 0.5;
        doubtful.then(|| {
            format!(
                "Over the ranges of what is uncertain in the basis the limit on {} is kept in {} of {} samples only: less likely than not.",
                basis.limits[l.limit].pollutant.title,
                crate::risk::percent(l.kept),
                risk.samples
            )
        })
    };
    risk.limits.iter().filter_map(says).collect()
}

/// A concentration in mg/L, four digits.
pub(crate) fn mg_l(c: stillrise_units::Concentration) -> String {
    stillrise_units::print::with_unit(c.si(), &stillrise_units::catalog::MG_L)
}

/// Total oil out in a table: never a number below the published floor, unless the influent is lower.
pub(crate) fn total_out(expected: stillrise_units::Concentration, influent: stillrise_units::Concentration) -> String {
    let floor = stillrise_design::performance::limit::floor();
    let least = if influent < floor { influent } else { floor };
    if expected < least {
        format!("≤ {}", stillrise_units::print::digits(stillrise_units::catalog::MG_L.from_si(least.si()), 3))
    } else {
        stillrise_units::print::digits(stillrise_units::catalog::MG_L.from_si(expected.si()), 3)
    }
}

/// The same text with a capital letter.
pub(crate) fn capital(text: &str) -> String {
    let mut chars = text.chars();
    match chars.next() {
        Some(first) => first.to_uppercase().chain(chars).collect(),
        None => String::new(),
    }
}

/// Width when the terminal says nothing.
#[must_use]
pub fn default_width() -> usize {
    WIDTH + 20
}
