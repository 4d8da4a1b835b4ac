//! Long sections of several units side by side, bare and to one scale, so that the eye compares them.

use super::place::{NAME, STUB, Section, WALL, zero};
use crate::Edition;
use crate::render::geometry::pt;
use crate::render::scale::{Scale, View};
use crate::render::scene::Scene;
use crate::render::svg::{Options, svg};
use stillrise_design::job::Design;
use stillrise_search::Settled;
use stillrise_units::Length;

/// Room around a vessel, mm: for stubs at its ends, for float and risers over it, for a drain below it.
const AROUND: (f64, f64, f64) = (STUB + 3.0, 7.0, 7.0);

/// The sections of designs of one job, each on a paper of the same size, all to the largest scale at which every one fits;
/// nothing for a design without a unit.
#[must_use]
pub fn small(settled: &Settled, designs: &[&Design], paper: (f64, f64)) -> Vec<Option<String>> {
    let drawn = small_scenes(settled, designs, paper).into_iter().enumerate();
    let written = |(k, scene): (usize, Option<Scene>)| {
        let options =
            Options { id: format!("small-{k}"), background: false, sized: false, pointed: false, ..Options::default() };
        scene.map(|scene| svg(&scene, &options))
    };
    drawn.map(written).collect()
}

/// The same as drawings, to be put among others.
#[must_use]
pub fn small_scenes(settled: &Settled, designs: &[&Design], (width, height): (f64, f64)) -> Vec<Option<Scene>> {
    let system = settled.job.enquiry.system();
    let mut sections: Vec<Option<Section>> =
        designs.iter().map(|design| Section::of(settled, design, Edition::Client)).collect();
    let most = |of: &dyn Fn(&Section) -> Length| {
        sections.iter().flatten().map(of).fold(zero(), |most, one| if one > most { one } else { most })
    };
    let long = most(&|s| s.unit().shape.length());
    let deep = most(&|s| zero() - s.unit().shape.bottom());
    let high = deep + most(&|s| s.top());
    let room = (width - 2.0 * (AROUND.0 + WALL), height - AROUND.1 - AROUND.2);
    let Some(scale) = Scale::fitting_between(long, high, room, system) else { return vec![None; designs.len()] };
    let drawn = sections.iter_mut().map(|section| {
        let section = section.as_mut()?;
        let length = scale.mm(section.unit().shape.length());
        // Their floors stand on one line.
        let y = height - AROUND.2 - scale.mm(deep);
        section.view = View { name: NAME.to_owned(), scale, origin: pt(0.5 * (width - length), y) };
        let name = &section.unit().particulars.model;
        let mut scene = Scene::new(&format!("{name}, to the scale {}", scale.text()), "", width, height);
        super::view(section, &mut scene);
        Some(scene)
    });
    drawn.collect()
}
