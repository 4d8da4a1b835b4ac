//! What the sheet of the setting tells beside its views: weights, hold-down, notes.

use super::support;
use super::tables::{self, Titled};
use crate::render::scene::Scene;
use crate::render::schedule::Column;
use crate::render::text::Table;
use crate::section::place::{Section, zero};
use stillrise_units::catalog::{KN, LBF, M3, YD3};
use stillrise_units::{Typed, print};

/// What is told beside the views: tables under their headings, then the notes.
pub struct Told {
    /// Tables.
    pub tables: Vec<Titled>,
    /// Notes.
    pub notes: Vec<String>,
}

/// All that is told.
pub fn said(s: &Section) -> Told {
    let held = hold_down(s).map(|table| ("Hold-down".to_owned(), table));
    Told { tables: tables::weights(s).into_iter().chain(held).collect(), notes: notes(s) }
}

/// Writes it, the tables into the first column and the notes into the last; `false` where it finds no room.
pub fn written(scene: &mut Scene, said: &Told, [first, last]: [Option<Column>; 2]) -> bool {
    let Some(mut column) = first else { return false };
    let mut whole = true;
    for (heading, table) in &said.tables {
        whole &= column.heading(scene, heading) && column.table(scene, table);
        column.skip(2.0);
    }
    let mut column = last.unwrap_or(column);
    whole &= column.heading(scene, "Of this sheet");
    for (k, text) in said.notes.iter().enumerate() {
        whole &= column.item(scene, &(k + 1).to_string(), text);
    }
    whole
}

/// What holds a unit in the ground down; `None` where it cannot float or nothing is known.
fn hold_down(s: &Section) -> Option<Table> {
    let found = s.performance?.flotation.as_ref()?;
    let force = |si: f64| print::in_prose(si, s.system.pick((&LBF, &KN)));
    let mut table = Table::new(["Groundwater at the level stated", "Value"]);
    let mut row = |name: &str, value: String| {
        table.row([name.to_owned(), value]);
    };
    let uplift = found.uplift.as_ref()?;
    row("Uplift, unit empty", force(uplift.q.si()));
    if let Some(held) = &found.held {
        row("Weight, empty", force(held.weight.q.si()));
        if let Some(soil) = &held.soil {
            row("Soil over it that counts", force(soil.q.si()));
        }
        if let Some(wedge) = &held.wedge {
            row("Soil beside that", force(wedge.q.si()));
        }
        if let Some(anchors) = &held.anchors {
            row("Anchored concrete, under water", force(anchors.q.si()));
        }
        row("Factor found", print::digits(held.factor.q.si(), 3));
        row("Factor asked for", print::digits(found.wanted.q.si(), 3));
        if held.needed.q.si() > 0.0 {
            row("Anchors must add", force(held.needed.q.si()));
            let volume = print::in_prose(held.concrete.q.si(), s.system.pick((&YD3, &M3)));
            row("As concrete, about", volume);
        }
    }
    Some(table)
}

/// What is to be known of the sheet.
fn notes(s: &Section) -> Vec<String> {
    let mut all = Vec::new();
    if s.cover().is_some() {
        all.push("Pit, bed, backfill and anchors are drawn without dimensions: a licensed engineer designs them for the ground that is found.".to_owned());
    } else if s.unit().arrangement.is_in_ground() {
        all.push("The unit lies in the ground. How deep follows from levels that were not stated, so the ground is not drawn.".to_owned());
    } else {
        all.push("What the unit stands on, and how it is anchored, a licensed engineer designs for the loads told here, for wind and for earthquake.".to_owned());
        if s.unit().hopper.is_some() && s.is_sunk() {
            all.push("The hopper has no drain at its bottom, where nothing would run out: it is emptied by its suction pipe from above.".to_owned());
            all.push("The pit is designed by others, drained or pumped; its width is not to scale.".to_owned());
        }
        if support::base(s).is_some() {
            all.push(
                "Supports are the maker's. They are drawn as four legs outside the side walls, clear of the hopper: number and places nominal.".to_owned(),
            );
        }
    }
    if s.datum(zero()).is_none() {
        all.push("Elevations are missing: the levels that were stated do not place the floor.".to_owned());
    }
    if s.settled.job.enquiry.site.groundwater.q().is_none() {
        all.push("Groundwater: not stated. Whether an empty unit would float was not judged.".to_owned());
    }
    all.push("Fill with clean water before the ground may rise round it or oil may come; empty it only after asking whether it floats.".to_owned());
    all
}
