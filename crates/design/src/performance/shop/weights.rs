//! What one unit weighs, empty, as it works and full to its top, and where its empty weight acts along it.

use super::super::shell::metal;
use super::super::shop::SHOP;
use super::super::storage::Storage;
use super::plate;
use crate::basis::Basis;
use crate::enquiry::Enquiry;
use crate::provenance::{Stop, Trail, Val, Whence, choose, given};
use crate::stages::Stage;
use crate::stages::hopper::Hopper;
use crate::train::unit::Unit;
use crate::vessel::rest;
use crate::{by, reckon, say};
use stillrise_handbook::page::Series;
use stillrise_handbook::shop::centre_of_gravity;
use stillrise_handbook::vessel::materials::material;
use stillrise_handbook::vessel::{bearing_pressure, plate_weight, water_weight};
use stillrise_units::catalog::{GAL, KG, KG_M3, LB, LB_FT3, M3, PERCENT};
use stillrise_units::{Area, Length, Mass, Pressure, Typed, Volume, ratio};

/// What comes on top of floor and walls for stiffeners, baffles, nozzles and welds.
const MORE: f64 = 0.2;

/// What one unit weighs.
#[derive(Debug, Clone)]
pub struct Weights {
    /// Empty, as it is shipped; `None` where neither its weight nor its steel is known.
    pub empty: Option<Val<Mass>>,
    /// Whether that is stated; else it is estimated from the steel.
    pub stated: bool,
    /// Whether a row stated it without the options that are taken, which were added in proportion to their length.
    pub options_added: bool,
    /// Water up to the crest, in all compartments.
    pub water: Val<Mass>,
    /// By how much sludge at its trigger weighs more than the water that it takes the place of.
    pub sludge: Option<Val<Mass>>,
    /// Water up to the top of the vessel.
    pub full: Val<Mass>,
    /// As it works.
    pub operating: Option<Val<Mass>>,
    /// Full of water to its top, as in the test.
    pub test: Option<Val<Mass>>,
    /// That over its floor, of one that stands on it: a hopper under the floor puts it on legs.
    pub bearing: Option<Val<Pressure>>,
    /// What each of four legs carries of it, of one with a hopper, if they share it evenly.
    pub leg: Option<Val<Mass>>,
    /// Centre of gravity of the empty unit from the inlet end.
    pub centre: Option<Val<Length>>,
}

/// Finds them. Oil is not counted apart: it floats, and weighs what the water weighs that it takes the place of.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(super) fn weights<T: Trail>(
    t: &mut T,
    e: &Enquiry,
    basis: &Basis,
    unit: &Unit,
    storage: &Storage,
) -> Result<Option<Weights>, Stop> {
    t.section(format_args!("{SHOP}: weights"));
    let body = &unit.body;
    let water = basis.fluids.cold.density;
    let hopper = match &unit.hopper {
        Some(hopper) => hopper.volume,
        None => given(t, "volume of the hopper", Some((&GAL, &M3)), Volume::from_si(0.0), "unit", "no hopper"),
    };
    let to_crest = body.volume(t, "water up to the crest, all compartments", body.whole(), unit.outlet.crest)?;
    let to_top = body.volume(t, "water up to the top of the vessel", body.whole(), body.height())?;
    let to_crest =
        reckon!(t, "the same with the hopper", [GAL, M3], (water = to_crest, hopper = hopper) water + hopper);
    let to_top =
        reckon!(t, "up to the top, with the hopper", [GAL, M3], (water = to_top, hopper = hopper) water + hopper);
    let mass = by!(t, "weight of the water up to the crest", water_weight::mass(to_crest, water))?;
    let full = by!(t, "weight of the water up to the top of the vessel", water_weight::mass(to_top, water))?;
    let sludge = match (storage.sludge_trigger, material("sludge")) {
        (Some(volume), Some(sludge)) => {
            let source = say!(T, "{}", sludge.source);
            let rho =
                given(t, "density of the sludge", Some((&LB_FT3, &KG_M3)), sludge.density(), &source, sludge.title);
            Some(
                reckon!(t, "sludge at its trigger over the water that it takes the place of", [LB, KG], (volume = volume, sludge = rho, water = water) volume * (sludge - water)),
            )
        }
        _ => None,
    };
    let (stated, options_added) = stated_weight(t, e, unit)?;
    let empty = match stated {
        Some(stated) => Some(stated),
        None => estimate(t, unit)?,
    };
    let nothing = given(t, "no sludge", Some((&LB, &KG)), Mass::from_si(0.0), Whence::Definition, "none");
    let over = sludge.unwrap_or(nothing);
    let operating = empty.map(|empty| {
        reckon!(t, "operating weight", [LB, KG], (empty = empty, water = mass, sludge = over) empty + water + sludge)
    });
    let test = empty.map(
        |empty| reckon!(t, "weight full of water to the top", [LB, KG], (empty = empty, water = full) empty + water),
    );
    let on_legs = unit.hopper.is_some() && !unit.arrangement.is_built_in();
    let leg = test.filter(|_| on_legs).map(|test| {
        reckon!(t, "on each of four legs, full to the top, where they share it evenly", [LB, KG], (all = test) all / 4.0)
    });
    let bearing = match (body.plan(t)?, test.filter(|_| !on_legs)) {
        (Some(floor), Some(test)) => {
            Some(by!(t, "pressure under the floor, full to the top", bearing_pressure::pressure(test, floor))?)
        }
        _ => None,
    };
    let centre = if unit.arrangement.is_built_in() { None } else { Some(centre(t, unit)?) };
    Ok(Some(Weights {
        empty,
        stated: stated.is_some(),
        options_added,
        water: mass,
        sludge,
        full,
        operating,
        test,
        bearing,
        leg,
        centre,
    }))
}

/// The empty weight that is stated, with the options that are taken, and whether these were added to it.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub(in super::super) fn stated_weight<T: Trail>(
    t: &mut T,
    e: &Enquiry,
    unit: &Unit,
) -> Result<(Option<Val<Mass>>, bool), Stop> {
    let Some(stated) = unit.particulars.empty_weight else { return Ok((None, false)) };
    let taken: Vec<Val<Length>> =
        unit.sand_trap.iter().map(|trap| trap.length).chain(unit.pump_out.iter().map(|pumps| pumps.length)).collect();
    // A row weighs its unit without options; one that is described is weighed as it is.
    if taken.is_empty() || e.unit.dimensions.is_some() {
        return Ok((Some(stated), false));
    }
    let all = unit.body.length();
    let without = rest(t, "length without the options", all, &taken);
    let with = reckon!(t, "empty weight, options in proportion to their length", [LB, KG], (row = stated, all = all, without = without) row * (all / without));
    Ok((Some(with), true))
}

/// The empty weight from the steel of floor, walls and heads; `None` where its thickness or the metal is not known.
fn estimate<T: Trail>(t: &mut T, unit: &Unit) -> Result<Option<Val<Mass>>, Stop> {
    let Some(thickness) = plate::thickness(unit).filter(|_| !unit.arrangement.is_built_in()) else { return Ok(None) };
    let Some(metal) = metal(unit).and_then(|metal| material(metal.word)) else { return Ok(None) };
    let area = plate::area(t, unit, 0.0)?;
    let source = say!(T, "{}", metal.source);
    let rho = given(t, "density of the metal", Some((&LB_FT3, &KG_M3)), metal.density(), &source, metal.title);
    let bare = by!(t, "floor and walls, or shell and heads", plate_weight::mass(area, thickness, rho))?;
    let more = given(
        t,
        "on top for stiffeners, baffles, plates, nozzles and welds",
        Some((&PERCENT, &PERCENT)),
        ratio(MORE),
        "our proposal",
        "15 to 25 %",
    );
    Ok(Some(
        reckon!(t, "empty weight, estimated from its steel", [LB, KG], (bare = bare, more = more) bare + bare * more),
    ))
}

/// Where the steel acts along the unit: the vessel in its middle, each inner wall, as thick as the others, where it stands.
fn centre<T: Trail>(t: &mut T, unit: &Unit) -> Result<Val<Length>, Stop> {
    let body = &unit.body;
    let vessel = plate::area(t, unit, 0.0)?;
    let wall = body.section(t, "an inner wall as high as the vessel", body.height())?;
    let middle = reckon!(t, "middle of the vessel, from its inlet end", [IN, MM], (all = body.over_all()) all / 2.0);
    let inner = unit.stages.all().into_iter().filter_map(|stage| stage.inner_wall(unit)).collect::<Vec<_>>();
    let mut parts = vec![(vessel.q.si(), middle.q.si())];
    parts.extend(inner.into_iter().map(|at| (wall.q.si(), at.si())));
    let beyond = unit.hopper.as_ref().map(|hopper| (of_hopper(t, unit, hopper), hopper.length));
    parts.extend(beyond.map(|(steel, length)| (steel.q.si(), 0.5 * length.q.si())));
    let mut from = vec![vessel.at, wall.at, middle.at];
    from.extend(beyond.iter().flat_map(|(steel, length)| [steel.at, length.at]));
    let parts = choose(
        t,
        "steel of vessel and inner walls, and where each stands",
        None,
        Series(parts),
        "vessel, hopper, sand trap wall, diffusion baffle, downcomer, wall ahead of the pumps",
        if unit.outlet_baffle.is_some() {
            "as much of each as its area, all of one thickness; plates, outlet baffle and nozzles left out"
        } else {
            "as much of each as its area, all of one thickness; plates and nozzles left out"
        },
        &from,
    );
    by!(t, "centre of gravity of the empty unit, from its inlet end", centre_of_gravity::place(parts))
}

/// Steel of the hopper, less the floor that it takes the place of.
fn of_hopper<T: Trail>(t: &mut T, unit: &Unit, hopper: &Hopper) -> Val<Area> {
    let wide = unit.body.width();
    let (long, low, deep) = (hopper.length, hopper.bottom, hopper.depth);
    let along = reckon!(
        t,
        "slope of the hopper's sides along the unit",
        [IN, MM],
        (top = long, low = low, deep = deep)(deep * deep + (top - low) * (top - low) / 4.0).sqrt()
    );
    let across = reckon!(
        t,
        "slope of the hopper's sides across the unit",
        [IN, MM],
        (top = wide, low = low, deep = deep)(deep * deep + (top - low) * (top - low) / 4.0).sqrt()
    );
    reckon!(
        t,
        "plate of the hopper, less the floor that it takes the place of",
        [FT2, M2],
        (long = long, wide = wide, low = low, along = along, across = across)(wide + low) * along
            + (long + low) * across
            + low * low
            - long * wide
    )
}
