//! What moves the effluent: one input at a time, and by its share in the spread.

use super::shown;
use crate::render::chart::{Axis, BarChart, Bars, Share, Swing};
use stillrise_design::provenance::show;
use stillrise_search::Settled;
use stillrise_units::math;

/// Inputs that are shown.
const SHOWN: usize = 8;

/// One input at a time at the ends of its range, the rest as in the basis.
pub(super) fn tornado(settled: &Settled) -> Option<BarChart> {
    let worst = settled.job.design.performance.as_ref()?.worst()?;
    let influent = worst.content.total.q;
    let centre = shown(worst.total.expected.q, influent);
    let system = settled.job.enquiry.system();
    let mut swings: Vec<Swing> = settled
        .risk
        .iter()
        .flat_map(|risk| &risk.swings)
        .filter_map(|s| {
            let [low, high] = s.effluent;
            let (low, high) = (shown(low?, influent), shown(high?, influent));
            let [low_text, high_text] = [0, 1].map(|k| show(&s.ends[k], s.input.units, system));
            let name = s.input.label.clone();
            (low.to_bits() != high.to_bits()).then_some(Swing { name, low, high, low_text, high_text })
        })
        .collect();
    swings.truncate(SHOWN);
    let title = "What moves the effluent, one input at a time";
    let bars = Bars::Tornado { centre, swings };
    let any = matches!(&bars, Bars::Tornado { swings, .. } if !swings.is_empty());
    any.then(|| BarChart::new(title, Axis::linear("Total oil out", "mg/L"), bars))
}

/// A share in whole per cent: the sample is good for no more.
fn whole(share: f64) -> f64 {
    math::floor(share.clamp(0.0, 1.0) * 100.0 + 0.5)
}

/// All inputs together: the share of each in the spread of the effluent.
pub(super) fn shares(settled: &Settled) -> Option<BarChart> {
    let risk = settled.risk.as_ref()?;
    let share = |c: &stillrise_search::risk::Carrier| Share {
        name: c.input.label.clone(),
        // More than with all others is the noise of few rows.
        first: whole(c.share.first.min(c.share.total)),
        total: whole(c.share.total),
    };
    let shares: Vec<Share> = risk.carriers.iter().take(SHOWN).map(share).collect();
    let axis = Axis::linear("Share of the variance of the logarithm", "%");
    (!shares.is_empty()).then(|| BarChart::new("What carries the effluent's spread", axis, Bars::Shares(shares)))
}
