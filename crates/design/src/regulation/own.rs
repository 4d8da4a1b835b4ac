//! What the units have of what a method asks for.

use super::{Asked, reaches};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::Regulator;
use crate::job::Design;
use crate::provenance::Pair;
use crate::stages::Place;
use crate::train::Train;
use crate::train::unit::Unit;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::catalog::{FT_MIN, FT2, GAL, L, L_S, M2, M3, MM_S};
use stillrise_units::{Typed, Volume};

/// What is held against it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Own {
    /// So much, in SI, and whether that is enough.
    Has(f64, bool),
    /// It is no matter of this unit, and why.
    NoMatter(&'static str),
    /// It is not known, and why.
    Unknown(&'static str),
}

impl Asked {
    /// The value asked for, in SI.
    #[must_use]
    pub fn si(&self) -> f64 {
        match self {
            Asked::Surface(v) | Asked::PlateArea(v) => v.q.si(),
            Asked::Velocity(v) => v.q.si(),
            Asked::Water(v) | Asked::OilStore(v) | Asked::SludgeStore(v) => v.q.si(),
            Asked::NominalSize(v) | Asked::Flow(v) => v.q.si(),
        }
    }
    /// Print units.
    #[must_use]
    pub fn units(&self) -> Pair {
        match self {
            Asked::Surface(_) | Asked::PlateArea(_) => (&FT2, &M2),
            Asked::Velocity(_) => (&FT_MIN, &MM_S),
            Asked::Water(_) => (&GAL, &M3),
            Asked::OilStore(_) | Asked::SludgeStore(_) => (&GAL, &L),
            Asked::NominalSize(_) => (&L_S, &L_S),
            Asked::Flow(_) => crate::basis::FLOW_UNITS,
        }
    }
}

fn at_least<Q: Typed>(own: Q, asked: Q) -> Own {
    Own::Has(own.si(), reaches(own, asked))
}

/// What the units have of what a method asks for.
#[must_use]
pub fn own(method: Regulator, asked: &Asked, e: &Enquiry, design: &Design) -> Own {
    const NONE: Own = Own::Unknown("no unit stands yet that could be held against it");
    const PLATES: Own = Own::NoMatter("for units without plates, and this one has them");
    if let Asked::Flow(flow) = asked {
        let designed = design.basis.as_ref().and_then(|basis| basis.design_flow());
        return designed.map_or(Own::Unknown("no flow is known"), |own| at_least(own.q, flow.q));
    }
    let Some(train) = &design.train else { return NONE };
    let (unit, count) = (&train.unit, train.count.q);
    match asked {
        Asked::Surface(_) | Asked::Velocity(_) if unit.pack.is_some() => PLATES,
        Asked::Surface(area) => at_least(unit.layout.tank_area.q * count, area.q),
        Asked::Velocity(most) => match &design.performance {
            Some(found) => Own::Has(found.velocities.along.q.si(), reaches(most.q, found.velocities.along.q)),
            None => NONE,
        },
        Asked::PlateArea(area) => match &unit.pack {
            Some(pack) => at_least(pack.follows.area.q * count, area.q),
            None => Own::NoMatter("for units with plates, and this one has none"),
        },
        Asked::Water(volume) => at_least(unit.layout.water_volume.q * count, volume.q),
        Asked::NominalSize(size) => nominal(train, e, size.q.si()),
        Asked::OilStore(oil) => {
            let levels = design.performance.iter().flat_map(|found| &found.levels);
            let held = levels.filter_map(|l| l.level(Mark::Limit)).map(|l| l.volume.q);
            let Some(least) = held.min_by(|a, b| a.si().total_cmp(&b.si())) else { return NONE };
            // A spill comes to one unit, and by the guideline each has to hold it.
            let all = if method == Regulator::NewZealand { least } else { least * count };
            at_least(all, oil.q)
        }
        Asked::SludgeStore(sludge) => at_least((unit.hopper_volume() + sand(unit)) * count, sludge.q),
        Asked::Flow(_) => NONE,
    }
}

/// What the sand compartment of a unit holds, to its crest.
fn sand(unit: &Unit) -> Volume {
    unit.compartment(Place::SandTrap).map_or(Volume::from_si(0.0), |zone| zone.volume.q)
}

/// A nominal size is what a unit was tested at: its rating stands for it where a report is named.
fn nominal(train: &Train, e: &Enquiry, size: f64) -> Own {
    let tested = e.european.as_ref().is_some_and(|block| block.type_test.0.is_some());
    let rated = train.unit.particulars.rated.as_ref().map(|(flow, _)| flow.q * train.count.q);
    match rated {
        Some(rated) if rated.si() < size * (1.0 - 1e-9) => Own::Has(rated.si(), false),
        Some(rated) if tested => Own::Has(rated.si(), true),
        _ => Own::Unknown("a nominal size is shown by a type test alone, and no report with its size is known"),
    }
}
