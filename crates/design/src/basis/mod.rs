//! The basis: what the unit is designed for.

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
pub mod limits;
pub mod pump_shear;
pub mod shear;
pub mod solids;
pub mod stated;
pub mod storm;
pub mod waters;
pub mod ways;

use crate::enquiry::Enquiry;
use crate::enquiry::blocks::Statistic;
use crate::provenance::{Stop, Trail, Val, WhatIf, given};
use stated::{standby, stated_or};
use stillrise_handbook::page::Argument;
use stillrise_handbook::separation::api_factor::FactorRounding;
use stillrise_handbook::separation::gap_reynolds::ReynoldsBasis;
use stillrise_handbook::separation::grit_settling::GrainShape;
use stillrise_handbook::separation::remaining_oil::RiseLaw;
use stillrise_handbook::separation::tank_removal::TankModel;
use stillrise_handbook::vessel::triggers::{Trigger, trigger};
use stillrise_units::catalog::{GPM, M3_H, ONE, PERCENT, UM};
use stillrise_units::{Flow, Length, Ratio, Typed, Volume, ratio};

/// Methods and margins, chosen or by default.
#[derive(Debug, Clone)]
pub struct Methods {
    /// Law of rise.
    pub rise: Val<RiseLaw>,
    /// Separation in the tank ahead of the plates.
    pub tank: Val<TankModel>,
    /// Index of that model: tanks in series, or dispersion number.
    pub tank_index: Val<Ratio>,
    /// Whether the mesh counts in the headline.
    pub mesh_credit: Val<waters::YesNo>,
    /// Share of the droplets that touch a fibre of the mesh and stay.
    pub mesh_sticking: Val<Ratio>,
    /// Share of the mesh's voids that oil fills.
    pub mesh_saturation: Val<Ratio>,
    /// Rounding of the API factor.
    pub factor: Val<FactorRounding>,
    /// Basis of the gap Reynolds number.
    pub reynolds: Val<ReynoldsBasis>,
    /// Shape of grit.
    pub grains: Val<GrainShape>,
    /// Droplet for which plates are sized.
    pub droplet: Val<Length>,
    /// Unequal flow between the gaps.
    pub maldistribution: Val<Ratio>,
    /// Plate area lost at the end of the interval.
    pub fouling: Val<Ratio>,
    /// Reserve of plate area asked of a picked unit.
    pub reserve: Val<Ratio>,
    /// Share of the thickest permitted layer at which the alarm stands, if it was stated.
    pub alarm: Option<Val<Ratio>>,
    /// Rule for pumping out, if one was chosen.
    pub trigger: Option<&'static Trigger>,
}

/// The spill that must stay in.
#[derive(Debug, Clone)]
pub struct SpillState {
    /// Its volume.
    pub volume: Val<Volume>,
    /// Its rate.
    pub rate: Option<Val<Flow>>,
    /// Whether a closure shuts the outlet.
    pub closure: bool,
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
    pub arrivals: Vec<ways::Arrival>,
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
    /// What holds oil and water back ahead of the separator.
    pub containment: Option<containment::Containments>,
    /// What laboratory results say.
    pub evidence: Vec<evidence::SampleSet>,
    /// Limits.
    pub limits: Vec<limits::LimitState>,
    /// Limits on pH.
    pub ph_limits: Vec<limits::PhLimit>,
    /// Methods.
    pub methods: Methods,
    /// Highest over mean oil content of the influent: of a day.
    pub peak: Val<Ratio>,
    /// The same of a single sample; another where baths are dumped.
    pub sample_peak: Val<Ratio>,
    /// The design flow somebody stated.
    pub stated: Option<Val<Flow>>,
    /// What the European standard would ask for, where somebody asks by it.
    pub european: Option<european::European>,
}

impl Basis {
    /// How far the influent rises above its mean in what a limit speaks of.
    #[must_use]
    pub fn peak_for(&self, limit: &limits::LimitState) -> Val<Ratio> {
        if limit.statistic.q == Statistic::DailyMaximum { self.peak } else { self.sample_peak }
    }
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
    let evidence = evidence::evidence(t, e);
    let e = influent::claimed(e, &evidence);
    let e = e.as_ref();
    let methods = methods(t, w, e);
    let fluids = fluids::fluids(t, w, e)?;
    let storm = storm::storm(t, w, e)?;
    let dosed = chemicals::chemicals(t, w, e);
    let waters = waters::waters(t, w, e, &fluids, &dosed, storm.as_ref())?;
    let feed = feed::feed(t, w, e);
    let mut spill = spill(t, w, e);
    let containment = containment::containments(t, w, e, &fluids, storm.as_ref(), spill.as_ref())?;
    if let Some(spill) = &mut spill {
        spill.passes = containment::balance::arrives(t, containment.as_ref(), spill.volume);
    }
    let ahead = (spill.as_ref(), containment.as_ref());
    let mut cases = cases::cases(t, w, e, &fluids, &dosed, &waters, &feed, ahead)?;
    let arrivals = ways::arrivals(t, w, e, &fluids, &dosed, &feed, &mut cases)?;
    let finest = arrivals.iter().min_by(|a, b| a.droplets.d50.q.si().total_cmp(&b.droplets.d50.q.si()));
    let nothing = || Stop::said("droplets", "no water brings any");
    let ways::Arrival { droplets, shear, .. } = finest.cloned().ok_or_else(nothing)?;
    let (solids, oil_on_solids) = solids::solids(t, w, e, &fluids)?;
    let limits = limits::limits(t, w, e, &evidence)?;
    let ph_limits = limits::ph_limits(t, e);
    t.section("peak of the influent");
    let (peak, sample_peak) = dumps::peaks(t, w, e, &waters)?;
    t.section("stated flow");
    let stated = stated::stated(t, w, "design flow somebody stated", &e.stated.flow);
    let compared =
        european::Compared { fluids: &fluids, storm: storm.as_ref(), waters: &waters, feed: &feed, cases: &cases };
    let european = european::european(t, w, e, &compared);
    Ok(Basis {
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
        evidence,
        containment,
        limits,
        ph_limits,
        methods,
        peak,
        sample_peak,
        stated,
        european,
    })
}

fn spill<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Option<SpillState> {
    let block = e.spill.as_ref()?;
    t.section("spill");
    let volume = stated::stated(t, w, "spill to hold", &block.volume)?;
    let rate = stated::stated(t, w, "rate of the spill", &block.rate);
    Some(SpillState { volume, rate, closure: *block.closure == Some(true), passes: None })
}

fn method<T: Trail, C: Argument + Copy>(
    t: &mut T,
    label: &str,
    key: &str,
    stated: Option<C>,
    default: C,
    why: &str,
) -> Val<C> {
    match stated {
        Some(choice) => given(t, label, None, choice, key, "stated"),
        None => crate::provenance::choose(t, label, None, default, "the methods listed by the schema", why, &[]),
    }
}

fn methods<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Methods {
    t.section("methods");
    let m = &e.method;
    let percent = (&PERCENT, &PERCENT);
    Methods {
        rise: method(
            t,
            "law of rise",
            &m.rise.1.source("method.rise"),
            m.rise.0,
            RiseLaw::Drag,
            "holds beyond creeping flow and joins Stokes' law below",
        ),
        tank: method(
            t,
            "separation ahead of the plates",
            &m.tank.1.source("method.tank"),
            m.tank.0,
            TankModel::Mixed,
            "an inlet jet mixes the depth; the cautious end of the two bounds",
        ),
        tank_index: stated_or(
            t,
            w,
            &m.tank_index,
            standby(
                "index of the tank model",
                (&ONE, &ONE),
                "method.tank_index",
                "",
                (ratio(3.0), ratio(3.0), ratio(3.0)),
                "three tanks in series, a good basin by practice; used by the models that ask for it",
            ),
        ),
        mesh_credit: method(
            t,
            "credit for the mesh",
            &m.mesh_credit.1.source("method.mesh_credit"),
            m.mesh_credit.map(|credit| if credit { waters::YesNo::Yes } else { waters::YesNo::No }),
            waters::YesNo::No,
            "its fibre and how well droplets stick are rarely stated, and move its catch several times over",
        ),
        mesh_sticking: stated_or(
            t,
            w,
            &m.mesh_sticking,
            standby(
                "droplets that touch a fibre and stay",
                percent,
                "method.mesh_sticking",
                "",
                (ratio(0.1), ratio(0.5), ratio(1.0)),
                "engineering judgement; a value of 1 is the ideal fibre, detergents keep droplets from sticking",
            ),
        ),
        mesh_saturation: stated_or(
            t,
            w,
            &m.mesh_saturation,
            standby(
                "share of the mesh's voids that oil fills",
                percent,
                "method.mesh_saturation",
                "",
                (ratio(0.05), ratio(0.15), ratio(0.3)),
                "published tests on felt found 10 to 15 % of oil to work best",
            ),
        ),
        factor: method(
            t,
            "rounding of the API factor",
            &m.factor.1.source("method.factor"),
            m.factor.0,
            FactorRounding::ALL[0],
            "the product, unrounded",
        ),
        reynolds: method(
            t,
            "basis of the gap Reynolds number",
            &m.reynolds.1.source("method.reynolds"),
            m.reynolds.0,
            ReynoldsBasis::ALL[0],
            "four times the hydraulic radius, the stricter reading of a limit of 500",
        ),
        grains: method(
            t,
            "shape of grit",
            &m.grains.1.source("method.grains"),
            m.grains.0,
            GrainShape::Natural,
            "natural grains by sieve size",
        ),
        droplet: stated_or(
            t,
            w,
            &m.droplet,
            standby(
                "droplet for which the plates are sized",
                (&UM, &UM),
                "method.droplet",
                "",
                (Length::of(20.0, &UM), Length::of(60.0, &UM), Length::of(150.0, &UM)),
                "60 µm is usual for plates (MIL-HDBK-1005/16, 1997); 20 µm in US guide specifications, 150 µm for API basins",
            ),
        ),
        maldistribution: stated_or(
            t,
            w,
            &m.maldistribution,
            standby(
                "unequal flow between the gaps",
                percent,
                "method.maldistribution",
                "",
                (ratio(0.1), ratio(0.2), ratio(0.4)),
                "engineering judgement: halves of the pack at ±20 % of the mean",
            ),
        ),
        fouling: stated_or(
            t,
            w,
            &m.fouling,
            standby(
                "plate area lost at the end of the interval",
                percent,
                "method.fouling",
                "",
                (ratio(0.1), ratio(0.2), ratio(0.4)),
                "engineering judgement, of the size of the 20 % that UFGS 44 42 53 takes off the separation volume for stored oil and solids",
            ),
        ),
        reserve: stated_or(
            t,
            w,
            &m.reserve,
            standby(
                "reserve of plate area",
                percent,
                "method.reserve",
                "",
                (ratio(0.0), ratio(0.15), ratio(0.3)),
                "our proposal",
            ),
        ),
        alarm: stated::stated(t, w, "alarm, share of the thickest permitted layer", &m.alarm),
        trigger: m.trigger.as_deref().and_then(trigger),
    }
}

/// Volume on an average day over all waters, for the days to fill.
pub fn average_day<T: Trail>(t: &mut T, basis: &Basis) -> Option<Val<Volume>> {
    let mut sum: Option<Val<Volume>> = None;
    for water in &basis.waters {
        sum = Some(match sum {
            None => water.per_day,
            Some(sum) => {
                crate::reckon!(t, "water on an average day", [GAL, M3], (sum = sum, next = water.per_day) sum + next)
            }
        });
    }
    sum
}

/// Units of a flow in print.
pub const FLOW_UNITS: crate::provenance::Pair = (&GPM, &M3_H);
