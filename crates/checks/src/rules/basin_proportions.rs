//! Rule: a basin's channels outside the proportions of API 421

use crate::rule::{Subject, Verdict, rule};
use stillrise_units::catalog::{FT, FT_MIN, FT2, M, M2, MM_S};
use stillrise_units::{Length, Typed, Velocity, print};

rule! {
    "basin-proportions" "Basin outside the proportions of API 421", Unit;
    client "The basin is outside the proportions for which its sizing method was made."
    looks "Of a basin of parallel channels: that there are two or more, each {6 to 20 ft|1.83 to 6.1 m} wide and {3 to 8 ft|0.914 to 2.44 m} deep, the depth three to five tenths of the width, the length five widths or more, the velocity no more than {3 ft/min|15.2 mm/s} and 15 times the rise of a droplet of 150 µm. Any that is missed warns; a surface below that of a plain basin for droplets of 150 µm fails."
    matters "The rule's factor for turbulence and short-circuiting was found for basins of these proportions; outside them it says nothing."
    remedy "More or longer channels, another depth, or plates."
    source "API Publication 421 (1990), as articles quote it"
    limits "The rule says how large, not what comes out: it is for droplets of 150 µm and coarser."
}

fn look(s: &Subject<'_>) -> Verdict {
    let (Some(performance), Some(train)) = (&s.design.performance, &s.design.train) else { return s.stopped() };
    let unit = &train.unit;
    let Some(channels) = &unit.channels else { return Verdict::skips("it is no basin of channels") };
    let feet = |x: f64| Length::of(x, &FT);
    let (width, depth, length) = (channels.width.q, unit.outlet.crest.q, unit.body.length().q);
    let along = performance.velocities.along;
    let show = |x: Length| s.show(x, (&FT, &M));
    let mut missed = Vec::new();
    if channels.count.q.si() < 2.0 {
        missed.push("one channel alone cannot be emptied while it runs".to_owned());
    }
    if width < feet(6.0) || width > feet(20.0) {
        missed.push(format!("a channel is {} wide", show(width)));
    }
    if depth < feet(3.0) || depth > feet(8.0) {
        missed.push(format!("the water is {} deep", show(depth)));
    }
    let share = depth.si() / width.si();
    if !(0.3 - 1e-9..=0.5 + 1e-9).contains(&share) {
        missed.push(format!("the depth is {} of the width", print::digits(share, 2)));
    }
    if length < width * 5.0 {
        missed.push(format!("it is {} widths long", print::digits(length.si() / width.si(), 2)));
    }
    if let Some(basin) = &performance.basin {
        let allowed = Velocity::of(3.0, &FT_MIN).si().min(15.0 * basin.rise.q.si());
        if along.q.si() > allowed {
            missed.push(format!("the water runs at {}", s.show(along.q, (&FT_MIN, &MM_S))));
        }
        let (own, asked) = (unit.layout.tank_area, basin.least.q / train.count.q.si());
        if own.q < asked {
            let area = |q| s.show(q, (&FT2, &M2));
            return Verdict::fails(
                format!("its surface is {}, droplets of 150 µm ask for {}", area(own.q), area(asked)),
                own.at,
            );
        }
    }
    if missed.is_empty() {
        Verdict::passes("its channels keep the proportions, and its surface is what droplets of 150 µm ask for or more")
    } else {
        Verdict::warns(missed.join("; "), unit.layout.tank_area.at)
    }
}
