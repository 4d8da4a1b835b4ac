//! The review sheet, for ourselves: each finding with why it matters, what to do, where its bound comes from and how it may be
//! wrong, and the decision on it, or boxes where none was made.

use super::common;
use super::{Head, Paper, lacks};
use crate::Edition;
use crate::report::Report;
use crate::report::blocks::{Table, slim, wide};
use crate::report::verdicts::{decisions, finding};
use crate::section::findings::groups;
use stillrise_checks::{Grade, Part};

/// The paper.
pub static PAPER: Paper = Paper {
    name: "review-sheet",
    title: "Review sheet of findings",
    about: "For whoever answers for the job among us: each rule that fails or warns, why it matters, what to do, its source, how it may be wrong, and the decision on it.",
    editions: &[Edition::Us],
    head: Head::Band,
    refers: &[],
    lacks: lacks::findings,
    make: |r, _| make(r),
};

fn make(r: &mut Report<'_>) {
    let settled = r.settled;
    let groups = groups(settled);
    let of = |grade| settled.verdicts.iter().filter(move |judged| judged.grade() == grade);
    let found = || of(Grade::Fails).chain(of(Grade::Warns));
    let open = found().filter(|judged| !judged.is_settled()).count();
    r.out.section("In short");
    r.out.para(&format!(
        "{} fail, {} warn; {}.",
        of(Grade::Fails).count(),
        of(Grade::Warns).count(),
        match open {
            0 => "all of them are decided".to_owned(),
            1 => "one of them is still to be decided".to_owned(),
            n => format!("{n} of them are still to be decided"),
        }
    ));
    // By the numbers that the sheet shows beside the parts.
    let mut table = Table::new([slim("Mark"), slim("On"), wide("Finding", 2.2), slim("Verdict"), slim("Decision")]);
    for group in &groups {
        for judged in &group.findings {
            table.row([
                group.mark.clone(),
                on(group.part).to_owned(),
                judged.rule.title.to_owned(),
                judged.verdict.word().to_owned(),
                crate::decisions::word(judged).unwrap_or_else(|| "to be decided".to_owned()),
            ]);
        }
    }
    r.out.table(&table);
    decisions(r);
    r.out.section("The findings");
    for judged in found() {
        finding(r, judged);
    }
    common::cautions(r, "A finding that is accepted stays a finding: its verdict does not change.");
}

/// What a finding is on.
fn on(part: Part) -> &'static str {
    match part {
        Part::Enquiry => "Enquiry",
        Part::Inlet => "Inlet",
        Part::Chamber => "Inlet chamber",
        Part::Hopper => "Hopper",
        Part::Pack => "Plates",
        Part::OilZone => "Oil zone",
        Part::Downcomer => "Underflow",
        Part::Outlet => "Outlet",
        Part::Unit => "Unit",
        Part::Effluent => "Effluent",
        Part::Site => "Site",
    }
}
