//! Plan, cross section and end view of one unit. They draw what the vessel and its stages say of themselves; no kind of vessel
//! is asked for here.
//!
//! - `plan`: from above, cut at the water. `cross`: square to the flow. `end`: from outside. `walls`: outlines with their walls.

mod cross;
mod end;
mod plan;
mod walls;

pub(crate) use cross::{cleared, draw as cross, seen as cross_seen, station};
pub(crate) use end::{draw as end, name as end_name};
pub(crate) use plan::overall as plan;

use crate::Edition;
use crate::profile::Paper;
use crate::render::geometry::{Point, Rect, pt};
use crate::render::scale::{Scale, View};
use crate::render::scene::Scene;
use crate::section::place::{Section, WALL, zero};
use stillrise_search::Settled;
use stillrise_units::{Length, System};

/// Room kept around a view on paper, mm: left, above, right, below.
#[derive(Clone, Copy)]
struct Around(f64, f64, f64, f64);

/// How a scale is found for a width and a height in a room.
type Fitting = fn(Length, Length, (f64, f64), System) -> Option<Scale>;

const PLAN: Around = Around(34.0, 14.0, 16.0, 44.0);
const CROSS: Around = Around(32.0, 14.0, 24.0, 28.0);

/// Plan and cross section without a sheet around them, on a paper of a size: to be looked at, not to be issued.
#[must_use]
pub fn bare(settled: &Settled, paper: Paper) -> Option<Scene> {
    let mut section = Section::new(settled, Edition::Us)?;
    let mut scene = Scene::new("Plan and cross section", &description(&section), paper.width, paper.height);
    let room = Rect::new(0.0, 0.0, paper.width, paper.height);
    let at = places(&mut section, &room, Scale::fitting_between)?;
    both(&mut section, &mut scene, at);
    Some(scene)
}

/// Draws both views where their origins stand.
fn both(section: &mut Section, scene: &mut Scene, (plan_at, cross_at): (Point, Point)) {
    let station = station(section);
    section.view = View { name: "Plan".to_owned(), scale: section.view.scale, origin: plan_at };
    plan::draw(section, scene, station);
    section.view = View { name: "Section A-A".to_owned(), scale: section.view.scale, origin: cross_at };
    cross::draw(section, scene, station);
}

/// The largest scale at which both views find room, one over the other or side by side, and where their origins stand: of the
/// plan the inlet end at one side wall, of the cross section its floor at the same wall.
fn places(s: &mut Section, room: &Rect, fitting: Fitting) -> Option<(Point, Point)> {
    let shape = &s.unit().shape;
    let wall = s.unit().particulars.wall.map_or(zero(), |wall| wall.q);
    let (length, width) = (shape.length() + wall * 2.0, s.broad() + wall * 2.0);
    let high = s.top() - shape.bottom() + wall;
    let larger = |a: Length, b: Length| if a > b { a } else { b };
    let across = |around: Around| around.0 + around.2 + 2.0 * WALL;
    let down = |around: Around| around.1 + around.3 + 2.0 * WALL;
    let (wide, tall) = (room.width(), room.height());
    let over = (wide - across(PLAN).max(across(CROSS)), tall - down(PLAN) - down(CROSS));
    let beside = (wide - across(PLAN) - across(CROSS), tall - down(PLAN).max(down(CROSS)));
    let stacked = fitting(larger(length, width), width + high, over, s.system);
    let abreast = fitting(length + width, larger(width, high), beside, s.system);
    let is_stacked = match (stacked, abreast) {
        (Some(a), Some(b)) => a.ratio() < b.ratio(),
        (a, _) => a.is_some(),
    };
    let scale = if is_stacked { stacked } else { abreast }?;
    s.view.scale = scale;
    let (long, broad, deep) = (scale.mm(length), scale.mm(width), scale.mm(zero() - shape.bottom()));
    let thick = scale.mm(wall).max(WALL);
    let rise = scale.mm(s.top());
    Some(if is_stacked {
        let used = down(PLAN) + down(CROSS) + broad + scale.mm(high);
        let spare = (tall - used) / 3.0;
        let top = room.y0 + PLAN.1 + spare;
        let x = room.x0 + PLAN.0 + 0.5 * (wide - across(PLAN) - long) + thick;
        let floor = top + broad + PLAN.3 + spare + CROSS.1 + rise;
        let left = room.x0 + CROSS.0 + 0.5 * (wide - across(CROSS) - broad) + thick;
        (pt(x, top + broad - thick), pt(left, floor))
    } else {
        let spare = (wide - across(PLAN) - across(CROSS) - long - broad) / 3.0;
        let x = room.x0 + spare + PLAN.0 + thick;
        let left = room.x1 - spare - CROSS.2 - broad + thick;
        let middle = 0.5 * (room.y0 + PLAN.1 + room.y1 - PLAN.3);
        let centre = 0.5 * (room.y0 + CROSS.1 + room.y1 - CROSS.3);
        (pt(x, middle + 0.5 * scale.mm(s.broad())), pt(left, centre + 0.5 * (rise + deep) - deep))
    })
}

/// For someone who cannot see the drawing.
fn description(s: &Section) -> String {
    let unit = s.unit();
    format!(
        "Plan and cross section of {}: {} long, {} wide and {} high inside.",
        crate::render::text::plain(&unit.particulars.model),
        s.write(unit.shape.length()),
        s.write(unit.shape.width()),
        s.write(unit.shape.height()),
    )
}

/// What is to be known of both views.
pub(crate) fn notes(s: &Section) -> Vec<String> {
    let mut all = vec![
        if plan::is_widest_at_the_water(s) {
            "Plan: cut at the water at rest; whatever stands above it is taken off.".to_owned()
        } else {
            "Plan: cut where the vessel is widest; whatever stands above is taken off.".to_owned()
        },
        "Section A-A: where the plan shows it, seen with the flow.".to_owned(),
        "Where nozzles, vents, switches and pumps sit across the unit, and on which side oil is drawn off, is not part of the \
         calculation: the maker's drawing decides."
            .to_owned(),
    ];
    if let Some(pack) = &s.unit().pack {
        if pack.laid.run.q == stillrise_handbook::separation::laminar_capture::PlateRun::CrossFlow {
            all.push("Plates may lean to either side, or to both from the middle; one side is drawn.".to_owned());
        }
        let every = crate::section::every(s.view.scale.mm(pack.laid.gap.q + pack.laid.plate.q));
        if every > 1 {
            all.push(format!("One line of the pack stands for {every} plates."));
        }
    }
    if s.unit().channels.is_some() {
        all.push("One inlet and one outlet are known: inlet chamber and clear well are drawn as common to all channels, each of which holds its own oil. Gates by which one channel is emptied: by maker.".to_owned());
        all.push(if s.between() > zero() {
            "Walls between channels stand on top of the clear widths; they are drawn as thick as the outer ones, by maker.".to_owned()
        } else {
            "Walls between channels stand on top of the clear widths; how thick they are: by maker.".to_owned()
        });
    }
    if !s.wall_is_true() {
        all.push("Walls are drawn thicker than they are.".to_owned());
    }
    if s.unit().access.is_some() {
        all.push("Manways over the plan stand in broken lines; their places along the unit are nominal.".to_owned());
    }
    all
}
