//! The trail of every worked job holds: each computed value comes out again from its inputs, bit for
//! bit, and every value of the design stands in it.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{OUT, Sheet, demo, same_bits, worked};
use stillrise_design::Ledger;
use stillrise_design::performance::smooth::Smooth;
use stillrise_design::provenance::{Entry, Origin};
use stillrise_handbook::page::Arg;
use stillrise_search::Settled;

/// Worked jobs and the bases of the other tests, settled once.
fn jobs() -> &'static [(String, Settled)] {
    static JOBS: std::sync::OnceLock<Vec<(String, Settled)>> = std::sync::OnceLock::new();
    JOBS.get_or_init(|| {
        let demo = demo();
        let bases = [
            "wash",
            "pumped",
            "pit",
            "ranged",
            "twin_us",
            "mixed",
            "laboratory",
            "changed",
            "buried",
            "basin",
            "upright",
            "vault",
            "train",
        ]
        .map(Sheet::data);
        // A unit made to measure has a trail of its own, and so has one with a weir.
        let custom = Sheet::data("twin_us").with("unit.custom", "true").with("site.max_width", "60 ft");
        let weir = Sheet::data("wash").with("unit.dimensions.weir_crest", "46.5 in");
        // A baffle behind the plates, and one ahead of them that is passed underneath.
        let baffles = Sheet::data("wash")
            .with("unit.dimensions.outlet_baffle_open", "10 %")
            .with("unit.dimensions.baffle_gap", "3 in");
        // A containment that is short, one of which little is known, and one whose drain contradicts itself.
        let pit = |values: &[(&str, &str)]| values.iter().fold(Sheet::data("pit"), |s, (k, v)| s.with(k, v));
        let pits = [
            pit(&[("spill.volume", "80 m3"), ("containment.freeboard", "10 %"), ("containment.drain_rate", "1 m3/h")]),
            pit(&[
                ("containment.depth", OUT),
                ("containment.stone_depth", OUT),
                ("containment.voids", OUT),
                ("rain", OUT),
                ("spill", OUT),
            ]),
            pit(&[("containment.drain", r#"["closed", "open"]"#), ("spill.into", OUT), ("unit", OUT)]),
        ];
        let all = worked().into_iter().chain(bases).chain([custom, weir, baffles]).chain(pits);
        all.map(|sheet| {
            let mut settled = sheet.settle(&demo);
            if !settled.job.enquiry.observed.is_empty() {
                settled.diagnose().unwrap_or_else(|stop| panic!("{}: {stop}", sheet.name));
            }
            (sheet.name.clone(), settled)
        })
        .collect()
    })
}

fn inputs(entry: &Entry) -> Vec<stillrise_design::Node> {
    entry.origin.inputs().collect()
}

/// Values that do not come out again.
fn astray(ledger: &Ledger) -> Vec<String> {
    let again = |entry: &Entry| match ledger.replay(entry)? {
        Ok(value) if same_bits(&value, &entry.value) => None,
        found => Some(format!("{}, {}: {:?} stands, {found:?} comes out", entry.section, entry.label, entry.value)),
    };
    ledger.entries.iter().filter_map(again).collect()
}

#[test]
fn every_computed_value_comes_out_again() {
    for (name, settled) in jobs() {
        let ledger = &settled.job.ledger;
        let computed = ledger.entries.iter().filter(|e| ledger.replay(e).is_some()).count();
        assert!(computed > 200, "{name}: only {computed} computed values");
        let astray = astray(ledger);
        assert!(astray.is_empty(), "{name}: {} of {computed}\n{}", astray.len(), astray.join("\n"));
    }
}

#[test]
fn a_changed_input_is_seen_by_the_replay() {
    for (name, settled) in jobs() {
        let mut ledger = settled.job.ledger.clone();
        // A length of time by which the water of each day is divided.
        let day = |e: &Entry| e.label == "one day" && matches!(e.origin, Origin::Given { .. });
        let at = ledger.entries.iter().position(day).unwrap_or_else(|| panic!("{name}: no day"));
        if let Arg::Number(x) = &mut ledger.entries[at].value {
            *x = f64::from_bits(x.to_bits() + 1 + (1 << 30));
        }
        assert!(!astray(&ledger).is_empty(), "{name}: {} was changed and nobody noticed", ledger.entries[at].label);
    }
}

#[test]
fn every_value_has_an_origin_before_it() {
    for (name, settled) in jobs() {
        for (at, entry) in settled.job.ledger.entries.iter().enumerate() {
            let here = format!("{name}, {}, {}", entry.section, entry.label);
            assert!(!entry.section.is_empty() && !entry.label.is_empty(), "{here}: without section or label");
            for node in inputs(entry) {
                let index = node.index().unwrap_or_else(|| panic!("{here}: an input has no place in the trail"));
                assert!(index < at, "{here}: an input stands after it");
            }
            let said = match &entry.origin {
                Origin::Given { source, text } => !source.place().is_empty() && !text.is_empty(),
                // Without a question, there is still a key and a source.
                Origin::Assumed(a) => !a.source.is_empty() && !a.key.is_empty(),
                Origin::Chosen { among, because, .. } => !among.is_empty() && !because.is_empty(),
                Origin::Derived { page, inputs } => page.args.len() == inputs.len(),
                Origin::Reckoned { text, inputs } => !text.is_empty() && !inputs.is_empty(),
                // No stage at all is what arrives.
                Origin::Gathered { inputs } => match &entry.value {
                    Arg::Group(group, _) => group.fields.len() == inputs.len(),
                    Arg::Groups(groups) => groups.len() == inputs.len(),
                    _ => false,
                },
            };
            assert!(said, "{here}: its origin says nothing: {:?}", entry.origin);
        }
    }
}

#[test]
fn no_value_is_without_a_number() {
    for (name, settled) in jobs() {
        for entry in &settled.job.ledger.entries {
            let finite = match &entry.value {
                Arg::Number(x) => x.is_finite(),
                Arg::Series(rows) => rows.iter().all(|(x, y)| x.is_finite() && y.is_finite()),
                Arg::Choice(word) => !word.is_empty(),
                // Its parts stand in lines of their own.
                Arg::Group(..) | Arg::Groups(_) => true,
            };
            assert!(finite, "{name}, {}, {}: {:?}", entry.section, entry.label, entry.value);
        }
    }
}

#[test]
fn a_choice_among_claims_is_one_of_them() {
    for (name, settled) in jobs() {
        let ledger = &settled.job.ledger;
        for entry in &ledger.entries {
            let Origin::Chosen { because, inputs, .. } = &entry.origin else { continue };
            if because.starts_with("of contradicting claims") || entry.label == "flow to the unit" {
                let among: Vec<_> = inputs.iter().filter_map(|n| ledger.value(*n)).collect();
                assert!(among.iter().any(|v| same_bits(v, &entry.value)), "{name}, {}: {among:?}", entry.label);
            }
        }
    }
}

/// Every `Val` of the design, found in its debug print so that none can be forgotten: the number it
/// holds, if it is one, and its place.
fn values(design: &str) -> Vec<(Option<f64>, &str)> {
    let parts = design.split("Val { q: ").skip(1);
    parts
        .map(|part| {
            let (value, rest) = part.split_once(", at: Node(").unwrap_or_else(|| panic!("no place after {part:.80}"));
            let place = rest.split(')').next().unwrap_or_default();
            let number = value.split(' ').next().and_then(|n| n.parse().ok());
            (number, place)
        })
        .collect()
}

#[test]
fn every_value_of_the_design_stands_in_the_trail() {
    for (name, settled) in jobs() {
        // What lies between the points of the trail's studies is drawn and nowhere printed, and worked with the trail off.
        let mut design = settled.job.design.clone();
        if let Some(ladder) = design.performance.as_mut().and_then(|p| p.ladder.as_mut()) {
            ladder.smooth = Smooth::default();
        }
        let print = format!("{design:?}");
        let values = values(&print);
        assert!(values.len() > 100, "{name}: only {} values", values.len());
        let mut numbers = 0;
        for (number, place) in values {
            let index: usize = place.parse().unwrap_or_else(|e| panic!("{name}: {place}: {e}"));
            let entry = settled.job.ledger.entries.get(index);
            let entry = entry.unwrap_or_else(|| panic!("{name}: a value without a place in the trail: {number:?}"));
            if let (Some(number), Arg::Number(stands)) = (number, &entry.value) {
                assert_eq!(number.to_bits(), stands.to_bits(), "{name}, {}, {}", entry.section, entry.label);
                numbers += 1;
            }
        }
        assert!(numbers > 100, "{name}: only {numbers} numbers were compared");
    }
}

/// Every number of a design, in the order in which it is held: texts, which only a trail is asked for, and places in the
/// trail are left out.
fn numbers(design: &stillrise_design::job::Design) -> Vec<String> {
    let text = format!("{:?} {:?} {:?}", design.basis, design.train, design.performance);
    let mut kept = String::with_capacity(text.len());
    let (mut quoted, mut escaped) = (false, false);
    for c in text.chars() {
        match (quoted, c) {
            (true, _) if escaped => escaped = false,
            (true, '\\') => escaped = true,
            (_, '"') => quoted = !quoted,
            (true, _) => {}
            (false, c) => kept.push(c),
        }
    }
    let apart = kept.replace("Node(", " Node(");
    let words = apart.split(|c: char| " (){}[],".contains(c)).filter(|word| !word.is_empty());
    let mut numbers = Vec::new();
    let mut place = false;
    for word in words {
        if !place && word.parse::<f64>().is_ok() {
            numbers.push(word.to_owned());
        }
        place = word.ends_with("Node");
    }
    numbers
}

/// Recording changes nothing: every worked job once more around the same unit with nothing recorded, every number the same.
#[test]
fn whole_designs_are_the_same_with_and_without_a_trail() {
    use stillrise_design::job::{begin, complete};
    use stillrise_design::performance::Depth;
    use stillrise_design::{Off, WhatIf};
    let demo = demo();
    let mut compared = 0;
    for (name, settled) in jobs() {
        let (Some(pick), enquiry) = (&settled.pick, &settled.job.enquiry) else { continue };
        let range = enquiry.range.as_ref().unwrap_or(&demo);
        let nothing = WhatIf::default();
        let source = pick.source(enquiry, range);
        let ledger = &mut Ledger::default();
        let begun = begin(ledger, &nothing, enquiry);
        let kept = complete(ledger, &nothing, enquiry, begun, &source, pick.count, Depth::Full);
        let begun = begin(&mut Off, &nothing, enquiry);
        let bare = complete(&mut Off, &nothing, enquiry, begun, &source, pick.count, Depth::Full);
        let (with, without) = (numbers(&kept), numbers(&bare));
        let first = with.iter().zip(&without).position(|(a, b)| a != b);
        let near = first.map(|at| (with.get(at.saturating_sub(3)..at + 3), without.get(at.saturating_sub(3)..at + 3)));
        assert_eq!((with.len(), near), (without.len(), None), "{name}");
        compared += with.len();
    }
    assert!(compared > 10_000, "{compared} numbers");
}
