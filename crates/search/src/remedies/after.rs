//! What follows from a change: what the rule says then, what else is open then, the unit, the words, what leaves, the price.

use super::tried::Tried;
use crate::Settled;
use crate::pick::effluent;
use stillrise_checks::{Grade, Judged, Rule};
use stillrise_design::enquiry::Enquiry;
use stillrise_design::enquiry::range::Range;
use stillrise_design::job::Design;
use stillrise_design::performance::limit;
use stillrise_units::Concentration;

/// The word on a limit, before and then.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Word {
    /// Which limit, by its place in the basis.
    pub limit: usize,
    /// The word as it stands.
    pub was: Option<limit::Word>,
    /// The word then.
    pub then: limit::Word,
}

/// What follows from a change.
#[derive(Debug, Clone)]
pub struct After {
    /// What the rule comes to then: it passes, does not apply any more, or warns where it failed.
    pub grade: Grade,
    /// What it says then.
    pub says: String,
    /// Other rules that fail then and did not, with what they say.
    pub fails: Vec<(&'static Rule, String)>,
    /// Other rules that warn then, and passed or did not apply before.
    pub warns: Vec<(&'static Rule, String)>,
    /// Other rules that failed or warned and are settled then too.
    pub settles: Vec<&'static Rule>,
    /// The unit then; `None` where nothing fits.
    pub unit: Option<String>,
    /// Whether that is another than now.
    pub is_other_unit: bool,
    /// The words on the limits.
    pub words: Vec<Word>,
    /// What leaves, total oil in the worst case: now and then.
    pub effluent: [Option<Concentration>; 2],
    /// By how much it is dearer, in the range's currency; `None` where a price is not known.
    pub dearer: Option<f64>,
}

impl After {
    /// Of a change that was tried.
    pub(super) fn of(settled: &Settled, demo: &Range, rule: &Rule, written: &Enquiry, tried: &Tried) -> Self {
        let before = |other: &Judged| settled.verdicts.iter().find(|j| j.rule == other.rule);
        let others = || tried.verdicts.iter().filter(|j| *j.rule != *rule);
        let newly = |grade: Grade| {
            // A failure that is a warning then is none that is new.
            let is_new = move |j: &&Judged| {
                let was = before(j).map(Judged::grade);
                j.grade() == grade && !j.is_settled() && was != Some(grade) && was != Some(Grade::Fails)
            };
            others().filter(is_new).map(|j| (j.rule, j.verdict.says().to_owned())).collect()
        };
        let now_range = settled.job.enquiry.range.as_ref().unwrap_or(demo);
        let range = written.range.as_ref().unwrap_or(demo);
        let now = settled.pick.as_ref();
        let is_other_unit = now.map(|pick| pick.offered(now_range)) != tried.pick.as_ref().map(|p| p.offered(range));
        // Another unit at which there is nothing to look at any more settles nothing.
        let closed = |j: &&Judged| {
            let was = before(j).filter(|was| was.verdict.is_finding() && !was.is_settled());
            was.is_some() && (j.grade() == Grade::Passes || j.grade() == Grade::NotApplicable && !is_other_unit)
        };
        let own = tried.verdicts.iter().find(|j| *j.rule == *rule);
        let dearer = match (now, &tried.pick) {
            (Some(a), Some(b)) if a.offered(now_range) == b.offered(range) => Some(0.0),
            (Some(a), Some(b)) => a.price(now_range).zip(b.price(range)).map(|(a, b)| b - a),
            _ => None,
        };
        Self {
            grade: own.map_or(Grade::NotApplicable, Judged::grade),
            says: own.map_or_else(String::new, |j| j.verdict.says().to_owned()),
            fails: newly(Grade::Fails),
            warns: newly(Grade::Warns),
            settles: others().filter(closed).map(|j| j.rule).collect(),
            unit: tried.pick.as_ref().map(|pick| pick.name(range)),
            is_other_unit,
            words: words(&settled.job.design, &tried.job.design),
            effluent: [effluent(&settled.job.design), effluent(&tried.job.design)],
            dearer,
        }
    }
}

fn words(now: &Design, then: &Design) -> Vec<Word> {
    let of = |design: &Design, limit: usize| {
        design.performance.as_ref()?.limits.iter().find(|v| v.limit == limit).map(|v| v.word)
    };
    let all = then.performance.iter().flat_map(|p| &p.limits);
    all.map(|v| Word { limit: v.limit, was: of(now, v.limit), then: v.word }).collect()
}
