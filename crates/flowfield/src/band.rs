//! Band matrix: factors in place, by panels, without exchange of rows.
//!
//! The equations round the nodes couple two columns of the grid each way, so that all entries lie in a band. What a panel of columns
//! changes behind it is a product of two blocks, worked in tiles whose sums run in one order: the same bits on every machine, with
//! or without wide arithmetic, on one thread or several.

use pulp::{Arch, Simd, WithSimd};
use rayon::prelude::*;

/// Columns of a panel.
const PANEL: usize = 32;
/// Rows and columns of a tile.
const ROWS: usize = 4;
const COLUMNS: usize = 8;
/// From this many products a panel's work is shared by threads.
const SHARED: usize = 1_500_000;

/// A matrix with entries up to `half` beside its diagonal, row by row.
#[derive(Debug, Clone)]
pub struct Band {
    n: usize,
    half: usize,
    stride: usize,
    a: Vec<f64>,
}

/// A pivot that is nothing, or no number, at this row.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Singular(pub usize);

impl Band {
    /// With nothing in it.
    #[must_use]
    pub fn new(n: usize, half: usize) -> Self {
        // Rows end on whole tiles, so that the last tile of a row needs no care.
        let stride = (2 * half + 1 + COLUMNS).next_multiple_of(COLUMNS);
        Self { n, half, stride, a: vec![0.0; n * stride] }
    }
    /// Forgets all entries.
    pub fn clear(&mut self) {
        self.a.fill(0.0);
    }
    /// Adds to an entry within the band; what lies outside it is left out in release and a fault of the program in tests.
    #[inline]
    pub fn add(&mut self, row: usize, column: usize, value: f64) {
        let at = column + self.half - row;
        debug_assert!(column + self.half >= row && at <= 2 * self.half, "({row}, {column}) lies outside the band");
        self.a[row * self.stride + at] += value;
    }
    /// Product with a vector.
    #[must_use]
    pub fn times(&self, x: &[f64]) -> Vec<f64> {
        (0..self.n)
            .map(|r| {
                let (from, to) = (r.saturating_sub(self.half), (r + self.half + 1).min(self.n));
                (from..to).map(|c| self.a[r * self.stride + c + self.half - r] * x[c]).sum()
            })
            .collect()
    }

    /// Factors it in place.
    ///
    /// # Errors
    /// [`Singular`] where a pivot vanishes.
    pub fn factor(mut self) -> Result<Factors, Singular> {
        let (n, half, stride) = (self.n, self.half, self.stride);
        let mut packed = Vec::new();
        let mut k = 0;
        while k < n {
            // No wider than the band, so that all rows of a panel reach all its columns.
            let p = PANEL.min(half.max(1)).min(n - k);
            let end = (k + p + half).min(n);
            self.panel(k, p, end)?;
            if k + p < n {
                let columns = (k + p + half).min(n) - (k + p);
                let wide = columns.next_multiple_of(COLUMNS);
                self.upper(k, p, columns, wide, &mut packed);
                // Row r of the rest takes what the panel holds of it times the rows above.
                let (first, rest) = (k + p, end - (k + p));
                let rows = &mut self.a[first * stride..end * stride];
                let update = |(chunk, rows): (usize, &mut [f64])| {
                    let r0 = first + chunk * ROWS;
                    let work = Tile { rows, stride, r0, k, p, half, first, columns, wide, packed: &packed };
                    Arch::new().dispatch(work);
                };
                if rest * columns * p > SHARED && rayon::current_num_threads() > 1 {
                    rows.par_chunks_mut(ROWS * stride).enumerate().with_min_len(8).for_each(update);
                } else {
                    rows.chunks_mut(ROWS * stride).enumerate().for_each(update);
                }
            }
            k += p;
        }
        Ok(Factors(self))
    }

    /// Factors the columns of a panel, with what lies below them.
    fn panel(&mut self, k: usize, p: usize, end: usize) -> Result<(), Singular> {
        let (half, stride) = (self.half, self.stride);
        for c in k..k + p {
            let (head, tail) = self.a.split_at_mut((c + 1) * stride);
            let own = &head[c * stride..];
            let pivot = own[half];
            if !pivot.is_normal() {
                return Err(Singular(c));
            }
            let last = k + p;
            let below = (c + half + 1).min(end);
            for (row, r) in tail.chunks_mut(stride).zip(c + 1..below) {
                let at = c + half - r;
                let share = row[at] / pivot;
                row[at] = share;
                if share != 0.0 {
                    let upper = &own[half + 1..half + last - c];
                    for (x, u) in row[at + 1..at + last - c].iter_mut().zip(upper) {
                        *x -= share * u;
                    }
                }
            }
        }
        Ok(())
    }

    /// Solves for the rows of the panel behind it, and packs them side by side.
    fn upper(&mut self, k: usize, p: usize, columns: usize, wide: usize, packed: &mut Vec<f64>) {
        let (half, stride) = (self.half, self.stride);
        packed.clear();
        packed.resize(p * wide, 0.0);
        let first = k + p;
        for r in k..k + p {
            // Columns of this row that lie in its band.
            let reach = (r + half + 1).min(first + columns).saturating_sub(first);
            let from = first + half - r;
            let (done, own) = packed.split_at_mut((r - k) * wide);
            let own = &mut own[..wide];
            own[..reach].copy_from_slice(&self.a[r * stride + from..r * stride + from + reach]);
            for (m, above) in (k..r).zip(done.chunks(wide)) {
                let share = self.a[r * stride + m + half - r];
                if share != 0.0 {
                    for (x, u) in own[..reach].iter_mut().zip(above) {
                        *x -= share * u;
                    }
                }
            }
            self.a[r * stride + from..r * stride + from + reach].copy_from_slice(&own[..reach]);
        }
    }
}

/// A few rows of the rest, and what the panel changes in them.
struct Tile<'a> {
    rows: &'a mut [f64],
    stride: usize,
    r0: usize,
    k: usize,
    p: usize,
    half: usize,
    first: usize,
    columns: usize,
    wide: usize,
    packed: &'a [f64],
}

impl WithSimd for Tile<'_> {
    type Output = ();
    #[inline(always)]
    fn with_simd<S: Simd>(self, _: S) {
        let Self { rows, stride, r0, k, p, half, first, columns, wide, packed } = self;
        let count = rows.len() / stride;
        // What each row holds of the panel; a row that the panel does not reach at first holds nothing there.
        let mut shares = [[0.0; ROWS]; PANEL];
        for (q, row) in rows.chunks(stride).enumerate() {
            let r = r0 + q;
            for (m, share) in shares.iter_mut().take(p).enumerate() {
                let c = k + m;
                share[q] = if c + half >= r { row[c + half - r] } else { 0.0 };
            }
        }
        let mut c = 0;
        while c < columns {
            let mut sums = [[0.0; COLUMNS]; ROWS];
            for (share, above) in shares.iter().take(p).zip(packed.chunks(wide)) {
                let above: &[f64; COLUMNS] = above[c..c + COLUMNS].try_into().unwrap_or(&[0.0; COLUMNS]);
                for (sums, share) in sums.iter_mut().zip(share) {
                    for (sum, u) in sums.iter_mut().zip(above) {
                        *sum += share * u;
                    }
                }
            }
            for (q, sums) in sums.iter().enumerate().take(count) {
                let at = q * stride + first + c + half - (r0 + q);
                for (x, sum) in rows[at..at + COLUMNS].iter_mut().zip(sums) {
                    *x -= sum;
                }
            }
            c += COLUMNS;
        }
    }
}

/// A factored band matrix.
#[derive(Debug, Clone)]
pub struct Factors(Band);

impl Factors {
    /// Solves for a right side, in place.
    pub fn solve(&self, b: &mut [f64]) {
        let Band { n, half, stride, a } = &self.0;
        let (n, half, stride) = (*n, *half, *stride);
        for r in 0..n {
            let from = r.saturating_sub(half);
            let row = &a[r * stride + from + half - r..r * stride + half];
            let sum: f64 = dot(row, &b[from..r]);
            b[r] -= sum;
        }
        for r in (0..n).rev() {
            let to = (r + half + 1).min(n);
            let row = &a[r * stride + half..r * stride + half + to - r];
            let sum = dot(&row[1..], &b[r + 1..to]);
            b[r] = (b[r] - sum) / row[0];
        }
    }
}

/// Sum of products, in eight sums side by side whose order is fixed.
fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sums = [0.0; COLUMNS];
    let (a_whole, b_whole) = (a.chunks_exact(COLUMNS), b.chunks_exact(COLUMNS));
    let rest: f64 = a_whole.remainder().iter().zip(b_whole.remainder()).map(|(x, y)| x * y).sum();
    for (x, y) in a_whole.zip(b_whole) {
        for ((sum, x), y) in sums.iter_mut().zip(x).zip(y) {
            *sum += x * y;
        }
    }
    let [a, b, c, d, e, f, g, h] = sums;
    ((a + b) + (c + d)) + ((e + f) + (g + h)) + rest
}
