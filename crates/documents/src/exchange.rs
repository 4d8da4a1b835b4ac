//! The files of a package that other programs open. What goes into them is told elsewhere; here stands which there are.

use crate::Edition;
use crate::drawings::Drawing;
use crate::render::dxf::{self, dxf};
use crate::render::scale::Scale;
use crate::render::svg::{Lettering, Options, svg};
use stillrise_search::Settled;
use stillrise_units::System;

/// A drawing for whoever has none of our programs: as a picture whose letters are outlines, and for drafting programs.
pub fn of_drawing(drawing: &Drawing, name: &str, system: System) -> Vec<(String, Vec<u8>)> {
    let options = Options { id: drawing.name.clone(), lettering: Lettering::Outlined, ..Options::default() };
    let picture = svg(&drawing.scene, &options);
    let mut files = vec![(format!("{name}.svg"), picture.into_bytes())];
    // A sheet without a scale is as large as its paper.
    if let Some(scale) = drawing.scale.or_else(|| Scale::series(system).first().copied()) {
        files.push((format!("{name}.dxf"), dxf(&drawing.scene, &dxf::Options { scale, system })));
    }
    files
}

/// The files of a job beside its drawings: the unit in space, and its schedules to reckon on with.
///
/// # Errors
/// Why the workbook could not be written.
pub fn of_job(settled: &Settled, edition: Edition) -> Result<Vec<(String, Vec<u8>)>, String> {
    let model = crate::model::model(settled, edition).map(|bytes| ("model.glb".to_owned(), bytes));
    let schedules = crate::workbook::workbook(settled, edition).map_err(|fault| fault.to_string())?;
    Ok(model.into_iter().chain([("schedules.xlsx".to_owned(), schedules)]).collect())
}
