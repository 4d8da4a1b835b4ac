//! Where nothing fits or nothing can be calculated, what is said is about what was asked for.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::bases::look;
use common::{OUT, Sheet, demo};
use stillrise_handbook::vessel::alarms::Mark;
use stillrise_search::Settled;
use stillrise_search::alternatives::Change;
use stillrise_search::standing::Asks;
use stillrise_units::Typed;
use stillrise_units::catalog::{L_S, M, M3_H, MM};

const CAR_PARK: &str = "[enquiry]\ntitle = \"Car park\"\nprint = \"si\"\n[stated]\nflow = \"180 m3/h\"\n[[limit]]\n\
    pollutant = \"hydrocarbon index\"\nvalue = \"5 mg/L\"\n[inlet]\nfeed = \"gravity\"\n";

fn at(more: &str) -> Settled {
    Sheet::text("car park", &format!("{CAR_PARK}{more}")).settle(&demo())
}

/// A place that is too narrow: the nearest is what would do with more room, and the room is said.
#[test]
fn the_place_is_named_where_only_the_place_is_in_the_way() {
    let free = at("");
    let taken = free.pick.as_ref().map(|p| p.name(&demo())).expect("without a place something is taken");
    let narrow = at("[site]\nmax_length = \"8 m\"\nmax_width = \"3 m\"\n");
    let short = narrow.shortfall.as_ref().expect("nothing fits");
    assert_eq!(short.nearest, taken);
    assert_eq!(short.against.len(), 1, "{:?}", short.against);
    assert!(short.against[0].says.contains("3 m") && short.against[0].remedy.is_some(), "{:?}", short.against);
    let [length, width, _] = short.room.expect("the room it needs");
    assert!(length.in_unit(&M) > 8.0 || width.in_unit(&M) > 3.0);
}

/// The questions where nothing was sized go by what they move.
#[test]
fn the_rain_is_asked_before_the_temperature_where_nothing_was_sized() {
    let table = "[enquiry]\ntitle = \"Large yard\"\nprint = \"si\"\n[[surface]]\nname = \"yard\"\nkind = \"asphalt\"\narea = \"60000 m2\"\n";
    let settled = Sheet::text("yard", table).settle(&demo());
    assert!(settled.pick.is_none());
    let place = |word: &str| settled.questions().iter().position(|q| q.key.contains(word));
    let (rain, cold) = (place("rain.intensity"), place("water.coldest"));
    assert!(rain.expect("the rain is asked") < cold.expect("the cold is asked"), "{rain:?} {cold:?}");
    let first = &settled.questions()[0];
    assert!(first.flows.len() == 2 && first.weight > 0.0, "{first:?}");
}

/// Dimensions that stop the chain are not answered by what the range holds.
#[test]
fn a_described_unit_that_cannot_be_calculated_is_what_is_spoken_of() {
    let sheet = Sheet::data("wash").with("stream.flow", "40000 gpm").with("stated.flow", OUT);
    let settled = sheet.settle(&demo());
    assert!(settled.pick.is_none() && settled.job.design.train.is_none());
    let short = settled.shortfall.as_ref().expect("it says why");
    assert_eq!(short.nearest, "stated unit");
    assert!(!short.against.is_empty());
}

#[test]
fn a_hydrocarbon_index_needs_no_method_and_an_unnamed_oil_is_asked_for() {
    let settled = at("");
    let has = |wanted: fn(&Asks) -> bool| settled.standing.iter().any(|s| wanted(&s.asks));
    assert!(!has(|a| matches!(a, Asks::Method(_))));
    assert!(has(|a| matches!(a, Asks::Oil)));
    let named = at("[[oil]]\nkind = \"diesel\"\n");
    assert!(!named.standing.iter().any(|s| matches!(s.asks, Asks::Oil)));
}

/// What the European size goes by: 50 L/s of rain where all that comes is said to be rain; behind a pump of 2 L/s these 2,
/// however much three high-pressure units and the taps could bring (2 x 2 L/s x 1, as a plain oil is light).
#[test]
fn the_european_size_goes_by_the_water_that_comes() {
    let need = |settled: &Settled| {
        let european = settled.job.design.basis.as_ref().and_then(|b| b.european.clone()).expect("a comparison");
        L_S.from_si(european.sizes.expect("sizes").need.q.si())
    };
    let asked =
        "[european]\nclass = \"II\"\ncategory = \"rain\"\n[[oil]]\nkind = \"diesel\"\ndensity = \"840 kg/m3\"\n";
    assert!((need(&at(asked)) - 50.0).abs() < 1e-6, "{}", need(&at(asked)));
    let pumped = "[enquiry]\ntitle = \"Wash\"\nprint = \"si\"\n[[stream]]\nname = \"wash\"\nflow = \"1 L/s\"\n[inlet]\nfeed = \"pump\"\n\
        rate = \"2 L/s\"\npulsation = 1\n[european]\nclass = \"II\"\ncategory = \"wash water\"\nhigh_pressure = 3\n\
        taps = [\"DN25 x 3\"]\n[[oil]]\nkind = \"diesel\"\ndensity = \"840 kg/m3\"\n";
    let settled = Sheet::text("pumped", pumped).settle(&demo());
    assert!((need(&settled) - 4.0).abs() < 1e-6, "{}", need(&settled));
}

/// Behind a pump of 8.33 L/s come 1.22 L/s of waste water, and rain off 300 m2 of concrete: no more waste water than arrives, and
/// rain the rest, (7.11 + 2 x 1.22) x 1 for a plain oil. Without the rain all that the pump lifts is waste water: 2 x 8.33.
#[test]
fn behind_a_pump_rain_stays_rain() {
    let text = |rain: &str| {
        format!(
            "[enquiry]\ntitle = \"Wash\"\nprint = \"si\"\n[[stream]]\nname = \"wash\"\nflow = \"1.22 L/s\"\n{rain}[inlet]\nfeed = \"pump\"\n\
             rate = \"8.33 L/s\"\npulsation = 1\n[european]\nclass = \"II\"\ncategory = \"wash water\"\n[[oil]]\n\
             kind = \"diesel\"\ndensity = \"840 kg/m3\"\n"
        )
    };
    let european = |rain: &str| {
        let settled = Sheet::text("pumped", &text(rain)).settle(&demo());
        settled.job.design.basis.as_ref().and_then(|b| b.european.clone()).expect("a comparison")
    };
    let near = |flow: stillrise_units::Flow, expected: f64| (L_S.from_si(flow.si()) - expected).abs() < 1e-6;
    let wet = european("[[surface]]\nname = \"bay\"\narea = \"300 m2\"\n[rain]\nintensity = \"120 mm/h\"\n");
    assert!(near(wet.rain.q, 7.11) && near(wet.waste.q, 1.22), "{:?} {:?}", wet.rain, wet.waste);
    assert!(near(wet.sizes.as_ref().expect("sizes").need.q, 9.55), "{:?}", wet.sizes);
    let dry = european("");
    assert!(near(dry.waste.q, 8.33) && near(dry.sizes.as_ref().expect("sizes").need.q, 16.66), "{:?}", dry.sizes);
}

/// Behind a pump the outflow is constant: of 0.01 m3/s of rain over 30 min, rising over 5, a pump of 8 L/s leaves no more than a
/// constant outflow does; the convention of an outflow that rises with the inflow is one of gravity.
#[test]
fn behind_a_pump_the_outflow_is_constant() {
    let text = |outlet: &str| {
        format!(
            "[enquiry]\ntitle = \"Yard\"\nprint = \"si\"\n[[surface]]\nname = \"bay\"\narea = \"300 m2\"\nrunoff = 1\n[rain]\n\
             intensity = \"120 mm/h\"\nduration = \"30 min\"\nconcentration_time = \"5 min\"\n{outlet}"
        )
    };
    let held = |outlet: &str| {
        let settled = Sheet::text("yard", &text(outlet)).settle(&demo());
        settled.job.design.train.as_ref().and_then(|t| t.equalisation.clone()).expect("something is held")
    };
    let pumped = held("[inlet]\nfeed = \"pump\"\nrate = \"8 L/s\"\n");
    assert!(pumped.rising.is_none() && pumped.volume().q == pumped.constant.q);
    let by_gravity = held("[outlet]\nflow_cap = \"8 L/s\"\n");
    assert!(by_gravity.rising.is_some());
}

/// What is evened out to a cap passes no more than the cap at its peak, whatever the pump pulsates.
#[test]
fn what_is_evened_out_keeps_the_cap() {
    let text = "[enquiry]\ntitle = \"Capped\"\nprint = \"si\"\n[[stream]]\nname = \"wash\"\nflow = \"4 m3/h\"\n[inlet]\nfeed = \"pump\"\n\
        rate = \"16 m3/h\"\npulsation = 1.5\n[outlet]\nflow_cap = \"7.2 m3/h\"\n";
    let demo = demo();
    let mut settled = Sheet::text("capped", text).settle(&demo);
    settled.work_alternatives(&demo);
    let capped = settled.alternatives.iter().find(|a| a.change == Change::Capped).expect("an alternative");
    let flow = capped.design.basis.as_ref().and_then(|b| b.design_flow()).expect("a flow").q;
    assert!(flow.in_unit(&M3_H) <= 7.2 + 1e-9, "{flow:?}");
}

/// One unit for a yard of 108 m3/h and a spill that must stay in: no single one does.
const YARD: &str = "[enquiry]\ntitle = \"Generator yard\"\nprint = \"si\"\n[[surface]]\nname = \"yard\"\narea = \"1800 m2\"\nkind = \"concrete\"\n\
    [rain]\nintensity = \"185 L/(s ha)\"\nduration = \"15 min\"\noil = { kind = \"diesel-en590\" }\n[water]\ncoldest = \"4 °C\"\nwarmest = \"20 °C\"\n\
    [inlet]\nfeed = \"gravity\"\n[outlet]\npipe = \"DN 200\"\nlength = \"25 m\"\n[unit]\ncount = 1\n[spill]\n";

/// What would do with the spill held ahead says so: alone it is barred by the spill, and the other is not.
#[test]
fn what_would_do_only_with_the_spill_held_ahead_says_so() {
    let text = format!("{YARD}volume = \"7.5 m3\"\n");
    let short = Sheet::text("yard", &text).settle(&demo()).shortfall.expect("no single one fits");
    assert!(!short.would.is_empty(), "{:?}", short.against);
    for would in short.would.iter().filter(|w| w.model.is_some()) {
        let model = would.model.as_deref().unwrap_or_default();
        let alone = text.replace("count = 1", &format!("count = {}\nmodel = \"{model}\"", would.count));
        let spill = look(&Sheet::text("so many", &alone).settle(&demo()), "spill-above-room").word();
        assert_eq!(spill == "fails", would.spill_ahead, "{} x {model}: {spill}", would.count);
    }
    assert!(short.would.iter().any(|w| w.spill_ahead), "{:?}", short.would);
}

/// A place that bars what would do is told, with the room that it takes, and not that no number of them would do.
#[test]
fn what_would_do_elsewhere_is_named_where_the_place_bars_it() {
    let free = format!("{YARD}volume = \"1 m3\"\n");
    let of = |text: &str| Sheet::text("yard", text).settle(&demo()).shortfall.expect("no single one fits");
    let (here, narrow) = (of(&free), of(&format!("{free}[site]\nmax_length = \"6 m\"\nmax_width = \"2 m\"\n")));
    let names = |of: &[stillrise_search::shortfall::Would]| -> Vec<_> {
        of.iter().map(|w| (w.count, w.model.clone())).collect()
    };
    assert_eq!(names(&here.would), names(&narrow.would));
    assert!(here.would.iter().all(|w| w.room.is_none()));
    for would in &narrow.would {
        let [length, width, _] = would.room.expect("the room it takes");
        assert!(length.in_unit(&M) > 6.0 || width.in_unit(&M) > 2.0);
    }
}

/// 40 gpm of water and a spill of 200: the spill governs, and what is left without it is what a job without a spill finds.
#[test]
fn a_spill_that_governs_is_named_with_what_would_do_without_it() {
    let text = |spill: &str| {
        format!(
            "[enquiry]\ntitle = \"Wash\"\n[[stream]]\nname = \"wash\"\nflow = \"40 gpm\"\n[inlet]\nfeed = \"gravity\"\n{spill}\
             [site]\nmax_length = \"12 ft\"\nmax_width = \"8 ft\"\n"
        )
    };
    let demo = demo();
    let mut settled = Sheet::text("spill", &text("[spill]\nvolume = \"500 gal\"\nrate = \"200 gpm\"\n")).settle(&demo);
    let held = settled.shortfall.as_ref().and_then(|s| s.without_spill.clone()).expect("the spill governs");
    let gpm = |q: stillrise_units::Flow| q.in_unit(&stillrise_units::catalog::GPM);
    assert!((gpm(held.spill) - 200.0).abs() < 1e-6 && (gpm(held.rest) - 40.0).abs() < 1e-6, "{held:?}");
    let without = Sheet::text("none", &text("")).settle(&demo).pick.expect("something fits");
    assert_eq!(held.unit, Some(without.name(&demo)));
    settled.work_alternatives(&demo);
    assert!(settled.alternatives.iter().any(|a| a.change == Change::SpillAhead && a.pick.is_some()));
}

/// A submersible pump breaks the droplets, and the train with a gentle one is worked beside it; where the pump is gentle
/// already, or none, there is no such train.
#[test]
fn a_gentle_pump_is_worked_where_the_pump_breaks_the_droplets() {
    let demo = demo();
    let has = |feed: &str| {
        let text = format!(
            "[enquiry]\ntitle = \"Rack\"\nprint = \"si\"\n[[stream]]\nname = \"wash\"\nflow = \"20 m3/h\"\n[inlet]\n{feed}\n[[limit]]\n\
             pollutant = \"oil and grease\"\nvalue = \"30 mg/L\"\nstatistic = \"daily maximum\"\n"
        );
        let mut settled = Sheet::text("rack", &text).settle(&demo);
        settled.work_alternatives(&demo);
        settled.alternatives.iter().any(|a| a.change == Change::GentlePump)
    };
    assert!(has("feed = \"pump\"\nrate = \"20 m3/h\"\npump = \"submersible\""));
    assert!(!has("feed = \"pump\"\nrate = \"20 m3/h\"\npump = \"progressive-cavity\""));
    assert!(!has("feed = \"gravity\""));
}

/// Roofs of which nobody needs the water treated are worked without; where there are none, or nothing else, they are not.
#[test]
fn roofs_are_the_first_to_drain_elsewhere() {
    let demo = demo();
    let has = |surfaces: &[(&str, &str, &str)]| {
        let surfaces: String = (surfaces.iter())
            .map(|(name, area, kind)| format!("[[surface]]\nname = \"{name}\"\narea = \"{area}\"\nkind = \"{kind}\"\n"))
            .collect();
        let text = format!(
            "[enquiry]\ntitle = \"Yard\"\nprint = \"si\"\n{surfaces}[rain]\nintensity = \"60 mm/h\"\nduration = \"10 min\"\n\
             [inlet]\nfeed = \"gravity\"\n[[limit]]\npollutant = \"oil and grease\"\nvalue = \"30 mg/L\"\n"
        );
        let mut settled = Sheet::text("yard", &text).settle(&demo);
        settled.work_alternatives(&demo);
        let found = settled.alternatives.iter().find(|a| a.change == Change::RoofsApart);
        found.map(|a| a.design.basis.as_ref().and_then(|b| b.design_flow()).expect("a flow").q.in_unit(&M3_H))
    };
    let flow = has(&[("hall", "3000 m2", "roof"), ("yard", "400 m2", "concrete")]).expect("worked");
    // 400 m2 at 60 mm/h, of which a yard of concrete sheds 0.9: 21.6 m3/h.
    assert!((flow - 21.6).abs() < 1e-6, "{flow}");
    assert!(has(&[("hall", "3000 m2", "roof")]).is_none() && has(&[("yard", "400 m2", "concrete")]).is_none());
}

/// A slow pump for the flow that was named is worked where a pump breaks the droplets and lifts more than that.
#[test]
fn a_slow_pump_for_the_flow_that_was_named_is_worked_together() {
    let demo = demo();
    let text = "[enquiry]\ntitle = \"Rack\"\nprint = \"si\"\n[[stream]]\nname = \"wash\"\nflow = \"4 m3/h\"\n[inlet]\nfeed = \"pump\"\n\
        rate = [\"20 m3/h\"]\npump = \"submersible\"\n[asked]\nflow = \"6 m3/h\"\n[[limit]]\npollutant = \"oil and grease\"\n\
        value = \"30 mg/L\"\n";
    let mut settled = Sheet::text("rack", text).settle(&demo);
    settled.work_alternatives(&demo);
    let of = |change| settled.alternatives.iter().find(|a| a.change == change).and_then(|a| a.effluent);
    let both = of(Change::PumpAsAskedAndGentle).expect("worked");
    for one in [Change::PumpAsAsked, Change::GentlePump] {
        assert!(of(one).is_none_or(|one| both < one), "{one:?}");
    }
}

/// Two waters through one unit: of the solids as much is left as each leaves alone at its own flow, by what each brings.
#[test]
fn each_water_settles_at_its_own_flow() {
    let text = std::fs::read_to_string(common::at_data("wash.toml")).expect("the file");
    let rain = "\n[[surface]]\nname = \"yard\"\narea = \"4000 ft2\"\nkind = \"concrete\"\n[rain]\nintensity = \"2 in/h\"\nannual = \"38 in\"\nsolids = \"200 mg/L\"\n";
    let stream = &text[text.find("[[stream]]").expect("a stream")..text.find("[[oil]]").expect("an oil")];
    let of = |text: &str| {
        let settled = Sheet::text("waters", text).settle(&demo());
        let storage = settled.job.design.performance.as_ref().expect("a performance").storage.clone();
        (storage.average.q.si(), storage.solids_out.q.si())
    };
    let (wash, storm) = (of(&text), of(&text.replace(stream, "").replace("[stated]", &format!("{rain}[stated]"))));
    let both = of(&(text.clone() + rain));
    let mean = (wash.0 * wash.1 + storm.0 * storm.1) / (wash.0 + storm.0);
    assert!((both.0 - wash.0 - storm.0).abs() < 1e-9 * both.0, "{both:?} of {wash:?} and {storm:?}");
    assert!((both.1 - mean).abs() < 0.01 * mean, "{both:?} of {wash:?} and {storm:?}: {mean}");
}

/// The more the flow lifts the interface, the thinner the layer at which the alarm has to be set: at last thinner than twice
/// the half inch by which friction and waves shift a float, and then it is no alarm.
#[test]
fn an_alarm_is_not_set_thinner_than_a_float_can_tell() {
    let at = |flow: &str| Sheet::data("wash").with("method.alarm", OUT).with("stream.flow", flow).settle(&demo());
    let set = |settled: &Settled| {
        let performance = settled.job.design.performance.as_ref().expect("a performance");
        performance.levels[0].level(Mark::Alarm).expect("an alarm").thickness.q.in_unit(&MM)
    };
    let (low, high) = (at("135 gpm"), at("140 gpm"));
    assert!(set(&low) > 25.0 && set(&high) < 25.0, "{} and {}", set(&low), set(&high));
    assert_eq!(look(&low, "alarm-after-loss").word(), "passes");
    let verdict = look(&high, "alarm-after-loss");
    assert!(verdict.word() == "fails" && verdict.says().contains("less than a float can tell"), "{verdict:?}");
}

/// Two authorities on the oil of two waters: whether both hold for one outlet is asked, and not where one limits all.
#[test]
fn limits_of_two_authorities_on_two_waters_are_asked_about() {
    let asks = |second: &str| {
        let limit = |value: &str, authority: &str| {
            format!("[[limit]]\npollutant = \"oil and grease\"\nvalue = \"{value}\"\nauthority = \"{authority}\"\n")
        };
        let text = format!(
            "[enquiry]\ntitle = \"Depot\"\n[[stream]]\nname = \"wash\"\nflow = \"10 gpm\"\n[[stream]]\nname = \"drain\"\nflow = \"5 gpm\"\n{}{}",
            limit("100 mg/L", "city"),
            limit("15 mg/L", second).replace("[[limit]]", "[[limit]]\nstatistic = \"monthly average\"")
        );
        let standing = Sheet::text("depot", &text).settle(&demo()).standing;
        standing.iter().any(|s| matches!(s.asks, Asks::TwoOutlets(_)))
    };
    assert!(asks("state") && !asks("city"));
}
