//! A unit in the ground, and its effluent pumps, in numbers.

use super::section;
use crate::render::text::{Table, hang};
use stillrise_design::performance::flotation::Flotation;
use stillrise_search::Settled;
use stillrise_units::catalog::{FT, FT3, GAL, GPM, KN, KPA, LBF, M, M3, M3_H, MIN, PSI};
use stillrise_units::{Typed, Unit, print};

type Pair = (&'static Unit, &'static Unit);

pub(super) fn ground(out: &mut String, settled: &Settled, width: usize) {
    let Some(p) = &settled.job.design.performance else { return };
    let system = settled.job.enquiry.system();
    let show = |si: f64, pair: Pair| print::told(si, system.pick(pair));
    let mut table = Table::new(["in the ground", "value"]);
    let mut row = |name: &str, value: Option<String>| {
        if let Some(value) = value {
            table.row([name.to_owned(), value]);
        }
    };
    let i = &p.site.installation;
    row(
        "highest groundwater under its floor, which lifts nothing",
        p.flotation
            .as_ref()
            .and_then(|f| f.groundwater)
            .filter(|v| v.q.si() <= 0.0)
            .map(|v| show(-v.q.si(), (&FT, &M))),
    );
    row("cover over the top of the vessel", i.cover.map(|v| show(v.q.si(), (&FT, &M))));
    if let Some(f) = &p.flotation {
        row(
            "highest groundwater over its floor",
            f.groundwater.filter(|v| v.q.si() > 0.0).map(|v| show(v.q.si(), (&FT, &M))),
        );
        row("uplift on the empty unit", f.uplift.map(|v| show(v.q.si(), (&LBF, &KN))));
        if let Some(held) = &f.held {
            row("its own weight", Some(show(held.weight.q.si(), (&LBF, &KN))));
            row("soil straight above it", held.soil.map(|v| show(v.q.si(), (&LBF, &KN))));
            row("soil beside that, which leaning planes add", held.wedge.map(|v| show(v.q.si(), (&LBF, &KN))));
            row("how soil counts", Some(format!("{}{}", f.counts.title.to_lowercase(), planes(f))));
            row("anchors, under water", held.anchors.map(|v| show(v.q.si(), (&LBF, &KN))));
            row("factor against flotation", Some(print::digits(held.factor.q.si(), 3)));
            row(
                "factor that is asked for",
                Some(format!("{}, {}", print::digits(f.wanted.q.si(), 3), f.asked.title.to_lowercase())),
            );
            row("concrete still needed, tied to it", Some(show(held.concrete.q.si(), (&FT3, &M3))));
        }
    }
    if let Some(shell) = &p.shell {
        row("pressure of the water outside", Some(show(shell.outside.q.si(), (&PSI, &KPA))));
        row("shell would collapse at", Some(show(shell.collapse.q.si(), (&PSI, &KPA))));
    }
    if i.cover.is_some() || p.flotation.is_some() {
        out.push_str(&section("In the ground"));
        out.push_str(&table.render(width));
    }
    let (Some(runs), Some(train)) = (&p.pump_out, &settled.job.design.train) else { return };
    let Some(pumps) = &train.unit.pump_out else { return };
    out.push_str(&section("Effluent pumps"));
    let mut table = Table::new(["what", "value"]);
    for (name, value) in [
        ("pumps, one standing by", Some(print::digits(pumps.pumps.q.si(), 2))),
        ("flow of one", Some(show(pumps.pump.q.si(), (&GPM, &M3_H)))),
        ("water between start and stop", Some(show(runs.between.q.si(), (&GAL, &M3)))),
        ("shortest time from start to start", Some(show(runs.cycle.q.si(), (&MIN, &MIN)))),
        ("run at the largest flow", runs.run.map(|v| show(v.q.si(), (&MIN, &MIN)))),
        ("room between alarm and weir", Some(show(runs.reserve.q.si(), (&GAL, &M3)))),
        ("full at the largest flow, no pump running, after", Some(show(runs.lasts.q.si(), (&MIN, &MIN)))),
        ("lift to the outfall, without friction", runs.lift.map(|v| show(v.q.si(), (&FT, &M)))),
    ] {
        if let Some(value) = value {
            table.row([name.to_owned(), value]);
        }
    }
    out.push_str(&table.render(width));
    out.push_str(&hang(RESERVE, width, 0, 2));
}

/// That planes beside the unit which the way to count soil has are not counted, and why.
pub(crate) fn planes(f: &Flotation) -> &'static str {
    if f.leaves_planes_out() {
        "; its planes not counted here: those of units in parallel would overlap, and they are published beside a lying cylinder alone"
    } else {
        ""
    }
}

/// What happens when no pump runs.
pub(crate) const RESERVE: &str = "When no pump runs and that room is full, the weir ahead drowns, and water backs up into the drains with the oil on top of it: the alarm has to stop what flows in, or power has to stand by; both pumps hang on one supply. The rising main needs a non-return valve, and a loop over the level from which a sewer may back up.";
