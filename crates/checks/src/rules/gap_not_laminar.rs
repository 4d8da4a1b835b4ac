//! Rule: gaps not laminar

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::fluids::Season;
use stillrise_design::stages::plate_pack::{AT_EASE, LAMINAR_UP_TO};
use stillrise_units::Typed;

rule! {
    "gap-not-laminar" "Flow between the plates not laminar, or not far from it", Pack, bars_pick;
    client "The flow between the plates is not calm enough, or nearly not, for the calculation to hold with certainty."
    looks "The Reynolds number of the gaps in the warmest water, at the end of the interval, in the case with the largest flow: above 500 it warns, above 2000 it fails."
    matters "Eddies between the plates carry droplets back into the stream; plate theory holds for laminar gaps only."
    remedy "More gaps or a wider pack, or less flow through each unit."
    source "API 421 and UFGS 44 42 53 ask for laminar flow; 500 on four times the hydraulic radius is from memory, some 2000 is where laminar flow between plates ends"
    limits "Both numbers are held against the basis chosen in method.reynolds."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let warm = performance.removals.iter().filter(|r| r.season == Season::Warm && r.state.is_end());
    let mut warm = warm.peekable();
    if warm.peek().is_none() {
        return s.stopped();
    }
    let gaps = warm.filter_map(|r| Some((r, r.passage.plates()?.reynolds)));
    let Some((worst, reynolds)) = gaps.max_by(|a, b| a.1.q.si().total_cmp(&b.1.q.si())) else {
        return Verdict::skips("there are no plates");
    };
    let re = reynolds.q.si();
    let says = format!("Reynolds number {} in the gaps, {}, warmest water", s.digits(re, 3), worst.case);
    if re > LAMINAR_UP_TO {
        Verdict::fails(format!("{says}: above 2000"), reynolds.at)
    } else if re > AT_EASE {
        Verdict::warns(format!("{says}: laminar still, but above 500, from which on inlet and fouling may stir it"), reynolds.at)
    } else {
        Verdict::passes(format!("{says}, at most 500"))
    }
}
