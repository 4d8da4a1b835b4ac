//! Rule: reporting limit above the limit

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::enquiry::blocks::SamplePoint;
use stillrise_units::catalog::MG_L;

rule! {
    "reporting-limit-above-limit" "Reporting limit above the limit", Effluent;
    client "The laboratory's method cannot show whether the limit is kept."
    looks "Samples of the water that leaves in which nothing was found above a reporting limit that is itself higher than the limit."
    matters "Such a result is compatible with water that keeps the limit and with water that does not: it cannot show compliance."
    remedy "Have the samples analysed with a larger volume or a method that reports below the limit."
    source "Definition of a reporting limit; Helsel, Statistics for Censored Environmental Data, 2012, on what a non-detect says"
    limits "Sees results of the pollutant that the limit names. A permit may say how it counts non-detects."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(basis) = &s.design.basis else { return s.stopped() };
    let show = |q| s.show(q, (&MG_L, &MG_L));
    let (mut over, mut at, mut seen, mut undetected) = (Vec::new(), None, 0, 0);
    for limit in &basis.limits {
        let of = |set: &&stillrise_design::basis::evidence::SampleSet| {
            set.point == SamplePoint::Out && *set.pollutant == *limit.pollutant
        };
        for set in basis.evidence.iter().filter(of) {
            seen += 1;
            undetected += set.count - set.detected;
            let Some(reported) = set.reporting_limit.filter(|r| r.q > limit.value.q) else { continue };
            at = at.or(Some(reported.at));
            over.push(format!(
                "\"{}\": not detected below {}, against a limit of {}",
                set.name,
                show(reported.q),
                show(limit.value.q)
            ));
        }
    }
    match (over.is_empty(), seen) {
        (false, _) => Verdict::warns(format!("{}: that cannot show compliance", over.join("; ")), at),
        (true, 0) => Verdict::skips("no samples of what leaves were analysed for a limit's pollutant"),
        (true, _) if undetected == 0 => Verdict::skips("every result was detected"),
        (true, _) => Verdict::passes("no reporting limit of what was not detected lies above the limit"),
    }
}
