//! Pressure, recovered from the balances of the faces, and the head that the water loses.

use crate::momentum::{Momentum, Speeds};
use crate::problem::{Node, Problem};

/// Pressure over density in each cell, m²/s², with none in the first cell that is reached from the left, bottom first; `None` in a
/// cell that no water reaches.
#[must_use]
pub fn pressures(problem: &Problem, speeds: &Speeds) -> Vec<Option<f64>> {
    let g = &problem.grid;
    let momentum = Momentum::new(problem, speeds);
    let mut found: Vec<Option<f64>> = vec![None; g.cells()];
    let mut open: Vec<(usize, usize)> = Vec::new();
    let first = (0..g.ny()).find(|j| !is_shut(problem, g.node(0, *j), g.node(0, *j + 1)));
    let start = first.unwrap_or(0);
    found[g.cell(0, start)] = Some(0.0);
    open.push((0, start));
    while let Some((i, j)) = open.pop() {
        let own = found[g.cell(i, j)].unwrap_or(0.0);
        let mut reach = |cell: (usize, usize), pressure: f64| {
            let at = g.cell(cell.0, cell.1);
            if found[at].is_none() {
                found[at] = Some(pressure);
                open.push(cell);
            }
        };
        if i + 1 < g.nx() && !is_shut(problem, g.node(i + 1, j), g.node(i + 1, j + 1)) {
            reach((i + 1, j), own - momentum.along(i + 1, j, 1.0).left * g.between_x(i + 1));
        }
        if i > 0 && !is_shut(problem, g.node(i, j), g.node(i, j + 1)) {
            reach((i - 1, j), own + momentum.along(i, j, 1.0).left * g.between_x(i));
        }
        if j + 1 < g.ny() && !is_shut(problem, g.node(i, j + 1), g.node(i + 1, j + 1)) {
            reach((i, j + 1), own - momentum.up(i, j + 1, 1.0).left * g.between_y(j + 1));
        }
        if j > 0 && !is_shut(problem, g.node(i, j), g.node(i + 1, j)) {
            reach((i, j - 1), own + momentum.up(i, j, 1.0).left * g.between_y(j));
        }
    }
    found
}

/// The most by which the pressures of two cells differ from what the balance of the face between them says, m²/s²: round every
/// node, and round every internal, they must come back to where they began.
#[must_use]
pub fn mismatch(problem: &Problem, speeds: &Speeds, pressures: &[Option<f64>]) -> f64 {
    let g = &problem.grid;
    let momentum = Momentum::new(problem, speeds);
    let mut most = 0.0_f64;
    for i in 0..g.nx() {
        for j in 0..g.ny() {
            let Some(own) = pressures[g.cell(i, j)] else { continue };
            if i + 1 < g.nx() && !is_shut(problem, g.node(i + 1, j), g.node(i + 1, j + 1)) {
                let fall = momentum.along(i + 1, j, 1.0).left * g.between_x(i + 1);
                most = most.max(pressures[g.cell(i + 1, j)].map_or(0.0, |next| (own - fall - next).abs()));
            }
            if j + 1 < g.ny() && !is_shut(problem, g.node(i, j + 1), g.node(i + 1, j + 1)) {
                let fall = momentum.up(i, j + 1, 1.0).left * g.between_y(j + 1);
                most = most.max(pressures[g.cell(i, j + 1)].map_or(0.0, |next| (own - fall - next).abs()));
            }
        }
    }
    most
}

/// Whether a wall stands in the face between two nodes: both are held, and nothing passes between them.
pub(crate) fn is_shut(problem: &Problem, a: usize, b: usize) -> bool {
    match (problem.nodes[a], problem.nodes[b]) {
        (Node::Held { psi: a, .. }, Node::Held { psi: b, .. }) => a == b,
        (Node::Island(a), Node::Island(b)) => a == b,
        _ => false,
    }
}

/// Mean of pressure and speed over density that the water carries into the section on the left, less what it carries out on the right,
/// m²/s²: over the acceleration of gravity it is the head lost. `None` where no water passes.
#[must_use]
pub fn lost(problem: &Problem, speeds: &Speeds) -> Option<f64> {
    let g = &problem.grid;
    let pressures = pressures(problem, speeds);
    let carried = |line: usize, column: usize| {
        let (mut passes, mut sum) = (0.0, 0.0);
        for j in 0..g.ny() {
            let u = speeds.u[g.upright(line, j)];
            if u == 0.0 {
                continue;
            }
            let flow = u * g.dy(j) * problem.width[j];
            passes += flow;
            sum += flow * (pressures[g.cell(column, j)]? + 0.5 * u * u);
        }
        (passes != 0.0).then(|| sum / passes)
    };
    Some(carried(0, 0)? - carried(g.nx(), g.nx() - 1)?)
}
