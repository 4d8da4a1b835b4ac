//! Rain and fire water that the containments must hold beside the oil.

use super::reach::{Open, Reach, asked};
use super::volume::Shape;
use crate::basis::canopy::reached;
use crate::basis::stated::{declared, stand_in, stated};
use crate::basis::storm::Storm;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Containment, OF_A_VOLUME, Rain, Spill};
use crate::enquiry::containments::covered;
use crate::provenance::{Stop, Trail, Val, WhatIf, Whence, given};
use crate::{by, reckon, say};
use stillrise_handbook::rain::{fire_water, rain_depth as depth_by_duration, rain_volume};
use stillrise_units::catalog::{FT, FT2, H, ONE};
use stillrise_units::{Area, Length, Time, Typed, Volume, ratio};

/// Depth of the design rain: stated, that of 24 hours in the rain table, or asked.
///
/// # Errors
/// [`Stop`] when the table gives no depth.
pub fn rain_depth<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    storm: Option<&Storm>,
    open: &mut Vec<Open>,
) -> Result<Reach<Length>, Stop> {
    let label = "depth of the rain that containments hold";
    let unsaid = Rain::default();
    let event = e.rain.as_ref().unwrap_or(&unsaid).event_depth();
    let table = storm.and_then(|s| s.table.as_ref()).filter(|table| {
        let longest = table.q.0.last().map_or(0.0, |(duration, _)| *duration);
        !event.said.is_given() && longest >= Time::of(24.0, &H).si() * (1.0 - 1e-9)
    });
    if let Some(table) = table {
        let because = "US EPA names the 24-hour rain as freeboard; the return period is that of the enquiry";
        let day = given(t, "duration of that rain", Some((&H, &H)), Time::of(24.0, &H), because, "24 h");
        return Ok(Reach::known(by!(t, label, depth_by_duration::depth(table, day))?));
    }
    let usual = declared(event.spec);
    Ok(asked(t, w, event, label, usual, open))
}

/// Area whose rain a containment takes: the surfaces it covers, as far as rain reaches them, else its own.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
#[allow(clippy::too_many_arguments)]
pub fn catch<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    c: &Containment,
    name: &str,
    shape: Option<&Shape>,
    holds: Val<Volume>,
    open: &mut Vec<Open>,
) -> Result<Reach<Area>, Stop> {
    let mut sum: Option<Val<Area>> = None;
    for surface in covered(e, c) {
        let Some(next) = reached(t, w, surface, surface.name.as_deref().unwrap_or(""))? else { continue };
        sum = Some(match sum {
            None => next,
            Some(sum) => {
                reckon!(t, &say!(T, "area whose rain {name} takes"), [FT2, M2], (sum = sum, next = next) sum + next)
            }
        });
    }
    if let Some(sum) = sum {
        return Ok(Reach::known(sum));
    }
    if let Some(shape) = shape {
        return Ok(shape.area);
    }
    // Of a stated volume the area is known by nobody; one between a foot and six feet deep is usual.
    let over = |feet: f64| (holds.q / Length::of(feet, &FT)).max(Area::of(1.0, &FT2));
    let label = format!("area of {name}");
    let over = stand_in(
        (over(6.0), over(2.0), over(0.5)),
        "engineering judgement: its volume over depths of {6 ft|1.8 m} to {0.5 ft|0.15 m}",
    );
    Ok(asked(t, w, c.area().of(name).when(OF_A_VOLUME), &label, over, open))
}

/// The rain that falls or runs into it: all of it stays.
///
/// # Errors
/// [`Stop`] when the formula has no answer.
pub fn rain<T: Trail>(t: &mut T, catch: &Reach<Area>, depth: &Reach<Length>) -> Result<Reach<Volume>, Stop> {
    let all = given(t, "share of the rain that stays", Some((&ONE, &ONE)), ratio(1.0), Whence::Definition, "all of it");
    let val = by!(t, "design rain", rain_volume::volume(all, depth.val, catch.val))?;
    let low = rain_volume::volume(all.q, depth.low, catch.low)?;
    let high = rain_volume::volume(all.q, depth.high, catch.high)?;
    Ok(Reach { val, low, high })
}

/// Fire water: its volume, or flow and duration, or asked.
///
/// # Errors
/// [`Stop`] when the formula has no answer.
pub fn fire<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, open: &mut Vec<Open>) -> Result<Reach<Volume>, Stop> {
    let unsaid = Spill::default();
    let block = e.spill.as_ref().unwrap_or(&unsaid);
    let label = "fire water to hold";
    if let Some(flow) = stated(t, w, "flow of fire water", &block.fire_flow) {
        let key = block.fire_duration();
        let usual = declared(key.spec);
        let duration = asked(t, w, key, "how long fire water is held", usual, open);
        let val = by!(t, label, fire_water::volume(flow, duration.val))?;
        let end = |d| fire_water::volume(flow.q, d).map_err(Stop::from);
        return Ok(Reach { val, low: end(duration.low)?, high: end(duration.high)? });
    }
    let key = block.fire_volume();
    let usual = declared(key.spec);
    Ok(asked(t, w, key, label, usual, open))
}
