//! The chain, compiled once for each way of keeping a trail. Its functions are generic, and a generic function is compiled by
//! whoever calls it: without these, every crate and every test that works a job would compile the whole chain anew.

use crate::basis::Ready;
use crate::enquiry::Enquiry;
use crate::job::{Design, begin, begin_on, complete};
use crate::performance::Depth;
use crate::provenance::{Ledger, Off, Trail, WhatIf};
use crate::train::Source;
use crate::uncertain::Uncertain;

type Begin<T> = fn(&mut T, &WhatIf, &Enquiry) -> Design;
type BeginOn<T> = fn(&mut T, &WhatIf, &Enquiry, &Ready<'_>) -> Design;
type Complete<T> = fn(&mut T, &WhatIf, &Enquiry, Design, &Source<'_>, u32, Depth) -> Design;
type Ways<T> = (Begin<T>, BeginOn<T>, Complete<T>);

fn ways<T: Trail>() -> Ways<T> {
    (begin::<T>, begin_on::<T>, complete::<T>)
}

/// With every line recorded.
#[must_use]
pub fn recorded() -> Ways<Ledger> {
    ways()
}

/// With nothing recorded.
#[must_use]
pub fn unrecorded() -> Ways<Off> {
    ways()
}

/// With what is uncertain recorded.
#[must_use]
pub fn uncertain() -> Ways<Uncertain> {
    ways()
}
