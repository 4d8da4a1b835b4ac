//! What was measured in the water that leaves, beside each limit on oil, the time before a change apart from that since.

use stillrise_design::basis::limits::LimitState;
use stillrise_design::performance::heard::Measured;
use stillrise_design::performance::promise::{Promise, number};
use stillrise_search::Settled;
use stillrise_search::results::{Period, compares, periods, periods_of};
use stillrise_units::Typed;

/// A sentence for each limit that the results can be held against.
pub(crate) fn lines(settled: &Settled) -> Vec<String> {
    let enquiry = &settled.job.enquiry;
    let Some(basis) = &settled.job.design.basis else { return Vec::new() };
    let all = periods(enquiry);
    let apart: Vec<String> = others(settled).into_iter().chain(unplaced(settled)).collect();
    if all.is_empty() {
        return apart;
    }
    let place = if enquiry.unit_stands() { "the unit that stands" } else { "the existing plant" };
    let compared: Vec<&LimitState> = basis.limits.iter().filter(|l| compares(l)).collect();
    if compared.is_empty() {
        let told: Vec<String> = all.iter().map(|p| format!("{}{}", list(p), when(p))).collect();
        let told = format!("Total oil measured at {place}: {}.", told.join("; "));
        return core::iter::once(told).chain(apart).collect();
    }
    // The results stand once, however many limits they are held against.
    let says = |(k, l): (usize, &LimitState)| {
        if k > 0 {
            let told: Vec<String> = all.iter().map(|p| format!("{}{}", against(p, l), when(p))).collect();
            return format!("Against the limit on {}: {}.", super::limit(l), told.join("; "));
        }
        let limit = format!("the limit on {}", super::limit(l));
        let told: Vec<String> = all.iter().map(|p| format!("{}{}, {}", list(p), when(p), against(p, l))).collect();
        let other = if enquiry.unit_stands() || all.iter().all(|p| p.against(l).is_none()) {
            ""
        } else {
            " That plant was not described, so what is said here is of the unit offered, not of it."
        };
        format!("Measured at {place}, against {limit}: {}.{other}", told.join("; "))
    };
    compared.into_iter().enumerate().map(says).chain(uncorrected(settled)).chain(apart).collect()
}

/// What was measured of that which is no total oil, a sentence for each limit on it.
fn others(settled: &Settled) -> Vec<String> {
    let limits = settled.job.design.basis.iter().flat_map(|b| &b.limits).filter(|l| !compares(l));
    let says = |l: &LimitState| {
        let all = periods_of(&settled.job.enquiry, l);
        let told: Vec<String> = all.iter().map(|p| format!("{}{}, {}", list(p), when(p), against(p, l))).collect();
        let limit = super::limit(l);
        (!told.is_empty())
            .then(|| format!("Measured at the unit that stands, against the limit on {limit}: {}.", told.join("; ")))
    };
    limits.filter_map(says).collect()
}

/// From which factor between what was measured in the good period and what is calculated there it is said.
const OFF: f64 = 1.25;

/// That the calculation behind the limits is not corrected by what was measured while the unit ran well, where it is off
/// there.
fn uncorrected(settled: &Settled) -> Option<String> {
    let c = settled.diagnosis.as_ref()?.calibration?;
    let (before, mean) = (c.before.si(), c.mean.si());
    // Where some were not detected the mean is a bound from above.
    let bound = c.undetected > 0;
    let off = before > OFF * mean || !bound && mean > OFF * before;
    let most = if bound { "at most " } else { "" };
    let basis = settled.rated().design.basis.as_ref();
    let pulsates = basis.and_then(|b| b.feed.pulsation).is_some_and(|p| p.q.si() > 1.1);
    let mean_flow = if pulsates { ", at the mean flow of the pump without its strokes," } else { "" };
    off.then(|| {
        format!(
            "While the unit ran well, {most}{} were measured in the mean, where the calculation on this basis{mean_flow} gives {}. What is calculated here is not corrected for that; the causes are weighed with the correction.",
            number(c.mean),
            Promise::unbounded(c.before).sentence()
        )
    })
}

/// That results without a day stand neither before nor after a change, a sentence for each set that has some.
pub(crate) fn unplaced(settled: &Settled) -> Vec<String> {
    let says = |(name, count): (String, usize)| {
        let results = if count == 1 { "1 result".to_owned() } else { format!("{count} results") };
        let (has, lies) = if count == 1 { ("has", "it lies") } else { ("have", "they lie") };
        format!(
            "{results} of \"{name}\" {has} no day that can be read: whether {lies} before or after what was changed is not known, and the comparison before and after is made without."
        )
    };
    let of_limits = settled.job.design.basis.iter().flat_map(|b| &b.limits).filter_map(|l| undated(settled, l));
    settled.job.enquiry.unplaced().into_iter().map(says).chain(of_limits).collect()
}

/// How results without a day stand against a limit: for one on single samples that needs no day.
fn undated(settled: &Settled, limit: &LimitState) -> Option<String> {
    let results = settled.job.enquiry.unplaced_results();
    if results.is_empty() || !compares(limit) || is_average(limit) {
        return None;
    }
    let above = results.iter().filter(|(detected, c)| *detected && *c > limit.value.q).count();
    let of = results.len();
    Some(format!("{above} of the {of} without a day lie above the limit of {}.", number(limit.value.q)))
}

fn list(p: &Period) -> String {
    let below = p.not_detected.iter().map(|c| format!("<{}", number(*c)));
    p.results.iter().map(|c| number(*c)).chain(below).collect::<Vec<_>>().join(", ")
}

/// When, where something was changed: ` before 2026-08-10`.
fn when(p: &Period) -> String {
    match (p.since, p.until, p.dated) {
        (None, None, true) => String::new(),
        (_, _, false) => " on a day that was not said".to_owned(),
        (None, Some(until), _) => format!(" before the change of {until}"),
        (Some(since), None, _) => format!(" since the change of {since}"),
        (Some(since), Some(until), _) => format!(" between the changes of {since} and {until}"),
    }
}

/// How the results of one time stand against a limit.
fn against(p: &Period, limit: &LimitState) -> String {
    let of = p.count();
    match (p.against(limit), of) {
        (Some(Measured { months: Some((over, months)), .. }), _) => {
            format!("the mean of {over} of {months} months above it")
        }
        (Some(m), 1) if m.mean.is_some() => "above it".to_owned(),
        (Some(m), _) if m.mean.is_some() => {
            let mean = m.mean.map(number).unwrap_or_default();
            format!("their mean of {mean} above it")
        }
        (Some(_), 1) => "above it".to_owned(),
        (Some(m), _) if m.above == of => format!("{} above it", all(of)),
        (Some(m), _) => format!("{} of {of} above it", m.above),
        (None, 1) => "within it".to_owned(),
        (None, _) if is_average(limit) => "their mean within it".to_owned(),
        (None, _) => format!("{} within it", all(of)),
    }
}

fn all(of: usize) -> String {
    if of == 2 { "both".to_owned() } else { format!("all {of}") }
}

fn is_average(limit: &LimitState) -> bool {
    limit.statistic.q == stillrise_design::enquiry::blocks::Statistic::MonthlyAverage
}
