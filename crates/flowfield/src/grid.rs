//! Grid: lines that follow the geometry, and where values stand between them.
//!
//! Lines cross at *nodes*, where the stream function stands. Between two lines of one direction lies a *face*, through which water
//! passes; four faces close a *cell*. Speeds along the section stand on upright faces, speeds up and down on level ones.

/// Lines of a grid, metres.
#[derive(Debug, Clone, PartialEq)]
pub struct Grid {
    x: Vec<f64>,
    y: Vec<f64>,
}

impl Grid {
    /// A grid by its lines; `None` unless each direction has two cells or more and its lines rise and are finite.
    #[must_use]
    pub fn new(x: Vec<f64>, y: Vec<f64>) -> Option<Self> {
        let rises = |lines: &[f64]| {
            lines.len() > 2 && lines.iter().all(|l| l.is_finite()) && lines.windows(2).all(|pair| pair[0] < pair[1])
        };
        (rises(&x) && rises(&y)).then_some(Self { x, y })
    }

    /// `nx` by `ny` equal cells over a rectangle from the origin.
    #[must_use]
    pub fn equal(length: f64, height: f64, nx: usize, ny: usize) -> Option<Self> {
        let lines = |over: f64, n: usize| (0..=n).map(|k| over * k as f64 / n as f64).collect();
        Self::new(lines(length, nx), lines(height, ny))
    }

    /// Cells along.
    #[must_use]
    pub fn nx(&self) -> usize {
        self.x.len() - 1
    }
    /// Cells up.
    #[must_use]
    pub fn ny(&self) -> usize {
        self.y.len() - 1
    }
    /// Lines along.
    #[must_use]
    pub fn x(&self) -> &[f64] {
        &self.x
    }
    /// Lines up.
    #[must_use]
    pub fn y(&self) -> &[f64] {
        &self.y
    }
    /// Length of a cell.
    #[must_use]
    pub fn dx(&self, i: usize) -> f64 {
        self.x[i + 1] - self.x[i]
    }
    /// Height of a cell.
    #[must_use]
    pub fn dy(&self, j: usize) -> f64 {
        self.y[j + 1] - self.y[j]
    }
    /// Length between the middles of the cells beside an upright line within the grid.
    #[must_use]
    pub fn between_x(&self, i: usize) -> f64 {
        0.5 * (self.x[i + 1] - self.x[i - 1])
    }
    /// Height between the middles of the cells beside a level line within the grid.
    #[must_use]
    pub fn between_y(&self, j: usize) -> f64 {
        0.5 * (self.y[j + 1] - self.y[j - 1])
    }
    /// Middle of a cell.
    #[must_use]
    pub fn middle(&self, i: usize, j: usize) -> (f64, f64) {
        (0.5 * (self.x[i] + self.x[i + 1]), 0.5 * (self.y[j] + self.y[j + 1]))
    }

    /// Nodes.
    #[must_use]
    pub fn nodes(&self) -> usize {
        self.x.len() * self.y.len()
    }
    /// Place of a node: they are numbered up, then along, so that what is coupled lies close together.
    #[must_use]
    pub fn node(&self, i: usize, j: usize) -> usize {
        i * self.y.len() + j
    }
    /// Cells.
    #[must_use]
    pub fn cells(&self) -> usize {
        self.nx() * self.ny()
    }
    /// Place of a cell.
    #[must_use]
    pub fn cell(&self, i: usize, j: usize) -> usize {
        i * self.ny() + j
    }
    /// Place of an upright face, between the nodes `j` and `j + 1` of line `i`.
    #[must_use]
    pub fn upright(&self, i: usize, j: usize) -> usize {
        i * self.ny() + j
    }
    /// Place of a level face, between the nodes `i` and `i + 1` of line `j`.
    #[must_use]
    pub fn level(&self, i: usize, j: usize) -> usize {
        i * self.y.len() + j
    }

    /// The same with `n` cells in place of each, and what of each of its lines stood before.
    #[must_use]
    pub fn finer(&self, n: usize) -> Option<Self> {
        let split = |lines: &[f64]| {
            let mut all = Vec::with_capacity(lines.len() * n);
            for pair in lines.windows(2) {
                all.extend((0..n).map(|k| pair[0] + (pair[1] - pair[0]) * k as f64 / n as f64));
            }
            all.extend(lines.last());
            all
        };
        Self::new(split(&self.x), split(&self.y))
    }

    /// The cell in which a length lies, the last one at the end.
    #[must_use]
    pub fn column_of(&self, x: f64) -> usize {
        place(&self.x, x)
    }
    /// The cell in which a height lies, the last one at the top.
    #[must_use]
    pub fn row_of(&self, y: f64) -> usize {
        place(&self.y, y)
    }
}

fn place(lines: &[f64], at: f64) -> usize {
    lines.partition_point(|line| *line <= at).clamp(1, lines.len() - 1) - 1
}
