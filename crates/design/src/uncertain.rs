//! The trail of a search: what is uncertain, and nothing else.

use crate::enquiry::blocks::{InstallationBlock, OilTank, Regulation, Screen};
use crate::enquiry::declared::Declared;
use crate::provenance::{Entry, Node, Part, Trail};

/// Whether no answer to a key moves unit or effluent, so that a search need not try it nor a study draw it: what stands or
/// is built around the unit and takes none of its head, and what an authority's method asks.
#[must_use]
pub fn moves_nothing(key: Declared) -> bool {
    key.is_of::<InstallationBlock>() || key.is_of::<Screen>() || key.is_of::<OilTank>() || key.is_of::<Regulation>()
}

/// Records what is uncertain, and of it no words that are for a reader only.
#[derive(Debug, Clone, Default)]
pub struct Uncertain {
    /// The lines, in the order of the trail.
    pub entries: Vec<Entry>,
}

impl Trail for Uncertain {
    const RECORDS: bool = false;
    const GATHERS: bool = true;
    fn push(&mut self, _: impl FnOnce() -> Entry) -> Node {
        Node::NONE
    }
    fn uncertain(&mut self, entry: impl FnOnce() -> Entry) -> Node {
        self.entries.push(entry());
        Node::NONE
    }
    fn part(&mut self, _: Part, _: impl core::fmt::Display) {}
}
