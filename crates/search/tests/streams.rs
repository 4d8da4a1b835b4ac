//! What belongs to a stream, and what to a state of the pumps: held against arithmetic done here. (long because each water, pump and case is worked by hand)

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{Sheet, demo};
use stillrise_design::basis::Basis;
use stillrise_design::basis::cases::{Case, Kind};
use stillrise_design::enquiry::read_enquiry;
use stillrise_design::performance::Performance;
use stillrise_design::provenance::{Assumption, Origin};
use stillrise_design::triage::Weight;
use stillrise_handbook::page::Arg;
use stillrise_search::Settled;
use stillrise_search::alternatives::Change;
use stillrise_units::catalog::{DEG_F, GPM, MG_L, MIN, W_KG};
use stillrise_units::{Typed, Unit};

fn mixed() -> Settled {
    Sheet::data("mixed").settle(&demo())
}

fn basis(settled: &Settled) -> &Basis {
    settled.job.design.basis.as_ref().unwrap_or_else(|| panic!("no basis: {:?}", settled.job.design.stops))
}

fn performance(settled: &Settled) -> &Performance {
    settled.job.design.performance.as_ref().unwrap_or_else(|| panic!("{:?}", settled.job.design.stops))
}

fn case<'a>(settled: &'a Settled, name: &str) -> &'a Case {
    let cases = &basis(settled).cases;
    let names: Vec<&str> = cases.iter().map(|c| c.name.as_str()).collect();
    cases.iter().find(|c| c.name == name).unwrap_or_else(|| panic!("no case {name} among {names:?}"))
}

fn assumed<'a>(settled: &'a Settled, key: &str) -> &'a Assumption {
    let assumptions = settled.job.ledger.entries.iter().filter_map(|e| match &e.origin {
        Origin::Assumed(a) => Some(a),
        _ => None,
    });
    let keys: Vec<&str> = assumptions.clone().map(|a| a.key.as_str()).collect();
    assumptions.clone().find(|a| a.key == key).unwrap_or_else(|| panic!("nothing is assumed for {key}: {keys:?}"))
}

fn near(found: f64, expected: f64, unit: &Unit) {
    let found = unit.from_si(found);
    assert!((found / expected - 1.0).abs() < 2e-4, "{found} {}, expected {expected}", unit.symbol);
}

#[test]
fn a_case_without_oil_is_not_lent_the_oil_of_another() {
    let settled = mixed();
    let pit = case(&settled, "pit, all pumps").content.as_ref().expect("an unknown content");
    near(pit.total.q.si(), 100.0, &MG_L);
    let mean = assumed(&settled, "case \"pit\".oil.mean");
    assert_eq!((&mean.low, &mean.high), (&Arg::Number(0.005), &Arg::Number(1.0)));
    assert!(!mean.question.is_empty());
    assert!(case(&settled, "deluge, all pumps").content.is_none(), "fire-fighting water is held, not treated");
    let stated = Sheet::data("mixed").with("case \"deluge\".oil.mean", "70 mg/L").settle(&demo());
    near(case(&stated, "deluge, all pumps").content.as_ref().expect("stated").total.q.si(), 70.0, &MG_L);
}

#[test]
fn a_chemical_goes_into_the_streams_it_is_said_to() {
    let settled = mixed();
    let [hot, cold] = [0, 1].map(|k| &basis(&settled).waters[k].content);
    // The bath's emulsion comes with it: (5 x 3600 x 50 + 50 x 6000) over 18050 gal.
    near(hot.emulsified.q.si(), (18000.0 * 50.0 + 50.0 * 6000.0) / 18050.0, &MG_L);
    near(cold.emulsified.q.si(), 0.8, &MG_L);
    // Nobody says where it goes: into every water but dewatering and the fire's, and that is asked.
    let unsaid =
        Sheet::data("mixed").with("stream \"hot wash\".chemicals", "[]").with("stream \"cold rinse\".oil", "{}");
    let settled = unsaid.settle(&demo());
    let [hot, cold] = [0, 1].map(|k| &basis(&settled).waters[k].content);
    assert!(hot.emulsified.q > hot.total.q * 0.4 && cold.emulsified.q > cold.total.q * 0.4);
    let question = assumed(&settled, "chemical \"degreaser\".stream");
    assert!(question.question.contains("Which water"), "{}", question.question);
    near(case(&settled, "pit, all pumps").content.as_ref().expect("unknown").emulsified.q.si(), 5.0, &MG_L);
    // What stands in for the answer, said as an answer, changes nothing.
    let said = unsaid.with("chemical \"degreaser\".stream", "streams").settle(&demo());
    assert_eq!(hot.emulsified.q, basis(&said).waters[0].content.emulsified.q);
    let none = unsaid.with("chemical \"degreaser\".stream", "none").settle(&demo());
    // A rinse of which nobody said what goes into it: 5 %.
    near(basis(&none).waters[1].content.emulsified.q.si(), 5.0, &MG_L);
}

/// An oil made to mix with water holds its own share of the oil alone; nobody having said it, all of it.
#[test]
fn a_soluble_oil_holds_its_own_share() {
    let yard = |share: &str| {
        let text = format!(
            "[enquiry]\ntitle = \"A yard\"\n[[surface]]\narea = \"900 m2\"\nkind = \"concrete\"\n[rain]\nintensity = \"40 mm/h\"\noil = {{ mean = \"80 mg/L\" }}\n[[chemical]]\nproduct = \"cutting oil\"\nkind = \"soluble-coolant\"\nstream = [\"rain\"]\n{share}[[oil]]\nkind = \"diesel\"\n[[limit]]\npollutant = \"oil and grease\"\nvalue = \"50 mg/L\"\n"
        );
        let enquiry = read_enquiry(&text, &|_| None).unwrap_or_else(|faults| panic!("{faults:?}"));
        stillrise_search::settle(&enquiry, &demo())
    };
    let held = |settled: &Settled| assumed(settled, "rain.oil.emulsified").clone();
    let range = |a: &Assumption| [a.low.clone(), a.high.clone()];
    // 80 to 100 % of its own tenth, and 0 to 10 % of the nine tenths of a dry yard: 8 to 19 %; typically 0.1 x 95 + 0.9 x 2.
    let tenth = yard("share = \"10 %\"\n");
    assert_eq!(
        range(&held(&tenth)).map(|x| if let Arg::Number(x) = x { (x * 1e6).round() } else { 0.0 }),
        [80e3, 190e3]
    );
    let emulsified = |settled: &Settled| case(settled, "storm").content.as_ref().map_or(0.0, |c| c.emulsified.q.si());
    near(emulsified(&tenth), 80.0 * (0.1 * 0.95 + 0.9 * 0.02), &MG_L);
    let all = yard("");
    near(emulsified(&all), 80.0 * 0.95, &MG_L);
    assert!(assumed(&all, "chemical \"cutting oil\".share").question.contains("is cutting oil?"));
}

#[test]
fn names_that_no_block_bears_are_refused() {
    for (key, value) in [
        ("chemical \"degreaser\".stream", "hot wsh"),
        ("stream \"hot wash\".chemicals", r#"["degreser"]"#),
        ("stream \"cold rinse\".shear", r#"["a valve"]"#),
        ("dump \"bath\".stream", "hot"),
    ] {
        let sheet = Sheet::data("mixed").with(key, value);
        let text = toml::to_string(&sheet.table).expect("a table can be written");
        let faults = read_enquiry(&text, &|_| None).expect_err("an unknown name");
        assert!(faults.iter().any(|f| f.reason.contains("is called")), "{key} = {value}: {faults:?}");
    }
}

#[test]
fn a_dump_gives_mean_day_and_sample() {
    let settled = mixed();
    let water = &basis(&settled).waters[0];
    let peaks = water.peaks.expect("a bath is dumped into it");
    // 3600 gal on each of five days a week at 100 mg/L, and 50 gal at 20,000 mg/L.
    let mean = (18000.0 * 100.0 + 50.0 * 20000.0) / 18050.0;
    near(water.content.total.q.si(), mean, &MG_L);
    let one = &stillrise_units::catalog::ONE;
    near(peaks.day.q.si(), (3600.0 * 100.0 + 50.0 * 20000.0) / 3650.0 / mean, one);
    near(peaks.sample.q.si(), (30.0 * 100.0 + 5.0 * 20000.0) / 35.0 / mean, one);
    // A case of the hot wash with the cold rinse takes its part of that; the pit takes none of it, but what is assumed.
    near(case(&settled, "pit, all pumps").peaks.expect("of the pit").sample.q.si(), 1.5, one);
    // Where every water has its baths, nothing is left to assume.
    let one_water = Sheet::data("wash").with("dump.volume", "50 gal").with("dump.per_week", "1").settle(&demo());
    let keys = one_water.job.ledger.entries.iter().filter_map(|e| match &e.origin {
        Origin::Assumed(a) => Some(a.key.as_str()),
        _ => None,
    });
    assert!(!keys.clone().any(|key| key == "water.oil_peak"));
    assert!(keys.clone().any(|key| key.starts_with("dump 1.oil.mean")));
}

/// Hauled off, the bath leaves its stream at the 100 mg/L that it carries without one.
#[test]
fn a_bath_hauled_off_is_worked_through() {
    let mut settled = mixed();
    settled.work_alternatives(&demo());
    let apart = settled.alternatives.iter().find(|a| a.change == Change::BathApart).expect("such an alternative");
    let without = apart.design.basis.as_ref().expect("a basis");
    near(without.waters[0].content.total.q.si(), 100.0, &MG_L);
    assert!(without.waters[0].peaks.is_none() && without.cases.iter().all(|c| c.kind != Kind::Bath));
    assert!(basis(&settled).cases.iter().any(|c| c.kind == Kind::Bath));
}

#[test]
fn waters_mix_by_heat_and_by_salt() {
    let settled = mixed();
    let own = case(&settled, "dry-weather waters together, all pumps").own.as_ref().expect("a water of its own");
    // What comes hot is not counted on at the plates in the cold, for it cools between.
    near(own.arrives[0].temperature.q.si(), 68.0, &DEG_F);
    near(own.water[0].temperature.q.si(), 44.0, &DEG_F);
    near(own.water[1].temperature.q.si(), (30.0 * 140.0 + 90.0 * 70.0) / 120.0, &DEG_F);
    assert!(case(&settled, "pit, all pumps").own.is_none());
    // Three quarters of 0.4 % of salt: heavier than fresh water of 68 °F by some 2.3 kg/m3.
    let fresh = Sheet::data("mixed").with("stream \"cold rinse\".salinity", "0 %").settle(&demo());
    let other = case(&fresh, "dry-weather waters together, all pumps").own.as_ref().expect("still warm");
    let heavier = (own.water[0].density.q - other.water[0].density.q).si();
    assert!((2.2..2.4).contains(&heavier), "{heavier}");
}

/// A mean of days is one of volumes, of heat as of oil. Of the hot wash 30 x 60 x 2 x 5 / 7 = 18000 / 7 gal come on an average
/// day; of a rinse that runs six times as long, 90 x 60 x 12 x 5 / 7 = 324000 / 7 gal: (18000 x 140 + 324000 x 70) / 342000 =
/// 73.68 °F, where flows, which say nothing of how long a water runs, would make 87.5 °F. Once a week 50 gal of a bath at
/// 180 °F come with the wash: (18000 x 140 + 50 x 180 + 324000 x 70) / 342050.
#[test]
fn a_mean_of_days_mixes_heat_by_volume() {
    let long = Sheet::data("mixed").with("stream \"cold rinse\".hours_per_day", "12");
    let warm = |sheet: &Sheet| {
        let settled = sheet.settle(&demo());
        let own = case(&settled, "dry-weather waters, mean of all days, all pumps").own.as_ref().expect("hot").clone();
        assert!((DEG_F.from_si(own.water[0].temperature.q.si()) - 44.0).abs() < 1e-6);
        DEG_F.from_si(own.water[1].temperature.q.si())
    };
    let close = |found: f64, expected: f64| assert!((found - expected).abs() < 1e-3, "{found}, expected {expected}");
    // The bath comes at no temperature of its own: as warm as its stream.
    let (wash, bath, rinse) = (18000.0, 50.0, 324_000.0);
    close(warm(&long), ((wash + bath) * 140.0 + rinse * 70.0) / (wash + bath + rinse));
    let hot = long.with("dump \"bath\".temperature", "180 °F");
    close(warm(&hot), (wash * 140.0 + bath * 180.0 + rinse * 70.0) / (wash + bath + rinse));
}

#[test]
fn droplets_are_those_of_the_case() {
    let settled = mixed();
    let basis = basis(&settled);
    let of = |name: &str| {
        let brings = case(&settled, name).brings.iter();
        let medians = brings.map(|b| basis.arrivals[b.arrival].droplets.d50.q);
        medians.reduce(|a, b| if b < a { b } else { a }).expect("droplets")
    };
    // Without the degreaser's low tension the same pump leaves coarser ones.
    assert!(of("pit, all pumps") > of("dry-weather waters together, all pumps"));
    assert_eq!(basis.droplets.d50.q, of("dry-weather waters together, all pumps"));
    for r in &performance(&settled).removals {
        let brings = &basis.cases[r.case_index].brings;
        // Where all bring the same they stand once.
        let (arriving, together) = (&r.passage.arriving, r.passage.arriving.len() == 1);
        assert!(together || arriving.len() == brings.len(), "{}", r.case);
        for (k, b) in brings.iter().enumerate() {
            let portion = &arriving[if together { 0 } else { k }];
            assert_eq!(portion.droplets.d50.q, basis.arrivals[b.arrival].droplets.d50.q, "{}", r.case);
        }
    }
    // A tension as of clean oil, and they are alike.
    let clean = Sheet::data("mixed").with("chemical \"degreaser\".tension", "30 mN/m").settle(&demo());
    let finest = clean.job.design.basis.as_ref().expect("a basis").droplets.d50.q;
    assert!(finest > basis.droplets.d50.q);
}

#[test]
fn an_oil_that_does_not_rise_takes_its_share_and_no_more() {
    let settled = mixed();
    assert!(settled.job.design.triage.iter().all(|l| l.weight != Weight::Blocks || l.subject == "degreaser"));
    let rinse = &basis(&settled).waters[1].content;
    near(rinse.heavy.expect("a tenth of it").q.si(), (40.0 - 0.8 - 1.0) * 0.1, &MG_L);
    // Nobody says it for the pit: a question.
    assert!(assumed(&settled, "case \"pit\".oil.heavy").question.contains("residual oil"));
    let with = |share: &str| {
        let sheet = Sheet::data("wash").with("oil \"heavy-fuel-oil\".density", "1001 kg/m3");
        sheet.with("stream.oil.kind", common::OUT).with("stream.oil.heavy", share).settle(&demo())
    };
    let (none, third, all) = (with("0 %"), with("30 %"), with("100 %"));
    let left = |s: &Settled| performance(s).removals.iter().map(|r| r.left.q.si()).collect::<Vec<_>>();
    for ((none, third), all) in left(&none).into_iter().zip(left(&third)).zip(left(&all)) {
        assert!((third - (0.3 + 0.7 * none)).abs() < 1e-12 && (all - 1.0).abs() < 1e-12, "{none} {third} {all}");
    }
    assert!(left(&none).iter().all(|share| *share < 0.5), "diesel rises as if there were no other oil");
    // Levels are found for the oil that floats.
    assert_eq!(performance(&third).levels.len(), 1);
}

#[test]
fn pumps_have_states_and_a_sump_has_cycles() {
    let settled = mixed();
    let flow = |name: &str| GPM.from_si(case(&settled, name).feed.q.si());
    // A schedule without an interlock does not keep the second pump from starting.
    near(case(&settled, "pit, all pumps").feed.q.si(), 200.0, &GPM);
    assert!((flow("pit, lead pump alone") - 100.0).abs() < 1e-9);
    let lead = case(&settled, "pit, lead pump alone").cycle.expect("300 gal between the levels");
    near(lead.runs.q.si(), 300.0 / 60.0, &MIN);
    near(lead.period.q.si(), 300.0 / 40.0 + 300.0 / 60.0, &MIN);
    // 120 gpm arrive: the lead pump alone never stops.
    assert!(case(&settled, "dry-weather waters together, lead pump alone").cycle.is_none());
    let locked = Sheet::data("mixed").with("inlet.interlocked", "true").settle(&demo());
    near(case(&locked, "pit").feed.q.si(), 100.0, &GPM);
    let unsaid = Sheet::data("mixed").with("inlet.interlocked", common::OUT).settle(&demo());
    assert!(assumed(&unsaid, "inlet.interlocked").question.contains("interlock"));
    near(case(&unsaid, "pit").feed.q.si(), 100.0, &GPM);
    // Names that print alike are refused.
    let twice = Sheet::data("mixed").with("case \"deluge\".name", "pit").enquiry().expect_err("two of one name");
    assert!(twice.iter().any(|f| f.reason.contains("two of that name")), "{twice:?}");
}

#[test]
fn a_pumps_figures_replace_the_range_of_its_class() {
    let settled = mixed();
    let shear = basis(&settled).shear.as_ref().expect("a pump");
    let pump = shear.places().find(|p| p.name == "pump").expect("the feed pump");
    assert!(pump.is_worked && pump.beside.is_some());
    // 100 gpm against 20 ft at half: as much is lost as is given. The impeller of 1750 rpm with a coefficient of 0.5.
    let given = 998.0 * 9.80665 * 6.309_02e-3 * 6.096;
    let d = (9.80665_f64 * 6.096 / 0.5).sqrt() / (std::f64::consts::PI * 1750.0 / 60.0);
    let volume = std::f64::consts::FRAC_PI_4 * d * d * (0.1 * d);
    let expected = given / (998.0 * volume);
    let found = W_KG.from_si(pump.dissipation.q.si());
    // The density of the water cancels.
    assert!((found / expected - 1.0).abs() < 1e-4, "{found} against {expected}");
    // More power for the same lift is more lost; a pump without an impeller keeps its class.
    let strong = Sheet::data("mixed").with("inlet.pump_power", "3 hp").settle(&demo());
    let of =
        |s: &Settled| basis(s).shear.as_ref().and_then(|x| x.places().last().map(|p| (p.dissipation.q, p.is_worked)));
    assert!(of(&strong) > of(&settled));
    let slow = Sheet::data("mixed").with("inlet.pump", "diaphragm").settle(&demo());
    assert_eq!(of(&slow).map(|(_, worked)| worked), Some(false));
    assert!(slow.job.enquiry.notes.iter().any(|(place, _)| place == "inlet"));
}

/// 50 gal in 10 min are 5 gpm on top of the 120 gpm of the two washes.
#[test]
fn a_bath_adds_its_flow_while_it_is_let_go() {
    let settled = mixed();
    let bath = basis(&settled).cases.iter().find(|c| c.kind == Kind::Bath).expect("a case of the bath");
    near(bath.inflow.q.si(), 125.0, &GPM);
    near(bath.lasts.expect("how long it lasts").q.si(), 10.0, &MIN);
    // Nobody said how fast: no case, and no flow made up.
    let slow = Sheet::data("mixed").with("dump \"bath\".lasts", common::OUT).settle(&demo());
    assert!(basis(&slow).cases.iter().all(|c| c.kind != Kind::Bath));
}

/// A case keeps what is said of it, whichever pumps run in it.
#[test]
fn a_case_in_a_state_of_the_pumps_lasts_as_long_as_it_is_said_to() {
    let sheet = Sheet::data("mixed").with("case \"pit\".duration", "3 h").with("outlet.flow_cap", "50 gpm");
    let settled = sheet.settle(&demo());
    let asked = |key: &str| {
        let entries = &settled.job.ledger.entries;
        entries.iter().any(|e| matches!(&e.origin, Origin::Assumed(a) if a.key == key))
    };
    assert!(!asked("case \"pit\".duration") && !asked("stated.duration"), "the pit's duration was said");
    let held = settled.job.design.train.as_ref().and_then(|t| t.equalisation.as_ref());
    let pits = basis(&settled).cases.iter().filter(|c| c.event == "pit").count();
    assert!(pits > 1 && held.is_some(), "{pits} states of the pit");
}

/// Hot wash with its bath at its sample peak, cold rinse at what is assumed, mixed by flow: (30 gpm at (30 x 100 + 5 x 20000) /
/// 35 = 2942.9, 90 gpm at 1.5 x 40) / 120 = 780.7 mg/L; the mean is (30 x 155.12 + 90 x 40) / 120 = 68.8.
#[test]
fn a_peak_belongs_to_its_water() {
    let settled = mixed();
    let one = &stillrise_units::catalog::ONE;
    let together = case(&settled, "dry-weather waters together, all pumps");
    let bare = (18000.0 * 100.0 + 50.0 * 20000.0) / 18050.0;
    let mean = (30.0 * bare + 90.0 * 40.0) / 120.0;
    let top = (30.0 * (30.0 * 100.0 + 5.0 * 20000.0) / 35.0 + 90.0 * 1.5 * 40.0) / 120.0;
    near(together.peaks.expect("of both").sample.q.si(), top / mean, one);
    // A day holds what comes in it: 3600 gal at 100 mg/L with the bath, and 10800 gal of rinse at its peak.
    let day = (3600.0 * 100.0 + 50.0 * 20000.0 + 10800.0 * 1.5 * 40.0) / (3650.0 + 10800.0);
    near(together.peaks.expect("of both").day.q.si(), day / mean, one);
    let verdict = &performance(&settled).limits[0];
    assert!(verdict.case.contains("while the bath is let go"), "{}", verdict.case);
}

/// While the bath runs, 30 gpm at 100 mg/L, 5 gpm at 20,000 and 90 gpm at 40 come: 125 gpm at 852.8 mg/L; emulsified are 50, 6000
/// and 0.8 mg/L: (30 x 50 + 5 x 6000 + 90 x 0.8) / 125 = 252.6. At 180 °F for the bath, 140 °F and 70 °F: 92.4 °F mixed.
#[test]
fn a_bath_brings_its_oil_and_its_heat() {
    let settled = Sheet::data("mixed").with("dump \"bath\".temperature", "180 °F").settle(&demo());
    let bath = basis(&settled).cases.iter().find(|c| c.kind == Kind::Bath).expect("a case of the bath");
    let content = bath.content.as_ref().expect("all is stated");
    near(content.total.q.si(), (30.0 * 100.0 + 5.0 * 20000.0 + 90.0 * 40.0) / 125.0, &MG_L);
    near(content.emulsified.q.si(), (30.0 * 50.0 + 5.0 * 6000.0 + 90.0 * 0.8) / 125.0, &MG_L);
    near(content.solids.q.si(), (30.0 * 60.0 + 5.0 * 500.0 + 90.0 * 40.0) / 125.0, &MG_L);
    let own = bath.own.as_ref().expect("a water of its own");
    near(own.water[1].temperature.q.si(), (30.0 * 140.0 + 5.0 * 180.0 + 90.0 * 70.0) / 125.0, &DEG_F);
    // It is the peak itself: only the rinse may stand above its mean, by half of 40 mg/L in 90 of 125 gpm.
    let raised = 1.0 + 90.0 * 20.0 / (30.0 * 100.0 + 5.0 * 20000.0 + 90.0 * 40.0);
    near(bath.peaks.expect("a peak").sample.q.si(), raised, &stillrise_units::catalog::ONE);
    // The mean that stands for the unit is not that of ten minutes a week.
    let worst = performance(&settled).worst().expect("a case");
    assert!(worst.lasts && worst.content.total.q < content.total.q);
    assert!(performance(&settled).limits[0].mean.q < performance(&settled).limits[0].expected.q);
}

/// The figures of an industrial estate are those of its rain, single milligrams a litre: a wash there takes the general 100 mg/L,
/// with its own reason; the rain keeps them.
#[test]
fn a_land_use_speaks_of_its_rain_alone() {
    let text = "[enquiry]\ntitle = \"Hall\"\nprint = \"si\"\nfacility = \"industrial\"\n[[surface]]\nname = \"yard\"\narea = \"300 m2\"\n\
        [[stream]]\nname = \"hall wash\"\nflow = \"2 m3/h\"\n";
    let settled = Sheet::text("hall", text).settle(&demo());
    let wash = assumed(&settled, "stream \"hall wash\".oil.mean");
    assert!(wash.source.to_string().contains("its rain"), "{}", wash.source);
    let [rain, wash] = [0, 1].map(|k| basis(&settled).waters[k].content.total.q);
    near(wash.si(), 100.0, &MG_L);
    assert!(MG_L.from_si(rain.si()) < 10.0);
}

/// Where an area lies under a canopy work goes on while it rains, unless somebody says that it does not.
#[test]
fn a_wash_under_a_canopy_runs_while_it_rains() {
    let text = "[enquiry]\ntitle = \"Depot\"\nprint = \"si\"\n[[surface]]\nname = \"yard\"\narea = \"300 m2\"\n[[surface]]\n\
        name = \"bay\"\narea = \"60 m2\"\nCANOPY[[stream]]\nname = \"wash\"\nflow = \"2 m3/h\"\nSAID[inlet]\nfeed = \"gravity\"\n";
    let together = |canopy: &str, said: &str| {
        let settled = Sheet::text("depot", &text.replace("CANOPY", canopy).replace("SAID", said)).settle(&demo());
        basis(&settled).cases.iter().any(|c| c.name == "storm and other waters")
    };
    assert!(together("canopy = true\n", "") && !together("", ""));
    assert!(!together("canopy = true\n", "with_rain = false\n") && together("", "with_rain = true\n"));
}

/// Of a depot's wash and its rain each brings the droplets of its own kind of place: 20 um of a wash bay and 80 um of a yard by the
/// handbook's table, and each is asked for under a key of its own. A size that is stated of all holds for both.
#[test]
fn a_wash_breaks_its_droplets_and_the_rain_does_not() {
    let text = "[enquiry]\ntitle = \"Depot\"\nprint = \"si\"\nfacility = \"bus-depot\"\n[[surface]]\nname = \"yard\"\narea = \"300 m2\"\n\
        [[stream]]\nname = \"wash\"\nhoses = 2\n[inlet]\nfeed = \"gravity\"\n";
    let settled = Sheet::text("depot", text).settle(&demo());
    let um = |settled: &Settled, name: &str| {
        let case = case(settled, name);
        stillrise_units::catalog::UM.from_si(basis(settled).arrivals[case.brings[0].arrival].droplets.d50.q.si())
    };
    assert!((um(&settled, "storm") - 80.0).abs() < 1e-6 && (um(&settled, "wash") - 20.0).abs() < 1e-6);
    assumed(&settled, "rain.droplets.d50");
    assumed(&settled, "stream \"wash\".droplets.d50");
    let all = Sheet::text("depot", &format!("{text}[droplets]\nd50 = \"60 um\"\n")).settle(&demo());
    assert!((um(&all, "storm") - 60.0).abs() < 1e-6 && (um(&all, "wash") - 60.0).abs() < 1e-6);
    let rain = Sheet::text("depot", &format!("{text}[rain]\ndroplets = {{ d50 = \"90 um\" }}\n")).settle(&demo());
    assert!((um(&rain, "storm") - 90.0).abs() < 1e-6 && (um(&rain, "wash") - 20.0).abs() < 1e-6);
}

/// Rain of 80 um and a wash of 20 um that runs in it stay side by side: of the oil that rises each brings its share, flow times
/// free oil, and a wash of a thousandth of the flow hardly changes what leaves.
#[test]
fn droplets_of_waters_that_coincide_stay_side_by_side() {
    let text = |flow: &str| {
        format!(
            "[enquiry]\ntitle = \"Depot\"\nprint = \"si\"\nfacility = \"bus-depot\"\n[[surface]]\nname = \"yard\"\narea = \"300 m2\"\n\
             [[stream]]\nname = \"wash\"\nhoses = 1\nflow = \"{flow}\"\nwith_rain = true\n[inlet]\nfeed = \"gravity\"\n"
        )
    };
    let out = |settled: &Settled, name: &str| {
        let most = performance(settled).removals.iter().filter(|r| r.case == name);
        most.map(|r| r.left.q.si()).fold(0.0, f64::max)
    };
    let settled = Sheet::text("depot", &text("2 m3/h")).settle(&demo());
    let (both, storm, wash) =
        (case(&settled, "storm and other waters"), case(&settled, "storm"), case(&settled, "wash"));
    let oil = |c: &Case| c.inflow.q.si() * c.content.as_ref().expect("a content").free.q.si();
    let share = oil(wash) / (oil(wash) + oil(storm));
    let of_wash =
        both.brings.iter().find(|b| basis(&settled).arrivals[b.arrival].waters == wash.which).expect("its own");
    assert!((of_wash.share.expect("a share").q.si() / share - 1.0).abs() < 1e-12);
    let all: f64 = both.brings.iter().filter_map(|b| b.share).map(|share| share.q.si()).sum();
    assert!((all - 1.0).abs() < 1e-12);
    let (both, storm, wash) = (out(&settled, "storm and other waters"), out(&settled, "storm"), out(&settled, "wash"));
    assert!(storm < both && both < 1.0 && wash > 0.0, "{storm} {both} {wash}");
    let little = Sheet::text("depot", &text("0.01 m3/h")).settle(&demo());
    let (with, without) = (out(&little, "storm and other waters"), out(&little, "storm"));
    assert!((with / without - 1.0).abs() < 0.02, "{with} beside {without}");
}
