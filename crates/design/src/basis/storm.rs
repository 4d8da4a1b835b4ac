//! The storm flow: surfaces, runoff, time of concentration, intensity, rational method.

use super::canopy::reached;
use super::containment::drain;
use super::stated::{assumed, declared, stand_in, stated, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{ConcentrationTime, OF_A_KIND, PAVED, Rain, Surface};
use crate::enquiry::containments::{covered, holds_back};
use crate::provenance::{Backing, Stop, Trail, Val, WhatIf, choose, given};
use crate::{by, reckon, say};
use stillrise_handbook::page::Series;
use stillrise_handbook::rain::rational_flow::RationalFactor;
use stillrise_handbook::rain::surfaces::surface;
use stillrise_handbook::rain::{
    composite_coefficient, frequency_factor, kinematic_wave, kirpich, rain_depth, rain_intensity, rational_flow,
};
use stillrise_units::catalog::{MIN, ONE, YR};
use stillrise_units::{Area, Flow, Length, Ratio, Time, Typed, Velocity, ratio};

/// The storm the unit is designed for.
#[derive(Debug, Clone)]
pub struct Storm {
    /// The surfaces that are counted, by their places in the enquiry: not those whose rain is held back.
    pub surfaces: Vec<usize>,
    /// The area of each that counts, in their order: of one under a canopy, onto which rain is blown in.
    pub areas: Vec<Val<Area>>,
    /// Total contributing area.
    pub area: Val<Area>,
    /// Composite runoff coefficient.
    pub coefficient: Val<Ratio>,
    /// Whether every surface sheds most of its rain and none has a coefficient that somebody stated.
    pub sealed: bool,
    /// Factor of the rational method.
    pub factor: Val<RationalFactor>,
    /// Time of concentration, where a table made it matter.
    pub concentration_time: Val<Time>,
    /// Design intensity.
    pub intensity: Val<Velocity>,
    /// How long it lasts, where no table says more than one intensity.
    pub duration: Option<Val<Time>>,
    /// Peak flow.
    pub flow: Val<Flow>,
    /// Depth by duration, if there is a table.
    pub table: Option<Val<Series>>,
    /// The return period asked for, with a table.
    pub years: Option<Val<Time>>,
    /// The return period of the column that was taken.
    pub column_years: Option<f64>,
}

/// From this runoff coefficient on a surface counts as sealed: the least of pavements and roofs in the tables read.
const SEALED: f64 = 0.7;

/// What the rain comes to.
struct Found {
    time: Val<Time>,
    intensity: Val<Velocity>,
    duration: Option<Val<Time>>,
    table: Option<Val<Series>>,
    years: Option<Val<Time>>,
    column_years: Option<f64>,
}

/// Finds the storm flow; `None` when no rain falls on the unit's surfaces.
///
/// # Errors
/// [`Stop`] when a formula has no answer, such as a duration outside the table.
pub fn storm<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Result<Option<Storm>, Stop> {
    if e.surfaces.is_empty() {
        return Ok(None);
    }
    t.section("storm");
    let mut rows = Vec::new();
    let mut nodes = Vec::new();
    let (mut names, mut surfaces, mut each) = (Vec::new(), Vec::new(), Vec::new());
    let mut total: Option<Val<Area>> = None;
    let mut sealed = true;
    for (i, s) in e.surfaces.iter().enumerate() {
        if is_held_back(w, e, s) {
            continue;
        }
        let name = s.name.0.clone().unwrap_or_else(|| format!("surface {}", i + 1));
        let Some(area) = reached(t, w, s, &name)? else { continue };
        let coefficient = match stated(t, w, &say!(T, "runoff coefficient of {name}"), &s.runoff) {
            Some(c) => c,
            None => runoff(t, w, s, &name),
        };
        sealed &= !s.runoff.is_given() && coefficient.q.si() >= SEALED;
        rows.push((area.q.si(), coefficient.q.si()));
        nodes.extend([area.at, coefficient.at]);
        names.push(name);
        surfaces.push(i);
        each.push(area);
        total = Some(match total {
            None => area,
            Some(sum) => reckon!(t, "contributing area", [FT2, M2], (sum = sum, next = area) sum + next),
        });
    }
    let Some(area) = total else { return Ok(None) };
    let areas = choose(
        t,
        "surfaces and their coefficients",
        None,
        Series(rows),
        &if T::RECORDS { names.join(", ") } else { String::new() },
        "all surfaces that drain to the unit",
        &nodes,
    );
    let coefficient = by!(t, "composite runoff coefficient", composite_coefficient::coefficient(areas))?;
    let found = intensity(t, w, e)?;
    let (concentration_time, intensity) = (found.time, found.intensity);
    let coefficient = match found.years {
        Some(years) if years.q > Time::of(10.0, &YR) => {
            let factor = by!(t, "frequency factor", frequency_factor::factor(years))?;
            reckon!(
                t,
                "runoff coefficient of the rare storm",
                [ONE, ONE],
                (c = coefficient, factor = factor)(c * factor).min(ratio(1.0))
            )
        }
        _ => coefficient,
    };
    let factor = given(
        t,
        "factor of the rational method",
        None,
        e.method.rational.0.unwrap_or(RationalFactor::ALL[0]),
        T::RECORDS.then(|| e.method.rational().source()),
        if e.method.rational.0.is_some() { "stated" } else { "default" },
    );
    let flow = by!(t, "storm flow", rational_flow::flow(coefficient, intensity, area, factor))?;
    Ok(Some(Storm {
        surfaces,
        areas: each,
        area,
        coefficient,
        sealed,
        factor,
        concentration_time,
        intensity,
        duration: found.duration,
        flow,
        table: found.table,
        years: found.years,
        column_years: found.column_years,
    }))
}

/// Whether its rain is held back by a containment that it runs into, from where it is only drained.
fn is_held_back(w: &WhatIf, e: &Enquiry, s: &Surface) -> bool {
    e.containments.iter().any(|c| covered(e, c).any(|of| core::ptr::eq(of, s)) && holds_back(c, drain::told(w, c)))
}

fn runoff<T: Trail>(t: &mut T, w: &WhatIf, s: &Surface, name: &str) -> Val<Ratio> {
    let kind = s.kind.as_deref();
    let label = say!(T, "runoff coefficient of {name}");
    let (low, typical, high, source) = match kind.and_then(surface) {
        Some(row) => (row.runoff.0, row.runoff.1, row.runoff.2, Backing::Source(row.source)),
        None => (0.7, 0.9, 0.95, "kind of surface not said; range of paved surfaces, FHWA HDS-2 table 5.7".into()),
    };
    let others = kind.map_or_else(String::new, |kind| say!(T, "{}", kind.replace('-', " ")));
    let key = s.runoff().of(name).word("kind", &others).when(match kind {
        Some(_) => OF_A_KIND,
        None if *s.canopy == Some(true) => PAVED,
        None => "",
    });
    assumed(t, w, &key, &label, stand_in((ratio(low), ratio(typical), ratio(high)), source))
}

fn intensity<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Result<Found, Stop> {
    let unsaid = Rain::default();
    let rain = e.rain.as_ref().unwrap_or(&unsaid);
    let stated_time = stated(t, w, "time of concentration", &rain.concentration_time);
    let least = |t: &mut T| {
        let key = rain.concentration_time();
        assumed(t, w, &key, "time of concentration", declared(key.spec))
    };
    let Some(table) = &e.rain_table else {
        let intensity = stated_or_usual(t, w, rain.intensity(), "rain intensity");
        // Without a table only a formula that asks for no depth tells the time from path and slope.
        let path = stated(t, w, "longest path of the water", &rain.path);
        let slope = stated(t, w, "slope of the path", &rain.slope);
        let time = match (stated_time, path, slope) {
            (Some(time), ..) => time,
            (None, Some(path), Some(slope)) => by_kirpich(t, e, path, slope)?,
            _ => least(t),
        };
        let duration = stated_or_usual(t, w, rain.duration(), "duration of the design rain");
        // A storm shorter than the time of concentration does not reach its peak.
        let duration = if duration.q < time.q { time } else { duration };
        return Ok(Found { time, intensity, duration: Some(duration), table: None, years: None, column_years: None });
    };
    let years = stated_or_usual(t, w, rain.return_period(), "return period");
    let nearest = nearest_column(table, YR.from_si(years.q.si()));
    let (column, because) = match table.column(YR.from_si(years.q.si())) {
        Some(series) => (series.clone(), "the column of the return period".to_owned()),
        None if Time::of(nearest.0, &YR) > years.q => (
            nearest.1.clone(),
            say!(T, "the table has no such column; the next rarer one, {} yr, was taken", nearest.0),
        ),
        None => (
            nearest.1.clone(),
            say!(T, "the table ends at {} yr; its rarest column was taken, which is too little", nearest.0),
        ),
    };
    let list = if T::RECORDS {
        table.columns.iter().map(|(y, _)| format!("{y} yr")).collect::<Vec<_>>().join(", ")
    } else {
        String::new()
    };
    let series = choose(t, "rain depth by duration", None, column, &list, &because, &[years.at]);
    let method = e.method.concentration_time.0.unwrap_or(ConcentrationTime::KinematicWave);
    let path = stated(t, w, "longest path of the water", &rain.path);
    let slope = stated(t, w, "slope of the path", &rain.slope);
    let time = match (stated_time, path, slope, method) {
        (Some(time), ..) => time,
        (None, Some(path), Some(slope), ConcentrationTime::Kirpich) => by_kirpich(t, e, path, slope)?,
        (None, Some(path), Some(slope), _) => wave(t, &series, path, slope)?,
        _ => least(t),
    };
    let depth = by!(t, "rain depth", rain_depth::depth(series, time))?;
    let intensity = by!(t, "rain intensity", rain_intensity::intensity(depth, time))?;
    Ok(Found {
        time,
        intensity,
        duration: None,
        table: Some(series),
        years: Some(years),
        column_years: Some(nearest.0),
    })
}

/// Time of concentration of a paved yard by Kirpich's formula, no shorter than is in use.
fn by_kirpich<T: Trail>(t: &mut T, e: &Enquiry, path: Val<Length>, slope: Val<Ratio>) -> Result<Val<Time>, Stop> {
    let paved = given(
        t,
        "surface for Kirpich's formula",
        None,
        kirpich::KirpichSurface::Paved,
        &say!(T, "{}", e.method.concentration_time().place()),
        "paved yard",
    );
    let time = by!(t, "time of concentration by Kirpich", kirpich::time(path, slope, paved))?;
    Ok(not_below(t, time))
}

fn nearest_column(table: &crate::enquiry::rain_table::RainTable, years: f64) -> (f64, &Series) {
    let mut best = (f64::INFINITY, &table.columns[0]);
    for column in &table.columns {
        let off = if column.0 >= years { column.0 - years } else { 1e6 + years - column.0 };
        if off < best.0 {
            best = (off, column);
        }
    }
    (best.1.0, &best.1.1)
}

/// No time of concentration below five minutes is in use.
fn not_below<T: Trail>(t: &mut T, time: Val<Time>) -> Val<Time> {
    let least = Time::of(5.0, &MIN);
    if time.q >= least {
        return time;
    }
    choose(
        t,
        "time of concentration",
        Some((&MIN, &MIN)),
        least,
        "the computed time and 5 minutes",
        "5 minutes is the least in use (Austin TX Drainage Criteria Manual 2.4.2)",
        &[time.at],
    )
}

/// Kinematic wave and table settle each other: the time gives the intensity, the intensity the time.
fn wave<T: Trail>(t: &mut T, series: &Val<Series>, path: Val<Length>, slope: Val<Ratio>) -> Result<Val<Time>, Stop> {
    let n = given(
        t,
        "Manning's n of the sheet flow",
        Some((&ONE, &ONE)),
        ratio(0.012),
        "FHWA HDS-2 table 2.1, concrete",
        "0.012",
    );
    let mut time = Time::of(10.0, &MIN);
    for _ in 0..40 {
        let depth = rain_depth::depth(series.q.clone(), time)?;
        let next = kinematic_wave::time(n.q, path.q, slope.q, rain_intensity::intensity(depth, time)?)?;
        let next = if next < Time::of(5.0, &MIN) { Time::of(5.0, &MIN) } else { next };
        if next == time {
            break;
        }
        time = next;
    }
    let trial = choose(
        t,
        "duration tried last",
        Some((&MIN, &MIN)),
        time,
        "successive durations",
        "kinematic wave and rain table were repeated until the duration stood",
        &[series.at, path.at, slope.at],
    );
    let depth = by!(t, "rain depth at that duration", rain_depth::depth(series, trial))?;
    let i = by!(t, "rain intensity at that duration", rain_intensity::intensity(depth, trial))?;
    let wave = by!(t, "time of the kinematic wave", kinematic_wave::time(n, path, slope, i))?;
    Ok(not_below(t, wave))
}
