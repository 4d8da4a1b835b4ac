//! Who brings what, as proposed: what a drawing of the unit leaves open otherwise.

use crate::render::text::Table;
use crate::section::place::Section;
use stillrise_design::train::StageKind;

/// Columns: the thing, and who brings it.
pub fn table(s: &Section) -> Table {
    let mut table = Table::new(["Item", "By"]);
    let (us, others) = ("unit's maker", "others");
    let mut row = |item: &str, by: &str| {
        table.row([item.to_owned(), by.to_owned()]);
    };
    let unit = s.unit();
    let built = unit.arrangement.is_built_in();
    row(if built { "Internals, set into the vessel" } else { "Vessel with its internals" }, us);
    if built {
        row("Vessel, built in its place", others);
    }
    row(if unit.body.is_open() { "Cover" } else { "Manways" }, us);
    if s.alarm().is_some() {
        row("Level float with its switch", us);
        row("Alarm panel, wiring, power", others);
    }
    if super::support::base(s).is_some() {
        row("Supports down to the slab", us);
    }
    if !built {
        row("Slab or bed, anchors", others);
        row("Unloading and setting", others);
    }
    if s.cover().is_some() {
        row("Excavation, backfill, hold-down", others);
    }
    row("Pipes to and from the nozzles, their supports", others);
    for stage in &s.train.stages {
        let item = match stage.kind {
            StageKind::Containment => "Containment ahead of the unit",
            StageKind::Screen => "Screen",
            StageKind::GritTrap => "Grit trap",
            StageKind::Equalisation => "Equalisation tank",
            StageKind::Pump => "Lift pumps with their sump",
            StageKind::Splitter => "Splitter between units",
            StageKind::Separator => continue,
            StageKind::Closure => "Closure of the outlet",
            StageKind::Polisher => "Polisher behind the unit",
            StageKind::SamplePoint => "Sample point behind the unit",
        };
        row(item, others);
    }
    row("First filling with clean water", others);
    row("Pump-out and disposal of oil and sludge", others);
    table
}
