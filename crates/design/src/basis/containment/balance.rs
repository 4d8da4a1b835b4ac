//! A spill with rain and fire water against the chain of containments that holds it.

use super::drain::Shut;
use super::further::{Further, further};
use super::reach::{Open, Reach, asked};
use super::{Containment, Containments};
use crate::basis::SpillState;
use crate::basis::fluids::{Fluids, OilState, Season};
use crate::basis::stated::{declared, stated};
use crate::enquiry::containments::{SEPARATOR, find, same_name, spill_place_is_open};
use crate::enquiry::{Enquiry, blocks};
use crate::provenance::{Stop, Trail, Val, WhatIf, given};
use crate::{by, reckon, say};
use stillrise_handbook::vessel::{
    containment_allowance, displaced_water, layer_thickness, oil_mass_volume, oil_surface_rise,
};
use stillrise_units::catalog::PERCENT;
use stillrise_units::{Length, Typed, Volume, ratio};

/// What is left or short, and between which ends where something is not known.
#[derive(Debug, Clone, Copy)]
pub struct Spare {
    /// As counted; below zero it is short.
    pub val: Val<Volume>,
    /// The least it may turn out.
    pub least: Volume,
    /// The most.
    pub most: Volume,
}

impl Spare {
    /// Whether it holds, whatever the unknowns turn out to be; `None` when they decide.
    #[must_use]
    pub fn holds(&self) -> Option<bool> {
        match (self.least.si() >= 0.0, self.most.si() >= 0.0) {
            (true, _) => Some(true),
            (false, false) => Some(false),
            (false, true) => None,
        }
    }
}

/// What oil does to the water that it finds.
#[derive(Debug, Clone, Copy)]
pub struct Displaced {
    /// Water that leaves under a baffle before any oil does: of the oil that is said to be there, else of the heaviest.
    pub water: Val<Volume>,
    /// How far the oil's surface stands above the water's, of that oil or else of the lightest, in the containment of the spill.
    pub rise: Option<Val<Length>>,
}

/// What a containment must hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// The oil of the largest vessel.
    Oil,
    /// The design rain.
    Rain,
    /// Water to put out a fire.
    FireWater,
}

impl Part {
    /// Its word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Part::Oil => "oil",
            Part::Rain => "rain",
            Part::FireWater => "fire water",
        }
    }
}

/// One spill against what holds it.
#[derive(Debug, Clone)]
pub struct Balance {
    /// Where it happens.
    pub place: usize,
    /// The containments that hold it, in the direction of overflow.
    pub chain: Vec<usize>,
    /// Whether it is the declared spill.
    pub declared: bool,
    /// Oil.
    pub oil: Reach<Volume>,
    /// Rain on the chain, and what overflows into it.
    pub rain: Val<Volume>,
    /// All that must be held.
    pub need: Val<Volume>,
    /// All that is held.
    pub held: Val<Volume>,
    /// Left without fire water.
    pub dry: Spare,
    /// Left with it.
    pub spare: Spare,
    /// Which of the three is the largest part.
    pub largest: Part,
    /// How far the drains of the chain may be relied on.
    pub shut: Shut,
    /// Oil with the allowance that is prescribed, where one is.
    pub allowance: Option<Val<Volume>>,
    /// Oil and a tenth, a rule of thumb.
    pub thumb: Val<Volume>,
    /// What would hold what is short.
    pub further: Option<Further>,
    /// What the oil does to water that it finds; none for an oil that sinks.
    pub displaced: Option<Displaced>,
    /// What nobody said.
    pub open: Vec<Open>,
}

impl Balance {
    /// Whether it surely holds: the volume is there, and no drain lets it out.
    #[must_use]
    pub fn keeps_all(&self) -> bool {
        self.spare.holds() == Some(true) && self.shut <= Shut::Device
    }
}

/// The chain of overflow from one containment on, ending before one whose drain is known to stand open.
fn chain(all: &[Containment], place: usize) -> Vec<usize> {
    let mut chain = vec![place];
    let mut at = place;
    while let Some(next) = all[at].to.filter(|n| !chain.contains(n) && all[*n].valve.shut() != Shut::Open) {
        chain.push(next);
        at = next;
    }
    chain
}

/// Rain of one containment, with what overflows into it from others that are not among `without`.
pub fn inflow<T: Trail>(
    t: &mut T,
    all: &[Containment],
    at: usize,
    without: &[usize],
    zero: Val<Volume>,
) -> Reach<Volume> {
    let mut sum = all[at].rain;
    for (i, above) in all.iter().enumerate() {
        if above.to != Some(at) || without.contains(&i) || i == at {
            continue;
        }
        let arrives = inflow(t, all, i, without, zero);
        // What stands open lets all of it through.
        let passes = if above.valve.shut() <= Shut::Device {
            arrives.beyond(t, &format!("rain that overflows from {}", above.name), &above.holds, zero)
        } else {
            arrives
        };
        sum = sum.plus(t, &format!("rain into {}", all[at].name), &passes);
    }
    sum
}

/// All balances.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn balances<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    spill: Option<&SpillState>,
    found: &Containments,
    zero: Val<Volume>,
) -> Result<Vec<Balance>, Stop> {
    let named = e.spill.as_ref().and_then(|s| s.into.as_deref());
    let into = named.and_then(|name| find(&e.containments, name));
    // One that runs to the separator past all of them is held by none, and so is one of which nobody said where it happens.
    let past = named.is_some_and(|name| same_name(name, SEPARATOR)) || spill_place_is_open(e);
    let mut balances = Vec::new();
    for (i, block) in e.containments.iter().enumerate() {
        let name = &found.all[i].name;
        t.section(format_args!("spill held by {name}"));
        let mut open = Vec::new();
        let own = own_oil(t, w, fluids, block, name, &mut open)?;
        let head = !found.all.iter().any(|c| c.to == Some(i));
        let here = match into {
            _ if past => false,
            Some(place) => place == i,
            None => own.is_none() && head,
        };
        let (oil, declared) = match (own, spill.filter(|_| here)) {
            (Some(own), Some(spill)) if spill.volume.q > own.high => (Reach::known(spill.volume), true),
            (Some(own), spill) => (own, spill.is_some() && !past),
            (None, Some(spill)) => (Reach::known(spill.volume), true),
            (None, None) if head && spill.is_none() => (unknown_oil(t, w, block, name, &mut open), false),
            (None, None) => continue,
        };
        balances.push(balance(t, w, block, fluids, found, i, oil, declared, open, zero)?);
    }
    Ok(balances)
}

/// Oil in the largest vessel, by volume or by mass.
fn own_oil<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    fluids: &Fluids,
    block: &blocks::Containment,
    name: &str,
    open: &mut Vec<Open>,
) -> Result<Option<Reach<Volume>>, Stop> {
    if let Some(mass) = stated(t, w, &say!(T, "oil in the largest vessel of {name}, by mass"), &block.vessel_oil_mass) {
        // Of that which is said to be in it, else of the lightest, which takes most room.
        let [_, lightest] = oils(fluids, block, Season::Warm);
        let volume =
            by!(t, &say!(T, "oil in the largest vessel of {name}"), oil_mass_volume::volume(mass, lightest.warm))?;
        return Ok(Some(Reach::known(volume)));
    }
    Ok(block.vessel_oil.is_given().then(|| unknown_oil(t, w, block, name, open)))
}

/// The same by volume, stated or asked.
fn unknown_oil<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    block: &blocks::Containment,
    name: &str,
    open: &mut Vec<Open>,
) -> Reach<Volume> {
    let label = format!("oil in the largest vessel of {name}");
    let key = block.vessel_oil().of(name);
    let usual = declared(key.spec);
    asked(t, w, key, &label, usual, open)
}

#[allow(clippy::too_many_arguments)]
fn balance<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    block: &blocks::Containment,
    fluids: &Fluids,
    found: &Containments,
    place: usize,
    oil: Reach<Volume>,
    declared: bool,
    mut open: Vec<Open>,
    zero: Val<Volume>,
) -> Result<Balance, Stop> {
    let all = &found.all;
    let chain = chain(all, place);
    let mut held = all[place].holds;
    let mut rain = inflow(t, all, place, &chain, zero);
    for next in &chain[1..] {
        held = held.plus(t, "what the chain holds", &all[*next].holds);
        let more = inflow(t, all, *next, &chain, zero);
        rain = rain.plus(t, "rain into the chain", &more);
    }
    for i in &chain {
        open.extend(all[*i].open.iter().filter(|o| !open.contains(o)).cloned().collect::<Vec<_>>());
    }
    let allowance = match stated(t, w, "allowance beyond the oil", &block.freeboard) {
        Some(share) => Some((by!(t, "oil with the allowance", containment_allowance::volume(oil.val, share))?, share)),
        None => None,
    };
    let oil_and_rain = oil.plus(t, "oil and rain", &rain);
    let mut asked_for = oil_and_rain;
    if let Some((volume, share)) = allowance {
        let end = |q: Volume| q * (ratio(1.0) + share.q);
        asked_for = Reach {
            val: reckon!(t, "oil and rain, or oil with its allowance", [GAL, M3], (rain = oil_and_rain.val, share = volume) rain.max(share)),
            low: asked_for.low.max(end(oil.low)),
            high: asked_for.high.max(end(oil.high)),
        };
    }
    let dry = spare(t, "spare without fire water", &held, &asked_for);
    let need = asked_for.plus(t, "volume to hold", &found.fire);
    let all_spare = spare(t, "spare", &held, &need);
    open.extend(found.fire_open.iter().cloned());
    let tenth = given(
        t,
        "allowance by rule of thumb",
        Some((&PERCENT, &PERCENT)),
        ratio(0.1),
        "common practice, no rule",
        "10 %",
    );
    let thumb = by!(t, "oil and a tenth, rule of thumb", containment_allowance::volume(oil.val, tenth))?;
    let parts = [(Part::Oil, oil.val.q), (Part::Rain, rain.val.q), (Part::FireWater, found.fire.val.q)];
    let largest = parts.iter().fold(parts[0], |best, part| if part.1 > best.1 { *part } else { best }).0;
    let shut = chain.iter().map(|i| all[*i].valve.shut()).max().unwrap_or(Shut::Unknown);
    let further = further(t, found, place, need.val, held.val, zero);
    let displaced = displaced(t, fluids, (block, &all[place]), oil.val);
    let (need, held, rain, spare) = (need.val, held.val, rain.val, all_spare);
    let allowance = allowance.map(|(volume, _)| volume);
    Ok(Balance {
        place,
        chain,
        declared,
        oil,
        rain,
        need,
        held,
        dry,
        spare,
        largest,
        shut,
        allowance,
        thumb,
        further,
        displaced,
        open,
    })
}

fn spare<T: Trail>(t: &mut T, label: &str, held: &Reach<Volume>, need: &Reach<Volume>) -> Spare {
    let val = reckon!(t, label, [GAL, M3], (held = held.val, need = need.val) held - need);
    Spare { val, least: held.low - need.high, most: held.high - need.low }
}

/// The heaviest and the lightest oil of a containment: of the kind that it is said to hold, where that is among the oils of
/// the job; else of all.
fn oils<'a>(fluids: &'a Fluids, block: &blocks::Containment, season: Season) -> [&'a OilState; 2] {
    let kind = block.oil.as_ref().and_then(|oil| oil.kind.as_deref());
    let own = || fluids.oils.iter().filter(|oil| kind == Some(oil.oil.word));
    let by = |a: &&OilState, b: &&OilState| a.density(season).q.si().total_cmp(&b.density(season).q.si());
    let ends = own().max_by(by).zip(own().min_by(by));
    ends.map_or_else(|| [fluids.heaviest(season), fluids.lightest(season)], |(most, least)| [most, least])
}

/// Water that the oil pushes out, and how far it stands above it.
fn displaced<T: Trail>(
    t: &mut T,
    fluids: &Fluids,
    (block, at): (&blocks::Containment, &Containment),
    oil: Val<Volume>,
) -> Option<Displaced> {
    let water = fluids.water(Season::Cold).density;
    let [heaviest, lightest] = oils(fluids, block, Season::Cold).map(|oil| oil.cold);
    if heaviest.q >= water.q {
        return None;
    }
    let out = by!(t, "water that the oil pushes out from under itself", displaced_water::volume(oil, heaviest, water))
        .ok()?;
    let rise = at.shape.as_ref().and_then(|shape| {
        let wet = reckon!(t, &say!(T, "area of {} between its stones", at.name), [FT2, M2], (clear = shape.clear, share = shape.open_share) clear * share);
        let layer = by!(t, "layer of oil on the water there", layer_thickness::thickness(oil, wet)).ok()?;
        by!(t, "how far its surface stands above the water's", oil_surface_rise::rise(layer, lightest, water)).ok()
    });
    Some(Displaced { water: out, rise })
}
