//! A pad, a drain and a yard that do not exist: levels, rain, the nominal size, and what is asked of them.

use super::{Outcome, mail, settled};
use std::error::Error;
use stillrise_handbook::vessel::alarms::Mark;

/// A wash pad that does not exist: 0.1 ha under 54 mm/h are 15 L/s without loss.
const PAD: &str = r#"
[enquiry]
title = "Boat wash"
print = "si"
[[surface]]
name = "pad"
area = "1000 m2"
kind = "concrete"
[rain]
intensity = "54 mm/h"
duration = "15 min"
oil = { kind = "diesel", mean = "40 mg/L" }
[[stream]]
name = "hull washing"
flow = "1 L/s"
hours_per_day = 2
with_rain = false
[european]
class = "I"
category = "wash water"
[[oil]]
kind = "diesel"
density = "840 kg/m3"
"#;

#[test]
fn the_nominal_size_counts_rain_without_loss_and_says_what_the_larger_alone_asks_for() -> Outcome {
    // 1000 m2 x 54 mm/h = 15 L/s; with twice the waste water 17 L/s; the rain alone 15 L/s.
    let apart = mail(PAD)?;
    assert!(apart.contains("15 L/s of rain and 2 x 1 L/s of waste water ask for NS 17 by EN 858-2"), "{apart}");
    assert!(apart.contains("and for NS 15 if they never run together"), "{apart}");
    let together = mail(&PAD.replace("with_rain = false", "with_rain = true"))?;
    assert!(!together.contains("the larger stand alone"), "{together}");
    // A coefficient that somebody stated holds: 0.8 of it.
    let stated = mail(&PAD.replace("kind = \"concrete\"", "kind = \"concrete\"\nrunoff = 0.8"))?;
    assert!(stated.contains("12 L/s of rain and 2 x 1 L/s") && !stated.contains("without loss"), "{stated}");
    // Heavier than 850 kg/m3 behind a coalescer: 1.5 times.
    let heavy = mail(&PAD.replace("840 kg/m3", "870 kg/m3"))?;
    assert!(heavy.contains("(times 1.5 for the density of Diesel fuel no. 2) ask for NS 25.5"), "{heavy}");
    // Two high-pressure units count 2 and 1 L/s; a hose that is no tap counts for nothing, and is said.
    let units = mail(&PAD.replace("class = \"I\"", "class = \"I\"\nhigh_pressure = 2"))?;
    assert!(units.contains("2 x 3 L/s of waste water") && units.contains("none is counted"), "{units}");
    Ok(())
}

#[test]
fn tide_over_the_crest_asks_for_a_lift_and_not_for_another_unit() -> Outcome {
    let levels = "[unit]\narrangement = \"plate tank\"\n[inlet]\nfeed = \"gravity\"\ninvert = \"-0.8 m\"\n[site]\nground = \"0 m\"\n[outlet]\ntailwater = ";
    let high = mail(&format!("{PAD}{levels}\"-0.8 m\"\n"))?;
    let told = "where the incoming pipe reaches it, the water at the outfall, at -0.8 m, stands";
    assert!(
        high.contains(told) && high.contains("may the water be lifted by a pump ahead of the unit or behind it?"),
        "{high}"
    );
    let low = mail(&format!("{PAD}{levels}\"-2.5 m\"\n"))?;
    assert!(!low.contains(told) && !low.contains("may the water be lifted") && !low.contains("check valve"), "{low}");
    // What has to be clear over the ground is told for both ways that it may stand.
    assert!(low.contains("as it stands there; behind a lift pump, on the ground,"), "{low}");
    Ok(())
}

#[test]
fn where_gravity_cannot_the_worst_case_is_the_one_with_most_that_does_not_rise() -> Outcome {
    let limit = "[[limit]]\npollutant = \"oil and grease\"\nvalue = \"10 mg/L\"\nstatistic = \"monthly average\"\n";
    // Rain: 8 mg/L of 400 mg/L; washing: 40 mg/L of 200 mg/L, though less leaves in all.
    let text = PAD
        .replace("mean = \"40 mg/L\"", "mean = \"400 mg/L\", emulsified = \"2 %\", dissolved = \"0 mg/L\"")
        .replace(
            "with_rain = false",
            "with_rain = false\noil = { kind = \"diesel\", mean = \"200 mg/L\", emulsified = \"20 %\", dissolved = \"0 mg/L\" }",
        );
    let told = mail(&(text + limit))?;
    assert!(told.contains("40 mg/L of oil that does not rise") && !told.contains("(worst case: storm)"), "{told}");
    Ok(())
}

/// A drain whose volume a day is all that is known.
const DRAIN: &str = r#"
[enquiry]
title = "Workshop drain"
print = "si"
[[stream]]
name = "floor drain"
volume_per_day = "200 L"
[[oil]]
kind = "diesel"
"#;

#[test]
fn a_volume_a_day_alone_comes_as_fast_as_a_tap_or_within_a_shift() -> Outcome {
    let flow = |text: &str| -> Result<f64, Box<dyn Error>> {
        let settled = settled(text)?;
        let flow = settled.job.design.basis.as_ref().and_then(|b| b.design_flow()).ok_or("no flow")?;
        Ok(stillrise_units::Typed::in_unit(flow.q, &stillrise_units::catalog::M3_H))
    };
    // 0.5 L/s; 24 m3 in eight hours; 6 m3 in the two hours that were said.
    assert!((flow(DRAIN)? - 1.8).abs() < 1e-9);
    assert!((flow(&DRAIN.replace("200 L", "24 m3"))? - 3.0).abs() < 1e-9);
    assert!((flow(&DRAIN.replace("\"200 L\"", "\"6 m3\"\nhours_per_day = 2"))? - 3.0).abs() < 1e-9);
    let asked = mail(DRAIN)?;
    assert!(asked.contains("How fast does the floor drain come while it runs? We took 1.8 m3/h."), "{asked}");
    Ok(())
}

/// 10 gpm for two hours on five days a week are 10 x 120 x 5 / 7 = 857.1 gal or 3.2448 m3 on an average day; 90 mg/L of it are
/// free, 292.0 g or at some 850 kg/m3 0.3436 L a day. The store for the routine pump-out over that is the soonest that it can
/// be full, whatever the droplets: finer ones only take longer.
#[test]
fn the_oil_is_planned_for_by_all_that_may_be_held() -> Outcome {
    let text = "[enquiry]\ntitle = \"Rinse\"\nprint = \"us\"\n[[oil]]\nkind = \"diesel\"\ndensity = \"842 kg/m3\"\n\
        [water]\ncoldest = \"5 °C\"\n[[stream]]\nname = \"rinse\"\nflow = \"10 gpm\"\nhours_per_day = 2\ndays_per_week = 5\n\
        oil = { mean = \"100 mg/L\", emulsified = \"10 %\", dissolved = \"0 mg/L\" }\n[droplets]\nspread = 2\nd50 = ";
    let days = |d50: &str| -> Result<[f64; 3], Box<dyn Error>> {
        let found = settled(&format!("{text}\"{d50}\"\n"))?;
        let performance = found.job.design.performance.as_ref().ok_or("a performance")?;
        let day = |time: Option<stillrise_design::provenance::Val<stillrise_units::Time>>| {
            time.map_or(f64::NAN, |t| stillrise_units::Typed::in_unit(t.q, &stillrise_units::catalog::D))
        };
        let level = performance.levels.iter().find_map(|l| l.level(Mark::PumpOut)).ok_or("a level")?;
        let litres = stillrise_units::Typed::in_unit(level.volume.q, &stillrise_units::catalog::L);
        Ok([day(performance.storage.oil_soonest), day(performance.storage.oil_routine), litres / 0.3436])
    };
    let [soonest, routine, by_hand] = days("3 um")?;
    assert!((soonest / by_hand - 1.0).abs() < 0.01 && routine > 2.0 * soonest, "{soonest} {routine} {by_hand}");
    let [soonest, routine, _] = days("200 um")?;
    assert!(routine / soonest < 1.05, "{soonest} {routine}");
    Ok(())
}

#[test]
fn a_limit_without_its_number_is_no_fault_and_is_asked_for() -> Outcome {
    let metals = mail(&format!("{PAD}[[limit]]\npollutant = \"metals\"\n"))?;
    assert!(metals.contains("Limit on Metals: no number was stated, so nothing is held against it."), "{metals}");
    assert!(metals.contains("What does the permit allow of metals: how much"), "{metals}");
    assert!(metals.contains("No limit with a number is stated."), "{metals}");
    Ok(())
}

#[test]
fn a_flow_that_was_named_is_answered_in_its_own_unit_and_with_what_is_known_of_the_rain() -> Outcome {
    // 0.9 x 1000 m2 x 54 mm/h = 48.6 m3/h or 13.5 L/s; 15 minutes are more than the 5 that it takes to gather.
    let text = mail(&format!("{PAD}[asked]\nflow = \"15 L/s\"\n"))?;
    assert!(
        text.contains("yes, it covers the 48.6 m3/h (13.5 L/s) we find (storm)")
            && text.contains("may ask for more. But that rain may be too weak"),
        "{text}"
    );
    let short = mail(&format!("{}[asked]\nflow = \"60 m3/h\"\n", PAD.replace("15 min", "5 min")))?;
    let covers = short.contains("yes, it covers the 48.6 m3/h we find (storm)");
    assert!(covers && !short.contains("too weak"), "{short}");
    Ok(())
}

#[test]
fn where_sludge_is_said_to_come_too_soon_its_figures_are_asked_for() -> Outcome {
    let text = PAD.replace("hours_per_day = 2", "").replace("1 L/s", "4 L/s") + "[solids]\nd50 = \"60 um\"\n";
    let asked = mail(&text)?;
    assert!(
        asked.contains("suspended solids does") && asked.contains("How many hours a day does the hull washing run"),
        "{asked}"
    );
    Ok(())
}

/// Two paved surfaces under one rain that has everything else said of it.
const PAVED: &str = r#"
[enquiry]
title = "Paved yard"
print = "si"
[[surface]]
name = "yard"
area = "1000 m2"
kind = "concrete"
[[surface]]
name = "apron"
area = "900 m2"
kind = "concrete"
[rain]
intensity = "54 mm/h"
duration = "5 min"
oil = { mean = "40 mg/L", emulsified = "1 %", dissolved = "0 mg/L" }
solids = "50 mg/L"
annual = "700 mm"
[[oil]]
name = "diesel"
kind = "diesel"
[[oil]]
name = "gasoline"
kind = "gasoline"
[droplets]
d50 = "90 um"
spread = 2
[outlet]
to = "storm water"
[spill]
volume = "100 L"
closure = true
[site]
headroom = "6 m"
access = "0.6 m"
"#;

#[test]
fn what_is_asked_of_several_oils_or_surfaces_calls_them_so() -> Outcome {
    let text = mail(PAVED)?;
    assert!(text.contains("Does each of these surfaces run off like other concrete"), "{text}");
    assert!(text.contains("What is the density of each of these oils?"), "{text}");
    assert!(!text.contains("each of these waters"), "{text}");
    Ok(())
}

#[test]
fn a_dike_at_a_terminal_is_not_thought_to_be_full_of_stone() -> Outcome {
    // 100 m2, 1 m deep, a tenth taken by what stands there: 90 m3; with stone 35 % of that.
    let dike = "[[containment]]\nname = \"dike\"\narea = \"100 m2\"\ndepth = \"1 m\"\ndeducted_area = \"10 m2\"\ndrain = \"closed\"\n";
    let holds = |facility: &str| -> Result<f64, Box<dyn Error>> {
        let text = PAD.replace("print = \"si\"", &format!("print = \"si\"\nfacility = \"{facility}\"")) + dike;
        let settled = settled(&text)?;
        let basis = settled.job.design.basis.as_ref().ok_or("no basis")?;
        let dike = basis.containment.as_ref().and_then(|c| c.all.first()).ok_or("no dike")?;
        Ok(stillrise_units::Typed::si(dike.holds.val.q))
    };
    assert!((holds("fuel-rack")? - 90.0).abs() < 1e-6, "{}", holds("fuel-rack")?);
    assert!((holds("transformer-yard")? - 31.5).abs() < 1e-6, "{}", holds("transformer-yard")?);
    Ok(())
}

#[test]
fn rain_that_the_sewer_does_not_take_is_not_counted() -> Outcome {
    // With rain 15 + 2 x 1 = 17 L/s, without it 2 L/s.
    let sewer = "[outlet]\nto = \"sanitary sewer\"\nrain_allowed = false\n[asked]\nnominal_size = \"NS 3\"\n";
    let text = mail(&format!("{PAD}{sewer}"))?;
    assert!(text.contains("NS 3: yes, on the flows that were told; 2 x 1 L/s of waste water ask for NS 2"), "{text}");
    assert!(text.contains("No rain is counted, as this sewer takes none."), "{text}");
    assert!(text.contains("which are there?"), "streams are no taps: {text}");
    assert!(
        text.contains("With the rain, and what may run while it rains, if the owner of the sewer consents: "),
        "{text}"
    );
    assert!(text.contains("the unit is worked without it, so it has to be kept out"), "{text}");
    // The owner's yes brings it back.
    let text = mail(&format!("{PAD}{}", sewer.replace("rain_allowed = false", "rain_allowed = true")))?;
    assert!(text.contains("NS 3: no, it is too small"), "{text}");
    Ok(())
}

#[test]
fn without_a_limit_the_first_question_is_which_holds() -> Outcome {
    let text = mail(PAD)?;
    assert!(text.contains("1. Which limits hold for the water that leaves"), "{text}");
    Ok(())
}

#[test]
fn the_order_in_which_yes_and_no_were_said_decides_nothing() -> Outcome {
    let two = |claims: &str| {
        format!(
            "{PAD}[inlet]\nfeed = \"pump\"\npump = \"submersible\"\nrate = [\"20 m3/h\", \"20 m3/h\"]\ntogether = [{claims}]\n"
        )
    };
    let (yes, no) = ("{ value = true, from = \"the foreman\" }", "{ value = false, from = \"the owner\" }");
    let flow = |text: &str| -> Result<f64, Box<dyn Error>> {
        let settled = settled(text)?;
        let flow = settled.job.design.basis.as_ref().and_then(|b| b.design_flow()).ok_or("no flow")?;
        Ok(stillrise_units::Typed::in_unit(flow.q, &stillrise_units::catalog::M3_H))
    };
    // The safe side is both: 40 m3/h.
    for claims in [format!("{yes}, {no}"), format!("{no}, {yes}")] {
        assert!((flow(&two(&claims))? - 40.0).abs() < 1e-6, "{claims}");
    }
    Ok(())
}

#[test]
fn hot_salt_water_stops_nothing() -> Outcome {
    // A steam cleaner at 90 °C is beyond the formula for salt water, which ends at 60 °C.
    let hot = PAD.replace("hours_per_day = 2", "hours_per_day = 2\ntemperature = \"90 °C\"\nsalinity = \"3.5 %\"");
    let settled = settled(&hot)?;
    assert!(settled.job.design.stops.is_empty(), "{:?}", settled.job.design.stops);
    Ok(())
}
