//! The formulas of the trail, how each is checked, and the publications behind them.

use super::Report;
use super::blocks::{Table, number, slim, wide};
use stillrise_design::provenance::Origin;
use stillrise_handbook::evidence::tables;
use stillrise_handbook::page::{Evidence, Page, Seen, Source};

/// The pages the trail uses, in the order of use, and how often.
pub(super) fn pages(r: &Report<'_>) -> Vec<(&'static Page, usize)> {
    let mut out: Vec<(&'static Page, usize)> = Vec::new();
    for entry in &r.settled.job.ledger.entries {
        if let Origin::Derived { page, .. } = &entry.origin {
            match out.iter_mut().find(|(p, _)| p.id == page.id) {
                Some((_, count)) => *count += 1,
                None => out.push((page, 1)),
            }
        }
    }
    out
}

/// Section 11.
pub(super) fn sources(r: &mut Report<'_>) {
    r.out.section_on_new_page("Formulas and sources");
    let pages = pages(r);
    if pages.is_empty() {
        r.out.para("No formula was used.");
        return;
    }
    let mut sources: Vec<&'static Source> = Vec::new();
    let mut table = Table::new([
        wide("Formula", 2.2),
        slim("Page"),
        number("Used", ""),
        wide("Sources", 0.8),
        wide("Check values behind it", 1.9),
    ]);
    for (page, used) in pages {
        let mut marks = Vec::new();
        for source in page.sources.iter().copied() {
            let at = sources.iter().position(|s| *s == source).unwrap_or_else(|| {
                sources.push(source);
                sources.len() - 1
            });
            marks.push(format!("S{}", at + 1));
        }
        table.row([page.title.to_owned(), page.id.to_owned(), used.to_string(), marks.join(", "), checks(page)]);
    }
    r.out.para("Every formula is one page of the handbook, and runs the check values counted here. None of them is this program's own output.");
    r.out.table(&table);
    r.out.heading("Sources of the formulas");
    let mut table = Table::new([slim("Mark"), wide("Source", 4.0), wide("How it is known", 1.4)]);
    for (k, source) in sources.iter().enumerate() {
        let year = if source.year.is_empty() { String::new() } else { format!(" ({})", source.year) };
        let known = if source.title.contains("needs no authority") { "none needed" } else { known(source.seen) };
        table.row([format!("S{}", k + 1), format!("{}{year}", source.title), known.to_owned()]);
    }
    r.out.table(&table);
    r.out.remark("Sources of data and of rules stand beside the values and the verdicts they belong to. What is known from memory is to be confirmed before it is relied on.");
}

fn known(seen: Seen) -> &'static str {
    match seen {
        Seen::Read => "the passage was read",
        Seen::SecondHand => "as quoted by another text",
        Seen::Memory => "from memory, not confirmed",
        Seen::Practice => "common practice, no document",
    }
}

/// How many check values of each kind stand behind a page.
fn checks(page: &'static Page) -> String {
    let rows = |kind: &str| -> usize {
        let own = page.checks.iter().filter(|c| c.evidence.kind() == kind).count();
        let listed = tables().filter(|t| t.page == page && t.evidence.kind() == kind);
        own + listed
            .map(|t| t.text.lines().filter(|l| !l.starts_with('#') && !l.trim().is_empty()).count().saturating_sub(1))
            .sum::<usize>()
    };
    let counts = Evidence::KINDS.iter().map(|kind| (rows(kind), *kind)).filter(|(count, _)| *count > 0);
    counts.map(|(count, kind)| format!("{count} {kind}")).collect::<Vec<_>>().join(", ")
}
