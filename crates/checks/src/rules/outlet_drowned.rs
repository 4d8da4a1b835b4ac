//! Rule: outlet drowned

use super::not_enough_fall::open;
use crate::ask::{TAILWATER, outfall};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::enquiry::range::OutletControl;
use stillrise_units::Typed;
use stillrise_units::catalog::{FT, IN, M, MM};

rule! {
    "outlet-drowned" "Outlet drowned by the water at the outfall", Outlet;
    looks "The water at the outfall against the level that stands in the clear well without flow: above it, it fails. It warns when the water behind pipe or weir holds back the largest flow. Without the outfall's water and invert it cannot judge."
    matters "Water at the outfall above the crest stands in the unit too: every oil level shifts, and water may run backwards through the unit."
    remedy "Raise the unit or the outfall, keep the outfall's water down, or put an effluent pump behind a free weir."
    source "Geometry of the outfall and the unit's crest"
    limits "The outfall's water is taken as steady; floods and tides above what was stated are not looked at."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(train), Some(performance)) = (&s.design.train, &s.design.performance) else {
        return s.stopped();
    };
    let highest = performance.highest();
    let Some(tailwater) = performance.site.tailwater else {
        return if highest.drowned {
            Verdict::warns("the water behind the weir stands above its crest at the largest flow", highest.well.at)
        } else {
            let known = [
                (s.enquiry.outlet.tailwater.is_given(), TAILWATER),
                (s.enquiry.outlet.invert.is_given(), outfall(s)),
            ];
            Verdict::cannot_judge(
                "water level and invert at the outfall are not both known, to be held against the crest of the clear well",
                open(known),
                train.unit.frame.crest.at,
            )
        };
    };
    let spare = train.unit.frame.crest.q - tailwater.q;
    if spare.si() < 0.0 {
        let over = s.show(-spare, (&IN, &MM));
        return Verdict::fails(
            format!("the water at the outfall stands {over} above the crest of the clear well"),
            tailwater.at,
        );
    }
    let below = s.show(spare, (&IN, &MM));
    if highest.drowned {
        let cause = if train.unit.frame.control.q == OutletControl::Weir {
            "the water behind the weir stands above its crest".to_owned()
        } else {
            let over = s.show(tailwater.q - performance.site.outfall.q, (&FT, &M));
            format!("the water at the outfall, {over} above its invert, drowns the pipe")
        };
        Verdict::warns(
            format!("{cause} at the largest flow; the outfall's water stands {below} below the crest"),
            highest.well.at,
        )
    } else {
        Verdict::passes(format!("the water at the outfall stands {below} below the crest of the clear well"))
    }
}
