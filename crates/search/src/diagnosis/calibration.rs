//! The good period: the unit as it ran well is the baseline that everything later is held against.

use super::fit::Last;
use super::situation::{Occasion, Situation};
use stillrise_design::enquiry::blocks::{Change, Observed};
use stillrise_design::enquiry::observations::GOOD;
use stillrise_design::provenance::{Entry, Origin};
use stillrise_design::{Ledger, Node};
use stillrise_handbook::page::Arg;
use stillrise_units::math::{Z_95, exp, ln, sqrt};
use stillrise_units::{Concentration, Typed};

/// Scatter of a measured over the true oil content, as the standard deviation of its logarithm: sampling and
/// laboratory together, where the good period does not tell. Engineering judgement.
pub const SCATTER: f64 = 0.4;
/// So many results of the good period tell their scatter. Engineering judgement: with five the true one lies, 19 times in
/// 20, between 0.60 and 2.9 times that found (chi-square with 4 degrees of freedom, 11.14 and 0.484 of any table).
pub const ENOUGH: usize = 5;
/// No scatter is taken for less: a laboratory alone repeats hexane extractions of one water to about a tenth (EPA
/// method 1664, precision of its own, from memory).
const LEAST: f64 = 0.11;
/// How far influent and median droplet may lie off the basis where it states no range: nine in ten within. Judgement.
const INFLUENT: (f64, f64) = (0.4, 2.5);
const MEDIAN: (f64, f64) = (0.5, 2.0);
/// How far the chain itself may lie off where influent and droplets are right: within this factor nine times in ten.
/// Engineering judgement.
const CHAIN: f64 = 2.0;
/// Steps over each, and rounds.
const STEPS: u32 = 12;
const ROUNDS: u32 = 4;

/// Over the basis and the chain, as the good period has them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Factors {
    /// Oil that arrives, over that of the basis, where it was not measured.
    pub influent: f64,
    /// Median droplet over that of the basis.
    pub median: f64,
    /// Oil that leaves over what the chain gives with these two.
    pub rest: f64,
}

/// What the good period says of the unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Calibration {
    /// Results it rests on.
    pub samples: usize,
    /// Of them not detected: these count in the mean with their reporting limit, which it then is at most.
    pub undetected: usize,
    /// Their geometric mean.
    pub mean: Concentration,
    /// What the chain expected there before, by the same mean.
    pub before: Concentration,
    /// What it expects now.
    pub after: Concentration,
    /// By what the basis and the chain are corrected.
    pub factors: Factors,
    /// Standard deviation of the logarithm of the results about what is expected, where there were enough.
    pub scatter: Option<f64>,
}

impl Calibration {
    /// Scatter to reckon with.
    #[must_use]
    pub fn spread(&self) -> f64 {
        self.scatter.unwrap_or(SCATTER)
    }
}

/// Whether an observation belongs to the good period: marked so, or before the first change and not marked otherwise.
pub(super) fn is_good(o: &Observed, changes: &[Change]) -> bool {
    match o.regime.as_deref().map(str::trim) {
        Some(regime) if !regime.is_empty() => regime.eq_ignore_ascii_case(GOOD),
        _ => match (o.date.0, changes.iter().filter_map(|c| c.date.0).min()) {
            (Some(day), Some(first)) => day < first,
            _ => false,
        },
    }
}

/// Calibrates the unit's unknowns on the good period and puts them into every occasion; `None` without a result there.
pub(super) fn calibrate(ledger: &Ledger, occasions: &mut [Occasion<'_>]) -> Option<Calibration> {
    let good: Vec<usize> =
        (0..occasions.len()).filter(|k| occasions[*k].good && measured(&occasions[*k]).is_some()).collect();
    let first = &occasions[*good.first()?];
    let (content, d50) = first.unknown();
    let ranges = [plausible(ledger, content, INFLUENT), plausible(ledger, d50, MEDIAN)];
    let before = mean(good.iter().map(|k| expected(&occasions[*k], 1.0, 1.0)))?;
    let results = mean(good.iter().filter_map(|k| measured(&occasions[*k])))?;
    let mut scatter = SCATTER;
    let mut found = None;
    let mut factors = [1.0, 1.0];
    // Once with the judged scatter, once with the one that this leaves.
    for _ in 0..2 {
        factors = fit(occasions, &good, ranges, scatter);
        // What was not detected does not show its scatter.
        let off = |k: &usize| {
            occasions[*k].detected.then_some(())?;
            Some(ln(measured(&occasions[*k])?) - ln(expected(&occasions[*k], factors[0], factors[1]).max(1e-9)))
        };
        let off: Vec<f64> = good.iter().filter_map(off).filter(|x| x.is_finite()).collect();
        if off.len() < ENOUGH {
            break;
        }
        let n = off.len() as f64;
        let middle = off.iter().sum::<f64>() / n;
        let squares: f64 = off.iter().map(|x| (x - middle) * (x - middle)).sum();
        scatter = sqrt(squares / (n - 1.0)).max(LEAST);
        found = Some(scatter);
    }
    let undetected = good.iter().filter(|k| !occasions[**k].detected).count();
    let fitted = mean(good.iter().map(|k| expected(&occasions[*k], factors[0], factors[1])))?;
    let rest = rest(results / fitted, undetected > 0, scatter * scatter / good.len() as f64);
    let factors = Factors { influent: factors[0], median: factors[1], rest };
    for o in occasions.iter_mut() {
        o.calibrate(factors);
    }
    let after = mean(good.iter().map(|k| occasions[*k].effluent(&occasions[*k].usual())))?;
    let [mean, before, after] = [results, before, after].map(Concentration::from_si);
    Some(Calibration { samples: good.len(), undetected, mean, before, after, factors, scatter: found })
}

/// What the factors leave of the results over what is expected, drawn to one by how surely the chain is right beside how
/// surely the mean is known (normal prior and normal mean of the logarithms, any text on statistics). A mean that is one
/// at most does not raise what is expected.
fn rest(measured_over_expected: f64, at_most: bool, variance: f64) -> f64 {
    let off = ln(measured_over_expected);
    let own = (ln(CHAIN) / Z_95) * (ln(CHAIN) / Z_95);
    if at_most && off > 0.0 || !off.is_finite() { 1.0 } else { exp(off * own / (own + variance)) }
}

fn measured(o: &Occasion<'_>) -> Option<f64> {
    o.observed.oil_out.q().map(Typed::si).filter(|x| *x > 0.0)
}

/// What should leave on an occasion with these factors, kg/m3.
fn expected(o: &Occasion<'_>, influent: f64, median: f64) -> f64 {
    o.effluent(&with(o, influent, median))
}

/// An occasion with these factors.
fn with(o: &Occasion<'_>, influent: f64, median: f64) -> Situation {
    let mut s = o.usual();
    if !o.observed.oil_in.is_given() {
        s.influent *= influent;
    }
    s.median *= median;
    s
}

/// The factors at which the good period is explained best, drawn to one as far as the ranges are narrow.
fn fit(occasions: &[Occasion<'_>], good: &[usize], ranges: [(f64, f64); 2], scatter: f64) -> [f64; 2] {
    let misfit = |f: [f64; 2]| {
        let mut sum = 0.0;
        let mut last = Last::default();
        for k in good {
            let o = &occasions[*k];
            let Some(result) = measured(o) else { continue };
            let out = last.effluent(o, with(o, f[0], f[1]));
            if !out.is_finite() {
                return f64::INFINITY;
            }
            let off = o.off(out, result) / scatter;
            sum += off * off;
        }
        for (factor, (low, high)) in f.into_iter().zip(ranges) {
            let end = if factor > 1.0 { ln(high) } else { -ln(low) };
            let off = ln(factor) / (end / Z_95);
            sum += off * off;
        }
        sum
    };
    let mut best = [1.0, 1.0];
    let mut least = misfit(best);
    let mut reach = 1.0;
    for _ in 0..ROUNDS {
        // Both at once: one can stand in for the other, and the valley lies across.
        let about = best;
        let at = |k: usize, step: u32| {
            let (from, to) = (ln(ranges[k].0), ln(ranges[k].1));
            let share = f64::from(step) / f64::from(STEPS) - 0.5;
            exp((ln(about[k]) + share * 2.0 * reach * (to - from)).clamp(from, to))
        };
        for tried in (0..=STEPS).flat_map(|i| (0..=STEPS).map(move |j| (i, j))).map(|(i, j)| [at(0, i), at(1, j)]) {
            let there = misfit(tried);
            if there < least {
                (least, best) = (there, tried);
            }
        }
        reach *= 0.25;
    }
    best
}

/// The range of a value over the value, where somebody stated one or it was assumed with one.
fn plausible(ledger: &Ledger, at: Node, otherwise: (f64, f64)) -> (f64, f64) {
    let of = |entry: &Entry| {
        let (low, high) = match (&entry.range, &entry.origin) {
            (Some(within), _) => (&within.low, &within.high),
            (None, Origin::Assumed(a)) => (&a.low, &a.high),
            _ => return None,
        };
        let (Arg::Number(low), Arg::Number(high), Arg::Number(value)) = (low, high, &entry.value) else { return None };
        // Ends at the value itself leave nothing to find on that side.
        let ends = (low / value, high / value);
        (*value > 0.0 && ends.0 > 0.0 && ends.0 < 0.999 && ends.1 > 1.001 && ends.1.is_finite()).then_some(ends)
    };
    ledger.entry(at).and_then(of).unwrap_or(otherwise)
}

/// Geometric mean of what is above zero.
fn mean(of: impl Iterator<Item = f64>) -> Option<f64> {
    let logs: Vec<f64> = of.filter(|x| *x > 0.0 && x.is_finite()).map(ln).collect();
    (!logs.is_empty()).then(|| exp(logs.iter().sum::<f64>() / logs.len() as f64))
}
