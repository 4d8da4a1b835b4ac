//! Rule: rain table starts late

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::Typed;
use stillrise_units::catalog::MIN;

rule! {
    "rain-table-starts-late" "Rain taken over more than the time of concentration", Enquiry;
    looks "The first duration of the rain table, or the duration that a stated intensity is for, against the time of concentration: a longer one warns, a table that starts later than 15 minutes fails. Where nobody said which duration an intensity is for, it does not apply."
    matters "The peak comes with the heaviest rain of the time in which the water gathers. Over a longer time rain is weaker, and the flow comes out too small."
    remedy "A table from 5 minutes on, of the same station; or the intensity over the time of concentration."
    source "Common practice: the rational method takes the rain over the time of concentration; 15 minutes is our proposal"
    limits "An intensity that the authority prescribes as it stands may be meant for any time of concentration."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(storm) = s.design.basis.as_ref().and_then(|b| b.storm.as_ref()) else {
        return Verdict::skips("no rain falls on the site");
    };
    let shown = |time| s.show(time, (&MIN, &MIN));
    let Some(first) = storm.table.as_ref().and_then(|t| t.q.0.first()) else {
        let Some(over) = s.enquiry.rain.as_ref().and_then(|rain| rain.duration.q()) else {
            return Verdict::skips("there is no rain table, and nobody said which duration the intensity is for");
        };
        let gathers = storm.concentration_time;
        let says = format!("the intensity is for {}, the time of concentration is {}", shown(over), shown(gathers.q));
        return if over <= gathers.q { Verdict::passes(says) } else { Verdict::warns(says, gathers.at) };
    };
    let first = stillrise_units::Time::from_si(first.0);
    let says = format!(
        "the table starts at {}, the time of concentration is {}",
        shown(first),
        shown(storm.concentration_time.q)
    );
    if first <= storm.concentration_time.q {
        Verdict::passes(says)
    } else if first.in_unit(&MIN) > 15.0 {
        Verdict::fails(says, storm.concentration_time.at)
    } else {
        Verdict::warns(says, storm.concentration_time.at)
    }
}
