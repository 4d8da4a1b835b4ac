//! What breaks the droplets on the way to the unit: the pump that feeds it, and pumps, valves, fittings and
//! pipes that the enquiry names. The hardest of them decides.

use super::droplets::Way;
use super::fluids::{Fluids, OilState};
use super::pump_shear::{feed_pump, pump_on_the_way};
use super::stated::{stated, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::enquiry::named::same;
use crate::enquiry::shear::{ShearBlock, ShearKind};
use crate::provenance::{Stop, Trail, Val, WhatIf, choose, given};
use crate::{by, reckon, say};
use stillrise_handbook::hydraulics::fittings::fitting_of;
use stillrise_handbook::hydraulics::{circle_area, colebrook, laminar_friction, mean_velocity, pipe_reynolds};
use stillrise_handbook::separation::{hinze_droplet, pipe_dissipation, valve_dissipation, viscous_hinze};
use stillrise_units::catalog::{ONE, UM};
use stillrise_units::{Dissipation, Length, Pressure, Ratio, SurfaceTension, Typed, Viscosity, ratio};

/// One place where droplets may break.
#[derive(Debug, Clone)]
pub struct Place {
    /// Its name.
    pub name: String,
    /// Whether it is a pump.
    pub is_pump: bool,
    /// Whether it is the pump that feeds the unit.
    pub is_feed_pump: bool,
    /// Power dissipated there.
    pub dissipation: Val<Dissipation>,
    /// Largest droplet that survives it.
    pub survives: Val<Length>,
    /// Low, likely and high dissipation of its class, if it is a pump of a known class.
    pub beside: Option<[Dissipation; 3]>,
    /// Whether its dissipation was worked from figures of its own.
    pub is_worked: bool,
}

/// A dissipation, and the range of the class of pumps it is of.
pub(super) struct Named {
    /// Power dissipated.
    pub dissipation: Val<Dissipation>,
    /// Low, likely and high of the class.
    pub beside: Option<[Dissipation; 3]>,
    /// Whether it was worked from figures.
    pub is_worked: bool,
}

/// What the way to the unit does to the droplets.
#[derive(Debug, Clone)]
pub struct Shear {
    first: Place,
    others: Vec<Place>,
    /// Volume median that the hardest leaves, where it replaces the distribution that arrives.
    pub median: Option<Val<Length>>,
    /// Whether it is finer than what would have come without.
    pub governs: bool,
    /// Whether the droplets at the unit are stated all the same, and stand.
    pub overruled: bool,
}

impl Shear {
    /// All places, in the order of the enquiry, the feed pump last.
    pub fn places(&self) -> impl Iterator<Item = &Place> {
        core::iter::once(&self.first).chain(&self.others)
    }
    /// The one that leaves the finest droplets.
    #[must_use]
    pub fn hardest(&self) -> &Place {
        let mut hardest = &self.first;
        for place in &self.others {
            if place.survives.q < hardest.survives.q {
                hardest = place;
            }
        }
        hardest
    }
}

/// One oil as it breaks.
struct Broken<'a> {
    name: &'a str,
    tension: Val<SurfaceTension>,
    /// Viscosity of the oil, and the coefficient that goes with it; `None` where it is not known.
    thick: Option<(Val<Viscosity>, Val<Ratio>)>,
}

/// Whose way to the unit it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sheared {
    /// That of all waters that name nothing of their own.
    All,
    /// A stream, by its place.
    Stream(usize),
    /// Water drained from a containment, by its place.
    Drain(usize),
}

/// What stands on the way of a water: what its block names, and what no block names.
pub(super) fn blocks(e: &Enquiry, of: Sheared) -> impl Iterator<Item = &ShearBlock> {
    e.shear.iter().filter(move |block| {
        let named = |list: &[String]| list.iter().any(|name| block.name.as_deref().is_some_and(|own| same(own, name)));
        let own = match of {
            Sheared::All => false,
            Sheared::Stream(k) => named(&e.streams[k].shear),
            Sheared::Drain(k) => named(&e.containments[k].shear),
        };
        own || !e.streams.iter().any(|s| named(&s.shear)) && !e.containments.iter().any(|c| named(&c.shear))
    })
}

/// Finds what breaks the droplets; `None` when nothing does.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn shear<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    way: &Way<'_>,
) -> Result<Option<Shear>, Stop> {
    let feed = way.feed;
    if !feed.pumped && blocks(e, way.of).next().is_none() {
        return Ok(None);
    }
    let broken = broken(t, w, e, fluids, way.tension);
    let mut places = Vec::new();
    for block in blocks(e, way.of) {
        let name = block.name.0.clone().unwrap_or_else(|| "unnamed shear".to_owned());
        let is_pump = block.kind.0 == Some(ShearKind::Pump);
        let label = say!(T, "power dissipated in the {name}");
        let plain = |dissipation| Named { dissipation, beside: None, is_worked: false };
        let named = match stated(t, w, &label, &block.dissipation) {
            Some(known) => Some(plain(known)),
            None if is_pump => pump_on_the_way(t, w, (e, fluids), block, &name)?,
            None => dissipation(t, w, fluids, block, &name)?.map(plain),
        };
        let Some(Named { dissipation, beside, is_worked }) = named else { continue };
        let survives = survives(t, fluids, &broken, &name, dissipation)?;
        places.push(Place { name, is_pump, is_feed_pump: false, dissipation, survives, beside, is_worked });
    }
    if feed.pumped {
        let Named { dissipation, beside, is_worked } = feed_pump(t, w, e, fluids, feed)?;
        let survives = survives(t, fluids, &broken, "pump", dissipation)?;
        places.push(Place {
            name: "pump".to_owned(),
            is_pump: true,
            is_feed_pump: true,
            dissipation,
            survives,
            beside,
            is_worked,
        });
    }
    let mut places = places.into_iter();
    Ok(places.next().map(|first| Shear {
        first,
        others: places.collect(),
        median: None,
        governs: false,
        overruled: false,
    }))
}

fn broken<'a, T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &'a Fluids,
    lowered: Option<Val<SurfaceTension>>,
) -> Vec<Broken<'a>> {
    let b = stated_or_usual(t, w, e.method.viscosity_group(), "coefficient of the oil's own viscosity in breaking");
    let one = |oil: &'a OilState| Broken {
        name: &oil.name,
        tension: lowered.unwrap_or(oil.tension),
        thick: oil.viscosity.map(|nu| {
            let label = say!(T, "viscosity of {} as it breaks", oil.name);
            (reckon!(t, &label, [CP, MPA_S], (nu = nu, rho = oil.cold) nu * rho), b)
        }),
    };
    fluids.oils.iter().map(one).collect()
}

fn survives<T: Trail>(
    t: &mut T,
    fluids: &Fluids,
    broken: &[Broken<'_>],
    name: &str,
    dissipation: Val<Dissipation>,
) -> Result<Val<Length>, Stop> {
    let label = say!(T, "largest droplet that survives the {name}");
    let water = fluids.cold.density;
    let several = broken.len() > 1;
    let mut finest: Option<Val<Length>> = None;
    let mut nodes = Vec::new();
    for oil in broken {
        let label = if several { say!(T, "{label}, {}", oil.name) } else { label.clone() };
        let size = match oil.thick.filter(|(_, b)| b.q.si() > 0.0) {
            Some((mu, b)) => by!(t, &label, viscous_hinze::diameter(oil.tension, water, dissipation, mu, b))?,
            None => by!(t, &label, hinze_droplet::diameter(oil.tension, water, dissipation))?,
        };
        nodes.push(size.at);
        if finest.is_none_or(|finest| size.q < finest.q) {
            finest = Some(size);
        }
    }
    let finest =
        finest.ok_or_else(|| Stop { doing: label.clone(), reason: "there is no oil".to_owned(), formula: false })?;
    if !several {
        return Ok(finest);
    }
    let because = "the oil that breaks into the finest droplets";
    Ok(choose(t, &label, Some((&UM, &UM)), finest.q, "all oils that may come", because, &nodes))
}

/// Power dissipated in what a block names; `None` when the block lacks something, which reading refuses.
fn dissipation<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    fluids: &Fluids,
    block: &ShearBlock,
    name: &str,
) -> Result<Option<Val<Dissipation>>, Stop> {
    let label = say!(T, "power dissipated in the {name}");
    let (Some(flow), Some(bore)) = (
        stated(t, w, &say!(T, "flow through the {name}"), &block.flow),
        stated(t, w, &say!(T, "bore of the {name}"), &block.diameter),
    ) else {
        return Ok(None);
    };
    let water = &fluids.cold;
    let area = by!(t, &say!(T, "section of the {name}"), circle_area::area(bore))?;
    let velocity = by!(t, &say!(T, "velocity in the {name}"), mean_velocity::velocity(flow, area))?;
    let lost: Val<Pressure> = match block.kind.0 {
        Some(ShearKind::Valve) => match stated(t, w, &say!(T, "pressure lost in the {name}"), &block.pressure) {
            Some(pressure) => pressure,
            None => return Ok(None),
        },
        Some(ShearKind::Fitting) => {
            let Some(row) = block.fitting.as_deref().and_then(fitting_of) else { return Ok(None) };
            let k = given(t, "loss coefficient", Some((&ONE, &ONE)), ratio(row.k), &row.source.to_string(), row.word);
            reckon!(t, "pressure lost in the fitting", [PSI, KPA], (k = k, rho = water.density, v = velocity) k * rho * v * v / 2.0)
        }
        _ => {
            let reynolds =
                by!(t, "Reynolds number of the pipe", pipe_reynolds::reynolds(velocity, bore, water.kinematic))?;
            let friction = if reynolds.q.si() <= 2300.0 {
                by!(t, "friction factor", laminar_friction::factor(reynolds))?
            } else {
                let rough =
                    given(t, "roughness over diameter", Some((&ONE, &ONE)), ratio(0.0), "our proposal", "smooth");
                by!(t, "friction factor", colebrook::factor(reynolds, rough))?
            };
            return Ok(Some(by!(t, &label, pipe_dissipation::dissipation(friction, velocity, bore))?));
        }
    };
    let lengths = stated_or_usual(t, w, block.jet(), "length of the jet in bores");
    Ok(Some(by!(t, &label, valve_dissipation::dissipation(lost, flow, water.density, bore, lengths))?))
}
