//! Rule: not enough fall

use crate::ask::{Ask, INLET_INVERT, outfall};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::performance::site::SiteLevels;
use stillrise_units::Typed;
use stillrise_units::catalog::{FT, IN, M, MM};

rule! {
    "not-enough-fall" "Not enough fall for gravity", Site;
    client "The levels leave too little fall for the water to run through the unit by itself."
    looks "The incoming invert against the unit's inlet invert, when the unit stands so that its outlet drains to the outfall. Without both inverts it cannot judge."
    matters "Water that cannot run through backs up into the drains, and the oil with it."
    remedy "Lower the outfall, choose a unit with less fall from inlet to outlet, or lift the water by a pump of low shear behind a sump."
    source "Geometry of the enquiry's inverts and the unit's"
    limits "The pipe between is taken at one slope; losses of the incoming drain are not counted."
}

/// Within this, in metres, two levels are one: a tenth of a millimetre.
const MEETS: f64 = 1e-4;

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    if s.design.basis.as_ref().is_some_and(|b| b.feed.pumped) {
        return Verdict::skips("the water is pumped");
    }
    if s.design.train.as_ref().is_some_and(|train| train.unit.pump_out.is_some()) {
        return Verdict::skips("effluent pumps lift the water to the outfall");
    }
    if performance.site.installation.water_over_crest.is_some() && performance.site.drop.is_some() {
        return Verdict::skips("the water at the outfall decides, not its invert");
    }
    // Without the outfall the unit has a place by ground and incoming pipe alone, and its outlet none to drain to.
    let Some(spare) = performance.site.spare_fall.filter(|_| performance.site.drop.is_some()) else {
        let says = "the inverts of incoming pipe and outfall are not both known: whether the water runs through by gravity is open";
        let known =
            [(s.enquiry.inlet.invert.is_given(), INLET_INVERT), (s.enquiry.outlet.invert.is_given(), outfall(s))];
        return Verdict::cannot_judge(says, open(known), None);
    };
    // Levels that meet differ by what rounding leaves.
    if spare.q.si().abs() < MEETS {
        return Verdict::passes("the incoming pipe lies at the unit's inlet invert, with nothing to spare");
    }
    let shown = s.show(if spare.q.si() < 0.0 { -spare.q } else { spare.q }, (&IN, &MM));
    if spare.q.si() < 0.0 {
        let says = format!(
            "the incoming pipe lies {shown} below the unit's inlet invert where the unit stands so high that its outlet drains{}",
            outlet_pipe(s, &performance.site)
        );
        Verdict::fails(says, spare.at)
    } else {
        Verdict::passes(format!("the incoming pipe lies {shown} above the unit's inlet invert"))
    }
}

/// How much of the fall the outlet pipe takes, where nobody said its length or its slope.
fn outlet_pipe(s: &Subject<'_>, site: &SiteLevels) -> String {
    let assumed: Vec<&str> = [(site.length.at, "length"), (site.slope.at, "slope")]
        .into_iter()
        .filter_map(|(at, what)| s.assumed(at).map(|_| what))
        .collect();
    if assumed.is_empty() {
        return String::new();
    }
    format!(
        "; the outlet pipe takes {} of fall over {} at {}, and its {} nobody said",
        s.show(site.length.q * site.slope.q, (&IN, &MM)),
        s.show(site.length.q, (&FT, &M)),
        s.percent(site.slope.q),
        assumed.join(" and ")
    )
}

/// What is still to be asked.
pub(super) fn open<const N: usize>(known: [(bool, Ask); N]) -> Vec<Ask> {
    known.into_iter().filter(|(known, _)| !known).map(|(_, ask)| ask).collect()
}
