//! Whether a result after a remedy tells that it helped: not where results before it lie where those after it may.

use super::{Diagnosis, SCATTER};
use stillrise_units::math::{Z_95, ceil, exp, ln, sqrt};
use stillrise_units::{Concentration, Typed};

/// More results than this nobody takes to try a remedy. Judgement.
const MOST: f64 = 30.0;

/// What tells whether a remedy helped, where one result does not.
#[derive(Debug, Clone, PartialEq)]
pub struct Telling {
    /// Results before the remedy that lie in the band expected after it.
    pub within: Vec<Concentration>,
    /// So many results, and the geometric mean below which they speak for the remedy; `None` where before and after lie
    /// too near to each other for any number that could be taken.
    pub results: Option<(usize, Concentration)>,
}

impl Diagnosis {
    /// What tells whether results have come into a band; `None` where no result before the remedy lies in it, so that one
    /// tells.
    ///
    /// Before and after are log-normal with one scatter s about the geometric means a and b: the geometric mean of n
    /// results lies on the right side of the one half-way between, 19 times in 20 either way, from
    /// n = (2 x 1.645 s / ln(a/b))^2 (sample size for two known means, any text on statistics).
    #[must_use]
    pub fn telling(&self, (low, high): (Concentration, Concentration)) -> Option<Telling> {
        let bad = self.seen.iter().filter(|s| !s.good && s.detected);
        let bad: Vec<Concentration> = bad.filter_map(|s| s.measured).filter(|c| c.si() > 0.0).collect();
        let within: Vec<Concentration> = bad.iter().copied().filter(|c| *c >= low && *c <= high).collect();
        if within.is_empty() {
            return None;
        }
        let scatter = self.calibration.map_or(SCATTER, |c| c.spread());
        let before = bad.iter().map(|c| ln(c.si())).sum::<f64>() / bad.len() as f64;
        let after = ln(sqrt(low.si() * high.si()));
        let root = 2.0 * Z_95 * scatter / (before - after);
        let results = ceil(root * root);
        let can = before > after && results <= MOST;
        let results = can.then(|| (results.max(1.0) as usize, Concentration::from_si(exp(0.5 * (before + after)))));
        Some(Telling { within, results })
    }
}
