//! Rules that warn or fail, by the part they concern. What cannot be judged is no finding on a part.

use crate::Edition;
use stillrise_checks::{Judged, Part, Verdict};
use stillrise_search::Settled;

/// The findings on one part.
pub struct Group<'a> {
    /// The part.
    pub part: Part,
    /// Its number on the sheet.
    pub mark: String,
    /// What the rules said.
    pub findings: Vec<&'a Judged>,
}

/// The findings, in the order of the water's way.
pub fn groups(settled: &Settled) -> Vec<Group<'_>> {
    let mut groups: Vec<Group> = Vec::new();
    for judged in &settled.verdicts {
        if !matches!(judged.verdict, Verdict::Warns(_) | Verdict::Fails(_)) {
            continue;
        }
        match groups.iter_mut().find(|g| g.part == judged.rule.part) {
            Some(group) => group.findings.push(judged),
            None => groups.push(Group { part: judged.rule.part, mark: String::new(), findings: vec![judged] }),
        }
    }
    groups.sort_by_key(|g| g.part);
    for (k, group) in groups.iter_mut().enumerate() {
        group.mark = format!("F{}", k + 1);
    }
    groups
}

impl Group<'_> {
    /// Whether a rule fails that nobody accepted or took over.
    pub fn is_heavy(&self) -> bool {
        self.findings.iter().any(|j| j.stands_failed())
    }

    /// The titles of the rules; our own edition adds what was decided.
    pub fn text(&self, edition: Edition) -> String {
        let one = |judged: &&Judged| {
            let word = judged.verdict.word();
            let decided = judged.decision.as_ref().filter(|_| edition.is_internal()).and_then(|d| d.decision.0);
            let decided = decided.map(|word| format!("; {}", word.word()));
            format!("{} ({word}{})", judged.rule.title, decided.unwrap_or_default())
        };
        self.findings.iter().map(one).collect::<Vec<_>>().join(". ") + "."
    }
}
