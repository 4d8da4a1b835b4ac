//! A result over all samples, by its percentiles.

use stillrise_units::{Concentration, Typed};

/// A result over all samples.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// One in twenty lies below.
    pub low: Concentration,
    /// Half lies below.
    pub median: Concentration,
    /// One in twenty lies above.
    pub high: Concentration,
    /// The mean.
    pub mean: Concentration,
}

/// Percentiles of a result, straight between the sorted samples.
pub(super) fn spread(mut values: Vec<f64>) -> Spread {
    // A case that a sample does not have says nothing there.
    values.retain(|value| value.is_finite());
    if values.is_empty() {
        values.push(f64::NAN);
    }
    values.sort_by(f64::total_cmp);
    let at = |share: f64| {
        let place = share * (values.len() - 1) as f64;
        let below = place as usize;
        let above = (below + 1).min(values.len() - 1);
        values[below] + (values[above] - values[below]) * (place - below as f64)
    };
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    let [low, median, high, mean] = [at(0.05), at(0.5), at(0.95), mean].map(Concentration::from_si);
    Spread { low, median, high, mean }
}
