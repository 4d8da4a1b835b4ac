//! Rule: rain table starts late

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::Typed;
use stillrise_units::catalog::MIN;

rule! {
    "rain-table-starts-late" "Rain table starts after the time of concentration", Enquiry;
    looks "The first duration of the rain table against the time of concentration: a later first row warns, later than 15 minutes fails."
    matters "Before its first row a table says nothing; its first intensity is taken there, and short rain is heavier than that."
    remedy "A table from 5 minutes on, of the same station."
    source "Common practice; 15 minutes is our proposal"
    limits "A stated intensity is not looked at."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(storm) = s.design.basis.as_ref().and_then(|b| b.storm.as_ref()) else {
        return Verdict::skips("no rain falls on the site");
    };
    let Some(first) = storm.table.as_ref().and_then(|t| t.q.0.first()) else {
        return Verdict::skips("there is no rain table");
    };
    let first = stillrise_units::Time::from_si(first.0);
    let says = format!(
        "the table starts at {}, the time of concentration is {}",
        s.show(first, (&MIN, &MIN)),
        s.show(storm.concentration_time.q, (&MIN, &MIN))
    );
    if first <= storm.concentration_time.q {
        Verdict::passes(says)
    } else if first.in_unit(&MIN) > 15.0 {
        Verdict::fails(says, storm.concentration_time.at)
    } else {
        Verdict::warns(says, storm.concentration_time.at)
    }
}
