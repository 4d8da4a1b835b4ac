//! Rule: outlet drowned

use super::not_enough_fall::open;
use crate::ask::{INLET_INVERT, TAILWATER, outfall};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::stages::outlet::OutletControl;
use stillrise_units::Typed;
use stillrise_units::catalog::{FT, IN, M, MM};

rule! {
    "outlet-drowned" "Outlet drowned by the water at the outfall", Outlet;
    client "Water at the outfall may stand higher than the unit's outlet and push back into it."
    looks "The water at the outfall against the level that stands in the clear well without flow, with the unit no higher than the incoming pipe reaches it: above it, it fails. It warns when the water behind pipe or weir holds back the largest flow. Where the outfall's water or the unit's place is not known, it cannot judge."
    matters "Water at the outfall above the crest stands in the unit too: every oil level shifts, and water may run backwards through the unit."
    remedy "A lift pump of low shear ahead of the unit, an effluent pump behind a free weir, or an outfall into lower water; a check valve keeps the water out, and holds the flow back until the unit has risen over it."
    source "Geometry of the outfall and the unit's crest"
    limits "The outfall's water is taken as steady; floods and tides above what was stated are not looked at."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(train), Some(performance)) = (&s.design.train, &s.design.performance) else {
        return s.stopped();
    };
    if train.unit.pump_out.is_some() {
        return Verdict::skips("effluent pumps lift the water to the outfall");
    }
    let highest = performance.highest();
    if let Some(over) = performance.site.installation.water_over_crest {
        let shown = s.show(over.q, (&IN, &MM));
        return Verdict::fails(
            format!(
                "by gravity the water at the outfall{} would stand {shown} above the crest of the clear well; while it stands lower by more than that, the water runs through",
                s.enquiry.outlet.tailwater.claim().map_or_else(String::new, |level| format!(", at {},", level.written.text))
            ),
            over.at,
        );
    }
    let known = [(s.enquiry.outlet.tailwater.is_given(), TAILWATER), (s.enquiry.outlet.invert.is_given(), outfall(s))];
    let Some(tailwater) = performance.site.tailwater else {
        // Where the outfall lies in the ground, water that stands over the ground is a flood, which no outlet is laid out for.
        let crest = performance.site.installation.floor.map(|floor| floor.q + train.unit.outlet.crest.q);
        if let (Some(crest), Some(ground)) = (crest, s.enquiry.site.ground.q())
            && crest > ground
            && s.enquiry.outlet.invert.q().is_some_and(|invert| invert <= ground)
            && !highest.drowned
        {
            let over = s.show(crest - ground, (&FT, &M));
            return Verdict::passes(format!("the crest of the clear well stands {over} above the ground"));
        }
        return if highest.drowned {
            Verdict::warns("the water behind the weir stands above its crest at the largest flow", highest.well.at)
        } else {
            Verdict::cannot_judge(
                "the water level at the outfall, or what places the unit, is not known, to be held against the crest of the clear well",
                open(known),
                train.unit.outlet.crest.at,
            )
        };
    };
    let spare = train.unit.outlet.crest.q - tailwater.q;
    if spare.si() < 0.0 {
        // With all levels known the unit stands above the outfall's water; here the incoming pipe is open.
        let over = s.show(-spare, (&IN, &MM));
        return Verdict::cannot_judge(
            format!("the water at the outfall stands {over} above the crest of the clear well unless the unit stands higher, and how high the incoming pipe lets it stand is not known"),
            vec![INLET_INVERT],
            tailwater.at,
        );
    }
    let below = s.show(spare, (&IN, &MM));
    if highest.drowned {
        let cause = if train.unit.outlet.control.q == OutletControl::Weir {
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
