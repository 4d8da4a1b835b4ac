//! The files of a package that other programs open. What goes into them is told elsewhere; here stands how each is made.

use crate::Edition;
use crate::drawings::Drawing;
use crate::render::dxf::{self, dxf};
use crate::render::scale::Scale;
use crate::render::svg::{Lettering, Options, svg};
use stillrise_search::Settled;
use stillrise_units::System;

/// A sheet for whoever has none of our programs: a picture whose letters are outlines.
pub fn picture(drawing: &Drawing) -> Vec<u8> {
    let options = Options { id: drawing.name.clone(), lettering: Lettering::Outlined, ..Options::default() };
    svg(&drawing.scene, &options).into_bytes()
}

/// A sheet for drafting programs; one without a scale is as large as its paper.
pub fn drafting(drawing: &Drawing, system: System) -> Option<Vec<u8>> {
    let scale = drawing.scale.or_else(|| Scale::series(system).first().copied())?;
    Some(dxf(&drawing.scene, &dxf::Options { scale, system }))
}

/// The schedules, to reckon on with.
///
/// # Errors
/// Why the workbook could not be written.
pub fn schedules(settled: &Settled, edition: Edition) -> Result<Vec<u8>, String> {
    crate::workbook::workbook(settled, edition).map_err(|fault| fault.to_string())
}
