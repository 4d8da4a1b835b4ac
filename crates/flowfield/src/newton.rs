//! Steady flow: Newton's method on the stream function, from creeping flow on, from coarse to fine.

use crate::band::{Band, Factors, Singular};
use crate::grid::Grid;
use crate::momentum::{Momentum, Speeds, counts, speeds};
use crate::problem::{Node, Problem};

/// Where a search ended.
#[derive(Debug, Clone)]
pub struct Steady {
    /// Stream function at the nodes, m³/s.
    pub psi: Vec<f64>,
    /// Speeds.
    pub speeds: Speeds,
    /// What is left of the balances, over what it was at the start of the search with all convection.
    pub residual: f64,
    /// Steps of Newton's method at the last viscosity.
    pub steps: usize,
    /// Whether what is left is as little as was asked.
    pub is_found: bool,
}

/// How hard it is tried.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Effort {
    /// What may be left of the balances.
    pub residual: f64,
    /// Steps at one viscosity.
    pub steps: usize,
}

impl Default for Effort {
    fn default() -> Self {
        Self { residual: 1e-9, steps: 30 }
    }
}

/// What the equations leave, m²/s²: of each node, the balances of the faces round it, added up; behind them, of each internal that
/// hangs on no wall, those round it.
pub(crate) fn left_round(problem: &Problem, speeds: &Speeds, carried: f64) -> Vec<f64> {
    let nodes = problem.grid.nodes();
    let mut left = vec![0.0; nodes + problem.islands()];
    walk(problem, speeds, carried, 0.0, |balance, ends| {
        for (node, length) in ends {
            match problem.nodes[node] {
                Node::Free => left[node] += length * balance.left,
                Node::Island(k) => left[nodes + k] += length * balance.left,
                Node::Held { .. } | Node::Leaves => {}
            }
        }
    });
    left
}

/// Visits the balance of every face that counts, with the two nodes whose equations it stands in and the lengths it stands there with.
fn walk(
    problem: &Problem,
    speeds: &Speeds,
    carried: f64,
    inertia: f64,
    mut visit: impl FnMut(&crate::momentum::Balance, [(usize, f64); 2]),
) {
    let g = &problem.grid;
    let momentum = Momentum::new(problem, speeds);
    for i in 0..=g.nx() {
        if i > 0 && i < g.nx() {
            for j in 0..g.ny() {
                let (low, high) = (g.node(i, j), g.node(i, j + 1));
                if counts(problem, low, high) {
                    let length = g.between_x(i);
                    visit(&momentum.along(i, j, carried).held(i, j, true, inertia), [(low, -length), (high, length)]);
                }
            }
        }
        if i < g.nx() {
            for j in 1..g.ny() {
                let (behind, ahead) = (g.node(i, j), g.node(i + 1, j));
                if counts(problem, behind, ahead) {
                    let length = g.between_y(j);
                    visit(&momentum.up(i, j, carried).held(i, j, false, inertia), [(behind, length), (ahead, -length)]);
                }
            }
        }
    }
}

/// The change of all equations with the stream function, factored; internals that hang on no wall stand beside the band.
struct Slope {
    factors: Factors,
    /// For each internal: how the nodes' equations change with it, solved; and its own equation's changes with the nodes.
    beside: Vec<(Vec<f64>, Vec<f64>)>,
    /// How the internals' equations change with the internals, what goes by the nodes taken off.
    among: Vec<Vec<f64>>,
}

impl Slope {
    fn new(problem: &Problem, speeds: &Speeds, carried: f64, inertia: f64) -> Result<Self, Singular> {
        let g = &problem.grid;
        let islands = problem.islands();
        let mut band = Band::new(g.nodes(), 2 * (g.ny() + 1));
        for (k, node) in problem.nodes.iter().enumerate() {
            match node {
                Node::Free => {}
                Node::Held { .. } | Node::Island(_) => band.add(k, k, 1.0),
                Node::Leaves => {
                    band.add(k, k, 1.0);
                    band.add(k, k - (g.ny() + 1), -1.0);
                }
            }
        }
        let mut beside = vec![(vec![0.0; g.nodes()], vec![0.0; g.nodes()]); islands];
        let mut among = vec![vec![0.0; islands]; islands];
        walk(problem, speeds, carried, inertia, |balance, ends| {
            balance.by_nodes(problem, |column, each| {
                for (node, length) in ends {
                    match (problem.nodes[node], problem.nodes[column]) {
                        (Node::Free, Node::Island(k)) => beside[k].0[node] += length * each,
                        (Node::Free, _) => band.add(node, column, length * each),
                        (Node::Island(k), Node::Island(l)) => among[k][l] += length * each,
                        (Node::Island(k), _) => beside[k].1[column] += length * each,
                        (Node::Held { .. } | Node::Leaves, _) => {}
                    }
                }
            });
        });
        let factors = band.factor()?;
        for (by_island, _) in &mut beside {
            factors.solve(by_island);
        }
        for (k, row) in among.iter_mut().enumerate() {
            for (l, entry) in row.iter_mut().enumerate() {
                let through: f64 = beside[k].1.iter().zip(&beside[l].0).map(|(a, b)| a * b).sum();
                *entry -= through;
            }
        }
        Ok(Self { factors, beside, among })
    }

    /// The step that the equations ask for, in place: nodes, then internals.
    fn solve(&self, left: &mut [f64]) -> Result<(), Singular> {
        let nodes = left.len() - self.beside.len();
        let (of_nodes, of_islands) = left.split_at_mut(nodes);
        self.factors.solve(of_nodes);
        for ((_, row), own) in self.beside.iter().zip(&mut *of_islands) {
            let through: f64 = row.iter().zip(&*of_nodes).map(|(a, b)| a * b).sum();
            *own -= through;
        }
        eliminate(self.among.clone(), of_islands).ok_or(Singular(nodes))?;
        for ((column, _), step) in self.beside.iter().zip(&*of_islands) {
            for (node, by) in of_nodes.iter_mut().zip(column) {
                *node -= step * by;
            }
        }
        Ok(())
    }
}

/// Solves a few equations in place, the largest pivot first; `None` where one vanishes.
fn eliminate(mut a: Vec<Vec<f64>>, b: &mut [f64]) -> Option<()> {
    let n = b.len();
    for k in 0..n {
        let pivot = (k..n).max_by(|x, y| a[*x][k].abs().total_cmp(&a[*y][k].abs()))?;
        a.swap(k, pivot);
        b.swap(k, pivot);
        if !a[k][k].is_normal() {
            return None;
        }
        for r in k + 1..n {
            let share = a[r][k] / a[k][k];
            let (above, below) = a.split_at_mut(r);
            for (x, u) in below[0][k..].iter_mut().zip(&above[k][k..]) {
                *x -= share * u;
            }
            b[r] -= share * b[k];
        }
    }
    for k in (0..n).rev() {
        let known: f64 = (k + 1..n).map(|c| a[k][c] * b[c]).sum();
        b[k] = (b[k] - known) / a[k][k];
    }
    Some(())
}

fn size(left: &[f64]) -> f64 {
    left.iter().map(|x| x * x).sum::<f64>().sqrt()
}

/// Nodes whose stream function is known take it; an outlet left free takes what stands one step before it.
fn settle_known(problem: &Problem, psi: &mut [f64]) {
    let column = problem.grid.ny() + 1;
    for (k, node) in problem.nodes.iter().enumerate() {
        match node {
            Node::Held { psi: held, .. } => psi[k] = *held,
            Node::Leaves => psi[k] = psi[k - column],
            Node::Free | Node::Island(_) => {}
        }
    }
}

/// All nodes of an internal take the mean of what they begin with.
fn level_islands(problem: &Problem, psi: &mut [f64]) {
    let mut sums = vec![(0.0, 0.0); problem.islands()];
    for (node, psi) in problem.nodes.iter().zip(&*psi) {
        if let Node::Island(k) = node {
            sums[*k].0 += psi;
            sums[*k].1 += 1.0;
        }
    }
    for (node, psi) in problem.nodes.iter().zip(psi) {
        if let Node::Island(k) = node {
            *psi = sums[*k].0 / sums[*k].1;
        }
    }
}

/// A share of a step taken.
fn stepped(problem: &Problem, psi: &[f64], step: &[f64], share: f64) -> Vec<f64> {
    let islands = &step[psi.len()..];
    let each = problem.nodes.iter().zip(psi).zip(step);
    let mut next: Vec<f64> = each
        .map(|((node, psi), step)| match node {
            Node::Island(k) => psi - share * islands[*k],
            _ => psi - share * step,
        })
        .collect();
    settle_known(problem, &mut next);
    next
}

/// Creeping flow: without convection the equations are linear in the speed but for drag by its square, which is left out at rest.
///
/// # Errors
/// [`Singular`] where the section leaves a node without an equation.
pub fn creeping(problem: &Problem) -> Result<Vec<f64>, Singular> {
    let mut psi = vec![0.0; problem.grid.nodes()];
    settle_known(problem, &mut psi);
    let at = speeds(problem, &psi);
    let mut step = left_round(problem, &at, 0.0);
    Slope::new(problem, &at, 0.0, 0.0)?.solve(&mut step)?;
    Ok(stepped(problem, &psi, &step, 1.0))
}

/// Newton's method from a first guess, halving steps that do not help.
///
/// # Errors
/// [`Singular`] where the section leaves a node without an equation.
pub fn search(problem: &Problem, start: &[f64], effort: Effort) -> Result<Steady, Singular> {
    let mut psi = start.to_vec();
    settle_known(problem, &mut psi);
    level_islands(problem, &mut psi);
    let mut now = speeds(problem, &psi);
    let mut left = left_round(problem, &now, 1.0);
    let scale = scale(problem, &now).max(f64::MIN_POSITIVE);
    let mut is_found = size(&left) <= effort.residual * scale;
    let mut steps = 0;
    // Speed over length: what a step in time of one passage through a tenth of the section holds back.
    let (long, high) = (problem.grid.x(), problem.grid.y());
    let extent = (long[long.len() - 1] - long[0]).max(high[high.len() - 1] - high[0]);
    let top = now.u.iter().chain(&now.v).fold(0.0_f64, |top, u| top.max(u.abs()));
    let usual = 10.0 * top / extent;
    let mut inertia = 0.0_f64;
    while !is_found && steps < effort.steps {
        let mut step = left.clone();
        Slope::new(problem, &now, 1.0, inertia)?.solve(&mut step)?;
        steps += 1;
        let before = size(&left);
        let mut share = 1.0;
        let taken = loop {
            let next = stepped(problem, &psi, &step, share);
            let speeds = speeds(problem, &next);
            let other = left_round(problem, &speeds, 1.0);
            let after = size(&other);
            // A step in time may leave more for a while.
            let allowed = if inertia > 0.0 { 1.2 } else { 1.0 - 1e-4 * share };
            if after < before * allowed {
                (psi, now, left) = (next, speeds, other);
                break true;
            }
            share *= 0.5;
            if share < 1.0 / 16.0 {
                break false;
            }
        };
        inertia = match (taken, inertia) {
            (false, held) => (held * 4.0).max(usual),
            (true, held) if share > 0.9 && held > 1e-2 * usual => held * (size(&left) / before).clamp(0.2, 0.7),
            (true, held) if share > 0.9 => {
                if held > 0.0 {
                    0.0
                } else {
                    held
                }
            }
            (true, 0.0) if share < 0.2 => usual,
            (true, held) => held,
        };
        is_found = size(&left) <= effort.residual * scale;
        if !size(&left).is_finite() || inertia > 1e6 * usual {
            break;
        }
    }
    Ok(Steady { residual: size(&left) / scale, psi, speeds: now, steps, is_found })
}

/// Of what size the single balances are that cancel in the equations: of convection and stress, before they are added up.
fn scale(problem: &Problem, speeds: &Speeds) -> f64 {
    let mut sum = 0.0;
    walk(problem, speeds, 1.0, 0.0, |balance, ends| {
        for (node, length) in ends {
            if problem.nodes[node] == Node::Free {
                sum += (length * balance.left) * (length * balance.left);
            }
        }
    });
    sum.sqrt()
}

/// From nothing: creeping flow, then with four and two times the viscosity, then as it is.
///
/// # Errors
/// [`Singular`] where the section leaves a node without an equation.
pub fn cold(problem: &Problem, effort: Effort) -> Result<Steady, Singular> {
    let mut psi = creeping(problem)?;
    let rough = Effort { residual: 1e-4, steps: effort.steps };
    for times in [16.0, 4.0, 2.0] {
        psi = search(&problem.thicker(times), &psi, rough)?.psi;
    }
    let found = search(problem, &psi, effort)?;
    if found.is_found {
        return Ok(found);
    }
    // Down in smaller steps, each met before the next.
    for times in [1.7, 1.45, 1.25, 1.12, 1.05] {
        let thicker = search(&problem.thicker(times), &psi, Effort { residual: 1e-7, steps: effort.steps })?;
        if thicker.is_found {
            psi = thicker.psi;
        }
    }
    let again = search(problem, &psi, effort)?;
    Ok(if again.residual < found.residual { again } else { found })
}

/// A stream function on another grid, straight between the nodes of its own.
#[must_use]
pub fn carried_over(from: &Grid, psi: &[f64], to: &Grid) -> Vec<f64> {
    let mut out = Vec::with_capacity(to.nodes());
    for x in to.x() {
        let i = from.column_of(*x);
        let s = ((x - from.x()[i]) / from.dx(i)).clamp(0.0, 1.0);
        for y in to.y() {
            let j = from.row_of(*y);
            let t = ((y - from.y()[j]) / from.dy(j)).clamp(0.0, 1.0);
            let at = |di: usize, dj: usize| psi[from.node(i + di, j + dj)];
            let low = (1.0 - s) * at(0, 0) + s * at(1, 0);
            let high = (1.0 - s) * at(0, 1) + s * at(1, 1);
            out.push((1.0 - t) * low + t * high);
        }
    }
    out
}
