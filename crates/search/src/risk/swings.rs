//! What each uncertain input does by itself: the effluent at the ends of its range, all others as in the design.

use super::Model;
use super::inputs::Input;
use stillrise_design::performance::Depth;
use stillrise_handbook::page::Arg;
use stillrise_units::{Concentration, Typed};

/// One input at the ends of its range, all others as in the design.
#[derive(Debug, Clone, PartialEq)]
pub struct Swing {
    /// The input.
    pub input: Input,
    /// Its ends; for words, the first that differ.
    pub ends: [Arg; 2],
    /// Total oil out in the worst case at each end; `None` when the chain has no answer there.
    pub effluent: [Option<Concentration>; 2],
}

impl Model<'_> {
    /// Each input at its ends, all others as in the design.
    pub(super) fn swings(&self) -> Vec<Swing> {
        let mut space = self.space();
        let mut swings = Vec::new();
        for input in &self.inputs {
            let ends = input.range.ends();
            let effluent = ends.clone().map(|end| {
                if let Some(slot) = space.0.get_mut(&input.key) {
                    *slot = end;
                }
                let sampled = self.sampled(Depth::Expected, &space).ok().flatten()?;
                Some(Concentration::from_si(sampled.rungs[1])).filter(|c| c.si().is_finite())
            });
            if let Some(slot) = space.0.get_mut(&input.key) {
                *slot = input.now.clone();
            }
            swings.push(Swing { input: input.clone(), ends, effluent });
        }
        let width = |s: &Swing| match s.effluent {
            [Some(a), Some(b)] => (a.si() - b.si()).abs(),
            _ => 0.0,
        };
        swings.retain(|s| width(s) > 0.0);
        swings.sort_by(|a, b| width(b).total_cmp(&width(a)));
        swings
    }
}
