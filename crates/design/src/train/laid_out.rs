//! One unit laid out: from a row of a range with the options that are taken, as the enquiry describes it, or made to measure.

use super::row::{Options, Row};
use super::unit::{self, Unit};
use super::{Source, UnitOrigin, assumed, custom, particulars};
use crate::arrangements::Arrangement;
use crate::basis::Basis;
use crate::enquiry::Enquiry;
use crate::enquiry::range::{Model, Range};
use crate::performance::site::site;
use crate::provenance::{Off, Stop, Trail, Val, WhatIf};
use stillrise_units::{Flow, Ratio, Typed, math};

/// One unit by itself, as its row says.
///
/// # Errors
/// [`Stop`] when it cannot be laid out, or comes from no row.
pub fn unit_of<T: Trail>(t: &mut T, w: &WhatIf, source: &Source<'_>) -> Result<Unit, Stop> {
    match source {
        Source::Row(range, model) => row_of(t, w, range, model, Options::NONE).map(|(unit, _)| unit),
        _ => Err(Stop::said("one unit", "it comes from no row")),
    }
}

fn row_of<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    range: &Range,
    model: &Model,
    options: Options,
) -> Result<(Unit, UnitOrigin), Stop> {
    let title = range.head.title.0.clone().unwrap_or_default();
    let name = model.model.0.clone().unwrap_or_default();
    let row = UnitOrigin::Row { range: title, model: name };
    let from = row.to_string();
    let assumed = assumed::Assumed::default();
    let unit = described(
        &mut Row { t, w, m: model, assumed: &assumed, options, source: &from, described: false },
        range.head.currency.as_deref(),
    )?;
    Ok((unit, row))
}

/// Which options of a row are taken: those that the enquiry asks for, and the pumps where the levels do.
fn options(e: &Enquiry, w: &WhatIf, basis: &Basis, range: &Range, model: &Model) -> Options {
    let sand_trap = *e.unit.sand_trap == Some(true);
    let pump_out = *e.unit.pump_out == Some(true)
        || *e.unit.pump_out != Some(false) && model.stages.pump_out.length.is_given() && {
            let off = &mut Off;
            let taken = Options { sand_trap, pump_out: false };
            let unit = row_of(off, w, range, model, taken).ok();
            let site = unit.and_then(|(unit, _)| site(off, w, e, &unit, basis.feed.pumped).ok());
            site.is_some_and(|site| site.installation.pump_behind)
        };
    Options { sand_trap, pump_out }
}

/// A unit as a row or block describes it.
fn described<T: Trail>(row: &mut Row<'_, T>, currency: Option<&str>) -> Result<Unit, Stop> {
    row.t.section(format_args!("{}", row.name()));
    let arrangement = Arrangement::of(row.m);
    let parts = arrangement.parts(row)?;
    let particulars = particulars::particulars(row, currency);
    unit::lay_out(row.t, arrangement, parts, particulars)
}

pub(super) fn laid_out<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    basis: &Basis,
    source: &Source<'_>,
    n: Val<Ratio>,
) -> Result<(Unit, UnitOrigin), Stop> {
    match source {
        Source::Row(range, model) => row_of(t, w, range, model, options(e, w, basis, range, model)),
        Source::Stated(model) => {
            let from = assumed::dimensions_place();
            let flow = basis.design_flow().map_or(0.0, |q| q.q.si()) / math::max(n.q.si(), 1.0);
            let assumed = assumed::dimensions(t, w, model, Flow::from_si(flow))?;
            let unit = described(
                &mut Row { t, w, m: model, assumed: &assumed, options: Options::ALL, source: &from, described: true },
                None,
            )?;
            Ok((unit, UnitOrigin::Stated { assumed: !assumed.is_empty() }))
        }
        Source::Custom(made) => {
            if *e.site.buried == Some(true) {
                return Err(Stop::said(
                    "unit made to measure",
                    "one made to measure stands above the ground, and the unit is asked for in the ground",
                ));
            }
            let (parts, particulars) = custom::parts(t, basis, (&e.site, e.system()), n, *made)?;
            let unit = unit::lay_out(t, Arrangement::PlateTank, parts, particulars)?;
            Ok((unit, UnitOrigin::Made))
        }
    }
}
