//! A flow through a section, resolved: on three grids, with three accounts of the water's own swirl, and what is read off it.

use crate::grid::Grid;
use crate::newton::{Effort, Steady, carried_over, cold, search};
use crate::pressure::lost;
use crate::problem::Problem;
use crate::section::{Section, Unfit};
use stillrise_units::{Flow, Length, Ratio, Typed, Velocity, ratio};

/// How the swirl of the water is counted: one viscosity outside packs and beds, as a share of the flow over its width.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Swirl {
    /// The share.
    pub share: f64,
    /// Of what kind of water it is.
    pub of: &'static str,
}

/// Accounts of the swirl, the thickest first. From memory: of a plane jet 0.037 times half its width times its highest speed; of a channel
/// in the mean 0.067 times depth times shear speed, of a twentieth of the mean speed or a little more. The one between is our proposal.
pub const SWIRLS: [Swirl; 3] = [
    Swirl { share: 0.0185, of: "a plane jet" },
    Swirl { share: 0.0085, of: "between both" },
    Swirl { share: 0.0038, of: "a channel" },
];

/// Acceleration of gravity, m/s².
const GRAVITY: f64 = 9.806_65;
/// Slower than this share of the mean speed is said to stand.
const STANDS: f64 = 0.1;
/// Steps of Newton's method with one viscosity.
const STEPS: usize = 60;

/// What is read off one steady flow.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// Cells along and up.
    pub cells: (usize, usize),
    /// Whether the balances are met; else what follows is the nearest that was found.
    pub is_found: bool,
    /// What is left of the balances, over what they were at first.
    pub residual: f64,
    /// Head that the water loses between inlet and outlet, without what pipes and weirs take.
    pub head: Option<Length>,
    /// Highest speed along.
    pub fastest: Velocity,
    /// Share of the water, outside packs and beds, that runs back towards the inlet.
    pub back: Ratio,
    /// Share of it that stands: slower than a tenth of the mean speed.
    pub still: Ratio,
    /// The speed in the pack over its mean there, by level, from its underside up; empty without one.
    pub gaps: Vec<(Length, Ratio)>,
}

impl Reading {
    /// By how much the gap that is fed most has more than its share; `None` without a pack.
    #[must_use]
    pub fn uneven(&self) -> Option<Ratio> {
        self.gaps.iter().map(|(_, r)| *r).reduce(|a, b| if b > a { b } else { a }).map(|most| most - ratio(1.0))
    }
    /// The least that a gap has of its share; `None` without a pack.
    #[must_use]
    pub fn least(&self) -> Option<Ratio> {
        self.gaps.iter().map(|(_, r)| *r).reduce(|a, b| if b < a { b } else { a })
    }
}

/// A flow, resolved.
#[derive(Debug, Clone)]
pub struct Resolved {
    /// With the first account of the swirl, from the coarsest grid to the finest.
    pub grids: Vec<Reading>,
    /// With each account, on the grid between; those for which no steady flow was found say so.
    pub swirls: Vec<(Swirl, Reading)>,
    /// The problem of the finest grid, and its stream function.
    pub finest: (Problem, Vec<f64>),
    /// Whether it was stopped before its end.
    pub is_stopped: bool,
    /// The section.
    pub section: Section,
}

/// Resolves a flow. `goes_on` hears how many of how many parts are done, and says whether to go on.
///
/// # Errors
/// [`Unfit`] where the section lets no water pass.
pub fn resolve(section: &Section, flow: Flow, goes_on: &dyn Fn(usize, usize) -> bool) -> Result<Resolved, Unfit> {
    let parts = 2 + SWIRLS.len();
    let per_width = flow.si() / section.mean_width();
    let effort = Effort { residual: 1e-9, steps: STEPS };
    let base = section.grid()?;
    let problem = |grid: &Grid, swirl: Swirl| section.problem(grid.clone(), flow, swirl.share * per_width);
    let first = problem(&base, SWIRLS[0])?;
    let mut now = cold(&first, effort).map_err(|_| closed())?;
    let mut grids = vec![reading(section, &first, &now)];
    let mut at = (first, now.psi.clone());
    let mut is_stopped = !goes_on(1, parts);
    let mut between = None;
    for times in [2, 4] {
        if is_stopped {
            break;
        }
        let grid = base.finer(times).ok_or_else(closed)?;
        let finer = problem(&grid, SWIRLS[0])?;
        now = search(&finer, &carried_over(&at.0.grid, &at.1, &grid), effort).map_err(|_| closed())?;
        grids.push(reading(section, &finer, &now));
        at = (finer, now.psi.clone());
        if times == 2 {
            between = Some(at.clone());
        }
        is_stopped = !goes_on(grids.len(), parts);
    }
    let mut swirls = Vec::new();
    if let Some((on, mut psi)) = between {
        let mut share = SWIRLS[0].share;
        for (k, swirl) in SWIRLS.iter().enumerate() {
            if is_stopped {
                break;
            }
            // Down in small steps, each from the one before.
            let found = loop {
                share = if k == 0 { swirl.share } else { (share / STEP_DOWN).max(swirl.share) };
                let thinner = problem(&on.grid, Swirl { share, ..*swirl })?;
                let found = search(&thinner, &psi, effort).map_err(|_| closed())?;
                if found.is_found {
                    psi.clone_from(&found.psi);
                }
                if share <= swirl.share || !found.is_found {
                    break reading(section, &thinner, &found);
                }
            };
            let is_found = found.is_found;
            swirls.push((*swirl, found));
            is_stopped = !goes_on(grids.len() + k, parts);
            // Thinner still it is not found either.
            if !is_found {
                break;
            }
        }
    }
    Ok(Resolved { grids, swirls, finest: at, is_stopped, section: section.clone() })
}

/// From one viscosity to the next thinner.
const STEP_DOWN: f64 = 1.5;

fn closed() -> Unfit {
    Unfit {
        place: "the section".to_owned(),
        why: "part of its water has no way in or out".to_owned(),
        remedy: "look at the walls round its compartments".to_owned(),
    }
}

/// Reads off what is asked.
fn reading(section: &Section, problem: &Problem, steady: &Steady) -> Reading {
    let g = &problem.grid;
    let speeds = &steady.speeds;
    let (mut open, mut back, mut still) = (0.0, 0.0, 0.0);
    let mean = section.mean_speed(Flow::from_si(section.flow_of(problem))).si();
    for i in 0..g.nx() {
        for j in 0..g.ny() {
            let cell = g.cell(i, j);
            if problem.is_zone(cell) || problem.is_shut_in(i, j) {
                continue;
            }
            let volume = g.dx(i) * g.dy(j) * problem.width[j];
            let u = 0.5 * (speeds.u[g.upright(i, j)] + speeds.u[g.upright(i + 1, j)]);
            let v = 0.5 * (speeds.v[g.level(i, j)] + speeds.v[g.level(i, j + 1)]);
            open += volume;
            if u < 0.0 {
                back += volume;
            }
            if (u * u + v * v).sqrt() < STANDS * mean {
                still += volume;
            }
        }
    }
    let fastest = speeds.u.iter().fold(0.0_f64, |most, u| most.max(u.abs()));
    Reading {
        cells: (g.nx(), g.ny()),
        is_found: steady.is_found,
        residual: steady.residual,
        head: lost(problem, speeds).map(|e| Length::from_si(e / GRAVITY)),
        fastest: Velocity::from_si(fastest),
        back: ratio(back / open),
        still: ratio(still / open),
        gaps: gaps(section, problem, steady),
    }
}

/// Speed in the middle of the pack over its mean there, by level.
fn gaps(section: &Section, problem: &Problem, steady: &Steady) -> Vec<(Length, Ratio)> {
    let Some(pack) = section.pack() else { return Vec::new() };
    let g = &problem.grid;
    let i = g.column_of(0.5 * (pack.between.0 + pack.between.1));
    let within = |j: &usize| {
        let y = g.middle(i, *j).1;
        y > pack.levels.0 && y < pack.levels.1.min(section.top)
    };
    let rows: Vec<usize> = (0..g.ny()).filter(within).collect();
    let area = |j: usize| g.dy(j) * problem.width[j];
    let total: f64 = rows.iter().map(|j| area(*j)).sum();
    let passes: f64 = rows.iter().map(|j| steady.speeds.u[g.upright(i, *j)] * area(*j)).sum();
    if passes <= 0.0 || total <= 0.0 {
        return Vec::new();
    }
    let mean = passes / total;
    rows.into_iter()
        .map(|j| (Length::from_si(g.middle(i, j).1), ratio(steady.speeds.u[g.upright(i, j)] / mean)))
        .collect()
}
