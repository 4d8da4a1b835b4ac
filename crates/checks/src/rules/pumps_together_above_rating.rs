//! Rule: pumps together above the unit's rating

use super::pump_above_rating::{above, pumped_and_rated, rate_unknown};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::lift;
use stillrise_units::catalog::{GPM, M3_H};

rule! {
    "pumps-together-above-rating" "Pumps together above the unit's rating", Inlet, bars_pick;
    client "The pumps, running together, bring more than the unit is made for."
    looks "Two or more pumps of which one fits the rated flow of the units and all together do not, unless the enquiry says that they cannot run together. What is not said of pumps and rating it cannot judge."
    matters "A stand-by pump that starts on high level runs beside the duty pump, just when most water comes."
    remedy "Interlock the pumps so that one runs at a time, or size for all of them."
    source "Common practice of the trade"
    limits "Flows of the pumps are added; two pumps on one pipe deliver somewhat less than their sum."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (feed, rated) = match pumped_and_rated(s) {
        Ok(found) => found,
        Err(verdict) => return verdict,
    };
    let pumps = lift::pumps(s.enquiry);
    let (Some(one), Some(all)) = (feed.one_pump, feed.all_pumps) else {
        return rate_unknown(s);
    };
    if pumps < 2 {
        return Verdict::skips("there is one pump only");
    }
    if !feed.together {
        return Verdict::skips("the pumps are said not to run together");
    }
    if above(one.q, rated) {
        return Verdict::skips("one pump alone is above the rating already");
    }
    let share = s.percent(all.q / rated);
    let show = |q| s.show(q, (&GPM, &M3_H));
    let says = format!(
        "{pumps} pumps together deliver {}, {share} of the rated {}; one delivers {}",
        show(all.q),
        show(rated),
        show(one.q)
    );
    if above(all.q, rated) { Verdict::fails(says, all.at) } else { Verdict::passes(says) }
}
