//! The limits on what leaves, each with its statistic and the long-term mean it demands.

use super::stated::{standby, stated, stated_or};
use crate::by;
use crate::enquiry::Enquiry;
use crate::enquiry::blocks::Statistic;
use crate::provenance::{Standby, Stop, Trail, Val, WhatIf, assume, given};
use crate::say;
use stillrise_handbook::fluids::pollutants::{Pollutant, pollutant};
use stillrise_handbook::separation::{long_term_mean, permit_multiplier};
use stillrise_units::catalog::{ONE, PERCENT};
use stillrise_units::{Concentration, Ratio, ratio};

/// One limit.
#[derive(Debug, Clone)]
pub struct LimitState {
    /// The pollutant.
    pub pollutant: &'static Pollutant,
    /// The number.
    pub value: Val<Concentration>,
    /// Of which statistic.
    pub statistic: Val<Statistic>,
    /// Method of analysis, as stated.
    pub method: Option<String>,
    /// Who set it, as stated.
    pub authority: Option<String>,
    /// The long-term mean of the effluent that keeps it, for an average.
    pub mean: Option<Val<Concentration>>,
    /// The multiplier behind that.
    pub multiplier: Option<Val<Ratio>>,
}

/// Finds the limits.
///
/// # Errors
/// [`Stop`] when a formula has no answer.
pub fn limits<T: Trail>(t: &mut T, w: &WhatIf, e: &Enquiry) -> Result<Vec<LimitState>, Stop> {
    let mut limits = Vec::new();
    for (i, block) in e.limits.iter().enumerate() {
        let Some(row) = block.pollutant.as_deref().and_then(pollutant) else { continue };
        t.section(format_args!("limit {}: {}", i + 1, row.title));
        let Some(value) = stated(t, w, &say!(T, "limit on {}", row.title), &block.value) else { continue };
        let key = format!("limit \"{}\"", row.word);
        let statistic = match block.statistic.0 {
            Some(s) => given(t, "statistic of the limit", None, s, &format!("{key}.statistic"), s.word()),
            None => assume(
                t,
                w,
                Standby {
                    label: "statistic of the limit",
                    units: None,
                    key: format!("{key}.statistic").into(),
                    question: say!(
                        T,
                        "Is the limit on {} for any sample, a daily maximum or a monthly average, and by which method?",
                        row.title
                    )
                    .into(),
                    value: Statistic::AnySample,
                    low: Statistic::DailyMaximum,
                    high: Statistic::MonthlyAverage,
                    source: "any sample is the strictest reading of a bare number".into(),
                },
            ),
        };
        let mut state = LimitState {
            pollutant: row,
            value,
            statistic,
            method: block.method.clone(),
            authority: block.authority.clone(),
            mean: None,
            multiplier: None,
        };
        if statistic.q == Statistic::MonthlyAverage {
            let cv = stated_or(
                t,
                w,
                &block.variation,
                standby(
                    "coefficient of variation of the effluent",
                    (&ONE, &ONE),
                    format!("{key}.variation"),
                    "Are there effluent data that show how far the results scatter?",
                    (ratio(0.3), ratio(0.6), ratio(1.2)),
                    "EPA Technical Support Document, 1991: 0.6 when fewer than ten results exist",
                ),
            );
            let n = stated_or(
                t,
                w,
                &block.samples,
                standby(
                    "samples in the average",
                    (&ONE, &ONE),
                    format!("{key}.samples"),
                    "How many samples make the monthly average?",
                    (ratio(1.0), ratio(4.0), ratio(10.0)),
                    "weekly sampling",
                ),
            );
            let p = given(
                t,
                "share of the months that keep it",
                Some((&PERCENT, &PERCENT)),
                ratio(0.95),
                "EPA Technical Support Document, 1991",
                "95th percentile for averages",
            );
            let multiplier = by!(t, "limit over long-term mean", permit_multiplier::multiplier(cv, n, p))?;
            state.multiplier = Some(multiplier);
            state.mean = Some(by!(t, "long-term mean that keeps the limit", long_term_mean::mean(value, multiplier))?);
        }
        limits.push(state);
    }
    Ok(limits)
}
