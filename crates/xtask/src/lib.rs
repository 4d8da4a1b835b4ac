//! The project's own chores: what `cargo xtask` shares with its tests.
//!
//! [`tree`] holds the rules about the tree itself, each a pure function over paths and texts;
//! [`diff`] shows where two texts part; [`site`] looks through the manual that was written. The commands live in the binary, one a file.

pub mod diff;
pub mod site;
pub mod tree;
