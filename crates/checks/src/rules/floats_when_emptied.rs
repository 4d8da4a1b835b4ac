//! Rule: floats when emptied

use crate::ask::GROUNDWATER;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::performance::installation::Stands;
use stillrise_units::catalog::{FT, KG, LB, M};
use stillrise_units::{Length, Mass, Typed, Volume};

rule! {
    "floats-when-emptied" "Unit below ground floats when it is emptied", Site;
    looks "The water that the unit displaces up to the highest groundwater, inside length by width by the height below it, and the hopper, against the weight of the empty unit, where it stands in the ground. Where the groundwater or the weight is not known it cannot judge."
    matters "A unit that is pumped out in high groundwater lifts: pipes break, and it may come up beside the people who empty it."
    remedy "An anchor slab or ballast for the uplift, groundwater kept down while it is emptied, filling with water at once after pumping out, or a unit above the ground behind a lift pump."
    source "Buoyancy; common practice asks for a margin over the uplift, 1.1 here, and counts no soil that was not designed to hold"
    limits "Inside measures, so that the walls displace more; soil on a slab, friction and pack are not counted, and neither is the margin that a local code asks for."
}

/// So many times the uplift the empty unit must weigh. Our proposal, after common practice.
const MARGIN: f64 = 1.1;

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(performance), Some(basis), Some(train)) = (&s.design.performance, &s.design.basis, &s.design.train) else {
        return s.stopped();
    };
    if s.enquiry.unit_stands() {
        return Verdict::skips("the unit stands already");
    }
    let installation = &performance.site.installation;
    // Where the levels ask for a pump, it stands in the ground with the pump behind it.
    let behind = installation.over_ground_ahead_of_pump.filter(|over| over.q.si() < 0.0);
    let (floor, lead) = match (installation.stands.q, behind.and(installation.floor_ahead_of_pump)) {
        (Stands::InPit | Stands::Buried, _) => match installation.floor {
            Some(floor) => (floor, ""),
            None => return Verdict::skips("it is not known how deep it stands"),
        },
        (_, Some(floor)) => (floor, "with the pump behind it, and so in the ground: "),
        _ => return Verdict::skips("it is not known to stand in the ground"),
    };
    let (body, density) = (&train.unit.body, basis.fluids.cold.density.q);
    let plan = body.over_all().q * body.width().q;
    let weighs = train.unit.particulars.empty_weight.map(|w| w.q);
    let mass = |m: Mass| s.show(m, (&LB, &KG));
    let Some(ground) = s.enquiry.site.groundwater.q() else {
        let says = weighs.map_or_else(
            || "how high the groundwater stands was not said, nor what the empty unit weighs".to_owned(),
            |w| {
                let from = ((w / (density * MARGIN) - train.unit.hopper_volume()) / plan).max(Length::from_si(0.0));
                format!(
                    "how high the groundwater stands was not said: empty it weighs {} and floats where that stands more than {} over its floor, which lies at {}",
                    mass(w),
                    s.show(from, (&FT, &M)),
                    s.level(floor.q)
                )
            },
        );
        return Verdict::cannot_judge(format!("{lead}{says}"), [GROUNDWATER], floor.at);
    };
    let under = (ground - floor.q).min(body.height().q).max(Length::from_si(0.0));
    // A hopper under the floor displaces water too.
    let below = if under.si() > 0.0 { train.unit.hopper_volume() } else { Volume::from_si(0.0) };
    let uplift: Mass = density * (plan * under + below);
    if uplift.si() <= 0.0 {
        return Verdict::passes("the groundwater stays below its floor");
    }
    let lifts = format!("{lead}groundwater {} over its floor lifts the empty unit by {}", s.show(under, (&FT, &M)), mass(uplift));
    let Some(weighs) = weighs else {
        return Verdict::cannot_judge(format!("{lifts}; what it weighs was not said"), [], floor.at);
    };
    let says = format!("{lifts}, and it weighs {}", mass(weighs));
    match (weighs >= uplift * MARGIN, lead.is_empty()) {
        (true, _) => Verdict::passes(says),
        // With the pump ahead of it, it stands over the ground.
        (false, false) => Verdict::warns(says, floor.at),
        (false, true) => Verdict::fails(says, floor.at),
    }
}
