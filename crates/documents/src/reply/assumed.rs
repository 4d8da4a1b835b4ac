//! What was assumed, as far as it moves the result.

use super::alike::stands_in;
use super::asks::{questions, ranked};
use super::show;
use crate::summary::lower;
use std::collections::BTreeSet;
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::chemicals::Which;
use stillrise_design::basis::rain_kept_out::is_barred;
use stillrise_design::basis::storm::Storm;
use stillrise_design::basis::waters;
use stillrise_design::enquiry::blocks::Stream;
use stillrise_search::Settled;
use stillrise_units::Typed;
use stillrise_units::catalog::{DEG_C, DEG_F, FT2, GAL, GPD, IN_H, M2, M3, M3_D, MM_H, PERCENT};

/// Assumptions in the mail.
const ASSUMED: usize = 8;

/// What was taken without being told.
pub(super) fn assumed(settled: &Settled) -> Vec<String> {
    let rain = settled.job.design.basis.as_ref().and_then(|b| b.storm.as_ref()).map(|storm| {
        format!(
            "rain of {} on {}{}, of which {} run off, which gives {}",
            show(settled, storm.intensity.q.si(), (&IN_H, &MM_H)),
            show(settled, storm.area.q.si(), (&FT2, &M2)),
            surfaces(settled, storm),
            show(settled, storm.coefficient.q.si(), (&PERCENT, &PERCENT)),
            show(settled, storm.flow.q.si(), FLOW_UNITS)
        )
    });
    let in_mail = questions(settled);
    let mut seen = BTreeSet::new();
    let (deciding, rest) = ranked(settled);
    let others = deciding
        .into_iter()
        .chain(rest)
        .filter(|q| !stands_in(&in_mail, q) && seen.insert(q.label.clone()))
        // That is told in its own line.
        .filter(|q| !q.declared.is(Stream::with_rain))
        .take(ASSUMED)
        .map(|q| format!("{}: {}", q.label, q.now));
    let streams = &settled.job.enquiry.streams;
    let basis = settled.job.design.basis.as_ref();
    let unsaid = |w: &&waters::Water| matches!(w.which, Which::Stream(k) if streams.get(k).is_some_and(|s| s.with_rain.is_none()));
    let of_streams = || basis.iter().flat_map(|b| &b.waters).filter(unsaid);
    let apart: Vec<&str> = of_streams().filter(|w| !w.with_rain).map(|w| w.name.as_str()).collect();
    let beside: Vec<&str> = of_streams().filter(|w| w.with_rain).map(|w| w.name.as_str()).collect();
    let flows = basis.iter().flat_map(|b| &b.waters);
    let flows = flows.filter(|w| w.is_rain || w.with_rain || apart.contains(&w.name.as_str()));
    let with_all = flows.map(|w| w.flow.q.si()).sum::<f64>();
    let apart = (rain.is_some() && !apart.is_empty()).then(|| {
        format!(
            "no {} counted while it rains, with which {} would come",
            apart.join(" and no "),
            show(settled, with_all, FLOW_UNITS)
        )
    });
    let beside = (rain.is_some() && !beside.is_empty())
        .then(|| format!("{} counted while it rains, as an area lies under a canopy", beside.join(" and ")));
    let cold = settled.job.design.basis.as_ref().map(|basis| basis.fluids.cold.temperature.q);
    let cools = streams.iter().enumerate().filter_map(|(k, s)| {
        let (arrives, cold) = (s.temperature.claim()?, cold?);
        let name = s.name.as_ref().map_or_else(|| format!("stream {}", k + 1), Clone::clone);
        (!s.coldest.is_given() && arrives.written.si() > cold.si()).then(|| {
            format!(
                "water of {name}: arrives at {} and is worked at {}, to which it cools in the unit between the times it comes",
                arrives.written.text,
                show(settled, cold.si(), (&DEG_F, &DEG_C))
            )
        })
    });
    // A pump lifts more where it works against less than the head of its plate.
    let inlet = &settled.job.enquiry.inlet;
    let off_the_curve = basis.is_some_and(|b| b.feed.off_the_curve);
    let plate = inlet.pump_head.is_given() && inlet.rate.0.iter().any(|rate| rate.is_given()) && !off_the_curve;
    let plate = plate.then(|| {
        "pumps that lift what their plate says at the head that it names; against less head they lift more, and then more comes: their curve, and the head that they will work against, settle it".to_owned()
    });
    // On what sludge and oil are counted by.
    let storage = settled.job.design.performance.as_ref().map(|p| &p.storage);
    let daily = storage.map(|storage| {
        format!(
            "{} on an average day{}, by which sludge and oil are counted",
            show(settled, storage.average.q.si(), (&GPD, &M3_D)),
            sources(settled)
        )
    });
    let unheld = crate::summary::unheld::unheld(settled);
    let waters = super::carried::carried(settled).into_iter().chain(daily).chain(unheld).chain(plate);
    let apart = apart.into_iter().chain(beside).chain(cools).chain(waters);
    let barred = is_barred(&settled.job.enquiry);
    let barred = barred.then(|| "no rain, which this sewer does not take: it has to be kept out".to_owned());
    rain.into_iter().chain(apart).chain(barred).chain(others).collect()
}

/// The areas that make up the one that the rain falls on, where one alone does not tell: several, or one under a canopy.
fn surfaces(settled: &Settled, storm: &Storm) -> String {
    let all = &settled.job.enquiry.surfaces;
    let each: Vec<String> = storm
        .surfaces
        .iter()
        .zip(&storm.areas)
        .filter_map(|(k, area)| {
            let surface = all.get(*k)?;
            let name = surface.name.0.clone().unwrap_or_else(|| format!("surface {}", k + 1));
            let shown = show(settled, area.q.si(), (&FT2, &M2));
            Some(match (*surface.canopy, surface.area.q()) {
                (Some(true), Some(all)) => format!(
                    "{name} {shown}, onto which rain is blown under its canopy, of {}",
                    show(settled, all.si(), (&FT2, &M2))
                ),
                (Some(true), None) => format!("{name} {shown}, onto which rain is blown under its canopy"),
                _ => format!("{name} {shown}"),
            })
        })
        .collect();
    let covered = storm.surfaces.iter().filter_map(|k| all.get(*k)).any(|s| *s.canopy == Some(true));
    if each.len() > 1 || covered { format!(" ({})", each.join("; ")) } else { String::new() }
}

/// What brings the water of an average day, where it is more than one.
fn sources(settled: &Settled) -> String {
    let waters = settled.job.design.basis.iter().flat_map(|basis| &basis.waters);
    let each: Vec<String> = waters
        .filter(|water| water.per_day.q.si() > 0.0)
        .map(|water| format!("{} from {}", show(settled, water.per_day.q.si(), (&GAL, &M3)), lower(&water.name)))
        .collect();
    if each.len() > 1 { format!(" ({})", each.join(", ")) } else { String::new() }
}
