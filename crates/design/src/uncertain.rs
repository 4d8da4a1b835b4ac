//! The trail of a search: what is uncertain, and nothing else.

use crate::provenance::{Entry, Node, Trail};

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
    fn section(&mut self, _: impl core::fmt::Display) {}
}
