//! Peak flows: rational method, the same with the airfield time of concentration, curve number and graphical peak.

use super::rain::{self, PLAIN};
use super::{Asked, Inputs, Worksheet};
use crate::basis::storm::Storm;
use crate::provenance::{Stop, Trail, Val, choose, given};
use crate::{by, reckon, say};
use stillrise_handbook::page::Series;
use stillrise_handbook::rain::graphical_peak::StormType;
use stillrise_handbook::rain::shallow_flow_velocity::ShallowSurface;
use stillrise_handbook::rain::{
    curve_number_runoff, faa_time, graphical_peak, initial_loss, rain_depth, rain_intensity, rational_flow,
    shallow_flow_velocity, sheet_flow_time, travel_time,
};
use stillrise_handbook::sources::{HDS_2, TR_55};
use stillrise_units::catalog::{FT, H, M, MIN};
use stillrise_units::{Area, Length, Ratio, Time, Typed, ratio};

/// Q = C i A, as the basis has worked it.
pub(super) fn rational<T: Trail>(_: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<(), Stop> {
    let storm = rain::storm(of)?;
    sheet.term("C", storm.coefficient);
    sheet.take("t_c", storm.concentration_time);
    sheet.term("i", storm.intensity);
    sheet.take("A", storm.area);
    let flow = sheet.term("Q", storm.flow);
    sheet.asked.push(Asked::Flow(flow));
    Ok(())
}

/// The same with the time of concentration of airfields.
pub(super) fn faa<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<(), Stop> {
    let storm = rain::storm(of)?;
    let (length, slope) = rain::path(t, sheet, of)?;
    let c = sheet.take("C", storm.coefficient);
    let length = sheet.term("L", length);
    let slope = sheet.term("S", slope);
    let time = sheet.term("t_c", by!(t, "time of concentration", faa_time::time(c, length, slope))?);
    let time = not_below(t, sheet, time, Time::of(5.0, &MIN), "5 minutes are the least in use");
    let intensity = match storm.table.clone() {
        Some(table) => {
            let depth = sheet.term("P", by!(t, "rain depth in that time", rain_depth::depth(table, time))?);
            by!(t, "rain intensity", rain_intensity::intensity(depth, time))?
        }
        None => {
            sheet.remarks.push("No table of rain was given: the stated intensity stands, whatever the time.");
            storm.intensity
        }
    };
    let intensity = sheet.term("i", intensity);
    let area = sheet.take("A", storm.area);
    let flow = by!(t, "peak flow", rational_flow::flow(c, intensity, area, storm.factor))?;
    let flow = sheet.term("Q", flow);
    sheet.asked.push(Asked::Flow(flow));
    Ok(())
}

/// No time below the least in use.
fn not_below<T: Trail>(t: &mut T, sheet: &mut Worksheet, time: Val<Time>, least: Time, why: &str) -> Val<Time> {
    if time.q >= least {
        return time;
    }
    let taken = choose(
        t,
        "time of concentration as taken",
        Some((&MIN, &MIN)),
        least,
        "the time worked and the least in use",
        why,
        &[time.at],
    );
    sheet.term("t_c,min", taken)
}

/// Longest sheet that the handbook of 2010 allows.
const SHEET_FT: f64 = 100.0;

/// Time of concentration of TR-55: a sheet of at most 100 ft, then shallow threads.
pub(super) fn travel<T: Trail>(
    t: &mut T,
    sheet: &mut Worksheet,
    of: &Inputs<'_>,
    storm: &Storm,
) -> Result<Val<Time>, Stop> {
    let (path, slope) = rain::path(t, sheet, of)?;
    let rain = rain::two_years(t, sheet, of)?;
    let path = sheet.term("L_p", path);
    let most = Length::of(SHEET_FT, &FT);
    let most = given(
        t,
        "longest sheet flow",
        Some((&FT, &M)),
        most,
        "NRCS National Engineering Handbook 630, chapter 15 (2010)",
        "100 ft",
    );
    let length = reckon!(t, "length of the sheet flow", [FT, M], (l_p = path, most = most) l_p.min(most));
    let length = sheet.term("L", length);
    let slope = sheet.term("S", slope);
    let n = given(
        t,
        "roughness to sheet flow",
        Some(PLAIN),
        ratio(0.011),
        &say!(T, "{TR_55}, table 3-1: smooth surfaces; {HDS_2}"),
        "0.011",
    );
    let n = sheet.term("n", n);
    let first = sheet.term("T_t1", by!(t, "travel time of the sheet", sheet_flow_time::time(n, length, rain, slope))?);
    if path.q <= most.q {
        return Ok(first);
    }
    let rest = reckon!(t, "length of the shallow flow", [FT, M], (l_p = path, l = length) l_p - l);
    let rest = sheet.term("L_2", rest);
    let surface = if storm.sealed { ShallowSurface::Paved } else { ShallowSurface::Unpaved };
    let surface = given(t, "over what the water runs", None, surface, "the kinds of the surfaces", surface.word());
    let v = sheet.term("V", by!(t, "velocity of the shallow flow", shallow_flow_velocity::velocity(slope, surface))?);
    let legs = Series(vec![(rest.q.si(), v.q.si())]);
    let legs = choose(
        t,
        "the leg of shallow flow",
        None,
        legs,
        "the path behind the sheet",
        "one slope all along",
        &[rest.at, v.at],
    );
    let second = sheet.term("T_t2", by!(t, "travel time of the shallow flow", travel_time::time(legs))?);
    Ok(sheet.term("T_c", reckon!(t, "time of concentration", [MIN, MIN], (t_1 = first, t_2 = second) t_1 + t_2)))
}

/// The least time of concentration of TR-55.
pub(super) fn at_least<T: Trail>(t: &mut T, sheet: &mut Worksheet, time: Val<Time>) -> Val<Time> {
    not_below(t, sheet, time, Time::of(0.1, &H), "0.1 h is the least of TR-55 (from memory)")
}

/// Curve number, travel time and graphical peak of TR-55.
pub(super) fn tr55<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<(), Stop> {
    let storm = rain::storm(of)?;
    let number = rain::curve(t, sheet, of);
    let depth = rain::day(t, sheet, of);
    let time = travel(t, sheet, of, storm);
    // Asked for together, then stopped.
    let (number, depth, time) = (number?, depth?, time?);
    let time = at_least(t, sheet, time);
    let storm_type = rain::storm_type(t, sheet, of);
    let area = sheet.take("A_m", storm.area);
    peak(t, sheet, (area, number, depth, time), storm_type)
}

/// Runoff and peak from what is known of the area.
pub(super) fn peak<T: Trail>(
    t: &mut T,
    sheet: &mut Worksheet,
    (area, number, depth, time): (Val<Area>, Val<Ratio>, Val<Length>, Val<Time>),
    storm_type: Val<StormType>,
) -> Result<(), Stop> {
    let runoff = sheet.term("Q", by!(t, "depth of runoff", curve_number_runoff::runoff(depth, number))?);
    let lost = sheet.term("I_a/P", by!(t, "loss before runoff over the rain", initial_loss::share(depth, number))?);
    let ponds = given(t, "factor of ponds and swamps", Some(PLAIN), ratio(1.0), "the site: none in the path", "1");
    let ponds = sheet.term("F_p", ponds);
    let flow = by!(t, "peak flow", graphical_peak::peak(area, runoff, time, lost, storm_type, ponds))?;
    let flow = sheet.term("q_p", flow);
    sheet.asked.push(Asked::Flow(flow));
    Ok(())
}
