//! Rule: the oil film under the plates is dragged along

use crate::ask::Ask;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::basis::fluids::Season;
use stillrise_units::print;

rule! {
    "film-dragged" "Oil film under the plates dragged along", Pack;
    client "The water may drag oil along under the plates and shed it again in drops."
    looks "The pull of the water on the film of oil under a plate, over the buoyancy that drains the film, if all free oil is caught by the plates: above 0.3 it warns. For an oil whose viscosity has no answer at that temperature it cannot judge."
    matters "A film that the water drags to the plate's end is shed there in drops, and some of them leave."
    remedy "Steeper plates, wider gaps, or less flow through each pack."
    source "Drainage of a film and shear of plane laminar flow; the bound of 0.3 is engineering judgement"
    limits "One film of the heaviest oil, evenly spread; corrugations gather it and help."
}

const BOUND: f64 = 0.3;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let Some(zones) = &performance.zones else { return s.stopped() };
    let Some((_, pull)) = zones.film else {
        let oil = s.design.basis.as_ref().map(|b| b.fluids.heaviest(Season::Cold));
        return match oil.filter(|oil| oil.viscosity.is_none()) {
            Some(oil) => Verdict::cannot_judge(
                format!("the viscosity of {} in the coldest water, on which its film hangs, is not known", oil.name),
                [Ask::open(format!("What is the viscosity of {} in the coldest water?", oil.name))],
                oil.density_15.at,
            ),
            None => Verdict::skips("no oil collects under the plates"),
        };
    };
    let says = format!("the water pulls {} of what drains the film", print::digits(pull.q.value, 2));
    if pull.q.value > BOUND {
        Verdict::warns(says, pull.at)
    } else {
        Verdict::passes(format!("{says}, at most {BOUND}"))
    }
}
