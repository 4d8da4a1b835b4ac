//! Figures to scale: vessels, the stages of a unit, arrangements, drawn by what draws the program's own sections.

use super::figures::{WIDTH, blank, worked};
use super::words::{LINE, TEXT, write};
use stillrise_design::WhatIf;
use stillrise_design::arrangements::{Arrangement, Form};
use stillrise_design::job::{Design, begin};
use stillrise_design::performance::Depth;
use stillrise_design::provenance::Off;
use stillrise_design::stages::stage::Stage;
use stillrise_design::train::Source;
use stillrise_desk::jobs::demo_range;
use stillrise_documents::render::geometry::{Point, pt};
use stillrise_documents::render::item::{Fill, Item, Shape};
use stillrise_documents::render::lettering::Text;
use stillrise_documents::render::pen::{Layer, Pen};
use stillrise_documents::render::scene::Scene;
use stillrise_documents::section::small_scenes;
use stillrise_handbook::vessel::shape::Shape as Vessel;
use stillrise_handbook::vessel::shapes::{
    Head, Hopper, HorizontalCylinder, Rectangular, RectangularHopper, UprightCylinder,
};
use stillrise_search::pick::try_unit;
use stillrise_units::catalog::M3;
use stillrise_units::{Length, Typed, print};

/// The job that the units are laid out for.
const JOB: &str = "vehicle-yard";
/// Millimetres on paper of a metre of a vessel.
const SCALE: f64 = 11.0;

/// One vessel of each type, three metres or so large.
fn shapes() -> Vec<Vessel> {
    let m = Length::from_si;
    let chamber = Rectangular { length: m(3.0), width: m(1.5), height: m(1.8) };
    let hopper = Hopper { at: m(0.4), top_length: m(1.2), bottom_length: m(0.4), bottom_width: m(0.4), depth: m(0.7) };
    vec![
        chamber.into(),
        RectangularHopper { chamber, hoppers: vec![hopper] }.into(),
        HorizontalCylinder { diameter: m(1.8), shell: m(3.0), head: Head::TWO_TO_ONE }.into(),
        UprightCylinder { diameter: m(1.8), height: m(2.4) }.into(),
    ]
}

/// The outlines of all types to one scale, each half full: what every type answers for itself.
pub(super) fn vessels() -> Scene {
    let mut scene = blank("The types to one scale, each half full: what a type answers for itself");
    let mut floor = 22.0;
    for (k, shape) in shapes().iter().enumerate() {
        let left = if k % 2 == 0 { 2.0 } else { 54.0 };
        let at = |x: Length, z: Length| pt(left + SCALE * x.si(), floor - SCALE * z.si());
        let half = shape.capacity() * 0.5;
        let level = shape.level(half);
        let outline: Vec<Point> = shape.outline().into_iter().map(|(x, z)| at(x, z)).collect();
        scene.polygon(&outline, Some(Pen::Outline), Fill::None);
        let under = floor + SCALE * 0.8 + TEXT;
        scene.text(Text::new(pt(left, under), shape.kind()).sized(TEXT).bold());
        if let Some(level) = level {
            scene.line(at(Length::from_si(0.0), level), at(shape.length(), level), Pen::Surface);
            let shown = |si: f64| print::digits(si, 3);
            let words = format!("{} m³ up to {} m", shown(M3.from_si(half.si())), shown(level.si()));
            scene.text(Text::new(pt(left, under + LINE), &words).sized(TEXT));
        }
        if k % 2 == 1 {
            floor = under + 36.0;
        }
    }
    scene.height = floor - 30.0;
    scene
}

/// The first row of the demo range of an arrangement, laid out for a worked job.
fn laid_out(settled: &stillrise_search::Settled, arrangement: Arrangement) -> Option<Design> {
    let range = demo_range();
    let model = range.models.iter().find(|model| Arrangement::of(model) == arrangement)?;
    let (enquiry, nothing) = (&settled.job.enquiry, WhatIf::default());
    let begun = begin(&mut Off, &nothing, enquiry);
    Some(try_unit(enquiry, &nothing, &begun, &Source::Row(&range, model), 1, Depth::Limits))
}

/// The stages of a unit in the direction of flow, over its section.
pub(super) fn stages() -> Scene {
    let mut scene = blank("The stages of a unit, in the direction of flow");
    let settled = worked(JOB);
    let design = settled.as_ref().and_then(|settled| laid_out(settled, Arrangement::PlateTank));
    let mut y = 0.0;
    if let (Some(settled), Some(design)) = (&settled, &design) {
        const HIGH: f64 = 56.0;
        for section in small_scenes(settled, &[design], (WIDTH, HIGH)).into_iter().flatten() {
            scene.take(&section, 0.0, 0.0);
        }
        y = HIGH + LINE;
        if let Some(train) = &design.train {
            let names: Vec<&str> = train.unit.stages.all().iter().map(Stage::name).collect();
            y = write(&mut scene, pt(0.0, y), &names.join(" > "), WIDTH);
        }
    }
    scene.height = y;
    scene
}

/// A section of each arrangement of the demo range: the basin, which is longer than all others, to a scale of its own.
pub(super) fn arrangements() -> Scene {
    const SMALL: (f64, f64) = (WIDTH / 2.0, 40.0);
    const LONG: (f64, f64) = (WIDTH, 32.0);
    let mut scene = blank("Units of the demo range, an arrangement each; pipes are left out");
    let Some(settled) = worked(JOB) else { return scene };
    let found = Arrangement::ALL.iter().filter_map(|a| Some((*a, laid_out(&settled, *a)?)));
    let laid = found.filter(|(_, design)| design.train.is_some());
    let (long, short): (Vec<_>, Vec<_>) = laid.partition(|(a, _)| a.form() == Form::Channels);
    let mut y = 0.0;
    for (units, paper, columns) in [(short, SMALL, 2_usize), (long, LONG, 1)] {
        let designs: Vec<&Design> = units.iter().map(|(_, design)| design).collect();
        let sections = small_scenes(&settled, &designs, paper);
        for (k, ((arrangement, _), section)) in units.iter().zip(sections).enumerate() {
            let Some(section) = section else { continue };
            let x = if k % columns == 0 { 0.0 } else { SMALL.0 };
            let scale = section.title.rsplit("to the scale ").next().unwrap_or_default();
            scene.on(Layer::Note);
            scene.text(Text::new(pt(x, y + TEXT), arrangement.word()).sized(TEXT).bold());
            scene.text(Text::new(pt(x, y + TEXT + LINE), scale).sized(TEXT));
            bare(&section, &mut scene, (x, y));
            if k % columns == columns - 1 || k + 1 == units.len() {
                y += paper.1;
            }
        }
    }
    scene.height = y;
    scene
}

/// A drawing without pipes, and without the hatching of its liquids: they would be most of the file.
fn bare(drawn: &Scene, scene: &mut Scene, (x, y): (f64, f64)) {
    for placed in drawn.items().iter().filter(|placed| placed.layer != Layer::Piping) {
        let mut item = placed.item.moved(x, y);
        if let Item::Shape(Shape::Path { fill, .. }) = &mut item
            && placed.layer == Layer::Liquid
            && matches!(fill, Fill::Hatch(_) | Fill::Over(_))
        {
            *fill = Fill::None;
        }
        scene.on(placed.layer).add(item);
    }
}
