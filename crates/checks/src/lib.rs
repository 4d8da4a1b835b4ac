//! The rules: each looks at a job and says whether it does not apply, passes, cannot judge, warns or fails.
//!
//! A rule never passes on what is not known: it then cannot judge, and asks what would settle it.
//! A rule computes no physics: every number it holds against a bound was found by `design` and
//! stands in the trail. How to add one: `rules/gap_not_laminar.rs` is the exemplar.

pub mod ask;
pub mod manual;
mod prose;
pub mod rule;
pub mod rules;
pub mod standing;

pub use ask::Ask;
pub use rule::{Finding, Grade, Part, Rule, Subject, Unknown, Verdict};
pub use rules::RULES;

use stillrise_design::enquiry::blocks::{Decision, Settled};

/// Who decided about a finding.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum By {
    /// An engineer, in the enquiry.
    Engineer,
    /// A rule of the company, in its settings.
    Company,
}

/// What one rule said, and what the engineer decided about it.
#[derive(Clone)]
pub struct Judged {
    /// The rule.
    pub rule: &'static Rule,
    /// What it said.
    pub verdict: Verdict,
    /// What was decided about it, if anything was.
    pub decision: Option<Decision>,
    /// Who decided that.
    pub by: By,
}

impl Judged {
    /// Which verdict it is.
    #[must_use]
    pub fn grade(&self) -> Grade {
        self.verdict.grade()
    }
    /// Whether it fails and nobody accepted that or took it over.
    #[must_use]
    pub fn stands_failed(&self) -> bool {
        matches!(self.verdict, Verdict::Fails(_)) && !self.is_settled()
    }
    /// Whether what was decided is a rule of the company.
    #[must_use]
    pub fn is_by_company(&self) -> bool {
        self.decision.is_some() && self.by == By::Company
    }
    /// Whether somebody accepted it, or gave it to others.
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
        .map(|rule| {
            let verdict = (rule.look)(subject);
            let own = subject.enquiry.decisions.iter().find(|d| d.rule.as_deref() == Some(rule.id)).cloned();
            let by = if own.is_some() { By::Engineer } else { By::Company };
            let decision = own.or_else(|| standing::decision(subject.enquiry, rule, verdict.grade()));
            Judged { rule, verdict, decision, by }
        })
        .collect()
}

/// A question that a rule waits for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unsettled<'a> {
    /// The first rule that asks it.
    pub rule: &'static Rule,
    /// The question and its key.
    pub ask: &'a Ask,
}

/// What the rules that cannot judge ask, in the order of the rules, each key once. Rules on which the engineer
/// has decided ask nothing.
#[must_use]
pub fn unsettled(verdicts: &[Judged]) -> Vec<Unsettled<'_>> {
    let mut found: Vec<Unsettled<'_>> = Vec::new();
    for judged in verdicts.iter().filter(|j| !j.is_settled()) {
        for ask in judged.verdict.asks() {
            if found.iter().all(|f| f.ask.same() != ask.same()) {
                found.push(Unsettled { rule: judged.rule, ask });
            }
        }
    }
    found
}

/// The rules that bar a unit from being picked, and what each said. One that cannot judge bars nothing.
#[must_use]
pub fn bars_pick(subject: &Subject<'_>) -> Vec<(&'static Rule, String)> {
    barring(subject).collect()
}

/// The same one after the other, so that whoever has heard enough need not hear the rest.
pub fn barring<'a>(subject: &Subject<'a>) -> impl Iterator<Item = (&'static Rule, String)> + use<'a> {
    let subject = *subject;
    RULES.iter().filter(|r| r.bars_pick).filter_map(move |r| match (r.look)(&subject) {
        Verdict::Fails(finding) => Some((*r, finding.says)),
        _ => None,
    })
}
