//! Bases of the tables of rules, and what is asked of every job that they make.

use super::Sheet;
use std::collections::BTreeMap;
use stillrise_checks::Verdict;
use stillrise_design::enquiry::range::Range;
use stillrise_search::Settled;

/// What a rule says of a job.
pub fn look<'a>(settled: &'a Settled, rule: &str) -> &'a Verdict {
    let found = settled.verdicts.iter().find(|j| j.rule.id == rule);
    &found.unwrap_or_else(|| panic!("no rule is called {rule}")).verdict
}

/// Bases with their setting, each settled once.
#[derive(Default)]
pub struct Bases(BTreeMap<String, (Sheet, Settled)>);

impl Bases {
    /// The base with its setting.
    pub fn of(&mut self, base: &str, with: &[(&str, &str)], demo: &Range) -> &(Sheet, Settled) {
        self.0.entry(format!("{base} {with:?}")).or_insert_with(|| {
            let sheet = with.iter().fold(Sheet::data(base), |sheet, (key, value)| sheet.with(key, value));
            let settled = sheet.settle(demo);
            (sheet, settled)
        })
    }
}

/// Passes whose words say that they rest on what nobody said.
pub fn claims_to_pass_on_nothing(settled: &Settled) -> Vec<String> {
    let words = ["not said", "nobody said", "not stated", "not known", "unknown", "no limit is stated", "not named"];
    let passes = settled.verdicts.iter().filter(|j| matches!(j.verdict, Verdict::Passes(_)));
    let says = passes.filter(|j| words.iter().any(|word| j.verdict.says().contains(word)));
    says.map(|j| format!("{} passes with: {}", j.rule.id, j.verdict.says())).collect()
}
