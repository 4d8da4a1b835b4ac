//! Containment ahead of the separator, from a file to the verdicts: a published pit, what a spill that is
//! held leaves to the separator, and what is refused.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::bases::look;
use common::{OUT, Sheet, demo};
use stillrise_design::basis::cases::Kind;
use stillrise_design::basis::containment::balance::{Balance, Part};
use stillrise_handbook::page::Arg;
use stillrise_search::Settled;
use stillrise_units::Typed;
use stillrise_units::catalog::{M, M3, M3_H, MG_L};

fn pit(values: &[(&str, &str)]) -> Sheet {
    values.iter().fold(Sheet::data("pit"), |sheet, (key, value)| sheet.with(key, value))
}

fn first(settled: &Settled) -> &Balance {
    &settled.job.design.basis.as_ref().and_then(|b| b.containment.as_ref()).expect("containments").balances[0]
}

/// IEEE Std 980, Annex B: 60 m3 of oil, a pit of 13 by 15 m less 18 m2 of foundations, stone with 35 % voids. The depth
/// for the oil alone, and with 4 in of rain on all of it, by hand: 60 / 61.95 and (60 + 19.81) / 61.95.
#[test]
fn the_pit_of_a_published_example() {
    let settled = pit(&[
        ("containment.area", "195 m2"),
        ("containment.deducted_area", "18 m2"),
        ("containment.depth", "0.9685 m"),
        ("containment.stone_depth", "0.9685 m"),
        ("containment.drains_to", "separator"),
        ("rain.event_depth", "4 in"),
        ("spill.volume", "60 m3"),
    ])
    .settle(&demo());
    let b = first(&settled);
    assert!((b.held.q.in_unit(&M3) - 60.0).abs() < 0.005, "{:?}", b.held);
    assert!((b.spare.val.q.in_unit(&M3) + 19.81).abs() < 0.01, "{:?}", b.spare);
    assert_eq!((b.spare.holds(), b.largest), (Some(false), Part::Oil));
    let depth = b.further.and_then(|f| f.depth).expect("a depth").q.in_unit(&M);
    assert!((depth - 1.288).abs() < 0.0005, "{depth}");
    // One more of its kind holds 60 m3 and takes 19.81 m3 of rain of its own.
    assert_eq!(b.further.and_then(|f| f.count).map(|n| n.q.si()), Some(1.0));
}

/// Under a baffle the oil pushes out as much water as weighs the same: 50 m3 of an oil of 835 kg/m3 at 15 °C beside one of 930
/// kg/m3 about 41.75 m3, not 46.5 (835 and 930 times 50, water of 1000 kg/m3; by the cold it is denser by up to 1 %). Where it
/// is not said which oil lies there, the heaviest of the job counts.
#[test]
fn a_containment_pushes_out_water_by_its_own_oil() {
    let pushed = |kind: &str| {
        let text = format!(
            "[enquiry]\ntitle = \"Tanks\"\nprint = \"si\"\n[[oil]]\nkind = \"diesel\"\ndensity = \"835 kg/m3\"\n\
            [[oil]]\nkind = \"sae-40\"\ndensity = \"930 kg/m3\"\n[rain]\nevent_depth = \"0 mm\"\n\
            [[stream]]\nname = \"wash\"\nflow = \"3 m3/h\"\n[[containment]]\nname = \"bund\"\narea = \"100 m2\"\n\
            depth = \"1 m\"\nvessel_oil = \"50 m3\"\ndrains_to = \"separator\"\ndrain = \"closed\"\n{kind}"
        );
        first(&Sheet::text("tanks", &text).settle(&demo())).displaced.expect("both float").water.q.in_unit(&M3)
    };
    let (own, any) = (pushed("oil = { kind = \"diesel\" }\n"), pushed(""));
    assert!((41.75..41.75 * 1.011).contains(&own), "{own}");
    assert!((46.5..46.5 * 1.011).contains(&any), "{any}");
}

#[test]
fn what_is_held_ahead_is_not_what_the_separator_is_sized_for() {
    let demo = demo();
    // A polisher is asked for by a strict limit; the spill comes faster than any water.
    let strict = [("limit.value", "5 mg/L"), ("spill.rate", "200 m3/h")];
    let (held, open) =
        (pit(&strict).settle(&demo), pit(&[strict[0], strict[1], ("containment.drain", "open")]).settle(&demo));
    let spill = |s: &Settled| {
        let basis = s.job.design.basis.as_ref().expect("a basis");
        basis.cases.iter().find(|c| c.kind == Kind::Spill).expect("a spill").inflow.q.in_unit(&M3_H)
    };
    // The drain of the basin at the end of the chain, as metered; and the spill itself through an open drain.
    assert!((spill(&held) - 0.2).abs() < 1e-9 && (spill(&open) - 200.0).abs() < 1e-6);
    for settled in [&held, &open] {
        let train = settled.job.design.train.as_ref().expect("a train");
        let polisher =
            train.stages.iter().find(|s| s.name == "polisher").and_then(|s| s.size.as_ref()).expect("a size");
        let largest = settled.job.design.basis.as_ref().and_then(|b| b.largest_steady()).expect("a case").feed.q.si();
        assert_eq!(polisher.1, Arg::Number(largest), "a spill is not what a polisher is sized for");
    }
}

#[test]
fn the_water_drained_has_a_content_of_its_own() {
    let settled = pit(&[("containment \"basin\".oil", OUT), ("stream.oil.mean", "777 mg/L")]).settle(&demo());
    let basis = settled.job.design.basis.as_ref().expect("a basis");
    let case = basis.cases.iter().find(|c| c.kind == Kind::DrainDown).expect("a drain-down");
    assert_eq!(case.name, "drain-down of basin");
    let total = case.content.as_ref().expect("a content").total.q.in_unit(&MG_L);
    assert!((total - 777.0).abs() > 1.0, "{total} is lent from the wash water");
    assert!(settled.questions().iter().any(|q| q.key == "containment \"basin\".oil.mean"), "nobody is asked for it");
}

#[test]
fn what_decides_is_asked_first() {
    let settled =
        pit(&[("containment.drain", OUT), ("containment.voids", OUT), ("spill.volume", "15.3 m3")]).settle(&demo());
    for key in ["containment \"pit\".drain", "containment \"pit\".voids"] {
        let found = settled.questions().iter().find(|q| q.key == key).unwrap_or_else(|| panic!("{key} is not asked"));
        assert!(found.weight >= 1.0, "{key} weighs {}", found.weight);
    }
}

#[test]
fn what_cannot_be_is_refused_with_its_place() {
    for (key, value, place, reason) in [
        ("containment \"basin\".drains_to", "pit", "containment \"pit\": drains_to", "comes back to itself"),
        ("containment.drains_to", "basn", "containment \"pit\": drains_to", "no containment is called"),
        ("containment.covers", r#"["yard"]"#, "containment \"pit\": covers", "no surface is called"),
        ("containment \"basin\".name", "Pit", "containment \"Pit\": name", "same name"),
        ("containment \"basin\".depth", "1 m", "containment \"basin\": volume", "stands beside depth"),
        ("containment.stone_depth", "2 m", "containment \"pit\": stone_depth", "above the usable depth"),
        ("containment.deducted_area", "30 m2", "containment \"pit\": deducted_area", "the whole area"),
        ("containment.drain", "shut", "containment \"pit\": drain", "is not a word"),
        ("spill.into", "the moon", "spill: into", "no containment is called"),
        ("spill.fire_duration", "10 min", "spill: fire", ""),
    ] {
        let faults = pit(&[(key, value)]).enquiry().map(|_| ()).expect_err(key);
        let fits =
            |f: &stillrise_units::Fault| f.place.contains(place) && f.reason.contains(reason) && !f.remedy.is_empty();
        assert!(faults.iter().any(fits), "{key} = {value}: {faults:?}");
    }
}

/// A basin of 33 m3 with 100 mm of rain on 30 m2 in it holds 30 m3 of oil: not the 40 m3 of its largest vessel, but a
/// spill of 10 m3. Of that nothing passes; of a spill of 35 m3 what is short may.
#[test]
fn a_spill_that_is_held_does_not_pass_because_a_larger_vessel_would() {
    let at = |spill: &str| {
        let text = format!(
            "[enquiry]\ntitle = \"Dike\"\nprint = \"si\"\n[rain]\nevent_depth = \"100 mm\"\n[[stream]]\nname = \"wash\"\n\
             flow = \"10 m3/h\"\n[[containment]]\nname = \"dike\"\nkind = \"bund\"\narea = \"30 m2\"\ndepth = \"1.1 m\"\n\
             drain = \"closed\"\nvessel_oil = \"40 m3\"\n[spill]\nvolume = \"{spill}\"\nrate = \"20 m3/h\"\ninto = \"dike\"\nfire_volume = \"0 m3\"\n"
        );
        let settled = Sheet::text("dike", &text).settle(&demo());
        let basis = settled.job.design.basis.as_ref().expect("a basis");
        basis.spill.as_ref().expect("a spill").at_unit().q.in_unit(&M3)
    };
    assert!(at("10 m3").abs() < 1e-9, "{}", at("10 m3"));
    assert!(at("35 m3") > 0.0);
}

/// 1,200 m2 under 2,400 mm of rain a year are 2,880 m3, 7.885 m3 a day: what is drained into the unit is water it sees. At
/// 120 mm/h, 144 m3/h fall on them, which the storm off 300 m2 of surfaces does not count.
#[test]
fn what_is_drained_is_water_of_an_average_day() {
    let text = |drain: &str| {
        format!(
            "[enquiry]\ntitle = \"Yard\"\nprint = \"si\"\n[[surface]]\nname = \"bay\"\narea = \"300 m2\"\nrunoff = 1\n[rain]\n\
             intensity = \"120 mm/h\"\nannual = \"2400 mm\"\n[[containment]]\nname = \"tank yard\"\narea = \"1200 m2\"\n\
             depth = \"1 m\"\ndrains_to = \"separator\"\ndrain = \"{drain}\"\nsolids = \"40 mg/L\"\n[spill]\nvolume = \"1 m3\"\n"
        )
    };
    let settled = |drain: &str| Sheet::text("yard", &text(drain)).settle(&demo());
    let a_day = |settled: &Settled| {
        let performance = settled.job.design.performance.as_ref().expect("a performance");
        M3.from_si(performance.storage.average.q.si() * 86400.0)
    };
    let surfaces = 300.0 * 2.4 / 365.25;
    let yard = 1200.0 * 2.4 / 365.25;
    let open = settled("open");
    assert!((a_day(&open) - surfaces - yard).abs() < 1e-3, "{}", a_day(&open));
    assert!((a_day(&settled("closed")) - surfaces - yard).abs() < 1e-3, "opened by hand it drains all the same");
    assert!((a_day(&settled("none")) - surfaces).abs() < 1e-3, "what is carted away does not come");
    let ahead = open.job.design.basis.as_ref().and_then(|b| b.containment.clone()).expect("a containment");
    let storm = open.job.design.basis.as_ref().and_then(|b| b.storm.clone()).expect("a storm");
    let (_, area) = ahead.unthrottled().next().expect("an open drain");
    assert!((M3_H.from_si((area.val.q * storm.intensity.q).si()) - 144.0).abs() < 1e-6);
}

/// A kerb of 720 ft2 by 4 in holds 240 ft3, 1,795 gal: three times a spill of 500 gal. Where nobody said which area is taken
/// or whether fire water comes, all is counted as passing; the sentence says why and that nothing would pass as it is taken.
/// With both answered, nothing passes.
#[test]
fn a_spill_that_is_only_counted_as_passing_is_told_so() {
    let settled = |more: &str, fire: &str| {
        let text = format!(
            "[enquiry]\ntitle = \"Kerb\"\nprint = \"us\"\n[[stream]]\nname = \"wash\"\nflow = \"20 gpm\"\noil = {{ kind = \"diesel\" }}\n\
             [[containment]]\nname = \"kerb\"\nkind = \"bund\"\narea = \"720 ft2\"\ndepth = \"4 in\"\ndrain = \"closed\"\nroof = true\n{more}\
             [spill]\nvolume = \"500 gal\"\ninto = \"kerb\"\n{fire}[unit]\nmodel = \"Demo 80\"\n"
        );
        Sheet::text("kerb", &text).settle(&demo())
    };
    let open = settled("", "");
    let says = look(&open, "spill-above-room").says();
    assert!(says.contains("all of it counted as passing kerb") && says.contains("nobody said"), "{says}");
    assert!(says.contains("72 ft2") && says.contains("fire water") && says.contains("none would pass"), "{says}");
    let known = settled("deducted_area = \"72 ft2\"\n", "fire_volume = \"0 gal\"\n");
    assert!(look(&known, "spill-above-room").says().contains("held ahead"));
}

/// 90 m2 by 150 mm hold 13.5 m3, 12.15 with a tenth taken; 7.5 m3 of oil and 127 mm of rain, which nobody stated, on 90 m2 are
/// 18.93. Without the rain it holds, so a roof is the first that would do; more of its size would each add 0.72.
#[test]
fn what_is_short_of_rain_that_nobody_stated_names_it() {
    let text = "[enquiry]\ntitle = \"Bay\"\nprint = \"si\"\n[[stream]]\nname = \"wash\"\nflow = \"5 m3/h\"\n[[containment]]\nname = \"bay\"\n\
        kind = \"bund\"\narea = \"90 m2\"\ndepth = \"150 mm\"\ndrain = \"closed\"\n[spill]\nvolume = \"7.5 m3\"\ninto = \"bay\"\n";
    let settled = Sheet::text("bay", text).settle(&demo());
    let says = look(&settled, "containment-too-small").says();
    assert!(says.contains("we took 127 mm") && says.contains("we took 9 m2"), "{says}");
    assert!(!says.contains("fire water") && !says.contains("more of its size"), "{says}");
    assert!(says.contains("would hold all with a roof that keeps the rain out, a depth of"), "{says}");
}

/// 600 L/min from a tanker: 36 m3/h to the separator, and 3 m3 in five minutes, which decides nothing but is asked for.
/// A closure alone is no spill.
#[test]
fn the_rate_of_a_spill_alone_and_a_closure_alone() {
    let at = |spill: &str| {
        let text = format!(
            "[enquiry]\ntitle = \"Tanker stand\"\nprint = \"si\"\n[inlet]\nfeed = \"gravity\"\n[[stream]]\nname = \"wash\"\n\
             flow = \"2 m3/h\"\n[spill]\n{spill}\n"
        );
        Sheet::text("stand", &text).settle(&demo())
    };
    let rate = at("rate = \"600 L/min\"");
    let basis = rate.job.design.basis.as_ref().expect("a basis");
    let spill = basis.spill.as_ref().expect("a spill");
    assert!((spill.volume.q.in_unit(&M3) - 3.0).abs() < 1e-9 && !spill.is_told);
    let case = basis.cases.iter().find(|c| c.kind == Kind::Spill).expect("a case");
    assert!((case.feed.q.in_unit(&M3_H) - 36.0).abs() < 1e-9);
    let room = look(&rate, "spill-above-room");
    assert!(room.says().contains("at 36 m3/h") && room.asks().iter().any(|a| a.same() == "spill.volume"), "{room:?}");
    assert!(!look(&rate, "spill-without-closure").says().contains("3 m3"), "nobody told a volume");
    let text = "[enquiry]\ntitle = \"Pit\"\n[spill]\nfire_flow = \"760 gpm\"\n";
    let faults = Sheet::text("pit", text).enquiry().map(|_| ()).expect_err("neither volume nor rate");
    assert!(faults.iter().any(|f| f.reason.contains("has no \"volume\"")), "{faults:?}");
    let closure = at("closure = true");
    assert!(closure.job.design.basis.as_ref().is_some_and(|b| b.spill.is_none() && b.closure == Some(true)));
    assert_eq!(look(&closure, "spill-without-closure").word(), "passes");
    assert_eq!(look(&closure, "spill-above-room").word(), "cannot judge");
}

const PUMPED_PIT: &str = "[enquiry]\ntitle = \"Deck\"\nprint = \"si\"\n[[surface]]\nname = \"yard\"\narea = \"1000 m2\"\n\
    runoff = \"0.9\"\n[rain]\nintensity = \"36 mm/h\"\nduration = \"10 min\"\n[inlet]\nfeed = \"gravity\"\n[european]\n\
    [[containment]]\nname = \"pit\"\narea = \"50 m2\"\ndepth = \"1 m\"\ndrain_rate = \"5 m3/h\"\n";

/// 1,000 m2 x 0.9 x 36 mm/h are 32.4 m3/h, and with a pit's pump of 5 m3/h on a float 37.4, in the European comparison too. What
/// is only drained afterwards comes alone. Where nobody said, a pit without a drain is pumped out while it rains, one whose drain
/// is closed is not; either is asked.
#[test]
fn a_pump_on_a_float_runs_while_it_rains() {
    let with = |more: &str| Sheet::text("deck", &format!("{PUMPED_PIT}{more}")).settle(&demo());
    let largest = |settled: &Settled| {
        let basis = settled.job.design.basis.as_ref().expect("a basis");
        let cases = basis.cases.iter().map(|c| (c.name.clone(), c.feed.q.in_unit(&M3_H)));
        cases.max_by(|a, b| a.1.total_cmp(&b.1)).expect("cases")
    };
    let asked = |settled: &Settled| settled.questions().iter().any(|q| q.key == "containment \"pit\".drained_in_rain");
    let (name, flow) = largest(&with("drain = \"closed\"\ndrained_in_rain = true\n"));
    assert!(name == "storm and other waters" && (flow - 37.4).abs() < 1e-6, "{name} {flow}");
    let (name, flow) = largest(&with("drain = \"none\"\ndrained_in_rain = false\n"));
    assert!(name == "storm" && (flow - 32.4).abs() < 1e-6, "{name} {flow}");
    let (pumped, closed) = (with("drain = \"none\"\n"), with("drain = \"closed\"\n"));
    assert!((largest(&pumped).1 - 37.4).abs() < 1e-6 && (largest(&closed).1 - 32.4).abs() < 1e-6);
    assert!(asked(&pumped) && asked(&closed));
    let rain = |settled: &Settled| {
        let basis = settled.job.design.basis.as_ref().expect("a basis");
        basis.european.as_ref().expect("asked for").rain.q.in_unit(&M3_H)
    };
    assert!((rain(&pumped) - 37.4).abs() < 1e-6 && (rain(&closed) - 32.4).abs() < 1e-6);
    // Without a rate there is nothing that could run.
    let text = PUMPED_PIT.replace("drain_rate = \"5 m3/h\"\n", "drained_in_rain = true\n");
    let faults = Sheet::text("deck", &text).enquiry().expect_err("refused");
    assert!(faults.iter().any(|f| f.to_string().contains("drained_in_rain")), "{faults:?}");
}

/// What shears the water of a pit shears no other: the storm alone brings what its yard brings.
#[test]
fn a_pits_pump_breaks_its_own_water_alone() {
    let text = format!(
        "{PUMPED_PIT}drain = \"none\"\nshear = [\"pit pump\"]\n[[shear]]\nname = \"pit pump\"\nkind = \"pump\"\n\
         pump = \"submersible\"\n"
    );
    let settled = Sheet::text("deck", &text).settle(&demo());
    let basis = settled.job.design.basis.as_ref().expect("a basis");
    let broken = |name: &str| {
        let case = basis.cases.iter().find(|c| c.name == name).expect("a case");
        case.brings.iter().any(|b| basis.arrivals[b.arrival].shear.is_some())
    };
    assert!(!broken("storm") && broken("storm and other waters") && broken("drain-down of pit"));
    let wrong = text.replace("shear = [\"pit pump\"]", "shear = [\"pit valve\"]");
    assert!(Sheet::text("deck", &wrong).enquiry().is_err());
}
