//! Rule: freeboard short

use crate::rule::{Subject, Verdict, rule};
use stillrise_design::stages::Reach;
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_units::Typed;
use stillrise_units::catalog::{IN, MM};

rule! {
    "freeboard-short" "Walls too low", Unit, bars_pick;
    client "The walls are too low: oil may spill over the rim before the alarm has called anybody."
    looks "The water in the inlet chamber at the largest flow, end of the interval, against the walls; and the oil layer that keeps the freeboard against the layer at the high-oil alarm, for every oil."
    matters "Oil lifts the surface above the water that balances it. Without freeboard, oil spills over the rim before the alarm has called anybody."
    remedy "A unit with higher walls or a lower crest, a lower alarm, or less loss through mesh and plates."
    source "Hydrostatics; the freeboard is our proposal"
    limits "Waves, foam and a unit out of level are not counted beyond the freeboard."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(train), Some(performance)) = (&s.design.train, &s.design.performance) else {
        return s.stopped();
    };
    let level = performance.highest().inlet;
    let above = train.unit.body.height().q - level.q;
    if above.si() <= 0.0 {
        let over = s.show(-above, (&IN, &MM));
        return Verdict::fails(
            format!("the inlet chamber would stand {over} above the rim at the largest flow"),
            level.at,
        );
    }
    let above = s.show(above, (&IN, &MM));
    let walls = performance.levels.iter().filter_map(|l| {
        let cap = l.caps.iter().find(|c| c.of == Reach::Wall)?;
        Some((l, cap.thickness, l.level(Mark::Alarm)?.thickness))
    });
    let room = |cap: f64, alarm: f64| cap - alarm;
    let Some((oil, cap, alarm)) =
        walls.min_by(|a, b| room(a.1.q.si(), a.2.q.si()).total_cmp(&room(b.1.q.si(), b.2.q.si())))
    else {
        return Verdict::passes(format!("the walls stand {above} above the inlet chamber at the largest flow"));
    };
    let (name, at_alarm) = (&oil.oil, s.show(alarm.q, (&IN, &MM)));
    if cap.q.si() <= 0.0 {
        Verdict::fails(
            format!(
                "the walls stand {above} above the inlet chamber at the largest flow: with the freeboard there is no room for {name}"
            ),
            cap.at,
        )
    } else if cap.q <= alarm.q {
        let cap_shown = s.show(cap.q, (&IN, &MM));
        Verdict::fails(
            format!("the freeboard is reached with {cap_shown} of {name}, the alarm only with {at_alarm}"),
            cap.at,
        )
    } else {
        // A layer deeper than the water itself is no layer.
        let kept = if cap.q < train.unit.outlet.crest.q {
            format!("up to {} of {name}", s.show(cap.q, (&IN, &MM)))
        } else {
            format!("with any layer of {name}")
        };
        Verdict::passes(format!(
            "the walls stand {above} above the inlet chamber at the largest flow; the freeboard is kept {kept}, the alarm is at {at_alarm}"
        ))
    }
}
