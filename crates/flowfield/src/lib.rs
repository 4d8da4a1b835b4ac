//! Resolved flow in the long section of a vessel.
//!
//! Steady speeds by Newton's method on the discrete stream function: no cell gains or loses water, and no pressure is needed to find
//! them.

pub mod band;
pub mod grid;
mod joined;
pub mod lines;
pub mod momentum;
pub mod newton;
pub mod of_unit;
pub mod pressure;
pub mod problem;
pub mod resolve;
pub mod section;
pub mod streamlines;
