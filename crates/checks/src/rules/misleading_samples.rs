//! Rule: samples taken so that they mislead

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::evidence::SampleSet;
use stillrise_design::enquiry::blocks::Manner;

rule! {
    "misleading-samples" "Samples taken so that they mislead", Effluent;
    client "Some samples were taken in a way that gives wrong results."
    looks "Sets of samples that were taken from the surface, mixed from portions or drawn by pipette, or of which nobody said how they were taken."
    matters "Oil lies on the water: a sample from the surface holds the film and far too much of it. Oil clings to glass and tubes: composites and small parts of a bottle lose it. A mean of such results is not that of the stream."
    remedy "Take single bottles from the falling or well-mixed stream at the sample point, filled at once and not to the brim, and have the whole of each analysed."
    source "US EPA, Method 1664, Revision B, 2010, and common practice of the trade: grabs, whole bottles"
    limits "Samples from the surface are used for no mean and no scatter. Composites and pipetted samples are used, and are likely to be low."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    if basis.evidence.is_empty() {
        return Verdict::skips("no samples were taken");
    }
    let (mut says, mut at) = (Vec::new(), None);
    let mut unknown: Vec<&SampleSet> = Vec::new();
    for set in basis.evidence.iter() {
        let what = match set.manner {
            Some(Manner::Grab | Manner::Isokinetic) => continue,
            Some(Manner::Surface) => "taken from the surface: biased to the film, and used for no mean and no scatter",
            Some(Manner::Composite) => "composites: oil is lost on bottles and tubes, the results are likely to be low",
            Some(Manner::Pipette) => "drawn by pipette: a small part of a bottle misses what clings and floats",
            None => {
                unknown.push(set);
                continue;
            }
        };
        at = at.or(Some(set.results.at));
        says.push(format!("\"{}\": {what}", set.name));
    }
    if let (true, Some(first)) = (says.is_empty(), unknown.first()) {
        let names: Vec<String> = unknown.iter().map(|set| format!("\"{}\"", set.name)).collect();
        let asks: Vec<Ask> = unknown
            .iter()
            .map(|set| {
                Ask::new(
                    format!("samples \"{}\".manner", set.name),
                    "How were the samples taken: grabs in the falling stream, composites, or from the surface?",
                )
            })
            .collect();
        return Verdict::cannot_judge(
            format!("nobody said how they were taken: {}", names.join(", ")),
            asks,
            first.results.at,
        );
    }
    if says.is_empty() {
        let count = basis.evidence.len();
        return Verdict::passes(format!("{count} of {count} sets are grabs or isokinetic"));
    }
    Verdict::warns(says.join("; "), at)
}
