//! The way of the water across the site, left to right: where it comes from, what stands ahead, the unit's long section,
//! what stands behind, the outfall. It draws values that exist and finds none.
//!
//! - `stations`, `facts`: what stands on the way and what is said of it. `plan`: columns, scale, places; `levels`: heights.
//! - `sources`, `chambers`, `outfall`, `pipes`, `site`, `empty`: what is drawn around the unit, whose view is the `section`'s.
//! - `flags`, `tag`, `dimensions`, `names`, `balloons`, `band`: its marks; each looks by `clear` for a place that is free.
//! - `words`: the drawing told, and the notes at its foot.
//!
//! Heights are to the scale of the unit wherever its floor is known in the site's datum; lengths between stations are not.

mod balloons;
mod band;
mod chambers;
mod clear;
mod dimensions;
mod empty;
mod facts;
mod flags;
mod levels;
mod names;
mod outfall;
mod pipes;
mod plan;
mod site;
mod sources;
pub(crate) mod stations;
mod tag;
mod words;

use crate::render::scale::Scale;
use crate::render::scene::Scene;
pub use crate::section::findings::{Group as FindingGroup, groups as findings};
pub(crate) use balloons::stand;
pub(crate) use facts::elevation;
use plan::Plan;
use stillrise_search::Settled;

/// The drawing, and what it shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    /// The drawing; its parts carry the ids of stations, and of the unit's own parts and levels.
    pub scene: Scene,
    /// The stations in the direction of flow.
    pub stations: Vec<Station>,
    /// The scale of unit and levels; nothing where no unit is drawn.
    pub scale: Option<Scale>,
}

/// A place on the water's way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Station {
    /// A short lower-case name, that of a part of the drawing: `surface-1`, `pump`, `unit`, `outfall`.
    pub id: String,
    /// What a person calls it.
    pub title: String,
    /// Two to five short facts, as far as they are known.
    pub says: Vec<String>,
    /// Blocks of the enquiry that feed it, as key places: `surface "fuelling apron"`, `rain`, `inlet`.
    pub blocks: Vec<String>,
}

/// The paper to draw on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Paper {
    /// Width, mm; what is narrower than 180 or wider than 600 is drawn so.
    pub width: f64,
    /// Height, mm; what is lower than 90 or higher than 400 is drawn so.
    pub height: f64,
}

impl Paper {
    /// The same within what can be drawn on.
    fn held(self) -> Paper {
        let held = |value: f64, low: f64, high: f64| if value.is_finite() { value.clamp(low, high) } else { low };
        Paper { width: held(self.width, 180.0, 600.0), height: held(self.height, 90.0, 400.0) }
    }
}

/// Draws the way of the water of a settled job.
#[must_use]
pub fn profile(settled: &Settled, paper: Paper) -> Profile {
    drawn(settled, paper, true)
}

/// The same without findings: for a sheet that others build by.
#[must_use]
pub fn plain(settled: &Settled, paper: Paper) -> Profile {
    drawn(settled, paper, false)
}

fn drawn(settled: &Settled, paper: Paper, findings: bool) -> Profile {
    let paper = paper.held();
    let plan = Plan::new(settled, stations::stations(settled), paper);
    let title = settled.job.enquiry.head.title.0.clone().unwrap_or_default();
    let title = format!("Way of the water, {title}");
    let mut scene = Scene::new(&title, &words::description(&plan), paper.width, paper.height);
    let way = pipes::way(&plan);
    site::ground(&plan, &mut scene);
    sources::draw(&plan, &mut scene);
    pipes::draw(&plan, &way, &mut scene);
    chambers::ahead(&plan, &way, &mut scene);
    match &plan.section {
        Some(section) => crate::section::view(section, &mut scene),
        None => empty::draw(&plan, &mut scene),
    }
    chambers::behind(&plan, &way, &mut scene);
    outfall::draw(&plan, &mut scene);
    if let Some(section) = &plan.section {
        flags::draw(&plan, section, &mut scene);
        dimensions::draw(&plan, section, &mut scene);
    }
    let unplaced = site::marks(&plan, &way, &mut scene);
    if let Some(section) = &plan.section {
        names::draw(&plan, section, &mut scene);
    }
    if findings {
        balloons::draw(&plan, &way, &mut scene);
    }
    band::draw(&plan, &mut scene, &words::notes(&plan, unplaced));
    let scale = plan.section.as_ref().map(|section| section.view.scale);
    let stations = plan.stops.into_iter().map(|stop| stop.station).collect();
    Profile { scene, stations, scale }
}
