//! What is likeliest of a log-normal law when some results are known to lie below a limit only: both sides of the two
//! conditions, and the median that goes with a deviation. Logarithms of kg/m³ throughout.
//!
//! With z the distance of a logarithm from the median's in deviations, h(z) the normal density over the normal
//! distribution, the likelihood has its peak where, detected results on the left and non-detects on the right,
//! Σ z = Σ h(z) for the median and Σ z² = m + Σ z h(z) for the deviation, m being the results that were detected.

use crate::page::Series;
use stillrise_units::math::{exp, ln, normal_cdf, root, sqrt};

/// Below this the normal distribution is too small for a number, and its limiting form takes over.
const FAR: f64 = -30.0;

/// The normal density over the normal distribution.
fn hazard(z: f64) -> f64 {
    if z < FAR {
        return -z * (1.0 + 1.0 / (z * z));
    }
    exp(-z * z / 2.0) / sqrt(2.0 * core::f64::consts::PI) / normal_cdf(z)
}

/// The logarithms: detected, not detected.
pub(super) struct Logs {
    pub found: Vec<f64>,
    pub below: Vec<f64>,
}

impl Logs {
    pub fn of(results: &Series) -> Logs {
        let part = |detected: bool| {
            results.0.iter().filter(|(_, d)| (*d >= 1.0) == detected).map(|(c, _)| ln(*c)).collect::<Vec<f64>>()
        };
        Logs { found: part(true), below: part(false) }
    }

    /// Detected results, as a number.
    pub fn m(&self) -> f64 {
        self.found.iter().fold(0.0, |n, _| n + 1.0)
    }

    /// Σ z of the detected results.
    pub fn above(&self, s: f64, middle: f64) -> f64 {
        self.found.iter().fold(0.0, |sum, y| sum + (y - middle) / s)
    }
    /// Σ h(z) of the non-detects.
    pub fn pull(&self, s: f64, middle: f64) -> f64 {
        self.below.iter().fold(0.0, |sum, y| sum + hazard((y - middle) / s))
    }
    /// Σ z² of the detected results.
    pub fn squares(&self, s: f64, middle: f64) -> f64 {
        self.found.iter().fold(0.0, |sum, y| sum + (y - middle) / s * ((y - middle) / s))
    }
    /// Σ z h(z) of the non-detects.
    pub fn stretch(&self, s: f64, middle: f64) -> f64 {
        self.below.iter().fold(0.0, |sum, y| sum + (y - middle) / s * hazard((y - middle) / s))
    }

    /// The logarithm of the likeliest median for a deviation.
    pub fn middle(&self, s: f64) -> Option<f64> {
        let mean = self.found.iter().fold(0.0, |sum, y| sum + y) / self.m();
        if self.below.is_empty() {
            return Some(mean);
        }
        // The non-detects pull it below the mean of the rest. No h exceeds 0.8 where z is above nought.
        let least = self.below.iter().fold(f64::INFINITY, |least, y| if *y < least { *y } else { least });
        let far = mean - s * self.below.iter().fold(0.0, |n, _| n + 1.0) / self.m();
        let low = if far < least { far } else { least };
        root(low, mean, |middle| self.above(s, middle) - self.pull(s, middle))
    }
}
