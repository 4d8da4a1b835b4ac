//! What one design says for the words on its limits.

use super::{Governs, Model, NOTHING};
use stillrise_design::performance::Depth;
use stillrise_design::performance::keeps::keeps_at;
use stillrise_design::performance::limit::{Word, verdicts, worst};
use stillrise_design::{Off, WhatIf};
use stillrise_units::{Typed, math};

/// What one design gives for the words on its limits.
#[derive(Debug, Clone)]
pub(crate) struct Reading {
    /// The logarithm of what the inputs' shares are shares of.
    pub result: f64,
    /// The calculated word on each limit, in the order of the verdicts.
    pub words: Vec<Word>,
}

impl Model<'_> {
    /// The calculated words of one design; `None` when the chain has no answer.
    pub(crate) fn reading(&self, w: &WhatIf) -> Option<Reading> {
        let off = &mut Off;
        let (basis, removals) = self.leaves(Depth::Words, w).ok()?;
        let blocked = stillrise_design::triage::blocked(&self.design.triage);
        let verdicts = verdicts(off, &basis, &removals, blocked.as_deref());
        let number = match self.governs {
            Governs::Limit(k) => verdicts.iter().find(|v| v.limit == k).map(|v| v.expected.q),
            Governs::Effluent => worst(&removals).map(|r| r.total.expected.q),
        };
        Some(Reading {
            result: math::ln(number?.si().max(NOTHING)),
            words: verdicts.iter().map(|v| v.calculated).collect(),
        })
    }

    /// The share of results that keep each limit, with inputs drawn; in the order of the verdicts, `None` for one that
    /// is not predicted.
    pub(crate) fn keeping(&self, row: impl Fn(usize) -> f64, space: &mut WhatIf) -> Option<Vec<Option<f64>>> {
        self.draw(row, space);
        let (basis, removals) = self.leaves(Depth::Expected, space).ok()?;
        let verdicts = &self.design.performance.as_ref()?.limits;
        Some(verdicts.iter().map(|v| keeps_at(&basis, &removals, v.limit).filter(|_| v.predicted)).collect())
    }
}
