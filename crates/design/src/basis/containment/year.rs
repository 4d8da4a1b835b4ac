//! The rain of a year that falls into containments and is drained to the separator.

use super::Containments;
use crate::basis::chemicals::Dosed;
use crate::basis::contents::{Content, of_drain};
use crate::basis::fluids::Fluids;
use crate::basis::waters::annual;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::Rain;
use crate::provenance::{Stop, Trail, Val, WhatIf, Whence, given};
use crate::{by, reckon, say};
use stillrise_handbook::rain::rain_volume;
use stillrise_units::catalog::ONE;
use stillrise_units::{Length, Volume, ratio};

/// Water that is drained to the separator.
#[derive(Debug, Clone)]
pub struct Drained {
    /// Its volume on an average day.
    pub per_day: Val<Volume>,
    /// What it carries.
    pub content: Content,
}

/// Finds what comes from each on an average day. `year` is the rain in a year where it is known by now.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn drained<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    (fluids, dosed): (&Fluids, &[Dosed]),
    mut year: Option<Val<Length>>,
    ahead: &mut Containments,
) -> Result<(), Stop> {
    for i in 0..ahead.all.len() {
        // What covered surfaces bring is among the runoff already, unless it is held back.
        let c = &ahead.all[i];
        let Some(catch) = c.catch.filter(|_| c.own_catch || c.holds_back) else { continue };
        if !ahead.comes_to_separator(i) {
            continue;
        }
        t.section(format_args!("containment {}", ahead.all[i].name));
        let depth = match year {
            Some(depth) => depth,
            None => annual(t, w, e.rain.as_ref().unwrap_or(&Rain::default())),
        };
        year = Some(depth);
        let all = given(
            t,
            "share of the rain that is drained",
            Some((&ONE, &ONE)),
            ratio(1.0),
            Whence::Definition,
            "all of it",
        );
        let name = &ahead.all[i].name;
        let volume = by!(t, &say!(T, "rain in a year on {name}"), rain_volume::volume(all, depth, catch.val))?;
        let label = say!(T, "drained from {name} on an average day");
        let per_day = reckon!(t, &label, [GAL, M3], (year = volume) year / 365.25);
        let content = of_drain(t, w, e, fluids, dosed, (i, &e.containments[i]))?;
        ahead.all[i].drained = Some(Drained { per_day, content });
    }
    Ok(())
}
