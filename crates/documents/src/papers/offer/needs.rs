//! What the unit needs of whoever sets it up, and what must be settled before it is bought.

use super::of_the_unit;
use crate::reply::{self, Of};
use crate::report::{Report, sentence};
use crate::summary::lower;
use stillrise_design::performance::installation::Stands;
use stillrise_search::Settled;

/// The section.
pub(super) fn section(r: &mut Report<'_>, settled: &Settled) {
    // That it stands on the ground is told in short, and there is no more to it.
    let stands = settled.job.design.performance.as_ref().map(|p| p.site.installation.stands.q);
    let mut all = if stands == Some(Stands::OnGround) { Vec::new() } else { of_the_unit(settled, Of::Stands) };
    all.extend(of_the_unit(settled, Of::Needs));
    let emptied = reply::emptied_in_days(settled);
    let points = reply::points(settled);
    let train = settled.job.design.train.as_ref().filter(|_| !settled.job.enquiry.unit_stands());
    let beside = train.map_or_else(Vec::new, |train| reply::needed_beside(settled, train));
    if all.is_empty() && points.is_empty() && beside.is_empty() && emptied.is_empty() {
        return;
    }
    r.out.section("What it needs of you");
    for point in &points {
        let what = match (point.client, point.says.is_empty()) {
            (Some(client), _) => client.to_owned(),
            (None, true) => sentence(&point.short),
            (None, false) => sentence(&format!("{}: {}", point.head, point.says)),
        };
        let remedy = match &*point.remedy {
            "" => String::new(),
            remedy => format!("What settles it: {}", lower(&sentence(remedy))),
        };
        // Numbers that are soon read go with it where there is room; the report has the others.
        let soon = point.client.is_some() && (1..SOON).contains(&point.says.len());
        let said = if soon { format!("{} {remedy}", sentence(&point.says)) } else { remedy.clone() };
        r.out.lead_or(&what, &said, &remedy);
    }
    if !all.is_empty() {
        r.out.list(false, all);
    }
    if !emptied.is_empty() {
        let says = format!(
            "on these figures {}; the maintenance manual has the limits and the other tasks",
            emptied.join(", ")
        );
        // How often is told in short already.
        r.out.list(false, vec![(sentence(&says), String::new())]);
        r.out.spare();
    }
    if !beside.is_empty() {
        r.out.lead("Beside the unit, not part of it:", &sentence(&beside.join("; ")));
    }
}

/// Length of a finding that is soon read.
const SOON: usize = 110;
