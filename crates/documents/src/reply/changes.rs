//! What must change or be settled before the offer holds.

use crate::summary::capital;
use stillrise_checks::rules::{
    chain_stopped, emulsion_above_limit, frost_outdoors, fuel_dissolves_uncounted, limit_it_cannot_touch,
    limit_not_shown, meter_contradicts_hours, not_a_gravity_duty, oil_outside_scope, only_partly_gravity,
    promise_under_floor, rain_table_starts_late, sheared_before_unit, shell_may_collapse, solids_bury_pack,
    spill_without_closure, sump_overflows, wall_overstressed,
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

/// Warnings that are settled before anything is bought: by the client alone, or of the shell.
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
    &wall_overstressed::RULE,
    &shell_may_collapse::RULE,
];

/// What must change or be settled, a thing each.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Point {
    /// What it is about, in a few words.
    pub(crate) head: String,
    /// The same where it stands in a list.
    pub(crate) short: String,
    /// What it means for a client, where a rule tells.
    pub(crate) client: Option<&'static str>,
    /// What was found, with its numbers; empty where the head says it all.
    pub(crate) says: String,
    /// What settles it.
    pub(crate) remedy: String,
}

/// What must change or be settled, in sentences.
pub(super) fn must_change(settled: &Settled) -> Vec<String> {
    let one = |Point { head, says, remedy, .. }: Point| match (says.is_empty(), remedy.is_empty()) {
        (true, _) => format!("{head}: {remedy}"),
        (false, true) => format!("{head}: {says}."),
        (false, false) => format!("{head}: {says}. {remedy}"),
    };
    points(settled).into_iter().map(one).collect()
}

/// The same, a thing each.
pub(super) fn points(settled: &Settled) -> Vec<Point> {
    // What goes into the water and does no harm need not change.
    let harmless = crate::summary::kept_by_results(settled);
    let enquiry = &settled.job.enquiry;
    let open = |way: Way| match way {
        // What is so already is no remedy.
        Way::GravityFeed => enquiry.inlet.feed.0 != Some(Feed::Gravity),
        // Nobody but the owner of a sewer consents to more.
        Way::OwnersConsent => enquiry.outlet.to.0 == Some(Receiver::SanitarySewer),
    };
    let mut all: Vec<Point> = settled
        .job
        .design
        .triage
        .iter()
        .filter(|l| l.weight >= Weight::Partly && !(harmless && l.about != About::Limit))
        .map(|l| Point {
            head: capital(&l.subject),
            short: match l.about {
                About::Limit => format!("{}, which a separator does not change", l.subject),
                About::Chemical | About::Oil => format!("{} in the water", l.subject),
            },
            client: None,
            says: if l.about == About::Limit { "a separator does not change it".to_owned() } else { String::new() },
            remedy: l.could(open),
        })
        .collect();
    // Two limits of one kind ask for the same.
    all.dedup();
    // Where nothing fits, what would have to change so that the nearest does.
    for (short, against) in settled.shortfall.iter().flat_map(|short| short.against.iter().map(move |a| (short, a))) {
        all.push(Point {
            head: format!("{}, which comes nearest", short.nearest),
            short: against.title.clone(),
            client: None,
            says: against.says.clone(),
            remedy: against.remedy.map_or_else(String::new, ToString::to_string),
        });
    }
    let open = |v: &&Judged| v.stands_failed() && !v.rule.is_among(SAID);
    let with_remedy = |v: &Judged| Point {
        head: v.rule.title.to_owned(),
        short: v.rule.title.to_owned(),
        client: Some(v.rule.client),
        says: v.verdict.says().to_owned(),
        remedy: v.rule.remedy.to_owned(),
    };
    all.extend(settled.verdicts.iter().filter(open).map(with_remedy));
    let told = |v: &&Judged| v.grade() == Grade::Warns && v.rule.is_among(TOLD);
    all.extend(settled.verdicts.iter().filter(told).map(with_remedy));
    all
}
