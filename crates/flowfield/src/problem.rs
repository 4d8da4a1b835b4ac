//! What stands in the water: where it may flow, what holds it back, how it comes and goes.

use crate::grid::Grid;

/// What a node of the grid is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Node {
    /// Water on all sides: its stream function is sought.
    Free,
    /// On a wall, an inlet or a set outlet: its stream function is known; a wall that moves along itself does so at `slide`.
    Held {
        /// Its stream function, m³/s.
        psi: f64,
        /// Speed of the wall along itself, m/s; `None` where water slips along it.
        slide: Option<f64>,
    },
    /// On an internal that hangs on no wall, by its number: what passes above it and below it is sought.
    Island(usize),
    /// At an outlet that is left free, on the right: as one step before it.
    Leaves,
}

impl Node {
    /// Speed along itself of the wall on which it lies; none where it is at rest.
    pub(crate) fn slide(self) -> f64 {
        match self {
            Node::Held { slide: Some(slide), .. } => slide,
            _ => 0.0,
        }
    }
}

/// What holds water back in a cell, for each m/s of its speed, 1/s: a tensor, and what grows with the speed.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Drag {
    /// Along, by a speed along.
    pub xx: f64,
    /// Along by a speed up, and the reverse.
    pub xy: f64,
    /// Up, by a speed up.
    pub yy: f64,
    /// For each (m/s)², in every direction, 1/m.
    pub square: f64,
}

impl Drag {
    /// Of plates or fibres that hold water back by `along` in the direction that rises by `angle` (cosine and sine) and by `across`
    /// straight to it.
    #[must_use]
    pub fn turned(along: f64, across: f64, (cos, sin): (f64, f64)) -> Self {
        let xx = along * cos * cos + across * sin * sin;
        let yy = along * sin * sin + across * cos * cos;
        Self { xx, xy: (along - across) * cos * sin, yy, square: 0.0 }
    }
    fn is_none(&self) -> bool {
        *self == Self::default()
    }
}

/// A section with all that stands in it, on its grid.
#[derive(Debug, Clone)]
pub struct Problem {
    /// The grid.
    pub grid: Grid,
    /// What each node is.
    pub nodes: Vec<Node>,
    /// Width of the water in the middle of each row of cells, m.
    pub width: Vec<f64>,
    /// Width at each level line, m.
    pub width_at: Vec<f64>,
    /// Viscosity in each cell, m²/s.
    pub viscosity: Vec<f64>,
    /// Viscosity at each node, m²/s.
    pub viscosity_at: Vec<f64>,
    /// What holds water back in each cell.
    pub drag: Vec<Drag>,
    /// What a wall with openings takes on each upright face, for each (m/s)² of the speed through it, m²/s² over the length to which
    /// it belongs: 1/m.
    pub screens: Vec<f64>,
    /// Force on the water of each upright face along, m/s².
    pub push: Vec<f64>,
    /// Force on the water of each level face upwards, m/s².
    pub lift: Vec<f64>,
}

impl Problem {
    /// A closed box of one width, with walls at rest and one viscosity.
    #[must_use]
    pub fn closed(grid: Grid, width: f64, viscosity: f64) -> Self {
        let still = Node::Held { psi: 0.0, slide: Some(0.0) };
        let mut nodes = vec![Node::Free; grid.nodes()];
        for i in 0..=grid.nx() {
            for j in 0..=grid.ny() {
                if i == 0 || j == 0 || i == grid.nx() || j == grid.ny() {
                    nodes[grid.node(i, j)] = still;
                }
            }
        }
        Self {
            width: vec![width; grid.ny()],
            width_at: vec![width; grid.ny() + 1],
            viscosity: vec![viscosity; grid.cells()],
            viscosity_at: vec![viscosity; grid.nodes()],
            drag: vec![Drag::default(); grid.cells()],
            screens: vec![0.0; (grid.nx() + 1) * grid.ny()],
            push: vec![0.0; (grid.nx() + 1) * grid.ny()],
            lift: vec![0.0; grid.nx() * (grid.ny() + 1)],
            nodes,
            grid,
        }
    }

    /// Holds a node.
    pub fn hold(&mut self, i: usize, j: usize, psi: f64, slide: Option<f64>) {
        let at = self.grid.node(i, j);
        self.nodes[at] = Node::Held { psi, slide };
    }

    /// Whether a cell lies in a zone that holds water back.
    pub(crate) fn is_zone(&self, cell: usize) -> bool {
        !self.drag[cell].is_none()
    }
    /// Whether a cell has walls on all sides: earth, or water that none reaches.
    pub(crate) fn is_shut_in(&self, i: usize, j: usize) -> bool {
        let g = &self.grid;
        let psi = |i: usize, j: usize| match self.nodes[g.node(i, j)] {
            Node::Held { psi, .. } => Some(psi),
            _ => None,
        };
        let first = psi(i, j);
        first.is_some() && [psi(i + 1, j), psi(i, j + 1), psi(i + 1, j + 1)].iter().all(|other| *other == first)
    }

    /// How many internals hang on no wall.
    #[must_use]
    pub fn islands(&self) -> usize {
        let numbers = self.nodes.iter().filter_map(|node| match node {
            Node::Island(k) => Some(k + 1),
            _ => None,
        });
        numbers.max().unwrap_or(0)
    }

    /// Whether anything holds water back.
    #[must_use]
    pub fn has_drag(&self) -> bool {
        self.drag.iter().any(|drag| !drag.is_none())
    }

    /// Multiplies every viscosity.
    #[must_use]
    pub fn thicker(&self, times: f64) -> Self {
        let mut other = self.clone();
        other.viscosity.iter_mut().chain(&mut other.viscosity_at).for_each(|v| *v *= times);
        other
    }
}
