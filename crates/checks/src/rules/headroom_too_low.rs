//! Rule: headroom too low

use crate::ask::HEADROOM;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::{Length, Typed};
use stillrise_units::catalog::{FT, M};

rule! {
    "headroom-too-low" "Too low overhead", Site, bars_pick;
    client "There is too little height over the unit to lift the plates out."
    looks "Clear height over the ground against the unit's walls as it stands and, on top of them, the height of a pack module with sling and hook; where nothing lifts out, room to reach in. Less fails. Where the height was not said it cannot judge."
    matters "A pack that cannot be lifted clear of the walls stays inside, and is cleaned there by somebody in a confined space."
    remedy "A lower unit or several lower ones, a pack that is lifted out in parts, a pit, or another place: under open sky or a higher hook."
    source "Geometry of site and unit; {12 in|305 mm} of sling and hook and {24 in|610 mm} to reach in are engineering judgement"
    limits "A module is taken as high as the pack. A unit whose levels are open is taken as standing on the ground. Lids that swing up and the reach of a crane are not looked at."
}

/// A height that is clear wherever people walk, m. Judgement.
const REACH: f64 = 2.0;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let fit = &performance.fit;
    let show = |x: Length| s.show(x, (&FT, &M));
    let needs = || {
        if performance.site.installation.least_cover.is_some() {
            return format!("{} is needed over its manways", show(fit.above.q));
        }
        let (top, word) = if fit.top.q.si() < 0.0 { (-fit.top.q, "below") } else { (fit.top.q, "over") };
        format!("the walls end {} {word} the ground and {} is needed over them", show(top), show(fit.above.q))
    };
    if fit.headroom.q.si() <= 0.0 && performance.site.installation.least_cover.is_none() {
        let says = format!("the walls end {} below the ground, and nothing is needed over it", show(-fit.top.q));
        return Verdict::passes(says);
    }
    if !s.enquiry.site.headroom.is_given() && fit.headroom.q < Length::of(REACH, &M) {
        return Verdict::passes(format!("needs {} over the ground, no more than is clear wherever people walk", show(fit.headroom.q)));
    }
    let Some(room) = s.enquiry.site.headroom.q() else {
        let says = format!("{}; the clear height there was not said", needs());
        return Verdict::cannot_judge(says, [HEADROOM], fit.headroom.at);
    };
    if fit.headroom.q > room {
        let says = format!("{}: {} in all, there is {}", needs(), show(fit.headroom.q), show(room));
        return Verdict::fails(says, fit.headroom.at);
    }
    Verdict::passes(format!("needs {} over the ground, there is {}", show(fit.headroom.q), show(room)))
}
