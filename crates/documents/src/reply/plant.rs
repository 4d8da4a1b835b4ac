//! What is asked of a plant whose unit stands: days, samples, layers, outlet.

use stillrise_design::enquiry::blocks::{ChangeKind, SamplePoint, Samples};
use stillrise_search::Settled;
use stillrise_search::diagnosis::jump;

/// What was changed or measured and lacks the number or the day that the rating asks for.
pub(super) fn asks(settled: &Settled) -> Vec<String> {
    let e = &settled.job.enquiry;
    let mut asks = Vec::new();
    if e.unit_stands() && !e.unplaced_results().is_empty() {
        asks.push(
            "On which days were the results without a day sampled? Only with them can before and after be told apart."
                .to_owned(),
        );
    }
    let step = e.unit_stands().then(|| jump(e, &e.observations())).flatten();
    asks.extend(step.map(|j| match j.ended {
        Some((last, _)) => format!(
            "What was different from {} to {last}, and does it come back each year: melt or heavy rain, salt, work at tanks or drains, products, who sampled? Only the results of that time are high.",
            j.first
        ),
        None => format!(
            "What was changed at the plant, at the unit or at the sampling between {} and {}? The results step up there.",
            j.last, j.first
        ),
    }));
    let unsaid = |s: &&Samples| s.manner.0.is_none() && s.place.0 != Some(SamplePoint::In);
    if e.unit_stands() && e.samples.iter().any(|s| unsaid(&s)) {
        asks.push(
            "How were the samples of the water that leaves taken (a bottle under the falling stream, dipped, composite), and by whom?"
                .to_owned(),
        );
    }
    // Results of what comes say nothing where nobody told of which water they are.
    let waters = e.streams.len() + usize::from(!e.surfaces.is_empty());
    let of_none = |s: &&Samples| s.place.0 == Some(SamplePoint::In) && s.stream.is_none();
    if let Some(set) = e.samples.iter().find(|s| waters > 1 && of_none(s)) {
        let bath = if e.dumps.is_empty() { "" } else { ", and was one taken while a bath was let go" };
        asks.push(format!(
            "Of which water are the results of \"{}\": of one, or of all together{bath}? Until that is said they are not used.",
            set.name.as_deref().unwrap_or("what comes")
        ));
    }
    let gauged = e.observed.iter().find(|o| o.oil_layer.is_given());
    if let Some(claim) = gauged.and_then(|o| o.oil_layer.claim()).filter(|_| e.unit_stands()) {
        asks.push(format!(
            "When was the oil last pumped out? With {} of it now, that tells how much comes.",
            claim.written.text
        ));
    }
    let moved = e.changes.iter().find(|c| c.what.0 == Some(ChangeKind::Outlet) && !c.outlet_level.is_given());
    if let Some(change) = moved.filter(|_| e.unit_stands()) {
        asks.push(format!(
            "What were the old and what is the new level of the outlet above the floor of the unit ({})? Does water stand in the inlet pipe or over the baffle since?",
            change.says()
        ));
    }
    asks
}
