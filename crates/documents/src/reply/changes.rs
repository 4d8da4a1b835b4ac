//! What must change or be settled before the offer holds.

use crate::summary::capital;
use stillrise_checks::{Judged, Verdict};
use stillrise_design::enquiry::blocks::{Feed, Receiver};
use stillrise_design::triage::{About, Weight};
use stillrise_search::Settled;

/// What the headline and the triage have said, and what only the calculation's reader understands, is not said again.
const SAID: &[&str] = &[
    "not-a-gravity-duty",
    "only-partly-gravity",
    "limit-it-cannot-touch",
    "limit-not-shown",
    "promise-under-floor",
    "emulsion-above-limit",
    "chain-stopped",
];

/// Warnings that nobody but the client can settle.
const TOLD: &[&str] = &[
    "fuel-dissolves-uncounted",
    "meter-contradicts-hours",
    "sump-overflows",
    "spill-without-closure",
    "rain-table-starts-late",
    "oil-outside-scope",
    "solids-bury-pack",
    "frost-outdoors",
    "sheared-before-unit",
];

/// What must change or be settled.
pub(super) fn must_change(settled: &Settled) -> Vec<String> {
    // What goes into the water and does no harm need not change.
    let harmless = crate::summary::kept_by_results(settled);
    let mut lines: Vec<String> = settled
        .job
        .design
        .triage
        .iter()
        .filter(|l| l.weight >= Weight::Partly && !(harmless && l.about != About::Limit))
        .map(|l| match l.about {
            About::Limit => format!("{}: a separator does not change it. {}", capital(&l.subject), l.could),
            // What is so already is no remedy.
            _ if settled.job.enquiry.inlet.feed.0 == Some(Feed::Gravity) => {
                format!(
                    "{}: {}",
                    capital(&l.subject),
                    l.could.replace("; gravity feed, which brings all that arrives to the unit", "")
                )
            }
            _ => format!("{}: {}", capital(&l.subject), l.could),
        })
        .map(|line| {
            // Nobody but the owner of a sewer consents to more.
            let sewer = settled.job.enquiry.outlet.to.0 == Some(Receiver::SanitarySewer);
            if sewer { line } else { line.replace("; or the consent of the sewer's owner to a higher limit", "") }
        })
        .collect();
    // Where nothing fits, what would have to change so that the nearest does.
    for (short, against) in settled.shortfall.iter().flat_map(|short| short.against.iter().map(move |a| (short, a))) {
        let remedy = against.remedy.map_or_else(String::new, |remedy| format!(" {remedy}"));
        lines.push(format!("{} (of {}).{remedy}", capital(&against.says), short.nearest));
    }
    let open = |v: &&Judged| v.stands_failed() && !SAID.contains(&v.rule.id);
    let with_remedy = |v: &Judged| format!("{}: {}. {}", v.rule.title, v.verdict.says(), v.rule.remedy);
    lines.extend(settled.verdicts.iter().filter(open).map(with_remedy));
    let told = |v: &&Judged| matches!(v.verdict, Verdict::Warns(_)) && TOLD.contains(&v.rule.id);
    lines.extend(settled.verdicts.iter().filter(told).map(with_remedy));
    lines
}
