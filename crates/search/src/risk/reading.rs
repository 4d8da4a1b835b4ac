//! What one design says for the words on its limits.

use super::inputs::Input;
use super::sample::Hypercube;
use super::{Governs, Model, NOTHING};
use std::collections::BTreeSet;
use stillrise_design::performance::Depth;
use stillrise_design::performance::keeps::keeps_at;
use stillrise_design::performance::limit::{LimitVerdict, Word, verdicts, worst};
use stillrise_design::provenance::{Entry, Origin, Part};
use stillrise_design::{Node, Off, Trail, WhatIf};
use stillrise_handbook::page::Arg;
use stillrise_units::{Concentration, Typed, math};

/// What one design gives for the words on its limits.
#[derive(Debug, Clone)]
pub(crate) struct Reading {
    /// The logarithm of what the inputs' shares are shares of.
    pub result: f64,
    /// The calculated word on each limit, in the order of the verdicts.
    pub words: Vec<Word>,
    /// What no separator touches, in the mean, as each limit counts it.
    pub stays: Vec<Concentration>,
}

/// What the chain asks for around one design.
pub(crate) struct Asked {
    /// Whether it may ask for more than is listed.
    more: bool,
    keys: BTreeSet<String>,
}

impl Asked {
    /// Whether it may ask for this key; if not, another answer leaves everything as it is.
    pub(crate) fn holds(&self, key: &str) -> bool {
        self.more || self.keys.contains(key)
    }
}

impl Trail for Asked {
    const RECORDS: bool = false;
    fn push(&mut self, _: impl FnOnce() -> Entry) -> Node {
        Node::NONE
    }
    fn uncertain(&mut self, entry: impl FnOnce() -> Entry) -> Node {
        let entry = entry();
        self.keys.extend(match entry.origin {
            Origin::Assumed(assumption) => Some(assumption.key),
            _ => entry.range.map(|within| within.key),
        });
        Node::NONE
    }
    fn part(&mut self, _: Part, _: impl core::fmt::Display) {}
}

impl Model<'_> {
    /// The calculated words of one design; `None` when the chain has no answer.
    pub(crate) fn reading(&self, w: &WhatIf) -> Option<Reading> {
        self.read(&mut Off, w)
    }

    /// The same, and what the chain asks for on the way.
    pub(crate) fn asked(&self, w: &WhatIf) -> Option<(Reading, Asked)> {
        // Claims that contradict, and dimensions, are asked for in ways of their own.
        let mut asked = Asked { more: self.ready.is_none() || self.laid_from.is_some(), keys: BTreeSet::new() };
        let reading = self.read(&mut asked, w)?;
        Some((reading, asked))
    }

    /// The same with one input at another answer; the space is left as it was.
    pub(crate) fn reading_at(&self, input: usize, answer: &Arg, space: &mut WhatIf) -> Option<Reading> {
        self.at(input, answer, space, |w| self.reading(w))
    }

    /// What is found with one input at another answer.
    fn at<R>(&self, input: usize, answer: &Arg, space: &mut WhatIf, find: impl FnOnce(&WhatIf) -> R) -> R {
        let Input { key, now, .. } = &self.inputs[input];
        let put = |space: &mut WhatIf, arg: &Arg| {
            if let Some(slot) = space.0.get_mut(key) {
                slot.clone_from(arg);
            }
        };
        put(space, answer);
        let found = find(space);
        put(space, now);
        found
    }

    fn read<T: Trail>(&self, t: &mut T, w: &WhatIf) -> Option<Reading> {
        let (basis, removals) = self.leaves(t, Depth::Words, w).ok()?;
        let blocked = stillrise_design::triage::blocked(&self.design.triage);
        let verdicts = verdicts(t, &basis, &removals, blocked.as_deref());
        let number = match self.governs {
            Governs::Limit(k) => verdicts.iter().find(|v| v.limit == k).map(|v| v.expected.q),
            Governs::Effluent => worst(&removals).map(|r| r.total.expected.q),
        };
        Some(Reading {
            result: math::ln(number?.si().max(NOTHING)),
            words: verdicts.iter().map(|v| v.calculated).collect(),
            stays: verdicts.iter().map(LimitVerdict::stays_in_the_mean).collect(),
        })
    }

    /// Sets of inputs, each with a stream of its own name.
    pub(crate) fn cube(&self, sets: usize) -> Hypercube {
        let keys: Vec<&str> = self.inputs.iter().map(|i| i.key.as_str()).collect();
        Hypercube::by_key(sets, &keys)
    }

    /// The share of results that keep each limit, with inputs drawn; in the order of the verdicts, `None` for one that
    /// is not predicted.
    pub(crate) fn keeping(&self, row: impl Fn(usize) -> f64, space: &mut WhatIf) -> Option<Vec<Option<f64>>> {
        self.draw(row, space);
        let (basis, removals) = self.leaves(&mut Off, Depth::Expected, space).ok()?;
        let verdicts = &self.design.performance.as_ref()?.limits;
        Some(verdicts.iter().map(|v| keeps_at(&basis, &removals, v.limit).filter(|_| v.predicted)).collect())
    }
}
