//! The train: the stages the water passes, with the separator as geometry.

pub mod assumed;
pub mod containment;
pub mod custom;
pub mod equalisation;
mod laid_out;
pub mod particulars;
pub(crate) mod polisher;
pub mod row;
pub mod unit;

pub use laid_out::unit_of;

use crate::basis::Basis;
use crate::basis::cases::Case;
use crate::basis::fluids::Season;
use crate::enquiry::Enquiry;
use crate::enquiry::range::{Model, Range};
use crate::provenance::{Stop, Trail, Val, WhatIf, assume, given};
use crate::{by, reckon, say};
use equalisation::Equalisation;
use stillrise_handbook::page::Arg;
use stillrise_handbook::separation::remaining_oil::RiseLaw;
use stillrise_handbook::separation::{drag_rise, grit_settling, stokes_rise};
use stillrise_units::catalog::{FT2, GAL, GPM, M2, M3, M3_H, ONE, PERCENT, UM};
use stillrise_units::math::{Z_95, pow};
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

/// The treatment train.
#[derive(Debug, Clone)]
pub struct Train {
    /// One separator; all in parallel are alike.
    pub unit: Unit,
    /// How many in parallel.
    pub count: Val<Ratio>,
    /// How much more than its share one of several gets.
    pub imbalance: Option<Val<Ratio>>,
    /// Where it comes from, in words.
    pub origin: String,
    /// What has to be held back ahead of the unit, where more arrives than pump or flow cap passes.
    pub equalisation: Option<Equalisation>,
    /// Stages in the direction of flow.
    pub stages: Vec<Stage>,
    /// Grain from which on a grit trap ahead holds the solids; `None` where none is laid out by its grain.
    pub trapped: Option<Val<Length>>,
}

impl Train {
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
        assume(
            t,
            w,
            crate::basis::stated::standby(
                "unequal split between units in parallel",
                (&PERCENT, &PERCENT),
                "unit.split",
                "",
                (ratio(0.0), ratio(0.1), ratio(0.25)),
                "engineering judgement: a weir box ahead, set level",
            ),
        )
    });
    let equalisation = equalisation::equalisation(t, w, e, basis)?;
    let mut train = Train { unit, count: n, imbalance, origin, equalisation, stages: Vec::new(), trapped: None };
    (train.stages, train.trapped) = stages(t, basis, &train)?;
    Ok(train)
}

/// Whether less than a twentieth of the solids, by the law that is taken for their sizes, is as coarse as what a grit trap
/// holds; sieved ones are not looked at.
fn is_fine(basis: &Basis) -> bool {
    let s = &basis.solids;
    let coarse = s.d50.q * pow(s.spread.q.si(), Z_95);
    s.table.q.0.is_empty() && coarse < Length::of(TRAPPED, &UM)
}

/// The grain that a grit trap is laid out for, µm: MIL-HDBK-1005/9A, 1997.
const TRAPPED: f64 = 200.0;

fn stages<T: Trail>(t: &mut T, basis: &Basis, train: &Train) -> Result<(Vec<Stage>, Option<Val<Length>>), Stop> {
    t.section("stages");
    let mut stages = Vec::new();
    let mut trapped = None;
    let stage =
        |kind, name: &str, why: String, asked_for| Stage { kind, name: name.to_owned(), why, asked_for, size: None };
    stages.extend(basis.containment.as_ref().map(containment::stage));
    let solids = basis.cases.iter().filter_map(|c| c.content.as_ref()).map(|c| c.solids.q.si()).fold(0.0, f64::max);
    // More than 300 mg/L fills a hopper within days; the figure is a judgement, the trap's size is not.
    if let Some(trap) = &train.unit.sand_trap {
        let flow = basis.largest_steady().map(|case| train.share(t, case));
        let grain = match flow {
            Some(flow) => trap.holds(t, basis, &train.unit, flow)?,
            None => None,
        };
        let why = "ahead of the inlet chamber; finer grains pass it, and no credit is taken for oil that rises in it";
        let mut own = stage(StageKind::GritTrap, "sand compartment of the unit", why.to_owned(), false);
        own.size = grain.map(|grain| ("holds grains from".to_owned(), Arg::Number(grain.q.si()), (&UM, &UM) as _));
        trapped = grain;
        stages.push(own);
    } else if solids > 0.3 {
        let mut grit = stage(
            StageKind::GritTrap,
            "grit trap",
            "solids above 300 mg/L would fill the hopper within days and bury the pack; the first size holds grains of 200 µm and larger, and finer solids pass it".to_owned(),
            true,
        );
        // What is no heavier than the water no trap holds.
        let settles = basis.solids.density.q > basis.fluids.cold.density.q;
        // Where a standard asks for a trap of its own volume, that is the trap.
        let standard = basis.european.as_ref().and_then(|found| found.sizes.as_ref().ok()?.sludge_trap);
        if let Some(volume) = standard {
            grit.why =
                "solids above 300 mg/L would fill the hopper within days and bury the pack; silt and clay pass it"
                    .to_owned();
            grit.size = Some(("volume by EN 858-2".to_owned(), Arg::Number(volume.q.si()), (&GAL, &M3)));
        }
        // Where hardly a grain is as coarse, a trap for such grains is of no use.
        let fine = is_fine(basis) && standard.is_none();
        if fine {
            grit.name = "settling basin for silt".to_owned();
            grit.why = "solids above 300 mg/L would fill the hopper within days and bury the pack; less than a twentieth of the grains taken here is 200 µm or larger, so that a grit trap holds hardly any of them, and a basin is to be laid out for the finer ones".to_owned();
        }
        let settles = settles && standard.is_none() && !fine;
        // It stands first and takes what arrives, before any of it is held back.
        let arrives = basis.cases.iter().filter(|case| case.content.is_some()).map(|case| case.inflow);
        let arrives = arrives.reduce(|a, b| if b.q > a.q { b } else { a });
        if let Some(arrives) = arrives.filter(|_| settles) {
            let d = given(
                t,
                "grain a grit trap must hold",
                Some((&UM, &UM)),
                Length::of(TRAPPED, &UM),
                "MIL-HDBK-1005/9A, 1997",
                "grit above 200 µm is removed ahead",
            );
            trapped = Some(d);
            let water = basis.fluids.water(Season::Cold);
            let v = by!(
                t,
                "settling of that grain",
                grit_settling::settling(d, basis.solids.density, water.density, water.kinematic, basis.methods.grains)
            )?;
            let area = reckon!(t, "surface of the grit trap", [FT2, M2], (flow = arrives, v = v) flow / v);
            grit.size = Some((
                "surface for grains from 200 µm on, first size".to_owned(),
                Arg::Number(area.q.si()),
                (&FT2, &M2),
            ));
        }
        stages.push(grit);
    }
    if let Some(equalisation) = &train.equalisation {
        let mut hold = stage(
            StageKind::Equalisation,
            "equalisation",
            format!("{}: more arrives than pump or flow cap passes", basis.cases[equalisation.case].event),
            true,
        );
        let volume = equalisation.volume();
        hold.size = Some(("volume, first size".to_owned(), Arg::Number(volume.q.si()), (&GAL, &M3)));
        stages.push(hold);
    }
    if basis.feed.pumped {
        stages.push(stage(
            StageKind::Pump,
            "sump and feed pump",
            basis.feed.class.map_or_else(|| "kind of pump not said".to_owned(), |c| c.meaning.to_owned()),
            false,
        ));
    }
    let n = train.count.q.si();
    if n > 1.0 {
        stages.push(stage(
            StageKind::Splitter,
            "splitter",
            "shares the flow between the units, each with an outlet pipe of its own".to_owned(),
            true,
        ));
    }
    let name = if n > 1.0 {
        format!("{n} separators in parallel, {}", train.unit.particulars.model)
    } else {
        format!("separator, {}", train.unit.particulars.model)
    };
    stages.push(stage(StageKind::Separator, &name, train.origin.clone(), false));
    if let Some(pumps) = &train.unit.pump_out {
        let mut own = stage(
            StageKind::Pump,
            "effluent pumps in the unit",
            "lift the clean water to the outfall; what stands behind them gets their flow while they run, and they shear what oil is left".to_owned(),
            false,
        );
        own.size = Some(("flow of one".to_owned(), Arg::Number(pumps.pump.q.si()), (&GPM, &M3_H)));
        stages.push(own);
    }
    if basis.closure == Some(true) {
        stages.push(stage(
            StageKind::Closure,
            "outlet closure",
            "has to shut before a spill reaches the outlet; what trips it, and where the water goes that still arrives, is to be settled".to_owned(),
            false,
        ));
    }
    stages.extend(polisher::stage(basis));
    stages.push(stage(StageKind::SamplePoint, "sample point", "grab samples in the falling stream".to_owned(), false));
    Ok((stages, trapped))
}
