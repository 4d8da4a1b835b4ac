//! Rule: elevations that do not fit together

use crate::ask::GROUND;
use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{FT, M};
use stillrise_units::{Length, Typed, Unit};

rule! {
    "levels-upside-down" "Elevations that do not fit together", Site;
    client "The elevations that were stated do not fit together."
    looks "The stated elevations of a site against one another. An outfall above the pipe that comes in by gravity warns, unless the ground is stated and it lies so much higher that a lift is meant; of a unit in the ground, so do such a pipe and groundwater above the ground, and groundwater above the pipe where the ground is not stated. Where elevations are stated for a unit in the ground and that of the ground is not, it cannot judge otherwise."
    matters "A depth that was taken for an elevation turns the site upside down: the place of the unit, its cover, its uplift and the fall through it all come out wrong."
    remedy "Check whether the numbers are elevations or depths. What lies below the ground has a negative elevation where the ground stands at 0."
    source "Geometry of the enquiry's elevations"
    limits "Levels that fit together may all be wrong by the same amount. A water table above a pipe is common, and told only where the ground is not stated."
}

/// Nobody lifts water by less: a smaller rise is likelier a wrong level. Our judgement.
const LIFT: (f64, &Unit) = (0.3, &M);

fn look(s: &Subject<'_>) -> Verdict {
    let (inlet, outfall) = (s.enquiry.inlet.invert.q(), s.enquiry.outlet.invert.q());
    let (ground, table) = (s.enquiry.site.ground.q(), s.enquiry.site.groundwater.q());
    let stated = [inlet, outfall, table].into_iter().flatten().count();
    if stated == 0 {
        return Verdict::skips("no elevation of a pipe or of the groundwater is stated");
    }
    let pumped = s.design.basis.as_ref().is_some_and(|basis| basis.feed.pumped);
    let installation = s.design.performance.as_ref().map(|performance| &performance.site.installation);
    let is_under = *s.enquiry.site.buried == Some(true) || installation.is_some_and(|i| i.least_cover.is_some());
    let by_gravity = inlet.filter(|_| !pumped);
    let mut says = Vec::new();
    let mut held = |low: Option<Length>, high: Option<Length>, what: &str, over: &str| {
        if let (Some(low), Some(high)) = (low, high)
            && high > low
        {
            says.push(format!("{what} {} above {over}", s.show(high - low, (&FT, &M))));
        }
    };
    let lift = Length::of(LIFT.0, LIFT.1);
    let meant = ground.is_some() && by_gravity.zip(outfall).is_some_and(|(pipe, outfall)| outfall - pipe >= lift);
    held(by_gravity, outfall.filter(|_| !meant), "the outfall lies", "the pipe that comes in by gravity");
    if is_under {
        held(ground, by_gravity, "the pipe that comes in lies", "the ground");
        held(ground, table, "the groundwater stands", "the ground");
        if ground.is_none() {
            held(by_gravity, table, "the groundwater stands", "the pipe that comes in, and the ground is not stated");
        }
    }
    if !says.is_empty() {
        let doubt = "a level may be wrong, or a depth have been taken for an elevation";
        return Verdict::warns(format!("{}: {doubt}", says.join("; ")), None);
    }
    if is_under && ground.is_none() {
        return Verdict::cannot_judge(
            "elevations are stated and that of the ground is not, so that it cannot be seen whether they are depths",
            vec![GROUND],
            None,
        );
    }
    let count = if stated == 1 { "1 stated elevation fits".to_owned() } else { format!("{stated} stated elevations fit") };
    Verdict::passes(format!("{count} with the others and the ground as far as they are known"))
}
