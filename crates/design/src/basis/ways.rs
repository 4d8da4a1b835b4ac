//! The waters of a case on their way to the unit: how warm and how salty it is.

use super::cases::Kind;
use super::chemicals::Which;
use super::dumps::Parts;
use super::fluids::{Fluids, WaterState, water};
use super::stated::stated;
use super::waters::Water;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::Stream;
use crate::enquiry::keys::Quantity;
use crate::provenance::{Stop, Trail, Val, WhatIf, Whence, choose, given};
use crate::{by, reckon, say};
use stillrise_handbook::fluids::{mixed_salinity, mixed_temperature, oil_density};
use stillrise_units::catalog::{D, DEG_C, DEG_F};
use stillrise_units::{Density, Flow, Ratio, Temperature, Time, Typed, Volume};

/// Water and oil of a case whose waters are warmer, colder or saltier than the water of the season.
#[derive(Debug, Clone)]
pub struct OwnFluids {
    /// The water at the plates, cold and warm: what comes warm may have cooled.
    pub water: [WaterState; 2],
    /// The water as it arrives, cold and warm.
    pub arrives: [WaterState; 2],
    /// The oil that is slowest to rise in it.
    pub oil: [Val<Density>; 2],
}

/// A water as cold as it may be when it comes to the plates: its warmth is lost between the times that it comes.
fn cooled<T: Trail>(t: &mut T, name: &str, arrives: Val<Temperature>, fluids: &Fluids) -> Val<Temperature> {
    let season = fluids.cold.temperature;
    if arrives.q <= season.q {
        return arrives;
    }
    let label = say!(T, "coldest {name} at the plates");
    let among = "the temperature at which it arrives, and the coldest water";
    let because = "what stands in the unit cools between the times that warm water comes; one that never stops is stated by its `coldest`";
    choose(t, &label, Some((&DEG_F, &DEG_C)), season.q, among, because, &[season.at, arrives.at])
}

/// What a volume of an average day weighs where heat is mixed: that volume as a flow.
pub(super) fn weight<T: Trail>(t: &mut T, label: &str, volume: Val<Volume>) -> Val<Flow> {
    let day = given(t, "a day", Some((&D, &D)), Time::of(1.0, &D), Whence::Definition, "24 h");
    reckon!(t, label, [GPD, M3_D], (volume = volume, day = day) volume / day)
}

/// The temperature of a water with what baths of a temperature of their own bring of its average day: its content is the
/// mean with them too.
fn with_dumps<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    one: &Water,
    [mut cold, mut warm]: [Val<Temperature>; 2],
) -> Result<[Val<Temperature>; 2], Stop> {
    let Some(Parts { bare, baths }) = &one.dumped else { return Ok([cold, warm]) };
    if !baths.iter().any(|(k, _)| e.dumps[*k].temperature.is_given()) {
        return Ok([cold, warm]);
    }
    let mut so_far = weight(t, &say!(T, "{} on an average day without its baths, as a flow", one.name), *bare);
    for (k, volume) in baths {
        let next = weight(t, "bath on an average day, as a flow", *volume);
        if let Some(own) = stated(t, w, "temperature of the bath", &e.dumps[*k].temperature) {
            cold = by!(t, "coldest, mean with the bath", mixed_temperature::temperature(so_far, cold, next, own))?;
            warm = by!(t, "warmest, mean with the bath", mixed_temperature::temperature(so_far, warm, next, own))?;
        }
        so_far = reckon!(t, "so far, as a flow", [GPD, M3_D], (sum = so_far, next = next) sum + next);
    }
    Ok([cold, warm])
}

/// Waters so far: their flow, temperature cold at the plates, cold as they arrive and warm, and salinity.
type Mixed = (Val<Flow>, [Val<Temperature>; 3], Val<Ratio>);

/// Water and oil of a case of these waters, where one of them states a temperature or a salinity of its own: what comes at
/// a time mixes by flow, a mean of days by volume, as what they carry does.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn own_fluids<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    (kind, waters): (Kind, &[&Water]),
) -> Result<Option<OwnFluids>, Stop> {
    let stream = |water: &Water| match water.which {
        Which::Stream(k) => Some(&e.streams[k]),
        _ => None,
    };
    let differs =
        |s: &Stream| s.temperature.is_given() || s.coldest.is_given() || s.warmest.is_given() || s.salinity.is_given();
    let bath = |water: &Water| match water.which {
        Which::Bath(k) => Some(&e.dumps[k].temperature),
        _ => None,
    };
    // While a bath is let go its stream is what it is without one.
    let hot = |dump: &(usize, Val<Volume>)| e.dumps[dump.0].temperature.is_given();
    let by_mean = |water: &&Water| kind != Kind::Bath && water.dumped.iter().flat_map(|parts| &parts.baths).any(hot);
    let warmed = waters.iter().filter_map(|water| bath(water)).any(Quantity::is_given);
    let warmed = warmed || waters.iter().any(by_mean);
    if !warmed && !waters.iter().filter_map(|water| stream(water)).any(differs) {
        return Ok(None);
    }
    let mut mixed: Option<Mixed> = None;
    for one in waters {
        let own = stream(one);
        let bath = bath(one);
        let name = &one.name;
        let mut first = |label: &str, keys: [Option<&Quantity<Temperature>>; 2], general: Val<Temperature>| {
            let label = say!(T, "{label} water of {name}");
            keys.into_iter().flatten().find_map(|key| stated(t, w, &label, key)).unwrap_or(general)
        };
        let at = own.map(|s| &s.temperature).or(bath);
        let cold = first("coldest", [own.map(|s| &s.coldest), at], fluids.cold.temperature);
        let warm = first("warmest", [own.map(|s| &s.warmest), at], fluids.warm.temperature);
        let [cold, warm] = if kind == Kind::Bath { [cold, warm] } else { with_dumps(t, w, e, one, [cold, warm])? };
        let cools = own.is_none_or(|s| !s.coldest.is_given());
        let plates = if cools { cooled(t, name, cold, fluids) } else { cold };
        let salt = own.and_then(|s| stated(t, w, &say!(T, "dissolved salt, {name}"), &s.salinity));
        let salt = salt.unwrap_or(fluids.salinity);
        let next = match kind {
            Kind::Days => weight(t, &say!(T, "{name} on an average day, as a flow"), one.per_day),
            _ => one.flow,
        };
        mixed = Some(match mixed {
            None => (next, [plates, cold, warm], salt),
            Some((q, [p, c, h], s)) => (
                reckon!(t, "flow so far", [GPM, M3_H], (sum = q, next = next) sum + next),
                [
                    by!(t, "coldest at the plates, mixed", mixed_temperature::temperature(q, p, next, plates))?,
                    by!(t, "coldest, mixed", mixed_temperature::temperature(q, c, next, cold))?,
                    by!(t, "warmest, mixed", mixed_temperature::temperature(q, h, next, warm))?,
                ],
                by!(t, "dissolved salt, mixed", mixed_salinity::salinity(q, s, next, salt))?,
            ),
        });
    }
    let Some((_, [plates, cold, warm], salt)) = mixed else { return Ok(None) };
    // Whatever comes colder than the other end of the year is the cold corner.
    let (cold, warm) = if cold.q <= warm.q { (cold, warm) } else { (warm, cold) };
    let plates = if cold.q <= plates.q { cold } else { plates };
    let oil = fluids.heaviest_in(plates.q);
    let mut state = |label: &str, at: Val<Temperature>| -> Result<(WaterState, Val<Density>), Stop> {
        let density = by!(t, label, oil_density::density(oil.density_15, at, oil.group))?;
        Ok((water(t, at, salt)?, density))
    };
    let (at_plates, oil_cold) = state("density of the oil in it, cold", plates)?;
    let (warm, oil_warm) = state("density of the oil in it, warm", warm)?;
    let arrives = if cold.q == plates.q { at_plates.clone() } else { water(t, cold, salt)? };
    Ok(Some(OwnFluids { arrives: [arrives, warm.clone()], water: [at_plates, warm], oil: [oil_cold, oil_warm] }))
}
