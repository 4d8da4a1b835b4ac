//! The methods that an authority asks for, over the whole chain: from the text of an enquiry to the printed worksheet.

#![allow(clippy::panic, clippy::expect_used, reason = "a test fails by panicking")]

use std::path::Path;
use stillrise_design::enquiry::range::{Range, read_range};
use stillrise_design::enquiry::read_enquiry;
use stillrise_documents::regulation::{Sheet, regulation_json, sheets, short, text};
use stillrise_search::{Settled, settle};

fn demo() -> Range {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    read_range(&std::fs::read_to_string(root.join("ranges/demo.toml")).expect("the demo range")).file
}

/// A yard, so large, with rain, and what the authority asks for.
fn yard(print: &str, area: &str, rain: &str, more: &str) -> Settled {
    let text = format!(
        "[enquiry]\ntitle = \"Yard\"\nprint = \"{print}\"\n[[surface]]\nname = \"yard\"\narea = \"{area}\"\nkind = \"asphalt\"\nrunoff = 0.95\n\
         [rain]\n{rain}\n{more}\n"
    );
    let enquiry = read_enquiry(&text, &|_| None).unwrap_or_else(|faults| panic!("{faults:?}"));
    settle(&enquiry, &demo())
}

#[track_caller]
fn sheet(settled: &Settled, word: &str) -> Sheet {
    let found = sheets(settled).into_iter().find(|sheet| sheet.method.word() == word);
    found.unwrap_or_else(|| panic!("no {word}"))
}

/// The value under a symbol, as printed.
#[track_caller]
fn value(sheet: &Sheet, symbol: &str) -> String {
    let row = sheet.notation.iter().find(|row| row.symbol == symbol);
    row.unwrap_or_else(|| panic!("no {symbol} in {:#?}", sheet.notation)).value.clone()
}

/// PPG3 on 1000 m2 of paving, by its formulas: NS 18, silt 1800 L, oil 180 L.
#[test]
fn ppg3_of_a_thousand_square_metres() {
    let settled = yard("si", "1000 m2", "intensity = \"65 mm/h\"", "[regulation]\nmethods = [\"ppg3\"]");
    let sheet = sheet(&settled, "ppg3");
    assert_eq!(value(&sheet, "NS"), "18 L/s");
    assert_eq!(value(&sheet, "V_s"), "1800 L");
    assert_eq!(value(&sheet, "V_o"), "180 L");
    assert!(
        sheet.steps.iter().any(|step| step.lines.iter().any(|line| line.equation == "0.018·A")),
        "{:#?}",
        sheet.steps
    );
}

/// EN 858-2 by hand from its tables: 6 L/s of rain, five taps DN20 with 3.4 L/s of wash water, light oil, class II:
/// (6 + 2 x 3.4) x 1 = 12.8; next size 15; medium sludge 200 x 15 = 3000 L.
#[test]
fn en858_with_rain_and_five_taps() {
    let more = "[[oil]]\nkind = \"diesel\"\ndensity = \"840 kg/m3\"\n[european]\nclass = \"II\"\ncategory = \"wash water\"\n\
         taps = [\"DN20 x 5\"]\nrain_flow = \"6 L/s\"\nsludge_load = \"medium\"\n[regulation]\nmethods = [\"EN 858-2\"]";
    let settled = yard("si", "400 m2", "intensity = \"50 mm/h\"", more);
    let sheet = sheet(&settled, "en-858-2");
    assert_eq!(value(&sheet, "Q_s1"), "3.4 L/s");
    assert_eq!(value(&sheet, "f_x"), "2");
    assert_eq!(value(&sheet, "f_d"), "1");
    assert_eq!(value(&sheet, "NS"), "12.8 L/s");
    assert_eq!(value(&sheet, "NS_s"), "15 L/s");
    assert_eq!(value(&sheet, "V_s"), "3000 L");
}

/// FHWA HDS-2, example 8.1, after building: C 0.45, 102 mm/h, 2.3 ha: 0.29 m3/s, here in m3/h.
#[test]
fn rational_method_as_hds_2_has_it() {
    let text = "[enquiry]\ntitle = \"Yard\"\nprint = \"si\"\n[[surface]]\nname = \"yard\"\narea = \"2.3 ha\"\nrunoff = 0.45\n\
         [rain]\nintensity = \"102 mm/h\"\n[regulation]\nmethods = [\"rational\"]\n";
    let enquiry = read_enquiry(text, &|_| None).unwrap_or_else(|faults| panic!("{faults:?}"));
    let settled = settle(&enquiry, &demo());
    let sheet = sheet(&settled, "rational");
    let flow = value(&sheet, "Q");
    let litres: f64 = flow.trim_end_matches(" L/s").parse().unwrap_or_else(|_| panic!("{flow}"));
    assert!((litres - 290.0).abs() <= 5.0, "{flow}");
    let step = sheet.steps.iter().find(|step| step.what == "storm flow").expect("its step");
    assert!(step.lines.iter().any(|line| line.equation == "k·C·i·A"), "{step:#?}");
}

/// Airfield time on 200 ft at 1 % with C 0.95, by hand 1.8 x 0.15 x 200^0.5 = 3.818 min, and no less than 5 taken; two acres
/// of water-quality rain, by hand 0.95 x 2 x 43560 / 12 = 6897 ft3.
#[test]
fn airfield_time_and_water_quality_volume() {
    let rain = "intensity = \"3 in/h\"\npath = \"200 ft\"\nslope = \"1 %\"";
    let more = "[regulation]\nmethods = [\"faa\", \"water-quality\", \"tr-55\"]\ntreated_depth = \"1 in\"\nsealed = \"100 %\"\n\
         rain_2yr = \"3.6 in\"\nrain_24h = \"6 in\"\nstorm_type = \"type-ii\"\ncurve_number = 75";
    let settled = yard("us", "2 acre", rain, more);
    let quality = sheet(&settled, "water-quality");
    assert_eq!(value(&quality, "WQ_v"), "6897 ft3");
    assert_eq!(value(&quality, "R_v"), "0.95");
    let day = sheet(&settled, "tr-55");
    // TR-55, example 4-1: CN 75 under 6 in sheds 3.28 in.
    assert_eq!(value(&day, "Q"), "3.282 in");
    assert_eq!(value(&day, "I_a/P"), "0.1111");
    let airfield = sheet(&settled, "faa");
    assert_eq!(value(&airfield, "t_c"), "3.818 min");
    assert_eq!(value(&airfield, "t_c,min"), "5 min");
}

/// What nobody said is asked for, and nothing is printed as if it followed.
#[test]
fn what_is_missing_is_asked_for() {
    let settled = yard("us", "2 acre", "intensity = \"3 in/h\"", "[regulation]\nmethods = [\"tr-55\", \"faa\"]");
    let day = sheet(&settled, "tr-55");
    assert_eq!(day.result, "Nothing follows yet.");
    for key in ["rain.path", "rain.slope", "regulation.rain_24h"] {
        assert!(day.remarks.iter().any(|remark| remark.contains(key)), "{key}: {:?}", day.remarks);
    }
}

/// Text, short text and data agree on the methods, say what is left out, and stand only where a method is asked for.
#[test]
fn all_prints_tell_the_same() {
    let more =
        "[regulation]\nmethods = [\"api-421\", \"residence-time\", \"overflow-rate\"]\nauthority = \"the district\"";
    let settled = yard("us", "0.5 acre", "intensity = \"2 in/h\"", more);
    let (whole, brief) = (text(&settled, 100), short(&settled, 100));
    let data = regulation_json(&settled);
    assert_eq!(data["authority"], "the district");
    let methods = data["methods"].as_array().expect("a list");
    assert_eq!(methods.len(), 3);
    for (sheet, data) in sheets(&settled).iter().zip(methods) {
        assert_eq!(data["method"], sheet.method.word());
        assert!(whole.contains(sheet.title) && brief.contains(sheet.method.word()), "{}", sheet.title);
        assert!(!sheet.leaves_out.is_empty() && !sheet.sources.is_empty() && !sheet.ours.is_empty(), "{}", sheet.title);
        assert!(sheet.confirm.contains("the district"), "{}", sheet.confirm);
        for step in &sheet.steps {
            assert!(whole.contains(&step.what), "{}", step.what);
            assert!(step.lines.iter().all(|line| !line.equation.is_empty() && !line.value.is_empty()), "{step:#?}");
        }
    }
    assert!(whole.contains("Turbulence, short-circuiting"), "{whole}");
    let plain = yard("us", "0.5 acre", "intensity = \"2 in/h\"", "");
    assert_eq!((text(&plain, 100).as_str(), short(&plain, 100).as_str()), ("", ""));
    assert!(regulation_json(&plain).is_null());
}
