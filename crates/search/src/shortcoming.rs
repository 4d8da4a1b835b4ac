//! What speaks against a unit that is tried: a rule that bars it, or a limit that a larger one might keep.

use crate::pick::{Ask, Condition, try_unit};
use stillrise_checks::{Subject, barring};
use stillrise_design::job::{Design, deepen};
use stillrise_design::performance::Depth;
use stillrise_design::performance::limit::Word;
use stillrise_design::train::Source;

/// Rules that something ahead of the unit can satisfy: a unit that only these bar is offered on that condition, and
/// more units in parallel are no answer to them.
pub(crate) const ANSWERED_AHEAD: &[&str] = &["spill-above-room"];

/// What speaks against a unit.
pub(crate) struct Shortcoming {
    /// The rule that bars it, if it is one.
    pub(crate) rule: Option<&'static str>,
    /// The condition on which it will do, if there is one.
    pub(crate) on: Option<Condition>,
    /// How many limits it is not shown to keep that a larger one might.
    pub(crate) limits: usize,
    /// In words.
    pub(crate) what: String,
}

impl Ask<'_> {
    /// What speaks against taking a unit: rules that bar it, or a limit that a larger one might keep.
    pub(crate) fn shortcoming(&self, source: &Source<'_>, count: u32) -> Option<Shortcoming> {
        let design = try_unit(self.enquiry, self.what_if, self.begun, source, count, Depth::Screen);
        let barred = self.barred(&design);
        if barred.as_ref().is_some_and(|short| short.on.is_none()) {
            return barred;
        }
        self.judged(&deepen(self.begun, design)).or(barred)
    }

    fn barred(&self, design: &Design) -> Option<Shortcoming> {
        let subject = Subject { enquiry: self.enquiry, design, ledger: None, read: false };
        let mut soft = None;
        // The first that nothing ahead answers decides; what comes after it need not be looked at.
        for (rule, _) in barring(&subject) {
            if !ANSWERED_AHEAD.contains(&rule.id) {
                return Some(Shortcoming { rule: Some(rule.id), on: None, limits: 0, what: rule.title.to_lowercase() });
            }
            soft.get_or_insert(rule);
        }
        let rule = soft?;
        Some(Shortcoming {
            rule: Some(rule.id),
            on: Some(Condition::Ahead(rule.title)),
            limits: 0,
            what: rule.title.to_lowercase(),
        })
    }

    /// The same of a design that was found to the depth of the limits.
    pub(crate) fn judged(&self, design: &Design) -> Option<Shortcoming> {
        let barred = self.barred(design);
        if barred.as_ref().is_some_and(|short| short.on.is_none()) {
            return barred;
        }
        let limits = design.performance.as_ref().map_or(&[][..], |p| &p.limits);
        let open = limits.iter().filter(|l| l.calculated == Word::NotShown && l.larger_helps).count();
        let short = (open > 0).then(|| Shortcoming {
            rule: None,
            on: Some(Condition::Limit),
            limits: open,
            what: "by the calculation it does not keep the limit".to_owned(),
        });
        short.or(barred)
    }
}
