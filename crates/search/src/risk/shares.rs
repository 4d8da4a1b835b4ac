//! The share of each uncertain input in the spread, by rows in which one input is another at a time.

use super::indices::{Share, share};
use super::inputs::Input;
use super::sample::Hypercube;
use super::{Model, PART, Watch};
use crate::side_by_side::side_by_side;
use stillrise_design::performance::Depth;

impl Model<'_> {
    /// The share of each input in the spread, from so many rows; `None` when stopped by the watch. `probe` says
    /// in how many rows an input must have changed nothing to be left at that; none for one that is known to
    /// change nothing.
    pub(crate) fn shares(&self, rows: usize, probe: &dyn Fn(&Input) -> usize, watch: Watch<'_>) -> Option<Vec<Share>> {
        let columns = self.inputs.len();
        let goes_on = || watch(0, columns * rows);
        let a = Hypercube::watched(rows, columns, 0, &goes_on)?;
        let b = Hypercube::watched(rows, columns, columns as u64, &goes_on)?;
        let at = |cube: &Hypercube, rows: usize| {
            side_by_side(
                rows,
                8,
                || self.space(),
                |i, space| self.result(self.run(Depth::Expected, |k| cube.row(i)[k], space)),
            )
        };
        let (fa, fb) = (at(&a, rows), at(&b, rows));
        // The probes of all inputs first, then the other rows of those that move something; each in one go, so that
        // threads are not started for a handful of rows.
        let mut done = 0;
        let mut mixed = |tasks: &[(usize, usize)]| -> Option<Vec<f64>> {
            let mut found = Vec::with_capacity(tasks.len());
            for part in tasks.chunks(PART) {
                if !watch(done, columns * rows) {
                    return None;
                }
                done += part.len();
                found.extend(side_by_side(
                    part.len(),
                    8,
                    || self.space(),
                    |n, space| {
                        let (j, i) = part[n];
                        let (a, b) = (a.row(i), b.row(i));
                        self.result(self.run(Depth::Expected, |k| if k == j { b[k] } else { a[k] }, space))
                    },
                ));
            }
            Some(found)
        };
        let probes: Vec<usize> = self.inputs.iter().map(|input| probe(input).min(rows)).collect();
        let tasks: Vec<_> = probes.iter().enumerate().flat_map(|(j, n)| (0..*n).map(move |i| (j, i))).collect();
        let mut found = mixed(&tasks)?.into_iter();
        let mut columns_of: Vec<Vec<f64>> = probes.iter().map(|n| found.by_ref().take(*n).collect()).collect();
        let moves = |fm: &[f64]| fm.iter().zip(&fa).any(|(m, a)| m.to_bits() != a.to_bits());
        let active: Vec<usize> = (0..columns).filter(|j| moves(&columns_of[*j])).collect();
        let tasks: Vec<_> = active.iter().flat_map(|j| (probes[*j]..rows).map(move |i| (*j, i))).collect();
        let mut found = mixed(&tasks)?.into_iter();
        for j in &active {
            columns_of[*j].extend(found.by_ref().take(rows - probes[*j]));
        }
        let mut shares = vec![Share { first: 0.0, total: 0.0 }; columns];
        for j in active {
            let fm = &columns_of[j];
            // Rows that the chain has no answer for in any of the three say nothing.
            let sound: Vec<usize> =
                (0..rows).filter(|i| [fa[*i], fb[*i], fm[*i]].iter().all(|x| x.is_finite())).collect();
            let pick = |f: &[f64]| sound.iter().map(|i| f[*i]).collect::<Vec<_>>();
            shares[j] = share(&pick(&fa), &pick(&fb), &pick(fm));
        }
        Some(shares)
    }
}
