//! What must hold whatever the numbers: more helps, less does not, and no file makes the tool panic (long because each property wants its own inputs).

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{Sheet, demo, same_bits, set, worked, written};
use proptest::prelude::*;
use proptest::sample::Index;
use std::sync::atomic::{AtomicUsize, Ordering};
use stillrise_design::enquiry::keys::{BlockSpec, KeyKind, KeySpec};
use stillrise_design::enquiry::range::Range;
use stillrise_design::enquiry::{blocks, read_enquiry};
use stillrise_design::job::{begin, complete};
use stillrise_design::performance::Depth;
use stillrise_design::performance::removal::Removal;
use stillrise_design::{Off, WhatIf};
use stillrise_search::{Settled, settle};
use stillrise_units::parse::{Reading, quantity_of};
use stillrise_units::{Dim, Typed, math};
use toml::{Table, Value};

/// The demo range, read once.
fn range() -> &'static Range {
    static RANGE: std::sync::OnceLock<Range> = std::sync::OnceLock::new();
    RANGE.get_or_init(demo)
}

/// The wash bay with some values, settled.
fn wash(values: &[(&str, String)]) -> Settled {
    let sheet = values.iter().fold(Sheet::data("wash"), |sheet, (key, value)| sheet.with(key, value));
    sheet.settle(range())
}

/// Share of the free oil left, by case, season, state and bound.
fn left(settled: &Settled) -> Vec<f64> {
    let performance = settled.job.design.performance.as_ref().expect("the wash bay has a performance");
    assert!(!performance.removals.is_empty());
    let bounds = |r: &Removal| {
        let bounds = [r.free.ideal, Some(r.free.expected), r.free.mixed].map(|free| free.expect("worked"));
        bounds.map(|free| free.q.si() / r.content.free.q.si())
    };
    performance.removals.iter().flat_map(bounds).collect()
}

/// That nothing of the first is below the second by more than the integral over the droplets is good for.
fn at_least(more: &Settled, less: &Settled) -> Result<(), TestCaseError> {
    let (more, less) = (left(more), left(less));
    prop_assert_eq!(more.len(), less.len());
    for (more, less) in more.iter().zip(&less) {
        prop_assert!((0.0..=1.0).contains(more) && (0.0..=1.0).contains(less), "{more} and {less} are no shares");
        prop_assert!(*more >= less - 1e-9, "{more} is left, and {less} by the other");
    }
    Ok(())
}

fn two(low: f64, high: f64) -> impl Strategy<Value = (f64, f64)> {
    (low..high, low..high).prop_map(|(a, b)| if a <= b { (a, b) } else { (b, a) })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn coarser_droplets_leave_no_more(d in two(10.0, 300.0), flow in 10.0..200.0) {
        let flow = ("stream.flow", format!("{flow} gpm"));
        let at = |d: f64| wash(&[flow.clone(), ("droplets.d50", format!("{d} um"))]);
        at_least(&at(d.0), &at(d.1))?;
    }

    #[test]
    fn more_plates_leave_no_more(pack in two(8.0, 34.0), d in 20.0..200.0) {
        let d50 = ("droplets.d50", format!("{d} um"));
        let at = |h: f64| wash(&[d50.clone(), ("unit.dimensions.pack_height", format!("{h} in"))]);
        at_least(&at(pack.0), &at(pack.1))?;
    }

    #[test]
    fn more_flow_leaves_no_less(flow in two(5.0, 400.0), d in 20.0..200.0) {
        let d50 = ("droplets.d50", format!("{d} um"));
        let at = |q: f64| wash(&[d50.clone(), ("stream.flow", format!("{q} gpm"))]);
        at_least(&at(flow.1), &at(flow.0))?;
    }

    #[test]
    fn heavier_oil_leaves_no_less(rho in two(700.0, 975.0), d in 20.0..200.0) {
        let d50 = ("droplets.d50", format!("{d} um"));
        let at = |rho: f64| wash(&[d50.clone(), ("oil.density", format!("{rho} kg/m3"))]);
        at_least(&at(rho.1), &at(rho.0))?;
    }

    #[test]
    fn colder_water_leaves_no_less(t in two(0.5, 21.0), d in 20.0..200.0, rho in 720.0..960.0) {
        let set = [("droplets.d50", format!("{d} um")), ("oil.density", format!("{rho} kg/m3"))];
        let at = |t: f64| wash(&[set[0].clone(), set[1].clone(), ("water.coldest", format!("{t} °C"))]);
        let (colder, warmer) = (at(t.0), at(t.1));
        at_least(&colder, &warmer)?;
        // Within one job, the warm season leaves no more than the cold one.
        let performance = colder.job.design.performance.as_ref().expect("a performance");
        for cold in performance.removals.iter().filter(|r| r.season == stillrise_design::basis::fluids::Season::Cold) {
            let warm = performance.removals.iter().find(|r| {
                r.case == cold.case && r.state == cold.state && r.season != cold.season
            }).expect("both seasons");
            let (cold, warm) = [cold, warm].map(|r| r.free.ideal.expect("worked").q.si()).into();
            prop_assert!(cold >= warm - 1e-9, "{cold} left in the cold, {warm} in the warm");
        }
    }

    #[test]
    fn a_larger_spill_never_shrinks_the_store_asked_for(
        oil in 0.1..200.0, rain in 0.0..600.0, fire in 0.0..200.0, depth in 0.1..3.0, valve in 0_usize..4
    ) {
        let at = |oil: f64| {
            let valve = ["open", "closed", "automatic", "none"][valve];
            [
                ("spill.volume", format!("{oil} m3")), ("rain.event_depth", format!("{rain} mm")),
                ("spill.fire_volume", format!("{fire} m3")), ("containment.depth", format!("{depth} m")),
                ("containment.stone_depth", format!("{} m", depth / 2.0)), ("containment.drain", valve.to_owned()),
            ]
            .iter()
            .fold(Sheet::data("pit"), |sheet, (key, value)| sheet.with(key, value))
            .settle(range())
        };
        // What is asked for: the stage, what would hold it deeper, wider or by more, what comes to the separator.
        let asked = |settled: &Settled| {
            let design = &settled.job.design;
            let basis = design.basis.as_ref().expect("a basis");
            let b = &basis.containment.as_ref().expect("containments").balances[0];
            let stage = &design.train.as_ref().expect("a train").stages[0];
            // The stage names what it lacks, where it lacks anything.
            let lacks = match &stage.size {
                Some((_, stillrise_handbook::page::Arg::Number(si), _)) => *si,
                _ => 0.0,
            };
            assert_eq!(lacks > 0.0, stage.asked_for, "{}: {:?}", stage.name, stage.size);
            let further = b.further.as_ref();
            let numbers = [
                lacks,
                further.and_then(|f| f.depth).map_or(0.0, |v| v.q.si()),
                further.and_then(|f| f.area).map_or(0.0, |v| v.q.si()),
                further.and_then(|f| f.count).map_or(0.0, |v| v.q.si()),
                basis.spill.as_ref().map_or(0.0, |s| s.at_unit().q.si()),
            ];
            (numbers, b.spare.holds())
        };
        let ((one, held), (two, held_twice)) = (asked(&at(oil)), asked(&at(2.0 * oil)));
        for (one, two) in one.iter().zip(&two) {
            prop_assert!(*two >= one - 1e-9, "{one} asked for, and {two} for twice the oil");
        }
        // Where nothing is lacking there may be room to spare, which the second oil takes first.
        let more = two[0] - one[0];
        let all = (more - oil).abs() < 1e-6 * (1.0 + two[0]);
        let fits = if one[0] > 0.0 { all } else { more <= oil + 1e-6 * (1.0 + two[0]) };
        prop_assert!(fits, "{} then {} for {oil} more", one[0], two[0]);
        prop_assert!(!(held_twice == Some(true) && held != Some(true)), "twice the oil is held, and the oil is not");
    }

    #[test]
    fn levels_rise_upstream_and_set_points_stand_in_order(
        flow in 1.0..400.0, pipe in 0_usize..4, tailwater in 98.0..101.5, rho in 700.0..970.0, alarm in 26.0..89.0,
        weir in any::<bool>()
    ) {
        let mut values = vec![
            ("stream.flow", format!("{flow} gpm")),
            ("outlet.pipe", ["3 in", "4 in", "6 in", "8 in"][pipe].to_owned()),
            ("outlet.tailwater", format!("{tailwater} ft")),
            ("oil.density", format!("{rho} kg/m3")),
            // Between the shares of routine pump-out and shut-off.
            ("method.alarm", format!("{alarm} %")),
        ];
        if weir {
            values.push(("unit.dimensions.weir_crest", "47 in".to_owned()));
        }
        let settled = wash(&values);
        let design = &settled.job.design;
        let (train, performance) = (design.train.as_ref().expect("a train"), design.performance.as_ref().expect("a performance"));
        for profile in &performance.profiles {
            let mut level = train.unit.outlet.crest.q;
            for step in &profile.steps {
                prop_assert!(step.loss.q.si() >= 0.0, "{}, {}: a loss of {:?}", profile.at.name(), step.name, step.loss.q);
                prop_assert!(step.level.q >= level, "{}, {}: {:?} below {level:?}", profile.at.name(), step.name, step.level.q);
                level = step.level.q;
            }
            prop_assert!(profile.well.q <= profile.chamber.q && profile.chamber.q <= profile.inlet.q);
        }
        for levels in &performance.levels {
            prop_assert!(levels.limit.q.si() >= 0.0);
            for pair in levels.levels.windows(2) {
                let here = format!("{}: {} before {}", levels.oil, pair[0].point.word, pair[1].point.word);
                prop_assert!(pair[0].thickness.q <= pair[1].thickness.q, "{here}");
                prop_assert!(pair[0].interface.q >= pair[1].interface.q && pair[0].surface.q <= pair[1].surface.q, "{here}");
                prop_assert!(pair[0].volume.q <= pair[1].volume.q, "{here}");
            }
            for level in &levels.levels {
                let layer = (level.surface.q - level.interface.q).si();
                prop_assert!((layer - level.thickness.q.si()).abs() < 1e-9, "{}: the layer lies between its faces", level.point.word);
            }
        }
    }
}

/// The comparisons above would hold of a tool that always says the same.
#[test]
fn each_of_them_moves_the_result() {
    let mean = |values: &[(&str, &str)]| {
        let values: Vec<(&str, String)> = values.iter().map(|(k, v)| (*k, (*v).to_owned())).collect();
        let shares = left(&wash(&values));
        shares.iter().sum::<f64>() / shares.len() as f64
    };
    let fine = ("droplets.d50", "50 um");
    let base = mean(&[fine]);
    for (key, worse) in [
        ("droplets.d50", "45 um"),
        ("unit.dimensions.pack_height", "20 in"),
        ("stream.flow", "70 gpm"),
        ("oil.density", "870 kg/m3"),
        ("water.coldest", "40 °F"),
    ] {
        let worse_left = mean(&[fine, (key, worse)]);
        assert!(worse_left > base + 1e-3, "{key} = {worse}: {base} then {worse_left}");
    }
}

#[test]
fn two_runs_are_one() {
    for sheet in worked().into_iter().chain(["wash", "pumped", "pit", "twin_si"].map(Sheet::data)) {
        let (a, b) = (sheet.settle(range()), sheet.settle(range()));
        assert_eq!(a.job.ledger.entries.len(), b.job.ledger.entries.len(), "{}", sheet.name);
        for (x, y) in a.job.ledger.entries.iter().zip(&b.job.ledger.entries) {
            assert!(same_bits(&x.value, &y.value), "{}: {}", sheet.name, x.label);
            assert_eq!(format!("{x:?}"), format!("{y:?}"), "{}", sheet.name);
        }
        let rest = |s: &Settled| format!("{:?} {:?} {:?} {:?}", s.job.design, s.pick, s.candidates, s.questions());
        assert_eq!(rest(&a), rest(&b), "{}", sheet.name);
    }
}

/// What may be done to a file.
#[derive(Debug, Clone)]
enum Slip {
    /// A key or a whole block is left out.
    Drop(Index),
    /// A key holds another value that the reader allows.
    Mutate(Index, f64),
    /// A key is added that was not there.
    Add(Index, Index, f64),
}

fn slip() -> impl Strategy<Value = Slip> {
    prop_oneof![
        4 => any::<Index>().prop_map(Slip::Drop),
        3 => (any::<Index>(), 0.0..1.0).prop_map(|(i, at)| Slip::Mutate(i, at)),
        3 => (any::<Index>(), any::<Index>(), 0.0..1.0).prop_map(|(b, k, at)| Slip::Add(b, k, at)),
    ]
}

/// All places of a file: the way to each block, table and key.
fn places(value: &Value, way: &[String], out: &mut Vec<Vec<String>>) {
    let mut step = |name: String, inner: &Value| {
        let mut way = way.to_vec();
        way.push(name);
        out.push(way.clone());
        places(inner, &way, out);
    };
    match value {
        Value::Table(table) => table.iter().for_each(|(key, inner)| step(key.clone(), inner)),
        Value::Array(list) => list.iter().enumerate().for_each(|(i, inner)| step(i.to_string(), inner)),
        _ => {}
    }
}

fn at<'a>(value: &'a mut Value, way: &[String]) -> Option<&'a mut Value> {
    way.iter().try_fold(value, |value, step| match value {
        Value::Table(table) => table.get_mut(step),
        Value::Array(list) => list.get_mut(step.parse::<usize>().ok()?),
        _ => None,
    })
}

fn spec_of(way: &[String]) -> Option<&'static KeySpec> {
    let mut keys: Vec<&'static KeySpec> =
        blocks().find(|(spec, _)| spec.name == way.first().map(String::as_str).unwrap_or(""))?.0.keys();
    let mut found = None;
    for step in way[1..].iter().filter(|s| s.parse::<usize>().is_err()) {
        let spec = keys.iter().copied().find(|k| k.name == step)?;
        found = Some(spec);
        if let KeyKind::Table(of) = spec.kind {
            keys = of().keys();
        }
    }
    found
}

/// A value within the bounds of a key; `at` runs from its low to its high end.
fn within(spec: &KeySpec, at: f64) -> Option<Value> {
    let pick = |n: usize| (((at * n as f64) as usize).min(n - 1), ());
    let quantity = |dim: Dim| {
        let bound = |text: &str| quantity_of(text, dim, &Reading::default()).ok().map(|w| w.si());
        let (low, high) = spec.bounds.and_then(|(low, high)| Some((bound(low)?, bound(high)?)))?;
        // Bounds lie decades apart: small values come as often as large ones.
        let si = if low > 0.0 { low * math::pow(high / low, at) } else { low + (high - low) * at * at * at };
        Some(Value::String(written(si, spec.units)))
    };
    match spec.kind {
        KeyKind::Quantity(dim) | KeyKind::Quantities(dim) | KeyKind::Results(dim) => quantity(dim),
        KeyKind::Choice(words) | KeyKind::ClaimedChoice(words) => {
            Some(Value::String(words[pick(words.len()).0].0.to_owned()))
        }
        KeyKind::Named(names) => names().get(pick(names().len()).0).cloned().map(Value::String),
        KeyKind::Flag => Some(Value::Boolean(at < 0.5)),
        KeyKind::Count => Some(Value::Integer(1 + pick(8).0 as i64)),
        KeyKind::Text | KeyKind::Pattern(_) | KeyKind::Texts | KeyKind::Curve | KeyKind::Table(_) => None,
    }
}

fn slipped(table: &Table, slips: &[Slip]) -> Table {
    let mut file = Value::Table(table.clone());
    for slip in slips {
        let mut ways = Vec::new();
        places(&file, &[], &mut ways);
        match slip {
            Slip::Drop(i) if !ways.is_empty() => {
                let way = &ways[i.index(ways.len())];
                let Some((last, above)) = way.split_last() else { continue };
                match at(&mut file, above) {
                    Some(Value::Table(table)) => drop(table.remove(last)),
                    Some(Value::Array(list)) => {
                        drop(last.parse().ok().filter(|i| *i < list.len()).map(|i: usize| list.remove(i)))
                    }
                    _ => {}
                }
            }
            Slip::Mutate(i, share) if !ways.is_empty() => {
                let way = &ways[i.index(ways.len())];
                let new = spec_of(way).and_then(|spec| within(spec, *share));
                if let (Some(new), Some(old)) = (new, at(&mut file, way)) {
                    *old = new;
                }
            }
            Slip::Add(b, k, share) => {
                let all: Vec<&'static BlockSpec> = blocks().map(|(spec, _)| spec).collect();
                let block = all[b.index(all.len())];
                let keys = block.keys();
                let key = keys[k.index(keys.len())];
                if let (Some(Value::String(text)), Some(table)) = (within(key, *share), file.as_table_mut()) {
                    // A block of another shape than the list says is left as it is.
                    let _ = set(table, &format!("{}.{}", block.name, key.name), &text);
                }
            }
            _ => {}
        }
    }
    match file {
        Value::Table(table) => table,
        _ => Table::new(),
    }
}

/// Panics of any thread of this program; the ranking of questions runs on threads of its own, and
/// would go on without one that panicked.
static PANICS: AtomicUsize = AtomicUsize::new(0);

fn count_panics() {
    static ONCE: std::sync::Once = std::sync::Once::new();
    ONCE.call_once(|| {
        let before = std::panic::take_hook();
        std::panic::set_hook(Box::new(move |info| {
            PANICS.fetch_add(1, Ordering::SeqCst);
            before(info);
        }));
    });
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, max_shrink_iters: 400, ..ProptestConfig::default() })]

    #[test]
    fn no_file_makes_it_panic(job in any::<Index>(), slips in proptest::collection::vec(slip(), 1..12)) {
        count_panics();
        let jobs: Vec<Sheet> = worked().into_iter().chain(["wash", "pumped", "mixed", "pit"].map(Sheet::data)).collect();
        let sheet = &jobs[job.index(jobs.len())];
        let table = slipped(&sheet.table, &slips);
        let text = toml::to_string(&table).expect("a table can be written");
        let before = PANICS.load(Ordering::SeqCst);
        match read_enquiry(&text, &|name| std::fs::read(sheet.folder.join(name)).ok()) {
            Err(faults) => for fault in faults {
                prop_assert!(!fault.place.is_empty() && !fault.reason.is_empty() && !fault.remedy.is_empty(), "{fault:?}");
            },
            Ok(enquiry) => {
                let settled = settle(&enquiry, range());
                let stops = &settled.job.design.stops;
                let said = !stops.is_empty() || settled.shortfall.is_some();
                prop_assert!(settled.job.design.performance.is_some() || said, "nothing came of it and nothing says why");
                for entry in &settled.job.ledger.entries {
                    if let stillrise_handbook::page::Arg::Number(x) = entry.value {
                        prop_assert!(x.is_finite(), "{}, {} = {x}", entry.section, entry.label);
                    }
                }
                for q in settled.questions() {
                    prop_assert!(q.weight.is_finite(), "{}: weight {}", q.key, q.weight);
                }
            }
        }
        prop_assert_eq!(PANICS.load(Ordering::SeqCst), before, "a thread panicked");
    }

    #[test]
    fn without_a_trail_the_same_comes_out(slips in proptest::collection::vec(slip(), 0..4)) {
        let sheet = Sheet::data("wash");
        let text = toml::to_string(&slipped(&sheet.table, &slips)).expect("a table can be written");
        let Ok(enquiry) = read_enquiry(&text, &|_| None) else { return Ok(()) };
        let kept = settle(&enquiry, range());
        let Some(pick) = &kept.pick else { return Ok(()) };
        let nothing = WhatIf::default();
        let begun = begin(&mut Off, &nothing, &enquiry);
        let bare = complete(&mut Off, &nothing, &enquiry, begun, &pick.source(&enquiry, range()), pick.count, Depth::Full);
        let out = |p: Option<&stillrise_design::performance::Performance>| p.map(|p| {
            p.removals.iter().map(|r| r.total.expected.q.si().to_bits()).collect::<Vec<_>>()
        });
        prop_assert_eq!(out(kept.job.design.performance.as_ref()), out(bare.performance.as_ref()));
        prop_assert_eq!(&kept.job.design.stops, &bare.stops);
        // What documents print of a limit does not hang on a trail either.
        let asks = |d: &stillrise_design::job::Design| d.basis.iter().flat_map(|b| &b.limits).map(|l| {
            l.scatter.as_ref().map(|s| [s.variation.q.si(), s.multiplier.q.si(), s.mean.q.si()].map(f64::to_bits))
        }).collect::<Vec<_>>();
        prop_assert_eq!(asks(&kept.job.design), asks(&bare));
        let keeps = |d: &stillrise_design::job::Design| d.performance.iter().flat_map(|p| &p.limits).map(|l| {
            l.keeps.map(|k| [k.mean.q.si(), k.share.q.si()].map(f64::to_bits))
        }).collect::<Vec<_>>();
        prop_assert_eq!(keeps(&kept.job.design), keeps(&bare));
    }
}
