//! The stations on the water's way, from left to right: what stands there, and whether it has a column of its own.

use super::{Station, facts};
use stillrise_design::basis::Basis;
use stillrise_design::enquiry::Enquiry;
use stillrise_design::performance::installation::Stands;
use stillrise_design::train::{Stage, StageKind, Train};
use stillrise_search::Settled;

/// What stands at a station.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum What {
    /// Rain, over all surfaces.
    Rain,
    /// A surface, by its place in the enquiry.
    Surface(usize),
    /// A stream, by its place in the enquiry.
    Stream(usize),
    /// Surfaces and streams for which there is no room of their own.
    MoreSources,
    /// A containment, by its place in the enquiry.
    Containment(usize),
    /// Containments for which there is no room of their own.
    MoreContainments,
    /// The screen.
    Screen,
    /// The grit trap.
    GritTrap,
    /// The sand compartment of the unit.
    SandTrap,
    /// What holds back a peak.
    Equalisation,
    /// Sump and feed pump.
    Pump,
    /// A lift pump that the levels ask for and nobody has placed.
    LiftAsked,
    /// Shares the flow.
    Splitter,
    /// The separator.
    Unit,
    /// Effluent pumps in the unit.
    PumpOut,
    /// A pump behind the unit that the levels ask for and nobody has placed.
    PumpBehind,
    /// The outlet closure.
    Closure,
    /// The polisher.
    Polisher,
    /// The sample point.
    SamplePoint,
    /// Where the water goes.
    Outfall,
}

/// Where a station stands as seen from the unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// Where water comes from.
    Source,
    /// Between the sources and the unit.
    Ahead,
    /// The unit.
    Unit,
    /// Behind it, the outfall last.
    Behind,
}

/// A station with what its drawing goes by.
#[derive(Debug, Clone)]
pub struct Stop {
    /// What stands there.
    pub what: What,
    /// As the page knows it.
    pub station: Station,
    /// Its name in the band, short.
    pub name: String,
    /// Whether it is asked for and not decided: drawn with another line.
    pub asked: bool,
}

impl What {
    /// Where it stands.
    pub fn side(self) -> Side {
        match self {
            What::Rain | What::Surface(_) | What::Stream(_) | What::MoreSources => Side::Source,
            What::Containment(_)
            | What::MoreContainments
            | What::Screen
            | What::GritTrap
            | What::Equalisation
            | What::Pump
            | What::LiftAsked
            | What::Splitter => Side::Ahead,
            What::SandTrap | What::Unit | What::PumpOut => Side::Unit,
            What::PumpBehind | What::Closure | What::Polisher | What::SamplePoint | What::Outfall => Side::Behind,
        }
    }

    /// How wide its column is among the others; nothing where it stands in that of another.
    pub fn weight(self) -> f64 {
        match self {
            What::Rain | What::SandTrap | What::PumpOut | What::Unit => 0.0,
            What::Surface(_) | What::MoreSources => 1.25,
            What::Stream(_) | What::Polisher => 1.15,
            What::Containment(_) | What::MoreContainments | What::Equalisation => 1.35,
            What::Pump | What::LiftAsked | What::PumpBehind => 1.2,
            What::Screen | What::GritTrap | What::Splitter | What::Closure | What::SamplePoint => 1.05,
            What::Outfall => 1.7,
        }
    }

    /// Its id on the drawing.
    fn id(self) -> String {
        let plain = match self {
            What::Surface(k) => return format!("surface-{}", k + 1),
            What::Stream(k) => return format!("stream-{}", k + 1),
            What::Containment(k) => return format!("containment-{}", k + 1),
            What::Rain => "rain",
            What::MoreSources => "more-sources",
            What::MoreContainments => "more-containments",
            What::Screen => "screen",
            What::GritTrap => "grit-trap",
            // These two are parts of the long section and have their names from there.
            What::SandTrap => "sand-wall",
            What::PumpOut => "pump-out",
            What::Equalisation => "equalisation",
            What::Pump => "pump",
            What::LiftAsked => "lift-pump",
            What::Splitter => "splitter",
            What::Unit => "unit",
            What::PumpBehind => "pump-behind",
            What::Closure => "closure",
            What::Polisher => "polisher",
            What::SamplePoint => "sample-point",
            What::Outfall => "outfall",
        };
        plain.to_owned()
    }
}

/// A station of a name, with what is said of it and the blocks that feed it.
pub fn stop(what: What, name: &str, says: Vec<String>, blocks: &[&str]) -> Stop {
    let name = crate::render::text::plain(name);
    let blocks = blocks.iter().map(|block| (*block).to_owned()).collect();
    let station = Station { id: what.id(), title: crate::summary::capital(&name), says, blocks };
    Stop { what, station, name, asked: false }
}

impl Stop {
    /// The same, asked for only.
    fn asked_if(mut self, asked: bool) -> Stop {
        if asked {
            self.asked = true;
            self.station.says.push("asked for, not decided".to_owned());
        }
        self
    }
}

/// All stations in the direction of flow.
pub fn stations(settled: &Settled) -> Vec<Stop> {
    let (e, design) = (&settled.job.enquiry, &settled.job.design);
    let (basis, train) = (design.basis.as_ref(), design.train.as_ref());
    let mut all = Vec::new();
    if !e.surfaces.is_empty() {
        all.push(facts::rain(e, basis));
    }
    all.extend((0..e.surfaces.len()).map(|k| facts::surface(e, k)));
    all.extend((0..e.streams.len()).map(|k| facts::stream(e, basis, k)));
    all.extend((0..e.containments.len()).map(|k| facts::containment(e, basis, k)));
    match train {
        Some(train) => all.extend(of_train(settled, train)),
        None => all.extend(without_train(settled, basis)),
    }
    all.push(facts::outfall(e));
    all
}

/// What stands around a unit: the stages of its train, and pumps that the levels ask for.
fn of_train(settled: &Settled, train: &Train) -> Vec<Stop> {
    let e = &settled.job.enquiry;
    let installation = settled.job.design.performance.as_ref().map(|p| p.site.installation);
    let mut all = Vec::new();
    let mut passed = false;
    for stage in &train.stages {
        let what = match stage.kind {
            // Drawn one by one, or not at all.
            StageKind::Containment => continue,
            StageKind::Screen => What::Screen,
            StageKind::GritTrap if train.unit.sand_trap.is_some() => What::SandTrap,
            StageKind::GritTrap => What::GritTrap,
            StageKind::Equalisation => What::Equalisation,
            StageKind::Pump if passed => What::PumpOut,
            StageKind::Pump => What::Pump,
            StageKind::Splitter => What::Splitter,
            StageKind::Separator => What::Unit,
            StageKind::Closure => What::Closure,
            StageKind::Polisher => What::Polisher,
            StageKind::SamplePoint => What::SamplePoint,
        };
        if what == What::Unit {
            passed = true;
            if installation.is_some_and(|i| i.stands.q == Stands::LiftPump) {
                all.push(facts::lift_asked());
            }
            all.push(facts::unit(settled, train));
            if installation.is_some_and(|i| i.pump_behind) && train.unit.pump_out.is_none() {
                all.push(facts::pump_behind());
            }
            continue;
        }
        all.push(of_stage(e, settled.job.design.basis.as_ref(), what, stage));
    }
    all
}

fn of_stage(e: &Enquiry, basis: Option<&Basis>, what: What, stage: &Stage) -> Stop {
    let (name, blocks): (&str, &[&str]) = match what {
        What::Screen => ("screen", &["screen"]),
        What::Pump => ("sump and feed pump", &["inlet", "lift"]),
        What::Equalisation => ("equalisation", &["outlet", "inlet", "rain"]),
        What::Splitter => ("splitter", &["unit"]),
        What::SandTrap => ("sand compartment", &["unit", "solids"]),
        What::PumpOut => ("effluent pumps", &["unit", "outlet"]),
        What::Closure => ("closure", &["spill"]),
        What::SamplePoint => ("sample point", &["limit"]),
        What::GritTrap => (&stage.name, &["solids"]),
        _ => (&stage.name, &["limit"]),
    };
    let mut says = facts::of_stage(stage, e.system());
    match what {
        What::Pump => says.splice(0..0, facts::pumps(e, basis)).for_each(drop),
        What::Closure => says.push("shuts when oil comes".to_owned()),
        What::SamplePoint => says.extend(facts::limits(e, basis)),
        _ => {}
    }
    stop(what, name, says, blocks).asked_if(stage.asked_for)
}

/// What was said of the way before anything was sized.
fn without_train(settled: &Settled, basis: Option<&Basis>) -> Vec<Stop> {
    let e = &settled.job.enquiry;
    let mut all = Vec::new();
    if *e.screen.exists == Some(true) {
        all.push(stop(What::Screen, "screen", vec!["stands ahead".to_owned()], &["screen"]));
    }
    if basis.is_some_and(|basis| basis.feed.pumped) {
        all.push(stop(What::Pump, "sump and feed pump", facts::pumps(e, basis), &["inlet", "lift"]));
    }
    all.push(facts::no_unit(settled));
    if e.spill.as_ref().is_some_and(|spill| *spill.closure == Some(true)) {
        all.push(stop(What::Closure, "closure", vec!["shuts when oil comes".to_owned()], &["spill"]));
    }
    all.push(stop(What::SamplePoint, "sample point", facts::limits(e, basis), &["limit"]));
    all
}
