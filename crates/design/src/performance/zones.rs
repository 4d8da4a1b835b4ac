//! What the plate theory takes for granted, zone by zone: that the inlet jet leaves the droplets whole, that
//! films stay under the plates, that no current of warmer or colder water runs through, and that what was
//! caught is not drawn or stirred up again.

use super::hydraulics::Velocities;
use super::levels::OilLevels;
use super::removal::Removal;
use crate::basis::Basis;
use crate::basis::fluids::{Season, WaterState, water};
use crate::provenance::{Stop, Trail, Val, choose, given};
use crate::train::unit::Unit;
use crate::{by, reckon};
use stillrise_handbook::hydraulics::{baffle_coefficient, fitting_loss};
use stillrise_handbook::separation::entrance_length::EntranceForm;
use stillrise_handbook::separation::laminar_capture::PlateRun;
use stillrise_handbook::separation::{
    camp_scour, capillary_length, densimetric_froude, density_current_speed, drag_cut, entrance_length,
    film_shear_ratio, film_thickness, hinze_droplet, jet_dissipation, layer_froude, loss_dissipation, shear_rate,
};
use stillrise_units::catalog::{DEG_C, DEG_F, W_KG};
use stillrise_units::{Dissipation, Length, Ratio, ShearRate, Temperature, Typed, Velocity};

/// The checks, at the largest flow of a case with a known content, cold, at the end of the interval.
#[derive(Debug, Clone)]
pub struct Zones {
    /// Dissipation of the inlet jet in its chamber.
    pub jet: Val<Dissipation>,
    /// Mean shear rate there.
    pub shear: Val<ShearRate>,
    /// The diffusion baffle.
    pub baffle: Baffle,
    /// Largest droplet that the jet leaves whole; `None` for one too gentle to break any.
    pub survives: Option<Val<Length>>,
    /// Length over which the flow in the gaps develops; `None` without plates.
    pub entrance: Option<Val<Length>>,
    /// Film of oil under a plate, and the water's pull on it over its own drive; `None` for an oil whose
    /// viscosity is not known there, or that does not rise.
    pub film: Option<Film>,
    /// Size of drops shed from an edge.
    pub shed: Val<Length>,
    /// Froude number of the water under the layer at the alarm, at the downcomer; `None` without a layer.
    pub layer: Option<Val<Ratio>>,
    /// The oil retention zone.
    pub retention: Option<Retention>,
    /// Velocity that scours grains of the median size; `None` for grains no heavier than the water.
    pub scour: Option<Val<Velocity>>,
    /// The water that flows in, against that in the unit.
    pub current: Current,
}

/// What the diffusion baffle does to the jet.
#[derive(Debug, Clone)]
pub struct Baffle {
    /// Its loss coefficient on the velocity along the unit.
    pub zeta: Val<Ratio>,
    /// Power that it leaves in the primary zone.
    pub power: Option<Val<Dissipation>>,
}

/// The zone behind plates and mesh, where the water turns down to the downcomer's lip.
#[derive(Debug, Clone)]
pub struct Retention {
    /// Its overflow rate: how fast the water sinks there on the mean.
    pub overflow: Val<Velocity>,
    /// Largest droplet that the sinking water can draw under the downcomer.
    pub drawn: Val<Length>,
}

/// A current of water of another temperature.
#[derive(Debug, Clone)]
pub struct Current {
    /// Temperature of the water that flows in.
    pub inflow: Val<Temperature>,
    /// Whether somebody said so; else one kelvin over the water in the unit, to show what little it takes.
    pub stated: bool,
    /// Densimetric Froude number of the flow along the unit.
    pub froude: Option<Val<Ratio>>,
    /// Speed of the current.
    pub speed: Option<Val<Velocity>>,
}

/// Thickness of the film, and the water's pull on it over its drive.
pub type Film = (Val<Length>, Val<Ratio>);

/// W/kg: below it no droplet of a separator breaks; a clean one of 10 mm comes through whole.
const GENTLE: f64 = 0.001;

/// Finds them.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn zones<T: Trail>(
    t: &mut T,
    basis: &Basis,
    unit: &Unit,
    velocities: &Velocities,
    levels: &[OilLevels],
    worst: &Removal,
) -> Result<Zones, Stop> {
    t.section("zones");
    let f = &unit.frame;
    let cold = &basis.fluids.cold;
    let chamber = unit.zones.first().ok_or_else(|| Stop {
        doing: "zones".into(),
        reason: "no inlet chamber".into(),
        formula: false,
    })?;
    let jet = by!(
        t,
        "dissipation of the inlet jet in its chamber",
        jet_dissipation::dissipation(worst.flow, velocities.inlet, chamber.volume)
    )?;
    let shear = by!(t, "mean shear rate there", shear_rate::rate(jet, cold.kinematic))?;
    let baffle = baffle(t, unit, worst)?;
    let mut tension = basis.fluids.oils[0].tension;
    for oil in &basis.fluids.oils {
        if oil.tension.q < tension.q {
            tension = oil.tension;
        }
    }
    let label = "largest droplet that the jet leaves whole";
    let survives = if jet.q >= Dissipation::of(GENTLE, &W_KG) {
        Some(by!(t, label, hinze_droplet::diameter(tension, cold.density, jet))?)
    } else {
        None
    };
    let form = given(t, "form of the entrance length", None, EntranceForm::ShahLondon, "our proposal", "shah-london");
    let entrance = match worst.passage.plates() {
        Some(plates) => Some(by!(
            t,
            "length over which the flow in the gaps develops",
            entrance_length::length(plates.gap_velocity, f.gap, cold.kinematic, form)
        )?),
        None => None,
    };
    let film = film(t, basis, unit, worst)?;
    let oil = basis.fluids.heaviest(Season::Cold);
    let shed =
        by!(t, "size of drops shed from an edge", capillary_length::length(oil.tension, cold.density, oil.cold))?;
    let layer = match levels.iter().find_map(|l| l.level("alarm")) {
        Some(alarm) if oil.cold.q < cold.density.q && alarm.thickness.q.si() > 0.0 => Some(by!(
            t,
            "Froude number of the water under the layer at the alarm, at the downcomer",
            layer_froude::froude(velocities.slot, cold.density, oil.cold, alarm.thickness)
        )?),
        _ => None,
    };
    let retention = retention(t, unit, worst)?;
    let (beta, friction) = super::grains::camp(t);
    let s = &basis.solids;
    let label = "velocity that scours grains of the median size";
    let scour = if s.density.q > cold.density.q {
        Some(by!(t, label, camp_scour::velocity(beta, s.density, cold.density, s.d50, friction))?)
    } else {
        None
    };
    let current = current(t, basis, unit, velocities)?;
    Ok(Zones { jet, shear, baffle, survives, entrance, film, shed, layer, retention, scour, current })
}

fn baffle<T: Trail>(t: &mut T, unit: &Unit, worst: &Removal) -> Result<Baffle, Stop> {
    let f = &unit.frame;
    let zeta = by!(t, "loss coefficient of the diffusion baffle", baffle_coefficient::coefficient(f.baffle_open))?;
    let approach = reckon!(t, "velocity ahead of the baffle", [FT_MIN, MM_S],
        (flow = worst.flow, width = f.width, depth = f.crest) flow / (width * depth));
    let loss = by!(t, "head that the baffle takes", fitting_loss::loss(zeta, approach))?;
    let power = match unit.zones.get(1).filter(|zone| zone.volume.q.si() > 0.0) {
        Some(zone) => Some(by!(
            t,
            "power of the baffle's jets in the primary zone",
            loss_dissipation::dissipation(loss, worst.flow, zone.volume)
        )?),
        None => None,
    };
    Ok(Baffle { zeta, power })
}

fn retention<T: Trail>(t: &mut T, unit: &Unit, worst: &Removal) -> Result<Option<Retention>, Stop> {
    let (f, p) = (&unit.frame, &worst.passage.fluids);
    if !p.rises() {
        return Ok(None);
    }
    let overflow = reckon!(t, "overflow rate of the oil retention zone", [GPM_FT2, M_H],
        (flow = worst.flow, length = f.retention_length, width = f.width) flow / (length * width));
    let drawn = by!(
        t,
        "largest droplet that is drawn under the downcomer",
        drag_cut::diameter(overflow, p.water, p.oil, p.viscosity)
    )?;
    Ok(Some(Retention { overflow, drawn }))
}

/// The film that the governing oil makes under a plate, if everything free is caught there.
fn film<T: Trail>(t: &mut T, basis: &Basis, unit: &Unit, worst: &Removal) -> Result<Option<Film>, Stop> {
    let (f, cold) = (&unit.frame, &basis.fluids.cold);
    let oil = basis.fluids.heaviest(Season::Cold);
    let Some(kinematic) = oil.viscosity.filter(|_| oil.cold.q < cold.density.q) else { return Ok(None) };
    let Some(plates) = worst.passage.plates() else { return Ok(None) };
    let caught = reckon!(t, "oil caught by one plate, at most", [GPH, L_H],
        (flow = worst.flow, free = worst.content.free, rho = oil.cold, plates = unit.layout.plates) flow * free / rho / plates);
    if caught.q.si() <= 0.0 {
        return Ok(None);
    }
    let viscosity = reckon!(t, "viscosity of the oil", [CP, MPA_S], (nu = kinematic, rho = oil.cold) nu * rho);
    // Across the flow the oil drains along the width, over the length of the plates; else along the flow.
    let across = if f.run.q == PlateRun::CrossFlow { f.pack_length } else { f.width };
    let film = by!(
        t,
        "film of oil under a plate",
        film_thickness::thickness(caught, across, viscosity, cold.density, oil.cold, f.angle)
    )?;
    let pull = by!(
        t,
        "pull of the water on it, over its drive",
        film_shear_ratio::pull(cold.viscosity, plates.gap_velocity, f.gap, cold.density, oil.cold, f.angle, film)
    )?;
    Ok(Some((film, pull)))
}

fn current<T: Trail>(t: &mut T, basis: &Basis, unit: &Unit, v: &Velocities) -> Result<Current, Stop> {
    let cold = &basis.fluids.cold;
    // A water that states a temperature of its own flows into a unit that stood and took the season's: hottest or
    // coldest against the water of the same season. One that differs in salt alone has the season's too.
    let away = |(own, season): &(&WaterState, &WaterState)| (own.temperature.q.si() - season.temperature.q.si()).abs();
    let f = &basis.fluids;
    let own = basis.cases.iter().filter_map(|case| case.own.as_ref());
    let pairs = own.flat_map(|own| own.arrives.iter().zip([&f.cold, &f.warm])).filter(|pair| away(pair) > 0.0);
    let farthest = pairs.max_by(|a, b| away(a).total_cmp(&away(b)));
    let (inflow, inflowing, unit_water, stated) = match (basis.fluids.inflow, farthest) {
        (Some(inflow), _) => (inflow, water(t, inflow, basis.fluids.salinity)?, cold, true),
        (None, Some((own, season))) => (own.temperature, own.clone(), season, true),
        (None, None) => {
            let inflow = choose(
                t,
                "temperature of the water that flows in, for show",
                Some((&DEG_F, &DEG_C)),
                Temperature::from_si(cold.temperature.q.si() + 1.0),
                "any difference",
                "one kelvin over the water in the unit, to show what little it takes",
                &[cold.temperature.at],
            );
            (inflow, water(t, inflow, basis.fluids.salinity)?, cold, false)
        }
    };
    let depth = unit.frame.crest;
    let differs = inflowing.density.q != unit_water.density.q;
    let froude = if differs {
        let froude = by!(
            t,
            "densimetric Froude number of the flow along the unit",
            densimetric_froude::froude(v.along, depth, unit_water.density, inflowing.density)
        )?;
        Some(froude)
    } else {
        None
    };
    let speed = if differs {
        Some(by!(
            t,
            "speed of the current",
            density_current_speed::speed(depth, unit_water.density, inflowing.density)
        )?)
    } else {
        None
    };
    Ok(Current { inflow, stated, froude, speed })
}
