//! Results count the same as observations and as samples of the water that leaves, by their days; what one result cannot
//! tell, and what the unit does once all is put right.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

mod common;

use common::{Sheet, at_data, demo};
use stillrise_design::enquiry::Enquiry;
use stillrise_search::Settled;
use stillrise_search::diagnosis::{Diagnosis, diagnose};
use stillrise_search::results::{latest, periods};
use stillrise_units::catalog::MG_L;
use stillrise_units::{Concentration, Typed};

/// The unit that quit, with 38 and 44 mg/L before its changes and 310 and 265 mg/L after, and more.
fn quit(more: &str) -> Sheet {
    let text = std::fs::read_to_string(at_data("quit.toml")).expect("the file");
    Sheet::text("quit", &(text + more))
}

/// The same with the results as samples in place of observations.
fn sampled(results: &str) -> Sheet {
    let mut sheet = quit(&samples(results));
    sheet.table.remove("observed");
    sheet
}

fn samples(results: &str) -> String {
    format!("\n[[samples]]\nname = \"outfall\"\nwhere = \"out\"\nresults = [{results}]\n")
}

const SAME: &str =
    "\"2026-05-12: 38 mg/L\", \"2026-06-09: 44 mg/L\", \"2026-09-03: 310 mg/L\", \"2026-09-17: 265 mg/L\"";

fn enquiry(sheet: &Sheet) -> Enquiry {
    sheet.enquiry().unwrap_or_else(|f| panic!("{f:?}"))
}

fn look(sheet: &Sheet) -> (Settled, Diagnosis) {
    let settled = sheet.settle(&demo());
    let found = diagnose(settled.rated()).unwrap_or_else(|s| panic!("{s}"));
    (settled, found)
}

fn mg(c: Concentration) -> f64 {
    MG_L.from_si(c.si())
}

fn told(e: &Enquiry) -> Vec<Vec<f64>> {
    periods(e).iter().map(|p| p.results.iter().map(|c| mg(*c).round()).collect()).collect()
}

#[test]
fn samples_count_as_observations_do() {
    let (settled, found) = look(&sampled(SAME));
    assert_eq!(told(&settled.job.enquiry), [vec![38.0, 44.0], vec![310.0, 265.0]]);
    let limit = &settled.job.design.basis.as_ref().expect("a basis").limits[0];
    let now = latest(&settled.job.enquiry, limit).expect("results");
    assert_eq!((now.above, now.of), (2, 2));
    let c = found.calibration.expect("a good period");
    // The geometric mean of 38 and 44 is the root of 1672: 40.89.
    assert!(c.samples == 2 && (mg(c.mean) - 40.89).abs() < 0.005, "{c:?}");
    assert_eq!(found.seen.iter().map(|s| s.good).collect::<Vec<_>>(), [true, true, false, false]);
    // The same results as observations, without what was seen besides, weigh all causes alike.
    let mut sheet = quit("");
    for one in sheet.table["observed"].as_array_mut().expect("observations") {
        let one = one.as_table_mut().expect("one");
        one.remove("looks");
        one.remove("jar");
    }
    let (_, observed) = look(&sheet);
    let causes = |d: &Diagnosis| d.causes.iter().map(|(c, w)| (c.id.word(), (w * 1e6).round())).collect::<Vec<_>>();
    assert_eq!(causes(&found), causes(&observed));
}

/// A result that stands in both places is one; two of one day and value that a laboratory reports are two.
#[test]
fn no_result_counts_twice() {
    assert_eq!(enquiry(&quit(&samples(SAME))).observations().len(), 4);
    let more = enquiry(&quit(&samples(&format!("{SAME}, \"2026-09-17: 265 mg/L\", \"2026-09-17: 0.27 g/L\""))));
    assert_eq!(told(&more), [vec![38.0, 44.0], vec![310.0, 265.0, 265.0, 270.0]]);
}

/// The only sample of the day of a visit that noted no oil is the oil of that visit.
#[test]
fn a_sample_of_a_visit_is_its_oil() {
    let visit = "\n[[observed]]\nname = \"visit\"\ndate = \"2026-09-10\"\nlooks = \"milky\"\n";
    let all = enquiry(&quit(&format!("{visit}{}", samples("\"2026-09-10 08:30: 290 mg/L\"")))).observations();
    assert_eq!(all.len(), 5);
    assert_eq!(all[4].observed.name.as_deref(), Some("visit"));
    assert_eq!(all[4].observed.oil_out.q().map(|c| mg(c).round()), Some(290.0));
}

/// Without a day a result stands neither before nor after a change; where nothing was changed it needs none.
#[test]
fn a_result_without_a_day_is_left_out_where_something_was_changed() {
    let sheet = quit(&samples("\"120 mg/L\", \"May: 130 mg/L\", \"2026-09-20: 140 mg/L\""));
    let e = enquiry(&sheet);
    assert_eq!(e.unplaced(), [("outfall".to_owned(), 2)]);
    assert_eq!(told(&e), [vec![38.0, 44.0], vec![310.0, 265.0, 140.0]]);
    let mut still = sheet;
    still.table.remove("change");
    let e = enquiry(&still);
    assert!(e.unplaced().is_empty());
    assert_eq!(e.observations().len(), 7);
}

/// Less than a reporting limit lies above no limit, and is no number that something has to explain from above.
#[test]
fn what_was_not_detected_is_less_than_its_limit() {
    let sheet = sampled(&format!("{SAME}, \"2026-09-19: <5 mg/L\""));
    let settled = sheet.settle(&demo());
    let limit = &settled.job.design.basis.as_ref().expect("a basis").limits[0];
    let now = latest(&settled.job.enquiry, limit).expect("results");
    assert_eq!((now.above, now.of), (2, 3));
    assert_eq!(enquiry(&sheet).observations().iter().filter(|o| !o.detected).count(), 1);
}

/// Solids, the water that comes, and a second pollutant of the same samples are no further results.
#[test]
fn only_total_oil_that_leaves_counts() {
    let of = |place: &str, pollutant: &str| {
        format!(
            "\n[[samples]]\nname = \"{place} {pollutant}\"\nwhere = \"{place}\"\npollutant = \"{pollutant}\"\nresults = [\"2026-09-18: 90 mg/L\"]\n"
        )
    };
    let more = [
        of("out", "suspended solids"),
        of("in", "oil and grease"),
        of("out", "oil and grease"),
        of("out", "petroleum hydrocarbons"),
    ]
    .concat();
    assert_eq!(told(&enquiry(&quit(&more))), [vec![38.0, 44.0], vec![310.0, 265.0, 90.0]]);
}

/// Two results about 40.89 mg/L with a scatter of 0.4: a third lies, nine times in ten, within
/// exp(1.645 x 0.4 x root of 1 + 1/2) = 2.239 times, so between 18.3 and 91.6 mg/L.
#[test]
fn put_right_the_unit_runs_as_it_was_measured_to_run() {
    for sheet in [quit(""), sampled(SAME)] {
        let (_, found) = look(&sheet);
        let (low, high) = found.as_it_ran.expect("measured");
        assert!((mg(low) - 18.26).abs() < 0.02 && (mg(high) - 91.6).abs() < 0.1, "{} {}", mg(low), mg(high));
        assert!(found.telling((low, high)).is_none(), "310 and 265 lie outside");
    }
}

/// Without a good period it runs as the basis has it: what flows and arrives beyond the basis is put right as well.
#[test]
fn put_right_the_unit_runs_as_the_basis_has_it() {
    let mut sheet = quit("");
    sheet.table.remove("change");
    let list = sheet.table["observed"].as_array_mut().expect("observations");
    list.drain(..3);
    list[0].as_table_mut().expect("one").insert("flow".to_owned(), "120 gpm".into());
    let (_, found) = look(&sheet);
    let within = found.seen[0].within.expect("beyond the basis");
    assert!(within < found.seen[0].expected);
    let (low, high) = found.as_it_ran.expect("measured");
    // Nine in ten lie within exp(1.645 x 0.4) = 1.931 times.
    assert!(
        (low.si() * 1.931 / within.si() - 1.0).abs() < 1e-3 && (high.si() / within.si() / 1.931 - 1.0).abs() < 1e-3
    );
}

/// 310 and 265 mg/L before have the geometric mean 286.6. For a band of 100 to 300 about 173.2 mg/L and a scatter of 0.4,
/// (2 x 1.645 x 0.4 / ln(286.6/173.2))^2 = (1.316/0.5036)^2 = 6.8: seven results, told apart at 222.8 mg/L.
#[test]
fn a_band_that_holds_a_bad_result_needs_more_than_one() {
    let (_, found) = look(&quit(""));
    let band =
        |low: f64, high: f64| found.telling((Concentration::from_si(low * 1e-3), Concentration::from_si(high * 1e-3)));
    let telling = band(100.0, 300.0).expect("265 lies in it");
    assert_eq!(telling.within.iter().map(|c| mg(*c).round()).collect::<Vec<_>>(), [265.0]);
    let (n, below) = telling.results.expect("so many tell");
    assert!(n == 7 && (mg(below) - 222.8).abs() < 0.1, "{n} {}", mg(below));
    assert!(band(100.0, 200.0).is_none(), "one result tells");
    assert!(band(250.0, 330.0).expect("both lie in it").results.is_none(), "no better than before");
}

/// 310, 265 and 290 mg/L after the changes: mean 288.3, standard deviation 22.55, Student's t of two degrees of freedom
/// 4.303 (any table), so 288.3 +- 56.0; 38 and 44 mg/L before have the mean 41.
#[test]
fn laboratory_results_are_split_at_what_was_changed() {
    let settled = sampled(&format!("{SAME}, \"2026-09-18: 290 mg/L\", \"12 mg/L\"")).settle(&demo());
    let sets = &settled.job.design.basis.as_ref().expect("a basis").evidence;
    let means: Vec<Option<f64>> = sets.iter().map(|s| s.law.as_ref().map(|l| mg(l.mean.q).round())).collect();
    assert_eq!(means, [Some(41.0), Some(288.0), None]);
    let law = sets[1].usable().expect("the last time stands for the plant");
    assert!((mg(law.low.q) - 232.3).abs() < 0.1 && (mg(law.high.q) - 344.4).abs() < 0.1);
    assert!((mg(law.spread.q) - 22.55).abs() < 0.01);
    assert!(sets[0].usable().is_none() && sets[1].name.ends_with("since the change of 2026-08-20"));
    let compared = &settled.job.design.performance.as_ref().expect("a performance").measured;
    assert_eq!(compared.iter().map(|c| c.set).collect::<Vec<_>>(), [1]);
}

/// A product that stands both in a change and among the keys was not there before the change.
#[test]
fn a_product_that_a_change_brought_is_not_there_before() {
    let settled = quit("\n[[chemical]]\nproduct = \"green\"\nkind = \"alkaline-degreaser\"\n").settle(&demo());
    assert_eq!(settled.job.enquiry.chemicals.len(), 1);
    assert!(settled.rated().enquiry.chemicals.is_empty());
    let notes = &settled.job.enquiry.notes;
    assert!(notes.iter().any(|(place, note)| place.contains("green") && note.contains("2026-08-20")), "{notes:?}");
    // What was there, went and came back was there before.
    let back = "\n[[chemical]]\nkind = \"hot-water\"\n[[change]]\ndate = \"2026-09-20\"\nwhat = \"chemical\"\nchemical = \"hot-water\"\n";
    assert_eq!(quit(back).settle(&demo()).rated().enquiry.chemicals.len(), 1);
}

/// Six good results, and four after the changes of which one is as good as they.
fn one_low(more: &str) -> Sheet {
    let good = "\"2026-01-12: 11 mg/L\", \"2026-02-06: 13 mg/L\", \"2026-03-09: 9 mg/L\", \"2026-04-10: 12 mg/L\", \"2026-05-12: 14 mg/L\", \"2026-06-14: 12 mg/L\"";
    sampled(&format!("{good}{more}"))
}

const BAD: &str =
    ", \"2026-08-25: 68 mg/L\", \"2026-09-01: 74 mg/L\", \"2026-09-08: 15 mg/L\", \"2026-09-15: 71 mg/L\"";

/// By hand: the good logarithms have the standard deviation 0.1531; those of 68, 74, 15 and 71 the mean 3.8736 and the
/// standard deviation 0.7778. For a band of 9.2 to 15 about exp(2.4636), (1.645 x 0.9309 / 1.4100)^2 = 1.18: two results, parted
/// at exp(2.4636 + 1.41 x 0.1531 / 0.9309) = 14.8 mg/L. One is never enough: 15 was measured with nothing put right.
#[test]
fn one_result_never_tells_where_one_such_was_measured_before() {
    let (_, found) = look(&one_low(BAD));
    let band = (Concentration::from_si(9.2e-3), Concentration::from_si(15.0e-3));
    let telling = found.telling(band).expect("15 lies in it");
    let (n, below) = telling.results.expect("so many tell");
    assert!(n == 2 && (mg(below) - 14.8).abs() < 0.06, "{n} {}", mg(below));
}

/// 48.7 mg/L lies off 68, 74, 15 and 71 by 0.334, 0.418, 1.178 and 0.377 in the logarithm, all above 2 x 0.1531.
#[test]
fn results_that_an_explanation_misses_are_counted() {
    let (_, mut found) = look(&one_low(BAD));
    let e = &mut found.explanations[0];
    e.effluent.iter_mut().flatten().for_each(|c| *c = Concentration::from_si(48.7e-3));
    let e = found.explanations[0].clone();
    assert_eq!(found.missed(&e), (4, 4));
    // Worked out by hand above.
    assert!(found.own_spread().is_some_and(|own| (own - 0.7778).abs() < 5e-4), "{:?}", found.own_spread());
    assert_eq!(found.lies_apart().and_then(|s| s.measured).map(|c| mg(c).round()), Some(15.0));
    assert_eq!(found.is_worse(), Some(true));
}

/// 13, 12, 15 and 11 mg/L after 9 to 14 mg/L have nothing in them to explain, and neither has what was not detected.
#[test]
fn results_as_good_as_before_ask_for_no_explanation() {
    let same = ", \"2026-08-25: 13 mg/L\", \"2026-09-01: 12 mg/L\", \"2026-09-08: 15 mg/L\", \"2026-09-15: 11 mg/L\"";
    assert_eq!(look(&one_low(same)).1.is_worse(), Some(false));
    let none = look(&sampled("\"2026-05-12: <5 mg/L\", \"2026-06-09: <5 mg/L\", \"2026-09-03: <5 mg/L\"")).1;
    assert_eq!(none.is_worse(), Some(false));
    // Their mean is at most the reporting limit.
    assert_eq!(none.calibration.map(|c| (c.samples, c.undetected)), Some((2, 2)));
}

/// With every result before the changes, nothing says what these did to the oil.
#[test]
fn no_result_since_is_no_evidence() {
    let alarm = "\n[[observed]]\nname = \"mornings\"\nalarm = \"no oil found\"\n";
    let mut sheet = quit(&samples("\"2026-05-12: 11 mg/L\""));
    sheet.table.remove("observed");
    let text = toml::to_string(&sheet.table).expect("text") + alarm;
    let (_, found) = look(&Sheet::text("quit", &text));
    let day = stillrise_design::enquiry::date::Date::read("2026-08-10").ok();
    assert!(!found.is_measured_since(day) && found.is_worse().is_none());
}

/// A film gets into the ladle, not into the stream that falls: the one explanation by the surface gives a grab of the stream
/// what should leave, and the dipped ones more.
#[test]
fn a_grab_from_the_stream_has_no_film_in_it() {
    let good = "\"2026-01-12: 11 mg/L\", \"2026-02-06: 13 mg/L\", \"2026-03-09: 12 mg/L\"";
    let set = |name: &str, manner: &str, results: &str| {
        format!("\n[[samples]]\nname = \"{name}\"\nwhere = \"out\"\nmanner = \"{manner}\"\nresults = [{results}]\n")
    };
    let more = [
        samples(good),
        set("ladle", "from the surface", "\"2026-09-01: 68 mg/L\", \"2026-09-08: 74 mg/L\""),
        set("stream", "grab", "\"2026-09-15: 15 mg/L\""),
        "\n[[change]]\ndate = \"2026-08-30\"\nwhat = \"sampling\"\ntext = \"with a ladle\"\n".to_owned(),
    ];
    let mut sheet = quit(&more.concat());
    sheet.table.remove("observed");
    let (_, found) = look(&sheet);
    let alone =
        found.explanations.iter().find(|e| matches!(&e.causes[..], [s] if s.cause.id.word() == "surface-sample"));
    let alone = alone.expect("it explains all three");
    let out: Vec<f64> = alone.effluent.iter().map(|c| c.map_or(f64::NAN, mg)).collect();
    let should: Vec<f64> = found.seen.iter().map(|s| mg(s.expected)).collect();
    let places: Vec<usize> = (0..found.seen.len()).filter(|k| !found.seen[*k].good).collect();
    assert_eq!(places.len(), 3, "{:?}", found.seen.iter().map(|s| &s.name).collect::<Vec<_>>());
    let (first, last) = (places[0], places[2]);
    assert!(out[first] > 3.0 * should[first] && (out[last] / should[last] - 1.0).abs() < 1e-9, "{out:?} {should:?}");
}

/// Three of four results without a day lie above nothing but the number itself.
#[test]
fn results_without_a_day_keep_their_numbers() {
    let e = enquiry(&quit(&samples("\"120 mg/L\", \"<5 mg/L\", \"2026-09-20: 140 mg/L\"")));
    let all: Vec<(bool, f64)> = e.unplaced_results().iter().map(|(d, c)| (*d, mg(*c).round())).collect();
    assert_eq!(all, [(true, 120.0), (false, 5.0)]);
}

/// 120, 80 and less than 10 mg/L of suspended solids beside 100 mg/L: one of three above. 320, 280 and 300 mg/L of what gravity
/// does not touch keep 500 mg/L, so that nobody may say that it cannot be kept.
#[test]
fn other_results_are_held_against_their_own_limit() {
    let text = "[enquiry]\ntitle = \"Old unit\"\nprint = \"si\"\n[[stream]]\nname = \"wash\"\nflow = \"3 m3/h\"\n\
        [[limit]]\npollutant = \"suspended solids\"\nvalue = \"100 mg/L\"\n[[limit]]\npollutant = \"cod\"\nvalue = \"500 mg/L\"\n\
        [unit]\nexists = true\ndimensions = { length = \"3 m\", width = \"1.2 m\", height = \"1.8 m\" }\n\
        [[samples]]\nname = \"tss\"\nwhere = \"out\"\npollutant = \"suspended solids\"\nresults = [\"120 mg/L\", \"80 mg/L\", \"<10 mg/L\"]\n\
        [[samples]]\nname = \"cod\"\nwhere = \"out\"\npollutant = \"cod\"\nresults = [\"320 mg/L\", \"280 mg/L\", \"300 mg/L\"]\n";
    let settled = Sheet::text("old unit", text).settle(&demo());
    let limits = &settled.job.design.performance.as_ref().expect("a performance").limits;
    let measured: Vec<(usize, usize)> =
        limits.iter().filter_map(|l| Some((l.measured?.above, l.measured?.of))).collect();
    assert_eq!(measured, [(1, 3), (0, 3)]);
    assert_eq!([limits[0].says(), limits[1].says()], ["exceeded", "not shown"]);
}
