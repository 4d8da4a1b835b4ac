//! What `size` prints: the job at a glance.

pub(crate) mod around;
mod basis;
mod batch;
mod broken;
pub(crate) mod containment;
pub(crate) mod european;
pub(crate) mod evidence;
pub(crate) mod ground;
pub(crate) mod ladder;
pub(crate) mod measured;
pub(crate) mod performance;
mod rests;
pub(crate) mod shop;
pub(crate) mod short;
pub(crate) mod stands;
pub(crate) mod taken;
pub(crate) mod unheld;
mod verdicts;
mod wording;
pub(crate) mod zones;

pub use basis::{differs, governs, runs};
pub(crate) use rests::{assumed_under, is_of_oil, rests_on};
pub(crate) use short::stops;
pub use verdicts::{also_asked, is_proposed, moves, that_matter, words};

use crate::render::text::{WIDTH, hang, heading};
use std::collections::BTreeSet;
use stillrise_checks::rules::emulsion_above_limit;
use stillrise_design::basis::limits::LimitState;
use stillrise_design::enquiry::blocks::{self, ChemicalBlock};
use stillrise_design::performance::limit::{LimitVerdict, Word};
use stillrise_design::performance::promise::{Promise, floor, number, solids};
use stillrise_design::triage::{About, Line, Weight};
use stillrise_handbook::fluids::pollutants::Gravity;
use stillrise_search::Settled;
use stillrise_units::Typed;
pub(crate) use wording::{allows, capital, figures, limit, lower, mg_l, statistic, total_out, units};

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
    if crate::rating::is_observed(settled) {
        out.push_str(&hang("What explains the results: `stillrise rate`.", width, 0, 2));
    }
    let answered = crate::reply::answered(settled);
    if !answered.is_empty() {
        out.push_str(&section("What was named and asked"));
        for text in answered {
            out.push_str(&hang(&text, width, 0, 2));
        }
    }
    verdicts::triage(&mut out, settled, width);
    basis::cases(&mut out, settled, width);
    containment::containment(&mut out, settled, width);
    basis::read_notes(&mut out, settled, width);
    performance::unit(&mut out, settled, width);
    performance::effluent(&mut out, settled, width);
    evidence::evidence(&mut out, settled, width);
    ladder::ladder(&mut out, settled, width);
    zones::zones(&mut out, settled, width);
    stands::stands(&mut out, settled, width);
    ground::ground(&mut out, settled, width);
    performance::hydraulics(&mut out, settled, width);
    performance::levels(&mut out, settled, width);
    performance::storage(&mut out, settled, width);
    shop::shop(&mut out, settled, width);
    european::european(&mut out, settled, width);
    out.push_str(&crate::regulation::short(settled, width));
    verdicts::rules(&mut out, settled, width);
    verdicts::questions(&mut out, settled, width);
    let held = crate::settings::text(&settled.job.enquiry, width);
    if !held.is_empty() {
        out.push_str(&section("From the company's settings"));
        out.push_str(&held);
    }
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

/// What stands against a duty for gravity, the first few, in sentences; nothing where results of the unit that stands show
/// that every limit is kept.
pub(crate) fn blocking(settled: &Settled) -> Vec<String> {
    let blocks = |l: &&Line| l.weight == Weight::Blocks && !kept_by_results(settled);
    let mut blocking: Vec<&Line> = Vec::new();
    for line in settled.job.design.triage.iter().filter(blocks) {
        if blocking.iter().all(|other| other.says != line.says) {
            blocking.push(line);
        }
    }
    // What a product does is known of its kind, until its data sheet was seen.
    let chemicals = &settled.job.enquiry.chemicals;
    let seen = |line: &Line| {
        let own =
            |c: &&ChemicalBlock| [&c.product.0, &c.kind.0].into_iter().flatten().any(|name| *name == line.subject);
        line.about != About::Chemical || chemicals.iter().find(own).is_some_and(|c| c.data_sheet.is_some())
    };
    let of_kind = |line: &Line| if seen(line) { "" } else { " (as its kind does; its data sheet decides)" };
    let one = |line: &&Line| format!("{}{}: {}", capital(&line.subject), of_kind(line), line.says);
    blocking.iter().take(3).map(one).collect()
}

/// The headline: what was found, in at most a few sentences.
#[must_use]
pub fn headline(settled: &Settled) -> Vec<String> {
    let mut out = stops(settled);
    let design = &settled.job.design;
    let named = blocking(settled);
    if !named.is_empty() {
        out.push(format!("Not a gravity duty as it stands. {}", named.join(" ")));
    }
    if design.performance.is_none() {
        let passes = settled.judged(&emulsion_above_limit::RULE).filter(|v| v.stands_failed());
        out.extend(passes.map(|v| {
            let rests = v.verdict.at().map_or_else(Vec::new, |at| assumed_under(settled, at, &is_of_oil));
            let system = settled.job.enquiry.system();
            let said: Vec<String> =
                rests.iter().take(NAMED).map(|e| format!("{}, {}", e.label, e.told(system))).collect();
            let rests = if said.is_empty() {
                String::new()
            } else {
                format!(" It rests on figures that nobody has confirmed, among them: {}.", said.join("; "))
            };
            format!(
                "Whatever the size, oil that does not rise passes any separator: {}.{rests}",
                v.verdict.says().trim_end_matches('.')
            )
        }));
    }
    let (Some(basis), Some(performance)) = (&design.basis, &design.performance) else { return out };
    let (mut told, mut grains) = (BTreeSet::new(), BTreeSet::new());
    for verdict in &performance.limits {
        let limit = &basis.limits[verdict.limit];
        let rests = unconfirmed(settled, verdict);
        let beside = Some(bare_grains(settled, limit, verdict)).filter(|text| grains.insert(text.clone()));
        let beside = beside.unwrap_or_default();
        let rests = match told.insert(rests.clone()) || rests.is_empty() {
            true => rests,
            false if verdict.word == Word::Kept => {
                " The verdict stays the same over the plausible range of each of the same unconfirmed figures."
                    .to_owned()
            }
            false => " It rests on the same unconfirmed figures.".to_owned(),
        };
        out.push(format!(
            "Limit on {}, {}{}: {}. {}.{beside}{}",
            self::limit(limit),
            statistic(settled, limit),
            limit.authority.as_ref().map_or_else(String::new, |a| format!(", set by {a}")),
            word(verdict),
            capital(&verdict.reason()),
            rests
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
    out.extend(
        in_a_cone(settled).into_iter().map(|(title, says)| format!("Limit on {title}: cannot be judged; {says}.")),
    );
    out.extend(numberless(settled).into_iter().map(|(title, says)| format!("Limit on {title}: {says}.")));
    if performance.worst().is_some_and(|worst| worst.content.free.q.si() <= 1e-9 * worst.content.total.q.si()) {
        out.push(
            "On these figures none of the oil that comes is free: a separator removes nothing of it, and would be there for what is spilled."
                .to_owned(),
        );
    }
    out.extend(hardly(settled));
    out.extend(broken::beyond_its_kind(settled));
    out.extend(batch::stands_between(settled));
    out.extend(measured::lines(settled));
    if performance.limits.is_empty()
        && basis.ph_limits.is_empty()
        && let Some(worst) = performance.worst()
    {
        out.push(format!(
            "No limit {}is stated. Expected at the outlet: {} of total oil, {}.",
            if settled.job.enquiry.limits.is_empty() { "" } else { "with a number " },
            Promise::of(worst.total.expected.q, worst.content.total.q).sentence(),
            worst.case
        ));
    }
    out
}

/// Limits on what settles in a cone: on what, and what follows.
pub(crate) fn in_a_cone(settled: &Settled) -> Vec<(String, String)> {
    let limits = settled.job.enquiry.limits.iter();
    let one = |l: &blocks::Limit| {
        let (row, said) = (l.of()?, l.value.settles.as_ref()?);
        let says = format!(
            "it is a volume, which no content of the water tells, and no calculation gives it. {} A cone test of the water that leaves shows it",
            row.explains
        );
        let statistic = l.statistic.0.map_or_else(String::new, |s| format!(", {}", s.word()));
        let whose = l.authority.as_ref().map_or_else(String::new, |a| format!(", set by {a}"));
        Some((format!("{} of {said}{statistic}{whose}", row.title), says))
    };
    limits.filter_map(one).collect()
}

/// Limits that were named without a number: on what, and what follows.
pub(crate) fn numberless(settled: &Settled) -> Vec<(String, String)> {
    let open = settled.job.enquiry.limits.iter().filter(|l| !l.value.is_said());
    open.filter_map(|l| {
        let row = l.of()?;
        let says = match row.gravity {
            Gravity::Cannot => format!(
                "no number was stated, so nothing is held against it. {}",
                row.explains.trim_end_matches('.').to_owned()
            ),
            Gravity::Touches | Gravity::Partly => "no number was stated, so nothing is held against it yet".to_owned(),
        };
        Some((row.title.to_owned(), says))
    })
    .collect()
}

/// Whether the results of the unit that stands show that every limit on its oil is kept, whatever is said of the water.
pub(crate) fn kept_by_results(settled: &Settled) -> bool {
    let limits = settled.job.design.performance.as_ref().map_or(&[][..], |p| &p.limits);
    let mut on_oil = limits.iter().filter(|l| l.predicted).peekable();
    on_oil.peek().is_some() && on_oil.all(|l| l.measured.is_some_and(|m| m.shows_it_can()))
}

/// Of what arrives, the part that leaves from which on a unit is said to remove hardly anything.
pub(crate) const HARDLY: f64 = 0.85;

/// That the unit removes hardly anything in its worst case, where free oil comes and stays.
pub(crate) fn hardly(settled: &Settled) -> Option<String> {
    let worst = settled.job.design.performance.as_ref()?.worst()?;
    let (out, comes) = (worst.total.expected.q, worst.content.total.q);
    let free = worst.content.free.q.si() > 1e-9 * comes.si();
    // Results that lie below it say more than the calculation.
    let limits = settled.job.design.performance.iter().flat_map(|p| &p.limits);
    if limits.filter_map(|l| l.measured).any(|m| m.disproves(out)) {
        return None;
    }
    (free && comes > floor() && out.si() > HARDLY * comes.si()).then(|| {
        format!(
            "In the mean the unit takes {} to {} while the water runs that is hardest on it ({}): hardly anything is removed.",
            number(comes),
            number(out),
            worst.case
        )
    })
}

/// What units in service kept of the solids.
pub(crate) const IN_SERVICE: &str = "two storm-water units that were watched in service for months kept 29 and 19 % of all suspended solids (Lieske, Leutnant and Uhl, Water 13, 908, 2021, abstract)";

/// What the calculation says of the solids that leave, where a limit on them is not called kept.
pub(crate) fn bare_grains(settled: &Settled, limit: &LimitState, verdict: &LimitVerdict) -> String {
    let Some(performance) = settled.job.design.performance.as_ref() else { return String::new() };
    if !limit.pollutant.is_suspended_solids() || verdict.word == Word::Kept {
        return String::new();
    }
    let grains = settled.job.design.basis.as_ref().map(|b| &b.solids);
    let median = grains.map(|s| {
        format!(
            ", half of them under {}",
            stillrise_units::print::in_prose(s.d50.q.si(), &stillrise_units::catalog::UM)
        )
    });
    let demanded = limit.mean.map_or_else(String::new, |mean| {
        format!(", against {}, the long-term mean that the limit demands", number(mean.q))
    });
    // A size that nobody stated is that of silt and sand off paved yards.
    let taken = grains.is_some_and(|s| settled.subject().assumed(s.d50.at).is_some());
    if taken {
        return format!(
            " How much of them leaves hangs on how fine they are, which nobody said: of clay, finer than 2 µm, next to nothing settles; {IN_SERVICE}."
        );
    }
    format!(
        " If all of it were bare grains of the sizes stated{}, {} would leave in the mean{demanded}; what oil holds up is not in that, and {IN_SERVICE}.",
        median.unwrap_or_default(),
        solids(performance.storage.solids_out.q)
    )
}

/// Figures named in a sentence.
const NAMED: usize = 4;

/// What of the water nobody has confirmed and the word on a limit rests on, in a sentence.
pub(crate) fn unconfirmed(settled: &Settled, verdict: &LimitVerdict) -> String {
    let entries = rests_on(settled, verdict);
    let system = settled.job.enquiry.system();
    let said: Vec<String> =
        entries.iter().take(NAMED).map(|entry| format!("{}, {}", entry.label, entry.told(system))).collect();
    if said.is_empty() {
        return String::new();
    }
    let some = if entries.len() > NAMED { ", among them" } else { "" };
    // What is kept was tried over the range of each of them.
    if verdict.word == Word::Kept {
        return format!(
            " The verdict stays the same over the plausible range of each figure that nobody has confirmed{some}: {}.",
            said.join("; ")
        );
    }
    format!(" It rests on figures that nobody has confirmed{some}: {}.", said.join("; "))
}

/// The word on a limit with its one percentage: `likely; with all that is uncertain drawn at random, 84 % of single results would keep
/// it`.
pub(crate) fn word(verdict: &LimitVerdict) -> String {
    let word = verdict.says();
    beside_the_word(verdict).map_or_else(|| word.to_owned(), |beside| format!("{word}; {beside}"))
}

/// What stands beside the word on a limit: the measured results above it, or the one percentage.
pub(crate) fn beside_the_word(verdict: &LimitVerdict) -> Option<String> {
    let results = if verdict.peak.is_some() { "single results" } else { "averages" };
    if let Some(measured) = verdict.measured.filter(|m| m.above > 0 || m.shows_it_can()) {
        return Some(measured.says("it"));
    }
    let chance = verdict.chance.filter(|_| verdict.word != Word::NotByGravity)?;
    Some(format!("with all that is uncertain drawn at random, {} of {results} would keep it", chance.percent()))
}

/// Width when the terminal says nothing.
#[must_use]
pub fn default_width() -> usize {
    WIDTH + 20
}
