//! What breaks the droplets on the way to the unit: the pump that feeds it, and pumps, valves, fittings and
//! pipes that the enquiry names. The hardest of them decides.

use super::cases::FeedState;
use super::fluids::{Fluids, OilState};
use super::stated::{standby, stated};
use crate::enquiry::Enquiry;
use crate::enquiry::shear::{ShearBlock, ShearKind};
use crate::provenance::{Stop, Trail, Val, WhatIf, assume, given};
use crate::{by, reckon, say};
use stillrise_handbook::fluids::chemicals::{Effect, chemical};
use stillrise_handbook::hydraulics::fittings::fitting_of;
use stillrise_handbook::hydraulics::{circle_area, colebrook, laminar_friction, mean_velocity, pipe_reynolds};
use stillrise_handbook::separation::pumps::pump;
use stillrise_handbook::separation::{hinze_droplet, pipe_dissipation, valve_dissipation, viscous_hinze};
use stillrise_units::catalog::{MN_M, ONE, W_KG};
use stillrise_units::{Dissipation, Length, Pressure, Ratio, SurfaceTension, Typed, Viscosity, ratio};

/// One place where droplets may break.
#[derive(Debug, Clone)]
pub struct Place {
    /// Its name.
    pub name: String,
    /// Whether it is a pump.
    pub is_pump: bool,
    /// Power dissipated there.
    pub dissipation: Val<Dissipation>,
    /// Largest droplet that survives it.
    pub survives: Val<Length>,
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

/// The oil that breaks into the finest droplets: the one with the lowest tension.
struct Broken {
    tension: Val<SurfaceTension>,
    /// Viscosity of the oil, and the coefficient that goes with it; `None` where it is not known.
    thick: Option<(Val<Viscosity>, Val<Ratio>)>,
}

/// Finds what breaks the droplets; `None` when nothing does.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn shear<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    fluids: &Fluids,
    feed: &FeedState,
) -> Result<Option<Shear>, Stop> {
    if !feed.pumped && e.shear.is_empty() {
        return Ok(None);
    }
    let broken = broken(t, w, e, fluids)?;
    let mut places = Vec::new();
    for block in &e.shear {
        let name = block.name.clone().unwrap_or_else(|| "unnamed shear".to_owned());
        let Some(dissipation) = dissipation(t, w, fluids, block, &name)? else { continue };
        let survives = survives(t, fluids, &broken, &name, dissipation)?;
        places.push(Place { name, is_pump: block.kind.0 == Some(ShearKind::Pump), dissipation, survives });
    }
    if feed.pumped {
        let dissipation = feed_pump(t, w, feed);
        let survives = survives(t, fluids, &broken, "pump", dissipation)?;
        places.push(Place { name: "pump".to_owned(), is_pump: true, dissipation, survives });
    }
    let mut places = places.into_iter();
    Ok(places.next().map(|first| Shear { first, others: places.collect(), median: None, governs: false }))
}

fn broken<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, fluids: &Fluids) -> Result<Broken, Stop> {
    let mut oil: &OilState = &fluids.oils[0];
    for other in &fluids.oils {
        if other.tension.q < oil.tension.q {
            oil = other;
        }
    }
    let detergent =
        e.chemicals.iter().filter_map(|c| c.kind.as_deref().and_then(chemical)).any(|c| c.effect == Effect::Emulsifies);
    let tension = if detergent {
        assume(
            t,
            w,
            standby(
                "interfacial tension with detergent",
                (&MN_M, &MN_M),
                "chemical.tension",
                "",
                (SurfaceTension::of(1.0, &MN_M), SurfaceTension::of(4.0, &MN_M), SurfaceTension::of(15.0, &MN_M)),
                "from memory: 3 to 5 mN/m with surfactant, less with strong detergent",
            ),
        )
    } else {
        oil.tension
    };
    let thick = match oil.viscosity {
        Some(nu) => {
            let mu = reckon!(t, "viscosity of the oil that breaks", [CP, MPA_S], (nu = nu, rho = oil.cold) nu * rho);
            let b = assume(
                t,
                w,
                standby(
                    "coefficient of the oil's own viscosity in breaking",
                    (&ONE, &ONE),
                    "method.viscosity_group",
                    "",
                    (ratio(0.0), ratio(0.25), ratio(1.0)),
                    "from memory: Davies lets the tension grow by a quarter of viscosity times eddy velocity, which is about this at a Weber number of one; 0 is the safe side",
                ),
            );
            Some((mu, b))
        }
        None => None,
    };
    Ok(Broken { tension, thick })
}

fn survives<T: Trail>(
    t: &mut T,
    fluids: &Fluids,
    broken: &Broken,
    name: &str,
    dissipation: Val<Dissipation>,
) -> Result<Val<Length>, Stop> {
    let label = say!(T, "largest droplet that survives the {name}");
    let water = fluids.cold.density;
    Ok(match broken.thick {
        Some((mu, b)) => by!(t, &label, viscous_hinze::diameter(broken.tension, water, dissipation, mu, b))?,
        None => by!(t, &label, hinze_droplet::diameter(broken.tension, water, dissipation))?,
    })
}

fn feed_pump<T: Trail>(t: &mut T, w: &WhatIf, feed: &FeedState) -> Val<Dissipation> {
    let at = |x: f64| Dissipation::of(x, &W_KG);
    let (range, question, source) = match feed.class {
        Some(class) => {
            let [low, likely, high] = class.dissipation();
            ((low, likely, high), "", class.shear_mark.text())
        }
        None => (
            (at(1.0), at(1000.0), at(10_000.0)),
            "Which pump lifts the water to the separator?",
            "kind of pump not said; taken as the centrifugal pump of most sumps, engineering judgement".to_owned(),
        ),
    };
    assume(t, w, standby("power dissipated in the pump", (&W_KG, &W_KG), "inlet.pump", question, range, source))
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
    if let Some(known) = stated(t, w, &label, &block.dissipation) {
        return Ok(Some(known));
    }
    if block.kind.0 == Some(ShearKind::Pump) {
        let Some(class) = block.pump.as_deref().and_then(pump) else { return Ok(None) };
        let [low, likely, high] = class.dissipation();
        let key = format!("shear \"{name}\".dissipation");
        let standby = standby(&label, (&W_KG, &W_KG), key, "", (low, likely, high), class.shear_mark.text());
        return Ok(Some(assume(t, w, standby)));
    }
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
    let key = format!("shear \"{name}\".jet");
    let lengths = assume(
        t,
        w,
        standby(
            "length of the jet in bores",
            (&ONE, &ONE),
            key,
            "",
            (ratio(2.0), ratio(3.0), ratio(5.0)),
            "from memory: the loss is spent over two to five bores",
        ),
    );
    Ok(Some(by!(t, &label, valve_dissipation::dissipation(lost, flow, water.density, bore, lengths))?))
}
