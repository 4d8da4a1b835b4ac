//! Where nothing fits or nothing can be calculated, what is said is about what was asked for.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{OUT, Sheet, demo};
use stillrise_search::Settled;
use stillrise_search::alternatives::Change;
use stillrise_search::standing::Asks;
use stillrise_units::Typed;
use stillrise_units::catalog::{L_S, M, M3_H};

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
    let place = |word: &str| settled.questions.iter().position(|q| q.key.contains(word));
    let (rain, cold) = (place("rain.intensity"), place("water.coldest"));
    assert!(rain.expect("the rain is asked") < cold.expect("the cold is asked"), "{rain:?} {cold:?}");
    let first = &settled.questions[0];
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
