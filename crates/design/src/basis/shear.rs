//! What breaks the droplets on the way to the unit: the pump that feeds it, and pumps, valves, fittings and
//! pipes that the enquiry names. The hardest of them decides.

use super::cases::FeedState;
use super::fluids::{Fluids, OilState};
use super::stated::{standby, stated, stated_or};
use crate::enquiry::Enquiry;
use crate::enquiry::shear::{ShearBlock, ShearKind};
use crate::provenance::{Stop, Trail, Val, WhatIf, assume, choose, given};
use crate::{by, reckon, say};
use stillrise_handbook::fluids::chemicals::chemical;
use stillrise_handbook::hydraulics::fittings::fitting_of;
use stillrise_handbook::hydraulics::{circle_area, colebrook, laminar_friction, mean_velocity, pipe_reynolds};
use stillrise_handbook::separation::pumps::pump;
use stillrise_handbook::separation::{hinze_droplet, pipe_dissipation, valve_dissipation, viscous_hinze};
use stillrise_units::catalog::{MN_M, ONE, UM, W_KG};
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
    let broken = broken(t, w, e, fluids);
    let mut places = Vec::new();
    for block in &e.shear {
        let name = block.name.0.clone().unwrap_or_else(|| "unnamed shear".to_owned());
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
    Ok(places.next().map(|first| Shear {
        first,
        others: places.collect(),
        median: None,
        governs: false,
        overruled: false,
    }))
}

fn broken<'a, T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, fluids: &'a Fluids) -> Vec<Broken<'a>> {
    let kinds = e.chemicals.iter().filter_map(|c| c.kind.as_deref().and_then(chemical));
    let with_surfactant = if kinds.into_iter().any(|c| c.surfactant) {
        Some(assume(
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
        ))
    } else {
        None
    };
    let b = stated_or(
        t,
        w,
        &e.method.viscosity_group,
        standby(
            "coefficient of the oil's own viscosity in breaking",
            (&ONE, &ONE),
            "method.viscosity_group",
            "",
            (ratio(0.0), ratio(0.0), ratio(0.25)),
            "0, a thin oil, is the safe side; from memory Davies (1985) lets the tension grow by a quarter of viscosity times eddy velocity, which is 0.25 at a Weber number of one",
        ),
    );
    let one = |oil: &'a OilState| Broken {
        name: &oil.name,
        tension: with_surfactant.unwrap_or(oil.tension),
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
    let finest = finest.ok_or_else(|| Stop { doing: label.clone(), reason: "there is no oil".to_owned() })?;
    if !several {
        return Ok(finest);
    }
    let because = "the oil that breaks into the finest droplets";
    Ok(choose(t, &label, Some((&UM, &UM)), finest.q, "all oils that may come", because, &nodes))
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
    // What one kind of pump dissipates says nothing of another kind.
    let key = feed.class.map_or_else(|| "inlet.pump".to_owned(), |class| format!("inlet.pump.{}", class.word));
    assume(t, w, standby("power dissipated in the pump", (&W_KG, &W_KG), key, question, range, source))
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
