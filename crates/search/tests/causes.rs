//! A unit that "stopped working": each cause, put into a unit that is otherwise as designed, is found again.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::demo;
use stillrise_design::Off;
use stillrise_design::enquiry::read_enquiry;
use stillrise_handbook::page::Arg;
use stillrise_search::Settled;
use stillrise_search::diagnosis::causes::{ALARM_BY_CLOCK, CAUSES, Cause};
use stillrise_search::diagnosis::situation::Occasion;
use stillrise_search::diagnosis::{Beyond, Diagnosis, diagnose, tried};
use stillrise_units::Typed;
use stillrise_units::catalog::MG_L;

const SHOP: &str = include_str!("../../../enquiries/machine-shop/enquiry.toml");

/// The shop without what was observed there, and with other observations.
fn shop(observed: &str) -> Settled {
    let cut = SHOP.find("[[observed]]").expect("observations");
    let text = format!("{}{observed}", &SHOP[..cut]);
    let enquiry = read_enquiry(&text, &|_| None).unwrap_or_else(|f| panic!("{f:?}\n{observed}"));
    stillrise_search::settle(&enquiry, &demo())
}

fn look(observed: &str) -> Diagnosis {
    diagnose(&shop(observed).job).unwrap_or_else(|s| panic!("{s}"))
}

/// Three occasions at a known influent: what the effluent would be under the cause, with the signs that go
/// with it most.
fn under(id: &str) -> String {
    let cause = CAUSES.iter().find(|c| c.id.word() == id).expect("a cause");
    let base = shop("[[observed]]\nname = \"a\"\noil_in = \"200 mg/L\"\nflow = \"6 m3/h\"\n");
    let design = &base.job.design;
    let (basis, train) = (design.basis.as_ref().expect("a basis"), design.train.as_ref().expect("a train"));
    let worst = design.performance.as_ref().and_then(|p| p.worst()).expect("a case");
    let observed = &base.job.enquiry.observed[0];
    let occasion = Occasion::new(&mut Off, observed, basis, &train.unit, worst).expect("an occasion");
    let mut situation = occasion.usual();
    if let Some(size) = cause.size {
        (cause.act)(&mut situation, size.likely);
    }
    let out = MG_L.from_si(occasion.effluent(&situation));
    let most = |words: &[&'static str], chances: Option<&[f64]>| {
        let chances = chances?;
        let best = (0..chances.len()).max_by(|a, b| chances[*a].total_cmp(&chances[*b]))?;
        Some(words[best])
    };
    let mut lines = vec![format!("oil_out = \"{out:.1} mg/L\"")];
    let measured = |what| !cause.settled_by.contains(&what);
    use stillrise_search::diagnosis::causes::{Gauge, Measured};
    if measured(Measured::OilIn) {
        lines.push("oil_in = \"200 mg/L\"".to_owned());
    }
    if measured(Measured::Flow) {
        lines.push("flow = \"6 m3/h\"".to_owned());
    }
    if measured(Measured::Temperature) {
        lines.push("temperature = \"12 °C\"".to_owned());
    }
    let looks = ["clear", "hazy", "milky", "oil film"];
    let jars = ["clears within an hour", "clears overnight", "stays"];
    let alarms = ["silent", "thick oil, no alarm", "oil found", "no oil found"];
    if let Some(word) = most(&looks, cause.looks.as_ref().map(|c| &c[..])) {
        lines.push(format!("looks = \"{word}\""));
    }
    if let Some(word) = most(&jars, cause.jar.as_ref().map(|c| &c[..])) {
        lines.push(format!("jar = \"{word}\""));
    }
    if let Some(word) = most(&alarms, cause.alarm.as_ref().map(|c| &c[..])) {
        lines.push(format!("alarm = \"{word}\""));
    }
    match cause.gauge {
        Some(Gauge::OilLayer) => lines.push("oil_layer = \"400 mm\"".to_owned()),
        Some(Gauge::Sludge) => lines.push("sludge = \"700 mm\"".to_owned()),
        Some(Gauge::Trigger) => lines.push(format!("sludge = \"{:.0} mm\"", trigger_mm(&base))),
        Some(Gauge::Level) => lines.push("level_drop = \"80 mm\"".to_owned()),
        None => {}
    }
    let ways = ["from the falling stream", "from mid-depth", "from the surface", "composite", "first flush"];
    if let Some(word) = most(&ways, cause.taken.as_ref().map(|c| &c[..])) {
        lines.push(format!("taken = \"{word}\""));
    }
    lines.push(format!("backed_up = \"{}\"", if cause.backed_up > 0.5 { "60 mm" } else { "0 mm" }));
    let lines = lines.join("\n");
    // An alarm that follows the flow comes with the morning's wash; others come when they come.
    let times = if id == ALARM_BY_CLOCK.word() { ["07:05", "07:20", "07:10"] } else { ["07:05", "11:40", "15:15"] };
    let one = |(k, time): (usize, &str)| format!("[[observed]]\nname = \"{k}\"\ntime = \"{time}\"\n{lines}\n\n");
    times.into_iter().enumerate().map(one).collect()
}

/// Depth of sludge that calls for pumping out, a tenth over it.
fn trigger_mm(settled: &Settled) -> f64 {
    let design = &settled.job.design;
    let (train, performance) =
        (design.train.as_ref().expect("a train"), design.performance.as_ref().expect("a performance"));
    let shape = &train.unit.shape;
    let volume = performance.storage.sludge_trigger.expect("a trigger").q;
    let depth = shape.level(volume).expect("a level") - shape.bottom();
    1.1 * stillrise_units::catalog::MM.from_si(depth.si())
}

/// What the trail works is what the search found, to the last bit.
#[test]
fn the_leading_explanation_stands_in_the_trail() {
    for id in ["emulsion", "flow-above-design", "colder-water", "blocked-plates", "oil-over-cap", "sampling-or-method"]
    {
        let mut settled = shop(&under(id));
        settled.diagnose().unwrap_or_else(|s| panic!("{id}: {s}"));
        let found = settled.diagnosis.as_ref().expect("a diagnosis");
        let lead = &found.explanations[0];
        assert_eq!(found.worked.len(), lead.effluent.len());
        for (at, effluent) in found.worked.iter().zip(&lead.effluent) {
            let entry = settled.job.ledger.entry(at.expect("a place")).expect("an entry");
            let effluent = effluent.expect("an effluent");
            assert!(matches!(entry.value, Arg::Number(q) if q.to_bits() == effluent.si().to_bits()), "{id}");
        }
    }
}

/// Every cause is among the first three, and weighs more than it did before anything was observed.
#[test]
fn each_cause_is_found_again() {
    let mut lost = Vec::new();
    for cause in CAUSES.iter().filter(|c| c.id.word() != "pump-shear" && c.often > 0.0) {
        let found = look(&under(cause.id.word()));
        let place = found.causes.iter().position(|(c, _)| c.id.word() == cause.id.word());
        let weight = place.map_or(0.0, |k| found.causes[k].1);
        if place.is_none_or(|k| k > 2) || weight < cause.often {
            let first: Vec<_> = found.causes.iter().take(4).map(|(c, w)| format!("{} {w:.2}", c.id.word())).collect();
            lost.push(format!("{}: place {place:?}, weight {weight:.2}; {}", cause.id.word(), first.join(", ")));
        }
    }
    assert!(lost.is_empty(), "{}", lost.join("\n"));
}

/// A layer over its cap, or sludge in the plates, outweighs what the effluent alone would say; a depth that the unit
/// cannot hold is refused.
#[test]
fn what_was_gauged_counts() {
    let with =
        |gauged: &str| format!("[[observed]]\nname = \"a\"\noil_out = \"90 mg/L\"\nflow = \"6 m3/h\"\n{gauged}\n");
    let weight = |gauged: &str, id: &str| {
        let found = look(&with(gauged));
        found.causes.iter().find(|(c, _)| c.id.word() == id).map_or(0.0, |(_, w)| *w)
    };
    for (key, thin, thick, id) in
        [("oil_layer", "20 mm", "500 mm", "oil-over-cap"), ("sludge", "60 mm", "900 mm", "blocked-plates")]
    {
        let [low, none, high] = [format!("{key} = \"{thin}\""), String::new(), format!("{key} = \"{thick}\"")]
            .map(|gauged| weight(&gauged, id));
        assert!(low < none && none < high && high > 0.8, "{id}: {low} {none} {high}");
    }
    let refused = diagnose(&shop(&with("oil_layer = \"4 m\"")).job).expect_err("too deep");
    assert!(refused.reason.contains("4 m is more than"), "{refused}");
}

/// What stands in an enquiry as measured is no cause any more, and a pump that is not there shears nothing.
#[test]
fn what_was_measured_or_is_not_there_is_no_cause() {
    let found = look(
        "[[observed]]\nname = \"a\"\noil_out = \"90 mg/L\"\noil_in = \"200 mg/L\"\nflow = \"6 m3/h\"\ntemperature = \"12 °C\"\n",
    );
    for id in ["flow-above-design", "stronger-influent", "colder-water", "pump-shear"] {
        assert!(found.causes.iter().all(|(c, _)| c.id.word() != id), "{id}");
    }
}

/// A measured overload is no fault of the unit, and is said; a larger unit is then a remedy.
#[test]
fn what_lies_beyond_the_basis_is_said() {
    let found = look(
        "[[observed]]\nname = \"a\"\noil_out = \"52 mg/L\"\noil_in = \"180 mg/L\"\nflow = \"20 m3/h\"\ntemperature = \"12 °C\"\n",
    );
    let seen = &found.seen[0];
    assert!(matches!(seen.beyond[..], [Beyond::Flow(over)] if (over - 20.0 / 6.0).abs() < 1e-9), "{:?}", seen.beyond);
    assert!(seen.within.is_some_and(|c| c.si() < 0.6 * seen.expected.si()), "{seen:?}");
    assert!(found.asks_too_much(&found.explanations[0]));
    let clear = look("[[observed]]\nname = \"a\"\noil_out = \"25 mg/L\"\noil_in = \"180 mg/L\"\nflow = \"6 m3/h\"\n");
    let lead = &clear.explanations[0];
    assert!(!clear.asks_too_much(lead) && clear.larger_helps(lead) == Some(false) && clear.seen[0].within.is_none());
}

/// A flow between two cases of the basis lies within it, whichever case is held against the limit.
#[test]
fn the_basis_is_all_its_cases() {
    let cut = SHOP.find("[[observed]]").expect("observations");
    let case = "[[case]]\nname = \"second machine\"\nflow = \"20 m3/h\"\noil = { kind = \"hydraulic-oil-46\", mean = \"20 mg/L\" }\n";
    let seen = "[[observed]]\nname = \"a\"\noil_out = \"30 mg/L\"\nflow = \"15 m3/h\"\n";
    let text = format!("{}{case}{seen}", &SHOP[..cut]);
    let enquiry = read_enquiry(&text, &|_| None).unwrap_or_else(|f| panic!("{f:?}"));
    let found = diagnose(&stillrise_search::settle(&enquiry, &demo()).job).unwrap_or_else(|s| panic!("{s}"));
    assert!(found.seen[0].beyond.is_empty(), "{:?}", found.seen[0]);
}

/// Two causes that act on one thing act on top of each other.
#[test]
fn causes_add_up() {
    let base = shop("[[observed]]\nname = \"a\"\noil_in = \"200 mg/L\"\nflow = \"6 m3/h\"\n");
    let design = &base.job.design;
    let (basis, train) = (design.basis.as_ref().expect("a basis"), design.train.as_ref().expect("a train"));
    let worst = design.performance.as_ref().and_then(|p| p.worst()).expect("a case");
    let observed = &base.job.enquiry.observed[0];
    let o = Occasion::new(&mut Off, observed, basis, &train.unit, worst).expect("an occasion");
    for pair in CAUSES.iter().flat_map(|a| CAUSES.iter().map(move |b| (a, b))) {
        let size = |c: &Cause| c.size.map_or(0.0, |s| s.likely);
        let (mut both, mut turned) = (o.usual(), o.usual());
        (pair.0.act)(&mut both, size(pair.0));
        (pair.1.act)(&mut both, size(pair.1));
        (pair.1.act)(&mut turned, size(pair.1));
        (pair.0.act)(&mut turned, size(pair.0));
        let near = |a: f64, b: f64| (a - b).abs() <= 1e-12 * a.abs();
        assert!(
            near(both.median, turned.median) && near(both.carried, turned.carried),
            "{} {}",
            pair.0.id.word(),
            pair.1.id.word()
        );
        assert!(near(o.effluent(&both), o.effluent(&turned)), "{} {}", pair.0.id.word(), pair.1.id.word());
    }
}

/// A unit that does what it should has nothing the matter with it.
#[test]
fn a_sound_unit_is_left_alone() {
    let found = look(
        "[[observed]]\nname = \"a\"\noil_out = \"25 mg/L\"\noil_in = \"200 mg/L\"\nflow = \"6 m3/h\"\ntemperature = \"12 °C\"\nlooks = \"clear\"\njar = \"clears within an hour\"\nalarm = \"silent\"\nbacked_up = \"0 mm\"\n",
    );
    assert!(found.explanations[0].causes.is_empty(), "{:?}", found.explanations[0]);
}

/// Weights are shares.
#[test]
fn weights_sum_to_one() {
    let found = diagnose(&shop(&under("emulsion")).job).unwrap_or_else(|s| panic!("{s}"));
    let sum: f64 = found.explanations.iter().map(|e| e.weight).sum();
    assert!(sum <= 1.0 + 1e-9 && sum > 0.8, "{sum}");
    assert!(found.causes.iter().all(|(_, w)| (0.0..=1.0 + 1e-9).contains(w)));
    assert_eq!(found.larger_helps(&found.explanations[0]), Some(false));
}

#[test]
fn nothing_observed_is_nothing_to_explain() {
    assert!(diagnose(&shop("").job).is_err());
}

/// A cause that says more never comes out as less, at any size that is tried: what leaves rises with every cause but the
/// one that speaks of reading too high or too low, and factors lie on the side that their cause names.
#[test]
fn factor_and_text_point_the_same_way() {
    let base = shop("[[observed]]\nname = \"a\"\noil_in = \"200 mg/L\"\nflow = \"6 m3/h\"\n");
    let design = &base.job.design;
    let (basis, train) = (design.basis.as_ref().expect("a basis"), design.train.as_ref().expect("a train"));
    let worst = design.performance.as_ref().and_then(|p| p.worst()).expect("a case");
    let observed = &base.job.enquiry.observed[0];
    let o = Occasion::new(&mut Off, observed, basis, &train.unit, worst).expect("an occasion");
    let usual = o.effluent(&o.usual());
    for cause in CAUSES {
        let Some(size) = cause.size else { continue };
        assert!(size.least <= size.low && size.low < size.likely && size.likely < size.high && size.high <= size.most);
        for x in tried(&size) {
            let mut s = o.usual();
            (cause.act)(&mut s, x);
            let out = o.effluent(&s);
            let id = cause.id.word();
            if id == "sampling-or-method" {
                assert!(cause.how.contains("too high") && cause.how.contains("too low"));
                assert_eq!(out > usual, x > 1.0, "{id} {x}");
                continue;
            }
            assert!(out >= usual * (1.0 - 1e-12), "{id} {x}: {out} below {usual}");
            // Words that name a side.
            let more = ["More", "surface"].iter().any(|w| cause.title.contains(w));
            let less = ["finer", "breaks", "mesh"].iter().any(|w| cause.title.contains(w));
            assert!(!more || x >= 1.0, "{id} {x} reads as more");
            assert!(!less || x <= 1.0, "{id} {x} reads as finer");
        }
    }
}

/// An alarm that comes at one time of the day without oil is not the same as one that comes at any.
#[test]
fn the_time_of_the_alarm_counts() {
    let at = |times: [&str; 3]| -> String {
        let one = |time: &str| {
            format!(
                "[[observed]]\nname = \"{time}\"\ntime = \"{time}\"\nalarm = \"no oil found\"\noil_out = \"25 mg/L\"\n"
            )
        };
        times.into_iter().map(one).collect()
    };
    let weight =
        |found: &Diagnosis, id: &str| found.causes.iter().find(|(c, _)| c.id.word() == id).map_or(0.0, |(_, w)| *w);
    let (together, apart) = (look(&at(["07:00", "07:10", "07:25"])), look(&at(["07:00", "11:30", "15:45"])));
    assert!(weight(&together, ALARM_BY_CLOCK.word()) > 0.8, "{}", weight(&together, ALARM_BY_CLOCK.word()));
    assert!(weight(&apart, ALARM_BY_CLOCK.word()) < 0.4, "{}", weight(&apart, ALARM_BY_CLOCK.word()));
    assert!(weight(&apart, "false-alarm") > weight(&together, "false-alarm"));
}
