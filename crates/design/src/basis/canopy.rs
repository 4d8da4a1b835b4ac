//! Rain under a canopy: what the wind blows in through its open sides.

use super::stated::{stand_in, stated, stated_or, stated_or_usual};
use crate::enquiry::blocks::Surface;
use crate::provenance::{Stop, Trail, Val, WhatIf, given};
use crate::{by, reckon, say};
use stillrise_handbook::rain::wind_driven_rain;
use stillrise_units::catalog::PERCENT;
use stillrise_units::math::sqrt;
use stillrise_units::{Area, Length, Typed, ratio};

/// The area of a surface that the rain reaches: under a canopy what is blown in; `None` where no area was stated.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn reached<T: Trail>(t: &mut T, w: &WhatIf, s: &Surface, name: &str) -> Result<Option<Val<Area>>, Stop> {
    let Some(area) = stated(t, w, &say!(T, "area of {name}"), &s.area) else { return Ok(None) };
    Ok(Some(if *s.canopy == Some(true) { canopy(t, w, s, name, area)? } else { area }))
}

fn canopy<T: Trail>(t: &mut T, w: &WhatIf, s: &Surface, name: &str, plan: Val<Area>) -> Result<Val<Area>, Stop> {
    let label = say!(T, "open height under the canopy of {name}");
    let height = stated_or_usual(t, w, s.canopy_height().of(name), &label);
    let label = say!(T, "longest side of the canopy of {name}");
    let along = |times: f64| Length::from_si(sqrt(plan.q.si() * times));
    let side = stated_or(t, w, s.canopy_side().of(name), &label, || {
        stand_in(
            (along(1.0), along(2.0), along(4.0)),
            "geometry of its area in plan: twice as long as wide, from a square to four times as long as wide",
        )
    });
    let share = given(
        t,
        "share of the exposed side that is wetted",
        Some((&PERCENT, &PERCENT)),
        ratio(0.5),
        "International Plumbing Code 1106.4",
        "half of the exposed vertical area",
    );
    let wetted =
        by!(t, &say!(T, "wind-wetted area under the canopy of {name}"), wind_driven_rain::area(height, side, share))?;
    // Blown rain cannot fall on more than there is.
    Ok(
        reckon!(t, &say!(T, "area of {name} that the rain reaches"), [FT2, M2], (wetted = wetted, plan = plan) wetted.min(plan)),
    )
}
