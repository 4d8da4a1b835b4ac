//! Walls as steps between nodes of a grid, and which of them hang together.

use crate::grid::Grid;

/// Nodes along a line askew: steps of the grid, one direction at a time.
pub(crate) fn steps(g: &Grid, from: (f64, f64), to: (f64, f64)) -> Vec<usize> {
    let near = |lines: &[f64], x: f64| {
        let all = lines.iter().enumerate();
        all.min_by(|a, b| (a.1 - x).abs().total_cmp(&(b.1 - x).abs())).map_or(0, |(k, _)| k)
    };
    let n = 8 * (g.nx() + g.ny());
    let mut all: Vec<(usize, usize)> = Vec::new();
    for k in 0..=n {
        let s = k as f64 / n as f64;
        let (x, y) = (from.0 + s * (to.0 - from.0), from.1 + s * (to.1 - from.1));
        let next = (near(g.x(), x), near(g.y(), y));
        if let Some(last) = all.last().copied() {
            if last == next {
                continue;
            }
            if last.0 != next.0 && last.1 != next.1 {
                all.push((next.0, last.1));
            }
        }
        all.push(next);
    }
    all.into_iter().map(|(i, j)| g.node(i, j)).collect()
}

/// Which nodes hang together by walls.
pub(crate) struct Joined {
    above: Vec<usize>,
}

impl Joined {
    pub(crate) fn new(n: usize) -> Self {
        Self { above: (0..n).collect() }
    }
    pub(crate) fn of(&self, mut k: usize) -> usize {
        while self.above[k] != k {
            k = self.above[k];
        }
        k
    }
    pub(crate) fn join(&mut self, a: usize, b: usize) {
        let (a, b) = (self.of(a), self.of(b));
        if a != b {
            self.above[a.max(b)] = a.min(b);
        }
    }
}
