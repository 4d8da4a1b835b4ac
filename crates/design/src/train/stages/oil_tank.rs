//! A holding tank outside the unit, into which its oil is drawn off: how long it lasts, and whether it takes a spill.

use super::super::Train;
use crate::basis::Basis;
use crate::basis::stated::{stated, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::performance::storage::Storage;
use crate::provenance::{Stop, Trail, Val, WhatIf};
use crate::{by, reckon};
use stillrise_handbook::vessel::days_to_fill;
use stillrise_units::{Ratio, Time, Typed, Volume};

/// The tank.
#[derive(Debug, Clone)]
pub struct OilTank {
    /// Its volume.
    pub volume: Val<Volume>,
    /// What of it may be filled.
    pub room: Val<Volume>,
    /// Days until that is full, by the oil that the units are reckoned to catch.
    pub days: Option<Val<Time>>,
    /// The same if all free oil that arrives were held: the soonest.
    pub soonest: Option<Val<Time>>,
    /// Routine draw-offs of all units that it takes.
    pub draws: Option<Val<Ratio>>,
    /// Room less what of a spill reaches the units, the tank empty before.
    pub spare: Option<Val<Volume>>,
}

/// Finds how long it lasts; nothing where none was spoken of.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(in crate::train) fn oil_tank<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    basis: &Basis,
    train: &Train,
    storage: &Storage,
) -> Result<Option<OilTank>, Stop> {
    let Some(block) = &e.oil_tank else { return Ok(None) };
    t.section("oil holding tank");
    let Some(volume) = stated(t, w, "volume of the oil holding tank", &block.volume) else { return Ok(None) };
    let fill = stated_or_usual(t, w, block.fill(), "share of the oil holding tank that may be filled");
    let room = reckon!(t, "room in the oil holding tank", [GAL, M3], (volume = volume, fill = fill) volume * fill);
    let n = train.count;
    let days = if storage.oil_rate.q.si() > 0.0 {
        let rate = reckon!(t, "oil collected in all units", [GPD, M3_D], (rate = storage.oil_rate, n = n) rate * n);
        Some(by!(t, "days until the oil holding tank is full", days_to_fill::time(room, rate))?)
    } else {
        None
    };
    // Both days go by the same layer of oil, so that their ratio is that of the rates.
    let soonest = match (days, storage.oil_routine, storage.oil_soonest) {
        (Some(days), Some(usual), Some(soonest)) if usual.q.si() > 0.0 => {
            let label = "the same, if all free oil were held";
            Some(reckon!(t, label, [D, D], (days = days, soonest = soonest, usual = usual) days * (soonest / usual)))
        }
        _ => None,
    };
    let draws = days.zip(storage.oil_routine).filter(|(_, usual)| usual.q.si() > 0.0).map(|(days, usual)| {
        reckon!(t, "routine draw-offs that the oil holding tank takes", [ONE, ONE], (days = days, usual = usual) days / usual)
    });
    let spare = basis.spill.as_ref().map(|spill| {
        reckon!(t, "room in the oil holding tank less the spill", [GAL, M3], (room = room, spill = spill.at_unit()) room - spill)
    });
    Ok(Some(OilTank { volume, room, days, soonest, draws, spare }))
}
