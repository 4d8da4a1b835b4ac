//! How the unit works, from its stages in the direction of flow.

use super::super::site::Site;
use crate::report::{Report, capital};
use stillrise_design::stages::Place;
use stillrise_design::stages::underflow::Underflow;
use stillrise_design::train::StageKind;
use stillrise_units::catalog::{IN, MM};

/// One page.
pub(super) fn works(r: &mut Report<'_>, u: &Site<'_>) {
    r.out.section("How it works");
    r.out.para("Oil is lighter than water: drops rise, the larger the faster; grit and sludge sink. The unit gives them quiet water and time, keeps the oil on top and lets clean water out from below. What soap, pumps or solvents have made too fine to rise goes through.");
    let mut steps: Vec<(String, String)> = Vec::new();
    for stage in &u.train.stages {
        if stage.kind == StageKind::Separator {
            steps.extend(within(u).into_iter().map(|text| (text, String::new())));
            continue;
        }
        let does = match stage.kind {
            StageKind::Containment => "holds back spills and rain before they reach the unit",
            StageKind::Screen => "keeps leaves, rags and litter out of the unit",
            StageKind::GritTrap => "takes out the coarse grit, so that the unit fills more slowly",
            StageKind::Equalisation => "holds back the peak and lets it out evenly",
            StageKind::Pump if stage.name.contains("effluent") => "lift the clean water to the outfall",
            StageKind::Pump => "lifts the water to the unit; the less it whirls the water, the larger the drops stay",
            StageKind::Splitter => "shares the flow between the units",
            StageKind::Closure => "shuts the outlet before oil reaches it",
            StageKind::Polisher => "takes what gravity leaves; its own maker's manual says how it is kept",
            StageKind::SamplePoint => "is where samples are taken, from the falling stream",
            StageKind::Separator => continue,
        };
        let yet = if stage.asked_for { " (asked for; left out of this manual until it is there)" } else { "" };
        steps.push((format!("{}: {does}{yet}.", capital(&stage.name)), String::new()));
    }
    r.out.list(true, steps);
}

/// The stages within the unit.
fn within(u: &Site<'_>) -> Vec<String> {
    let unit = u.unit();
    let crest = u.len(unit.outlet.crest.q);
    let mut all = Vec::new();
    let mut held = false;
    for zone in &unit.compartments {
        let does = match zone.place {
            Place::SandTrap => "sand settles here before anything else".to_owned(),
            Place::InletChamber => "the incoming water is stilled and spread over the width".to_owned(),
            Place::GravityZone => {
                let sludge = if unit.hopper.is_some() {
                    "; sludge slides into the hopper"
                } else {
                    "; sludge lies on the floor"
                };
                format!("in open water large drops rise and grit sinks{sludge}")
            }
            Place::PlatePack => {
                let gap = unit
                    .pack
                    .as_ref()
                    .map_or_else(String::new, |pack| format!(" of {}", u.say(pack.laid.gap.q, (&IN, &MM))));
                format!(
                    "the water runs slowly through gaps{gap}; small drops need to rise no further than the plate above them, join there and climb it as a film"
                )
            }
            Place::Mesh => "fine drops meet its fibres, join, and leave it large enough to rise".to_owned(),
            Place::Retention => {
                held = true;
                keeps(u)
            }
            Place::ClearWell => {
                if !held {
                    held = true;
                    all.push(format!("On top of the water ahead of the {}: {}.", under(u), keeps(u)));
                }
                let over = if u.weir() { "runs over the weir" } else { "leaves by the outlet pipe" };
                format!(
                    "water from under the {} rises and {over}, which holds the level of the whole unit at {crest}",
                    under(u)
                )
            }
            Place::PumpOut => "pumps take the clean water from here; the levels ahead do not follow them".to_owned(),
        };
        all.push(format!("{}: {does}.", capital(zone.place.word())));
    }
    if !held {
        all.push(format!("On top of the water: {}.", keeps(u)));
        all.push(format!("Water leaves from under the oil by the {} to the outlet, which holds the level of the whole unit at {crest}.", under(u)));
    }
    all
}

/// What lets the water out from under the oil.
fn under(u: &Site<'_>) -> &'static str {
    match u.unit().underflow {
        Underflow::Downcomer(_) => "last baffle",
        Underflow::DipPipe(_) => "dip pipe",
    }
}

/// Where oil is held.
fn keeps(u: &Site<'_>) -> String {
    let draw = u.len(u.unit().retention.oil_draw.q);
    let float = if u.layer().is_some() { "; the float of the alarm rides where oil and water meet" } else { "" };
    format!("oil collects in a layer, is kept in by the {} and drawn off at {draw}{float}", under(u))
}
