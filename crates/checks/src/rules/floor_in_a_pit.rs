//! Rule: floor in a pit

use super::not_enough_fall::open;
use crate::ask::{GROUND, INLET_INVERT};
use crate::rule::{Subject, Verdict, rule};
use stillrise_design::performance::installation::{Because, Stands};
use stillrise_units::catalog::{FT, IN, M};
use stillrise_units::{Length, Typed};

rule! {
    "floor-in-a-pit" "Unit would stand in a pit", Site;
    client "A unit made to stand above the ground would stand in a pit."
    looks "The unit's lowest point, hopper and drain included, against the ground, when it stands so that the incoming pipe reaches it and, where the outfall is known, its outlet drains: below ground warns, more than {6 in|152 mm} below fails. Where the levels ask for a pump, that depth with the pump behind the unit warns. Without ground and, by gravity, incoming invert it cannot judge."
    matters "An above-ground unit in a pit stands in rain and vapour, can float in groundwater and cannot be walked around or drained."
    remedy "A unit made for burial, or a pump of low shear ahead that lifts the water to one on the ground."
    source "Geometry of the enquiry's levels; {6 in|152 mm} for a foundation is our proposal"
    limits "The ground is taken as level."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    if s.enquiry.unit_stands() {
        return Verdict::skips("the unit stands already");
    }
    let installation = &performance.site.installation;
    let made = s.design.train.as_ref().map(|train| train.unit.arrangement);
    if made.is_some_and(|made| made.is_in_ground()) {
        return Verdict::skips("it is made to lie in the ground");
    }
    if made.is_some_and(|made| made.is_built_in()) {
        let top = performance.fit.top;
        return if s.enquiry.site.ground.is_given() && top.q.si() < 0.0 {
            Verdict::fails(
                format!("its walls end {} below the ground: what runs over the yard runs into it", s.show(-top.q, (&FT, &M))),
                top.at,
            )
        } else {
            Verdict::skips("it is built into the ground")
        };
    }
    let pumped = s.design.basis.as_ref().is_some_and(|b| b.feed.pumped);
    let decided = installation.stands.q != Stands::Unknown;
    let Some(floor) = installation.over_ground.filter(|_| decided) else {
        let says = if installation.because == Because::NoFall {
            "the incoming pipe is too low for the outfall wherever the unit stands, and the ground is not known"
        } else {
            "the levels of ground and incoming pipe are not both known: whether the unit stands on the ground is open"
        };
        let incoming = pumped || s.enquiry.inlet.invert.is_given();
        let known = [(s.enquiry.site.ground.is_given(), GROUND), (incoming, INLET_INVERT)];
        return Verdict::cannot_judge(says, open(known), None);
    };
    let show = |x: Length| s.show(x, (&FT, &M));
    // Ahead of it the pump sets it on the ground; behind it, it stands as deep as the incoming pipe asks for.
    if let Some(over) = installation.over_ground_ahead_of_pump.filter(|over| over.q.si() < 0.0) {
        return Verdict::warns(
            format!(
                "with a pump behind it the unit's lowest point would lie {} below the ground{}; with the pump ahead of it, it would stand on the ground",
                show(-over.q),
                walls(s).map_or_else(String::new, |under| format!(" and its walls would end {} below it", show(under)))
            ),
            over.at,
        );
    }
    let stands = if installation.stands.q == Stands::Buried { ", and its walls would end below it" } else { "" };
    if floor.q < -Length::of(6.0, &IN) {
        Verdict::fails(format!("the unit's lowest point would lie {} below the ground{stands}", show(-floor.q)), floor.at)
    } else if floor.q.si() < 0.0 {
        Verdict::warns(format!("the unit's lowest point would lie {} below the ground", show(-floor.q)), floor.at)
    } else {
        Verdict::passes(format!("the unit's lowest point lies {} above the ground", show(floor.q)))
    }
}

/// How far the walls end below the ground with a pump behind the unit; nothing where they reach over it.
fn walls(s: &Subject<'_>) -> Option<Length> {
    let floor = s.design.performance.as_ref()?.site.installation.floor_ahead_of_pump?.q;
    let under = s.enquiry.site.ground.q()? - floor - s.design.train.as_ref()?.unit.body.height().q;
    (under.si() > 0.0).then_some(under)
}
