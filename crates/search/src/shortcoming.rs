//! What speaks against a unit that is tried: a rule that bars it, or a limit that a larger one might keep.

use crate::pick::{Ask, Condition, try_unit};
use stillrise_checks::rules::spill_above_room;
use stillrise_checks::{Rule, Subject, barring};
use stillrise_design::job::{Design, deepen};
use stillrise_design::performance::Depth;
use stillrise_design::performance::limit::Word;
use stillrise_design::train::Source;

/// Rules that something ahead of the unit can satisfy: a unit that only these bar is offered on that condition, and
/// more units in parallel are no answer to them.
pub(crate) static ANSWERED_AHEAD: &[&Rule] = &[&spill_above_room::RULE];

/// What bars a unit, or speaks against it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Barrier {
    /// A rule.
    Rule(&'static Rule),
    /// By the calculation it does not keep a limit that a larger one might.
    Limit,
}

impl Barrier {
    /// In a few words.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Barrier::Rule(rule) => rule.title,
            Barrier::Limit => "by the calculation it does not keep the limit",
        }
    }
}

/// What speaks against a unit.
pub(crate) struct Shortcoming {
    /// What it is.
    pub(crate) bars: Barrier,
    /// The condition on which it will do, if there is one.
    pub(crate) on: Option<Condition>,
    /// How many limits it is not shown to keep that a larger one might.
    pub(crate) limits: usize,
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
            if !rule.is_among(ANSWERED_AHEAD) {
                return Some(Shortcoming { bars: Barrier::Rule(rule), on: None, limits: 0 });
            }
            soft.get_or_insert(rule);
        }
        let rule = soft?;
        Some(Shortcoming { bars: Barrier::Rule(rule), on: Some(Condition::Ahead(rule)), limits: 0 })
    }

    /// The same of a design that was found to the depth of the limits.
    pub(crate) fn judged(&self, design: &Design) -> Option<Shortcoming> {
        let barred = self.barred(design);
        if barred.as_ref().is_some_and(|short| short.on.is_none()) {
            return barred;
        }
        let limits = design.performance.as_ref().map_or(&[][..], |p| &p.limits);
        let open = limits.iter().filter(|l| l.calculated == Word::NotShown && l.larger_helps).count();
        let short =
            (open > 0).then_some(Shortcoming { bars: Barrier::Limit, on: Some(Condition::Limit), limits: open });
        short.or(barred)
    }
}
