//! The train: the stages the water passes, with the separator as geometry.

pub mod around;
pub mod assumed;
pub mod containment;
pub mod custom;
pub mod demand;
pub mod equalisation;
mod laid_out;
pub mod particulars;
pub(crate) mod polisher;
pub mod row;
pub mod stages;
pub mod unit;

pub use laid_out::unit_of;

use crate::basis::Basis;
use crate::basis::cases::Case;
use crate::basis::fluids::Season;
use crate::enquiry::Enquiry;
use crate::enquiry::range::{Model, Range};
use crate::provenance::{Stop, Trail, Val, WhatIf, given};
use crate::{by, reckon, say};
use equalisation::Equalisation;
use stillrise_handbook::page::Arg;
use stillrise_handbook::separation::remaining_oil::RiseLaw;
use stillrise_handbook::separation::{drag_rise, stokes_rise};
use stillrise_units::catalog::ONE;
use stillrise_units::{Density, Flow, Length, Ratio, Typed, Velocity, ratio};
use unit::Unit;

/// Where a unit comes from.
#[derive(Debug, Clone)]
pub enum Source<'a> {
    /// A row of a range.
    Row(&'a Range, &'a Model),
    /// Dimensions in the enquiry.
    Stated(&'a Model),
    /// Made to measure.
    Custom(Made),
}

/// How a unit made to measure differs from the first that its basis asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Made {
    /// By what the pack's area is multiplied.
    pub stretch: f64,
    /// Water above the pack beyond what alarm and spill ask for: room for the head that the largest flow adds.
    pub deeper: Length,
}

impl Made {
    /// The first that the basis asks for.
    #[must_use]
    pub fn first() -> Self {
        Self { stretch: 1.0, deeper: Length::from_si(0.0) }
    }
}

/// What a stage is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StageKind {
    /// Holds oil, rain and fire water back ahead of everything.
    Containment,
    /// Keeps leaves and rags out.
    Screen,
    /// Takes out grit.
    GritTrap,
    /// Holds back a peak.
    Equalisation,
    /// Lifts the water.
    Pump,
    /// Shares the flow between units in parallel.
    Splitter,
    /// Separates.
    Separator,
    /// Shuts the outlet before oil reaches it.
    Closure,
    /// Takes what gravity leaves.
    Polisher,
    /// Where samples are taken.
    SamplePoint,
}

/// One stage of the train.
#[derive(Debug, Clone)]
pub struct Stage {
    /// What for.
    pub kind: StageKind,
    /// Its name.
    pub name: String,
    /// Why it is there, or is asked for.
    pub why: String,
    /// Whether it is somebody else's scope until decided.
    pub asked_for: bool,
    /// Its first size: label, value, print units.
    pub size: Option<(String, Arg, crate::provenance::Pair)>,
}

impl Stage {
    /// Without a size.
    fn new(kind: StageKind, name: &str, why: String, asked_for: bool) -> Self {
        Self { kind, name: name.to_owned(), why, asked_for, size: None }
    }
}

/// Where a unit comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum UnitOrigin {
    /// A row of a range.
    Row {
        /// Title of the range.
        range: String,
        /// Name of the model.
        model: String,
    },
    /// Stated in the enquiry.
    Stated {
        /// Whether some of its dimensions are assumed.
        assumed: bool,
    },
    /// Made to measure.
    Made,
}

impl core::fmt::Display for UnitOrigin {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            UnitOrigin::Row { range, model } => write!(f, "range \"{range}\", model \"{model}\""),
            UnitOrigin::Stated { assumed: false } => f.write_str("dimensions stated in the enquiry"),
            UnitOrigin::Stated { assumed: true } => {
                f.write_str("some dimensions stated in the enquiry, the others assumed")
            }
            UnitOrigin::Made => f.write_str("made to measure"),
        }
    }
}

/// The treatment train.
#[derive(Debug, Clone)]
pub struct Train {
    /// One separator; all in parallel are alike.
    pub unit: Unit,
    /// How many in parallel.
    pub count: Val<Ratio>,
    /// How much more than its share one of several gets.
    pub imbalance: Option<Val<Ratio>>,
    /// How many stand by beside these, and do not count.
    pub standby: Option<Val<Ratio>>,
    /// Where it comes from.
    pub origin: UnitOrigin,
    /// What has to be held back ahead of the unit, where more arrives than pump or flow cap passes.
    pub equalisation: Option<Equalisation>,
    /// The screen ahead.
    pub screen: Option<stages::screen::Screen>,
    /// What was found of what stands around it.
    pub around: around::Around,
    /// Stages in the direction of flow.
    pub stages: Vec<Stage>,
    /// Grain from which on a grit trap ahead holds the solids; `None` where none is laid out by its grain.
    pub trapped: Option<Val<Length>>,
}

impl Train {
    /// How many are bought: those that run and those that stand by.
    #[must_use]
    pub fn bought(&self) -> f64 {
        self.count.q.si() + self.standby.map_or(0.0, |spare| spare.q.si())
    }
    /// Flow through the unit that gets most, in a case.
    pub fn share<T: Trail>(&self, t: &mut T, case: &Case) -> Val<Flow> {
        match self.imbalance {
            Some(uneven) => {
                reckon!(t, "flow through the unit that gets most", [GPM, M3_H], (feed = case.feed, n = self.count, uneven = uneven) feed / n * (ratio(1.0) + uneven))
            }
            None => reckon!(t, "flow through one unit", [GPM, M3_H], (feed = case.feed, n = self.count) feed / n),
        }
    }
}

/// Rise of the design droplet of the heaviest oil in the coldest water.
///
/// # Errors
/// [`Stop`] when the law has no answer.
pub fn design_rise<T: Trail>(t: &mut T, basis: &Basis) -> Result<Val<Velocity>, Stop> {
    let water = basis.fluids.water(Season::Cold);
    let oil = basis.fluids.heaviest(Season::Cold).cold;
    rise(t, "rise of the design droplet, cold", basis, basis.methods.droplet, water.density, oil, water.viscosity)
}

/// Rise of a droplet by the chosen law.
///
/// # Errors
/// [`Stop`] when the law has no answer.
pub fn rise<T: Trail>(
    t: &mut T,
    label: &str,
    basis: &Basis,
    d: Val<Length>,
    rho_w: Val<Density>,
    rho_o: Val<Density>,
    mu: Val<stillrise_units::Viscosity>,
) -> Result<Val<Velocity>, Stop> {
    match basis.methods.rise.q {
        RiseLaw::Stokes => by!(t, label, stokes_rise::rise(d, rho_w, rho_o, mu)),
        RiseLaw::Drag => by!(t, label, drag_rise::rise(d, rho_w, rho_o, mu)),
    }
}

/// Builds the train around a stated unit.
///
/// # Errors
/// [`Stop`] when the unit cannot be laid out.
pub fn train<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    basis: &Basis,
    source: &Source<'_>,
    count: u32,
) -> Result<Train, Stop> {
    t.section("train");
    let n = given(t, "units in parallel", Some((&ONE, &ONE)), ratio(f64::from(count)), "unit", &say!(T, "{count}"));
    let (unit, origin) = laid_out::laid_out(t, w, e, basis, source, n)?;
    let imbalance = (count > 1).then(|| {
        crate::basis::stated::stated_or_usual(t, w, e.unit.split(), "unequal split between units in parallel")
    });
    let equalisation = equalisation::equalisation(t, w, e, basis)?;
    let standby = e.unit.standby.0.map(|spare| {
        let source = e.unit.standby().source();
        given(t, "units that stand by", Some((&ONE, &ONE)), ratio(f64::from(spare)), &source, &say!(T, "{spare}"))
    });
    let screen = stages::screen::screen(t, w, e, basis, &unit)?;
    let mut train = Train {
        unit,
        count: n,
        imbalance,
        standby,
        origin,
        equalisation,
        screen,
        around: around::Around::default(),
        stages: Vec::new(),
        trapped: None,
    };
    (train.stages, train.trapped) = stages::stages(t, basis, &train)?;
    Ok(train)
}
