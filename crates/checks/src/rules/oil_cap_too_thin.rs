//! Rule: oil cap too thin

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{IN, MM};
use stillrise_units::{Length, Typed};

rule! {
    "oil-cap-too-thin" "No room for an oil layer", OilZone, bars_pick;
    client "There is no room in the unit for a layer of oil worth the name."
    looks "The thickest permitted layer of the oil with the thinnest one: none at all fails, less than {2 in|50 mm} warns."
    matters "A layer that may hardly grow cannot be measured, alarmed or drawn off; the oil goes on into the pack, under the lip, over the rim or into the inlet."
    remedy "Change what governs: lip or pack lower under the crest, higher walls, more fall from inlet to outlet, less loss through mesh and plates."
    source "Hydrostatics of the four caps; the bound of {2 in|50 mm} is our proposal"
    limits "The margins inside the caps are proposals of their own."
}

fn look(s: &Subject<'_>) -> Verdict {
    let Some(performance) = &s.design.performance else { return s.stopped() };
    let thinnest = performance.levels.iter().min_by(|a, b| a.limit.q.si().total_cmp(&b.limit.q.si()));
    let Some(oil) = thinnest else { return Verdict::skips("no oil is lighter than the water") };
    let cap = oil.caps.get(oil.governing).map_or("least cap", |c| c.of.word());
    let (name, layer) = (&oil.oil, s.show(oil.limit.q, (&IN, &MM)));
    if oil.limit.q.si() <= 0.0 {
        Verdict::fails(format!("the levels leave no layer of {name} at all; what allows least is the {cap}"), oil.limit.at)
    } else if oil.limit.q < Length::of(50.0, &MM) {
        Verdict::warns(
            format!(
                "at most {layer} of {name} are permitted, less than {}; what allows least is the {cap}",
                s.spoken("{2 in|50 mm}")
            ),
            oil.limit.at,
        )
    } else {
        Verdict::passes(format!("up to {layer} of {name} are permitted; what allows least is the {cap}"))
    }
}
