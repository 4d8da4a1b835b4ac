//! What stands around the separator, worked once the unit is known: polisher, one unit shut, oil tank, bypass.

use super::Train;
use super::demand::{self, Demand};
use super::stages::bypass::{self, Bypass};
use super::stages::oil_tank::{self, OilTank};
use super::stages::splitter::{self, Shut};
use crate::basis::Basis;
use crate::enquiry::Enquiry;
use crate::performance::Performance;
use crate::provenance::{Stop, Trail, WhatIf};

/// What was found of it; nothing before it is looked for, and of what is not there.
#[derive(Debug, Clone, Default)]
pub struct Around {
    /// What the polisher must do.
    pub polisher: Option<Demand>,
    /// What comes to the others while one unit is shut.
    pub shut: Option<Shut>,
    /// The oil holding tank.
    pub oil_tank: Option<OilTank>,
    /// A bypass in place of holding back.
    pub bypass: Option<Bypass>,
}

/// Finds it.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(crate) fn around<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    basis: &Basis,
    train: &Train,
    performance: &Performance,
) -> Result<Around, Stop> {
    Ok(Around {
        polisher: demand::demand(t, basis, train, performance),
        shut: splitter::shut(t, basis, train, performance)?,
        oil_tank: oil_tank::oil_tank(t, w, e, basis, train, &performance.storage)?,
        bypass: bypass::bypass(t, basis, train),
    })
}
