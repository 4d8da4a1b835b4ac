//! The basis: what the unit is designed for.

pub mod arrivals;
pub mod canopy;
pub mod cases;
pub mod chemicals;
pub mod containment;
pub mod contents;
pub mod droplets;
pub mod dumps;
pub mod european;
pub mod evidence;
pub mod feed;
pub mod fluids;
pub mod influent;
pub mod lift;
pub mod limits;
pub mod methods;
pub mod passing;
pub mod peaks;
pub mod pump_shear;
pub mod rain_kept_out;
pub mod scatter;
pub mod shear;
pub mod solids;
pub mod stated;
pub mod storm;
pub mod waters;
pub mod ways;

use crate::enquiry::Enquiry;
use crate::provenance::{Part, Stop, Trail, Val, WhatIf};
pub use methods::Methods;
use std::borrow::Cow;
use std::sync::Arc;
use stillrise_units::catalog::{GPM, M3_H, MIN};
use stillrise_units::{Flow, Ratio, Time, Typed, Volume};

/// The spill that must stay in.
#[derive(Debug, Clone)]
pub struct SpillState {
    /// Its volume.
    pub volume: Val<Volume>,
    /// Whether somebody told it; else it follows from the rate, and is asked for.
    pub is_told: bool,
    /// Which of the oils it is, by place; nothing where nobody said.
    pub oil: Option<usize>,
    /// Its rate.
    pub rate: Option<Val<Flow>>,
    /// What of it passes the containments ahead, where there are some for it.
    pub passes: Option<Val<Volume>>,
}

impl SpillState {
    /// What of it reaches the separator.
    #[must_use]
    pub fn at_unit(&self) -> Val<Volume> {
        self.passes.unwrap_or(self.volume)
    }
    /// Whether containments ahead hold all of it.
    #[must_use]
    pub fn is_held_ahead(&self) -> bool {
        self.passes.is_some_and(|v| v.q.si() <= 0.0)
    }
}

/// What the unit is designed for.
#[derive(Debug, Clone)]
pub struct Basis {
    /// Water and oils by season.
    pub fluids: fluids::Fluids,
    /// The design storm, if rain falls on the unit's surfaces.
    pub storm: Option<storm::Storm>,
    /// Chemicals, and the waters they go into.
    pub dosed: Vec<chemicals::Dosed>,
    /// All waters.
    pub waters: Vec<waters::Water>,
    /// How the water is fed.
    pub feed: feed::FeedState,
    /// The cases.
    pub cases: Vec<cases::Case>,
    /// Droplets by case.
    pub arrivals: Vec<arrivals::Arrival>,
    /// Droplets at the unit: the finest that any case brings.
    pub droplets: droplets::Droplets,
    /// What pumps, valves and pipes on the way do to these.
    pub shear: Option<shear::Shear>,
    /// Solids.
    pub solids: solids::Solids,
    /// Oil that clings to them, as a share of the mass of both, where it is stated.
    pub oil_on_solids: Option<Val<Ratio>>,
    /// Spill to hold.
    pub spill: Option<SpillState>,
    /// Whether a closure shuts the outlet when oil comes near it; nothing where nobody said.
    pub closure: Option<bool>,
    /// What holds oil and water back ahead of the separator.
    pub containment: Option<containment::Containments>,
    /// What laboratory results say.
    pub evidence: Arc<Vec<evidence::SampleSet>>,
    /// Limits.
    pub limits: Vec<limits::LimitState>,
    /// Limits on pH.
    pub ph_limits: Vec<limits::PhLimit>,
    /// Methods.
    pub methods: Methods,
    /// The design flow somebody stated.
    pub stated: Option<Val<Flow>>,
    /// What the European standard would ask for, where somebody asks by it.
    pub european: Option<european::European>,
    /// The methods that an authority asks for, each worked.
    pub regulation: Vec<crate::regulation::Worksheet>,
}

impl Basis {
    /// The largest flow to the units.
    #[must_use]
    pub fn design_flow(&self) -> Option<Val<Flow>> {
        cases::largest(&self.cases).map(|c| c.feed)
    }
    /// The case with the largest flow of those with a steady content.
    #[must_use]
    pub fn largest_steady(&self) -> Option<&cases::Case> {
        self.largest_steady_place().map(|k| &self.cases[k])
    }
    /// Its place.
    #[must_use]
    pub fn largest_steady_place(&self) -> Option<usize> {
        let mut best: Option<usize> = None;
        for (k, case) in self.cases.iter().enumerate().filter(|(_, c)| c.content.is_some()) {
            if best.is_none_or(|b| case.feed.q.si() > self.cases[b].feed.q.si()) {
                best = Some(k);
            }
        }
        best
    }
}

/// Builds the basis of an enquiry.
///
/// # Errors
/// [`Stop`] when a formula of the main path has no answer.
pub fn basis<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Result<Basis, Stop> {
    let ready = Ready::new(t, e);
    basis_on(t, w, &ready)
}

/// What no answer changes: laboratory evidence, and the enquiry with what it claims of the waters.
pub struct Ready<'a> {
    enquiry: Cow<'a, Enquiry>,
    evidence: Arc<Vec<evidence::SampleSet>>,
}

impl<'a> Ready<'a> {
    /// Of an enquiry.
    pub fn new<T: Trail>(t: &mut T, e: &'a Enquiry) -> Self {
        let worked = rain_kept_out::worked(e);
        let evidence = evidence::evidence(t, &worked);
        let enquiry = match worked {
            Cow::Borrowed(e) => influent::claimed(e, &evidence),
            Cow::Owned(e) => Cow::Owned(influent::claimed(&e, &evidence).into_owned()),
        };
        Self { enquiry, evidence: Arc::new(evidence) }
    }
}

/// Builds the basis on what no answer changes.
///
/// # Errors
/// [`Stop`] when a formula of the main path has no answer.
pub fn basis_on<T: Trail>(t: &mut T, w: &WhatIf, ready: &Ready<'_>) -> Result<Basis, Stop> {
    let (e, evidence) = (ready.enquiry.as_ref(), &ready.evidence);
    let methods = methods::methods(t, w, e);
    let Came { fluids, storm, dosed, waters, feed, spill, containment, mut cases } = came(t, w, e)?;
    let arrivals = arrivals::arrivals(t, w, e, &fluids, &dosed, &feed, &mut cases)?;
    let finest = arrivals.iter().min_by(|a, b| a.droplets.d50.q.si().total_cmp(&b.droplets.d50.q.si()));
    let nothing = || Stop::said("droplets", "no water brings any");
    let (droplets, shear) = finest.map(|way| (way.droplets.clone(), way.shear.clone())).ok_or_else(nothing)?;
    let (solids, oil_on_solids) = solids::solids(t, w, e, &fluids)?;
    let limits = limits::limits(t, w, e, evidence)?;
    let ph_limits = limits::ph_limits(t, e);
    t.part(Part::Peak, "peak of the influent");
    peaks::peaks(t, w, e, evidence, &waters, &mut cases)?;
    t.section("stated flow");
    let stated = stated::stated(t, w, "design flow somebody stated", &e.stated.flow);
    let compared = european::Compared {
        fluids: &fluids,
        storm: storm.as_ref(),
        waters: &waters,
        feed: &feed,
        containment: containment.as_ref(),
        cases: &cases,
    };
    let european = european::european(t, w, e, &compared);
    let mut basis = Basis {
        fluids,
        storm,
        dosed,
        waters,
        feed,
        cases,
        arrivals,
        droplets,
        shear,
        solids,
        oil_on_solids,
        spill,
        closure: e.spill.as_ref().and_then(|block| block.closure.0),
        evidence: Arc::clone(evidence),
        containment,
        limits,
        ph_limits,
        methods,
        stated,
        european,
        regulation: Vec::new(),
    };
    basis.regulation = crate::regulation::regulation(t, w, e, &basis);
    Ok(basis)
}

/// What comes, before anything is said of droplets and solids.
struct Came {
    fluids: fluids::Fluids,
    storm: Option<storm::Storm>,
    dosed: Vec<chemicals::Dosed>,
    waters: Vec<waters::Water>,
    feed: feed::FeedState,
    spill: Option<SpillState>,
    containment: Option<containment::Containments>,
    cases: Vec<cases::Case>,
}

fn came<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Result<Came, Stop> {
    let fluids = fluids::fluids(t, w, e)?;
    let storm = storm::storm(t, w, e)?;
    let dosed = chemicals::chemicals(t, w, e);
    let (waters, year) = waters::waters(t, w, e, &fluids, &dosed, storm.as_ref())?;
    let feed = feed::feed(t, w, e, fluids.cold.kinematic);
    let mut spill = spill(t, w, e, &fluids);
    let mut containment = containment::containments(t, w, e, &fluids, storm.as_ref(), spill.as_ref())?;
    if let Some(ahead) = &mut containment {
        containment::year::drained(t, w, e, (&fluids, &dosed), year, ahead)?;
    }
    if let Some(spill) = &mut spill {
        spill.passes = containment::passes::arrives(t, containment.as_ref(), spill.volume);
    }
    let ahead = (spill.as_ref(), containment.as_ref());
    let cases = cases::cases(t, w, e, &fluids, &dosed, &waters, &feed, ahead)?;
    Ok(Came { fluids, storm, dosed, waters, feed, spill, containment, cases })
}

/// Minutes for which oil runs before somebody stops it: at least, as taken, at most.
const RUNS: [f64; 3] = [1.0, 5.0, 30.0];

/// The spill: of one whose rate alone was told, what comes until somebody stops it stands by.
fn spill<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, fluids: &fluids::Fluids) -> Option<SpillState> {
    let block = e.spill.as_ref()?;
    let oil = block.oil.as_deref().and_then(|name| fluids.named(name));
    t.section("spill");
    let label = "spill to hold";
    let Some(rate) = stated::stated(t, w, "rate of the spill", &block.rate) else {
        let volume = stated::stated(t, w, label, &block.volume)?;
        return Some(SpillState { volume, is_told: true, oil, rate: None, passes: None });
    };
    let [low, value, high] = RUNS.map(|minutes| rate.q * Time::of(minutes, &MIN));
    let volume = stated::stated_or(t, w, block.volume(), label, || {
        let why = "engineering judgement: five minutes at its rate until somebody stops it, one to thirty";
        stated::stand_in((low, value, high), why)
    });
    // An answer that is tried counts as told.
    let is_told = block.volume.is_given() || stated::is_tried(w, &block.volume());
    Some(SpillState { volume, is_told, oil, rate: Some(rate), passes: None })
}

/// Volume on an average day over all waters, and over what is drained from containments, for the days to fill.
pub fn average_day<T: Trail>(t: &mut T, basis: &Basis) -> Option<Val<Volume>> {
    let mut sum: Option<Val<Volume>> = None;
    let drained =
        basis.containment.iter().flat_map(|ahead| &ahead.all).filter_map(|c| Some(c.drained.as_ref()?.per_day));
    for per_day in basis.waters.iter().map(|water| water.per_day).chain(drained) {
        sum = Some(match sum {
            None => per_day,
            Some(sum) => {
                crate::reckon!(t, "water on an average day", [GAL, M3], (sum = sum, next = per_day) sum + next)
            }
        });
    }
    sum
}

/// Units of a flow in print.
pub const FLOW_UNITS: crate::provenance::Pair = (&GPM, &M3_H);
