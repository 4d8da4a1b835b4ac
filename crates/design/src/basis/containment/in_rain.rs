//! What is drained to the separator while it rains: pits whose pumps run on floats, drains that stand open behind a flow control.

use super::Containments;
use crate::basis::chemicals::{Dosed, Which};
use crate::basis::contents::of_drain;
use crate::basis::fluids::Fluids;
use crate::basis::waters::Water;
use crate::enquiry::Enquiry;
use crate::provenance::{Pair, Stop, Trail, WhatIf, Whence, given};
use stillrise_units::catalog::{GAL, M3};
use stillrise_units::{Typed, Volume};

/// What is drained from containments to the separator while it rains, as waters that come with the storm: the metered drains that run then.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn waters<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    (fluids, dosed): (&Fluids, &[Dosed]),
    ahead: Option<&Containments>,
) -> Result<Vec<Water>, Stop> {
    let mut found = Vec::new();
    for (i, (c, block)) in ahead.iter().flat_map(|a| &a.all).zip(&e.containments).enumerate() {
        let Some(drain) = c.drain.as_ref().filter(|drain| drain.in_rain && c.to.is_none()) else { continue };
        t.section(format_args!("drained from {} while it rains", c.name));
        let (content, per_day) = match &c.drained {
            Some(drained) => (drained.content.clone(), drained.per_day),
            None => {
                let volume = Some((&GAL, &M3) as Pair);
                let label = "volume that counts in an average day";
                let per_day =
                    given(t, label, volume, Volume::from_si(0.0), Whence::Definition, "none: rain of the storm");
                (of_drain(t, w, e, fluids, dosed, (i, block))?, per_day)
            }
        };
        found.push(Water::of_rain(c.name.clone(), Which::Drain(i), drain.rate, content, per_day));
    }
    Ok(found)
}
