//! What it will do: each limit with its word, and why.

use super::{leaves_at_most, of_the_unit, stays};
use crate::reply::Of;
use crate::report::blocks::{Table, slim, wide};
use crate::report::{Report, cover, sentence};
use crate::summary;
use stillrise_design::performance::limit::{LimitVerdict, Word};
use stillrise_search::Settled;

/// What stands where there is no number.
const DASH: &str = "–";

/// The section.
pub(super) fn section(r: &mut Report<'_>, settled: &Settled) {
    r.out.section("What it will do");
    for line in cover::headline(r) {
        r.out.para(&sentence(&line));
    }
    let rows = rows(settled);
    if !rows.is_empty() {
        let explained = rows.iter().any(|row| !row[4].is_empty());
        let mut columns = vec![
            wide("Limit", 1.5),
            slim("Verdict"),
            wide("Leaves, as expected in the hardest case", 1.1),
            wide("Trial calculations that keep it", 0.9),
        ];
        if explained {
            columns.push(wide("Why, or what would change it", 3.0));
        }
        let mut table = Table::new(columns);
        for row in rows {
            table.row(row.into_iter().take(if explained { 5 } else { 4 }));
        }
        r.out.table(&table);
        let limits = settled.job.design.performance.as_ref().map_or(&[][..], |p| &p.limits);
        r.out.remark(&legend(limits));
    }
    r.out.list(false, of_the_unit(settled, Of::Does));
    for text in summary::measured::lines(settled) {
        r.out.lead("Measured.", &sentence(&text));
    }
}

/// Each limit: what it is, the word, what leaves, how many results keep it, why.
fn rows(settled: &Settled) -> Vec<[String; 5]> {
    let (Some(basis), Some(p)) = (&settled.job.design.basis, &settled.job.design.performance) else {
        return Vec::new();
    };
    let mut rows: Vec<[String; 5]> = Vec::new();
    for verdict in &p.limits {
        let Some(limit) = basis.limits.get(verdict.limit) else { continue };
        let by = limit.authority.as_ref().map_or_else(String::new, |by| format!(", set by {by}"));
        let what = format!("{}: {}, {}{by}", limit.title(), summary::allows(limit), limit.statistic.q.word());
        // Where the numbers alone tell why, no sentence tells it again.
        let plain = verdict.word == Word::Kept
            || (verdict.predicted && verdict.solids.is_none() && verdict.most.expected.q > verdict.against.q);
        let why = if plain { String::new() } else { sentence(&verdict.reason()) + " " };
        // A word that an open figure holds back is changed by that figure, which the sentence has named.
        let open = verdict.word == Word::Kept || verdict.calculated < verdict.word;
        let change = if open { String::new() } else { sentence(&crate::rating::change(settled, verdict)) };
        rows.push([what, verdict.says().to_owned(), leaves(verdict), share(verdict), format!("{why}{change}")]);
    }
    for limit in &basis.ph_limits {
        let more = format!("{} {}", sentence(limit.pollutant.explains), sentence(limit.pollutant.what_could));
        let what = format!("{}, {}", limit.shown(), limit.statistic());
        rows.push([what, Word::NotByGravity.text().to_owned(), DASH.to_owned(), DASH.to_owned(), more]);
    }
    for (title, says) in summary::in_a_cone(settled).into_iter().chain(summary::numberless(settled)) {
        rows.push([title, "open".to_owned(), DASH.to_owned(), DASH.to_owned(), sentence(&says)]);
    }
    rows
}

/// What the words in the table mean that stand in it, and its numbers.
fn legend(limits: &[LimitVerdict]) -> String {
    let means = |word: Word| match word {
        Word::Kept => {
            "Kept: the calculation keeps the limit, and still does with any one of the figures that nobody has confirmed at its worst plausible value, and so do at least 95 of 100 trial calculations."
        }
        Word::Likely => {
            "Likely: the calculation keeps the limit with the figures taken; with others that are as plausible, or in more than 5 of 100 trial calculations, it does not."
        }
        Word::NotShown => {
            "Not shown: the calculation does not keep the limit, or only if figures hold that nobody has confirmed."
        }
        Word::NotByGravity => "Not by gravity: no separator alone keeps it.",
    };
    let words = [Word::Kept, Word::Likely, Word::NotShown, Word::NotByGravity].into_iter();
    let mut all: Vec<&str> = words.filter(|word| limits.iter().any(|v| v.word == *word)).map(means).collect();
    if limits.iter().any(|v| leaves_at_most(v).is_some()) {
        all.push("Leaves: just ahead of a pump-out; where single samples count, with the oil that comes at its peak. Single results scatter about it.");
    }
    if limits.iter().filter_map(leaves_at_most).any(|leaves| leaves.ends_with("less")) {
        all.push("\"10 mg/L or less\": the calculation gives less, but no lower figure is stated of plates, unless less arrives.");
    }
    if limits.iter().any(|v| share(v) != DASH) {
        all.push("Trial calculations: many, each with all that is uncertain drawn at random at once.");
    }
    all.join(" ")
}

/// What leaves, as it is held against a limit.
fn leaves(verdict: &LimitVerdict) -> String {
    let Some(most) = leaves_at_most(verdict) else { return DASH.to_owned() };
    match stays(verdict) {
        None => most,
        Some(stays) if verdict.most.case == verdict.case => format!("{most}, of which {stays} cannot rise"),
        Some(stays) => format!("{most} in {}; in {} {stays} cannot rise", verdict.most.case, verdict.case),
    }
}

/// How many results keep it, as far as it was looked at.
fn share(verdict: &LimitVerdict) -> String {
    let chance = verdict.chance.filter(|_| verdict.word != Word::NotByGravity);
    chance.map_or_else(|| DASH.to_owned(), |chance| chance.percent())
}
