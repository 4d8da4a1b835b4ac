//! A job at a glance: is it a duty for gravity, which unit, the word on each limit clean and at the end of the interval, what
//! governs, and how many rules are open. The line above a sheet, and the line of a list.

use crate::summary::{blocking, governs, in_a_cone, limit as named, statistic, stops, units};
use serde_json::{Value, json};
use stillrise_checks::rules::not_a_gravity_duty;
use stillrise_checks::{Grade, Judged};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::performance::limit::Word;
use stillrise_design::performance::promise::Promise;
use stillrise_design::performance::removal::Removal;
use stillrise_design::performance::{Performance, State};
use stillrise_search::Settled;
use stillrise_units::{Typed, print};

/// Whether gravity can do it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Duty {
    /// Nothing declared stands against it, and all was said that could.
    Gravity,
    /// Nothing declared stands against it; something that could was not said.
    AsFarAsSaid,
    /// Something declared does.
    NotAsItStands,
    /// The chain stopped before that could be told.
    NotKnown,
}

impl Duty {
    /// In print.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Duty::Gravity => "gravity duty",
            Duty::AsFarAsSaid => "nothing declared rules gravity out",
            Duty::NotAsItStands => "not a gravity duty as it stands",
            Duty::NotKnown => "duty not known yet",
        }
    }
}

/// One limit at a glance.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LimitAtAGlance {
    /// What it limits, and how much: `Oil and grease of 15 mg/L`.
    pub title: String,
    /// The statistic.
    pub statistic: String,
    /// The word that stands: at the end of the interval, everything heard; `None` where it cannot be judged.
    pub word: Option<Word>,
    /// The word of the calculation for a unit just cleaned, where there is one of its own.
    pub clean: Option<Word>,
}

/// A job at a glance.
#[derive(Debug, Clone)]
pub struct Glance {
    /// Whether gravity can do it.
    pub duty: Duty,
    /// Why not, or why nothing was found; sentences.
    pub why: Vec<String>,
    /// The unit or units.
    pub unit: Option<String>,
    /// The largest flow to them.
    pub flow: Option<String>,
    /// Its line of the trail.
    pub flow_at: Option<usize>,
    /// The limits.
    pub limits: Vec<LimitAtAGlance>,
    /// What leaves, clean and at the end of the interval: total oil, the largest mean of the cases.
    pub leaves: Option<(String, String)>,
    /// Their lines of the trail.
    pub leaves_at: (Option<usize>, Option<usize>),
    /// The case that governs, by what it governs.
    pub governs: Vec<(&'static str, String)>,
    /// Rules that fail and on which nobody decided.
    pub fail: usize,
    /// Rules that warn and on which nobody decided.
    pub warn: usize,
    /// Rules that cannot judge.
    pub cannot_judge: usize,
}

/// The job at a glance.
#[must_use]
pub fn glance(settled: &Settled) -> Glance {
    let design = &settled.job.design;
    let blocked = blocking(settled);
    let performance = design.performance.as_ref();
    let duty = match (blocked.is_empty(), &design.basis) {
        (false, _) => Duty::NotAsItStands,
        // A rule that cannot judge has a reason: what goes into the water was not said.
        (true, Some(_)) => match settled.judged(&not_a_gravity_duty::RULE).map(Judged::grade) {
            Some(Grade::Passes | Grade::NotApplicable) => Duty::Gravity,
            _ => Duty::AsFarAsSaid,
        },
        (true, None) => Duty::NotKnown,
    };
    let mut why: Vec<String> = blocked;
    why.extend(stops(settled));
    let open = |grade: Grade| settled.verdicts.iter().filter(|j| j.grade() == grade && !j.is_settled()).count();
    let name = |(what, case): (&'static str, usize)| {
        let basis = design.basis.as_ref()?;
        Some((what, basis.cases.get(case)?.name.clone()))
    };
    let flow = design.basis.as_ref().and_then(|basis| basis.design_flow());
    let left = performance.and_then(leaves);
    let brief = |r: &Removal| Promise::of(r.total.expected.q, r.content.total.q).brief();
    let line = |r: &Removal| r.total.expected.at.index();
    Glance {
        duty,
        why,
        unit: design.train.as_ref().map(units),
        flow: flow.map(|flow| print::in_prose(flow.q.si(), settled.job.enquiry.system().pick(FLOW_UNITS))),
        flow_at: flow.and_then(|flow| flow.at.index()),
        limits: limits(settled, performance),
        leaves: left.map(|(clean, end)| (brief(clean), brief(end))),
        leaves_at: left.map_or((None, None), |(clean, end)| (line(clean), line(end))),
        governs: governs(settled).into_iter().filter_map(name).collect(),
        fail: settled.verdicts.iter().filter(|j| Judged::stands_failed(j)).count(),
        warn: open(Grade::Warns),
        cannot_judge: open(Grade::CannotJudge),
    }
}

fn limits(settled: &Settled, performance: Option<&Performance>) -> Vec<LimitAtAGlance> {
    let Some(basis) = &settled.job.design.basis else { return Vec::new() };
    let mut all: Vec<LimitAtAGlance> = Vec::new();
    for (k, limit) in basis.limits.iter().enumerate() {
        let verdict = performance.and_then(|p| p.limits.iter().find(|v| v.limit == k));
        all.push(LimitAtAGlance {
            title: named(limit),
            statistic: statistic(settled, limit),
            word: verdict.map(|v| v.word),
            clean: verdict.and_then(|v| v.clean),
        });
    }
    all.extend(basis.ph_limits.iter().map(|limit| LimitAtAGlance {
        title: limit.shown(),
        statistic: limit.statistic().to_owned(),
        word: Some(Word::NotByGravity),
        clean: None,
    }));
    let unjudged =
        |(title, _): (String, String)| LimitAtAGlance { title, statistic: String::new(), word: None, clean: None };
    all.extend(in_a_cone(settled).into_iter().map(unjudged));
    all
}

/// What leaves in the case that stands for the unit, clean and at the end of the interval.
fn leaves(performance: &Performance) -> Option<(&Removal, &Removal)> {
    let worst = performance.worst()?;
    let clean = performance
        .removals
        .iter()
        .find(|r| r.case_index == worst.case_index && r.season == worst.season && r.state == State::Clean);
    Some((clean?, worst))
}

/// The same as JSON.
#[must_use]
pub fn glance_json(glance: &Glance) -> Value {
    let limit = |l: &LimitAtAGlance| {
        json!({
            "limit": l.title, "statistic": l.statistic, "word": l.word.map_or("cannot be judged", Word::text),
            "clean": l.clean.map(Word::text),
        })
    };
    json!({
        "duty": glance.duty.text(), "why": glance.why, "unit": glance.unit, "flow": glance.flow,
        "limits": glance.limits.iter().map(limit).collect::<Vec<_>>(),
        "leaves_clean": glance.leaves.as_ref().map(|(clean, _)| clean),
        "leaves_at_end": glance.leaves.as_ref().map(|(_, end)| end),
        "governs": glance.governs.iter().map(|(what, case)| json!({ "what": what, "case": case })).collect::<Vec<_>>(),
        "rules": { "fail": glance.fail, "warn": glance.warn, "cannot_judge": glance.cannot_judge },
    })
}
