//! What the plate theory takes for granted, zone by zone: that the inlet jet leaves the droplets whole, that
//! films stay under the plates, that no current of warmer or colder water runs through, and that what was
//! caught is not drawn or stirred up again.

use super::hydraulics::Velocities;
use super::levels::OilLevels;
use super::removal::Removal;
use crate::basis::Basis;
use crate::basis::fluids::{Season, WaterState, water};
use crate::by;
use crate::provenance::{Part, Stop, Trail, Val, choose};
use crate::stages::Place;
use crate::stages::diffusion_baffle::Spreads;
use crate::stages::inlet::Jet;
use crate::stages::plate_pack::Film;
use crate::stages::retention::Sinks;
use crate::stages::underflow::Pull;
use crate::train::unit::Unit;
use stillrise_handbook::separation::{camp_scour, capillary_length, densimetric_froude, density_current_speed};
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::catalog::{DEG_C, DEG_F};
use stillrise_units::{Flow, Length, Ratio, Temperature, Typed, Velocity};

/// The checks, at the largest flow of a case with a known content, cold, at the end of the interval.
#[derive(Debug, Clone)]
pub struct Zones {
    /// The inlet jet in its chamber.
    pub jet: Jet,
    /// The diffusion baffle; `None` without one.
    pub baffle: Option<Spreads>,
    /// Length over which the flow in the gaps develops; `None` without plates.
    pub entrance: Option<Val<Length>>,
    /// Film of oil under a plate, and the water's pull on it over its own drive; `None` for an oil whose
    /// viscosity is not known there, or that does not rise.
    pub film: Option<Film>,
    /// Size of drops shed from an edge.
    pub shed: Val<Length>,
    /// How the water that leaves pulls at the layer at the alarm, at the largest flow; `None` without a layer.
    pub pull: Option<Pull>,
    /// The oil retention zone.
    pub retention: Option<Sinks>,
    /// Velocity that scours grains of the median size; `None` for grains no heavier than the water.
    pub scour: Option<Val<Velocity>>,
    /// The water that flows in, against that in the unit.
    pub current: Current,
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
    largest: Val<Flow>,
) -> Result<Zones, Stop> {
    t.part(Part::Zones, "zones");
    let cold = &basis.fluids.cold;
    // Where no chamber breaks the jet, the open water does.
    let chamber = unit.compartment(Place::InletChamber).or_else(|| unit.compartment(Place::GravityZone));
    let chamber = chamber.ok_or_else(|| Stop::said("zones", "no water into which the inlet opens"))?;
    let jet = unit.inlet.jet(t, basis, worst.flow, velocities.inlet, chamber.volume)?;
    let baffle = unit.baffle.as_ref().map(|baffle| baffle.spreads(t, unit, worst.flow)).transpose()?;
    let plates = unit.pack.as_ref().zip(worst.passage.plates());
    let entrance = plates.map(|(pack, plates)| pack.entrance(t, basis, plates)).transpose()?;
    let film = plates.map(|(pack, plates)| pack.film(t, basis, worst, plates)).transpose()?.flatten();
    let oil = basis.fluids.heaviest(Season::Cold);
    let shed =
        by!(t, "size of drops shed from an edge", capillary_length::length(oil.tension, cold.density, oil.cold))?;
    let alarm = levels.iter().find_map(|l| l.level(Mark::Alarm));
    let alarm = alarm.filter(|alarm| oil.cold.q < cold.density.q && alarm.thickness.q.si() > 0.0);
    let leaves = (largest, velocities.slot);
    let pull = alarm.map(|alarm| unit.underflow.pull(t, leaves, cold.density, oil.cold, alarm)).transpose()?;
    let retention = unit.retention.sinks(t, unit, worst)?;
    let (beta, friction) = super::grains::camp(t);
    let s = &basis.solids;
    let label = "velocity that scours grains of the median size";
    let scour = if s.density.q > cold.density.q {
        Some(by!(t, label, camp_scour::velocity(beta, s.density, cold.density, s.d50, friction))?)
    } else {
        None
    };
    let current = current(t, basis, unit, velocities)?;
    Ok(Zones { jet, baffle, entrance, film, shed, pull, retention, scour, current })
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
                "{a degree Celsius, or 1.8 °F,|one kelvin} over the water in the unit, to show what little it takes",
                &[cold.temperature.at],
            );
            (inflow, water(t, inflow, basis.fluids.salinity)?, cold, false)
        }
    };
    let depth = unit.body.mean_depth(t, unit.outlet.crest)?;
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
