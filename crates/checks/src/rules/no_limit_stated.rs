//! Rule: no limit stated

use crate::rule::{Subject, Verdict, rule};

rule! {
    "no-limit-stated" "No limit stated", Enquiry;
    looks "Whether the enquiry states any limit on what leaves."
    matters "Without a limit there is nothing to hold the prediction against, and no ground on which to choose droplet or polisher."
    remedy "Ask for the permit or the sewer agreement: pollutant, number, statistic and method."
    source "Our proposal"
    limits "A limit in a permit that nobody sent is not seen."
}

fn look(s: &Subject<'_>) -> Verdict {
    match s.enquiry.limits.len() {
        0 => Verdict::warns("the enquiry states no limit on what leaves", None),
        1 => Verdict::passes("1 limit is stated"),
        n => Verdict::passes(format!("{n} limits are stated")),
    }
}
