//! What must change or be settled before the offer holds.

use crate::summary::capital;
use stillrise_checks::rules::{
    chain_stopped, emulsion_above_limit, frost_outdoors, fuel_dissolves_uncounted, limit_it_cannot_touch,
    limit_not_shown, meter_contradicts_hours, not_a_gravity_duty, oil_outside_scope, only_partly_gravity,
    promise_under_floor, rain_table_starts_late, sheared_before_unit, solids_bury_pack, spill_without_closure,
    sump_overflows,
};
use stillrise_checks::{Grade, Judged, Rule};
use stillrise_design::enquiry::blocks::{Feed, Receiver};
use stillrise_design::triage::{About, Weight};
use stillrise_handbook::fluids::chemicals::Way;
use stillrise_search::Settled;

/// What the headline and the triage have said, and what only the calculation's reader understands, is not said again.
static SAID: &[&Rule] = &[
    &not_a_gravity_duty::RULE,
    &only_partly_gravity::RULE,
    &limit_it_cannot_touch::RULE,
    &limit_not_shown::RULE,
    &promise_under_floor::RULE,
    &emulsion_above_limit::RULE,
    &chain_stopped::RULE,
];

/// Warnings that nobody but the client can settle.
static TOLD: &[&Rule] = &[
    &fuel_dissolves_uncounted::RULE,
    &meter_contradicts_hours::RULE,
    &sump_overflows::RULE,
    &spill_without_closure::RULE,
    &rain_table_starts_late::RULE,
    &oil_outside_scope::RULE,
    &solids_bury_pack::RULE,
    &frost_outdoors::RULE,
    &sheared_before_unit::RULE,
];

/// What must change or be settled.
pub(super) fn must_change(settled: &Settled) -> Vec<String> {
    // What goes into the water and does no harm need not change.
    let harmless = crate::summary::kept_by_results(settled);
    let enquiry = &settled.job.enquiry;
    let open = |way: Way| match way {
        // What is so already is no remedy.
        Way::GravityFeed => enquiry.inlet.feed.0 != Some(Feed::Gravity),
        // Nobody but the owner of a sewer consents to more.
        Way::OwnersConsent => enquiry.outlet.to.0 == Some(Receiver::SanitarySewer),
    };
    let mut lines: Vec<String> = settled
        .job
        .design
        .triage
        .iter()
        .filter(|l| l.weight >= Weight::Partly && !(harmless && l.about != About::Limit))
        .map(|l| {
            let could = l.could(open);
            match l.about {
                About::Limit => format!("{}: a separator does not change it. {could}", capital(&l.subject)),
                About::Chemical | About::Oil => format!("{}: {could}", capital(&l.subject)),
            }
        })
        .collect();
    // Two limits of one kind ask for the same.
    lines.dedup();
    // Where nothing fits, what would have to change so that the nearest does.
    for (short, against) in settled.shortfall.iter().flat_map(|short| short.against.iter().map(move |a| (short, a))) {
        let remedy = against.remedy.map_or_else(String::new, |remedy| format!(" {remedy}"));
        lines.push(format!("{} (of {}).{remedy}", capital(&against.says), short.nearest));
    }
    let open = |v: &&Judged| v.stands_failed() && !v.rule.is_among(SAID);
    let with_remedy = |v: &Judged| format!("{}: {}. {}", v.rule.title, v.verdict.says(), v.rule.remedy);
    lines.extend(settled.verdicts.iter().filter(open).map(with_remedy));
    let told = |v: &&Judged| v.grade() == Grade::Warns && v.rule.is_among(TOLD);
    lines.extend(settled.verdicts.iter().filter(told).map(with_remedy));
    lines
}
