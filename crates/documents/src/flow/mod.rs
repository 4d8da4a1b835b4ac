//! What `flow` prints: the water in the long section of the unit, resolved, and how far to trust it.

mod drawn;
mod files;

pub use drawn::drawn;

use crate::package::{MANIFEST, manifest_of_water};
use crate::render::svg::{Lettering, Options, svg};
use crate::render::text::{Table, hang, heading};
use crate::summary::{CAUTION, units};
use serde_json::{Value, json};
use stillrise_design::basis::FLOW_UNITS;
use stillrise_design::basis::cases::largest;
use stillrise_design::stages::Pass;
use stillrise_flowfield::of_unit::section;
use stillrise_flowfield::resolve::{Reading, Resolved, resolve};
use stillrise_flowfield::section::Unfit;
use stillrise_search::Settled;
use stillrise_units::catalog::{DEG_C, DEG_F, FT, FT_MIN, IN, M, MM, MM_S, PERCENT};
use stillrise_units::{Flow, Ratio, Typed, print, ratio};

/// What this flow leaves out, whatever the unit.
const LIMITS: &[&str] = &[
    "Two dimensions: what jets and corners do across the width is not seen. The inlet is as wide as the vessel, and gentler than its pipe.",
    "One viscosity stands for the water's swirl outside packs and beds; the accounts of it bracket what it may be, and none was fitted to a measured vessel.",
    "Steady, of one temperature, without salt, without a layer of oil; dished ends stand flat; below and above the plates the face of the pack is closed, as the calculation takes it.",
    "Verified against exact and published solutions of its equations; not validated: no measured vessel stands behind it. The calculation of the effluent does not use it.",
];

/// Resolves the largest flow through one unit of a job; `None` where nothing was sized or no flow is known.
///
/// # Errors
/// [`Unfit`] where its section lets no water pass.
pub fn resolved(settled: &Settled, goes_on: &dyn Fn(usize, usize) -> bool) -> Option<Result<Resolved, Unfit>> {
    let (basis, train) = (settled.job.design.basis.as_ref()?, settled.job.design.train.as_ref()?);
    let flow = flow(settled)?;
    let own = basis.fluids.cold.kinematic.q;
    Some(section(&train.unit, own).and_then(|section| resolve(&section, flow, goes_on)))
}

/// The largest flow through one unit.
fn flow(settled: &Settled) -> Option<Flow> {
    let (basis, train) = (settled.job.design.basis.as_ref()?, settled.job.design.train.as_ref()?);
    Some(Flow::from_si(largest(&basis.cases)?.feed.q.si() / train.count.q.si()))
}

/// What it says, a sentence each.
#[must_use]
pub fn sentences(settled: &Settled, found: &Resolved) -> Vec<String> {
    let percent = |q: Ratio| print::in_prose(q.si(), &PERCENT);
    let mut all = Vec::new();
    let steady = found.swirls.iter().filter(|(_, reading)| reading.is_found);
    let most: Vec<Ratio> = steady.clone().filter_map(|(_, reading)| reading.uneven()).collect();
    let taken = settled.job.design.performance.as_ref().and_then(|p| p.worst()).and_then(|worst| {
        worst.passage.stages.iter().find_map(|pass| match pass {
            Pass::Plates(plates) => Some(plates.spread.q),
            Pass::Tank(_) | Pass::Mesh(_) => None,
        })
    });
    if let (Some(low), Some(high)) = (reduce(&most, |a, b| b < a), reduce(&most, |a, b| b > a)) {
        let says =
            if percent(low) == percent(high) { percent(low) } else { format!("{} to {}", percent(low), percent(high)) };
        let against = match taken {
            Some(taken) if high > taken => {
                format!("; the calculation takes {}, which is too little by this flow", percent(taken))
            }
            Some(taken) => format!("; the calculation takes {}, which is on the safe side of it", percent(taken)),
            None => String::new(),
        };
        all.push(format!("The gap between plates that is fed most gets {says} more than its share{against}."));
    }
    if let [.., one, two] = &found.grids[..] {
        let between = |read: &dyn Fn(&Reading) -> Option<Ratio>| Some((read(one)? - read(two)?).si().abs());
        let changes = [
            ("what the gap fed most has over its share", between(&|r| r.uneven())),
            ("what runs back", between(&|r| Some(r.back))),
        ];
        let told: Vec<String> = changes
            .into_iter()
            .filter_map(|(what, change)| Some(format!("{what} by {} points", print::digits(change? * 100.0, 2))))
            .collect();
        all.push(format!("From the grid between to the finest changes: {}.", told.join(", ")));
    }
    let lost = found.swirls.iter().find(|(_, reading)| !reading.is_found);
    if let Some((swirl, _)) = lost {
        all.push(format!(
            "With the swirl of {} no steady flow was found: the water may not be steady there, and its numbers are the nearest that were met.",
            swirl.of
        ));
    }
    if found.grids.iter().any(|reading| !reading.is_found) {
        all.push(
            "On one grid or more the balances were not met; its numbers are the nearest that were found.".to_owned(),
        );
    }
    if found.is_stopped {
        all.push("It was stopped before its end.".to_owned());
    }
    all
}

fn reduce(all: &[Ratio], takes: impl Fn(Ratio, Ratio) -> bool) -> Option<Ratio> {
    all.iter().copied().reduce(|a, b| if takes(a, b) { b } else { a })
}

/// The same with its tables, for the terminal.
#[must_use]
pub fn flow_text(settled: &Settled, found: &Resolved, width: usize) -> String {
    let system = settled.job.enquiry.system();
    let mut out = heading("Water in the long section");
    if let (Some(basis), Some(train), Some(flow)) =
        (&settled.job.design.basis, &settled.job.design.train, flow(settled))
    {
        let case = largest(&basis.cases).map_or_else(String::new, |case| format!(" ({})", case.name));
        out += &hang(
            &format!(
                "{}: {} through one unit{case}, in water of {}, full to the crest; a steady flow, without what pipes and weirs do.",
                units(train),
                print::in_prose(flow.si(), system.pick(FLOW_UNITS)),
                print::in_prose(basis.fluids.cold.temperature.q.si(), system.pick((&DEG_F, &DEG_C)))
            ),
            width,
            0,
            0,
        );
        out.push('\n');
    }
    out.push('\n');
    let (length, speed) = (system.pick((&IN, &MM)), system.pick((&FT_MIN, &MM_S)));
    let header = |first: &'static str| {
        Table::new([
            first,
            "met",
            &format!("head, {}", length.symbol),
            &format!("fastest, {}", speed.symbol),
            "runs back, %",
            "stands, %",
            "gap most, %",
            "gap least, %",
        ])
    };
    let row = |name: String, r: &Reading| {
        let share = |q: Option<Ratio>| q.map_or_else(|| "–".to_owned(), |q| print::digits(q.si() * 100.0, 3));
        [
            name,
            if r.is_found { "yes" } else { "no" }.to_owned(),
            r.head.map_or_else(|| "–".to_owned(), |h| print::digits(length.from_si(h.si()), 3)),
            print::digits(speed.from_si(r.fastest.si()), 3),
            share(Some(r.back)),
            share(Some(r.still)),
            share(r.uneven().map(|u| u + ratio(1.0))),
            share(r.least()),
        ]
    };
    let mut grids = header("grid");
    for r in &found.grids {
        grids.row(row(format!("{} x {}", r.cells.0, r.cells.1), r));
    }
    out += &grids.render(width);
    if !found.swirls.is_empty() {
        out.push('\n');
        let mut swirls = header("swirl of");
        for (swirl, r) in &found.swirls {
            swirls.row(row(swirl.of.to_owned(), r));
        }
        out += &swirls.render(width);
    }
    out.push('\n');
    for text in sentences(settled, found) {
        out += &hang(&text, width, 0, 2);
        out.push('\n');
    }
    if let Some((_, reading)) = found.swirls.first().filter(|(_, reading)| !reading.gaps.is_empty()) {
        out.push('\n');
        out += &heading("Through the pack, by level");
        let level = system.pick((&FT, &M));
        let mut table = Table::new([&format!("level, {}", level.symbol), "of an even share, %"]);
        for (at, share) in reading.gaps.iter().rev() {
            table.row([print::digits(level.from_si(at.si()), 3), print::digits(share.si() * 100.0, 3)]);
        }
        out += &table.render(width);
    }
    out.push('\n');
    out += &heading("How far to trust it");
    for text in LIMITS {
        out += &hang(&format!("- {text}"), width, 0, 2);
        out.push('\n');
    }
    out.push('\n');
    out += &hang(CAUTION, width, 0, 0);
    out.push('\n');
    out
}

/// The files that others take: the picture, the values for programs that draw fields, and as a table; their manifest last.
#[must_use]
pub fn files(settled: &Settled, found: &Resolved) -> Vec<(String, Vec<u8>)> {
    let title = settled.job.enquiry.head.title.0.clone().unwrap_or_else(|| "Untitled".to_owned());
    let options = Options { id: "water".to_owned(), lettering: Lettering::Outlined, ..Options::default() };
    let picture = svg(&drawn(&format!("Water in the long section: {title}"), found), &options);
    let mut all = vec![
        ("water.svg".to_owned(), picture.into_bytes()),
        ("water.vtk".to_owned(), files::vtk(&title, found).into_bytes()),
        ("water.csv".to_owned(), files::csv(found).into_bytes()),
    ];
    all.push((MANIFEST.to_owned(), manifest_of_water(&title, &all)));
    all
}

/// The same as JSON; numbers in SI.
#[must_use]
pub fn flow_json(settled: &Settled, found: &Resolved) -> Value {
    let reading = |r: &Reading| {
        json!({
            "cells": [r.cells.0, r.cells.1], "met": r.is_found, "residual": r.residual,
            "head": r.head.map(Typed::si), "fastest": r.fastest.si(), "runs_back": r.back.si(), "stands": r.still.si(),
            "gap_most_over": r.uneven().map(Typed::si), "gap_least": r.least().map(Typed::si),
            "gaps": r.gaps.iter().map(|(at, share)| json!({ "level": at.si(), "share": share.si() })).collect::<Vec<_>>(),
        })
    };
    json!({
        "flow": flow(settled).map(Typed::si),
        "grids": found.grids.iter().map(reading).collect::<Vec<_>>(),
        "swirls": found.swirls.iter().map(|(swirl, r)| json!({ "of": swirl.of, "share": swirl.share, "reading": reading(r) })).collect::<Vec<_>>(),
        "says": sentences(settled, found),
        "stopped": found.is_stopped,
        "limits": LIMITS,
        "caution": CAUTION,
    })
}
