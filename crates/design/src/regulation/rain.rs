//! What runoff methods take of the site: path and slope, rain of a day, surfaces as they are counted.

use super::{Inputs, Worksheet, lacks};
use crate::basis::stated::{assumed, stand_in, stated};
use crate::basis::storm::Storm;
use crate::enquiry::blocks::Rain;
use crate::provenance::{Stop, Trail, Val, choose, given};
use crate::{by, say};
use stillrise_handbook::page::Series;
use stillrise_handbook::rain::curve_numbers::{SoilGroup, curve_number};
use stillrise_handbook::rain::graphical_peak::StormType;
use stillrise_handbook::rain::{composite_curve_number, rain_depth};
use stillrise_handbook::sources::TR_55;
use stillrise_units::catalog::{H, ONE};
use stillrise_units::{Length, Ratio, Time, Typed, ratio};

/// The storm on the unit's surfaces.
pub(super) fn storm<'a>(of: &Inputs<'a>) -> Result<&'a Storm, Stop> {
    let none = || Stop::said("runoff", "no rain falls on surfaces that drain to the unit");
    of.basis.storm.as_ref().ok_or_else(none)
}

/// Longest path and its slope, or what asks for them.
pub(super) fn path<T: Trail>(
    t: &mut T,
    sheet: &mut Worksheet,
    of: &Inputs<'_>,
) -> Result<(Val<Length>, Val<Ratio>), Stop> {
    let unsaid = Rain::default();
    let rain = of.e.rain.as_ref().unwrap_or(&unsaid);
    let length = stated(t, of.w, "longest path of the water", &rain.path);
    let slope = stated(t, of.w, "slope of the path", &rain.slope);
    if length.is_none() {
        sheet.miss(&rain.path());
    }
    if slope.is_none() {
        sheet.miss(&rain.slope());
    }
    length.zip(slope).ok_or_else(|| lacks("how long the longest path of the water is, and how steep"))
}

/// Depth of the rain of 24 hours: as stated, else off the rain table, in the column of so many years.
fn table_depth<T: Trail>(t: &mut T, of: &Inputs<'_>, years: Option<f64>) -> Option<Val<Length>> {
    let table = of.e.rain_table.as_ref()?;
    let series = match years {
        Some(years) => {
            let column = table.column(years)?.clone();
            let list = say!(T, "the columns of the rain table");
            choose(t, "rain depth by duration", None, column, &list, &say!(T, "the column of {years} yr"), &[])
        }
        None => of.basis.storm.as_ref()?.table.clone()?,
    };
    let day = given(t, "a day", Some((&H, &H)), Time::of(24.0, &H), "the method", "24 h");
    by!(t, "rain of 24 hours", rain_depth::depth(series, day)).ok()
}

/// The design rain of 24 hours.
pub(super) fn day<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<Val<Length>, Stop> {
    let said = stated(t, of.w, "design rain of 24 hours", &of.block.rain_24h);
    let found = said.or_else(|| table_depth(t, of, None));
    if found.is_none() {
        sheet.miss(&of.block.rain_24h());
    }
    let depth = found.ok_or_else(|| lacks("how deep the design rain of 24 hours is"))?;
    Ok(sheet.term("P", depth))
}

/// The rain of 24 hours and two years.
pub(super) fn two_years<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<Val<Length>, Stop> {
    let said = stated(t, of.w, "rain of 24 hours and two years", &of.block.rain_2yr);
    let found = said.or_else(|| table_depth(t, of, Some(2.0)));
    if found.is_none() {
        sheet.miss(&of.block.rain_2yr());
    }
    let depth = found.ok_or_else(|| lacks("how deep the rain of 24 hours and two years is"))?;
    Ok(sheet.term("P_2", depth))
}

/// Whether the rain of 24 hours and two years is known.
pub(super) fn knows_two_years(of: &Inputs<'_>) -> bool {
    let off = &mut crate::provenance::Off;
    of.block.rain_2yr.is_given() || table_depth(off, of, Some(2.0)).is_some()
}

/// Distribution of the day's rain.
pub(super) fn storm_type<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Val<StormType> {
    let label = "distribution of the day's rain";
    let value = match of.block.storm_type.0 {
        Some(word) => given(t, label, None, word, of.block.storm_type().source(), word.word()),
        None => {
            let (low, high) = (StormType::TypeIa, StormType::TypeIi);
            let why = "type II holds over most of the United States, and its peak is the sharpest of the four";
            assumed(t, of.w, &of.block.storm_type(), label, stand_in((low, high, high), why))
        }
    };
    sheet.term("type", value)
}

/// Curve number of what drains to the unit: as stated, else of its surfaces.
pub(super) fn curve<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<Val<Ratio>, Stop> {
    if let Some(number) = stated(t, of.w, "curve number", &of.block.curve_number) {
        return Ok(sheet.term("CN", number));
    }
    let storm = storm(of)?;
    let surfaces = storm.surfaces.iter().filter_map(|i| of.e.surfaces.get(*i));
    let rows: Option<Vec<_>> = surfaces.map(|s| Some((s.area.q()?.si(), curve_number(s.kind.as_deref()?)?))).collect();
    let Some(rows) = rows.filter(|rows| !rows.is_empty()) else {
        sheet.miss(&of.block.curve_number());
        return Err(lacks("which curve number the surfaces have: the tables have none for one of them"));
    };
    let open = rows.iter().any(|(_, row)| row.on(SoilGroup::A) != row.on(SoilGroup::D));
    let soil = if open {
        sheet.term("group", soil(t, of))
    } else {
        given(t, "soil", None, SoilGroup::D, "all of it is paved", "any")
    };
    let areas = Series(rows.iter().map(|(area, row)| (*area, row.on(soil.q))).collect());
    let names: Vec<&str> = rows.iter().map(|(_, row)| row.title).collect();
    let names = if T::RECORDS { names.join(", ") } else { String::new() };
    let because = say!(T, "table 2-2 of {TR_55}");
    let areas = choose(t, "surfaces and their curve numbers", None, areas, &names, &because, &[soil.at]);
    Ok(sheet.term("CN", by!(t, "curve number of the area", composite_curve_number::number(areas))?))
}

fn soil<T: Trail>(t: &mut T, of: &Inputs<'_>) -> Val<SoilGroup> {
    let label = "group of the soil";
    match of.block.soil_group.0 {
        Some(group) => given(t, label, None, group, of.block.soil_group().source(), group.word()),
        None => {
            let ends = (SoilGroup::A, SoilGroup::D, SoilGroup::D);
            assumed(t, of.w, &of.block.soil_group(), label, stand_in(ends, "group D sheds most, the safe side"))
        }
    }
}

/// From this runoff coefficient on a surface counts as sealed.
const SEALED: f64 = 0.7;

/// Share of the area that is sealed: as stated, else by the kinds of its surfaces.
pub(super) fn sealed<T: Trail>(t: &mut T, sheet: &mut Worksheet, of: &Inputs<'_>) -> Result<Val<Ratio>, Stop> {
    let label = "share of the area that is sealed";
    if let Some(share) = stated(t, of.w, label, &of.block.sealed) {
        return Ok(sheet.term("I", share));
    }
    let storm = storm(of)?;
    let (mut shut, mut all) = (0.0, 0.0);
    for surface in storm.surfaces.iter().filter_map(|i| of.e.surfaces.get(*i)) {
        let kind = surface.kind.as_deref().and_then(stillrise_handbook::rain::surfaces::surface);
        let sheds = surface.runoff.q().map(|c| c.si()).or_else(|| kind.map(|kind| kind.runoff.1));
        let area = surface.area.q().map_or(0.0, |area| area.si());
        all += area;
        // One of which nothing was said counts, the larger runoff.
        if sheds.is_none_or(|sheds| sheds >= SEALED) {
            shut += area;
        }
    }
    let share = if all > 0.0 { shut / all } else { 1.0 };
    let why = "by the kinds of its surfaces: those that shed seven tenths or more count as sealed";
    let ends = (ratio(share * 0.9), ratio(share), ratio(1.0));
    let value = assumed(t, of.w, &of.block.sealed(), label, stand_in(ends, why));
    Ok(sheet.term("I", value))
}

/// Print units of a plain number.
pub(super) const PLAIN: crate::provenance::Pair = (&ONE, &ONE);
