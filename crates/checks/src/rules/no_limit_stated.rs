//! Rule: no limit stated

use crate::rule::{Subject, Verdict, rule};

rule! {
    "no-limit-stated" "No limit stated", Enquiry;
    client "No limit was stated, so there is nothing to hold the unit against."
    looks "Whether the enquiry states any limit on what leaves."
    matters "Without a limit there is nothing to hold the prediction against, and no ground on which to choose droplet or polisher."
    remedy "Ask for the permit or the sewer agreement: pollutant, number, statistic and method."
    source "Our proposal"
    limits "A limit in a permit that nobody sent is not seen."
}

fn look(s: &Subject<'_>) -> Verdict {
    let all = &s.enquiry.limits;
    let open = match all.iter().filter(|l| !l.value.is_said()).count() {
        0 => String::new(),
        n => format!("; of {n} more nobody said the number"),
    };
    match all.iter().filter(|l| l.value.is_said()).count() {
        0 if all.is_empty() => Verdict::warns("the enquiry states no limit on what leaves", None),
        0 => Verdict::warns("a limit was named, but no number of any", None),
        1 => Verdict::passes(format!("1 limit is stated{open}")),
        n => Verdict::passes(format!("{n} limits are stated{open}")),
    }
}
