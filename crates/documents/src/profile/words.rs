//! The drawing in words: for someone who cannot see it, and the notes at its foot.

use super::facts::elevation;
use super::plan::Plan;
use super::stations::{Side, Stop, What};
use crate::render::text::plain;
use crate::section::place::zero;
use stillrise_design::stages::Stage;

/// What the drawing shows, in the direction of flow.
pub fn description(plan: &Plan) -> String {
    let mut says = Vec::new();
    let of = |side: Side| plan.stops.iter().filter(move |stop| stop.what.side() == side);
    let sources: Vec<String> = of(Side::Source).map(told).collect();
    if !sources.is_empty() {
        says.push(format!("The water comes from: {}.", sources.join("; ")));
    }
    let ahead: Vec<String> = of(Side::Ahead).map(told).collect();
    if !ahead.is_empty() {
        says.push(format!("Ahead of the unit: {}.", ahead.join("; ")));
    }
    says.extend(of(Side::Unit).map(|stop| format!("{}: {}.", stop.station.title, stop.station.says.join(", "))));
    if let Some(s) = &plan.section {
        let passed: Vec<&str> = s.unit().stages.all().into_iter().filter_map(|stage| stage.passed(s.unit())).collect();
        says.push(format!("In it the water passes: {}.", passed.join(", ")));
        let levels: Vec<String> = crate::section::levels::marks(s)
            .iter()
            .filter(|mark| mark.is_surface())
            .map(|mark| format!("{} {}", mark.name.to_lowercase(), s.write(mark.level)))
            .collect();
        says.push(format!("Levels above its floor: {}.", levels.join(", ")));
    }
    let behind: Vec<String> = of(Side::Behind).map(told).collect();
    says.push(format!("Behind it: {}.", behind.join("; ")));
    let l = &plan.levels;
    let site: Vec<String> =
        [("ground", l.ground), ("invert of the incoming pipe", l.incoming), ("groundwater", l.groundwater)]
            .into_iter()
            .filter_map(|(name, h)| Some(format!("{name} {}", elevation(plan.system, h?.z))))
            .collect();
    if !site.is_empty() {
        says.push(format!("Levels of the site: {}.", site.join(", ")));
    }
    plain(&says.join(" "))
}

fn told(stop: &Stop) -> String {
    if stop.station.says.is_empty() {
        stop.name.clone()
    } else {
        format!("{} ({})", stop.name, stop.station.says.join(", "))
    }
}

/// The notes at the foot: scale, what was not said, and elevations that found no place on the drawing.
pub fn notes(plan: &Plan, unplaced: Vec<String>) -> Vec<String> {
    let e = &plan.settled.job.enquiry;
    let mut all = Vec::new();
    match &plan.section {
        Some(s) if plan.levels.to_scale => {
            all.push(format!("SCALE {} (unit and levels)", s.view.scale.text()));
            all.push("lengths between stations not to scale".to_owned());
        }
        Some(s) => {
            all.push(format!("SCALE {} (unit)", s.view.scale.text()));
            all.push("stations not to scale".to_owned());
        }
        None => all.push("NOT TO SCALE".to_owned()),
    }
    let said = |known: bool, what: &str| (!known).then(|| what.to_owned());
    let mut open: Vec<String> = Vec::new();
    open.extend(said(e.site.ground.q().is_some(), "ground"));
    open.extend(said(e.inlet.invert.q().is_some(), "incoming invert"));
    if !open.is_empty() {
        all.push(format!("{} not said", open.join(" and ")));
    }
    // Elevations that were stated and cannot be drawn beside a floor that is not known.
    if plan.section.as_ref().is_some_and(|s| s.datum(zero()).is_none()) {
        let stated = [
            ("ground", e.site.ground.q()),
            ("incoming invert", e.inlet.invert.q()),
            ("groundwater", e.site.groundwater.q()),
        ];
        let stated: Vec<String> =
            stated.iter().filter_map(|(name, z)| Some(format!("{name} {}", elevation(plan.system, (*z)?)))).collect();
        if !stated.is_empty() {
            all.push(format!("stated, floor not known: {}", stated.join(", ")));
        }
    }
    all.extend(unplaced);
    if plan.has(What::LiftAsked) {
        all.push("drawn as with the pump ahead of the unit".to_owned());
    }
    all
}
