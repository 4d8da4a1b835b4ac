//! From what a customer said to what a unit will do: enquiry, basis, train, performance, with the
//! origin of every value recorded on the way.
//!
//! Nothing here chooses a unit (that is `search`), judges (that is `checks`), or touches a file.

pub mod arrangements;
pub mod basis;
pub mod claims;
pub mod enquiry;
#[cfg(not(test))]
#[doc(hidden)]
pub mod instances;
pub mod job;
pub mod performance;
pub mod provenance;
pub mod record;
pub mod regulation;
pub mod stages;
mod stop;
pub mod train;
pub mod triage;
mod uncertain;
pub mod vessel;

pub use job::Job;
pub use provenance::{Ledger, Node, Off, Stop, Trail, Val, WhatIf};
pub use uncertain::moves_nothing;
