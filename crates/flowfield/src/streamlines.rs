//! Streamlines: lines along which the stream function is one, so that between two of them the same flow passes.

use crate::problem::Problem;
use std::collections::BTreeMap;

/// A line through the section: stations and levels, metres.
pub type Path = Vec<(f64, f64)>;

/// The lines of one value of a stream function, straight within a cell.
#[must_use]
pub fn streamlines(problem: &Problem, psi: &[f64], value: f64) -> Vec<Path> {
    let g = &problem.grid;
    // An edge of a cell by its lower or left node, and whether it stands upright.
    let mut ends: BTreeMap<(usize, bool), Vec<(usize, bool)>> = BTreeMap::new();
    let mut points: BTreeMap<(usize, bool), (f64, f64)> = BTreeMap::new();
    let above = |node: usize| psi[node] > value;
    for i in 0..g.nx() {
        for j in 0..g.ny() {
            let [a, b, c, d] = [g.node(i, j), g.node(i + 1, j), g.node(i + 1, j + 1), g.node(i, j + 1)];
            let edges = [(a, b, (a, false)), (b, c, (b, true)), (d, c, (d, false)), (a, d, (a, true))];
            let crossed: Vec<(usize, bool)> =
                edges.iter().filter(|(from, to, _)| above(*from) != above(*to)).map(|(_, _, key)| *key).collect();
            let pairs: Vec<(usize, usize)> = match crossed.len() {
                2 => vec![(0, 1)],
                // Two lines through one cell: which ends belong together is told by its middle.
                4 => {
                    let middle = 0.25 * (psi[a] + psi[b] + psi[c] + psi[d]) > value;
                    if middle == above(a) { vec![(0, 1), (2, 3)] } else { vec![(0, 3), (1, 2)] }
                }
                _ => Vec::new(),
            };
            for (from, to) in pairs {
                let (from, to) = (crossed[from], crossed[to]);
                ends.entry(from).or_default().push(to);
                ends.entry(to).or_default().push(from);
                for key in [from, to] {
                    points.entry(key).or_insert_with(|| point(problem, psi, value, key));
                }
            }
        }
    }
    let mut paths = Vec::new();
    // Lines with ends first, then those that close on themselves.
    for closed in [false, true] {
        while let Some(start) = ends.iter().find(|(_, next)| closed != (next.len() == 1)).map(|(key, _)| *key) {
            let mut path = vec![points[&start]];
            let mut at = start;
            while let Some(next) = ends.get_mut(&at).and_then(Vec::pop) {
                if let Some(back) = ends.get_mut(&next)
                    && let Some(k) = back.iter().position(|other| *other == at)
                {
                    back.swap_remove(k);
                }
                path.push(points[&next]);
                at = next;
            }
            ends.retain(|_, next| !next.is_empty());
            paths.push(path);
        }
    }
    paths
}

fn point(problem: &Problem, psi: &[f64], value: f64, (node, upright): (usize, bool)) -> (f64, f64) {
    let g = &problem.grid;
    let (i, j) = (node / (g.ny() + 1), node % (g.ny() + 1));
    let other = if upright { g.node(i, j + 1) } else { g.node(i + 1, j) };
    let share = (value - psi[node]) / (psi[other] - psi[node]);
    let (x, y) = (g.x()[i], g.y()[j]);
    if upright { (x, y + share * g.dy(j)) } else { (x + share * g.dx(i), y) }
}
