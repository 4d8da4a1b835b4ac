//! What each set of laboratory results says: means, scatter, what was not detected, what silica gel takes off.
//!
//! A set stands beside what was stated and what is predicted, never in their place, with two exceptions: the scatter
//! of ten results or more of the water that leaves goes into the statistic of a limit, and the mean of the water that
//! comes stands in where nobody stated its oil.
//!
//! Results of the water that leaves are split by what was changed between them; those of the last time that has some
//! stand for the plant.

use super::influent::{Role, role};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Manner, SamplePoint, Samples};
use crate::enquiry::date::Date;
use crate::enquiry::results::Results;
use crate::provenance::Whence::Definition;
use crate::provenance::{Pair, Trail, Val, choose, given};
use crate::{by, reckon, record, say};
use stillrise_handbook::fluids::pollutants::{Counts, Gravity, Pollutant};
use stillrise_handbook::laboratory::{
    censored_deviation, censored_median, geometric_mean, log_deviation, lognormal_mean, lognormal_variation,
    mean_half_width, polar_share, sample_deviation, sample_mean, student_quantile,
};
use stillrise_handbook::page::Series;
use stillrise_units::catalog::{MG_L, ONE, PERCENT};
use stillrise_units::{Concentration, Ratio, Typed, ratio};

const MG: Pair = (&MG_L, &MG_L);
pub(super) const NUMBER: Pair = (&ONE, &ONE);
/// Results from which a coefficient of variation of their own replaces the usual one (EPA Technical Support Document, 1991).
pub const ENOUGH_FOR_SCATTER: usize = 10;
/// Results from which a set has a mean that may stand beside a stated one: below that its interval says nothing. Judgement.
pub const ENOUGH_FOR_MEAN: usize = 3;
/// Detected results below which no law is fitted through a set with non-detects. Judgement.
const ENOUGH_DETECTED: usize = 3;
/// Share of the results that must be detected for that (Helsel, 2012, from memory: above 80 % of non-detects no mean is estimated).
const LEAST_DETECTED: f64 = 0.2;
/// Share of Student's distribution below the upper end of an interval that holds the mean in 95 of 100 sets.
const UPPER: f64 = 0.975;

record! {
    /// The law through a set of results, and its mean.
    Law {
        /// geometric mean: the median
        geometric: Concentration;
        /// standard deviation of the logarithms
        deviation: Ratio;
        /// arithmetic mean
        mean: Concentration;
        /// coefficient of variation
        variation: Ratio;
        /// lower end of the interval that holds the true mean in 95 of 100 sets
        low: Concentration;
        /// its upper end
        high: Concentration;
        /// standard deviation that the interval rests on
        spread: Concentration;
    }
}
record! {
    /// The least and the most that the mean of a set with non-detects can be.
    Bounds {
        /// non-detects at zero
        least: Concentration;
        /// at half their reporting limits, for comparison
        half: Concentration;
        /// at their reporting limits
        most: Concentration;
    }
}
record! {
    /// What silica gel takes off, over the pairs of which the first result was detected.
    Polar {
        /// mean before silica gel
        before: Concentration;
        /// mean after it; what was not detected counts with its reporting limit
        after: Concentration;
        /// share that it takes off
        share: Ratio;
    }
}

/// Results of one time between changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part {
    /// The change that it begins with.
    pub since: Option<Date>,
    /// The change that it ends with.
    pub until: Option<Date>,
    /// Whether its results have a day; those without stand apart.
    pub dated: bool,
    /// Whether it is the last time that has results, which stand for the plant.
    pub last: bool,
}

impl Part {
    /// When that was, in words.
    #[must_use]
    pub fn says(&self) -> String {
        match (self.since, self.until) {
            _ if !self.dated => "on a day that was not said".to_owned(),
            (None, None) => String::new(),
            (None, Some(until)) => format!("before the change of {until}"),
            (Some(since), None) => format!("since the change of {since}"),
            (Some(since), Some(until)) => format!("between the changes of {since} and {until}"),
        }
    }
}

/// One set.
#[derive(Debug, Clone)]
pub struct SampleSet {
    /// Its place among the enquiry's sets.
    pub index: usize,
    /// Its name, with its time where it is a part of a set.
    pub name: String,
    /// Its time, where something was changed.
    pub part: Option<Part>,
    /// The places of its results among those of the enquiry's set.
    pub places: Vec<usize>,
    /// Of what.
    pub pollutant: &'static Pollutant,
    /// Of the water that comes, or that leaves.
    pub point: SamplePoint,
    /// How it was taken.
    pub manner: Option<Manner>,
    /// The results.
    pub results: Val<Series>,
    /// How many.
    pub count: usize,
    /// How many of them were detected.
    pub detected: usize,
    /// Smallest and largest result that was detected.
    pub ends: Option<(Val<Concentration>, Val<Concentration>)>,
    /// The highest reporting limit of what was not.
    pub reporting_limit: Option<Val<Concentration>>,
    /// The law through the results, where there are enough.
    pub law: Option<Law>,
    /// What the mean can be at all, where some were not detected.
    pub bounds: Option<Bounds>,
    /// What silica gel takes off, where that was analysed.
    pub polar: Option<Polar>,
    /// What becomes of its mean.
    pub role: Role,
    /// Pairs behind it, and whether some were not detected after silica gel, so that the share is the least it can be.
    pub pairs: (usize, bool),
}

impl SampleSet {
    /// Whether its mean says anything of the water: a sample from the surface holds the film, not the stream.
    #[must_use]
    pub fn is_of_the_stream(&self) -> bool {
        self.manner != Some(Manner::Surface)
    }
    /// Its law, where it may stand for the water: of the stream, and not of a time before the last.
    #[must_use]
    pub fn usable(&self) -> Option<&Law> {
        self.law.as_ref().filter(|_| self.is_of_the_stream() && self.part.is_none_or(|part| part.last))
    }
    /// Whether it is of the plant as it is: not of a time that ended with a change.
    #[must_use]
    pub fn is_of_today(&self) -> bool {
        self.part.is_none_or(|part| part.last && part.until.is_none())
    }
    /// Whether what is predicted is what it measures: oil that gravity touches, in mg/L.
    #[must_use]
    pub fn is_predicted(&self) -> bool {
        self.pollutant.gravity == Gravity::Touches && self.pollutant.counts == Counts::AllOil
    }
}

/// What all sets say.
pub fn evidence<T: Trail>(t: &mut T, e: &Enquiry) -> Vec<SampleSet> {
    let mut sets: Vec<SampleSet> = Vec::new();
    for (index, s) in e.samples.iter().enumerate() {
        match parts(e, s).as_slice() {
            [] => sets.extend(set(t, index, s, None, (0..s.results.items.len()).collect())),
            parts => {
                for (part, places) in parts {
                    sets.extend(set(t, index, &only(s, *part, places), Some(*part), places.clone()));
                }
            }
        }
    }
    for set in &mut sets {
        set.role = role(e, set);
    }
    sets
}

/// The times of a set of the water that leaves, in their order, with the places of its results; none where nothing was
/// changed.
fn parts(e: &Enquiry, s: &Samples) -> Vec<(Part, Vec<usize>)> {
    let mut days: Vec<Date> = e.changes.iter().filter_map(|c| c.date.0).collect();
    days.sort_unstable();
    days.dedup();
    if days.is_empty() || s.place.0 != Some(SamplePoint::Out) {
        return Vec::new();
    }
    let time = |s: &Samples, at: usize| s.day(at).map(|day| days.iter().filter(|of| **of <= day).count());
    let out = e.samples.iter().filter(|s| s.place.0 == Some(SamplePoint::Out));
    let last = out.flat_map(|s| (0..s.results.items.len()).filter_map(move |at| time(s, at))).max();
    let part = |at: Option<usize>| Part {
        since: at.and_then(|at| days.get(at.checked_sub(1)?).copied()),
        until: at.and_then(|at| days.get(at).copied()),
        dated: at.is_some(),
        last: at.is_some() && at == last,
    };
    let times = (0..=days.len()).map(Some).chain([None]);
    let places = |of: Option<usize>| (0..s.results.items.len()).filter(|at| time(s, *at) == of).collect::<Vec<_>>();
    times.map(|of| (part(of), places(of))).filter(|(_, places)| !places.is_empty()).collect()
}

/// A set with these of its results only.
fn only(s: &Samples, part: Part, places: &[usize]) -> Samples {
    let mut one = s.clone();
    let name = s.name.as_deref().unwrap_or("samples");
    one.name.0 = Some(format!("{name}, {}", part.says()));
    one.results.items = places.iter().filter_map(|at| s.results.items.get(*at).cloned()).collect();
    one.after_silica_gel.items = places.iter().filter_map(|at| s.after_silica_gel.items.get(*at).cloned()).collect();
    one.dates = places.iter().filter_map(|at| s.dates.get(*at).cloned()).collect();
    one
}

fn set<T: Trail>(t: &mut T, index: usize, s: &Samples, part: Option<Part>, places: Vec<usize>) -> Option<SampleSet> {
    let name = s.name.0.clone().unwrap_or_else(|| (index + 1).to_string());
    let pollutant = s.of()?;
    let point = s.place.0?;
    t.section(format_args!("samples {name}"));
    let series = s.results.series();
    let count = series.0.len();
    let results = read(t, "results, 1 detected or 0 below the reporting limit", &s.results, series);
    let found = |wanted: f64| results.q.0.iter().filter(move |(_, d)| *d == wanted).map(|(c, _)| *c);
    let detected = found(1.0).count();
    let smallest = found(1.0).reduce(f64::min);
    let largest = found(1.0).reduce(f64::max);
    let of = |t: &mut T, label: &str, si: f64| {
        choose(t, label, Some(MG), Concentration::from_si(si), "the results", "by size", &[results.at])
    };
    let ends = smallest.zip(largest).map(|(a, b)| (of(t, "smallest result", a), of(t, "largest result", b)));
    let reporting_limit = found(0.0).reduce(f64::max).map(|c| of(t, "highest reporting limit of a non-detect", c));
    let law = if detected < count { censored(t, &results, count, detected) } else { complete(t, &results, count) };
    let bounds = if detected < count { bounds(t, &results) } else { None };
    let (polar, pairs) = polar(t, s);
    let manner = s.manner.0;
    let set = SampleSet {
        index,
        name,
        part,
        places,
        pollutant,
        point,
        manner,
        results,
        count,
        detected,
        ends,
        reporting_limit,
        law,
        bounds,
        polar,
        role: Role::Leaves,
        pairs,
    };
    Some(set)
}

fn read<T: Trail>(t: &mut T, label: &str, of: &Results<Concentration>, series: Series) -> Val<Series> {
    let text = say!(T, "{}", of.text());
    given(t, label, Some(MG), series, &of.place, &text)
}

/// The law through results that were all detected; of one result there is none.
fn complete<T: Trail>(t: &mut T, results: &Val<Series>, count: usize) -> Option<Law> {
    if count < 2 {
        return None;
    }
    let geometric = by!(t, "geometric mean", geometric_mean::mean(results)).ok()?;
    let deviation = by!(t, "standard deviation of the logarithms", log_deviation::deviation(results)).ok()?;
    let all =
        given(t, "share of a reporting limit that counts", Some(PERCENTS), ratio(0.0), Definition, "none is needed");
    let mean = by!(t, "arithmetic mean", sample_mean::mean(results, all)).ok()?;
    let variation = by!(t, "coefficient of variation", lognormal_variation::variation(deviation)).ok()?;
    let scatter = by!(t, "standard deviation", sample_deviation::deviation(results)).ok()?;
    let (low, high) = interval(t, mean, scatter, count)?;
    Some(Law { geometric, deviation, mean, variation, low, high, spread: scatter })
}

const PERCENTS: Pair = (&PERCENT, &PERCENT);

/// The law that is likeliest through results of which some lie below a reporting limit.
fn censored<T: Trail>(t: &mut T, results: &Val<Series>, count: usize, detected: usize) -> Option<Law> {
    if detected < ENOUGH_DETECTED || (detected as f64) < LEAST_DETECTED * count as f64 {
        return None;
    }
    let deviation =
        by!(t, "standard deviation of the logarithms, likeliest", censored_deviation::deviation(results)).ok()?;
    let geometric = by!(t, "geometric mean, likeliest", censored_median::median(results, deviation)).ok()?;
    let mean = by!(t, "arithmetic mean of the likeliest law", lognormal_mean::mean(geometric, deviation)).ok()?;
    let variation = by!(t, "coefficient of variation", lognormal_variation::variation(deviation)).ok()?;
    let scatter =
        reckon!(t, "standard deviation of the likeliest law", [MG_L, MG_L], (mean = mean, cv = variation) mean * cv);
    let (low, high) = interval(t, mean, scatter, count)?;
    Some(Law { geometric, deviation, mean, variation, low, high, spread: scatter })
}

/// The interval of a mean by Student's t; its lower end is not below zero.
fn interval<T: Trail>(
    t: &mut T,
    mean: Val<Concentration>,
    scatter: Val<Concentration>,
    count: usize,
) -> Option<(Val<Concentration>, Val<Concentration>)> {
    let n = given(t, "results", Some(NUMBER), ratio(count as f64), "the set", "counted");
    let one = given(t, "one", Some(NUMBER), ratio(1.0), Definition, "1");
    let freedom = reckon!(t, "degrees of freedom", [ONE, ONE], (n = n, one = one) n - one);
    let share =
        given(t, "share below the upper end", Some(PERCENTS), ratio(UPPER), Definition, "95 % between the two ends");
    let quantile = by!(t, "Student's t", student_quantile::t(freedom, share)).ok()?;
    let half = by!(t, "half the width of the interval", mean_half_width::half_width(scatter, n, quantile)).ok()?;
    let low =
        reckon!(t, "lower end of the mean's interval", [MG_L, MG_L], (mean = mean, half = half) mean.max(half) - half);
    let high = reckon!(t, "upper end of the mean's interval", [MG_L, MG_L], (mean = mean, half = half) mean + half);
    Some((low, high))
}

fn bounds<T: Trail>(t: &mut T, results: &Val<Series>) -> Option<Bounds> {
    let mut at = |label: &str, share: f64| {
        let part = given(
            t,
            "share of a reporting limit that counts",
            Some(PERCENTS),
            ratio(share),
            Definition,
            "of what was not detected",
        );
        by!(t, label, sample_mean::mean(results, part)).ok()
    };
    Some(Bounds {
        least: at("arithmetic mean, non-detects at zero", 0.0)?,
        half: at("arithmetic mean, non-detects at half their limits", 0.5)?,
        most: at("arithmetic mean, non-detects at their limits", 1.0)?,
    })
}

/// What silica gel takes off, the pairs it rests on, and whether it is the least that it can be.
fn polar<T: Trail>(t: &mut T, s: &Samples) -> (Option<Polar>, (usize, bool)) {
    let pairs = || s.results.items.iter().zip(&s.after_silica_gel.items).filter(|(before, _)| before.detected);
    let count = pairs().count();
    if count == 0 {
        return (None, (0, false));
    }
    let at_least = pairs().any(|(_, after)| !after.detected);
    let series = |pick: &dyn Fn(usize) -> f64| Series((0..count).map(|k| (pick(k), 1.0)).collect());
    let (before, after): (Vec<f64>, Vec<f64>) = pairs().map(|(b, a)| (b.written.si(), a.written.si())).unzip();
    let units = Some(MG);
    let before = given(t, "before silica gel", units, series(&|k| before[k]), &s.results.place, "those detected");
    let text = say!(T, "{}", s.after_silica_gel.text());
    let after = given(t, "after silica gel", units, series(&|k| after[k]), &s.after_silica_gel.place, &text);
    let none = given(t, "share of a reporting limit that counts", Some(PERCENTS), ratio(1.0), Definition, "all of it");
    let mut found = || -> Option<Polar> {
        let before = by!(t, "mean before silica gel", sample_mean::mean(&before, none)).ok()?;
        let after = by!(t, "mean after silica gel", sample_mean::mean(&after, none)).ok()?;
        let share = by!(t, "polar share", polar_share::share(before, after)).ok()?;
        Some(Polar { before, after, share })
    };
    (found(), (count, at_least))
}
