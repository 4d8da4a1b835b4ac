//! Whether a result after a remedy tells that it helped: not where results before it lie where those after it may.

use super::{Diagnosis, Explanation, SCATTER, Seen};
use stillrise_design::enquiry::date::Date;
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

/// Results this many scatters off are missed. Judgement: one in twenty lies beyond by chance.
const MISSED: f64 = 2.0;
/// A single result so many scatters above those of the good period is worse. Judgement: three in two thousand by chance.
const WORSE: f64 = 3.0;

impl Diagnosis {
    /// Results that are to be explained.
    fn bad(&self) -> impl Iterator<Item = &Seen> {
        self.seen.iter().filter(|s| !s.good && s.measured.is_some_and(|c| c.si() > 0.0))
    }

    fn spread(&self) -> f64 {
        self.calibration.map_or(SCATTER, |c| c.spread())
    }

    /// Whether results that are to be explained are worse than the good period's, or without one than the calculation
    /// expects; `None` where nothing was measured. What was not detected is no worse.
    #[must_use]
    pub fn is_worse(&self) -> Option<bool> {
        let bad: Vec<&Seen> = self.bad().collect();
        let detected: Vec<&Seen> = bad.iter().copied().filter(|s| s.detected).collect();
        let over = |s: &&Seen| {
            let expected = self.calibration.map_or(s.expected, |c| c.mean);
            s.measured.map_or(0.0, |c| ln(c.si()) - ln(expected.si().max(1e-9)))
        };
        let most = if self.calibration.is_some() { WORSE * self.spread() } else { 0.0 };
        let n = detected.len() as f64;
        let mean = detected.iter().map(over).sum::<f64>() / n.max(1.0);
        let level = if self.calibration.is_some() { Z_95 * self.spread() } else { 0.0 };
        (!bad.is_empty()).then(|| detected.iter().any(|s| over(s) > most) || mean > level)
    }

    /// Whether a result with a day was measured on or after that of a change; one without a day is no such result.
    #[must_use]
    pub fn is_measured_since(&self, since: Option<Date>) -> bool {
        self.bad().any(|s| since.is_none_or(|since| s.observed.date.0.is_some_and(|day| day >= since)))
    }

    /// Scatter of the detected results that are to be explained about their own mean, as the standard deviation of their
    /// logarithm; `None` with less than three.
    #[must_use]
    pub fn own_spread(&self) -> Option<f64> {
        let logs: Vec<f64> = self.bad().filter(|s| s.detected).filter_map(|s| Some(ln(s.measured?.si()))).collect();
        let n = logs.len() as f64;
        let mean = logs.iter().sum::<f64>() / n.max(1.0);
        let squares: f64 = logs.iter().map(|x| (x - mean) * (x - mean)).sum();
        (logs.len() > 2).then(|| sqrt(squares / (n - 1.0)))
    }

    /// How many of the results that are to be explained an explanation misses by more than twice their scatter, of how many.
    #[must_use]
    pub fn missed(&self, e: &Explanation) -> (usize, usize) {
        let pairs = e.effluent.iter().zip(&self.seen).filter(|(_, s)| !s.good);
        let off: Vec<f64> = pairs
            .filter_map(|(out, s)| {
                let off = ln(out.as_ref()?.si().max(1e-9)) - ln(s.measured?.si().max(1e-9));
                Some(if s.detected { off } else { off.max(0.0) })
            })
            .collect();
        let missed = off.iter().filter(|off| off.abs() > MISSED * self.spread()).count();
        (missed, off.len())
    }

    /// The result that lies farthest from the geometric mean of the others, where there are three or more.
    #[must_use]
    pub fn lies_apart(&self) -> Option<&Seen> {
        let all: Vec<(&Seen, f64)> = self.bad().filter_map(|s| Some((s, ln(s.measured?.si())))).collect();
        let mean = all.iter().map(|(_, x)| x).sum::<f64>() / all.len().max(1) as f64;
        let far = |x: f64| (x - mean).abs();
        (all.len() > 2).then(|| all.into_iter().max_by(|a, b| far(a.1).total_cmp(&far(b.1)))).flatten().map(|(s, _)| s)
    }

    /// What tells whether results have come into a band; `None` where no result before the remedy lies in it, so that one
    /// tells.
    ///
    /// Before and after are log-normal about the geometric means a and b, with the scatters s and t: the geometric mean of n
    /// results lies on the right side of the one that parts ln(a/b) as s to t, 19 times in 20 either way, from
    /// n = (1.645 (s + t) / ln(a/b))^2 (sample size for two known means, any text on statistics). One result never tells:
    /// one such as it is to be was measured without the remedy.
    #[must_use]
    pub fn telling(&self, (low, high): (Concentration, Concentration)) -> Option<Telling> {
        // What was measured before the last change is of another state of the plant.
        let last = self.last_change;
        let since = |s: &&Seen| last.is_none_or(|last| s.observed.date.0.is_none_or(|day| day >= last));
        let bad = self.seen.iter().filter(|s| !s.good && s.detected).filter(since);
        let bad: Vec<Concentration> = bad.filter_map(|s| s.measured).filter(|c| c.si() > 0.0).collect();
        let within: Vec<Concentration> = bad.iter().copied().filter(|c| *c >= low && *c <= high).collect();
        if within.is_empty() {
            return None;
        }
        let scatter = self.calibration.map_or(SCATTER, |c| c.spread());
        let n = bad.len() as f64;
        let before = bad.iter().map(|c| ln(c.si())).sum::<f64>() / n;
        // Results that scatter more than those of the good period are not taken to scatter as little.
        let squares: f64 = bad.iter().map(|c| (ln(c.si()) - before) * (ln(c.si()) - before)).sum();
        let own = if bad.len() > 1 { sqrt(squares / (n - 1.0)) } else { 0.0 };
        let wide = own.max(scatter);
        let after = ln(sqrt(low.si() * high.si()));
        let root = Z_95 * (wide + scatter) / (before - after);
        let results = ceil(root * root);
        let can = before > after && results <= MOST;
        let results = can.then(|| {
            let between = after + (before - after) * scatter / (wide + scatter);
            (results.max(2.0) as usize, Concentration::from_si(exp(between)))
        });
        Some(Telling { within, results })
    }
}
