//! Latin hypercubes: every input is cut into as many equal shares as there are samples, and each share is
//! drawn once.
//!
//! Each column has a random stream of its own, so a sample does not depend on how many inputs stand beside
//! it in the list or on who draws it.

use rand::{RngExt, SeedableRng, seq::SliceRandom};
use rand_chacha::ChaCha8Rng;

/// The seed of every study: results are the same today and tomorrow.
pub const SEED: u64 = 0x5711_1215;

/// A sample of the unit cube, row by row.
#[derive(Debug, Clone, PartialEq)]
pub struct Hypercube {
    /// Numbers between 0 and 1: `columns` to a row.
    cells: Vec<f64>,
    columns: usize,
}

impl Hypercube {
    /// `rows` by `columns`, from the streams that begin at `first`.
    #[must_use]
    pub fn new(rows: usize, columns: usize, first: u64) -> Self {
        let whole = Self::watched(rows, columns, first, &|| true);
        whole.unwrap_or_else(|| Self { cells: Vec::new(), columns })
    }

    /// The same; `None` when the watch, asked before each column, says no.
    pub fn watched(rows: usize, columns: usize, first: u64, goes_on: &dyn Fn() -> bool) -> Option<Self> {
        let streams: Vec<u64> = (0..columns as u64).map(|column| first + column).collect();
        Self::on_streams(rows, &streams, goes_on)
    }

    fn on_streams(rows: usize, streams: &[u64], goes_on: &dyn Fn() -> bool) -> Option<Self> {
        let columns = streams.len();
        let mut cells = vec![0.0; rows * columns];
        let mut order: Vec<usize> = (0..rows).collect();
        for (column, stream) in streams.iter().enumerate() {
            if !goes_on() {
                return None;
            }
            let mut random = ChaCha8Rng::seed_from_u64(SEED);
            random.set_stream(*stream);
            order.sort_unstable();
            order.shuffle(&mut random);
            for (row, share) in order.iter().enumerate() {
                let within: f64 = random.random();
                cells[row * columns + column] = (*share as f64 + within) / rows as f64;
            }
        }
        Some(Self { cells, columns })
    }

    /// As [`Hypercube::new`], each column with a stream that hangs on its key alone: a sample of an input stays the
    /// same whatever other inputs there are.
    #[must_use]
    pub fn by_key(rows: usize, keys: &[&str]) -> Self {
        let streams: Vec<u64> = keys.iter().map(|key| stream(key)).collect();
        let whole = Self::on_streams(rows, &streams, &|| true);
        whole.unwrap_or_else(|| Self { cells: Vec::new(), columns: keys.len() })
    }

    /// One row.
    #[must_use]
    pub fn row(&self, row: usize) -> &[f64] {
        &self.cells[row * self.columns..(row + 1) * self.columns]
    }
}

/// The stream of a key: its FNV-1a hash, which any machine finds alike.
fn stream(key: &str) -> u64 {
    key.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_share_is_drawn_once() {
        let cube = Hypercube::new(50, 3, 7);
        for column in 0..3 {
            let mut shares: Vec<usize> = (0..50).map(|row| (cube.row(row)[column] * 50.0) as usize).collect();
            shares.sort_unstable();
            assert_eq!(shares, (0..50).collect::<Vec<_>>(), "column {column}");
        }
    }

    #[test]
    fn a_watch_stops_it() {
        assert_eq!(Hypercube::watched(20, 3, 0, &|| false), None);
    }

    /// FNV-1a, 64 bits: the empty text and "a", as its authors publish them.
    #[test]
    fn a_key_has_its_stream() {
        assert_eq!((stream(""), stream("a")), (0xcbf2_9ce4_8422_2325, 0xaf63_dc4c_8601_ec8c));
        let (one, two) = (Hypercube::by_key(20, &["b"]), Hypercube::by_key(20, &["a", "b"]));
        assert!((0..20).all(|row| one.row(row)[0].to_bits() == two.row(row)[1].to_bits()));
    }

    #[test]
    fn a_column_does_not_depend_on_its_neighbours() {
        let (one, three) = (Hypercube::new(20, 1, 0), Hypercube::new(20, 3, 0));
        for row in 0..20 {
            assert_eq!(one.row(row)[0].to_bits(), three.row(row)[0].to_bits());
        }
    }
}
