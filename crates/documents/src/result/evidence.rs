//! Laboratory results in `result.json`.

use super::{fields, val};
use serde_json::{Value, json};
use stillrise_design::basis::evidence::SampleSet;
use stillrise_design::basis::influent::Role;
use stillrise_design::performance::measured::Place;
use stillrise_search::Settled;

/// Every set, with what it says and what is made of it.
pub(super) fn evidence(settled: &Settled) -> Value {
    let Some(basis) = &settled.job.design.basis else { return json!([]) };
    json!(basis.evidence.iter().enumerate().map(|(i, set)| one(settled, i, set)).collect::<Vec<_>>())
}

fn one(settled: &Settled, index: usize, set: &SampleSet) -> Value {
    let (ledger, system) = (&settled.job.ledger, settled.job.enquiry.system());
    let v = |at| val(ledger, at, system);
    let block = settled.job.enquiry.samples.get(set.index);
    let results: Vec<Value> = block.map_or_else(Vec::new, |b| {
        let one = |(i, r): (usize, &stillrise_design::enquiry::results::LabResult)| {
            json!({
                "date": r.date.as_ref().or_else(|| b.dates.get(i)), "text": r.text(), "si": r.written.si(), "detected": r.detected,
                "after_silica_gel": b.after_silica_gel.items.get(i).map(|a| json!({ "text": a.text(), "si": a.written.si(), "detected": a.detected })),
            })
        };
        set.places.iter().filter_map(|at| Some((*at, b.results.items.get(*at)?))).map(one).collect()
    });
    let (role, of) = match &set.role {
        Role::Leaves => ("leaves", None),
        Role::StandsIn(water) => ("stands in", Some(water)),
        Role::FewStandIn(water) => ("stands in, of few", Some(water)),
        Role::Agrees(water) => ("agrees with what was stated", Some(water)),
        Role::Contradicts(water) => ("contradicts what was stated", Some(water)),
        Role::SameAsStated(water) => ("is what was stated", Some(water)),
        Role::Told(why) => ("not used", Some(why)),
    };
    let compared = settled.job.design.performance.iter().flat_map(|p| &p.measured).find(|c| c.set == index);
    json!({
        "name": set.name, "where": set.point.word(), "existing_plant": !settled.job.enquiry.unit_stands(), "pollutant": set.pollutant.word,
        "stream": block.and_then(|b| b.stream.as_ref()), "method": block.and_then(|b| b.method.as_ref()), "manner": set.manner.map(|m| m.word()),
        "taken_by": block.and_then(|b| b.taken_by.as_ref()), "laboratory": block.and_then(|b| b.laboratory.as_ref()), "regime": block.and_then(|b| b.regime.as_ref()),
        "since": set.part.and_then(|p| p.since).map(|d| d.to_string()), "until": set.part.and_then(|p| p.until).map(|d| d.to_string()), "stands_for_the_plant": set.part.is_none_or(|p| p.last),
        "results": results, "count": set.count, "detected": set.detected,
        "reporting_limit": set.reporting_limit.map(|x| v(x.at)),
        "law": set.law.as_ref().map(|l| fields(ledger, &l.fields(), system)),
        "bounds": set.bounds.as_ref().map(|b| fields(ledger, &b.fields(), system)),
        "polar": set.polar.as_ref().map(|p| fields(ledger, &p.fields(), system)), "polar_pairs": set.pairs.0, "polar_at_least": set.pairs.1,
        "influent": { "role": role, "of": of },
        "prediction": compared.map(|c| json!({
            "mean": v(c.predicted.at), "measured_over_predicted": v(c.ratio.at),
            "lies": match c.place { Place::Below => "below", Place::Within => "within", Place::Above => "above", Place::Bounds => "bound" },
        })),
    })
}
