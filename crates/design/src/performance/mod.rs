//! Performance: what the train will do in each case, in both seasons, clean and at the end of the
//! interval between pump-outs.

pub mod caps;
pub mod fit;
pub mod flotation;
pub mod grades;
pub mod grains;
pub mod heard;
pub mod held;
pub mod hydraulics;
pub mod installation;
mod judge;
pub mod just_met;
pub mod keeps;
pub mod ladder;
pub mod levels;
pub mod limit;
pub mod measured;
pub mod passage;
pub mod portion;
pub mod promise;
pub mod removal;
pub mod shell;
pub mod shop;
pub mod site;
pub mod smooth;
pub mod storage;
pub mod thumb;
pub mod zones;

use crate::basis::Basis;
use crate::basis::cases::{Case, Kind, Pumps};
use crate::basis::chemicals::Which;
use crate::basis::fluids::Season;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::Statistic;
use crate::provenance::{Off, Stop, Trail, Val, WhatIf, Whence, given};
use crate::stages::Place;
use crate::stages::pump_out::Runs;
use crate::train::Train;
use hydraulics::{At, Profile};
use ladder::Ladder;
use levels::OilLevels;
use limit::LimitVerdict;
use passage::Fixed;
use removal::Removal;
use site::SiteLevels;
use stillrise_units::{Flow, Typed, Velocity};
use storage::Storage;

/// The state of a unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// Just filled and clean.
    Clean,
    /// Oil at the alarm, sludge at its trigger, mesh and plates fouled.
    End,
}

impl State {
    /// Both.
    pub const ALL: [State; 2] = [State::Clean, State::End];
    /// Its name.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            State::Clean => "clean",
            State::End => "end of interval",
        }
    }
    /// Whether it is the end of the interval.
    #[must_use]
    pub fn is_end(self) -> bool {
        self == State::End
    }
}

/// How much of a performance is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Depth {
    /// What the rules need that bar a unit: the case with the largest flow, at the end of the interval.
    Screen,
    /// What the limits are held against: all cases in the cold season, clean only where it counts.
    Limits,
    /// What a study of the effluent needs: all cases in the cold season at the end of the interval, clean
    /// only for averages.
    Study,
    /// What the words on the limits need: as a study, with the mixed bound alone.
    Words,
    /// The same without bounds: as expected only.
    Expected,
    /// All of it.
    Full,
}

impl Depth {
    /// `usual`: the case that runs most, whose clean removal the storage rests on. `average`: some limit is
    /// an average over the interval, so that the clean state counts too.
    fn wants(self, largest: bool, usual: bool, average: bool, season: Season, state: State) -> bool {
        let (cold, end) = (season == Season::Cold, state.is_end());
        let needed = largest && end || usual && cold && !end;
        match self {
            Depth::Screen => needed,
            Depth::Limits => needed || cold && (end || average),
            Depth::Study | Depth::Words | Depth::Expected => cold && (end || average),
            Depth::Full => true,
        }
    }
}

/// What the train will do.
#[derive(Debug, Clone)]
pub struct Performance {
    /// How the unit stands on the site.
    pub site: SiteLevels,
    /// The room that the units need.
    pub fit: fit::Fit,
    /// Whether it floats when it is emptied; `None` where it is not known to stand in the ground.
    pub flotation: Option<flotation::Flotation>,
    /// The shell of a lying cylinder against the water outside; `None` without one, or where its thickness is not known.
    pub shell: Option<shell::Shell>,
    /// What a shop and whoever installs it would ask; for [`Depth::Full`] only, and not of a unit that stands.
    pub shop: Option<shop::Shop>,
    /// How its effluent pumps run; `None` without them.
    pub pump_out: Option<Runs>,
    /// Profiles: no flow, design flow clean, design flow at the end, largest flow at the end; but for
    /// [`Depth::Full`] only the last.
    pub profiles: Vec<Profile>,
    /// Velocities at the largest flow.
    pub velocities: hydraulics::Velocities,
    /// Levels for each oil.
    pub levels: Vec<OilLevels>,
    /// Removal by case, season and state.
    pub removals: Vec<Removal>,
    /// Rise of the design droplet, heaviest oil, coldest water.
    pub design_rise: Val<Velocity>,
    /// The ladder of prediction, around the case that is held against the limits; for [`Depth::Full`] only.
    pub ladder: Option<Ladder>,
    /// The plain API basin beside it, for comparison.
    pub basin: Option<thumb::Basin>,
    /// What the plate theory takes for granted, zone by zone; for [`Depth::Full`] only.
    pub zones: Option<zones::Zones>,
    /// What collects.
    pub storage: Storage,
    /// Solids by size, in the case that runs most; for [`Depth::Full`] only.
    pub grains: Vec<grains::GrainBand>,
    /// Verdicts on the limits.
    pub limits: Vec<LimitVerdict>,
    /// The prediction beside laboratory results of what leaves.
    pub measured: Vec<measured::Compared>,
}

impl Performance {
    /// The profile at the largest flow.
    #[must_use]
    pub fn highest(&self) -> &Profile {
        &self.profiles[self.profiles.len() - 1]
    }
    /// The removal that is held against the limits.
    #[must_use]
    pub fn worst(&self) -> Option<&Removal> {
        limit::worst(&self.removals)
    }
}

/// Finds what the train will do. `blocked` says why this is not a gravity duty, if it is not.
///
/// # Errors
/// [`Stop`] when a formula of the main path has no answer.
pub fn performance<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    e: &Enquiry,
    basis: &Basis,
    train: &Train,
    blocked: Option<&str>,
    depth: Depth,
) -> Result<Performance, Stop> {
    let unit = &train.unit;
    let site = site::site(t, w, e, unit, basis.feed.pumped)?;
    let fit = fit::fit(t, w, e, train, &site.installation);
    let flotation = flotation::flotation(t, w, e, basis, train, &site.installation)?;
    let shell = shell::shell(t, w, e, basis, unit, &site.installation)?;
    let stop = || Stop {
        doing: "performance".to_owned(),
        reason: "no case has a flow with a known content".to_owned(),
        formula: false,
    };
    let place = basis.largest_steady_place().ok_or_else(stop)?;
    let design = &basis.cases[place];
    let design_flow = train.share(t, design);
    let largest = crate::basis::cases::largest_place(&basis.cases).ok_or_else(stop)?;
    let largest_flow = if largest == place { design_flow } else { train.share(t, &basis.cases[largest]) };
    let still: Val<Flow> =
        given(t, "no flow", Some(crate::basis::FLOW_UNITS), Flow::from_si(0.0), Whence::Definition, "0");
    let mut profiles = Vec::new();
    let all = [
        (At::Rest, still),
        (At::Design(State::Clean), design_flow),
        (At::Design(State::End), design_flow),
        (At::Largest(State::End), largest_flow),
    ];
    // A unit stands or falls by the last.
    let first = if depth == Depth::Full { 0 } else { all.len() - 1 };
    for (at, flow) in all.into_iter().skip(first) {
        profiles.push(hydraulics::profile(t, w, e, basis, unit, &site, flow, at)?);
    }
    let runs = match (&unit.pump_out, unit.compartment(Place::PumpOut)) {
        (Some(pumps), Some(zone)) => {
            Some(pumps.runs(t, &unit.body, zone.stretch(), unit.outlet.crest, largest_flow, site.lifted_to)?)
        }
        _ => None,
    };
    let margins = caps::margins(t, w, e, unit);
    let highest = profiles[profiles.len() - 1].clone();
    let mut oil_levels = Vec::new();
    for oil in basis.fluids.lighter() {
        oil_levels.push(levels::oil_levels(t, basis, train, &margins, &highest, oil)?);
    }
    levels::trips(t, basis, unit, &highest, &mut oil_levels)?;
    let velocities = hydraulics::velocities(t, unit, &site, largest_flow)?;
    let usual = usual(basis).ok_or_else(stop)?;
    let design_rise = crate::train::design_rise(t, basis)?;
    let fixed = Fixed::new(t);
    let removals = removals(t, basis, train, &fixed, depth)?;
    let clean = |r: &&Removal| r.case_index == usual && r.season == Season::Cold && r.state == State::Clean;
    let usual = removals.iter().find(clean).ok_or_else(stop)?.clone();
    let all: Val<Flow> = design.feed;
    let basin = if depth == Depth::Full { thumb::basin(t, basis, all).ok() } else { None };
    let storage = storage::storage(t, basis, train, &oil_levels, &fixed, (&usual, &removals))?;
    let grains = if depth == Depth::Full { grains::bands(t, basis, &fixed, &usual, &storage)? } else { Vec::new() };
    let limits = limit::verdicts(t, basis, &removals, blocked);
    let zones = match limit::worst(&removals) {
        Some(worst) if depth == Depth::Full => {
            Some(zones::zones(t, basis, &train.unit, &velocities, &oil_levels, worst, largest_flow)?)
        }
        _ => None,
    };
    let ladder = match limit::worst(&removals).cloned() {
        Some(worst) if depth == Depth::Full => {
            Some(ladder::ladder(t, basis, train, &fixed, (&worst, &basis.cases[worst.case_index]), &limits)?)
        }
        _ => None,
    };
    let measured = measured::compared(t, &basis.evidence, limit::worst(&removals));
    let found = shop::Found { installation: &site.installation, storage: &storage, largest: largest_flow };
    // A unit that stands is shipped and lifted no more.
    let shop = (depth == Depth::Full && !e.unit_stands()).then(|| shop::shop(t, w, e, basis, train, &found));
    Ok(Performance {
        site,
        fit,
        flotation,
        shell,
        shop,
        pump_out: runs,
        profiles,
        velocities,
        levels: oil_levels,
        removals,
        design_rise,
        basin,
        ladder,
        zones,
        storage,
        grains,
        limits,
        measured,
    })
}

/// Takes a performance found to [`Depth::Screen`] on to [`Depth::Limits`], nothing recorded: what leaves in the other
/// cases, and the verdicts. All else is the same at both.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn deepen(basis: &Basis, train: &Train, blocked: Option<&str>, screened: &mut Performance) -> Result<(), Stop> {
    let off = &mut Off;
    let fixed = Fixed::new(off);
    screened.removals = removals(off, basis, train, &fixed, Depth::Limits)?;
    screened.limits = limit::verdicts(off, basis, &screened.removals, blocked);
    screened.measured = measured::compared(off, &basis.evidence, limit::worst(&screened.removals));
    Ok(())
}

/// The case that runs most: the dry one if there is one, for it runs every day, the storm does not.
fn usual(basis: &Basis) -> Option<usize> {
    let steady = |c: &Case| c.content.is_some();
    let usual = |c: &Case| is_usual(basis, c);
    let dry = basis.cases.iter().position(|c| steady(c) && c.kind == Kind::Dry && usual(c));
    dry.or_else(|| basis.cases.iter().position(|c| steady(c) && usual(c)))
        .or_else(|| basis.cases.iter().position(steady))
}

/// Whether the pumps run in a case as they mostly do: the lead pump alone lifts what it can lift.
fn is_usual(basis: &Basis, case: &Case) -> bool {
    let lead = basis.feed.one_pump.is_some_and(|one| case.inflow.q <= one.q);
    case.pumps.is_none_or(|pumps| (pumps == Pumps::Lead) == lead)
}

/// The removal in cold water at the end of the interval in which a water comes, alone where it comes alone.
fn of_water<'a>(basis: &Basis, removals: &'a [Removal], water: Which) -> Option<&'a Removal> {
    let comes = |r: &&Removal| {
        let case = &basis.cases[r.case_index];
        let holds = case.which.contains(&water) && case.bath.is_none() && is_usual(basis, case);
        r.season == Season::Cold && r.state == State::End && holds
    };
    removals.iter().filter(comes).min_by_key(|r| basis.cases[r.case_index].which.len())
}

/// What leaves, by case, season and state, as far as the depth asks for it.
///
/// # Errors
/// [`Stop`] when a formula has no answer, or no case has a known content.
pub fn removals<T: Trail>(
    t: &mut T,
    basis: &Basis,
    train: &Train,
    fixed: &Fixed,
    depth: Depth,
) -> Result<Vec<Removal>, Stop> {
    let stop = || Stop {
        doing: "performance".to_owned(),
        reason: "no case has a flow with a known content".to_owned(),
        formula: false,
    };
    let design = basis.largest_steady_place().ok_or_else(stop)?;
    let usual = usual(basis).ok_or_else(stop)?;
    let average = basis.limits.iter().any(|l| l.statistic.q == Statistic::MonthlyAverage);
    let mut removals = Vec::new();
    for (i, case) in basis.cases.iter().enumerate() {
        let Some(content) = &case.content else { continue };
        let flow = train.share(t, case);
        for season in Season::ALL {
            for state in State::ALL {
                if !depth.wants(i == design, i == usual, average && case.counts_in_a_mean(), season, state) {
                    continue;
                }
                let at = (i, case, content);
                removals.push(removal::removal(t, basis, &train.unit, fixed, at, flow, (season, state), depth)?);
            }
        }
    }
    Ok(removals)
}
