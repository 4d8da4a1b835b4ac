//! What vessels are made of, and the set points of the oil layer.

use crate::manual::table::{Row, Table};
use crate::vessel::alarms::{DEFAULTS, PUBLISHED};
use crate::vessel::materials::{MATERIALS, PLATES};
use stillrise_units::catalog::{IN, KG_M3, LB_FT3, MM, PERCENT};
use stillrise_units::{Typed, ratio};

pub(super) fn tables() -> Vec<Table> {
    vec![materials(), plates(), set_points()]
}

fn materials() -> Table {
    let about = "Densities for an estimate of weight, of vessels, internals, foundations and contents.";
    let columns = [("density", Some((&LB_FT3, &KG_M3)))];
    Table::new("materials", "Materials", about, &columns).with(
        MATERIALS
            .iter()
            .map(|m| Row::new(m.word, m.title).three((m.range.0, m.density, m.range.1), m.unit).from(m.source)),
    )
}

fn plates() -> Table {
    let about = "Sheets and plates of steel that are sold. Sheet by gauge is invoiced some 2.5 % heavier than `plate-weight` \
        gives.";
    let columns = [("thickness", Some((&IN, &MM)))];
    let rows = PLATES.iter().map(|p| Row::new(p.word, p.word).number(p.inches, &IN).from(p.source));
    Table::new("plates", "Sheets and plates", about, &columns).with(rows)
}

fn set_points() -> Table {
    let about = "Shares of the thickest permitted layer of oil, as this handbook proposes them, and of the oil store, as \
        published.";
    let columns = [("share", Some((&PERCENT, &PERCENT))), ("what happens there", None)];
    Table::new("set-points", "Set points of the oil layer", about, &columns).with(DEFAULTS.iter().chain(PUBLISHED).map(
        |p| {
            let share = ratio(p.share).in_unit(&PERCENT);
            Row::new(p.word, p.title).number(share, &PERCENT).text(p.action).from(p.source)
        },
    ))
}
