//! Sobol' indices: which input carries how much of the spread of a result.
//!
//! Two independent samples A and B, and for each input A with that input's column from B (Saltelli 2002).
//! First index by Saltelli et al. 2010, total index by Jansen 1999, both as given in A. Saltelli et al.,
//! Computer Physics Communications 181, 2010, 259-270, from memory; checked against Ishigami's function.

/// The share of one input in the spread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    /// Alone: what knowing it would take off the variance.
    pub first: f64,
    /// With all others it acts through: what would be left if all but it were known.
    pub total: f64,
}

/// Both indices from the results at A, at B and at A with one column from B.
///
/// Nothing spreads: both are 0. An estimate below 0 is noise, and is given as it is.
#[must_use]
pub fn share(a: &[f64], b: &[f64], mixed: &[f64]) -> Share {
    let n = a.len() as f64;
    let mean = a.iter().chain(b).sum::<f64>() / (2.0 * n);
    let variance = a.iter().chain(b).map(|x| (x - mean) * (x - mean)).sum::<f64>() / (2.0 * n);
    if variance <= 0.0 || n < 1.0 {
        return Share { first: 0.0, total: 0.0 };
    }
    let (mut first, mut total) = (0.0, 0.0);
    for ((a, b), m) in a.iter().zip(b).zip(mixed) {
        // The mean taken off b leaves the estimate as it is and most of its noise out.
        first += (b - mean) * (m - a);
        total += (a - m) * (a - m);
    }
    Share { first: first / n / variance, total: total / (2.0 * n) / variance }
}

#[cfg(test)]
mod tests {
    use super::super::sample::Hypercube;
    use super::*;
    use core::f64::consts::PI;
    use stillrise_units::math::sin;

    /// Ishigami's function, a = 7, b = 0.1: the indices follow in closed form.
    #[test]
    fn ishigami() {
        let f = |u: &[f64]| {
            let x: Vec<f64> = u.iter().map(|u| PI * (2.0 * u - 1.0)).collect();
            sin(x[0]) + 7.0 * sin(x[1]) * sin(x[1]) + 0.1 * x[2] * x[2] * x[2] * x[2] * sin(x[0])
        };
        let n = 20_000;
        let (a, b) = (Hypercube::new(n, 3, 0), Hypercube::new(n, 3, 3));
        let at = |cube: &Hypercube| (0..n).map(|i| f(cube.row(i))).collect::<Vec<_>>();
        let (fa, fb) = (at(&a), at(&b));
        let variance = {
            let mean = fa.iter().sum::<f64>() / n as f64;
            fa.iter().map(|x| (x - mean) * (x - mean)).sum::<f64>() / n as f64
        };
        assert!((variance / 13.8446 - 1.0).abs() < 0.02, "{variance}");
        for (j, first, total) in [(0, 0.3139, 0.5576), (1, 0.4424, 0.4424), (2, 0.0, 0.2437)] {
            let mixed: Vec<f64> = (0..n)
                .map(|i| {
                    let mut row = a.row(i).to_vec();
                    row[j] = b.row(i)[j];
                    f(&row)
                })
                .collect();
            let share = share(&fa, &fb, &mixed);
            assert!((share.first - first).abs() < 0.02, "{j}: {share:?}");
            assert!((share.total - total).abs() < 0.02, "{j}: {share:?}");
        }
    }
}
