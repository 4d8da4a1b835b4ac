//! Rule: rain table starts late

use crate::ask::DURATION;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_units::catalog::MIN;
use stillrise_units::{Time, Typed};

rule! {
    "rain-table-starts-late" "Rain taken over more than the time of concentration", Enquiry;
    client "The rain was stated for a longer time than the water needs to gather, so that the real peak is higher."
    looks "The first duration of the rain table, or the duration that a stated intensity is for, against the time of concentration: a longer one warns, a table that starts later than 15 minutes fails. Where nobody said which duration an intensity is for, it cannot judge. Where the pumps lift more than twice what the rain brings, it passes."
    matters "The peak comes with the heaviest rain of the time in which the water gathers. Over a longer time rain is weaker, and the flow comes out too small."
    remedy "The intensity over the time in which the water gathers, or a rain table of the place that begins at 5 minutes."
    source "Common practice: the rational method takes the rain over the time of concentration; 15 minutes is our proposal"
    limits "An intensity that the authority prescribes as it stands may be meant for any time of concentration."
}

/// So many times the storm flow no shorter rain brings than one of a quarter of an hour: rain of 5 minutes is 1.5 times as
/// strong as rain of 15 by the ratios of US Weather Bureau TP 40 (from memory).
const MARGIN: f64 = 2.0;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(storm) = s.design.basis.as_ref().and_then(|b| b.storm.as_ref()) else {
        return Verdict::skips("no rain is counted that runs to the separator");
    };
    let shown = |time| s.show(time, (&MIN, &MIN));
    let first = storm.table.as_ref().and_then(|t| t.q.0.first()).map(|row| Time::from_si(row.0));
    let over = s.enquiry.rain.as_ref().and_then(|rain| rain.duration.q());
    let gathers = storm.concentration_time;
    let Some(over) = first.or(over) else {
        if s.enquiry.rain.as_ref().is_none_or(|rain| !rain.intensity.is_given()) {
            return Verdict::skips("neither a rain table nor an intensity is stated");
        }
        let says = format!(
            "nobody said which duration the intensity is for; over more than {}, the time of concentration, the rain is weaker than the peak",
            shown(gathers.q)
        );
        return Verdict::cannot_judge(says, [DURATION], gathers.at);
    };
    let what = if first.is_some() { "table starts at" } else { "intensity is for" };
    let taken = if s.assumed(gathers.at).is_some() { "was taken as" } else { "is" };
    let says = format!("the {what} {}, the time of concentration {taken} {}", shown(over), shown(gathers.q));
    if over <= gathers.q {
        return Verdict::passes(says);
    }
    let weak = "rain over a shorter time is stronger, so that the flow comes out too small";
    let late = over.in_unit(&MIN) > 15.0;
    let pumps = s.design.basis.as_ref().and_then(|b| b.feed.pump_flow);
    let pumps = pumps.filter(|pumps| !late && pumps.q.si() >= MARGIN * storm.flow.q.si());
    if let Some(pumps) = pumps {
        return Verdict::passes(format!(
            "{says}; but the pumps lift {}, more than twice the {} of the rain, so that a stronger one changes nothing",
            s.show(pumps.q, FLOW_UNITS),
            s.show(storm.flow.q, FLOW_UNITS)
        ));
    }
    let says = format!("{says}; {weak}");
    if first.is_some() && late { Verdict::fails(says, gathers.at) } else { Verdict::warns(says, gathers.at) }
}
