//! The rules: each looks at a job and says whether it does not apply, passes, warns or fails.
//!
//! A rule computes no physics: every number it holds against a bound was found by `design` and
//! stands in the trail. How to add one: `rules/gap_not_laminar.rs` is the exemplar.

pub mod rule;
pub mod rules;

pub use rule::{Finding, Part, Rule, Subject, Verdict};
pub use rules::RULES;

use stillrise_design::enquiry::blocks::{Decision, Settled};

/// What one rule said, and what the engineer decided about it.
#[derive(Clone)]
pub struct Judged {
    /// The rule.
    pub rule: &'static Rule,
    /// What it said.
    pub verdict: Verdict,
    /// The engineer's decision, if there is one.
    pub decision: Option<Decision>,
}

impl Judged {
    /// Whether it fails and nobody accepted that or took it over.
    #[must_use]
    pub fn stands_failed(&self) -> bool {
        matches!(self.verdict, Verdict::Fails(_)) && !self.is_settled()
    }
    /// Whether an engineer accepted it, or gave it to others.
    #[must_use]
    pub fn is_settled(&self) -> bool {
        self.decision.as_ref().is_some_and(|d| matches!(d.decision.0, Some(Settled::Accepted | Settled::ByOthers)))
    }
}

/// All rules on a job.
#[must_use]
pub fn judge(subject: &Subject<'_>) -> Vec<Judged> {
    RULES
        .iter()
        .map(|rule| Judged {
            rule,
            verdict: (rule.look)(subject),
            decision: subject.enquiry.decisions.iter().find(|d| d.rule.as_deref() == Some(rule.id)).cloned(),
        })
        .collect()
}

/// The rules that bar a unit from being picked, and what each said.
#[must_use]
pub fn bars_pick(subject: &Subject<'_>) -> Vec<(&'static Rule, String)> {
    let barring = RULES.iter().filter(|r| r.bars_pick);
    barring
        .filter_map(|r| match (r.look)(subject) {
            Verdict::Fails(finding) => Some((*r, finding.says)),
            _ => None,
        })
        .collect()
}
