//! What moves the effluent: one input at a time, and by its share in the spread.

use super::{HARDLY, limits, number, plainly, shown, words};
use crate::render::chart::{Axis, BarChart, Bars, Share, Swing};
use crate::summary::capital;
use stillrise_design::provenance::show_in_prose;
use stillrise_search::Settled;
use stillrise_units::math;

/// Inputs that are shown, by swing and by share; what moves less is told in the tables.
const SHOWN: (usize, usize) = (6, 8);

/// One input at a time at the ends of its range, the rest as in the basis; a sentence where none moves much, nothing where none
/// was tried or moves anything.
pub(super) fn tornado(settled: &Settled) -> Option<Result<(BarChart, String), String>> {
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
            let written = [words(low?, influent), words(high?, influent)].join(" / ");
            let (low, high) = (shown(low?, influent), shown(high?, influent));
            let [low_text, high_text] = [0, 1].map(|k| show_in_prose(&s.ends[k], s.input.units, system));
            let name = s.input.label.clone();
            (low.to_bits() != high.to_bits()).then_some(Swing { name, low, high, low_text, high_text, written })
        })
        .collect();
    swings.truncate(SHOWN.0);
    let first = swings.first()?;
    let ends = swings.iter().flat_map(|s| [s.low, s.high]).chain([centre]);
    let (least, most) = ends.fold((centre, centre), |(low, high), v| (math::min(low, v), math::max(high, v)));
    if most - least <= HARDLY * most {
        return Some(Err(format!(
            "Whichever of the uncertain quantities is moved alone over its range, the prediction stays within {} to {} mg/L; another answer to a question of this report may move it farther.",
            number(least),
            number(most)
        )));
    }
    let says = format!(
        "{} moves it most: between {} and {} the prediction is {} mg/L.",
        capital(&first.name),
        first.low_text,
        first.high_text,
        plainly(&first.written).replace(" / ", " to ")
    );
    let title = "What moves the effluent, one input at a time";
    let bars = Bars::Tornado { centre, swings, bounds: limits(settled) };
    Some(Ok((BarChart::new(title, Axis::linear("Total oil out", "mg/L"), bars), says)))
}

/// A share in whole per cent: the sample is good for no more.
fn whole(share: f64) -> f64 {
    math::floor(share.clamp(0.0, 1.0) * 100.0 + 0.5)
}

/// All inputs together: the share of each in the spread of the effluent.
pub(super) fn shares(settled: &Settled) -> Option<(BarChart, String)> {
    let risk = settled.risk.as_ref()?;
    let share = |c: &stillrise_search::risk::Carrier| Share {
        name: c.input.label.clone(),
        // More than with all others is the noise of few rows.
        first: whole(c.share.first.min(c.share.total)),
        total: whole(c.share.total),
    };
    // What rounds to nothing has no bar, and so no row.
    let shares: Vec<Share> = risk.carriers.iter().take(SHOWN.1).map(share).filter(|s| s.total > 0.0).collect();
    let axis = Axis::linear("Share of the spread (variance of the logarithm)", "%");
    let first = shares.first()?;
    let says =
        format!("{} carries most of it: {} % together with the others.", capital(&first.name), number(first.total));
    Some((BarChart::new("What carries the effluent's spread", axis, Bars::Shares(shares)), says))
}
