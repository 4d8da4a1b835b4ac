//! What is needed beside the unit, ahead of it and behind it.

use super::show;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::Kind;
use stillrise_design::enquiry::blocks::Rain;
use stillrise_design::performance::installation::Stands;
use stillrise_design::provenance::Origin;
use stillrise_design::train::{StageKind, Train};
use stillrise_handbook::page::Arg;
use stillrise_search::Settled;
use stillrise_units::Typed;
use stillrise_units::catalog::MIN;

/// Each stage that is asked for and nobody provides, with its first size, and the pump that the levels ask for.
pub(super) fn needed(settled: &Settled, train: &Train) -> Vec<String> {
    each(settled, train, false)
}

/// The same, of what is to be said of a polisher and a grit trap only the first.
pub(super) fn needed_in_brief(settled: &Settled, train: &Train) -> Vec<String> {
    each(settled, train, true)
}

fn each(settled: &Settled, train: &Train, brief: bool) -> Vec<String> {
    let asked = train.stages.iter().filter(|s| s.asked_for);
    let pumped = settled.job.design.basis.as_ref().is_some_and(|basis| basis.feed.pumped);
    let each: Vec<String> = asked
        .map(|s| {
            let size = s.size.as_ref().map_or_else(String::new, |(label, value, units)| match value {
                Arg::Number(si) => format!(" ({label} {})", show(settled, *si, *units)),
                _ => String::new(),
            });
            // What a polisher is for is not seen from its name, nor on which rain a volume rests.
            let of = match s.kind {
                StageKind::Polisher if brief => format!(", which {}", s.why.split(';').next().unwrap_or_default()),
                StageKind::Polisher => format!(", which {}", s.why),
                StageKind::GritTrap if pumped && !brief => {
                    ", a separate one ahead of the pump's own pit, which is no grit trap, as the pump stirs up what settles there; one that you have or plan may be it if it is as large".to_owned()
                }
                StageKind::GritTrap => " (one that you have or plan will do if it is as large)".to_owned(),
                StageKind::Screen => " (gratings or baskets that you have will do if they are as fine)".to_owned(),
                StageKind::Equalisation => unsaid_rain(settled).unwrap_or_default(),
                _ => String::new(),
            };
            format!("{}{size}{of}", s.name)
        })
        .collect();
    lift_pump(settled).into_iter().chain(each).collect()
}

/// The same by their names alone.
pub(super) fn in_short(settled: &Settled, train: &Train) -> Vec<String> {
    let asked = train.stages.iter().filter(|s| s.asked_for).map(|s| s.name.clone());
    lift_pump(settled).into_iter().chain(asked).collect()
}

/// The pump that has to lift the water, ahead of the unit or behind it, where the levels ask for one that nobody named.
fn lift_pump(settled: &Settled) -> Option<String> {
    let design = &settled.job.design;
    if design.performance.as_ref()?.site.installation.stands.q != Stands::LiftPump {
        return None;
    }
    let flow = design.basis.as_ref()?.design_flow()?;
    Some(format!("a pump for {}, behind the unit or ahead of it", show(settled, flow.q.si(), FLOW_UNITS)))
}

/// For how long a rain the volume ahead is, where nobody said how long it lasts.
fn unsaid_rain(settled: &Settled) -> Option<String> {
    let basis = settled.job.design.basis.as_ref()?;
    let hold = settled.job.design.train.as_ref()?.equalisation.as_ref()?;
    let rain = matches!(basis.cases.get(hold.case)?.kind, Kind::Storm | Kind::StormAndWash);
    let assumed = settled.job.ledger.entries.iter().find_map(|e| match (&e.origin, &e.value) {
        (Origin::Assumed(a), Arg::Number(si)) if a.declared.is(Rain::duration) => Some(*si),
        _ => None,
    })?;
    rain.then(|| {
        format!(
            ", for {} that arrive and {} that go on over {} of the design rain, a time that nobody said; over a longer one it is larger",
            show(settled, hold.inflow.q.si(), FLOW_UNITS),
            show(settled, hold.outflow.q.si(), FLOW_UNITS),
            show(settled, assumed, (&MIN, &MIN))
        )
    })
}
