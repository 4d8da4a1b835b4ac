//! The unit that stands, with the causes that would explain its results at the places where they act.

use super::SHOWN;
use crate::Edition;
use crate::profile::{Paper, stand};
use crate::render::geometry::{Point, Rect, pt};
use crate::render::item::Item;
use crate::render::pen::Layer;
use crate::render::scale::{Scale, View};
use crate::render::scene::Scene;
use crate::section::balloons::concern;
use crate::section::place::{NAME, Section, zero};
use stillrise_checks::Part;
use stillrise_design::stages::Place;
use stillrise_search::Settled;
use stillrise_search::diagnosis::Diagnosis;
use stillrise_search::diagnosis::causes::{Cause, Id};

/// Room around the unit, mm: beside it for nozzles and balloons, over and under it for balloons.
const AROUND: (f64, f64) = (38.0, 16.0);

/// The long section, each explanation as a balloon `C1`, `C2` at every part where one of its causes acts; `None` where the
/// unit cannot be drawn.
#[must_use]
pub fn causes(settled: &Settled, d: &Diagnosis, paper: Paper) -> Option<Scene> {
    let mut section = Section::new(settled, Edition::Us)?;
    let room = Rect::new(0.0, 0.0, paper.width, paper.height);
    let shape = &section.unit().shape;
    let (length, height) = (shape.length(), section.top() - shape.bottom());
    let free = (paper.width - 2.0 * AROUND.0, paper.height - 2.0 * AROUND.1);
    let scale = Scale::fitting_between(length, height, free, section.system)?;
    let (x, y) = (paper.width - scale.mm(length), paper.height - scale.mm(height));
    let origin = pt(0.5 * x, 0.5 * y + scale.mm(section.top()));
    section.view = View { name: NAME.to_owned(), scale, origin };
    let title = "Where each explanation acts";
    let says =
        "The long section of the unit; each balloon is an explanation of the list below, at the part where it acts.";
    let mut scene = Scene::new(title, says, paper.width, paper.height);
    crate::section::view(&section, &mut scene);
    for (k, explanation) in d.explanations.iter().take(SHOWN).enumerate() {
        let mut tips: Vec<Point> = Vec::new();
        for sized in &explanation.causes {
            if let Some(tip) =
                at(&section, sized.cause).filter(|tip| tips.iter().all(|known| known.distance(*tip) > 1.0))
            {
                tips.push(tip);
            }
        }
        for tip in tips {
            let mark = format!("C{}", k + 1);
            if let Some(balloon) = stand(&scene, room, tip, &mark, k == 0) {
                scene.part(&mark.to_lowercase(), &mark, |scene| {
                    scene.on(Layer::Note).add(Item::Balloon(balloon));
                });
            }
        }
    }
    Some(scene)
}

/// Where a cause acts.
fn at(s: &Section, cause: &Cause) -> Option<Point> {
    let part = match cause.id {
        Id::Emulsion | Id::DissolvedOil | Id::FinerDroplets | Id::StrongerInfluent | Id::ColderWater => Part::Inlet,
        Id::FlowAboveDesign | Id::PumpShear => Part::Inlet,
        Id::BlockedPlates => Part::Pack,
        Id::FouledMesh => {
            let (from, to) = s.zone(Place::Mesh)?;
            return Some(pt(s.along((from, to), 0.5), s.at(zero(), s.unit().outlet.crest.q * 0.5).y));
        }
        Id::OilOverCap | Id::FalseAlarm | Id::AlarmFollowsFlow => Part::OilZone,
        Id::SludgeOverTrigger => Part::Hopper,
        Id::LowLevel | Id::Siphon | Id::MovedOutlet => Part::Outlet,
        Id::SamplingOrMethod | Id::SurfaceSample => Part::Effluent,
    };
    concern(s, part)
}
