//! Rule: floats when emptied

use crate::ask::GROUNDWATER;
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::performance::installation::Stands;
use stillrise_units::catalog::{FT, FT3, KG, LB, M, M3};
use stillrise_units::{Force, G, Length, Mass, Typed, print};

rule! {
    "floats-when-emptied" "Unit below ground floats when it is emptied", Site;
    client "In high groundwater the unit may float up when it is emptied."
    looks "The weight of the empty unit, of the soil straight above a lying cylinder and of concrete that is anchored to it, over the weight of the groundwater that the unit and its risers displace at its highest, where it stands in the ground: below the factor that is asked for it fails. Where the groundwater or the weight is not known it cannot judge."
    matters "A unit that is pumped out in high groundwater lifts: pipes break, and it may come up beside the people who empty it."
    remedy "An anchor slab or anchors beside it for the uplift, groundwater kept down while it is emptied, filling with water at once after pumping out, or a unit above the ground behind a lift pump."
    source "Buoyancy and restraint of underground tanks as in a county's permit file, California, 1999, factor 1.2; the enquiry may name another published factor"
    limits "Outside measures where the thickness of the wall is stated, the floor as thick; else inside ones, so that the walls displace more. The straight prism of soil unless the enquiry names another way to count it (`site.soil_counts`), planes beside units in parallel are not counted, no friction; water and sludge in it count for nothing."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(performance), Some(train)) = (&s.design.performance, &s.design.train) else { return s.stopped() };
    if s.enquiry.unit_stands() {
        return Verdict::skips("the unit stands already");
    }
    let Some(found) = &performance.flotation else {
        let stands = performance.site.installation.stands.q;
        return Verdict::skips(if matches!(stands, Stands::InPit | Stands::Buried) {
            "it is not known how deep it stands"
        } else {
            "it is not known to stand in the ground"
        });
    };
    // Where the levels ask for a pump, it stands in the ground with the pump behind it.
    let lead = if found.behind_pump { "with the pump behind it, and so in the ground: " } else { "" };
    let (floor, weighs) = (found.floor, train.unit.particulars.empty_weight.map(|w| w.q));
    let mass = |m: Mass| s.show(m, (&LB, &KG));
    // Forces are told as the weight of so much, as whoever lifts a unit thinks of them.
    let as_weight = |force: Force| s.show(force / G, (&LB, &KG));
    let Some(level) = found.groundwater else {
        let says = match (weighs, found.floats_above) {
            (None, _) => "how high the groundwater stands was not said, nor what the empty unit weighs".to_owned(),
            (Some(w), Some(from)) => format!(
                "how high the groundwater stands was not said: empty it weighs {} and floats where that stands more than {} over its floor, which lies at {}",
                mass(w),
                s.show(from.q.max(Length::from_si(0.0)), (&FT, &M)),
                s.level(floor.q)
            ),
            (Some(w), None) => format!(
                "how high the groundwater stands was not said: empty it weighs {}, its floor lies at {}",
                mass(w),
                s.level(floor.q)
            ),
        };
        return Verdict::cannot_judge(format!("{lead}{says}"), [GROUNDWATER], floor.at);
    };
    let Some(uplift) = found.uplift else { return Verdict::passes("the groundwater stays below its floor") };
    let height = train.unit.body.height().q;
    let under = if level.q > height { height } else { level.q };
    let lifts = if level.q > height {
        format!("{lead}once it is emptied, groundwater over its top lifts it by {}", as_weight(uplift.q))
    } else {
        format!("{lead}once it is emptied, groundwater {} over its floor lifts it by {}", s.show(under, (&FT, &M)), as_weight(uplift.q))
    };
    let Some(held) = &found.held else {
        return Verdict::cannot_judge(format!("{lifts}; what it weighs was not said"), [], floor.at);
    };
    let mut holds = vec![format!("it weighs {}", as_weight(held.weight.q))];
    holds.extend(held.soil.map(|soil| format!("the soil straight above it {}", as_weight(soil.q))));
    holds.extend(held.wedge.map(|soil| format!("the soil beside that {}", as_weight(soil.q))));
    holds.extend(held.anchors.map(|anchors| format!("the anchors, which are no part of the unit, {}", as_weight(anchors.q))));
    let holds = match &holds[..] {
        [first, .., last] => format!("{first}{}, and {last}", holds[1..holds.len() - 1].iter().map(|h| format!(", {h}")).collect::<String>()),
        _ => holds.join(""),
    };
    let factor = format!("{} times the uplift, where {} is asked for", print::digits(held.factor.q.si(), 3), print::digits(found.wanted.q.si(), 2));
    let holds = if held.soil.is_some() || held.anchors.is_some() { format!("; {holds}: {factor}") } else { format!(", and {holds}: {factor}") };
    let says = format!("{lifts}{holds}");
    if held.factor.q >= found.wanted.q {
        return Verdict::passes(says);
    }
    let says = format!(
        "{says}; {} of concrete under water, tied to it, would hold it",
        s.show(held.concrete.q, (&FT3, &M3))
    );
    // With the pump ahead of it, it stands over the ground.
    if found.behind_pump { Verdict::warns(says, held.factor.at) } else { Verdict::fails(says, held.factor.at) }
}
