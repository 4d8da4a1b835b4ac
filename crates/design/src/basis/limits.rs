//! The limits on what leaves, each with its statistic and the long-term mean it demands.

use super::evidence::SampleSet;
use super::scatter;
use super::stated::{assumed, declared, stand_in, stated, stated_or, stated_or_usual};
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::{Limit, Statistic};
use crate::enquiry::limit_value::Ph;
use crate::provenance::{Pair, Stop, Trail, Val, WhatIf, Whence, given};
use crate::{by, record, say};
use stillrise_handbook::fluids::pollutants::Pollutant;
use stillrise_handbook::separation::{long_term_mean, permit_multiplier};
use stillrise_units::catalog::{MG_L, ONE, PERCENT};
use stillrise_units::{Concentration, Ratio, Typed, ratio};

/// One limit.
#[derive(Debug, Clone)]
pub struct LimitState {
    /// The pollutant.
    pub pollutant: &'static Pollutant,
    /// What the permit calls it, where somebody said.
    pub name: Option<String>,
    /// The number.
    pub value: Val<Concentration>,
    /// That no sheen may be seen, as it was said, so that the number is ours.
    pub unseen: Option<String>,
    /// Of which statistic.
    pub statistic: Val<Statistic>,
    /// Method of analysis, as stated.
    pub method: Option<String>,
    /// Who set it, as stated.
    pub authority: Option<String>,
    /// The long-term mean of the effluent that keeps it, for an average.
    pub mean: Option<Val<Concentration>>,
    /// How single results scatter, and the mean that this asks for; `None` for a rig test.
    pub scatter: Option<Scatter>,
}

impl LimitState {
    /// What it is a limit on, as the permit calls it.
    #[must_use]
    pub fn title(&self) -> &str {
        self.name.as_deref().unwrap_or(self.pollutant.title)
    }
}

record! {
    /// How results scatter about their long-term mean, log-normally, and what a limit on them asks of the mean.
    Scatter {
        /// coefficient of variation of single samples
        variation: Ratio;
        /// samples in the average; one for a single sample
        samples: Ratio;
        /// share of the samples, or of the averages, that is to keep the limit
        share: Ratio;
        /// limit over long-term mean
        multiplier: Ratio;
        /// long-term mean that keeps the limit
        mean: Concentration;
    }
}

/// A limit on pH: a range, of which gravity moves nothing, so that no prediction is held against it.
#[derive(Debug, Clone)]
pub struct PhLimit {
    /// The pollutant's row, with what is said of it.
    pub pollutant: &'static Pollutant,
    /// What the permit calls it, where somebody said.
    pub name: Option<String>,
    /// The lowest pH allowed.
    pub low: Val<Ratio>,
    /// The highest.
    pub high: Val<Ratio>,
    /// Of which statistic, if somebody said.
    pub statistic: Option<Val<Statistic>>,
    /// Method of analysis, as stated.
    pub method: Option<String>,
    /// Who set it, as stated.
    pub authority: Option<String>,
}

impl PhLimit {
    /// What it is a limit on, as the permit calls it.
    #[must_use]
    pub fn title(&self) -> &str {
        self.name.as_deref().unwrap_or(self.pollutant.title)
    }
    /// In print: `pH 6 to 9`.
    #[must_use]
    pub fn shown(&self) -> String {
        Ph { low: self.low.q.si(), high: self.high.q.si() }.to_string()
    }
    /// The statistic in print, if somebody said.
    #[must_use]
    pub fn statistic(&self) -> &'static str {
        self.statistic.map_or("statistic not stated", |s| s.q.word())
    }
}

/// Finds the limits on pH.
pub fn ph_limits<T: Trail>(t: &mut T, e: &Enquiry) -> Vec<PhLimit> {
    let mut limits = Vec::new();
    for (i, block) in e.limits.iter().enumerate() {
        let row = block.of();
        let (Some(row), Some(ph)) = (row, block.value.ph.0) else { continue };
        t.section(format_args!("limit {}: {}", i + 1, row.title));
        let claims = &block.value.ph.1;
        let source = claims.source(&claims.place);
        let text = claims.taken().map_or("", |told| &told.text);
        let end = |t: &mut T, label: &str, value: f64| given(t, label, Some((&ONE, &ONE)), ratio(value), &source, text);
        let low = end(t, "lowest pH allowed", ph.low);
        let high = end(t, "highest pH allowed", ph.high);
        let source = block.statistic().source_by_path();
        let statistic = block.statistic.0.map(|s| given(t, "statistic of the limit", None, s, &source, s.word()));
        let (method, authority) = (block.method.0.clone(), block.authority.0.clone());
        let name = block.name.0.clone();
        limits.push(PhLimit { pollutant: row, name, low, high, statistic, method, authority });
    }
    limits
}

/// Finds the limits.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn limits<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry, sets: &[SampleSet]) -> Result<Vec<LimitState>, Stop> {
    let mut limits = Vec::new();
    for (i, block) in e.limits.iter().enumerate() {
        let Some(row) = block.of() else { continue };
        t.section(format_args!("limit {}: {}", i + 1, row.title));
        let value = match &block.value.unseen {
            Some(_) => {
                let mg = |x: f64| Concentration::of(x, &MG_L);
                let source = "a rule of thumb for light oils; no law puts a number to a sheen (40 CFR 110.3)";
                let label = "free oil from which a sheen is seen";
                assumed(t, w, &block.value(), label, stand_in((mg(10.0), mg(15.0), mg(25.0)), source))
            }
            None => match stated(t, w, &say!(T, "limit on {}", row.title), &block.value) {
                Some(value) => value,
                None => continue,
            },
        };
        let statistic = match block.statistic.0 {
            Some(s) => {
                let source = T::RECORDS.then(|| block.statistic().source_by_path());
                given(t, "statistic of the limit", None, s, source, s.word())
            }
            // What nobody may see nobody may see at any time.
            None if block.value.unseen.is_some() => {
                let any = Statistic::AnySample;
                given(t, "statistic of the limit", None, any, "judged by eye", any.word())
            }
            None => {
                let range = (Statistic::DailyMaximum, Statistic::AnySample, Statistic::MonthlyAverage);
                let why = "any sample is the strictest reading of a bare number";
                assumed(t, w, &block.statistic().of(row.title), "statistic of the limit", stand_in(range, why))
            }
        };
        let mut state = LimitState {
            pollutant: row,
            name: block.name.0.clone(),
            value,
            unseen: block.value.unseen.clone(),
            statistic,
            method: block.method.0.clone(),
            authority: block.authority.0.clone(),
            mean: None,
            scatter: None,
        };
        let average = statistic.q == Statistic::MonthlyAverage;
        if statistic.q != Statistic::RigTest {
            let cv = variation(t, w, block, row, sets);
            let number = Some((&ONE, &ONE) as Pair);
            let n = if average {
                stated_or_usual(t, w, block.samples(), "samples in the average")
            } else {
                given(t, "samples in the average", number, ratio(1.0), Whence::Definition, "a single sample")
            };
            let (label, percentile, text) = if average {
                ("share of the months that keep it", 0.95, "95th percentile for averages")
            } else {
                (
                    "share of the samples that keep it",
                    0.99,
                    "99th percentile for a daily maximum; taken for any sample too",
                )
            };
            let source = "EPA Technical Support Document, 1991";
            let share = given(t, label, Some((&PERCENT, &PERCENT)), ratio(percentile), source, text);
            let multiplier = by!(t, "limit over long-term mean", permit_multiplier::multiplier(cv, n, share))?;
            let mean = by!(t, "long-term mean that keeps the limit", long_term_mean::mean(value, multiplier))?;
            state.mean = average.then_some(mean);
            state.scatter = Some(Scatter { variation: cv, samples: n, share, multiplier, mean });
        }
        limits.push(state);
    }
    Ok(limits)
}

/// How far single results scatter: as stated, else as ten results or more show, else the usual value.
fn variation<T: Trail>(
    t: &mut T,
    w: &WhatIf,
    block: &Limit,
    row: &'static Pollutant,
    sets: &[SampleSet],
) -> Val<Ratio> {
    if !block.variation.is_given()
        && let Some(found) = scatter::variation(t, sets, row)
    {
        return found;
    }
    let few = if T::RECORDS { scatter::too_few(sets, row) } else { String::new() };
    let label = say!(T, "coefficient of variation of the effluent, {}", row.title.to_lowercase());
    let spec = block.variation().spec;
    stated_or(t, w, block.variation(), &label, || declared(spec).adding(&few))
}
