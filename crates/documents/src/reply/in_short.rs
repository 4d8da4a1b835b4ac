//! The answer in five lines, for whoever reads no further.

use super::{asks, show};
use crate::summary::{capital, limit as named, statistic, units};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::largest;
use stillrise_design::basis::limits::PhLimit;
use stillrise_design::performance::limit::Word;
use stillrise_design::performance::promise::Promise;
use stillrise_search::Settled;
use stillrise_units::Typed;

/// The words on the limits, what leaves, the unit, what is needed beside it and what is asked first; nothing where no unit is
/// laid out, which is short enough, or where one stands, whose causes are told in their order.
pub(super) fn in_short(settled: &Settled) -> Vec<String> {
    let design = &settled.job.design;
    let (Some(basis), Some(performance), Some(train)) = (&design.basis, &design.performance, &design.train) else {
        return Vec::new();
    };
    if settled.job.enquiry.unit_stands() {
        return Vec::new();
    }
    let mut lines = Vec::new();
    let words = performance.limits.iter().filter_map(|verdict| {
        let limit = basis.limits.get(verdict.limit)?;
        Some(format!("{}, {}: {}", named(limit), statistic(settled, limit), verdict.says()))
    });
    let not_by_gravity =
        |limit: &PhLimit| format!("{}, {}: {}", limit.shown(), limit.statistic(), Word::NotByGravity.text());
    let words: Vec<String> = words.chain(basis.ph_limits.iter().map(not_by_gravity)).collect();
    if !words.is_empty() {
        lines.push(format!("{}.", capital(&words.join("; "))));
    }
    lines.extend(performance.worst().map(|worst| {
        format!(
            "What leaves, as we reckon it: {} of total oil, the mean of the worst case ({}).",
            Promise::of(worst.total.expected.q, worst.content.total.q).sentence(),
            worst.case
        )
    }));
    let units = units(train);
    let flow = largest(&basis.cases).map(|case| format!(" for {}", show(settled, case.feed.q.si(), FLOW_UNITS)));
    let condition = settled.pick.as_ref().is_some_and(|pick| pick.condition.is_some()) || settled.fails();
    let condition = if condition { ", on conditions that stand below" } else { "" };
    lines.push(format!("Size: {units}{}{condition}.", flow.unwrap_or_default()));
    let beside: Vec<&str> = train.stages.iter().filter(|s| s.asked_for).map(|s| s.name.as_str()).collect();
    if !beside.is_empty() {
        lines.push(format!("Needed beside it: {}.", beside.join(", ")));
    }
    let first = asks::questions(settled).into_iter().next();
    lines.extend(first.map(|first| format!("The first of our questions below: {first}")));
    lines
}
